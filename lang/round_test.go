package lang_test

import (
	"math"
	"strings"
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

// TestGoesRound: points that are taken on a circle go round it anticlockwise, one by one or in
// a loop, with gaps that are plainly unequal; no chord is nearly level, upright or a diameter.
func TestGoesRound(t *testing.T) {
	const ring = "given circle k centre O\n"
	for row, lines := range map[string]string{
		"A B":               ring + "take A on k\ntake B on k\njoin AB",
		"A B C":             ring + "take A on k\ntake B on k\ntake C on k\njoin ABCA",
		"A B P":             ring + "take A on k\ntake B on k\ntake P on k\njoin APB",
		"A B C D":           ring + "take A on k\ntake B on k\ntake C on k\ntake D on k\njoin ABCDA",
		"A B C D E":         ring + "take A on k\ntake B on k\ntake C on k\ntake D on k\ntake E on k\njoin ACEBDA",
		"P1 P2 P3 P4 P5":    ring + "repeat i from 1 to 5\n  take P[i] on k\nend\njoin P1P2P3P4P5P1",
		"P1 P2 P3 P4 P5 P6": ring + "take P1 on k\nrepeat i from 2 to 6\n  take P[i] on k\nend\njoin P1P2P3P4P5P6P1",
		"C D E":             ring + "given circle l centre M\ntake A on k\ntake B on k\ntake C on l\ntake D on l\ntake E on l\njoin CDEC",
	} {
		at, centre := spots(chosen(t, titled(lines))), "O"
		letters := strings.Fields(row)
		if letters[0] == "C" {
			centre = "M"
		}
		var bearings []float64
		for _, p := range letters {
			bearings = append(bearings, math.Atan2(at[p][1]-at[centre][1], at[p][0]-at[centre][0])*180/math.Pi)
		}
		round, last := 0.0, 0.0
		for i, b := range bearings {
			gap := math.Mod(bearings[(i+1)%len(bearings)]-b+720, 360)
			round += gap
			if gap < 33 || math.Abs(gap-last) < 2 {
				t.Errorf("%s\nthe gap after %s is %.1f°, that before %.1f°", lines, letters[i], gap, last)
			}
			last = gap
			for _, c := range bearings[:i] {
				if tilt := math.Abs(math.Remainder((b+c)/2, 90)); tilt < 5 {
					t.Errorf("%s\na chord of %s is %.1f° off level or upright", lines, letters[i], tilt)
				}
				if off := 180 - math.Abs(math.Remainder(b-c, 360)); off < 6 {
					t.Errorf("%s\na chord of %s is %.1f° off a diameter", lines, letters[i], off)
				}
			}
		}
		if math.Abs(round-360) > 1 {
			t.Errorf("%s\nthe points go round by %.0f°", lines, round)
		}
	}
}
