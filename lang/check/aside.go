package check

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/lang/program"
)

// asides are how far from a straight a plain hand takes points of a line on one side of it,
// one after the other, as parts of the line's stretch: plainly clear of it, and no two alike.
var asides = []*big.Rat{rat(40, 100), rat(52, 100), rat(33, 100), rat(60, 100)}

// farAside is after how many stretches of a line a crossing is too far away to count from.
const farAside = 1.5

// endless tells a line that has no points of its own between which a hand would stay.
func (s *scope) endless(l curve) bool {
	return !l.run && !l.circle && l.slot >= 0 && s.slot(l.slot).Between == nil
}

// asideOn are the points of an endless line on either side of a straight, by a part of its
// stretch from where they cross; nil where they do not, or only far away.
func asideOn(st *program.State, l curve, c *program.Curve, side curve, in int) []geom.Point {
	m, err := side.whole(st)
	if err != nil || c.Straight.Start != nil || c.Straight.End != nil {
		return nil
	}
	from, way := l.base(st, c.Line())
	u, v := m.D.X.Float(), m.D.Y.Float()
	x, y := m.P.X.Float()-from.X.Float(), m.P.Y.Float()-from.Y.Float()
	at := (x*v - y*u) / (way.X.Float()*v - way.Y.Float()*u)
	if !(math.Abs(at) <= farAside) {
		return nil
	}
	part, cross := st.Input(in), st.Field.Rat(nearRat(at, fineness))
	return []geom.Point{from.Add(way.Scale(cross.Add(part))), from.Add(way.Scale(cross.Sub(part)))}
}
