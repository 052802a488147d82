package check

import (
	"math"
	"math/big"

	"trammel/lang/syntax"
)

// cut is a point that is taken between two others, and how many are taken later on the parts
// that it leaves, or on what those leave. A plain hand that reads the whole task leaves room
// for them.
type cut struct {
	ends   [2]string
	points [2]int // taken between it and either end
	within *cut   // the one that has left the part on which it is
	part   int    // which part of that
}

// gaps are those between a plain hand's points, one after the other: no two neighbours alike,
// and no point in the middle of any two.
var gaps = []float64{1, 0.72, 1.2, 0.85, 1.35, 0.66, 1.1, 0.78}

// expectCut counts a point that a task asks for between two points.
func (s *scope) expectCut(p *syntax.PlacedPoint) {
	ends, ok := cutBetween(p)
	name, named := letterOf(p.Point)
	if !ok || !named || s.taken[name] != nil {
		return
	}
	c := &cut{ends: ends}
	for k, end := range ends {
		if known := s.taken[end]; known != nil && ends[1-k] == known.ends[0] {
			c.within, c.part = known, 0
		} else if known != nil && ends[1-k] == known.ends[1] {
			c.within, c.part = known, 1
		}
	}
	s.taken[name] = c // after its ends: it may be named like one of them, by mistake
	for in := c; in.within != nil; in = in.within {
		in.within.points[in.part]++
	}
}

// cutBetween are the two points between which a point is to be; false if it is elsewhere.
func cutBetween(p *syntax.PlacedPoint) (ends [2]string, ok bool) {
	for _, place := range p.Places {
		switch {
		case place.On != nil && len(place.On.Points) == 2 && place.OnAngle == nil && !ok:
			a, b := place.On.Points[0], place.On.Points[1]
			ends, ok = [2]string{a.Name, b.Name}, a.Index == nil && b.Index == nil
		case place.Cond != nil && place.Cond.Between != nil && !ok:
			a, ok1 := letterOf(place.Cond.Between)
			b, ok2 := letterOf(place.Cond.And)
			ends, ok = [2]string{a, b}, ok1 && ok2
		default:
			return ends, false
		}
	}
	return ends, ok
}

// letterOf is the one point that a reference names without an index.
func letterOf(r *syntax.Ref) (name string, ok bool) {
	if r == nil || len(r.Points) != 1 || r.Points[0].Index != nil {
		return "", false
	}
	return r.Points[0].Name, true
}

// share is which part of the way between its ends a point of a name is taken at, counted
// from the first letter of a curve; false if no other is taken on what it leaves, or left.
func (s *scope) share(name string, l curve) (part *big.Rat, ok bool) {
	c := s.taken[name]
	if c == nil || c.within == nil && c.points == [2]int{} {
		return nil, false
	}
	x := c.share()
	if named := s.startOf(l); named != "" && named == c.ends[1] {
		x = 1 - x
	}
	return rat(int64(math.Round(100*x)), 100), true
}

// startOf is the letter from which a curve's parts are counted.
func (s *scope) startOf(l curve) string {
	switch {
	case l.run:
		return s.slot(l.from).Name
	case l.slot >= 0 && s.slot(l.slot).Between != nil:
		return s.slot(s.slot(l.slot).Between[0]).Name
	}
	return ""
}

// share is the part of the way from its first end to its second.
func (c *cut) share() float64 {
	before, after := gapsFrom(c.firstGap(), c.points[0]+1), gapsFrom(c.firstGap()+c.points[0]+1, c.points[1]+1)
	return before / (before + after)
}

// firstGap is the place of its first gap among those of the whole.
func (c *cut) firstGap() int {
	switch {
	case c.within == nil:
		return 0
	case c.part == 0:
		return c.within.firstGap()
	}
	return c.within.firstGap() + c.within.points[0] + 1
}

// gapsFrom is the sum of so many gaps.
func gapsFrom(first, n int) (sum float64) {
	for k := range n {
		sum += gaps[(first+k)%len(gaps)]
	}
	return sum
}
