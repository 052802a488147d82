package solve

import (
	"math/big"

	"trammel/lang/program"
)

// Range tells between which of the values that are tried an input could lie,
// all others as they are: the stretch around the chosen one in which every
// step goes well.
func Range(p *program.Program, inputs []*big.Rat, in int) (lo, hi *big.Rat) {
	s := newSearch(p)
	copy(s.st.Inputs, inputs)
	for i, step := range p.Steps {
		if !step.Proof {
			s.perform(i)
		}
	}
	s.scale = s.sizeSoFar()
	chosen := inputs[in]
	lo, hi = chosen, chosen
	steps := s.effects(in, len(p.Steps))
	bad := func(v *big.Rat) bool {
		s.st.Inputs[in] = v
		return s.redo(steps) >= 0
	}
	below, above := (*big.Rat)(nil), (*big.Rat)(nil) // the nearest that fail
	values := s.values(in)
	for _, v := range values {
		switch c := v.Cmp(chosen); {
		case c < 0 && bad(v) && (below == nil || v.Cmp(below) > 0):
			below = v
		case c > 0 && bad(v) && (above == nil || v.Cmp(above) < 0):
			above = v
		}
	}
	for _, v := range values {
		if v.Cmp(lo) < 0 && (below == nil || v.Cmp(below) > 0) {
			lo = v
		}
		if v.Cmp(hi) > 0 && (above == nil || v.Cmp(above) < 0) {
			hi = v
		}
	}
	return lo, hi
}
