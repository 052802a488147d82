package lang_test

import (
	"math"
	"testing"
)

// TestKnowsRepeatsAhead: points that a repeat takes on one line or circle stand along it in
// turn, well apart, and not at equal steps.
func TestKnowsRepeatsAhead(t *testing.T) {
	for lines, names := range map[string][]string{
		"given line m\ntake P1 on m\nrepeat i from 1 to 3\n  n[i] by erect(m, P[i])\n  take P[i+1] on m\nend": {"P1", "P2", "P3", "P4"},
		"given line m\ngiven Q above m\nrepeat i from 1 to 3\n  take A[i] on m\n  join A[i]Q\nend":            {"A1", "A2", "A3"},
	} {
		at := spots(chosen(t, titled(lines)))
		was := 0.0
		for i := range names[1:] {
			gap := at[names[i+1]][0] - at[names[i]][0]
			if gap < 1.2 || math.Abs(gap-was) < 0.2 {
				t.Errorf("%s: %s is %.2f right of %s, and that %.2f of the one before", lines, names[i+1], gap, names[i], was)
			}
			was = gap
		}
	}
	at := spots(chosen(t, titled("given circle k centre O\nrepeat i from 1 to 5\n  take P[i] on k\nend\njoin P1P2P3P4P5P1")))
	names, turned := []string{"P1", "P2", "P3", "P4", "P5", "P1"}, 0.0
	for i := range names[1:] {
		p, q, o := at[names[i]], at[names[i+1]], at["O"]
		turn := math.Atan2(q[1]-o[1], q[0]-o[0]) - math.Atan2(p[1]-o[1], p[0]-o[0])
		turned += math.Mod(turn+4*math.Pi, 2*math.Pi)
	}
	if math.Abs(turned-2*math.Pi) > 0.01 {
		t.Errorf("the pentagon goes %.1f times round", turned/2/math.Pi)
	}
}

// TestTakesAslant: a point of a line is plainly off the foot of the perpendicular from a point
// that was given off that line.
func TestTakesAslant(t *testing.T) {
	for _, lines := range []string{
		"given line g\ngiven A above g\ntake B on g\njoin AB\nM by middle(A, B)\nn, F by drop(g, A)",
		"given line g\ngiven A below g\nn, F by drop(g, A)\ntake B on g\njoin AB",
	} {
		at := spots(chosen(t, titled(lines)))
		if angle := math.Atan2(way(at, "A", "F"), way(at, "F", "B")) * 180 / math.Pi; angle < 45 || angle > 70 {
			t.Errorf("%s: AB is at %.1f° to the line", lines, angle)
		}
	}
}

// TestTakesWellOff: points of a perpendicular are well off the line that it stands on, on
// either side and not alike far off.
func TestTakesWellOff(t *testing.T) {
	at := spots(chosen(t, titled("given points A, B\nM, n by bisect(A, B)\ntake P on n\ntake Q on n\njoin PAQBP")))
	p, q, all := way(at, "P", "M"), way(at, "Q", "M"), way(at, "A", "B")
	if min(p, q) < 0.3*all || math.Abs(p-q) < 0.15*all || way(at, "P", "Q") < p {
		t.Errorf("P is %.2f from M, Q %.2f, on %.2f", p, q, all)
	}
	at = spots(chosen(t, titled("given line m\ngiven A above m\nn, F by drop(m, A) unseen\ntake B on n")))
	if off := min(way(at, "B", "F"), way(at, "B", "A")); off < 1.2 {
		t.Errorf("B is only %.2f from A or F", off)
	}
}

// TestTakesAcross: joins of points of two lines that are to meet cross well off their ends.
func TestTakesAcross(t *testing.T) {
	at := spots(chosen(t, titled("given line m\ngiven line n\nm meets n at S\ntake A on m\ntake B on n\ntake C on m\ntake D on n\njoin AB, CD\nAB meets CD at X")))
	for _, p := range []string{"A", "B", "C", "D"} {
		if off := way(at, p, "X"); off < 1 {
			t.Errorf("X is %.2f from %s", off, p)
		}
	}
	if gap := way(at, "A", "C"); gap < 2 {
		t.Errorf("A and C are %.2f apart", gap)
	}
}

// TestTakesMidwayWithin: a construction takes the only point of a straight well off its ends.
func TestTakesMidwayWithin(t *testing.T) {
	at := spots(chosen(t, "construction spot(point A, point B) gives point M\n  \"Any point.\"\n  take M on AB\nend\n"+titled("given points A, B\nM by spot(A, B)")))
	if part := way(at, "A", "M") / way(at, "A", "B"); part < 0.35 || part > 0.65 {
		t.Errorf("M is at %.2f of AB", part)
	}
}
