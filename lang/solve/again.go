package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
)

// redo does steps again, as far as something that they read is another thing now; it
// gives the first that fails, or -1, and leaves those behind it. So an opening that leads to
// the same meetings, however wide it is, costs the few steps between.
func (s *search) redo(steps []int) int {
	for _, i := range steps {
		if s.again(i); !s.went(i) {
			return i
		}
	}
	return -1
}

// again does a step again, if it would make something else. What comes out as it was
// remains the same thing.
func (s *search) again(i int) {
	if s.current(i) {
		return
	}
	s.was.take(s, i)
	s.unmake(i)
	s.perform(i)
	m := &s.was
	for n, slot := range m.slots {
		if alikeValues(m.values[n], s.st.Values[slot]) {
			s.st.Values[slot], s.marks[slot] = m.values[n], m.marks[n]
			s.sight.put(slot, &m.things[n])
		}
	}
	s.seal(i)
}

// seal notes from what step i has made what stands.
func (s *search) seal(i int) {
	k := &s.known[i]
	k.stands, k.from, k.chosen = true, s.pool.copy(k.from, k.reads), k.chosen[:0]
	for n, slot := range k.reads {
		k.from[n] = s.marks[slot]
	}
	for _, in := range k.inputs {
		k.chosen = append(k.chosen, s.st.Inputs[in])
	}
}

// current tells whether step i would make once more what stands.
func (s *search) current(i int) bool {
	k := &s.known[i]
	if !k.stands {
		return false
	}
	for n, slot := range k.reads {
		if s.marks[slot] != k.from[n] {
			return false
		}
	}
	for n, in := range k.inputs {
		if v := s.st.Inputs[in]; v != k.chosen[n] && v.Cmp(k.chosen[n]) != 0 {
			return false
		}
	}
	return true
}

// unmake empties what a step has written.
func (s *search) unmake(i int) {
	s.known[i].stands = false
	for _, slot := range s.writes[i] {
		s.st.Values[slot], s.marks[slot] = nil, 0
		s.sight.look(slot, nil)
	}
}

// alikeValues tells whether two values of a slot are the same but for rounding, to all that
// may read them.
func alikeValues(a, b any) bool {
	switch a := a.(type) {
	case geom.Point:
		b, ok := b.(geom.Point)
		return ok && alikePoints(a, b)
	case program.Amount:
		b, ok := b.(program.Amount)
		return ok && hardlyOff(a.Float(), b.Float())
	case *program.Curve:
		b, ok := b.(*program.Curve)
		return ok && b != nil && alikeCurves(a, b)
	}
	return false
}

func alikePoints(a, b geom.Point) bool {
	return a == b || hardlyOff(a.X.Float(), b.X.Float()) && hardlyOff(a.Y.Float(), b.Y.Float())
}

// alikeCurves is for curves that are given in the same way, and known to pass by no
// other points.
func alikeCurves(a, b *program.Curve) bool {
	if slices.ContainsFunc(b.On, func(p geom.Point) bool { return !a.Knows(p) }) {
		return false
	}
	switch {
	case a.Circle != nil && b.Circle != nil:
		return alikePoints(a.Circle.C, b.Circle.C) && hardlyOff(a.Circle.R2.Float(), b.Circle.R2.Float())
	case a.Straight != nil && b.Straight != nil:
		k, l := a.Straight, b.Straight
		return alikePoints(k.P, l.P) && alikePoints(geom.Point(k.D), geom.Point(l.D)) && alikeEnds(k.Start, l.Start) && alikeEnds(k.End, l.End)
	}
	return false
}

func alikeEnds(a, b *geom.Point) bool {
	return a == nil && b == nil || a != nil && b != nil && alikePoints(*a, *b)
}

// hardlyOff tells whether two floats differ by no more than a meeting loses to rounding.
func hardlyOff(x, y float64) bool { return math.Abs(x-y) <= 1e-11*(math.Abs(x)+math.Abs(y)+1e-3) }

// stir finds the steps that are done again for another value of an input, and keeps in
// aside what they make for it; the value is nil, and the steps are all, where no other will do.
func (s *search) stir(in int) (steps []int, other *big.Rat) {
	f, old := &s.before, s.st.Inputs[in]
	all := s.effects(in, len(s.p.Steps))
	for _, v := range s.ladder(in).beside(old) {
		f.made, s.st.Inputs[in], steps = f.made[:0], v, nil
		fails := slices.ContainsFunc(all, func(i int) bool {
			if s.current(i) {
				return false
			}
			f.add(s, i)
			s.again(i)
			steps = append(steps, i)
			return !s.went(i)
		})
		if s.aside.take(s, steps); !fails {
			other = v
		}
		f.back(s)
		if s.st.Inputs[in] = old; !fails {
			return steps, other
		}
	}
	return all, nil
}
