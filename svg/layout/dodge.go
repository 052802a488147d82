package layout

import "math"

// What a mark keeps from ink that it does not belong to, in millimetres from
// edge to edge: at least, and better.
const (
	markClear  = 0.3
	markBetter = 1.3
	markApart  = 3.0 // from a mark on the same line, with which it would be read as one
)

// contact is the distance in micrometres under which ink touches ink.
const contact = 50

// tooMany things in the way are as bad as any more.
const tooMany = 5

// mostDodging bounds the distances that are measured for marks on one sheet;
// beyond it marks stay where they would be without other ink.
const mostDodging = 3e6

// touched counts the ink within so many millimetres of a mark, but for its own;
// what it really touches counts double.
func (d *drawing) touched(mark []curve, apart float64, own func(o *obstacle) bool) int {
	half, clear, about := d.theme.mark.half(), d.least(apart), nowhere
	var places []vec
	for _, c := range mark {
		about = about.union(c.bounds())
		places = append(places, c.samples(d.mm(0.2))...)
	}
	n := 0
	d.ground.near(about.grow(half+clear+mm), func(o *obstacle) bool {
		if d.dodging > mostDodging || own(o) {
			return d.dodging <= mostDodging
		}
		d.dodging += len(places)
		switch gap := nearest(places, o, half+clear+o.half) - half - o.half; {
		case gap < contact:
			n += 2
		case gap < clear:
			n++
		}
		return n < tooMany
	})
	return n
}

// nearest is how near places come to an obstacle, if nearer than that.
func nearest(places []vec, o *obstacle, than float64) float64 {
	b := o.bounds().grow(than)
	for _, p := range places {
		if b.holds(p) {
			than = min(than, off(o.shape, p))
		}
	}
	return than
}

// off is how far p is from a stroke's middle line, from a disc or from a box.
func off(s shape, p vec) float64 {
	switch s := s.(type) {
	case segment:
		return s.dist(p)
	case arc:
		return s.dist(p)
	case disc:
		return max(0, s.c.dist(p)-s.r)
	}
	return s.bounds().near(p)
}

// A mark slides along its segment so far from the middle, as a part of the
// length; sliding off one thing, or well clear of it, is worth so many millimetres.
const (
	slidePart = 0.42
	costOn    = 30
	costAside = 5
)

// slide finds the place nearest the middle of ab where a mark that reaches so
// far along it touches least, and how much that is.
func (d *drawing) slide(ab segment, reach float64, mark func(at vec) []curve) (place vec, touches int) {
	u, c := ab.a.to(ab.b), ab.a.mid(ab.b)
	if u.x < 0 || u.x == 0 && u.y > 0 {
		u = u.times(-1) // so that parallel ones slide alike
	}
	room := max(0, min(ab.length()/2-reach, ab.length()*slidePart))
	own, beside := onLine(ab), notBeside(ab)
	least := math.Inf(1)
	for step := 0.0; step < least && step <= room; step += d.mm(0.25) {
		for _, way := range [2]float64{step, -step} {
			p := c.add(u.times(way)).snap()
			n := d.touched(mark(p), markClear, own)
			cost := float64(n)*costOn*mm + step
			if cost < least {
				cost += float64(d.touched(mark(p), markBetter, own)-n) * costAside * mm
			}
			if cost < least && n == 0 && d.touched(mark(p), markApart, beside) > 0 {
				cost += costAside * mm
			}
			if cost < least {
				place, touches, least = p, n, cost
			}
		}
	}
	return place, touches
}

// onLine tells what lies on the line of ab.
func onLine(ab segment) func(o *obstacle) bool {
	return func(o *obstacle) bool {
		g, ok := o.shape.(segment)
		return ok && ab.along(g)
	}
}

// notBeside tells what is no mark across the line of ab.
func notBeside(ab segment) func(o *obstacle) bool {
	return func(o *obstacle) bool {
		g, ok := o.shape.(segment)
		return !ok || o.weight != costMark || ab.dist(g.a.mid(g.b)) > touching && ab.dist(g.a) > touching && ab.dist(g.b) > touching
	}
}
