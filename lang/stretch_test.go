package lang

import (
	"testing"

	"trammel/geom"
)

// TestStretch: a line is drawn as far as the point that a claim names on it, in
// whatever words the claim does so.
func TestStretch(t *testing.T) {
	const head = `figure "t"
given A (0, 0)
given B (4, 0)
given C (9, 0)
given D (9, 5)
given E (7, 4)
given F (8, 2)
given circle k centre O (12, 2) radius 2
line p through A and B
line q through D and C
line r through E and F
`
	for claim, far := range map[string]float64{
		"claim collinear ABC":      9,
		"claim C on p":             9,
		"claim concurrent p, q, r": 9,
		"claim k touches p":        12,
		"claim A ≠ B":              4,
		"claim not D on p":         4,
	} {
		r := Compile("t.trm", []byte(head+claim+"\n"))
		if r.Problems.Failed() {
			t.Errorf("%s: %v", claim, r.Problems)
			continue
		}
		if got := reachOf(r.Figure.Straights[0].Used); got != far {
			t.Errorf("%s: p is drawn as far as %g, not %g", claim, got, far)
		}
	}
}

// reachOf is the greatest x of points.
func reachOf(ps []geom.Point) (x float64) {
	for _, p := range ps {
		x = max(x, p.X.Float())
	}
	return x
}
