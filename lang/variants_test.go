package lang_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
)

const variedSource = `figure "two radii"
choose a from 1 to 9
choose α from 40° to 60° by 10°
given A (0, 0)
given B 10 from A
given angle BAC = α
arc c centre A radius a
arc d centre B radius 6
c meets d at X above AB
join AX, AC
task "Find X with AX = {a} cm." for 2 marks
answer AX, angle BAC
`

func variants(text string, n int, seed uint64) ([]lang.Variant, []lang.PassedOver, source.List) {
	return lang.Compile("v.trm", []byte(text)).Variants(n, seed)
}

// A variant is never dealt a value with which the arcs do not meet (a ≤ 4), or
// cross under 30° (elementary: at a = 4.1 and at a > 15).
func TestVariants(t *testing.T) {
	dealt, passed, problems := variants(variedSource, 12, 7)
	if problems.Failed() || len(dealt) != 12 {
		t.Fatalf("%d dealt: %v", len(dealt), problems)
	}
	seen := map[string]bool{}
	for _, v := range dealt {
		key := fmt.Sprint(v.Values)
		if seen[key] {
			t.Errorf("%s is dealt twice", key)
		}
		seen[key] = true
		a := v.Values[0].Value
		if strings.Contains("1 2 3 4", a) {
			t.Errorf("a = %s is dealt: the arcs do not meet", a)
		}
		if task, marks := v.Task(); task != "Find X with AX = "+a+" cm." || marks != 2 {
			t.Errorf("task %q for %d marks", task, marks)
		}
		answers := v.Answers()
		if want := a + "0 mm"; answers[0].Measured != want || answers[1].Exact != v.Values[1].Value {
			t.Errorf("%s: answers %+v", key, answers)
		}
	}
	for _, p := range passed {
		if p.Why == "" || len(p.Values) != 2 {
			t.Errorf("passed over without a reason: %+v", p)
		}
	}
}

// TestNothingSpecial: an equilateral, isosceles or right-angled triangle is not
// dealt among general ones, but what all values have in common is no luck.
func TestNothingSpecial(t *testing.T) {
	sides := `figure "t"
choose a from 8 to 10
choose b from 6 to 8
choose c from 7 to 9
given triangle ABC with AB = a, BC = b, CA = c
join ABCA
`
	dealt, passed, problems := variants(sides, 12, 7)
	if len(dealt) != 12 {
		t.Fatal(problems)
	}
	for _, v := range dealt {
		a, b, c := v.Values[0].Value, v.Values[1].Value, v.Values[2].Value
		if a == b || b == c || c == a || a == "10" && b == "6" && c == "8" {
			t.Errorf("dealt: %v", v.Values)
		}
	}
	if len(passed) == 0 || !strings.Contains(fmt.Sprint(passed), "AB = BC, which is not so with other values") {
		t.Errorf("passed over: %v", passed)
	}
	square := "figure \"t\"\nchoose a from 4 to 8\ngiven square ABCD with AB = a\njoin AC, BD\n"
	if dealt, passed, _ := variants(square, 5, 1); len(dealt) != 5 || len(passed) > 0 {
		t.Errorf("of squares %d are dealt, and passed over %v", len(dealt), passed)
	}
}

// TestUnusedChoice: a choice that nothing uses is warned of.
func TestUnusedChoice(t *testing.T) {
	for use, want := range map[string]bool{"": true, "# a is not used\n": true, "given B a from A\njoin AB\n": false, "task \"Draw {a}.\"\n": false, "given B 2 a from A\njoin AB\n": false} {
		r := lang.Compile("t.trm", []byte("figure \"t\"\nchoose a from 4 to 8\ngiven A (0, 0)\n"+use))
		if got := strings.Contains(fmt.Sprint(texts(r.Problems)), "nothing uses a"); got != want || r.Figure == nil {
			t.Errorf("%q: %v", use, texts(r.Problems))
		}
	}
}

func texts(problems source.List) (all []string) {
	for _, p := range problems {
		all = append(all, p.Text)
	}
	return all
}

// TestTypedUnits: a value goes into a task with the unit in which it was typed, and
// a second one beside it is refused.
func TestTypedUnits(t *testing.T) {
	for _, c := range []struct{ choose, place, want string }{
		{"a from 50 mm to 80 mm by 5 mm", "{a}", "65 mm"}, {"a from 5 cm to 8 cm by 5 mm", "{a}", "6.5 cm"},
		{"a from 5 to 8 by 1/2", "{a} cm", "6.5 cm"}, {"a from 40° to 60° by 10°", "{a}", "50°"},
		{"a from 50 mm to 80 mm by 5 mm", "{a} mm", ""}, {"a from 40° to 60° by 10°", "{a}°", ""},
	} {
		for _, unit := range []string{"", "unit 8 mm\n"} {
			r := lang.Compile("t.trm", []byte("figure \"t\"\n"+unit+"choose "+c.choose+"\ngiven A (0, 0)\ntask \"AB = "+c.place+".\"\n"))
			text := ""
			if r.Figure != nil {
				text, _ = r.Task()
				text = strings.TrimSuffix(strings.TrimPrefix(text, "AB = "), ".")
			}
			if text != c.want || (c.want == "") != r.Problems.Failed() {
				t.Errorf("choose %s, %s: %q, want %q; %v", c.choose, c.place, text, c.want, r.Problems)
			}
		}
	}
}

// TestVariantsRepeat: the same seed deals the same, another seed does not.
func TestVariantsRepeat(t *testing.T) {
	values := func(seed uint64) (all [][]lang.Varied) {
		dealt, _, _ := variants(variedSource, 8, seed)
		for _, v := range dealt {
			all = append(all, v.Values)
		}
		return all
	}
	if !reflect.DeepEqual(values(7), values(7)) {
		t.Error("one seed dealt two hands")
	}
	if reflect.DeepEqual(values(7), values(8)) {
		t.Error("two seeds dealt one hand")
	}
}

// TestVariantsDifferInWhatWasAsked: what is left to chance stays.
func TestVariantsDifferInWhatWasAsked(t *testing.T) {
	text := `figure "t"
choose a from 4 to 8 by 1/2
given line m through A (0, 0) and B (9, 0)
given P on m, 4 from A
arc c centre P radius any cuts m at L and R
given C a from A at 70° to AB
join AC
`
	first := lang.Compile("v.trm", []byte(text))
	dealt, _, problems := first.Variants(6, 1)
	if len(dealt) != 6 {
		t.Fatal(problems)
	}
	for _, v := range dealt {
		if got, want := v.Choices(), first.Choices(); !reflect.DeepEqual(got, want) {
			t.Errorf("%v: chosen %v, in the picture %v", v.Values, got, want)
		}
	}
}

// TestNoVariant: where no value will do, the choice is blamed, with the reasons.
func TestNoVariant(t *testing.T) {
	text := `figure "t"
choose a from 6 to 6.2 by 1/10
given A (0, 0)
given B 12.3 from A
arc c centre A radius 6.25
arc d centre B radius a
c meets d at X above AB
join AX
`
	dealt, passed, problems := variants(text, 3, 1)
	if len(dealt) != 0 || !problems.Failed() {
		t.Fatalf("%d dealt, %d passed over", len(dealt), len(passed))
	}
}
