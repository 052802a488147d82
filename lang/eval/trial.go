package eval

import (
	"math/big"

	"trammel/geom/exact"
	"trammel/lang/program"
)

// Trial is a figure of the same Program on other inputs, as far as its claims go.
type Trial struct {
	State  *program.State
	Failed map[*program.Step]error // the claims that fail in it
	// Degree is the binary logarithm of a bound for the degree of the polynomials
	// in the inputs that are 0 here, if not everywhere, where the figure or a
	// claim of an equation hangs on a number's being 0.
	Degree float64
}

// placing is the bits of an enclosure by which meetings at other positions are
// chosen where that is all the same, and trying the work that one decision
// about another figure may cost.
const (
	placing = 256
	trying  = 40_000_000
)

// Exactly is a field for a trial of exact numbers.
func Exactly() *exact.Field { return exact.NewField() }

// Enclosed is one in which values that differ by less than 2^-256 of their size pass for equal.
func Enclosed() *exact.Field {
	f := exact.NewField()
	f.Trust(placing)
	return f
}

// DoTrusting is Do of a claim that has been proved in another way: what an enclosure cannot tell
// from 0 passes for 0.
func DoTrusting(st *program.State, step *program.Step) error {
	st.Field.Trust(placing)
	defer st.Field.Trust(0)
	return Do(st, step)
}

// Roughly is one of floats.
func Roughly() *exact.Field { return exact.NewRoughField() }

// Try does the steps that make things and the file's claims, on other inputs, with
// numbers of such a field; the error is why there is no such figure.
func Try(p *program.Program, inputs []*big.Rat, numbers func() *exact.Field) (*Trial, error) {
	f := numbers()
	f.Limit(trying)
	st := program.NewState(p, inputs, f)
	for _, step := range p.Steps {
		if step.Proof {
			continue
		}
		if err := Do(st, step); err != nil {
			return nil, err
		}
	}
	return judged(st), nil
}

// judged is a run with what fails of its claims.
func judged(st *program.State) *Trial {
	t := &Trial{State: st, Failed: map[*program.Step]error{}}
	for _, c := range st.Program.Claims {
		if err := Do(st, c.Step); err != nil {
			t.Failed[c.Step] = err
		}
	}
	t.Degree = st.Field.Vanished()
	return t
}
