package check

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// along puts points on a straight by an input; nil where its habit does not suit.
type along func(st *program.State, c *program.Curve, in int) []geom.Point

// onStraight leaves to chance where on a straight the ith point of a row is.
func (s *scope) onStraight(n syntax.Node, name string, pl *places, r row, i int) spot {
	on := pl.loci[0].on
	part, habit := s.habitAlong(name, pl, r, i)
	in := s.input(n, program.Fraction, name, part)
	return func(st *program.State) ([]geom.Point, error) {
		c, err := on.value(st)
		if err != nil {
			return nil, err
		}
		if habit != nil && c.Straight.Start == nil && c.Straight.End == nil {
			if ps := habit(st, c, in); ps != nil {
				return ps, nil
			}
		}
		return chanceOnStraight(st, on, c, in), nil
	}
}

// cotangent is that of about 60°, at which a way goes plainly aslant.
var cotangent = rat(58, 100)

// habitAlong is how a plain hand puts the ith point of a row on a straight; without a habit it
// is only a part of it.
func (s *scope) habitAlong(name string, pl *places, r row, i int) (part *big.Rat, habit along) {
	on := pl.loci[0].on
	endless := s.endless(on)
	share, parted := s.share(name, on)
	if parted && r.ahead <= 1 {
		return share, nil
	}
	if target, aims := s.aimedAt(name); aims {
		return cotangent, func(st *program.State, c *program.Curve, in int) []geom.Point {
			return aslant(c.Line(), st.Point(target), st.Input(in))
		}
	}
	if endless && len(pl.sides) == 1 {
		s.c.asides++
		return asides[(s.c.asides-1)%len(asides)], func(st *program.State, c *program.Curve, in int) []geom.Point {
			return asideOn(st, on, c, pl.sides[0], in)
		}
	}
	if endless && r.ahead <= 2 {
		if target, known := s.c.over[on.slot]; known && r.ahead <= 1 {
			return cotangent, func(st *program.State, c *program.Curve, in int) []geom.Point {
				return inward(st, on, c, aslant(c.Line(), st.Point(target), st.Input(in)))
			}
		}
		if beads := s.c.beads[on.slot]; len(beads) > 0 {
			return offBeads[i%len(offBeads)], func(st *program.State, c *program.Curve, in int) []geom.Point {
				return clearOf(st, on, c, beads, in, i)
			}
		}
	}
	if r.ahead <= 1 {
		return s.alone(on, endless), nil
	}
	return r.part(i, endless), nil
}

// alone is the next part for a point that is the only one on its straight.
func (s *scope) alone(on curve, endless bool) *big.Rat {
	habit, taken := alone, &s.single
	switch {
	case endless:
		habit, taken = aloneEndless, &s.singleEndless
	case on.slot >= 0 && s.c.reaches[on.slot] == reachRay:
		habit = aloneOnRay
	}
	*taken++
	return rat(habit[(*taken-1)%len(habit)], 100)
}

// aslant are points of a line from which the way to another point goes aslant: from its
// foot by a part of its distance, to either side.
func aslant(l geom.Line, p geom.Point, part geom.Real) []geom.Point {
	foot := l.Foot(p)
	way := p.Sub(foot).Left().Scale(part)
	return []geom.Point{foot.Add(way), foot.Add(way.Neg())}
}

// inward puts points of a line in the order of how near they are to the middle of its stretch.
func inward(st *program.State, l curve, c *program.Curve, ps []geom.Point) []geom.Point {
	from, way := l.base(st, c.Line())
	middle := from.Add(way.Scale(st.Field.Rat(rat(1, 2))))
	off := func(p geom.Point) float64 {
		return math.Hypot(p.X.Float()-middle.X.Float(), p.Y.Float()-middle.Y.Float())
	}
	if len(ps) == 2 && off(ps[1]) < off(ps[0]) {
		return []geom.Point{ps[1], ps[0]}
	}
	return ps
}

// offBeads are how far a plain hand takes the first point of a line that an act has made, and a
// second one on its other side, from what it was made through: as parts of the line's stretch.
var offBeads = []*big.Rat{rat(52, 100), rat(29, 100)}

// clearOf are points of a line on either side of the first of some that it goes through; nil if
// there is none.
func clearOf(st *program.State, l curve, c *program.Curve, beads []int, in, i int) []geom.Point {
	at := slices.IndexFunc(beads, func(slot int) bool { return c.Knows(st.Point(slot)) })
	if at < 0 {
		return nil
	}
	from := st.Point(beads[at])
	_, way := l.base(st, c.Line())
	off := way.Scale(st.Input(in))
	if i%2 == 1 {
		off = off.Neg()
	}
	return []geom.Point{from.Add(off), from.Add(off.Neg())}
}

// threaded notes the points that come with the lines which a call gives, or that they were made
// from: the lines may go through them.
func (s *scope) threaded(in *scope, targets []target, results []result) {
	var beads, from, lines []int
	for i, t := range targets {
		slot, known := s.names[t.name]
		switch {
		case !known || i >= len(results):
		case results[i].kind == program.Point:
			beads = append(beads, slot)
		case results[i].kind == program.Line:
			lines = append(lines, slot)
		}
	}
	for _, slot := range in.names {
		if slot < in.first && s.slot(slot).Kind == program.Point {
			from = append(from, slot)
		}
	}
	slices.Sort(from)
	for _, line := range lines {
		s.c.beads[line] = slices.Concat(beads, from)
	}
}
