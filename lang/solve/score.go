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
	parts []part
	is    []share // by slot: whether it is mine
	rest  box     // what the other points take up
	was   box     // what those take up that the steps do not write
	count int     // of these
	all   box     // what all points take up that are there so far
	ink   box     // with whole circles of mine
	size  float64
	// The objections that only grow as further steps are done.
	crossed, alike float64
	// Coincidences that hold whatever is chosen are no accidents.
	needful  map[coincidence]bool
	lenient  bool                    // accidents do not count
	seeking  bool                    // they are being looked for
	learning bool                    // they may be asked for next
	ways     map[coincidence]float64 // how far apart things were when learning began
	shapes   []shape                 // what is left to chance of them
}

// part is what a judge looks at of a step: the slots that it writes and that are
// drawn, and whether its crossings count.
type part struct {
	step    int
	slots   []int
	crosses bool
}

// share is whether a slot is a judge's, and whether its step has been done anew.
type share uint8

const (
	notMine share = iota
	due
	done
)

// coincidence is two things that are exactly one, alike, or on each other.
type coincidence struct{ what, a, b int }

// newJudge is a judge that has nothing to look at yet.
func (s *search) newJudge() *judge {
	return &judge{sight: s.sight, s: s, is: make([]share, len(s.p.Slots)), needful: map[coincidence]bool{}, ways: map[coincidence]float64{}}
}

// look gives the judge what some steps have made to look at, and nothing else.
func (j *judge) look(steps ...int) {
	j.disown()
	clear(j.needful)
	clear(j.ways)
	j.parts = j.parts[:0]
	j.shapes = j.s.freeShapes()
	for _, i := range steps {
		p := part{step: i, crosses: true}
		for _, slot := range j.s.writes[i] {
			if j.slots[slot].drawn && j.is[slot] == notMine {
				j.is[slot] = due
				p.slots = append(p.slots, slot)
			}
		}
		j.parts = append(j.parts, p)
	}
}

// weigh finds what the judge's things are added to.
func (j *judge) weigh() {
	j.was, j.count = j.sight.boxOf(j.is)
	j.rest = j.was
}

// only leaves some of its steps to the judge.
func (j *judge) only(steps []int) {
	j.disown()
	kept := j.parts[:0]
	for _, p := range j.parts {
		if _, found := slices.BinarySearch(steps, p.step); found {
			kept = append(kept, p)
		}
	}
	j.parts = kept
	j.begin()
	j.rest, _ = j.sight.boxOf(j.is)
}

// disown leaves no slot to the judge.
func (j *judge) disown() {
	for _, p := range j.parts {
		for _, slot := range p.slots {
			j.is[slot] = notMine
		}
	}
}

// learn compares the figure with another one, which vary makes of it by a small
// move of the choice and then undoes: what stays as it is does not matter, and
// what coincides in both does so whatever is chosen. Badness has been asked for
// since look.
func (j *judge) learn(before *still, vary func(other func())) {
	vary(func() {
		moved := j.parts[:0:0]
		for k, p := range j.parts {
			m := &before.made[k]
			p.crosses = m.turned(j.s)
			p.slots = m.shifted(p.slots, j.s)
			if p.crosses || len(p.slots) > 0 {
				moved = append(moved, p)
			}
		}
		j.disown()
		j.parts = moved
		j.begin()
		j.rest, _ = j.sight.boxOf(j.is)
		j.seeking = true
		j.badness()
		j.seeking = false
	})
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

// plight is the part of badness that a reader suffers from, in a figure of a size: flat
// crossings, letters in each other's way, and what looks like something that it is not.
func (j *judge) plight(size float64) float64 {
	j.size, j.lenient = size, true
	sum := 0.0
	for _, p := range j.parts {
		for _, sine := range j.s.sines[p.step] {
			sum += flatness(sine)
		}
	}
	for _, p := range j.parts {
		for _, slot := range p.slots {
			switch t := &j.slots[slot]; {
			case t.kind == point && !t.hidden:
				sum += j.crowding(slot, t) + j.grazing(slot, t)
			case t.kind == straight:
				sum += j.corners(slot, t) + j.grazed(slot, t) + j.rounded(slot)
			}
		}
	}
	return sum
}

// badness is of the figure as it stands: 0 is perfect, 1 is poor.
func (j *judge) badness() float64 {
	j.begin()
	for k := range j.parts {
		j.add(k)
	}
	return j.whole(math.Inf(1))
}

// begin forgets what was added of another figure.
func (j *judge) begin() {
	j.all, j.ink, j.crossed, j.alike = j.rest, j.rest, 0, 0
	for _, p := range j.parts {
		for _, slot := range p.slots {
			j.is[slot] = due
		}
	}
}

// add looks at the kth part, whose step is done, and at the growth so far; whole
// will not come to less than what it gives.
func (j *judge) add(k int) float64 {
	p := &j.parts[k]
	if p.crosses {
		for _, sine := range j.s.sines[p.step] {
			j.crossed += flatness(sine)
		}
	}
	for _, slot := range p.slots {
		j.is[slot] = done
		switch t := &j.slots[slot]; {
		case t.kind == point:
			j.all.add(t.x, t.y)
			j.ink.add(t.x, t.y)
		case t.kind == circle:
			j.alike = max(j.alike, j.likeness(slot, t))
			if t.whole {
				j.ink.addCircle(t)
			}
		}
	}
	j.size = j.all.size()
	return j.growth() + j.crossed + j.alike
}

// whole is how bad the figure is, now that all parts were added, or so much of that as is
// more than a limit.
func (j *judge) whole(limit float64) float64 {
	sum := j.growth() + j.crossed + j.alike
	for _, p := range j.parts {
		if sum > limit {
			return sum
		}
		for _, slot := range p.slots {
			switch t := &j.slots[slot]; t.kind {
			case point:
				sum += j.crowding(slot, t) + j.grazing(slot, t)
			case straight:
				sum += j.corners(slot, t) + j.grazed(slot, t) + j.rounded(slot)
			case circle:
				sum += j.rounds(slot)
			}
		}
	}
	for _, f := range j.shapes {
		sum += j.unplain(f)
	}
	return sum
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

// small is the part of a plain hand's reach up to which a figure may grow, however little
// was there.
const small = 0.65

// growth objects to a figure that grows too large for what was there, or for
// the page; what lies off the page anyway is not this choice's doing.
func (j *judge) growth() float64 {
	sum := 0.0
	if j.s.fitsPage() {
		if over := j.s.page.over(j.ink) - max(0, j.s.page.over(j.rest)); over > 1e-9 {
			sum += min(0.1+2*over, 8)
		}
	}
	if was := max(j.was.size(), small*j.s.hand); j.count > 1 && j.size > 1.1*was {
		x := j.size/was - 1.1
		sum += min(x*x/(0.3+x), 1.5)
	}
	return sum
}

// The nearness of points, as parts of the figure's size and of a plain hand's reach,
// below both of which they begin to crowd each other.
const (
	nearPart = 0.12
	nearHand = 0.14
)

// crowding objects to points that are near each other, or by accident one.
func (j *judge) crowding(slot int, t *thing) float64 {
	limit := min(nearPart*j.size, j.s.near)
	sum := 0.0
	for k, p := range j.dots.there() {
		dx, dy := t.x-p.x, t.y-p.y
		d2 := dx*dx + dy*dy
		if !(d2 <= limit*limit) {
			continue
		}
		other := j.points[k]
		if other == slot || j.is[other] != notMine && other < slot {
			continue
		}
		o := &j.slots[other]
		switch {
		case d2 < 1e-18*j.size*j.size:
			sum += 9 * j.accident(onePoint, slot, other) // no less than nearness costs
		case j.kept(nearPoints, slot, other, d2):
		case t.hidden || o.hidden:
			sum += j.slipped(math.Sqrt(d2), limit)
		default:
			off := math.Sqrt(d2)
			sum += 1.2*short(off, limit) + 2.4*short(off, limit/4)
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
	nearCentre
	nearTangent
	nearMiddle
	cornerAngle
	cornerSides
)

// kept tells whether two things are just as far apart whatever is chosen; while
// learning it notes that.
func (j *judge) kept(what, a, b int, way float64) bool {
	if j.lenient {
		return false
	}
	key := coincidence{what, min(a, b), max(a, b)}
	switch was, known := j.ways[key]; {
	case !j.learning:
	case !j.seeking:
		j.ways[key] = way
	case known && same(was, way):
		j.needful[key] = true
	}
	return j.needful[key]
}

// accidental is what a coincidence costs that hangs on the choice.
const accidental = 0.4

// accident is that for two things of the figure.
func (j *judge) accident(what, a, b int) float64 {
	if j.lenient {
		return 0
	}
	key := coincidence{what, min(a, b), max(a, b)}
	switch _, was := j.ways[key]; {
	case j.seeking:
		if was { // here by accident, else
			j.needful[key] = true
		}
		return 0
	case j.needful[key]:
		return 0
	case j.learning:
		j.ways[key] = 0
	}
	return accidental
}

// likeness objects to openings that are nearly but not exactly, or only by
// accident, the same as others: to the worst of them.
func (j *judge) likeness(slot int, t *thing) float64 {
	worst := 0.0
	for k, c := range j.rings.there() {
		off, other := math.Abs(t.r-c.u)/max(t.r, c.u), j.circles[k]
		if !(off < likeAbout) || other == slot || j.is[other] == due {
			continue
		}
		cost := 0.0
		switch about := same(t.x, c.x) && same(t.y, c.y); {
		case off < 1e-9:
			cost = 0.6 * j.accident(equalRadii, slot, other)
		case about:
			cost = 0.4 * short(off, likeAbout)
		default:
			cost = 0.14 * short(off, like)
		}
		worst = max(worst, cost)
	}
	return worst
}

// By which part of themselves openings are plainly different, elsewhere and about one point.
const (
	like      = 0.08
	likeAbout = 0.3
)

// By which parts of a figure's size a point is clear of a circle, of a straight, and of
// one that is given.
const (
	besideCircle = 0.06
	besideLine   = 0.035
	besideGiven  = 0.1
)

// grazing objects to a point close beside a straight that the reader sees, or
// on a curve by accident.
func (j *judge) grazing(slot int, t *thing) float64 {
	sum, far := 0.0, besideGiven*j.size
	for k, l := range j.lines.there() {
		if other := j.straights[k]; l.off(t.x, t.y) <= far && j.is[other] == notMine {
			sum += j.beside(slot, t, other)
		}
	}
	near := besideCircle * j.size
	for k, c := range j.rings.there() {
		dx, dy, reach := t.x-c.x, t.y-c.y, c.u+near
		if d2 := dx*dx + dy*dy; !(d2 <= reach*reach) || c.u > near && d2 < (c.u-near)*(c.u-near) {
			continue
		}
		other := j.circles[k]
		switch off := math.Abs(math.Hypot(dx, dy)-c.u) / j.size; {
		case off < 1e-9:
			sum += j.accident(onCurve, slot, other)
		case j.slots[other].whole && !t.hidden:
			sum += 0.25 * short(off, besideCircle)
		}
	}
	return sum
}

// grazed is grazing of all points by a straight of mine.
func (j *judge) grazed(slot int, t *thing) float64 {
	sum, far := 0.0, besideGiven*j.size
	line := t.spot()
	for k, p := range j.dots.there() {
		if other := j.points[k]; line.off(p.x, p.y) <= far {
			sum += j.beside(other, &j.slots[other], slot)
		}
	}
	return sum
}

// beside objects to a point that lies close to a straight and is not its end.
func (j *judge) beside(slot int, t *thing, line int) float64 {
	l := &j.slots[line]
	if slot == l.a || slot == l.b {
		return 0
	}
	limit, weight := besideLine, 0.3
	if l.given {
		limit, weight = besideGiven, 0.6
	}
	straight := l.spot()
	off := straight.off(t.x, t.y) / j.size
	switch {
	case off > limit:
		return 0
	case off < 1e-9:
		if cost := j.accident(onCurve, slot, line); t.alongside(l) {
			return 0.6*cost + j.halving(slot, t, line, l)
		}
		return 0
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
