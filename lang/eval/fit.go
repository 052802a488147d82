package eval

import (
	"math/big"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/program"
)

// fitting is a trial in floats that chooses openings anew.
type fitting struct {
	*program.State
	work int // steps that were done
}

// By which factors openings are chosen anew, and so many of the latest ones.
var factors = []*big.Rat{
	big.NewRat(2, 1), big.NewRat(1, 2), big.NewRat(4, 1), big.NewRat(1, 4), big.NewRat(8, 1), big.NewRat(1, 8),
	big.NewRat(4, 3), big.NewRat(3, 4), big.NewRat(3, 1), big.NewRat(1, 3), big.NewRat(24, 1), big.NewRat(1, 24),
}

const latest = 3

// Fit is Try in floats, where an opening with which a step fails is chosen anew: any that
// the source leaves to chance may be another. The trial is nil if there is no such figure;
// fitted is what it came to, and work is how many steps were done.
func Fit(p *program.Program, inputs []*big.Rat) (t *Trial, fitted []*big.Rat, work int) {
	f := &fitting{State: program.NewState(p, slices.Clone(inputs), exact.NewRoughField())}
	for i := range p.Steps {
		if !f.do(i) && !f.mend(i) {
			return nil, nil, f.work
		}
	}
	return judged(f.State), f.Inputs, f.work + len(p.Claims)
}

// do does a step, and tells whether it goes well.
func (f *fitting) do(i int) bool {
	step := f.Program.Steps[i]
	if step.Proof {
		return true
	}
	f.work++
	return Do(f.State, step) == nil
}

// mend looks for an opening with which all steps up to i go well.
func (f *fitting) mend(i int) bool {
	tried := 0
	for in, input := range slices.Backward(f.Program.Inputs) {
		if input.Kind != program.Opening || input.Step > i {
			continue
		}
		old := f.Inputs[in]
		for _, by := range factors {
			if f.Inputs[in] = new(big.Rat).Mul(old, by); f.again(input.Step, i) {
				return true
			}
		}
		f.Inputs[in] = old
		if tried++; tried == latest || !f.again(input.Step, i-1) {
			return false
		}
	}
	return false
}

// again does the steps from one to another once more, as far as they go well.
func (f *fitting) again(from, to int) bool {
	for i := from; i <= to; i++ {
		if !f.do(i) {
			return false
		}
	}
	return true
}
