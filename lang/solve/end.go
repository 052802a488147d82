package solve

import (
	"math/big"
	"slices"

	"trammel/lang/program"
)

// The acts at the end of a source that only draw, straights through points that are
// there and library calls, come after the choices: these are made and reviewed
// without them, and then made anew for one of them only where it suffers. So a line that is added
// to a finished figure leaves it as it is.

// End is the first step of these acts.
func End(p *program.Program) int {
	i := len(p.Steps)
	for i > 0 && (p.Steps[i-1].Proof || p.Steps[i-1].Adds > 0) {
		i--
	}
	return i
}

// begins tells whether a step is the first one of its act.
func begins(p *program.Program, i int) bool {
	return p.Steps[i].Adds > 0 && (i == 0 || p.Steps[i].Adds != p.Steps[i-1].Adds)
}

// shown tells whether each of the latest inputs is seen by more than points and arcs already;
// else the acts to come are what it is for. What calls leave to chance is for themselves, and
// some inputs are for other cases than this one: nothing hangs on them.
func (s *search) shown() bool {
	return !slices.ContainsFunc(s.open, func(in int) bool {
		return s.p.Inputs[in].Span.File == s.p.Source && len(s.of[in]) > 0 && !slices.ContainsFunc(s.of[in], func(step int) bool {
			return slices.ContainsFunc(s.writes[step], func(slot int) bool {
				t := &s.sight.slots[slot]
				return t.kind == straight || t.kind == circle && t.whole
			})
		})
	})
}

// spare is how many steps may still be performed for reviews of choices, and of pairs.
type spare struct{ reviews, pairs int }

// spareOf is that for so many steps.
func spareOf(making int) spare { return spare{30 * making, 60 * making} }

// settle makes the choices good, as far as the steps before `to` show: where two together
// mend a flat crossing, nothing that they stand on has to be moved for it. All acts that only
// add together have little to spare.
func (s *search) settle(to int) {
	s.better(to)
	if s.settled == 0 {
		s.spare = spareOf(s.made(to))
	}
	rest := s.budget
	s.budget = s.spare.pairs
	s.reviewPairs(s.settled, to)
	s.spare.pairs, s.budget = s.budget, min(rest, s.spare.reviews)
	s.review(s.settled, to)
	s.spare.reviews, s.budget = s.budget, rest
	if s.settled == 0 {
		s.spare = spare{100 + s.making/2, 200 + s.making}
	}
	s.settled = to
}

// stubborn is how many times as dear it is to move for acts at the end.
const stubborn = 3

// nearby is the ladder of an input about its value, for acts at the end: only half way to the
// next rungs, but where curves cross too flatly.
func (s *search) nearby(in int) *ladder {
	l := s.ladderAt(in, s.st.Inputs[in])
	l.dear *= stubborn
	if !s.urgent {
		for way, rungs := range l.rungs {
			half := l.between(l.plain, l.rung(way, 0))
			if l.rungs[way] = rungs[:0]; half != nil {
				l.rungs[way] = append(rungs[:0], half)
			}
		}
		l.last = func() []*big.Rat { return nil }
	}
	return l
}

// made is how many steps before `to` make something.
func (s *search) made(to int) (n int) {
	for _, step := range s.p.Steps[:to] {
		if !step.Proof {
			n++
		}
	}
	return n
}
