package lang_test

import (
	"math"
	"slices"
	"strings"
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

// turnsOf are the bearings of points about another one, in degrees, each from 0 to 360.
func turnsOf(at map[string][2]float64, centre, points string) (all []float64) {
	o := at[centre]
	for _, name := range strings.Split(points, "") {
		p := at[name]
		all = append(all, math.Mod(math.Atan2(p[1]-o[1], p[0]-o[0])*180/math.Pi+360, 360))
	}
	return all
}

// TestSeatsRound: points that are left to chance on a circle go round it in their order,
// none beside another, whatever else is on it.
func TestSeatsRound(t *testing.T) {
	for _, f := range []struct{ lines, round string }{
		{"given circle k centre O\ntake A on k\ntake B on k\ntake C on k\ntake D on k\ntake E on k\njoin ABCDEA", "ABCDE"},
		{"given circle k centre O\ngiven A on k\ngiven B on k\ngiven C on k\njoin ABCA", "ABC"},
		{"given circle k centre O radius 3\ngiven A on k\ngiven B on k at 100°\ngiven C on k, below AB\njoin ABCA", "ABC"},
		{"given points A, B\nO by middle(A, B)\ncircle k centre O through A\ntake C on k\njoin ACB", "ABC"},
		{"given triangle ABC\nk, O by circumcircle(A, B, C)\ngiven P on k\njoin AP", "ABCP"},
		{"given points A, B, C\nk, O by circumcircle(A, B, C)\ntake P on k\ntake Q on k\njoin APB, AQB", "ABCPQ"},
	} {
		turns := turnsOf(spots(chosen(t, titled(f.lines))), "O", f.round)
		sorted := slices.Sorted(slices.Values(turns))
		for i, x := range sorted {
			gap := math.Mod(sorted[(i+1)%len(sorted)]-x+360, 360)
			if gap < 25 {
				t.Errorf("%s: two of the points at %.0f are %.0f° from each other", f.lines, turns, gap)
			}
		}
		if first := slices.Index(sorted, turns[0]); strings.HasPrefix(f.lines, "given circle k centre O\n") {
			for i, x := range turns {
				if sorted[(first+i)%len(sorted)] != x {
					t.Errorf("%s: the points go round as %.0f", f.lines, turns)
				}
			}
		}
	}
}

// TestGoesAlong: points that are left to chance on a free line follow each other along it.
func TestGoesAlong(t *testing.T) {
	at := spots(chosen(t, titled(`given line m
given line n
given A on m
given B on m
given C on m
given D on n
given E on n
given F on n
join AE, BD, AF, CD, BF, CE
AE meets BD at X
AF meets CD at Y
BF meets CE at Z`)))
	for _, pair := range []string{"AB", "BC", "DE", "EF", "XY", "YZ"} {
		if p, q := at[pair[:1]], at[pair[1:]]; p[0] >= q[0] {
			t.Errorf("%s is at %.2f, and %s at %.2f", pair[:1], p[0], pair[1:], q[0])
		}
	}
}

// TestFitsPaper: a figure of free things is made for the paper that browsers print, with
// what its lines and letters take besides its points.
func TestFitsPaper(t *testing.T) {
	for _, lines := range []string{
		"given S about (0, 0)\ngiven triangle ABC\nray SA\nray SB\nray SC\narc c centre A radius SA cuts SA at P other than S\narc d centre B radius SB cuts SB at Q other than S\narc e centre C radius SC cuts SC at R other than S\njoin PQRP",
		"given triangle ABC\ngiven P outside ABC\ngiven Q outside ABC\njoin PQ",
		"given line m\ngiven A above m\ngiven B above m\nk, T, O by throughtouch(A, B, m)",
		"given line a\ngiven A above a\ngiven B below a\nC, D by squareon(A, B)",
	} {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range spots(chosen(t, titled(lines))) {
			lo, hi = min(lo, p[0]), max(hi, p[0])
		}
		if hi-lo > 15.6 {
			t.Errorf("%s: the points take %.1f cm across", lines, hi-lo)
		}
	}
}

// TestPutsRound: a shape whose side a circle is to meet is put round it.
func TestPutsRound(t *testing.T) {
	for _, lines := range []string{
		"given circle k centre O\ngiven triangle ABC\nk meets AB at X and Y",
		"given circle k centre O\ngiven triangle ABC\nk meets CA at X and Y",
		"given circle k centre O\ngiven square ABCD\nk meets AB at X and Y\nk meets BC at Z and W",
	} {
		at := spots(chosen(t, titled(lines)))
		if w := way(at, "X", "Y"); w < 0.3*way(at, "A", "B") {
			t.Errorf("%s: XY is %.2f", lines, w)
		}
	}
}

// TestCutsAslant: a join of points that are left to chance on two sides of a triangle is not
// nearly parallel to the third.
func TestCutsAslant(t *testing.T) {
	for _, sides := range [][2]string{{"AB", "AC"}, {"AB", "BC"}, {"BC", "CA"}, {"CA", "AB"}} {
		at := spots(chosen(t, titled("given triangle ABC\ntake P on "+sides[0]+"\ntake Q on "+sides[1]+"\njoin PQ")))
		third := strings.NewReplacer(sides[0][:1], "", sides[0][1:], "").Replace(sides[1])
		other := strings.NewReplacer(sides[1][:1], "", sides[1][1:], "").Replace(sides[0])
		u := third + other
		sine := ((at[u[1:]][0]-at[u[:1]][0])*(at["Q"][1]-at["P"][1]) - (at[u[1:]][1]-at[u[:1]][1])*(at["Q"][0]-at["P"][0])) / way(at, u[:1], u[1:]) / way(at, "P", "Q")
		if angle := math.Asin(math.Abs(sine)) * 180 / math.Pi; angle < 5 {
			t.Errorf("P on %s, Q on %s: PQ is %.1f° from parallel to %s", sides[0], sides[1], angle, u)
		}
	}
}

// TestRoundAbout: five or six free points are the corners of a convex polygon in their order.
func TestRoundAbout(t *testing.T) {
	for n := 5; n <= 6; n++ {
		names := "ABCDEF"[:n]
		at := spots(chosen(t, titled("given points "+strings.Join(strings.Split(names, ""), ", ")+"\njoin "+names+"A")))
		for i := range n {
			a, b, c := at[names[i:i+1]], at[names[(i+1)%n:(i+1)%n+1]], at[names[(i+2)%n:(i+2)%n+1]]
			if (b[0]-a[0])*(c[1]-a[1]) <= (b[1]-a[1])*(c[0]-a[0]) {
				t.Errorf("of %d points %v, %v and %v turn the wrong way", n, a, b, c)
			}
		}
	}
}

// TestStandsAslant: a join of what is left to chance on and off a line is not nearly at right
// angles to it.
func TestStandsAslant(t *testing.T) {
	for _, on := range []string{"take P on m", "take P on m\ntake Q on m", "take P on m\ntake Q on m\ntake R on m"} {
		for _, off := range []string{"", "given B above m\n", "given B below m\n", "given B above m\ngiven C above m\n"} {
			lines := "given line m\ngiven A above m\n" + off + on
			feet, tops := strings.Count(on, "take"), "ABC"[:1+strings.Count(off, "given")]
			for _, p := range "PQR"[:feet] {
				for _, a := range tops {
					lines += "\njoin " + string(a) + string(p)
				}
			}
			at := spots(chosen(t, titled(lines)))
			for _, p := range "PQR"[:feet] {
				for _, a := range tops {
					u, v := at[string(a)], at[string(p)]
					if turn := math.Atan2(math.Abs(u[0]-v[0]), math.Abs(u[1]-v[1])) * 180 / math.Pi; turn < 2.5 {
						t.Errorf("%s\n%c%c is %.1f° from upright", lines, a, p, turn)
					}
				}
			}
		}
	}
}
