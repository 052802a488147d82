package lang_test

import (
	"strings"
	"testing"
)

// TestChoicesTellRanges: what else would have done is told of openings and of
// points, on lines and circles and anywhere; an opening that would fill more
// than a page would not do.
func TestChoicesTellRanges(t *testing.T) {
	r := chosen(t, titled(`given A (0, 0)
given B (8, 0)
join AB
take X on AB
given P above AB
given circle k centre O (4, -4) radius 2
given Q on k
arc c centre X radius any cuts AB at L and R`))
	told := map[string]string{}
	for _, c := range r.Choices() {
		told[c.Name] = c.Range
	}
	for name, want := range map[string]string{
		"X":     "from (2.50, 0) to (5.50, 0)",
		"P":     "from (0.08, 2.72) to (7.92, 2.72) or from (6.72, 0.08) to (6.72, 7.92)",
		"arc c": "0.12 to 3.2",
	} {
		if told[name] != want {
			t.Errorf("%s: %q, want %q", name, told[name], want)
		}
	}
	if want := "anticlockwise from 39° to 23° on k"; told["Q"] != want {
		t.Errorf("Q: %q, want %q", told["Q"], want)
	}
}

// TestChoicesOfCalls: the openings of calls are told at the line of the outermost one, with
// the names of those that they stand in; not those of unseen ones.
func TestChoicesOfCalls(t *testing.T) {
	r := chosen(t, titled(`given A (0, 0)
given B (8, 0)
join AB
G by golden(A, B)
M by middle(A, G) unseen`))
	var told []string
	for _, c := range r.Choices() {
		if told = append(told, c.Name); c.Line != 5 || !strings.HasPrefix(c.Value, "opening ") || c.Range == "" {
			t.Errorf("%+v", c)
		}
	}
	if got, want := strings.Join(told, ", "), "arc c of erect of golden, arc d of erect of golden, arc c of middle of golden"; got != want {
		t.Errorf("told are %s, want %s", got, want)
	}
}
