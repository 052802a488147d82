package stdlib_test

import (
	"fmt"
	"math"
	"math/rand"
)

// fraction is p/q, with q > 0.
type fraction struct{ p, q int }

func (f fraction) String() string {
	g := f.q
	for r := f.p % f.q; r != 0; {
		g, r = r, g%r
	}
	if g < 0 {
		g = -g
	}
	if f.q == g {
		return fmt.Sprint(f.p / g)
	}
	return fmt.Sprintf("%d/%d", f.p/g, f.q/g)
}

func (f fraction) float() float64            { return float64(f.p) / float64(f.q) }
func (f fraction) over(n int) fraction       { return fraction{f.p, f.q * n} }
func (f fraction) plus(g fraction) fraction  { return fraction{f.p*g.q + g.p*f.q, f.q * g.q} }
func (f fraction) minus(g fraction) fraction { return fraction{f.p*g.q - g.p*f.q, f.q * g.q} }
func (f fraction) times(g fraction) fraction { return fraction{f.p * g.p, f.q * g.q} }
func short(r *rand.Rand, low, high int) fraction {
	q := 1 + r.Intn(3)
	return fraction{low*q + r.Intn((high-low)*q+1), q}
}

// point is a point with fractions for coordinates.
type point struct{ x, y fraction }

func (p point) String() string           { return fmt.Sprintf("(%s, %s)", p.x, p.y) }
func (p point) given(name string) string { return "given " + name + " " + p.String() + "\n" }

// somewhere is a random point of the page, some ten units across.
func somewhere(r *rand.Rand) point { return point{short(r, -5, 5), short(r, -5, 5)} }

// away is a random point that does not nearly coincide with a.
func away(r *rand.Rand, a point) point {
	for {
		if b := somewhere(r); dist(a, b) > 1 {
			return b
		}
	}
}

// between is the point t of the way from a to b.
func between(a, b point, t fraction) point {
	return point{a.x.plus(t.times(b.x.minus(a.x))), a.y.plus(t.times(b.y.minus(a.y)))}
}

// around is the given of a circle.
func around(name, centre string, o point, radius fraction) string {
	return fmt.Sprintf("given circle %s centre %s %s radius %s\n", name, centre, o, radius)
}

func dist(a, b point) float64 {
	return math.Hypot(a.x.float()-b.x.float(), a.y.float()-b.y.float())
}

// cross is twice the area of the triangle abc, with its sign.
func cross(a, b, c point) float64 {
	return (b.x.float()-a.x.float())*(c.y.float()-a.y.float()) - (b.y.float()-a.y.float())*(c.x.float()-a.x.float())
}

// apart tells that three points make a triangle that is no mere sliver: each
// of its angles has a sine over 0.15, each side is over 1.
func apart(a, b, c point) bool {
	ab, bc, ca := dist(a, b), dist(b, c), dist(c, a)
	area := math.Abs(cross(a, b, c))
	return min(ab, bc, ca) > 1 && area > 0.15*max(ab*bc, bc*ca, ca*ab)
}

// square tells that the angle at b is a right one, or nearly.
func square(a, b, c point) bool {
	dot := (a.x.float()-b.x.float())*(c.x.float()-b.x.float()) + (a.y.float()-b.y.float())*(c.y.float()-b.y.float())
	return math.Abs(dot) < 1e-9
}
