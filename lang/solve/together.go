package solve

// mostTogether is how many values are tried of the earlier of two choices.
const mostTogether = 9

// reviewPairs makes choices anew two at a time, for steps whose curves still cross flatly:
// an arc that only just reaches a straight is mended by its centre and its opening, and by
// neither of them alone.
func (s *search) reviewPairs(from, to int) {
	for i := from; i < to; i++ {
		if len(s.deps[i]) == 0 || !s.flat(i) {
			continue
		}
		causes := s.causes(i)
		for k := 1; k < len(causes) && s.budget >= 0 && s.flat(i); k++ {
			if s.p.Inputs[causes[k]].Span.File == s.p.Source { // those of calls move little that shows
				s.together(causes[k], causes[0])
			}
		}
	}
}

// flat tells whether curves cross in step i under less than 30°.
func (s *search) flat(i int) bool {
	for _, sine := range s.sines[i] {
		if sine < 0.5 {
			return true
		}
	}
	return false
}

// together makes two choices anew at once, if that is worth while; else it changes nothing.
func (s *search) together(first, second int) {
	steps := s.effects(first, len(s.p.Steps))
	old, oldSecond := s.st.Inputs[first], s.st.Inputs[second]
	v, w := old, oldSecond
	var best still
	best.take(s, steps)
	least := s.faults(steps) - worthwhile
	l := s.ladder(first)
	for n, x := range s.values(first) {
		if n == mostTogether || s.budget < 0 {
			break
		}
		s.st.Inputs[first], s.st.Inputs[second] = x, oldSecond
		if at := s.redo(steps); at >= 0 && at < s.p.Inputs[second].Step {
			continue
		}
		if !s.choose(second, s.effects(second, len(s.p.Steps))) || s.redo(steps) >= 0 {
			continue
		}
		if cost := s.faults(steps) + l.far(x); cost < least {
			least, v, w = cost, x, s.st.Inputs[second]
			best.take(s, steps)
		}
	}
	best.back(s)
	s.st.Inputs[first], s.st.Inputs[second] = v, w
}

// faults is how bad what some steps have made is, with what coincides whatever is chosen:
// that counts alike for all choices.
func (s *search) faults(steps []int) float64 {
	j := s.newJudge()
	j.look(steps...)
	j.weigh()
	return j.badness()
}
