package solve

import (
	"math"
	"slices"
)

// good is the badness that is passed over: small objections come and go with the
// measures of a source, and a choice that heeded them all would not stay.
const good = 0.17

// judge tells how well a figure would be drawn that some steps have made: it
// adds up what a typesetter would object to. Floats choose here; nothing is
// decided by them.
type judge struct {
	*sight
	s     *search
	steps []int  // whose crossings count
	mine  []int  // the slots that the steps write and that are drawn
	is    []bool // by slot: whether it is mine
	rest  box    // what the other points take up
	was   box    // what those take up that the steps do not write
	count int    // of these
	all   box    // what all points take up
	size  float64
	// Coincidences that hold whatever is chosen are no accidents.
	needful  map[coincidence]bool
	seeking  bool                    // they are being looked for
	ways     map[coincidence]float64 // how far apart things were in another figure, while learning
	triangle []int                   // the corners of a free triangle, if there is just one
}

// coincidence is two things that are exactly one, alike, or on each other.
type coincidence struct{ what, a, b int }

func (s *search) judge(steps []int) *judge {
	j := &judge{sight: s.sight, s: s, steps: steps, is: make([]bool, len(s.p.Slots)), needful: map[coincidence]bool{}}
	j.triangle = s.freeTriangle()
	for _, i := range steps {
		for _, slot := range s.writes[i] {
			if s.sight.slots[slot].drawn && !j.is[slot] {
				j.is[slot] = true
				j.mine = append(j.mine, slot)
			}
		}
	}
	j.was, j.count = s.sight.boxOf(func(slot int) bool { return !j.is[slot] })
	j.rest = j.was
	return j
}

// learn compares the figure with another one, which vary makes of it by a small
// move of the choice and then undoes: what stays as it is does not matter, and
// what coincides in both does so whatever is chosen.
func (j *judge) learn(vary func(other func())) {
	things := make([]thing, len(j.mine))
	for k, slot := range j.mine {
		things[k] = j.slots[slot]
	}
	sines := make([][]float64, len(j.steps))
	for k, i := range j.steps {
		sines[k] = slices.Clone(j.s.sines[i])
	}
	var steps, mine []int
	learned := false
	j.ways = map[coincidence]float64{}
	j.badness()
	defer func() { j.ways = nil }()
	vary(func() {
		for k, i := range j.steps {
			if !slices.EqualFunc(sines[k], j.s.sines[i], same) {
				steps = append(steps, i)
			}
		}
		for k, slot := range j.mine {
			if !things[k].same(&j.slots[slot]) {
				mine = append(mine, slot)
			}
		}
		j.seeking = true
		j.badness()
		j.seeking, learned = false, true
	})
	if !learned {
		return
	}
	j.steps, j.mine = steps, mine
	clear(j.is)
	for _, slot := range mine {
		j.is[slot] = true
	}
	j.rest, _ = j.sight.boxOf(func(slot int) bool { return !j.is[slot] })
}

// same tells floats apart that differ by more than they are rounded.
func same(x, y float64) bool { return math.Abs(x-y) <= 1e-7*(math.Abs(x)+math.Abs(y)+1e-3) }

// same tells whether two things are in one place. A straight may be given by
// another point of it.
func (t *thing) same(o *thing) bool {
	if t.kind == straight && o.kind == straight {
		return same(t.dx, o.dx) && same(t.dy, o.dy) && same(t.dx*t.y-t.dy*t.x, t.dx*o.y-t.dy*o.x)
	}
	return t.kind == o.kind && same(t.x, o.x) && same(t.y, o.y) && same(t.r, o.r)
}

// plight is the part of badness that a reader suffers from: flat crossings,
// letters in each other's way, and what looks like something that it is not.
func (j *judge) plight() float64 {
	j.measure()
	sum := j.flat()
	j.seeking = true // accidents are no plight
	for _, slot := range j.mine {
		switch t := &j.slots[slot]; {
		case t.kind == point && !t.hidden:
			sum += j.crowding(slot, t) + j.grazing(slot, t)
		case t.kind == straight:
			sum += j.corners(slot, t) + j.grazed(slot, t)
		}
	}
	j.seeking = false
	return sum
}

// measure finds how far all points reach.
func (j *judge) measure() {
	j.all = j.rest
	for _, slot := range j.mine {
		if t := &j.slots[slot]; t.kind == point {
			j.all.add(t.x, t.y)
		}
	}
	j.size = j.all.size()
}

// flat objects to the crossings.
func (j *judge) flat() float64 {
	sum := 0.0
	for _, i := range j.steps {
		for _, sine := range j.s.sines[i] {
			sum += flatness(sine)
		}
	}
	return sum
}

// badness is of the figure as it stands: 0 is perfect, 1 is poor.
func (j *judge) badness() float64 {
	j.measure()
	sum := j.growth() + j.flat()
	alike := 0.0
	for _, slot := range j.mine {
		switch t := &j.slots[slot]; t.kind {
		case point:
			sum += j.crowding(slot, t) + j.grazing(slot, t)
		case circle:
			alike = max(alike, j.likeness(slot, t))
		case straight:
			sum += j.corners(slot, t) + j.grazed(slot, t)
		}
	}
	if j.triangle != nil {
		sum += j.unplain()
	}
	return sum + alike
}

// square of the part by which x falls short of a limit, 0 where it does not:
// objections begin gently, so that small moves change them by little.
func short(x, limit float64) float64 {
	if x >= limit {
		return 0
	}
	part := 1 - x/limit
	return part * part
}

// flatness objects to crossings under 60°, and strongly under 30°.
func flatness(sine float64) float64 {
	return 2.2*short(sine, 0.87) + 6*max(0, 0.58-sine)
}

// growth objects to a figure that grows too large for what was there, or for
// the page; what lies off the page anyway is not this choice's doing.
func (j *judge) growth() float64 {
	sum, all := 0.0, j.all
	for _, slot := range j.mine {
		if t := &j.slots[slot]; t.kind == circle && t.whole {
			all.addCircle(t)
		}
	}
	if over := j.s.page.over(all) - max(0, j.s.page.over(j.rest)); over > 1e-9 {
		sum += min(0.1+2*over, 8)
	}
	if was := j.was.size(); j.count > 1 && j.size > 1.1*was {
		x := j.size/was - 1.1
		sum += min(x*x/(0.3+x), 1.5)
	}
	return sum
}

// The nearness of points, as a part of the figure's size and on the page, at
// which they begin to crowd each other.
const (
	nearPart = 0.12
	nearMM   = 11
)

// crowding objects to points that are near each other, or by accident one.
func (j *judge) crowding(slot int, t *thing) float64 {
	limit := min(nearPart*j.size, nearMM*j.s.perMM)
	sum := 0.0
	for _, other := range j.points {
		o := &j.slots[other]
		if o.kind != point || other == slot || j.is[other] && other < slot {
			continue
		}
		dx, dy := t.x-o.x, t.y-o.y
		d2 := dx*dx + dy*dy
		switch {
		case d2 > limit*limit:
		case d2 < 1e-18*j.size*j.size:
			sum += j.accident(onePoint, slot, other)
		case j.kept(nearPoints, slot, other, d2):
		case t.hidden || o.hidden:
			sum += 0.1 * short(math.Sqrt(d2), limit)
		default:
			sum += 1.2 * short(math.Sqrt(d2), limit)
		}
	}
	return sum
}

// Which coincidences there are.
const (
	onePoint = iota
	onCurve
	equalRadii
	equalJoins
	parallelJoins
	rightJoins
	nearPoints
	nearCurve
)

// kept tells whether two things are just as far apart whatever is chosen; while
// learning it notes that.
func (j *judge) kept(what, a, b int, way float64) bool {
	key := coincidence{what, min(a, b), max(a, b)}
	switch was, known := j.ways[key]; {
	case j.ways == nil:
	case !j.seeking:
		j.ways[key] = way
	case known && same(was, way):
		j.needful[key] = true
	}
	return j.needful[key]
}

// accident is what a coincidence costs that hangs on the choice.
func (j *judge) accident(what, a, b int) float64 {
	key := coincidence{what, min(a, b), max(a, b)}
	if j.seeking {
		j.needful[key] = true
		return 0
	}
	if j.needful[key] {
		return 0
	}
	return 0.4
}

// likeness objects to openings that are nearly but not exactly, or only by
// accident, the same as others: to the worst of them.
func (j *judge) likeness(slot int, t *thing) float64 {
	worst := 0.0
	for _, other := range j.circles {
		o := &j.slots[other]
		if o.kind != circle || other == slot || j.is[other] && other < slot {
			continue
		}
		switch off := math.Abs(t.r-o.r) / max(t.r, o.r); {
		case off < 1e-9:
			worst = max(worst, 0.6*j.accident(equalRadii, slot, other))
		case off < 0.3 && same(t.x, o.x) && same(t.y, o.y):
			worst = max(worst, 0.4*short(off, 0.3))
		case off < 0.08:
			worst = max(worst, 0.14*short(off, 0.08))
		}
	}
	return worst
}

// grazing objects to a point close beside a straight that the reader sees, or
// on a curve by accident.
func (j *judge) grazing(slot int, t *thing) float64 {
	sum := 0.0
	for _, other := range j.straights {
		if !j.is[other] {
			sum += j.beside(slot, t, other)
		}
	}
	for _, other := range j.circles {
		o := &j.slots[other]
		if o.kind != circle {
			continue
		}
		off := math.Abs(math.Hypot(t.x-o.x, t.y-o.y)-o.r) / j.size
		switch {
		case off < 1e-9:
			sum += j.accident(onCurve, slot, other)
		case o.whole && !t.hidden && off < 0.06:
			sum += 0.25 * short(off, 0.06)
		}
	}
	return sum
}

// grazed is grazing of all points by a straight of mine.
func (j *judge) grazed(slot int, t *thing) float64 {
	sum := 0.0
	for _, other := range j.points {
		if o := &j.slots[other]; o.kind == point {
			sum += j.beside(other, o, slot)
		}
	}
	return sum
}

// beside objects to a point that lies close to a straight and is not its end.
func (j *judge) beside(slot int, t *thing, line int) float64 {
	l := &j.slots[line]
	if l.kind != straight || slot == l.a || slot == l.b {
		return 0
	}
	limit, weight := 0.035, 0.3
	if l.given {
		limit, weight = 0.1, 0.6
	}
	off := math.Abs(l.dx*(t.y-l.y)-l.dy*(t.x-l.x)) / j.size
	switch {
	case off > limit:
		return 0
	case off < 1e-9 && (j.seeking || t.alongside(l)):
		return 0.6 * j.accident(onCurve, slot, line)
	case t.hidden || !t.alongside(l) || j.kept(nearCurve, slot, line, off*j.size):
		return 0
	}
	return weight * short(off, limit)
}

// alongside tells whether the foot of a point on a straight lies between its ends.
func (t *thing) alongside(l *thing) bool {
	at := l.along(t.x, t.y)
	return at > l.lo && at < l.hi
}
