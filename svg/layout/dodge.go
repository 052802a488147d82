package layout

import (
	"math"
	"slices"
)

// What a mark keeps from ink that it does not belong to, in millimetres from
// edge to edge: at least, and better.
const (
	markClear  = 0.3
	markBetter = 1.3
	markApart  = 3.0 // best: what is nearer to a mark is read with it
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
// length; sliding off one thing, or well clear of it, or out of the mark of an
// angle, is worth so many millimetres.
const (
	slidePart = 0.42
	costOn    = 30
	costAside = 5
	costAngle = 20
)

// slider is a mark that is to be placed on a segment: it reaches so far along it.
type slider struct {
	on    segment
	reach float64
	mark  func(at vec) []curve
}

// way is that in which the mark slides first: parallel ones slide alike.
func (s slider) way() vec {
	if u := s.on.a.to(s.on.b); u.x > 0 || u.x == 0 && u.y < 0 {
		return u
	}
	return s.on.b.to(s.on.a)
}

// at is the place so far from the middle.
func (s slider) at(step float64) vec { return s.on.a.mid(s.on.b).add(s.way().times(step)).snap() }

// room is how far from the middle the mark may slide.
func (s slider) room() float64 {
	return max(0, min(s.on.length()/2-s.reach, s.on.length()*slidePart))
}

// slide finds the place nearest the middle of its segment where a mark touches
// least, and how much that is.
func (d *drawing) slide(s slider) (place vec, touches int) {
	step, touches := d.slideAll([]slider{s})
	return s.at(step), touches
}

// slideAll finds the one distance from the middles at which marks touch least.
func (d *drawing) slideAll(all []slider) (place float64, touches int) {
	room := math.Inf(1)
	for _, s := range all {
		room = min(room, s.room())
	}
	least := math.Inf(1)
	for step := 0.0; step*float64(len(all)) < least && step <= room; step += d.mm(0.25) {
		for _, at := range [2]float64{step, -step} {
			cost, touched := 0.0, 0
			for _, s := range all {
				n, c := d.slideCost(s, at, least-cost)
				cost, touched = cost+c, touched+n
				if cost >= least {
					break
				}
			}
			if cost < least {
				place, touches, least = at, touched, cost
			}
		}
	}
	return place, touches
}

// slideCost is what speaks against a place, how far it is from the middle included,
// up to a limit, and how much the mark touches there.
func (d *drawing) slideCost(s slider, step, limit float64) (touches int, cost float64) {
	p, own := s.at(step), onLine(s.on)
	mark := s.mark(p)
	touches = d.touched(mark, markClear, own)
	cost = math.Abs(step) + float64(touches)*costOn*mm
	if cost < limit {
		cost += float64(d.touched(mark, markBetter, own)-touches) * costAside * mm
	}
	if cost < limit && touches == 0 && d.touched(mark, markApart, own) > 0 {
		cost += costAside * mm
	}
	if cost < limit && d.inAngle(p) {
		cost += costAngle * mm
	}
	return touches, cost
}

// inAngle tells whether a place on an arm lies between the vertex and the mark of an angle.
func (d *drawing) inAngle(p vec) bool {
	const slack = 0.01
	return slices.ContainsFunc(d.bands, func(b band) bool {
		w := p.sub(b.at)
		return w.len() < b.hi+d.mm(markBetter) && turn(w.angle()-b.from+slack) <= b.sweep+2*slack
	})
}

// onLine tells what lies on the line of ab.
func onLine(ab segment) func(o *obstacle) bool {
	return func(o *obstacle) bool {
		g, ok := o.shape.(segment)
		return ok && ab.along(g)
	}
}
