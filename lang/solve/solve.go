// Package solve chooses what a source leaves to chance, as a practised hand
// would: every later meeting exists, curves cross steeply, and nothing comes
// out nearly alike. There is no clock and no randomness, so the same source
// always gives the same figure.
//
// The steps are gone through once, in order, on rough numbers. Each input
// begins with the plain value that suits the figure so far, and moves from it
// to a better one that is near as soon as the steps are done that hang on it alone.
// So choices keep in proportion to the figure, and follow it when the source
// changes a little. A step that fails is mended by the inputs that it depends
// on, the latest first. Changing an input repeats only the steps that depend on
// it, and of these only those that make something else then, until it is plain
// that another value is better.
package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/lang/program"
)

// Choice is what solve made of a Program's inputs.
type Choice struct {
	Inputs   []*big.Rat // the chosen values, one for each input
	Troubles []Trouble
	Work     int // how many steps have been done for it, those done again counted again
	Hand     int // which of the Hands it is by
}

// Hands are how large hands draw, as parts of a plain one, largest first.
var Hands = [...]float64{1, 0.9, 0.75, 0.55, 0.4}

// Inputs chooses. It always gives a value for every input; where nothing fits,
// running the Program on them fails at the steps of the Troubles.
func Inputs(p *program.Program) Choice { return InputsBy(p, 0) }

// InputsBy is Inputs by one of the Hands, or by a smaller one where the figure is larger
// than its page.
func InputsBy(p *program.Program, hand int) Choice {
	if len(p.Inputs) == 0 {
		return Choice{}
	}
	s, _ := run(p, Hands[hand], math.Inf(1))
	work := s.work
	for hand < len(Hands)-1 && len(s.troubles) == 0 && s.crowdsPage() {
		t, better := run(p, Hands[hand+1], s.over())
		if work += t.work; !better {
			break
		}
		s, hand = t, hand+1
	}
	s.reviewPage()
	return Choice{s.st.Inputs, s.troubles, work, hand}
}

// run chooses for a hand that draws so much smaller than a plain one. It is better if
// nothing fails and the figure exceeds the page by less than over; where it does not
// while it grows, the rest is left.
func run(p *program.Program, smaller, over float64) (s *search, better bool) {
	s = newSearch(p, smaller)
	end := End(p)
	for i := range p.Steps {
		if i >= end && begins(p, i) && s.shown() {
			s.settle(i)
		}
		if p.Steps[i].Proof {
			continue
		}
		if s.asks(i) {
			if s.better(i); s.over() >= over {
				return s, false
			}
		}
		s.forward(i)
	}
	s.settle(len(p.Steps))
	return s, len(s.troubles) == 0 && s.over() < over
}

// size is how far the figure's points and whole circles reach.
func (s *search) size() float64 {
	b, _ := s.sight.boxOf(nil)
	return b.size()
}

// over is by which part of itself the figure exceeds the page.
func (s *search) over() float64 {
	b, _ := s.sight.boxOf(nil)
	return s.page.over(b)
}

// crowdsPage tells whether the figure is larger than the page, though its fixed
// points are not.
func (s *search) crowdsPage() bool { return s.over() > 0 && s.fitsPage() }

// fitsPage tells whether what hangs on no choice is on the page; where it is not, no
// choice keeps the figure there.
func (s *search) fitsPage() bool { return s.fixtures == 0 || s.page.over(s.fixed) <= 0 }

// forward does step i, and mends it if it fails.
func (s *search) forward(i int) {
	group := s.asked(i)
	if len(group) > 0 {
		s.open = group
		s.adopt(group)
	}
	s.perform(i)
	if len(group) > 0 && s.refit(i, group) {
		s.unmake(i)
		s.perform(i)
	}
	s.mended = -1
	if !s.went(i) {
		s.mended = s.mend(i)
	}
	s.fix(i)
}

// asks tells whether step i is the first to use an input.
func (s *search) asks(i int) bool {
	return slices.ContainsFunc(s.p.Inputs[s.next:], func(in *program.Input) bool { return in.Step <= i && in.Kind != program.Nearby })
}

// asked are the inputs that step i is the first to use.
func (s *search) asked(i int) (group []int) {
	for s.next < len(s.p.Inputs) && s.p.Inputs[s.next].Step <= i {
		if s.p.Inputs[s.next].Kind != program.Nearby {
			group = append(group, s.next)
		}
		s.next++
	}
	return group
}

// better moves the latest inputs to good values, as far as the steps before `to` show.
func (s *search) better(to int) {
	for _, in := range s.open {
		s.shows[in] = to
		v := s.st.Inputs[in]
		if s.spread(in); in == s.mended && s.st.Inputs[in] == v {
			continue // it has just been chosen, by the same steps
		}
		if steps := s.effects(in, len(s.p.Steps)); len(steps) > 0 && s.budget > 0 {
			s.choose(in, steps)
		}
	}
	s.open = nil
}

// What is poor in a figure, and by how much it must become better, for a choice
// to be made anew on its account.
const (
	poor       = 0.25
	worthwhile = 0.15
)

// review looks for steps that are still poor, since the choice that stood
// nearest to them could not better them, and goes back to earlier ones. What hangs
// on a choice that was made anew may then be chosen anew itself.
func (s *search) review(from, to int) {
	if !slices.ContainsFunc(s.deps[from:to], func(deps []int) bool { return len(deps) > 0 }) {
		return
	}
	views := make([]view, len(s.p.Inputs))
	j, size := s.newJudge(), s.size()
	suffers := func(step int) bool {
		j.look(step)
		bad := j.plight(size) >= poor
		late := s.settled > 0 && len(s.p.Steps[step].Via) == 0
		s.urgent = late && s.flat(step)
		return bad || late && j.misleads(size)
	}
	for i := from; i < to; i++ {
		if len(s.deps[i]) == 0 || !suffers(i) {
			continue
		}
		for _, in := range s.causes(i) {
			if views[in] == reviewed || views[in] == fresh && i < s.shows[in] || s.budget < 0 {
				continue
			}
			views[in] = reviewed
			if !s.reconsider(in, i) {
				continue
			}
			s.outdate(views, in)
			if size = s.size(); !suffers(i) {
				break
			}
		}
	}
}

// reviewPage makes choices anew, the latest first, while the figure is larger than the page.
func (s *search) reviewPage() {
	if len(s.troubles) > 0 {
		return
	}
	s.budget, s.settled = spareOf(s.making).reviews, 0
	for in := len(s.p.Inputs) - 1; in >= 0 && s.budget >= 0 && s.crowdsPage(); in-- {
		if given := s.p.Inputs[in]; given.Kind != program.Nearby && given.Span.File == s.p.Source {
			s.reconsider(in, given.Step)
		}
	}
}

// view is what a review knows of a choice.
type view uint8

const (
	fresh    view = iota // made when the steps next to it were done
	reviewed             // made with all that is so now
	outdated             // made when something that it hangs on was otherwise
)

// outdate marks the later choices that hang on one that was made anew.
func (s *search) outdate(views []view, in int) {
	for k := in + 1; k < len(views); k++ {
		if _, hangs := slices.BinarySearch(s.deps[s.p.Inputs[k].Step], in); hangs {
			views[k] = outdated
		}
	}
}

// reconsider chooses an input anew by the steps that it moves, if that is worth while: on
// account of a step that is poor, or of what is as poor and moves.
func (s *search) reconsider(in, step int) bool {
	c := s.choice(in, s.effects(in, len(s.p.Steps)))
	c.steps, c.other = s.stir(in)
	if s.p.Inputs[in].Step < s.settled {
		c.l = s.nearby(in)
	}
	before := c.try(c.old, math.Inf(1))
	enough := 2 * poor
	if slices.Contains(c.steps, step) {
		enough = worthwhile
	}
	if before > enough && c.climb() && c.bad < before-worthwhile && c.settle() {
		return true
	}
	c.set(c.old)
	return false
}
