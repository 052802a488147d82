// Package region holds areas of the plane that are told by conditions on their
// points, and finds where lines run through them. It works in floats: it says
// where ink goes, and proves nothing.
package region

import (
	"math"
	"sort"

	"trammel/geom"
)

// Region is the points for which all conditions hold, those on its border left out.
type Region []Condition

// Condition is made by Nearer, Within, Beyond, LeftOf, Inside or Outside.
type Condition interface {
	// cuts are the places of the way where the condition may begin or cease to hold.
	cuts(w way) []float64
	holds(p xy) bool
	// box bounds the points for which the condition holds; false if nothing does.
	box() (Box, bool)
	// borders are the ways of the straight parts of its border.
	borders() []xy
}

// Borders are the angles to the x axis of the straights that may bound the region.
func (r Region) Borders() []float64 {
	var angles []float64
	for _, c := range r {
		for _, w := range c.borders() {
			angles = append(angles, math.Atan2(w.y, w.x))
		}
	}
	return angles
}

// Span is a stretch of a line, in units along it from its first point; its ends
// may be infinite.
type Span struct{ Lo, Hi float64 }

// Box is an upright rectangle.
type Box struct{ Left, Bottom, Right, Top float64 }

// endless is a distance past which a border counts as parallel to the way: what
// rounding leaves of its slope would put it there.
const endless = 1e7

// Along gives the stretches that the line through (x, y), at the angle to the
// x axis, has in the region, in order.
func (r Region) Along(x, y, angle float64) []Span {
	w := way{xy{x, y}, xy{math.Cos(angle), math.Sin(angle)}}
	cuts := []float64{math.Inf(-1), math.Inf(1)}
	for _, c := range r {
		for _, t := range c.cuts(w) {
			if math.Abs(t) < endless {
				cuts = append(cuts, t)
			}
		}
	}
	sort.Float64s(cuts)
	var spans []Span
	for i, lo := range cuts[:len(cuts)-1] {
		hi := cuts[i+1]
		switch n := len(spans); {
		case hi == lo || !r.holds(w.at(between(lo, hi))):
		case n > 0 && spans[n-1].Hi == lo:
			spans[n-1].Hi = hi
		default:
			spans = append(spans, Span{lo, hi})
		}
	}
	return spans
}

// between is a place inside of a stretch, the middle one if it has a middle.
func between(lo, hi float64) float64 {
	switch {
	case math.IsInf(lo, -1) && math.IsInf(hi, 1):
		return 0
	case math.IsInf(lo, -1):
		return hi - 1
	case math.IsInf(hi, 1):
		return lo + 1
	}
	return (lo + hi) / 2
}

func (r Region) holds(p xy) bool {
	for _, c := range r {
		if !c.holds(p) {
			return false
		}
	}
	return true
}

// Box is what the region lies in; false if it may run on without end.
func (r Region) Box() (Box, bool) {
	all, bounded := Box{}, false
	for _, c := range r {
		b, ok := c.box()
		switch {
		case ok && bounded:
			all = all.common(b)
		case ok:
			all, bounded = b, true
		}
	}
	return all, bounded
}

// common is what two boxes share; it may be turned inside out.
func (b Box) common(c Box) Box {
	return Box{max(b.Left, c.Left), max(b.Bottom, c.Bottom), min(b.Right, c.Right), min(b.Top, c.Top)}
}

func (b Box) grow(d float64) Box { return Box{b.Left - d, b.Bottom - d, b.Right + d, b.Top + d} }

// boxOf bounds points.
func boxOf(ps []xy) Box {
	b := Box{ps[0].x, ps[0].y, ps[0].x, ps[0].y}
	for _, p := range ps {
		b = Box{min(b.Left, p.x), min(b.Bottom, p.y), max(b.Right, p.x), max(b.Top, p.y)}
	}
	return b
}

// xy is a point or a way. Products are rounded by themselves, so that every
// processor comes to the same.
type xy struct{ x, y float64 }

func floats(p geom.Point) xy { return xy{p.X.Float(), p.Y.Float()} }

func (a xy) sub(b xy) xy         { return xy{a.x - b.x, a.y - b.y} }
func (a xy) dot(b xy) float64    { return float64(a.x*b.x) + float64(a.y*b.y) }
func (a xy) cross(b xy) float64  { return float64(a.x*b.y) - float64(a.y*b.x) }
func (a xy) norm2() float64      { return a.dot(a) }
func (a xy) times(k float64) xy  { return xy{float64(a.x * k), float64(a.y * k)} }
func (a xy) plus(b xy) xy        { return xy{a.x + b.x, a.y + b.y} }
func direction(v geom.Vector) xy { return xy{v.X.Float(), v.Y.Float()}.unit() }
func (a xy) unit() xy            { return a.times(1 / math.Sqrt(a.norm2())) }

// way is a line from a point along a vector of length 1.
type way struct{ from, along xy }

func (w way) at(t float64) xy { return w.from.plus(w.along.times(t)) }
