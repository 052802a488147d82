package slip

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/program"
)

// nudge is one way to draw something beside its place.
type nudge struct {
	dx, dy float64 // of a point, a centre, or a ruler's edge
	open   float64 // of the compasses
	turn   float64 // of a ruler, about the middle of what it draws, in radians
}

func (n nudge) scaled(f float64) nudge { return nudge{n.dx * f, n.dy * f, n.open * f, n.turn * f} }

// nudges are the slips of what a slot holds.
func (r *run) nudges(slot int) []nudge {
	u := r.units
	round := []nudge{{dx: u}, {dx: -u}, {dy: u}, {dy: -u}}
	sh, ok := shapeOf(r.base.Values[slot])
	switch {
	case !ok:
		return nil
	case sh.kind == program.Circle:
		return append(round, nudge{open: u}, nudge{open: -u})
	case sh.kind == program.Line:
		x, y := -float64(u*sh.way.Y), float64(u*sh.way.X)
		return []nudge{{dx: x, dy: y}, {dx: -x, dy: -y}, {turn: r.turn}, {turn: -r.turn}}
	}
	// A point that is pricked lies anywhere about its place.
	d := u * math.Sqrt2 / 2
	return append(round, nudge{dx: d, dy: d}, nudge{dx: d, dy: -d}, nudge{dx: -d, dy: d}, nudge{dx: -d, dy: -d})
}

// on is a value beside its place. What was known to lie on a curve does so no longer.
func (n nudge) on(st *program.State, value any) any {
	by := geom.Vector{X: number(st.Field, n.dx), Y: number(st.Field, n.dy)}
	switch v := value.(type) {
	case geom.Point:
		return v.Add(by)
	case *program.Curve:
		if v.Circle != nil {
			r := number(st.Field, math.Sqrt(max(0, v.Circle.R2.Float()))+n.open)
			return &program.Curve{Circle: &geom.Circle{C: v.Circle.C.Add(by), R2: r.Mul(r)}, Used: v.Used}
		}
		return n.onStraight(st, v, by)
	}
	return value
}

// onStraight turns a straight about the middle of what is drawn of it, and shifts it.
func (n nudge) onStraight(st *program.State, c *program.Curve, by geom.Vector) *program.Curve {
	sh := straightShape(c)
	m := sh.place((sh.lo+sh.hi)/2, 0)
	middle := geom.Point{X: number(st.Field, m.X), Y: number(st.Field, m.Y)}
	cos, sin := number(st.Field, math.Cos(n.turn)), number(st.Field, math.Sin(n.turn))
	move := func(p geom.Point) geom.Point {
		return middle.Add(p.Sub(middle).Turn(cos, sin)).Add(by)
	}
	s := &geom.Straight{Line: geom.Line{P: move(c.Straight.P), D: c.Straight.D.Turn(cos, sin)}}
	if e := c.Straight.Start; e != nil {
		p := move(*e)
		s.Start = &p
	}
	if e := c.Straight.End; e != nil {
		p := move(*e)
		s.End = &p
	}
	return &program.Curve{Straight: s, Used: c.Used}
}

// number is a float as a number of a field.
func number(f *exact.Field, x float64) *exact.Real {
	return f.Rat(new(big.Rat).SetFrac64(int64(math.Round(x*grain)), grain))
}

// grain is how finely a slipped place is told.
const grain = 1 << 24
