package lang_test

import (
	"math"
	"slices"
	"testing"
)

// TestFreeTriangle: three free points make a triangle that is plainly scalene and
// plainly acute, with the third above the first two, whatever is constructed on it.
func TestFreeTriangle(t *testing.T) {
	for _, lines := range []string{
		"join ABCA",
		"join ABCA\nk, O by circumcircle(A, B, C)",
		"join ABCA\nk, I by incircle(A, B, C)",
		"join ABCA\nk, J by excircle(A, B, C)",
		"join ABCA\nG, L, M, N by centroid(A, B, C)",
		"join ABCA\nH, D, E, F by orthocentre(A, B, C)",
		"join ABCA\nk, O, L, M, N, D, E, F, X, Y, Z by ninepoint(A, B, C)",
		"join ABCA\nX, Y, Z by squaretriangle(A, B, C)",
		"k, l, m, D, E, F by threetouching(A, B, C)",
		"join ABCA\nH, D, E, F by orthocentre(A, B, C)\nk, O by circumcircle(A, B, C)\nG, L, M, N by centroid(A, B, C)",
		"join ABCA\nk, O by circumcircle(A, B, C)\nl, I by incircle(A, B, C)\nG by centroid(A, B, C)",
		"join ABCA\nP, n by bisect(A, B)\nr by parallel(n, C)\nm by erect(BC, B)",
	} {
		at := spots(chosen(t, titled("given points A, B, C\n"+lines)))
		a, b, c := at["A"], at["B"], at["C"]
		if c[1] <= max(a[1], b[1]) {
			t.Errorf("%s: C at %v is not above AB", lines, c)
		}
		sides := []float64{far(a, b), far(b, c), far(c, a)}
		slices.Sort(sides)
		if sides[0] > 0.9*sides[1] || sides[1] > 0.9*sides[2] {
			t.Errorf("%s: sides %.2f look alike", lines, sides)
		}
		cosine := (sides[0]*sides[0] + sides[1]*sides[1] - sides[2]*sides[2]) / (2 * sides[0] * sides[1])
		if angle := math.Acos(cosine) * 180 / math.Pi; angle > 85 {
			t.Errorf("%s: an angle is %.0f°", lines, angle)
		}
	}
}

func far(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// TestGivenTriangle: a triangle that is left to chance stays an ordinary one, whatever is
// constructed on it: no needle, and not nearly symmetrical.
func TestGivenTriangle(t *testing.T) {
	for _, lines := range []string{
		"given D between B and C\ngiven E between A and C\nproduce AB beyond B\nline n through D and E\nn meets AB at F",
		"k, O by circumcircle(A, B, C)\nG, P, Q, R by centroid(A, B, C)\nH, D, E, F by orthocentre(A, B, C)\nline e through O and H\nclaim G on e",
		"given Z outside ABC\nline a through A and Z\nline b through B and Z\nline c through C and Z\narc p centre Z through A\na meets p at D other than A",
	} {
		ps := cornersOf(spots(chosen(t, titled("given triangle ABC\njoin ABCA\n"+lines))), "ABC")
		for i, angle := range turns(ps) {
			if angle < 30 || angle > 85 {
				t.Errorf("%s: the angle at %c is %.0f°", lines, "ABC"[i], angle)
			}
		}
		if a, b := far(ps[0], ps[2]), far(ps[1], ps[2]); math.Abs(a-b) < 0.08*max(a, b) {
			t.Errorf("%s: AC is %.2f and BC %.2f", lines, a, b)
		}
	}
}

// TestFreeQuadrilateral: what is left to chance of a quadrilateral does not make it look
// right-angled.
func TestFreeQuadrilateral(t *testing.T) {
	ps := cornersOf(spots(chosen(t, titled("given quadrilateral ABCD with AB = 3, BC = 4, CD = 5, DA = 6\njoin ABCDA"))), "ABCD")
	for i, angle := range turns(ps) {
		if math.Abs(angle-90) < 6 {
			t.Errorf("the angle at %c is %.0f°", "ABCD"[i], angle)
		}
	}
}

// TestOnArcs: a point of an arc that is struck about others stands by them, where the arc is drawn.
func TestOnArcs(t *testing.T) {
	for lines, others := range map[string]string{
		"arc c centre A through B\ntake P on c\njoin AP":                                                        "B",
		"arc c centre A through B\narc d centre B through A\nc meets d at C above AB\ntake P on c\njoin AP, BP": "BC",
	} {
		at := spots(chosen(t, titled("given points A, B\n"+lines)))
		for _, o := range others {
			if chord, r := far(at["P"], at[string(o)]), far(at["A"], at["B"]); chord < 0.25*r || chord > r+1e-9 {
				t.Errorf("%s: P is %.2f from %c, on an arc of radius %.2f", lines, chord, o, r)
			}
		}
	}
}

// TestNotNearlyLevel: joins of points that are left to chance are not all but level or upright.
func TestNotNearlyLevel(t *testing.T) {
	for _, lines := range []string{
		"given circle k centre O\ntake A on k\ntake B on k\ntake P on k\njoin APB",
		"given points A, B\ngiven C above AB\njoin ACB",
	} {
		r := chosen(t, titled(lines))
		for _, s := range r.Figure.Straights {
			if s.Start == nil || s.End == nil {
				continue
			}
			x, y := math.Abs(s.Line.D.X.Float()), math.Abs(s.Line.D.Y.Float())
			if off := math.Atan(min(x, y)/max(x, y)) * 180 / math.Pi; off > 1e-9 && off < 2 {
				t.Errorf("%s: a join is %.2f° off level or upright", lines, off)
			}
		}
	}
}
