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
