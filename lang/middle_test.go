package lang_test

import (
	"fmt"
	"strings"
	"testing"

	"trammel/lang"
)

func middleSource(from, to int) []byte {
	return fmt.Appendf(nil, `figure "t"
choose a from %d to %d
given A (0, 0)
given B 9 from A
arc k centre A radius a
arc l centre B radius 4
k meets l at C above AB
answer AC
`, from, to)
}

// TestMiddle: a picture by itself has the middle value, or the nearest to it with
// which the arcs meet (a > 5, elementary); asked and varied it is that figure too.
func TestMiddle(t *testing.T) {
	for _, c := range []struct {
		from, to int
		want     string
		twice    string
	}{{6, 10, "8 cm", "16 cm"}, {1, 7, "6 cm", "12 cm"}, {2, 60, "12 cm", "24 cm"}} {
		text := middleSource(c.from, c.to)
		r := lang.Compile("t.trm", text)
		if r.Figure == nil || r.Answers()[0].Exact != c.want || len(r.Files) != 1 {
			t.Errorf("from %d to %d: %v, want %s", c.from, c.to, r.Problems, c.want)
			continue
		}
		asked, _ := lang.Ask("t.trm", text, []string{"2 * AC"})
		if len(asked) != 1 || asked[0].Exact != c.twice {
			t.Errorf("asked: %+v", asked)
		}
		if dealt, _, _ := r.Variants(2, 1); len(dealt) != 2 {
			t.Errorf("from %d to %d: %d variants", c.from, c.to, len(dealt))
		}
	}
}

// TestNoMiddle: where no value will do, the error names the one that was tried, and
// a claim that is false with the middle one is told, not gone round.
func TestNoMiddle(t *testing.T) {
	r := lang.Compile("t.trm", middleSource(1, 4))
	notes := ""
	for _, p := range r.Problems {
		for _, n := range p.Notes {
			notes += n.Text
		}
	}
	if r.Figure != nil || !strings.Contains(notes, "with a = 2, the middle of its values") {
		t.Errorf("%v: %s", r.Problems, notes)
	}
	if r := lang.Compile("t.trm", append(middleSource(6, 10), "claim AC = 7\n"...)); r.Figure != nil || !r.Problems.Failed() {
		t.Error("a false claim is gone round")
	}
}

// TestChoiceMessages: what is wrong with a choice is said once, at its line.
func TestChoiceMessages(t *testing.T) {
	for choose, want := range map[string]string{
		"a from 40° to 8 by 1": "[the values go from an angle to a number]",
		"a from 8 to 4":        "[the last value, 4, is not more than the first, 8, so there is nothing to choose]",
		"a from 4 to 8 by 3":   "[the last value is 7: the next would be over 8]",
		"a from 4 to 8 by 2":   "[]",
	} {
		r := lang.Compile("t.trm", []byte("figure \"t\"\nchoose "+choose+"\ngiven A (0, 0)\ngiven B 9 from A\njoin AB\narc c centre A radius a cuts AB at R\ntask \"Draw {a}.\"\n"))
		if got := fmt.Sprint(texts(r.Problems)); got != want {
			t.Errorf("choose %s: %s, want %s", choose, got, want)
		}
	}
}
