package check

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// besides are where a plain hand puts points beside a line, one after the other: by parts of
// its stretch along it and away from it.
var besides = [][2]int64{{36, 47}, {84, 34}, {24, 58}, {60, 27}, {72, 52}}

// besideLine leaves to chance a point off a line, on either side of it: over
// the stretch between two points of it, where there are two.
func (s *scope) besideLine(n syntax.Node, l curve) spot {
	plain := besides[s.c.scattered%len(besides)]
	s.c.scattered++
	x := s.input(n, program.Fraction, "", rat(plain[0], 100))
	y := s.input(n, program.Fraction, "", rat(plain[1], 100))
	return func(st *program.State) ([]geom.Point, error) {
		m, err := l.whole(st)
		if err != nil {
			return nil, err
		}
		p, u := l.base(st, m)
		on := p.Add(u.Scale(st.Input(x)))
		up := u.Left().Scale(st.Input(y))
		return []geom.Point{on.Add(up), on.Add(up.Neg())}, nil
	}
}

// base is two points of a line, as the first and the way to the second; as far as
// a plain hand reaches, of a line that has not two points of its own.
func (c curve) base(st *program.State, m geom.Line) (geom.Point, geom.Vector) {
	if c.run {
		return m.P, m.D
	}
	if named := st.Program.Slots[c.slot].Between; named != nil {
		a := st.Point(named[0])
		return a, st.Point(named[1]).Sub(a)
	}
	return m.P, nearUnit(m.D).Scale(st.Field.Rat(nearRat(st.Program.Hand(), 4)))
}

// nearUnit is v at a length near 1, by a fraction and not a root: for places left to chance.
func nearUnit(v geom.Vector) geom.Vector {
	n := math.Hypot(v.X.Float(), v.Y.Float())
	return v.Scale(v.X.Field().Rat(nearRat(1/n, 64)))
}

// nearRat is a fraction near x with a denominator that suits its size.
func nearRat(x float64, den int64) *big.Rat {
	for math.Abs(x)*float64(den) < 16 && den < 1<<40 {
		den *= 16
	}
	return big.NewRat(int64(math.Round(x*float64(den))), den)
}

// round is the circle of a locus.
func (l locus) round(s *scope) *program.Round {
	if l.isCircle {
		return &program.Round{Text: "about " + s.slot(l.centre).Name, Centre: func(st *program.State) geom.Point { return st.Point(l.centre) }}
	}
	return &program.Round{Text: "on " + l.on.text, Centre: func(st *program.State) geom.Point { return st.Curve(l.on.slot).Circle.C }}
}

// onLocus leaves a point's place on a curve to chance. A distance alone means
// level, to the right.
func (s *scope) onLocus(n syntax.Node, slot int, pl *places) spot {
	l := pl.loci[0]
	name := s.slot(slot).Name
	k := s.c.scattered
	if sides := len(pl.free); sides > 0 { // their places beside lines are not taken
		k = max(k-sides, 1)
	}
	if l.isCircle && len(pl.conds) == 0 {
		return func(st *program.State) ([]geom.Point, error) {
			r2, err := squareOf(st, l.distance, s)
			if err != nil {
				return nil, err
			}
			c := st.Point(l.centre)
			return []geom.Point{{X: c.X.Add(r2.Sqrt()), Y: c.Y}}, nil
		}
	}
	s.c.scattered++
	r, i := s.nextOf(l, k)
	if l.isCircle || l.on.circle {
		in := s.input(n, program.Bearing, name, r.bearing(i))
		s.c.prog.Inputs[in].Round = l.round(s)
		s.c.prog.Inputs[in].Round.Points = r.ahead
		return func(st *program.State) ([]geom.Point, error) {
			c, err := s.curveOf(st, l)
			if err != nil {
				return nil, err
			}
			d := rationalTurn(st, in)
			way := d.Scale(c.Circle.R2.Sqrt())
			return []geom.Point{c.Circle.C.Add(way), c.Circle.C.Add(way.Neg())}, nil
		}
	}
	return s.onStraight(n, name, pl, r, i)
}

// chanceOnStraight is a part of the way between the ends of a straight, or
// between the points that it is named after, or from its start; and further along.
func chanceOnStraight(st *program.State, l curve, c *program.Curve, in int) []geom.Point {
	from, way := l.base(st, c.Line())
	if c.Straight.Start != nil && c.Straight.End != nil {
		from, way = *c.Straight.Start, c.Straight.End.Sub(*c.Straight.Start)
	}
	t, one := st.Input(in), st.Field.Int(1)
	return []geom.Point{from.Add(way.Scale(t)), from.Add(way.Scale(one.Add(t))), from.Add(way.Scale(t.Neg()))}
}

// about frees a measurement: the figure is drawn with its value, and claims are
// meant of all values. It is moved by parts of itself.
func (s *scope) about(e expr) expr { return s.aboutBy(e, largest(e)) }

// largest is the greatest magnitude of some fixed values; 1 if all are 0 or unknown.
func largest(values ...expr) *big.Rat {
	most := new(big.Rat)
	for _, e := range values {
		if e.rat == nil {
			continue
		}
		if size := new(big.Rat).Abs(e.rat); size.Cmp(most) > 0 {
			most = size
		}
	}
	if most.Sign() == 0 {
		return rat(1, 1)
	}
	return most
}

// aboutBy is about for a value that is moved by parts of another.
func (s *scope) aboutBy(e expr, part *big.Rat) expr {
	in := s.input(e.node, program.Nearby, s.span(e.node).Text(), new(big.Rat))
	out := expr{node: e.node, angle: e.angle, dim: e.dim, bare: e.bare}
	if e.angle {
		out.size = func(st *program.State) (geom.Angle, error) {
			a, err := e.size(st)
			if err != nil || st.Choice(in).Sign() == 0 {
				return a, err
			}
			return geom.Turned(turnNear(st, a.Float(), st.Input(in))), nil
		}
		return out
	}
	out.value = func(st *program.State) (program.Amount, error) {
		x, err := e.value(st)
		if err != nil {
			return nil, err
		}
		return x.Add(pure(st.Input(in).Mul(st.Field.Rat(part)))), nil
	}
	return out
}

// rationalTurn is a unit vector with fractions for coordinates, near the
// bearing that chance has chosen.
func rationalTurn(st *program.State, in int) geom.Vector {
	v := st.Choice(in)
	whole := new(big.Rat).SetInt(nearestInt(v))
	degrees, _ := whole.Float64()
	return turnNear(st, degrees, st.Field.Free(new(big.Rat).Sub(v, whole)))
}

func nearestInt(v *big.Rat) *big.Int {
	up := new(big.Rat).Add(v, rat(1, 2))
	return new(big.Int).Div(up.Num(), up.Denom()) // rounds down: denominators are positive
}

// turnNear is the turn whose half has for its tangent a multiple of 1/20 that
// comes near to so many degrees, and besides one by about the shift in radians.
func turnNear(st *program.State, degrees float64, shift geom.Real) geom.Vector {
	half := math.Mod(degrees, 360) / 2 * math.Pi / 180
	plain := geom.Vector{X: st.Field.Int(-1), Y: st.Field.Int(0)}
	if math.Abs(math.Cos(half)) >= 0.05 {
		plain = turnOf(st.Field.Rat(big.NewRat(int64(math.Round(math.Tan(half)*20)), 20)))
	}
	if shift.Sign() == 0 {
		return plain
	}
	more := turnOf(shift.Mul(st.Field.Rat(rat(1, 2))))
	return plain.Turn(more.X, more.Y)
}

// turnOf is the unit vector of the turn whose half has tangent t: the chord
// construction of Diophantus.
func turnOf(t geom.Real) geom.Vector {
	one := t.Field().Int(1)
	n := one.Add(t.Mul(t))
	return geom.Vector{X: one.Sub(t.Mul(t)).Div(n), Y: t.MulInt(2).Div(n)}
}
