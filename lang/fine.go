package lang

import (
	"math"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/program"
)

// finest is the least part of a figure in which other figures are looked for: what
// is finer is nothing to the floats that find them.
const finest = 1e-7

// isFine tells that a figure has things that are finer than other figures are looked
// for: points all but in one place, or a circle of hardly any radius. There a claim may
// turn over in a region that is never tried.
func (r *Result) isFine() bool {
	size, _ := spread(r.state)
	var ps []geom.Point
	for _, v := range r.state.Values {
		switch v := v.(type) {
		case geom.Point:
			ps = append(ps, v)
		case *program.Curve:
			if v.Circle != nil && math.Sqrt(v.Circle.R2.Float()) < finest*size {
				return true
			}
		}
	}
	at := make([][2]float64, len(ps))
	for i, p := range ps {
		at[i] = [2]float64{p.X.Float(), p.Y.Float()}
	}
	for i, p := range at {
		for j, q := range at[:i] {
			d := math.Hypot(p[0]-q[0], p[1]-q[1])
			if d > 0 && d < finest*size && isTwo(ps[i], ps[j]) {
				return true
			}
		}
	}
	return false
}

// isTwo tells that two points are not the same, or that it cannot be told.
func isTwo(p, q geom.Point) (two bool) {
	err := exact.Try(func() { two = !p.Equal(q) })
	return two || err != nil
}
