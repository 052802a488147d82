package layout

import (
	"math"

	"trammel/svg"
)

// hull is the convex hull of words, from the left end of the baseline: its sides one
// after the other, and the box about them.
type hull struct {
	sides []side
	box
}

// side is one of a hull: where it starts, its way and how long it is.
type side struct {
	a, way vec
	long   float64
}

func hullOf(t svg.Text) hull {
	round, h := svg.Hull(t), hull{box: nowhere}
	at := func(i int) vec { return vec{float64(round[i].X), float64(round[i].Y)} }
	for i := range round {
		a, b := at(i), at((i+1)%len(round))
		h.sides = append(h.sides, side{a, a.to(b), a.dist(b)})
		h.box = h.box.union(box{a, a})
	}
	return h
}

// from is how far p is from the hull, 0 within.
func (h *hull) from(p vec) float64 {
	least, inside := math.Inf(1), true
	for i := range h.sides {
		s := &h.sides[i]
		w := p.sub(s.a)
		least = min(least, w.sub(s.way.times(clamp(s.way.dot(w), 0, s.long))).len())
		inside = inside && s.way.cross(w) <= 0
	}
	if inside {
		return 0
	}
	return least
}

// from is how far p is from the words at s, 0 within their hull.
func (l *label) from(p vec, s box) float64 { return l.hull.from(p.sub(l.start(s))) }

// within tells whether p is no farther than that from the words at s, and how far.
func (l *label) within(p vec, s box, far float64) (float64, bool) {
	p = p.sub(l.start(s))
	if l.hull.near(p) > far {
		return 0, false
	}
	from := l.hull.from(p)
	return from, from <= far
}

// start is the left end of the baseline of the words at s.
func (l *label) start(s box) vec { return s.lo.sub(l.ink.lo) }

// off is how far a stroke or a dot is from the words at s, to within their
// roundness: it is measured from the corners of the hull, and from the stroke's ends.
func (l *label) off(o shape, s box) float64 {
	least, by := math.Inf(1), l.start(s)
	for i := range l.hull.sides {
		least = min(least, off(o, l.hull.sides[i].a.add(by)))
	}
	if g, ok := o.(segment); ok {
		least = min(least, l.from(g.a, s), l.from(g.b, s))
	}
	return least
}
