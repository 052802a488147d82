package lang_test

import (
	"strings"
	"testing"

	"trammel/lang"
)

// TestCounterExamples: false sources in which a figure shows that they are.
func TestCounterExamples(t *testing.T) {
	for _, test := range []struct{ lines, why, where string }{
		// Angles in the same segment are equal (Euclid III.21), in opposite ones they are not.
		{"given circle k centre O (0, 0) radius 3\ngiven A on k at 210°\ngiven B on k at 330°\ngiven P on k\ngiven Q on k\nclaim angle APB = angle AQB", "angle APB − angle AQB is ", "P at "},
		// A measurement that makes a triangle isosceles only as it is drawn.
		{"given A (0, 0)\ngiven B 6 from A\ngiven C about 5 from A, about 5 from B, above AB\nclaim AC = BC", "AC − BC is ", "C at "},
		// False as it stands.
		{"given A (0, 0)\ngiven B 6 from A\nclaim AB = 5", "AB − 5 is 1.00 cm", ""},
		// Meant of this figure only, and false elsewhere.
		{"given A (0, 0)\ngiven B about 6 from A\nclaim here AB = 6", "AB − 6 is ", "B at "},
	} {
		r := lang.Compile("counter.trm", []byte("figure \"counter\"\n"+test.lines+"\n"))
		found := r.CounterExamples()
		if len(found) != 1 {
			t.Errorf("%s\n%d counter-examples", test.lines, len(found))
			continue
		}
		x := found[0]
		if !strings.HasPrefix(x.Why, test.why) || !strings.HasPrefix(strings.Join(x.Where, ", "), test.where) || x.Figure == nil {
			t.Errorf("%s\n got %s (%s)", test.lines, x.Why, strings.Join(x.Where, ", "))
		}
	}
	r := lang.Compile("true.trm", []byte("figure \"true\"\ngiven points A, B, C\nM by middle(A, B)\nclaim AM = MB\n"))
	if found := r.CounterExamples(); len(found) > 0 {
		t.Errorf("a counter-example to %s: %s", found[0].Claim, found[0].Why)
	}
}
