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
