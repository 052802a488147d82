package oracle

import (
	"trammel/geom"
)

// place is a point, or the way from one to another, with coordinates for the
// oracles; what is here is worked out by coordinates alone, unlike in package geom.
type place struct{ x, y *term }

func (p place) to(q place) place    { return place{q.x.minus(p.x), q.y.minus(p.y)} }
func (p place) plus(q place) place  { return place{p.x.plus(q.x), p.y.plus(q.y)} }
func (p place) times(k *term) place { return place{p.x.times(k), p.y.times(k)} }
func (p place) over(k *term) place  { return place{p.x.over(k), p.y.over(k)} }
func (p place) dot(q place) *term   { return p.x.times(q.x).plus(p.y.times(q.y)) }
func (p place) cross(q place) *term { return p.x.times(q.y).minus(p.y.times(q.x)) }
func (p place) norm2() *term        { return p.dot(p) }
func (p place) left() place         { return place{whole(0).minus(p.y), p.x} }

// around is the point whose squared distances from a and b are r and s, left of
// the way from a to b for side 1, right of it for -1.
func around(a place, r *term, b place, s *term, side int64) place {
	ab := a.to(b)
	d := ab.norm2()
	two := whole(2)
	along := d.plus(r).minus(s)
	across := d.times(r).times(whole(4)).minus(along.square()).root().times(whole(side))
	step := ab.times(along).plus(ab.left().times(across))
	return a.plus(step.over(d.times(two)))
}

// crossing is where ab and cd meet, by Cramer's rule.
func crossing(a, b, c, d place) place {
	u, v := a.to(b), c.to(d)
	m, n := a.cross(b), c.cross(d)
	return v.times(m).plus(u.times(whole(-1).times(n))).over(u.cross(v).times(whole(-1)))
}

// piercing is where ab meets the circle about c with the squared radius r: the
// second way through for side 1, the first for -1.
func piercing(a, b, c place, r *term, side int64) place {
	u, w := a.to(b), c.to(a)
	// |w + tu|² = r
	p, q := u.norm2(), u.dot(w)
	disc := q.square().minus(p.times(w.norm2().minus(r)))
	t := disc.root().times(whole(side)).minus(q).over(p)
	return a.plus(u.times(t))
}

// circling is the middle of the circle through a, b and c.
func circling(a, b, c place) place {
	u, v := a.to(b), a.to(c)
	d := u.cross(v).times(whole(2))
	return a.plus(place{
		u.norm2().times(v.y).minus(v.norm2().times(u.y)).over(d),
		v.norm2().times(u.x).minus(u.norm2().times(v.x)).over(d),
	})
}

// concyclic is 0 when four places are on a circle or a line: the determinant of
// their lifts to a paraboloid.
func concyclic(a, b, c, d place) *term {
	u, v, w := d.to(a), d.to(b), d.to(c)
	return sumOf(
		u.norm2().times(v.cross(w)),
		v.norm2().times(w.cross(u)),
		w.norm2().times(u.cross(v)))
}

// mark is a point as package geom has it, and as the oracles do.
type mark struct {
	p  geom.Point
	at place
}

// mark puts a point at exact coordinates.
func (w *world) mark(x, y *term) mark {
	return marked(geom.Point{X: w.real(x), Y: w.real(y)}, place{x, y})
}

// marked is a point as a figure holds it, where its numbers may be cut.
func marked(p geom.Point, at place) mark {
	p.X.Field().Joint(p.X, p.Y)
	return mark{p, at}
}

func join(a, b mark) geom.Line { return geom.Through(a.p, b.p) }

// disc is a circle about one mark through another.
type disc struct{ centre, on mark }

func (c disc) circle() geom.Circle {
	return geom.Circle{C: c.centre.p, R2: geom.Dist2(c.centre.p, c.on.p)}
}

func (c disc) r2() *term { return c.centre.at.to(c.on.at).norm2() }

// zero words a verdict that is yes or no: whether the oracles' term is 0.
func zero(yes func() bool) string {
	out := told(func() int {
		if yes() {
			return 0
		}
		return 1
	})
	if out == "1" {
		return "not 0"
	}
	return out
}

// isZero asks whether the oracles find a term 0 where trammel says yes.
func isZero(name string, x *term, yes func() bool) question {
	return question{name, x, zero(yes)}
}

// hasSign asks for a sign.
func hasSign(name string, x *term, sign func() int) question {
	return question{name, x, told(sign)}
}
