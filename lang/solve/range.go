package solve

import (
	"math/big"

	"trammel/lang/program"
)

// Range tells between which of the values that are tried an input could lie,
// all others as they are: the stretch around the chosen one in which every
// step goes well and the figure grows over no page.
func Range(p *program.Program, inputs []*big.Rat, in int) (lo, hi *big.Rat) {
	s := newSearch(p, 1)
	copy(s.st.Inputs, inputs)
	for i, step := range p.Steps {
		if !step.Proof {
			s.perform(i)
		}
	}
	steps := s.effects(in, len(p.Steps))
	over := max(s.over(), 0)
	fine := func(x float64) bool {
		s.st.Inputs[in] = new(big.Rat).SetFloat64(x)
		return s.redo(steps) < 0 && s.over() <= over+1e-9
	}
	chosen, _ := inputs[in].Float64()
	if p.Inputs[in].Kind == program.Opening {
		factor := func(by float64) func(float64) float64 {
			return func(x float64) float64 { return x * by }
		}
		return decimal(edge(chosen, chosen/mostWider, factor(1/wider), fine), chosen/100), decimal(edge(chosen, chosen*mostWider, factor(wider), fine), chosen/100)
	}
	least, most := s.reaches(in, chosen)
	part := func(to float64) func(float64) float64 {
		return func(x float64) float64 { return x + (to-chosen)/strides }
	}
	lo, hi = new(big.Rat), new(big.Rat)
	return lo.SetFloat64(edge(chosen, least, part(least), fine)), hi.SetFloat64(edge(chosen, most, part(most), fine))
}

// The range of an opening is looked for in steps of this factor, as far as
// mostWider; of other values in so many strides.
const (
	wider     = 1.25
	mostWider = 20
	strides   = 16
)

// reaches are the least and the most that is tried of a value that is no opening.
func (s *search) reaches(in int, chosen float64) (least, most float64) {
	switch s.p.Inputs[in].Kind {
	case program.Fraction:
		if chosen > 0 && chosen < 1 {
			return 0.01, 0.99
		}
		return chosen - 2, chosen + 2
	case program.Bearing:
		return chosen - 170, chosen + 170
	case program.Slope:
		return chosen - 8, chosen + 8
	}
	return chosen - s.hand, chosen + s.hand
}

// edge is the last value that goes well, from one that does, a step at a time as
// far as a limit; then closer by halves.
func edge(from, limit float64, step func(float64) float64, fine func(float64) bool) float64 {
	beyond := func(x float64) bool { return (x-limit)*(limit-from) >= 0 }
	inside, outside := from, step(from)
	for fine(outside) {
		if inside, outside = outside, step(outside); beyond(inside) {
			return limit
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
