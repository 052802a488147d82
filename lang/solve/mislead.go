package solve

import "math"

// What the eye takes for one, or for exact: points as near each other as that part of a
// figure's size, a dot so near a straight, and lengths that differ by so little of themselves.
const (
	oneSpot    = 0.03
	onStraight = 0.012
	oneLength  = 0.012
)

// misleads tells whether what the judge looks at cannot stay, in a figure of a size: curves
// that cross under less than 30°, letters over each other, and what looks like something
// that it is not.
func (j *judge) misleads(size float64) bool {
	for _, p := range j.parts {
		for _, sine := range j.s.sines[p.step] {
			if sine < 0.5 {
				return true
			}
		}
		for _, slot := range p.slots {
			switch t := &j.slots[slot]; {
			case t.kind == point && !t.hidden && j.blurred(slot, t, size):
				return true
			case t.kind == straight && j.deceives(slot, t, size):
				return true
			}
		}
	}
	return false
}

// blurred tells whether a point looks like another, or as if it were on a straight.
func (j *judge) blurred(slot int, t *thing, size float64) bool {
	for _, other := range j.points {
		if o := &j.slots[other]; o.kind == point && !o.hidden && other != slot && between(math.Hypot(t.x-o.x, t.y-o.y)/size, oneSpot) {
			return true
		}
	}
	for _, other := range j.straights {
		if l := &j.slots[other]; l.kind == straight && j.looksOn(slot, t, l, size) {
			return true
		}
	}
	return false
}

// between tells amounts that are less than a limit and not 0.
func between(x, limit float64) bool { return x >= 1e-9 && x < limit }

// looksOn tells whether a point that is not on a straight looks as if it were.
func (j *judge) looksOn(slot int, t *thing, l *thing, size float64) bool {
	off := math.Abs(l.dx*(t.y-l.y)-l.dy*(t.x-l.x)) / size
	return slot != l.a && slot != l.b && between(off, onStraight) && t.alongside(l)
}

// deceives tells whether a point looks as if it were on a straight, or the straight equal,
// parallel or at right angles to another.
func (j *judge) deceives(slot int, t *thing, size float64) bool {
	for _, other := range j.points {
		if o := &j.slots[other]; o.kind == point && !o.hidden && j.looksOn(other, o, t, size) {
			return true
		}
	}
	if t.a < 0 {
		return false
	}
	for _, other := range j.joins {
		if o := &j.slots[other]; other != slot && o.kind == straight && j.looksLike(t, o) {
			return true
		}
	}
	for _, other := range j.others {
		if o := &j.slots[other]; o.kind == straight {
			if cross, dot := turns(t, o); min(cross, dot) < unclear {
				return true
			}
		}
	}
	return false
}

// looksLike tells whether a join looks equal to another, parallel or at right angles; what is
// so exactly may be so by accident.
func (j *judge) looksLike(t, o *thing) bool {
	cross, dot := turns(t, o)
	if shared := t.a == o.a || t.a == o.b || t.b == o.a || t.b == o.b; shared && dot < unclear || !shared && cross < unclear {
		return true
	}
	m, n := j.length(t), j.length(o)
	return m > 0 && n > 0 && math.Abs(m-n) < oneLength*max(m, n)
}

// turns are the sine and the cosine of the angle between two straights.
func turns(t, o *thing) (cross, dot float64) {
	return math.Abs(t.dx*o.dy - t.dy*o.dx), math.Abs(t.dx*o.dx + t.dy*o.dy)
}
