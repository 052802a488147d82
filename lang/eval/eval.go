// Package eval runs a Program: one loop over its steps on chosen inputs gives
// the Figure, or every reason why there is none.
package eval

import (
	"errors"
	"fmt"
	"math/big"

	"trammel/geom/exact"
	"trammel/lang/program"
	"trammel/lang/source"
)

// Failure is a step that could not be done.
type Failure struct {
	Index int // into Program.Steps
	Step  *program.Step
	Err   error
}

// Run does every step and gives the final state with all failures. What
// depends on a failed step is passed over and not blamed.
func Run(p *program.Program, inputs []*big.Rat) (*program.State, []Failure) {
	st := program.NewState(p, inputs, exact.NewField())
	var failures []Failure
	free := make([]bool, len(p.Slots))
	for i, step := range p.Steps {
		st.Trace = &program.Trace{}
		err := Do(st, step)
		st.Free[step] = hangs(st.Trace, free)
		if err == nil {
			continue
		}
		if err == program.Poisoned && len(st.Undone) == 0 {
			err = unmade // or else nothing would tell why there is no figure
		}
		st.Undone = append(st.Undone, program.Undone{Step: step, Err: err})
		if err != program.Poisoned {
			failures = append(failures, Failure{i, step, err})
		}
	}
	return st, failures
}

// unmade is for a step that reads what no step before it has made or failed to make.
var unmade = &program.Fault{Text: "this speaks of something that is not made yet", Help: "make it in a line above", Cascade: true}

// hangs tells whether a step has used an input, by itself or through what it
// read, and hands that on to what it made.
func hangs(t *program.Trace, free []bool) bool {
	depends := len(t.Inputs) > 0
	for _, slot := range t.Reads {
		depends = depends || free[slot]
	}
	for _, slot := range t.Writes {
		free[slot] = depends
	}
	return depends
}

// Do runs one step.
func Do(st *program.State, step *program.Step) error {
	st.Step = step
	if step.Proof {
		st.Field.Claim()
	}
	return Guard(func() error { return step.Do(st) })
}

// Guard runs f; what the kernel refuses to decide, and a value that is not
// there, become its error.
func Guard(f func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			if r != any(program.Poisoned) {
				panic(r)
			}
			err = program.Poisoned
		}
	}()
	var failed error
	if err := exact.Try(func() { failed = f() }); err != nil {
		return err
	}
	return failed
}

// Report adds a failure to the problems. The user's own line is blamed; where
// the failing act stands in a construction, notes lead there.
func (f Failure) Report(problems *source.List) {
	at := f.Step.Span
	var fault *program.Fault
	text, help := f.Err.Error(), ""
	var notes []source.Note
	if errors.As(f.Err, &fault) {
		help = fault.Help
		if fault.Span != nil {
			at = *fault.Span
		}
		if fault.Cascade && problems.Failed() {
			return
		}
	} else {
		text, help = undecided(f.Err)
	}
	if calls := f.Step.Via; len(calls) > 0 {
		notes = append(notes, source.Note{Span: at, Text: fmt.Sprintf("in %s: %s", calls[len(calls)-1].Name, text)})
		for i := len(calls) - 1; i > 0; i-- {
			notes = append(notes, source.Note{Span: calls[i].Span, Text: "in this call of " + calls[i].Name})
		}
		at = calls[0].Span
		text = fmt.Sprintf("%s fails here: %s", calls[0].Name, text)
	}
	p := problems.Add(at, text)
	p.Help = help
	p.Notes = notes
	if fault != nil {
		p.Notes = append(p.Notes, fault.Notes...)
	}
}

// undecided is what the kernel's refusals mean for the user.
func undecided(err error) (text, help string) {
	var u *exact.Undecided
	if errors.As(err, &u) {
		return err.Error(), "simplify the figure, or claim less of its deepest points"
	}
	var a *exact.Unheld
	if errors.As(err, &a) {
		return err.Error(), fmt.Sprintf("write %s or %s", a.Tenths, a.Minutes)
	}
	return err.Error(), ""
}
