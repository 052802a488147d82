package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// horizon is how many steps that depend on an input are looked at to judge it.
const horizon = 24

// A search performs at most so many steps; then it takes what it has.
const (
	leastBudget   = 20_000
	budgetPerStep = 150
)

// search is the state of one choice: a rough run that is redone in part.
type search struct {
	p        *program.Program
	st       *program.State
	trace    program.Trace
	scale    *big.Rat // what 1 is to openings, so that they suit the givens
	errs     []error  // by step, of its last performance
	sines    [][]float64
	writes   [][]int // slots by step
	deps     [][]int // inputs by step, ascending: what the step hangs on
	slotDeps [][]int // inputs by slot
	of       [][]int // steps by input, ascending
	troubles []Trouble
	budget   int // steps that may still be performed
}

func newSearch(p *program.Program) *search {
	inputs := make([]*big.Rat, len(p.Inputs))
	for i, in := range p.Inputs {
		inputs[i] = in.Default
	}
	n := len(p.Steps)
	s := &search{
		p: p, scale: big.NewRat(1, 1),
		st:   program.NewState(p, inputs, exact.NewRoughField()),
		errs: make([]error, n), sines: make([][]float64, n), writes: make([][]int, n), deps: make([][]int, n),
		slotDeps: make([][]int, len(p.Slots)), of: make([][]int, len(p.Inputs)),
		budget: leastBudget + budgetPerStep*n,
	}
	s.st.Trace = &s.trace
	return s
}

// perform does one step and notes what it hangs on.
func (s *search) perform(i int) {
	s.trace = program.Trace{Reads: s.trace.Reads[:0], Writes: s.trace.Writes[:0], Inputs: s.trace.Inputs[:0]}
	s.budget--
	s.st.Crossings = s.st.Crossings[:0]
	s.errs[i] = eval.Do(s.st, s.p.Steps[i])
	s.sines[i] = s.sines[i][:0]
	for _, c := range s.st.Crossings {
		s.sines[i] = append(s.sines[i], c.Sine)
	}
	s.writes[i] = append(s.writes[i][:0], s.trace.Writes...)
	deps := slices.Clone(s.deps[i])
	deps = append(deps, s.trace.Inputs...)
	for _, slot := range s.trace.Reads {
		deps = append(deps, s.slotDeps[slot]...)
	}
	slices.Sort(deps)
	deps = slices.Compact(deps)
	s.deps[i] = deps
	for _, slot := range s.writes[i] {
		s.slotDeps[slot] = deps
	}
	for _, in := range deps {
		s.hangs(in, i)
	}
}

// hangs notes that step i depends on an input.
func (s *search) hangs(in, i int) {
	list := s.of[in]
	if at, known := slices.BinarySearch(list, i); !known {
		s.of[in] = slices.Insert(list, at, i)
	}
}

// effects are the steps before and including `to` that depend on an input.
func (s *search) effects(in, to int) []int {
	list := s.of[in]
	at, _ := slices.BinarySearch(list, to+1)
	return slices.Clone(list[:at])
}

// redo performs steps again; it gives the first that fails, or -1. What the
// steps after it had made is made no more.
func (s *search) redo(steps []int) int {
	for k, i := range steps {
		for _, slot := range s.writes[i] {
			s.st.Values[slot] = nil
		}
		s.perform(i)
		if s.errs[i] != nil && s.errs[i] != program.Poisoned {
			for _, later := range steps[k+1:] {
				for _, slot := range s.writes[later] {
					s.st.Values[slot] = nil
				}
			}
			return i
		}
	}
	return -1
}

// causes are the inputs that a step hangs on, the latest first.
func (s *search) causes(i int) []int {
	out := slices.Clone(s.deps[i])
	slices.Reverse(out)
	return out
}

// adopt fits the inputs that step i uses first to the figure so far.
func (s *search) adopt(i int) {
	fitted := false
	for n, in := range s.p.Inputs {
		if in.Step != i || in.Kind != program.Opening {
			continue
		}
		if !fitted {
			s.scale, fitted = s.sizeSoFar(), true
		}
		s.st.Inputs[n] = new(big.Rat).Mul(in.Default, s.scale)
	}
}

// sizeSoFar is a power of two that fits openings to the figure: 1 for one some
// 8 units across.
func (s *search) sizeSoFar() *big.Rat {
	size := spread(s.places(nil)) / 8
	power := int64(1)
	switch {
	case !(size > 0) || math.IsInf(size, 0):
		return big.NewRat(1, 1)
	case size >= 2.5:
		power = 1 << min(int(math.Ceil(math.Log2(size/2.5))), 40)
		return big.NewRat(power, 1)
	case size <= 0.4:
		power = 1 << min(int(math.Ceil(math.Log2(0.4/size))), 40)
	}
	return big.NewRat(1, power)
}
