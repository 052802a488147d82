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
