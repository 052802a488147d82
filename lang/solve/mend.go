package solve

import (
	"errors"
	"math/big"

	"trammel/lang/program"
)

// mend looks for values with which all steps up to i go well. It gives the input that it
// has chosen anew, if that is one by itself; else -1.
func (s *search) mend(i int) int {
	var inputs []int
	for _, in := range s.causes(i) {
		if s.matters(in, i) {
			inputs = append(inputs, in)
		}
	}
	for _, in := range inputs {
		if s.choose(in, s.effects(in, i)) {
			return in
		}
	}
	for a := 0; a+1 < len(inputs) && a < maxPairs; a++ {
		if s.mendPair(inputs[a+1], inputs[a], i) {
			return -1
		}
	}
	for _, in := range inputs {
		if s.p.Inputs[in].Span.File == s.p.Source {
			s.lament(in, i)
			break
		}
	}
	return -1
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

// mendPair is mend for two inputs at once: some values of the first, all of
// the second.
func (s *search) mendPair(first, second, i int) bool {
	old := s.st.Inputs[first]
	steps := s.effects(first, i)
	for n, v := range s.values(first) {
		if n == 9 || s.budget < 0 {
			break
		}
		s.st.Inputs[first] = v
		if at := s.redo(steps); at >= 0 && at < s.p.Inputs[second].Step {
			continue
		}
		if s.choose(second, s.effects(second, i)) && s.redo(steps) < 0 {
			return true
		}
	}
	s.st.Inputs[first] = old
	s.redo(steps)
	return false
}

// values are what an input may be, the plain one first, in the order of trying.
func (s *search) values(in int) []*big.Rat {
	l := s.ladder(in)
	out := []*big.Rat{l.plain}
	for k := range max(len(l.rungs[0]), len(l.rungs[1])) {
		for way := range l.rungs {
			if v := l.rung(way, k); v != nil {
				out = append(out, v)
			}
		}
	}
	return append(out, l.last()...)
}
