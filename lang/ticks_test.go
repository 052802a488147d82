package lang_test

import (
	"math"
	"testing"

	"trammel/lang/program"
	"trammel/lang/solve"
)

// closest is how near two points of a figure are that are drawn and not one, with a letter
// or without.
func closest(t *testing.T, text string) float64 {
	p := flat("", titled(text))
	if p == nil {
		t.Fatalf("%s: refused", text)
	}
	plan, ok := planOf(p, solve.Inputs(p).Inputs)
	if !ok {
		t.Fatalf("%s: fails", text)
	}
	least := math.Inf(1)
	for i, a := range plan.at {
		for j, b := range plan.at {
			if i < j && p.Slots[i].Kind == program.Point && p.Slots[j].Kind == program.Point {
				if d := math.Hypot(a[0]-b[0], a[1]-b[1]); d > 1e-9 {
					least = min(least, d)
				}
			}
		}
	}
	return least
}

// TestTicksApart: the openings that calls choose keep their ticks off each other, and off
// points that are there.
func TestTicksApart(t *testing.T) {
	for _, text := range []string{`given circle k centre O radius 2
given circle l centre P radius 2
A, B, C, D, s, t by belts(k, l)`, `given points A, B
given C between A and B
given D between C and B
join AB
n by erect(AB, C)
m by erect(AB, D)`} {
		if d := closest(t, text); d < 0.19 {
			t.Errorf("%s\ntwo points are %.2f apart", text, d)
		}
	}
}

// TestOpensWide: an opening that a call chooses on a ray of a usual length is no less than
// half of it, and no knot on a short one.
func TestOpensWide(t *testing.T) {
	for _, call := range []string{"angle36", "angle60", "angle72", "angle90"} {
		for _, length := range []string{"2", "3", "4", "5"} {
			r := chosen(t, titled("given A (0, 0)\ngiven B (0, "+length+")\nray AB\nC by "+call+"(A, B)\nray AC"))
			at := spots(r)
			far := math.Hypot(at["B"][0], at["B"][1])
			if opening := math.Hypot(at["C"][0], at["C"][1]); opening < 0.5*far || opening > 2*far {
				t.Errorf("%s on %s: C is %.2f from A", call, length, opening)
			}
		}
	}
}
