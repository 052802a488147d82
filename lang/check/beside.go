package check

import (
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// standsApart tells whether free points are no part of what is there already, and there is so
// much of that that they would fall onto it.
func (s *scope) standsApart(refs []*syntax.Ref) bool {
	if s.depth > 0 || !s.crowded() {
		return false
	}
	b := s.bonds()
	for name := range s.names {
		if slices.ContainsFunc(namesIn(refs...), func(free string) bool { return b.root(free) == b.root(name) }) {
			return false
		}
	}
	return true
}

// crowded tells whether there is a circle, a shape or an angle already, or the points of one.
func (s *scope) crowded() bool {
	points := 0
	for _, slot := range s.c.prog.Slots {
		switch {
		case slot.Ink == nil || slot.Ink.Hidden:
		case slot.Kind == program.Circle && slot.Ink.Whole:
			return true
		case slot.Kind == program.Point:
			points++
		}
	}
	return points > 2
}

// plot is by which part of their habit a plain hand draws free points nearer together that
// stand beside something, and the room about the first that it leaves for what is built on
// them, in units: from its lower left to its upper right.
type plot struct {
	size *big.Rat
	room [][2]*big.Rat
}

// plots are those for points by themselves, and about the centre of a circle.
var plots = [2]plot{
	{rat(3, 4), [][2]*big.Rat{{rat(0, 1), rat(0, 1)}, {rat(6, 1), rat(45, 10)}}},
	{rat(2, 5), [][2]*big.Rat{{rat(-3, 1), rat(-3, 1)}, {rat(3, 1), rat(3, 1)}}},
}

// freeBeside makes free points that stand beside all that is there: the first one in a
// clearing, the others about it.
func (s *scope) freeBeside(refs []*syntax.Ref) {
	there, from := len(s.c.prog.Slots), -1
	p := plots[0]
	if s.bonds().centres[first(refs[0])] {
		p = plots[1]
	}
	spots := p.room
	for i := range refs {
		spots = append(spots, p.spot(i, len(refs)))
	}
	for i, r := range refs {
		slot, ok := s.newPoint(r)
		switch {
		case !ok:
			continue
		case from < 0:
			from = slot
			s.draw(slot, figure.Given)
			s.firstBeside(r.Node, slot, there, spots)
		default:
			s.draw(slot, figure.Given)
			s.freeNear(r.Node, slot, from, p.spot(i, len(refs)))
		}
		s.c.scattered++
	}
}

// spot is where the ith of n points is in a plot, about the first.
func (p plot) spot(i, n int) (at [2]*big.Rat) {
	habit, from := habitOf(i, n), habitOf(0, n)
	for k := range at {
		at[k] = new(big.Rat).Sub(habit[k], from[k])
		at[k].Mul(at[k], p.size)
	}
	return at
}

// firstBeside puts a point so that places about it, in units, stand clear of all that was
// there before some slot.
func (s *scope) firstBeside(n syntax.Node, slot, there int, spots [][2]*big.Rat) {
	place := s.clear(n, s.slot(slot).Name, there)
	place.below = true
	s.emit(n, func(st *program.State) error {
		unit := nearRat(st.Program.Hand()/program.PlainReach, 4)
		ps := []geom.Point{{X: st.Field.Int(0), Y: st.Field.Int(0)}}
		for _, d := range spots {
			ps = append(ps, geom.Point{X: st.Field.Rat(new(big.Rat).Mul(unit, d[0])), Y: st.Field.Rat(new(big.Rat).Mul(unit, d[1]))})
		}
		st.Set(slot, place.put(st, ps)[0])
		return nil
	})
}

// freeNear leaves a point's place to chance, so far right of another and above it by habit.
func (s *scope) freeNear(n syntax.Node, slot, from int, by [2]*big.Rat) {
	name, reach := s.slot(slot).Name, rat(1, program.PlainReach)
	x := s.input(n, program.Fraction, name, new(big.Rat).Mul(by[0], reach))
	y := s.input(n, program.Fraction, name, new(big.Rat).Mul(by[1], reach))
	s.emit(n, func(st *program.State) error {
		hand := st.Field.Rat(nearRat(st.Program.Hand(), 4))
		st.Set(slot, st.Point(from).Add(geom.Vector{X: hand.Mul(st.Input(x)), Y: hand.Mul(st.Input(y))}))
		return nil
	})
}
