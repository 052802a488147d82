package solve

import (
	"math/big"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
)

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
	plain    []*big.Rat // by input: what a plain hand would take, in this figure
	errs     []error    // by step, of its last performance
	sines    [][]float64
	known    []record // by step
	writes   [][]int  // slots by step
	deps     [][]int  // inputs by step, ascending: what the step hangs on
	slotDeps [][]int  // inputs by slot
	of       [][]int  // steps by input, ascending
	grown    int      // counts the changes of slotDeps,
	grownAt  []int    // and is this at the last one of a slot's
	pool     pool
	sight    *sight
	page     page
	fixed    box       // what those points and whole circles take up that hang on no choice,
	fixtures int       // and how many points these are
	near     float64   // how near points may be and not crowd each other, however large the figure
	hand     float64   // how far a figure reaches on the empty sheet
	scale    []float64 // by input, of coordinates: what a unit of a plain value became
	next     int       // the first input that no step has asked for
	open     []int     // the latest inputs, not yet bettered
	shows    []int     // by input: the steps before that one were there when it was bettered
	mended   int       // the input that the last step was mended by alone, or -1
	troubles []Trouble
	doubts   map[int][]*big.Rat // by step: inputs with which nothing says which place is meant
	judge    *judge             // of choices
	before   still              // what a choice comes back to,
	best     still              // and what it has made for its best value
	aside    still              // what stands for another value
	was      made               // what a step had made before it was done again
	marks    []int              // by slot: which value it holds, by their count; 0: none
	marked   int                // so many have been counted
	read     []bool             // by slot: whether what a choice does reads it
	making   int                // steps that make something
	settled  int                // the steps whose choices were reviewed
	spare    spare              // for that
	urgent   bool               // what is poor cannot stay, whatever must move
	budget   int                // steps that may still be performed
	work     int                // and how many have been
}

func newSearch(p *program.Program, smaller float64) *search {
	n := len(p.Steps) + 1 // an input of an act that came to nothing has a step after the last
	s := &search{
		p: p, plain: make([]*big.Rat, len(p.Inputs)),
		errs: make([]error, n), sines: make([][]float64, n), known: make([]record, n),
		writes: make([][]int, n), deps: make([][]int, n),
		slotDeps: make([][]int, len(p.Slots)), grownAt: make([]int, len(p.Slots)), of: make([][]int, len(p.Inputs)),
		sight: newSight(p), page: pageOf(p), fixed: emptyBox(), near: nearHand * p.Hand(), hand: p.Hand() * smaller,
		scale: make([]float64, len(p.Inputs)), shows: make([]int, len(p.Inputs)), marks: make([]int, len(p.Slots)), mended: -1,
		doubts: map[int][]*big.Rat{},
	}
	s.judge, s.read = s.newJudge(), make([]bool, len(p.Slots))
	for _, step := range p.Steps {
		if !step.Proof {
			s.making++
		}
	}
	s.budget = leastBudget + budgetPerStep*s.making
	for i, in := range p.Inputs {
		s.plain[i] = in.Default
	}
	s.st = program.NewState(p, slices.Clone(s.plain), exact.NewRoughField())
	s.st.Trace = &s.trace
	return s
}

// perform does one step and notes what it hangs on.
func (s *search) perform(i int) {
	s.trace = program.Trace{Reads: s.trace.Reads[:0], Writes: s.trace.Writes[:0], Inputs: s.trace.Inputs[:0]}
	s.budget--
	s.work++
	s.st.Crossings, s.st.Touches, s.st.Bounds = s.st.Crossings[:0], s.st.Touches[:0], s.st.Bounds[:0]
	s.errs[i] = eval.Do(s.st, s.p.Steps[i])
	if manyPlaces(s.errs[i]) && s.doubts[i] == nil {
		s.doubts[i] = slices.Clone(s.st.Inputs)
	}
	s.sines[i] = s.sines[i][:0]
	for _, c := range s.st.Crossings {
		s.sines[i] = append(s.sines[i], c.Sine)
	}
	s.writes[i] = s.pool.copy(s.writes[i], s.trace.Writes)
	s.note(i)
	for _, slot := range s.writes[i] {
		s.marked++
		s.marks[slot] = s.marked
		s.sight.look(slot, s.st.Values[slot])
	}
	s.seal(i)
}

// fix notes what step i has made, if that hangs on no choice.
func (s *search) fix(i int) {
	if len(s.deps[i]) > 0 {
		return
	}
	for _, slot := range s.writes[i] {
		switch t := &s.sight.slots[slot]; {
		case t.kind == point:
			s.fixed.add(t.x, t.y)
			s.fixtures++
		case t.kind == circle && t.whole:
			s.fixed.addCircle(t)
		}
	}
}

// note finds what a step hangs on, from what it has just read.
func (s *search) note(i int) {
	k := &s.known[i]
	grew := func(slot int) bool { return s.grownAt[slot] > k.grown }
	if slices.Equal(k.reads, s.trace.Reads) && slices.Equal(k.writes, s.trace.Writes) && slices.Equal(k.inputs, s.trace.Inputs) && !slices.ContainsFunc(k.reads, grew) {
		return
	}
	k.reads, k.writes, k.inputs = s.pool.copy(k.reads, s.trace.Reads), s.pool.copy(k.writes, s.trace.Writes), s.pool.copy(k.inputs, s.trace.Inputs)
	deps := s.deps[i]
	for _, in := range k.inputs {
		deps = union(deps, []int{in})
	}
	for _, slot := range k.reads {
		deps = union(deps, s.slotDeps[slot])
	}
	s.deps[i] = deps
	for _, slot := range s.writes[i] {
		if !slices.Equal(s.slotDeps[slot], deps) {
			s.grown++
			s.slotDeps[slot], s.grownAt[slot] = deps, s.grown
		}
	}
	for _, in := range deps {
		s.hangs(in, i)
	}
	k.grown = s.grown
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

// causes are the inputs to be chosen that a step hangs on, the latest first.
func (s *search) causes(i int) []int {
	out := slices.Clone(s.deps[i])
	slices.Reverse(out)
	return slices.DeleteFunc(out, func(in int) bool { return s.p.Inputs[in].Kind == program.Nearby })
}
