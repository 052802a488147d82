package lang_test

import (
	"math"
	"testing"
)

// way is how far two points of a figure are from each other.
func way(at map[string][2]float64, p, q string) float64 {
	return math.Hypot(at[p][0]-at[q][0], at[p][1]-at[q][1])
}

// TestStaysScalene: a free triangle is not isosceles, nor nearly so, though it has been
// made smaller for the page.
func TestStaysScalene(t *testing.T) {
	at := spots(chosen(t, titled(`given triangle ABC
X by triangleon(B, A)
Y by triangleon(C, B)
Z by triangleon(A, C)`)))
	a, b, c := way(at, "B", "C"), way(at, "C", "A"), way(at, "A", "B")
	for _, pair := range [][2]float64{{a, b}, {b, c}, {c, a}} {
		if math.Abs(pair[0]-pair[1]) < 0.05*pair[0] {
			t.Errorf("the sides are %.2f, %.2f and %.2f", a, b, c)
		}
	}
}

// TestStaysAslant: a point that a circle is free for does not make a right angle.
func TestStaysAslant(t *testing.T) {
	at := spots(chosen(t, titled(`given O about (0, 0)
given A about 3 from O
arc c centre O through A
take B on c, left of OA
take C on c, right of OA
join OB, OC
H by halve(A, O, B)
ray OH cuts c at D`)))
	if angle := math.Atan2(at["B"][1], at["B"][0]) * 180 / math.Pi; math.Abs(angle-90) < 2 {
		t.Errorf("AOB is %.1f°", angle)
	}
}

// TestSpreadsInside: points within a circle are all about it.
func TestSpreadsInside(t *testing.T) {
	r := chosen(t, titled(`given circle k centre O
given A inside k
given B inside k
given C inside k
join ABCA`))
	at, radius := spots(r), math.Sqrt(r.Figure.Circles[0].Circle.R2.Float())
	for _, side := range []string{"AB", "BC", "CA"} {
		if w := way(at, side[:1], side[1:]); w < 0.6*radius {
			t.Errorf("%s is %.2f in a circle of radius %.2f", side, w, radius)
		}
	}
}

// TestCrossesSteeply: where an arc cuts a straight flatly, whichever of centre and opening
// is chosen anew, both are; and no corner of a triangle is lost for it under a meeting.
func TestCrossesSteeply(t *testing.T) {
	r := chosen(t, titled(`given points A, B
join AB
take P on AB
n by erect(AB, P)
take Q on n, left of AB
arc c centre Q radius any over PQ cuts AB at L and R
join LQR`))
	at := spots(r)
	if angle := math.Acos(way(at, "P", "Q")/way(at, "L", "Q")) * 180 / math.Pi; angle < 30 {
		t.Errorf("the arc cuts AB at %.1f°", angle)
	}
	at = spots(chosen(t, titled(`given triangle ABC
given circle k centre A
k meets BC at X and Y`)))
	if x, y := way(at, "X", "B"), way(at, "Y", "C"); x < 0.2 || y < 0.2 {
		t.Errorf("X is %.2f from B, Y %.2f from C", x, y)
	}
}

// TestMeetsOnEqualTerms: circles that are given to meet each other are of about one size,
// and cross steeply.
func TestMeetsOnEqualTerms(t *testing.T) {
	r := chosen(t, titled(`given circle k centre K
given circle l centre L
given circle m centre M
k meets l at A and B
l meets m at C and D
m meets k at E and F
join AB, CD, EF`))
	at := spots(r)
	for _, meeting := range []string{"KAL", "LCM", "MEK"} {
		p, x, q := meeting[:1], meeting[1:2], meeting[2:]
		a, b, c := way(at, p, x), way(at, q, x), way(at, p, q)
		if max(a, b) > 2*min(a, b) {
			t.Errorf("circles about %s and %s have radii %.2f and %.2f", p, q, a, b)
		}
		if sine := math.Sin(math.Acos((a*a + b*b - c*c) / (2 * a * b))); sine < 0.6 {
			t.Errorf("at %s circles cross with sine %.2f", x, sine)
		}
	}
}
