package lang

import (
	"errors"
	"math/big"
	"math/rand/v2"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// onAllSides tells of each claim of equations whether by the formulas of the figure they
// hold in every figure of the source, as far as so many lines of formulas tell: see
// exact.HoldEverywhere.
func (r *Result) onAllSides(lines int) []bool {
	if r.sides == nil {
		r.sides = make([]bool, len(r.program.Claims))
	}
	if r.sidesWithin < lines {
		r.sidesWithin = lines
		r.askSides(lines)
	}
	return r.sides
}

// How many lines of formulas are worked out for all claims together: while a figure is
// compiled, and where it is asked how far claims hold.
const (
	fewLines  = 1_000_000
	mostLines = 8_000_000
)

// askSides asks the formulas about the claims of which they have not told yet.
func (r *Result) askSides(lines int) {
	run := r.formulas()
	if run == nil {
		return
	}
	questions := make([]exact.Question, len(r.program.Claims))
	for i, c := range r.program.Claims {
		if !c.Inequality && !r.sides[i] && r.hangs(c.Step) && !(r.other != nil && r.other.isRefuted(i)) {
			questions[i] = run.question(c.Step)
		}
	}
	for i, told := range exact.HoldEverywhere(questions, &lines) {
		r.sides[i] = r.sides[i] || told
	}
}

// formulaRun is a figure of the source on formulas, and what each step was decided by.
type formulaRun struct {
	notes map[*program.Step]*exact.Notes
	needs map[*program.Step][]*program.Step
	makes []*program.Step // by slot
	steps []*program.Step
}

// formulas resolves a figure near this one, in which no number is special, with its claims and other proofs.
func (r *Result) formulas(proofs ...*program.Step) *formulaRun {
	random := rand.New(rand.NewPCG(elsewhereSeed, stream))
	delta := big.NewRat(1, 1024)
	for range attempts {
		if run := runFormulas(r.program, r.moved(random, delta, formulaBits), proofs...); run != nil {
			return run
		}
		delta.Mul(delta, big.NewRat(3, 4))
	}
	return nil
}

const formulaBits = 24

func runFormulas(p *program.Program, inputs []*big.Rat, proofs ...*program.Step) *formulaRun {
	st := program.NewState(p, inputs, exact.NewFormulaField())
	run := &formulaRun{
		notes: map[*program.Step]*exact.Notes{},
		needs: map[*program.Step][]*program.Step{},
		makes: make([]*program.Step, len(p.Slots)),
	}
	for _, step := range p.Steps {
		if !step.Proof && !run.do(st, step) {
			return nil
		}
	}
	for _, c := range p.Claims {
		run.do(st, c.Step)
	}
	for _, step := range proofs {
		run.do(st, step)
	}
	return run
}

// do does a step and notes what it needs.
func (run *formulaRun) do(st *program.State, step *program.Step) bool {
	st.Trace = &program.Trace{}
	if eval.Do(st, step) != nil {
		st.Field.Take()
		return false
	}
	for _, slot := range st.Trace.Reads {
		if by := run.makes[slot]; by != nil {
			run.needs[step] = append(run.needs[step], by)
		}
	}
	for _, slot := range st.Trace.Writes {
		run.makes[slot] = step
	}
	run.notes[step] = st.Field.Take()
	run.steps = append(run.steps, step)
	return true
}

// question is what is asked of a claim's equations.
func (run *formulaRun) question(claim *program.Step) exact.Question {
	needed := map[*program.Step]bool{}
	run.need(claim, needed)
	figure := &exact.Notes{}
	for _, step := range run.steps {
		if needed[step] && step != claim {
			figure.Add(run.notes[step])
		}
	}
	return exact.Question{Figure: figure, Claim: run.notes[claim]}
}

func (run *formulaRun) need(step *program.Step, needed map[*program.Step]bool) {
	if needed[step] {
		return
	}
	needed[step] = true
	for _, s := range run.needs[step] {
		run.need(s, needed)
	}
}

// proveLong does the claims again that were too long to decide, in the file and in constructions, and of which
// the formulas tell that they hold whatever the angles and measures are. Others remain undone.
func (o *outcome) proveLong(p *program.Program) {
	var long []*program.Step
	for _, f := range o.failures {
		var spent *exact.Undecided
		if f.Step.Proof && errors.As(f.Err, &spent) {
			long = append(long, f.Step)
		}
	}
	if len(long) == 0 {
		return
	}
	run := (&Result{program: p, inputs: o.Inputs}).formulas(long...)
	if run == nil {
		return
	}
	questions := make([]exact.Question, len(long))
	for i, step := range long {
		questions[i] = run.question(step)
	}
	left := mostLines
	for i, told := range exact.HoldEverywhere(questions, &left) {
		if told && eval.DoTrusting(o.state, long[i]) == nil {
			o.failures = slices.DeleteFunc(o.failures, func(f eval.Failure) bool { return f.Step == long[i] })
			o.state.Undone = slices.DeleteFunc(o.state.Undone, func(u program.Undone) bool { return u.Step == long[i] })
		}
	}
}
