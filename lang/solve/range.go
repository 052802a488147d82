package solve

import (
	"math/big"

	"trammel/lang/program"
)

// Range tells between which of the values that are tried an input could lie,
// all others as they are: the stretch around the chosen one in which every
// step goes well.
func Range(p *program.Program, inputs []*big.Rat, in int) (lo, hi *big.Rat) {
	s := newSearch(p, 1)
	copy(s.st.Inputs, inputs)
	for i, step := range p.Steps {
		if !step.Proof {
			s.perform(i)
		}
	}
	steps := s.effects(in, len(p.Steps))
	chosen, _ := inputs[in].Float64()
	fine := func(x float64) bool {
		s.st.Inputs[in] = new(big.Rat).SetFloat64(x)
		return s.redo(steps) < 0
	}
	return decimal(edge(chosen, 1/wider, fine), chosen/100), decimal(edge(chosen, wider, fine), chosen/100)
}

// The range of an opening is looked for in steps of this factor, as far as mostWider.
const (
	wider     = 1.25
	mostWider = 20
)

// edge is the last value that goes well, from one that does, by a factor at a
// time; then closer by halves.
func edge(from, factor float64, fine func(float64) bool) float64 {
	inside, outside := from, from*factor
	for fine(outside) {
		inside, outside = outside, outside*factor
		if inside > mostWider*from || inside < from/mostWider {
			return inside
		}
	}
	for range 12 {
		if mid := (inside + outside) / 2; fine(mid) {
			inside = mid
		} else {
			outside = mid
		}
	}
	return inside
}
