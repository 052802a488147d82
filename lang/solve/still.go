package solve

import (
	"math/big"
	"slices"

	"trammel/lang/program"
)

// still is what some steps have made for one value of a choice, so that the
// figure can come back to it without their being done again.
type still struct {
	made []made
}

// made is what came of one step.
type made struct {
	step   int
	err    error
	slots  []int
	values []any
	things []thing
	marks  []int
	sines  []float64
	of     record
}

// take keeps what steps have made.
func (f *still) take(s *search, steps []int) {
	f.made = f.made[:0]
	for _, i := range steps {
		f.add(s, i)
	}
}

// add keeps what step i has made, too.
func (f *still) add(s *search, i int) {
	n := len(f.made)
	if n < cap(f.made) {
		f.made = f.made[:n+1] // with the room that it had
	} else {
		f.made = append(f.made, made{})
	}
	f.made[n].take(s, i)
}

// take keeps what step i has made.
func (m *made) take(s *search, i int) {
	m.step, m.err, m.slots, m.sines = i, s.errs[i], append(m.slots[:0], s.writes[i]...), append(m.sines[:0], s.sines[i]...)
	m.values, m.things, m.marks = m.values[:0], m.things[:0], m.marks[:0]
	for _, slot := range m.slots {
		m.values, m.things, m.marks = append(m.values, s.st.Values[slot]), append(m.things, s.sight.slots[slot]), append(m.marks, s.marks[slot])
	}
	m.of.copy(&s.known[i], &s.pool)
}

// back makes it stand again.
func (f *still) back(s *search) {
	for k := range f.made {
		m := &f.made[k]
		i := m.step
		s.unmake(i)
		s.errs[i], s.writes[i], s.sines[i] = m.err, append(s.writes[i][:0], m.slots...), append(s.sines[i][:0], m.sines...)
		for n, slot := range m.slots {
			s.st.Values[slot], s.marks[slot] = m.values[n], m.marks[n]
			s.sight.put(slot, &m.things[n])
		}
		s.known[i].copy(&m.of, &s.pool)
	}
}

// moved tells whether a thing that is seen stands elsewhere now, or a crossing differs.
func (m *made) moved(s *search) bool { return m.turned(s) || len(m.shifted(m.slots, s)) > 0 }

// turned tells whether the step's crossings are under other angles now.
func (m *made) turned(s *search) bool { return !slices.EqualFunc(m.sines, s.sines[m.step], same) }

// shifted are those of some slots of the step that hold what stands elsewhere now.
func (m *made) shifted(slots []int, s *search) (out []int) {
	for n, slot := range m.slots {
		if slices.Contains(slots, slot) && !m.things[n].same(&s.sight.slots[slot]) {
			out = append(out, slot)
		}
	}
	return out
}

// wheels are circles whose radius went from one value of the choice to another, and
// whose centre stayed.
func (f *still) wheels(s *search, from, to *big.Rat) (out []int) {
	was, _ := from.Float64()
	is, _ := to.Float64()
	for k := range f.made {
		m := &f.made[k]
		for n, slot := range m.slots {
			t, o := &m.things[n], &s.sight.slots[slot]
			if t.kind == circle && o.kind == circle && same(t.r, was) && same(o.r, is) && same(t.x, o.x) && same(t.y, o.y) {
				out = append(out, slot)
			}
		}
	}
	return out
}

// went tells that a step has been done, as far as that is its own doing.
func (s *search) went(step int) bool { return s.errs[step] == nil || s.errs[step] == program.Poisoned }
