package lang_test

import (
	"math"
	"testing"
)

// offOf is how far a point is from the straight through two others.
func offOf(at map[string][2]float64, p, a, b string) float64 {
	dx, dy := at[b][0]-at[a][0], at[b][1]-at[a][1]
	return math.Abs(dx*(at[p][1]-at[a][1])-dy*(at[p][0]-at[a][0])) / math.Hypot(dx, dy)
}

// TestClearOfCentre: secants and chords that do not go through the centre of their circle
// do not look as if they did.
func TestClearOfCentre(t *testing.T) {
	for ends, lines := range map[string]string{
		"PA": "given circle k centre O\ngiven P outside k\ntake A on k\nline m through P and A\nm meets k at B other than A\nT, S, t, s by tangents(k, P)",
		"TA": "given circle k centre O radius 3\ngiven T on k at -90°\nt by tangent(k, T)\ngiven A on k\ngiven B on k\njoin TABT\ntake X on t, right of AT",
		"AB": "given circle k centre O\ngiven P outside k\ntake A on k\ntake B on k\nline m through P and A\nline n through P and B\nm meets k at C other than A\nn meets k at D other than B\njoin AB, CD",
	} {
		at := spots(chosen(t, titled(lines)))
		if off, r := offOf(at, "O", ends[:1], ends[1:]), way(at, "O", "A"); off < 0.15*r {
			t.Errorf("%s\n%s passes %.2f from the centre of a circle of radius %.2f", lines, ends, off, r)
		}
	}
}

// TestCrossesUnasked: a circle that crosses a ray does not look like one that touches it,
// though nothing names where they meet.
func TestCrossesUnasked(t *testing.T) {
	at := spots(chosen(t, titled("given points A, B\nray AB\ngiven M above AB\ncircle k centre M through A")))
	if angle := math.Acos(offOf(at, "M", "A", "B")/way(at, "M", "A")) * 180 / math.Pi; angle < 14 {
		t.Errorf("k cuts AB at %.1f°", angle)
	}
}

// TestMidpointLeavesFigure: the midpoint of two points, by a call at the end, leaves a figure
// as it is.
func TestMidpointLeavesFigure(t *testing.T) {
	lines := "given circle k centre O\ngiven P outside k\ntake A on k\ntake B on k\nline m through P and A\nline n through P and B\nm meets k at C other than A\nn meets k at D other than B\njoin AB, CD"
	old, now := spots(chosen(t, titled(lines))), spots(chosen(t, titled(lines+"\nZ by middle(O, P)")))
	for name, p := range old {
		if d := far(p, now[name]); d > 0.5 {
			t.Errorf("%s moves by %.2f", name, d)
		}
	}
}
