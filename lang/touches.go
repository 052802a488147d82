package lang

import (
	"errors"
	"math/big"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/source"
)

// refuseTouches makes an error of one name for two meetings where curves touch, and
// have one meeting, only because of what was chosen: as it is where they cross.
func (r *Result) refuseTouches() {
	for _, t := range r.state.Touches {
		if r.state.Free[t.Step] {
			r.refuseTouch(slices.Index(r.program.Steps, t.Step))
		}
	}
}

// refuseTouch looks at figures beside this one for two meetings of which nothing says
// which is meant. Rough numbers find them, and exact ones tell.
func (r *Result) refuseTouch(step int) {
	for i, in := range r.program.Inputs {
		if in.Step > step || !leftToChance(in) {
			continue
		}
		for _, v := range beside(in, r.inputs[i]) {
			inputs := slices.Clone(r.inputs)
			inputs[i] = v
			if unclear(doneUpTo(program.NewState(r.program, inputs, exact.NewRoughField()), step)) == nil {
				continue
			}
			if reportUnclear(r.program, step, doneUpTo(program.NewState(r.program, inputs, exact.NewField()), step), &r.Problems) {
				return
			}
		}
	}
}

// beside are values of an input a little more and a little less than one.
func beside(in *program.Input, v *big.Rat) [2]*big.Rat {
	d := big.NewRat(1, 50)
	switch in.Kind {
	case program.Bearing:
		d.SetInt64(1)
	case program.Opening:
		d.Mul(d, v)
	}
	return [2]*big.Rat{new(big.Rat).Add(v, d), new(big.Rat).Sub(v, d)}
}

// doneUpTo does the steps up to one that make things, and gives what becomes of that one.
func doneUpTo(st *program.State, step int) (err error) {
	for _, s := range st.Program.Steps[:step+1] {
		if !s.Proof {
			err = eval.Do(st, s)
		}
	}
	return err
}

// unclear is the fault that nothing says which of several places is meant, or nil.
func unclear(err error) *program.Fault {
	var fault *program.Fault
	if errors.As(err, &fault) && fault.Unclear != "" {
		return fault
	}
	return nil
}

// reportUnclear reports such a fault of a step that hangs on a choice, without the
// places that it has with this one.
func reportUnclear(p *program.Program, step int, err error, problems *source.List) bool {
	fault := unclear(err)
	if fault == nil {
		return false
	}
	told := *fault
	told.Text = fault.Unclear
	eval.Failure{Index: step, Step: p.Steps[step], Err: &told}.Report(problems)
	return true
}
