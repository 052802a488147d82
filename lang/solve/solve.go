// Package solve chooses what a source leaves to chance, as a practised hand
// would: every later meeting exists, curves cross steeply, and nothing comes
// out nearly alike. Short numbers are tried first; there is no clock and no
// randomness, so the same source always gives the same figure.
//
// The steps are gone through once, in order, on rough numbers. A step that
// fails is mended by the inputs that it depends on, the latest first; then each
// input is bettered by itself. Changing an input repeats only the steps that
// depend on it.
package solve

import (
	"errors"
	"math/big"

	"trammel/lang/program"
)

// Choice is what solve made of a Program's inputs.
type Choice struct {
	Inputs   []*big.Rat // the chosen values, one for each input
	Troubles []Trouble
}

// Trouble is a step that no choice could mend.
type Trouble struct {
	Step  int // index into Program.Steps
	Input int // the input that stands closest to it
	Tried []*big.Rat
	Fails []Fail // in the order of the source: what stood in the way
}

// Fail is a step that failed for one of the values tried.
type Fail struct {
	Step  int
	Value *big.Rat
	Err   error
}

// Inputs chooses. It always gives a value for every input; where nothing fits,
// running the Program on them fails at the steps of the Troubles.
func Inputs(p *program.Program) Choice {
	if len(p.Inputs) == 0 {
		return Choice{}
	}
	s := newSearch(p)
	for i := range p.Steps {
		if !p.Steps[i].Proof {
			s.forward(i)
		}
	}
	for i, in := range p.Inputs {
		if in.Kind != program.Nearby {
			s.better(i)
		}
	}
	return Choice{s.st.Inputs, s.troubles}
}

// forward does step i, and mends it if it fails.
func (s *search) forward(i int) {
	s.adopt(i)
	s.perform(i)
	if s.errs[i] == nil || s.errs[i] == program.Poisoned {
		return
	}
	var inputs []int
	for _, in := range s.causes(i) {
		if s.p.Inputs[in].Kind != program.Nearby && s.matters(in, i) {
			inputs = append(inputs, in)
		}
	}
	for _, in := range inputs {
		if s.mend(in, i) {
			return
		}
	}
	for a := 0; a+1 < len(inputs) && a < maxPairs; a++ {
		if s.mendPair(inputs[a+1], inputs[a], i) {
			return
		}
	}
	for _, in := range inputs {
		if s.p.Inputs[in].Span.File == s.p.Source {
			s.lament(in, i)
			return
		}
	}
}

// matters tells whether an input changes how step i fails. A step that fails
// alike, to the last word, whatever is chosen is not to be mended by choosing.
func (s *search) matters(in, i int) bool {
	var fault *program.Fault
	if errors.As(s.errs[i], &fault) && fault.Range {
		return true // a bound of a choice
	}
	old := s.st.Inputs[in]
	steps := s.effects(in, i)
	defer func() {
		s.st.Inputs[in] = old
		s.redo(steps)
	}()
	said, reached := s.errs[i].Error(), 0
	for _, v := range s.values(in) {
		s.st.Inputs[in] = v
		at := s.redo(steps)
		if at < 0 {
			return true
		}
		if at != i {
			continue // another step fails first
		}
		if reached++; s.errs[i].Error() != said {
			return true
		}
		if reached == 6 || s.budget < 0 {
			return false
		}
	}
	return reached < 2
}

// maxPairs is how many neighbouring pairs of inputs are tried together.
const maxPairs = 3

// mend looks for the value of one input with which all steps up to i go well.
func (s *search) mend(in, i int) bool {
	steps := s.effects(in, i)
	old := s.st.Inputs[in]
	best, badness := (*big.Rat)(nil), 0.0
	for _, v := range s.values(in) {
		if s.budget < 0 {
			break
		}
		s.st.Inputs[in] = v
		if s.redo(steps) >= 0 {
			continue
		}
		if b := s.badness(steps); best == nil || b < badness {
			best, badness = v, b
		}
		if badness <= good {
			break
		}
	}
	if best == nil {
		s.st.Inputs[in] = old
		s.redo(steps)
		return false
	}
	s.st.Inputs[in] = best
	s.redo(steps)
	return true
}

// mendPair is mend for two inputs at once: some values of the first, all of
// the second.
func (s *search) mendPair(first, second, i int) bool {
	old := s.st.Inputs[first]
	steps := s.effects(first, i)
	for n, v := range s.values(first) {
		if n == 8 || s.budget < 0 {
			break
		}
		s.st.Inputs[first] = v
		if at := s.redo(steps); at >= 0 && at < s.p.Inputs[second].Step {
			continue
		}
		if s.mend(second, i) && s.redo(steps) < 0 {
			return true
		}
	}
	s.st.Inputs[first] = old
	s.redo(steps)
	return false
}

// lament notes what keeps step i from going well, whatever the input.
func (s *search) lament(in, i int) {
	t := Trouble{Step: i, Input: in, Tried: s.values(in)}
	old := s.st.Inputs[in]
	steps := s.effects(in, i)
	seen := map[int]bool{}
	for _, v := range t.Tried {
		s.st.Inputs[in] = v
		if at := s.redo(steps); at >= 0 && !seen[at] {
			seen[at] = true
			t.Fails = append(t.Fails, Fail{at, v, s.errs[at]})
		}
	}
	s.st.Inputs[in] = old
	s.redo(steps)
	s.troubles = append(s.troubles, t)
}

// worthwhile is by how much another value must better the figure to be taken:
// choices that are nearly level stay as they are when the source changes a little.
const worthwhile = 0.05

// better improves one input, as far as its nearer effects show.
func (s *search) better(in int) {
	steps := s.effects(in, len(s.p.Steps))
	if len(steps) > horizon {
		steps = steps[:horizon]
	}
	if len(steps) == 0 || s.budget < 0 || s.redo(steps) >= 0 {
		return
	}
	all := s.effects(in, len(s.p.Steps))
	best, badness := s.st.Inputs[in], s.badness(steps)+s.strangeness(in)
	if badness <= good {
		return
	}
	for _, v := range s.values(in) {
		if s.budget < 0 {
			break
		}
		if s.p.Inputs[in].Kind == program.Fraction && (v.Sign() < 0 || v.Cmp(rat(1, 1)) > 0) {
			continue // past the ends only where nothing else will do
		}
		s.st.Inputs[in] = v
		if s.redo(steps) >= 0 {
			continue
		}
		if b := s.badness(steps) + s.strangeness(in); b < badness-worthwhile && s.stillWhole(all, len(steps)) {
			best, badness = v, b
		}
		if badness <= good {
			break
		}
	}
	s.st.Inputs[in] = best
	s.redo(all)
}

// stillWhole tells whether the steps past the horizon go well too.
func (s *search) stillWhole(steps []int, from int) bool {
	return s.redo(steps[from:]) < 0
}
