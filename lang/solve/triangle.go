package solve

import (
	"math"

	"trammel/lang/program"
)

// freeTriangle is the slots of the free points of a figure that has just three;
// nil if it has not.
func (s *search) freeTriangle() []int {
	var corners []int
	for _, in := range s.p.Inputs {
		if in.Kind != program.Abscissa {
			continue
		}
		for _, slot := range s.writes[in.Step] {
			if s.sight.slots[slot].drawn && s.p.Slots[slot].Kind == program.Point {
				corners = append(corners, slot)
			}
		}
	}
	if len(corners) != 3 {
		return nil
	}
	return corners
}

// From which angle a free triangle begins to look right or obtuse, in degrees,
// and by which part of themselves its sides should differ.
const (
	acute   = 80
	scalene = 0.14
)

// unplain objects to three free points that make a triangle of some kind, or
// one that runs clockwise.
func (j *judge) unplain() float64 {
	var c [3]*thing
	touched := false
	for k, slot := range j.triangle {
		c[k], touched = &j.slots[slot], touched || j.is[slot] != notMine
		if c[k].kind != point {
			return 0
		}
	}
	if !touched {
		return 0
	}
	sum := 0.0
	if (c[1].x-c[0].x)*(c[2].y-c[0].y) < (c[1].y-c[0].y)*(c[2].x-c[0].x) {
		sum = 0.5
	}
	for k := range c {
		v, p, q := c[k], c[(k+1)%3], c[(k+2)%3]
		m, n, far := math.Hypot(p.x-v.x, p.y-v.y), math.Hypot(q.x-v.x, q.y-v.y), math.Hypot(p.x-q.x, p.y-q.y)
		angle := math.Acos(max(-1, min(1, (m*m+n*n-far*far)/(2*m*n)))) * 180 / math.Pi
		over := max(0, angle-acute) / 40
		sum += min(2*over*over, 0.6) + 10*short(math.Abs(m-n)/max(m, n), scalene)
	}
	return sum
}
