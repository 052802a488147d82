package region

import (
	"math"

	"trammel/geom"
)

// Spot is a point as a straight that ends where it starts, for the conditions
// that take either.
func Spot(p geom.Point) geom.Straight {
	f := p.X.Field()
	return geom.Straight{Line: geom.Line{P: p, D: geom.Vector{X: f.Int(1), Y: f.Int(0)}}, Start: &p, End: &p}
}

// Nearer is the points nearer to one straight than to another.
func Nearer(one, other geom.Straight) Condition { return nearer{spineOf(one), spineOf(other)} }

// Within is the points less than a distance from a straight, its square given.
func Within(of geom.Straight, square geom.Real) Condition {
	return within{spineOf(of), square.Float(), false}
}

// Beyond is the points more than a distance from a straight, its square given.
func Beyond(of geom.Straight, square geom.Real) Condition {
	return within{spineOf(of), square.Float(), true}
}

// LeftOf is the points on the left side of a line.
func LeftOf(l geom.Line) Condition { return leftOf{floats(l.P), direction(l.D)} }

// Inside is the points within a polygon.
func Inside(outline []geom.Point) Condition { return inside{corners(outline), true} }

// Outside is the points outside a polygon.
func Outside(outline []geom.Point) Condition { return inside{corners(outline), false} }

type nearer struct{ one, other spine }

func (n nearer) holds(p xy) bool  { return n.one.far2(p) < n.other.far2(p) }
func (n nearer) box() (Box, bool) { return Box{}, false }

func (n nearer) cuts(w way) []float64 {
	cuts := append(n.one.breaks(w), n.other.breaks(w)...)
	for _, f := range n.one.squares(w) {
		for _, g := range n.other.squares(w) {
			cuts = append(cuts, f.minus(g).roots()...)
		}
	}
	return cuts
}

type within struct {
	of     spine
	square float64
	beyond bool
}

func (c within) holds(p xy) bool {
	if c.beyond {
		return c.of.far2(p) > c.square
	}
	return c.of.far2(p) < c.square
}

func (c within) cuts(w way) []float64 {
	cuts := c.of.breaks(w)
	for _, f := range c.of.squares(w) {
		cuts = append(cuts, f.minus(quadratic{c: c.square}).roots()...)
	}
	return cuts
}

func (c within) box() (Box, bool) {
	if c.beyond || c.of.start == nil || c.of.end == nil {
		return Box{}, false
	}
	return boxOf([]xy{*c.of.start, *c.of.end}).grow(math.Sqrt(c.square)), true
}

type leftOf struct{ at, along xy }

func (l leftOf) holds(p xy) bool  { return l.along.cross(p.sub(l.at)) > 0 }
func (l leftOf) box() (Box, bool) { return Box{}, false }

func (l leftOf) cuts(w way) []float64 {
	return []float64{-l.along.cross(w.from.sub(l.at)) / l.along.cross(w.along)}
}

type inside struct {
	outline []xy
	want    bool
}

func corners(ps []geom.Point) []xy {
	out := make([]xy, len(ps))
	for i, p := range ps {
		out[i] = floats(p)
	}
	return out
}

// holds counts the edges that a level way to the right crosses.
func (c inside) holds(p xy) bool {
	in := false
	for i, a := range c.outline {
		b := c.outline[(i+1)%len(c.outline)]
		if (a.y > p.y) != (b.y > p.y) && (b.sub(a).cross(p.sub(a)) > 0) == (b.y > a.y) {
			in = !in
		}
	}
	return in == c.want
}

func (c inside) cuts(w way) []float64 {
	var cuts []float64
	for i, a := range c.outline {
		b := c.outline[(i+1)%len(c.outline)]
		if w.along.cross(a.sub(w.from)) > 0 != (w.along.cross(b.sub(w.from)) > 0) {
			cuts = append(cuts, a.sub(w.from).cross(b.sub(a))/w.along.cross(b.sub(a)))
		}
	}
	return cuts
}

func (c inside) box() (Box, bool) { return boxOf(c.outline), c.want }

// spine is a straight, its ends nil where it runs on.
type spine struct {
	at, along  xy
	start, end *xy
}

func spineOf(s geom.Straight) spine {
	out := spine{at: floats(s.P), along: direction(s.D)}
	if s.Start != nil {
		p := floats(*s.Start)
		out.start = &p
	}
	if s.End != nil {
		p := floats(*s.End)
		out.end = &p
	}
	return out
}

// far2 is the square of the distance of p.
func (s spine) far2(p xy) float64 {
	switch {
	case s.start != nil && s.along.dot(p.sub(*s.start)) <= 0:
		return p.sub(*s.start).norm2()
	case s.end != nil && s.along.dot(p.sub(*s.end)) >= 0:
		return p.sub(*s.end).norm2()
	}
	off := s.along.cross(p.sub(s.at))
	return float64(off * off)
}

// breaks are where the nearest point of the straight reaches an end.
func (s spine) breaks(w way) []float64 {
	var cuts []float64
	for _, end := range []*xy{s.start, s.end} {
		if end != nil {
			cuts = append(cuts, -s.along.dot(w.from.sub(*end))/s.along.dot(w.along))
		}
	}
	return cuts
}

// squares are the squares of the distances from the whole line and from the
// ends, along a way: one of them at a time is far2.
func (s spine) squares(w way) []quadratic {
	p, q := s.along.cross(w.along), s.along.cross(w.from.sub(s.at))
	all := []quadratic{{float64(p * p), 2 * float64(p*q), float64(q * q)}}
	for _, end := range []*xy{s.start, s.end} {
		if end != nil {
			d := w.from.sub(*end)
			all = append(all, quadratic{1, 2 * d.dot(w.along), d.norm2()})
		}
	}
	return all
}

// quadratic is at² + bt + c.
type quadratic struct{ a, b, c float64 }

func (f quadratic) minus(g quadratic) quadratic { return quadratic{f.a - g.a, f.b - g.b, f.c - g.c} }

// level is a coefficient of t² that only rounding has left.
const level = 1e-12

// roots adds up what has one sign only, so that nothing cancels.
func (f quadratic) roots() []float64 {
	if math.Abs(f.a) < level {
		return []float64{-f.c / f.b}
	}
	disc := float64(f.b*f.b) - 4*float64(f.a*f.c)
	if disc < 0 {
		return nil
	}
	q := -(f.b + math.Copysign(math.Sqrt(disc), f.b)) / 2
	return []float64{q / f.a, f.c / q}
}
