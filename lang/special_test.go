package lang_test

import (
	"strings"
	"testing"

	"trammel/lang"
)

// TestExceptions: special positions in which theorems fail or mean nothing. That
// they do is elementary (from memory, no source).
func TestExceptions(t *testing.T) {
	for _, test := range []struct{ lines, want string }{
		// The medians of three points on a line meet in no single point.
		{"given points A, B, C\nL by middle(B, C)\nM by middle(C, A)\njoin AL, BM\nAL meets BM at G\nclaim AG = 2 GL", "C lies on AB"},
		// Euclid III.31: at the ends of the diameter there is no angle.
		{"given circle k centre O (0, 0) radius 3\ngiven A on k at 180°\ngiven B on k at 0°\ngiven C on k\nclaim angle ACB = 90°", "C is A, C is B"},
		// The bisector of an angle that is none.
		{"given A (0, 0)\ngiven B (6, 0)\ngiven points C\nH by halve(B, A, C)\nclaim angle BAH = HAC", "C lies on AB"},
		// The lines AD and BC of a trapezium meet, but not when they are parallel.
		{"given A (0, 0)\ngiven B (6, 0)\ngiven C (5, 3)\ngiven points D\nline m through A and D\nline n through B and C\nm meets n at S\nclaim collinear ADS", "D is A, DA is parallel to BC"},
		// The circle on AB and the perpendicular bisector: nothing special.
		{"given A (0, 0)\ngiven B (6, 0)\ngiven points P\nclaim PA² + PB² > 17", ""},
		// C comes to AB where A is too, straight up; but elsewhere on AB both angles are
		// 0° or both 180°.
		{"given A about (-3, 2)\ngiven B about (6, 3)\ngiven C about (-3, -5.5)\nD by middle(B, C)\nE by middle(B, A)\nF by middle(D, B)\nclaim angle EDB = angle EDF", "B is A, C is A, C is B"},
		// The line and its points: B on AC is B on the line, and B at A is no line.
		{"given A about (0, 0)\ngiven C (0, 1)\ngiven B about (3, 0)\ncircle k centre C radius 4\nline m through B and A\nk meets m at F and G\nclaim collinear FAB", "B is A"},
		// Tangents at the ends of a diameter are parallel.
		{"given circle k centre O radius about 3\ntake A on k\ntake B on k\nt by tangent(k, A)\ns by tangent(k, B)\ns meets t at P\nclaim PA = PB", "B is A, B lies on OA"},
		// A right angle at A brings the altitude's foot to A, where no angle is left: so
		// however the points are given, and though the arcs drawn here do not reach it.
		{"given points A, B, C\nline m through A and B\nn, F by drop(m, C)\nclaim angle ACF + angle CAF = 90°", "C lies on AB, angle CAB = 90°"},
		{"given A about (0.4, 0)\ngiven B about (4, 0.2)\ngiven C about (1, 3)\nline m through A and B\nn, F by drop(m, C)\nclaim angle ACF + angle CAF = 90°", "C lies on AB, angle CAB = 90°"},
		{"given points A, B, C\nH, D, E, F by orthocentre(A, B, C)\nclaim triangle AEF similar to ABC", "C lies on AB, angle CAB = 90°"},
		// Where C is as far from A as from B and right as well, the right angle is to blame.
		{"given A (0, 0)\ngiven B about 6 from A\ngiven C about (2, 3)\na, D by drop(CA, B)\nclaim angle BDC = 90°", "C lies on AB, angle ACB = 90°"},
		// An angle is straight only where its corner lies between the others.
		{"given points A, B, C\nclaim angle ABC < 180°", "B is A, C is B, B lies between A and C"},
		{"given points A, B, C\nclaim reflex angle ABC > 180°", "B is A, C is B, B lies between A and C"},
		// Circles that do not meet in a whole region, which a special position of a point
		// that plays no part happens to lie in.
		{"given A about (0, 0)\ngiven B about (4, 0)\ngiven C about (4, 4)\ngiven D about (2, 1)\ncircle b centre C radius CD\ncircle d centre B radius BC\nb meets d at H and I\nclaim CH = CI", "D is C"},
	} {
		r := lang.Compile("special.trm", []byte("figure \"special\"\n"+test.lines+"\n"))
		if r.Figure == nil {
			t.Errorf("%s\n%s", test.lines, r.Problems[0].Text)
			continue
		}
		reaches, _ := r.Reaches(1)
		if got := strings.Join(r.Exceptions(reaches)[0], ", "); got != test.want {
			t.Errorf("%s\n got %s\nwant %s", test.lines, got, test.want)
		}
	}
}
