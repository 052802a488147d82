package lang_test

import (
	"math"
	"strings"
	"testing"
)

// TestObtusePlainly: a free obtuse triangle is plainly scalene, so that the foot of its
// altitude and the middle of its base lie plainly apart, and stays obtuse.
func TestObtusePlainly(t *testing.T) {
	at := spots(chosen(t, titled(`given obtuse triangle ABC
join ABCA
H, D, E, F by orthocentre(A, B, C)
M by middle(A, B)`)))
	a, b, c := way(at, "B", "C"), way(at, "C", "A"), way(at, "A", "B")
	if angle := math.Acos((a*a+b*b-c*c)/(2*a*b)) * 180 / math.Pi; angle < 102 || angle > 120 {
		t.Errorf("the angle at C is %.1f°", angle)
	}
	if foot := way(at, "F", "M"); foot < 0.1*c {
		t.Errorf("F is %.2f from M, and AB is %.2f", foot, c)
	}
}

// TestAsidePlainly: points of lines on one side of a transversal stand well away from where
// it crosses them, wherever that is.
func TestAsidePlainly(t *testing.T) {
	for _, lines := range []string{
		"given line m\ngiven line n parallel to m\ntake A on m\ntake B on n\nline t through A and B\ntake P on m, right of AB\ntake Q on n, left of AB\nmark angle PAB = QBA",
		"given line m\ngiven line n parallel to m\ntake A on m\ntake B on n\nline t through A and B\ntake P on m, left of AB\ntake Q on n, right of AB\nmark angle PAB = QBA",
		"given line m\ngiven line n\ntake A on m\ntake B on n\njoin AB\ntake P on m, right of AB\ntake Q on n, right of AB",
	} {
		at := spots(chosen(t, titled(lines)))
		p, q := way(at, "A", "P"), way(at, "B", "Q")
		if min(p, q) < 1.5 || max(p, q) > 2.2*min(p, q) {
			t.Errorf("%s: AP is %.2f, BQ %.2f", lines, p, q)
		}
	}
}

// TestSpreadsOverTheSheet: a figure of points on two free lines makes use of the sheet.
func TestSpreadsOverTheSheet(t *testing.T) {
	at := spots(chosen(t, titled(`given line m
given line n
take A on m
take B on m
take C on m
take D on n
take E on n
take F on n
join AE, DB
join AF, DC
join BF, EC
AE meets DB at X
AF meets DC at Y
BF meets EC at Z
claim collinear XYZ`)))
	lo, hi := room(at, "ABCDEF")
	if size := math.Hypot(hi[0]-lo[0], hi[1]-lo[1]); size < 6.5 {
		t.Errorf("it is %.2f large", size)
	}
	if all := nearest(at, "ABCDEFXYZ"); all < 0.7 {
		t.Errorf("two points are %.2f apart", all)
	}
}

// nearest is how near any two of some points are.
func nearest(at map[string][2]float64, letters string) float64 {
	least := math.Inf(1)
	for i, p := range strings.Split(letters, "") {
		for _, q := range strings.Split(letters[:i], "") {
			least = min(least, way(at, p, q))
		}
	}
	return least
}

// TestLeavesRoom: points that are taken one after another on each other's rest are all over
// the way, with gaps that are plainly unequal.
func TestLeavesRoom(t *testing.T) {
	for lines, row := range map[string]string{
		"given points A, B\ntake P on AB\ntake Q on PB\ntake R on QB\ntake S on RB\ntake T on SB\ntake U on TB": "APQRSTUB",
		"given points A, B\njoin AB\ntake P on AB\ntake Q on AP\ntake R on AQ":                                  "ARQPB",
		"given points A, B\njoin AB\ntake P on AB\ntake Q on PB\ntake R on AP":                                  "ARPQB",
		"given points A, B\ngiven C between A and B\ngiven D between C and B\ngiven E between B and D":          "ACDEB",
	} {
		at := spots(chosen(t, titled(lines)))
		whole, last := way(at, "A", "B"), 0.0
		for i := range len(row) - 1 {
			gap := way(at, row[i:i+1], row[i+1:i+2])
			if even := whole / float64(len(row)-1); gap < 0.6*even || gap > 1.6*even || math.Abs(gap-last) < 0.05*even {
				t.Errorf("%s: %s is %.2f of %.2f, and the gap before %.2f", lines, row[i:i+2], gap, whole, last)
			}
			last = gap
		}
	}
}

// TestTakesAlone: a point on each of two lines, or of two sides, makes a join that runs
// plainly aslant to all that is there.
func TestTakesAlone(t *testing.T) {
	at := spots(chosen(t, titled("given line m\ngiven line n\nm meets n at S\ntake A on m\ntake B on n\njoin AB\ntake C on m\np by parallel(AB, C)\np meets n at D")))
	if a, b := way(at, "S", "C"), way(at, "S", "D"); min(a, b) < 2.5 {
		t.Errorf("SC is %.2f, SD %.2f", a, b)
	}
	at = spots(chosen(t, titled("given triangle ABC\ngiven O outside ABC\njoin ABCA\nray OA\nray OB\nray OC\ntake D on OA\ntake E on OB\ntake F on OC\njoin DEFD")))
	if least := nearest(at, "DEFO"); least < 1 {
		t.Errorf("of D, E, F, O two are %.2f apart", least)
	}
}

// TestFarInAngle: a point within a given angle stands far out and plainly off its bisector,
// and one on the ray to it past the middle.
func TestFarInAngle(t *testing.T) {
	for _, size := range []string{"", " = 35°", " = 70°", " = 100°"} {
		at := spots(chosen(t, titled("given angle BAC"+size+"\ngiven D inside BAC\nray AD\ntake P on AD\nn, F by drop(AB, P)")))
		bearing := func(p string) float64 { return math.Atan2(at[p][1], at[p][0]) * 180 / math.Pi }
		if off := math.Abs(bearing("D") - bearing("C")/2); off < 0.12*bearing("C") {
			t.Errorf("%s: D is %.1f° off the bisector", size, off)
		}
		if d := way(at, "A", "D"); d < 0.4*way(at, "A", "B") || way(at, "A", "P") < d/2 {
			t.Errorf("%s: AD is %.2f, AP %.2f, AB %.2f", size, d, way(at, "A", "P"), way(at, "A", "B"))
		}
	}
}

// TestCrossesFarFromEnds: joins of four free points that are to meet do so far from their ends.
func TestCrossesFarFromEnds(t *testing.T) {
	for _, joins := range [][2]string{{"AB", "CD"}, {"AC", "BD"}, {"AD", "BC"}, {"CB", "DA"}, {"DC", "AB"}} {
		at := spots(chosen(t, titled("given points A, B, C, D\njoin "+joins[0]+", "+joins[1]+"\n"+joins[0]+" meets "+joins[1]+" at S")))
		for _, j := range joins {
			whole := way(at, j[:1], j[1:])
			if end := min(way(at, "S", j[:1]), way(at, "S", j[1:])); end < 0.25*whole {
				t.Errorf("%v: S is %.2f from an end of %s, which is %.2f", joins, end, j, whole)
			}
		}
	}
}

// TestCentresApart: in a free triangle of which two centres or more are made, these, and feet
// and midpoints, lie plainly apart.
func TestCentresApart(t *testing.T) {
	for lines, apart := range map[string][]string{
		"k, O by circumcircle(A, B, C) unseen\nH, D, E, F by orthocentre(A, B, C) unseen\nG, L, M, N by centroid(A, B, C) unseen": {"DL", "EM", "FN"},
		"k, O by circumcircle(C, B, A)\nl, I by incircle(B, A, C)":                                                                {"OI"},
	} {
		at := spots(chosen(t, titled("given triangle ABC\n"+lines)))
		for _, p := range apart {
			if w := way(at, p[:1], p[1:]); w < 0.7 {
				t.Errorf("%s: %s is %.2f", lines, p, w)
			}
		}
	}
}
