package solve

import (
	"math"

	"trammel/lang/program"
)

// shape is corners that are left to chance, one after the other: three free points, or
// those that one given makes.
type shape struct {
	corners []int // their slots
	loose   bool  // they may make a triangle of any kind
	obtuse  bool  // they are to make an obtuse one
}

// freeShapes are those of the figure so far. Free points are none where there are not
// just three of them.
func (s *search) freeShapes() (all []shape) {
	var points []int
	last := -1
	for _, in := range s.p.Inputs {
		if in.Kind == program.Nearby || in.Step == last && in.Kind != program.Abscissa {
			continue
		}
		last = in.Step
		var corners []int
		for _, slot := range s.writes[in.Step] {
			if s.sight.slots[slot].drawn && s.p.Slots[slot].Kind == program.Point {
				corners = append(corners, slot)
			}
		}
		if in.Kind == program.Abscissa {
			points = append(points, corners...)
		}
		if len(corners) > 2 && !s.inLine(corners) {
			all = append(all, shape{corners, false, in.Obtuse})
		}
	}
	if len(points) == 3 {
		all = append(all, shape{points, true, false})
	}
	return all
}

// inLine tells whether points were stepped off along a straight.
func (s *search) inLine(points []int) bool {
	a, b, c := &s.sight.slots[points[0]], &s.sight.slots[points[1]], &s.sight.slots[points[2]]
	return math.Abs(turn(a, b, c)) <= 1e-9*math.Hypot(b.x-a.x, b.y-a.y)*math.Hypot(c.x-a.x, c.y-a.y)
}

// From which angle a triangle begins to look right or obtuse, how far angles are plainly
// off a right one and from which on they are plainly open, in degrees.
const (
	acute   = 80
	oblique = 12
	open    = 30
)

// By which part of themselves sides should differ: those of a loose triangle; of a given
// one those that do not lie level. (Joins are held apart as all are.)
const (
	scalene = 0.14
	leaning = 0.11
)

// unplain objects to a shape that looks special and is not, or that is a needle; of loose
// points, to a triangle that runs clockwise.
func (j *judge) unplain(f shape) float64 {
	touched := false
	for _, slot := range f.corners {
		touched = touched || j.is[slot] != notMine
		if j.slots[slot].kind != point {
			return 0
		}
	}
	if !touched {
		return 0
	}
	n := len(f.corners)
	sum, alike, whole := 0.0, 0.0, n == 3
	for k, slot := range f.corners {
		angle, off := cornerOf(&j.slots[slot], &j.slots[f.corners[(k+1)%n]], &j.slots[f.corners[(k+n-1)%n]])
		if !j.kept(cornerAngle, slot, slot, angle) {
			sum += f.turned(angle)
		}
		whole = whole && !j.kept(cornerSides, slot, slot, off)
		switch {
		case f.loose:
			alike += short(off, scalene)
		case k == n-1:
			alike += short(off, leaning)
		}
	}
	if whole { // a triangle none of whose sides is to another as given
		sum += 10 * alike
	}
	if f.loose && turn(&j.slots[f.corners[0]], &j.slots[f.corners[1]], &j.slots[f.corners[2]]) < 0 {
		sum += 0.5
	}
	return sum
}

// turned objects to an angle of a shape.
func (f shape) turned(angle float64) float64 {
	over, off := 0.0, math.Abs(angle-90)
	if len(f.corners) == 3 && !f.obtuse {
		over = max(0, angle-acute) / 40
	}
	sum := min(2*over*over, 0.6) + 0.8*short(angle, open)
	if !f.loose && off > 1e-6 {
		sum += short(off, oblique)
	}
	return sum
}

// cornerOf is the angle of two sides of a shape in degrees, and the part by which one is
// longer.
func cornerOf(v, p, q *thing) (angle, off float64) {
	m, n, far := math.Hypot(p.x-v.x, p.y-v.y), math.Hypot(q.x-v.x, q.y-v.y), math.Hypot(p.x-q.x, p.y-q.y)
	return math.Acos(max(-1, min(1, (m*m+n*n-far*far)/(2*m*n)))) * 180 / math.Pi, math.Abs(m-n) / max(m, n)
}

// turn is positive where the way from one point by another to a third goes to the left.
func turn(a, b, c *thing) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }
