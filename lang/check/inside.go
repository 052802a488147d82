package check

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// insides are where a plain hand puts points within a figure, one after the other,
// by its axes: near no centre and on no bisector of it.
var insides = [][2]*big.Rat{
	{rat(46, 100), rat(22, 100)}, {rat(20, 100), rat(36, 100)}, {rat(31, 100), rat(47, 100)}, {rat(14, 100), rat(62, 100)},
}

// insidesOfAngle are the same for an angle, by its arms: far out, and plainly off its bisector.
var insidesOfAngle = [][2]*big.Rat{
	{rat(58, 100), rat(27, 100)}, {rat(24, 100), rat(57, 100)}, {rat(66, 100), rat(13, 100)}, {rat(30, 100), rat(42, 100)},
}

// insidesOfCircle are the same for a circle, whose axes meet in its centre: all about it.
var insidesOfCircle = [][2]*big.Rat{
	{rat(46, 100), rat(22, 100)}, {rat(-58, 100), rat(31, 100)}, {rat(-13, 100), rat(-64, 100)}, {rat(55, 100), rat(-37, 100)},
}

// outskirtsOfTriangle are where a plain hand puts points outside of a triangle, one after
// the other, by two of its sides: over each side of it.
var outskirtsOfTriangle = [][2]*big.Rat{
	{rat(95, 100), rat(58, 100)}, {rat(-42, 100), rat(63, 100)}, {rat(38, 100), rat(-46, 100)}, {rat(-35, 100), rat(-28, 100)},
}

// outskirts are the same for other figures, by their axes: on all sides.
var outskirts = [][2]*big.Rat{
	{rat(16, 10), rat(7, 10)}, {rat(-12, 10), rat(9, 10)}, {rat(5, 10), rat(-14, 10)}, {rat(-11, 10), rat(-8, 10)},
}

// placeInside is inside or outside of a polygon or circle.
func (s *scope) placeInside(pl *places, r *syntax.Ref, n syntax.Node, side int) bool {
	test, frame, ok := s.region(r)
	if !ok {
		return false
	}
	sure := s.surelyInside(r)
	span := s.span(n)
	pl.conds = append(pl.conds, cond{span.Text(), span, false, func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		got, err := test(st, p)
		if err == nil && got == side && side < 0 {
			sure(st, p)
		}
		return got == side, err
	}})
	s.c.scattered++
	plain, count := insides, &s.c.inside
	switch {
	case side > 0:
		plain, count = outskirts, &s.c.outside
		if r.Name == "" && len(r.Points) == 3 {
			plain = outskirtsOfTriangle
		}
	case r.Name != "":
		plain = insidesOfCircle
	case s.isAngle(r):
		plain = insidesOfAngle
	}
	at := plain[*count%len(plain)]
	*count++
	ix := s.input(n, program.Fraction, "", at[0])
	iy := s.input(n, program.Fraction, "", at[1])
	pl.free = append(pl.free, func(st *program.State) ([]geom.Point, error) {
		o, u, v := frame(st)
		return []geom.Point{o.Add(u.Scale(st.Input(ix))).Add(v.Scale(st.Input(iy)))}, nil
	})
	return true
}

// region is a polygon's or circle's inside test, and axes to choose points by.
func (s *scope) region(r *syntax.Ref) (func(*program.State, geom.Point) (int, error), func(*program.State) (geom.Point, geom.Vector, geom.Vector), bool) {
	if r.Name != "" {
		slot, ok := s.circle(r)
		return func(st *program.State, p geom.Point) (int, error) { return st.Curve(slot).Circle.Side(p), nil },
			func(st *program.State) (geom.Point, geom.Vector, geom.Vector) {
				k := st.Curve(slot).Circle
				w := st.Field.Rat(nearRat(math.Sqrt(k.R2.Float()), 16))
				zero := st.Field.Int(0)
				return k.C, geom.Vector{X: w, Y: zero}, geom.Vector{X: zero, Y: w}
			}, ok
	}
	ps, ok := s.polygon(r)
	text, corner := s.span(r.Node).Text(), 0
	if s.isAngle(r) {
		corner = 1
	}
	return func(st *program.State, p geom.Point) (int, error) {
			pts := st.Points(ps)
			if !geom.Simple(pts) {
				return 0, &program.Fault{Text: "the outline " + text + " crosses itself", Help: "name the corners in their order round the figure"}
			}
			return geom.Place(p, pts), nil
		}, func(st *program.State) (geom.Point, geom.Vector, geom.Vector) {
			a := st.Point(ps[corner])
			return a, st.Point(ps[(corner+1)%len(ps)]).Sub(a), st.Point(ps[(corner+len(ps)-1)%len(ps)]).Sub(a)
		}, ok
}

// isAngle tells whether three points name a given angle.
func (s *scope) isAngle(r *syntax.Ref) bool {
	ps := r.Points
	if r.Name != "" || len(ps) != 3 {
		return false
	}
	v, known := s.names[ps[1].Name]
	if !known {
		return false
	}
	ends, given := s.c.arms[v]
	return given && (ends == pair{s.names[ps[0].Name], s.names[ps[2].Name]} || ends == pair{s.names[ps[2].Name], s.names[ps[0].Name]})
}
