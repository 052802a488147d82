package solve

import (
	"slices"

	"trammel/lang/program"
)

// The acts at the end of a source that only draw, straights through points that are
// there and library calls, come after the choices: these are made and reviewed
// without them, and then made anew for one of them only where it suffers. So a line that is added
// to a finished figure leaves it as it is.

// firstOfEnd is the first step of these acts.
func firstOfEnd(p *program.Program) int {
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

// shown tells whether each of the latest inputs is seen by more than a point already; else the
// acts to come are what it is for.
func (s *search) shown() bool {
	return !slices.ContainsFunc(s.open, func(in int) bool {
		return !slices.ContainsFunc(s.of[in], func(step int) bool {
			return slices.ContainsFunc(s.writes[step], func(slot int) bool {
				k := s.sight.slots[slot].kind
				return k == circle || k == straight
			})
		})
	})
}

// How many performances of each step a review of choices may take, and one of pairs.
const (
	reviewPerStep = 30
	pairsPerStep  = 60
)

// settle makes the choices good, as far as the steps before `to` show.
func (s *search) settle(to int) {
	s.better()
	done := s.making
	if s.settled == 0 {
		done = s.made(to)
	}
	rest := s.budget
	s.budget = min(rest, reviewPerStep*done)
	s.review(s.settled, to)
	s.budget = pairsPerStep * done
	s.reviewPairs(s.settled, to)
	s.budget, s.settled = rest, to
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
