package solve

import (
	"math/big"
	"slices"

	"trammel/lang/program"
)

// Trouble is a step that no choice could mend.
type Trouble struct {
	Step  int        // index into Program.Steps
	Input int        // the input that stands closest to it
	Tried []*big.Rat // ascending
	Fails []Fail     // in the order of the source: what stood in the way
}

// Fail is a step that failed for some of the values tried, all other inputs as
// they are. Fits tells that it goes well for others: from Lo to Hi, to three
// digits and rounded inwards; nil where no bound was found.
type Fail struct {
	Step   int
	Value  *big.Rat // the one nearest to the plain one for which it failed
	Err    error    // how
	Fits   bool
	Lo, Hi *big.Rat
	// Inputs are such with which nothing says which of several places the step means,
	// where with all values tried there is none; nil: none were come upon.
	Inputs []*big.Rat
	// Past tells for which values a step would go well that goes well for none, if the
	// source did not bound the opening; nil where it would for none, or there is no bound.
	Past      *Fail
	Unbounded bool // this is such a one
}

// lament notes what keeps step i from going well, whatever the input: every
// step by itself, wherever those before it let it be done.
func (s *search) lament(in, i int) {
	c := s.choice(in, s.effects(in, i))
	t := Trouble{Step: i, Input: in, Tried: c.sweep()}
	went, errs := c.attemptAll(t.Tried)
	for n, step := range c.steps {
		f := Fail{Step: step}
		for k, v := range t.Tried {
			if went[k][n] == failed && (f.Value == nil || c.tellsMore(v, errs[k][n], &f)) {
				f.Value, f.Err = v, errs[k][n]
			}
		}
		if f.Value != nil {
			c.bounds(&f, t.Tried, n, func(k int) bool { return went[k][n] == well })
			if !f.Fits && !manyPlaces(f.Err) {
				f.Inputs = s.doubts[step]
			}
			t.Fails = append(t.Fails, f)
		}
	}
	if s.p.Inputs[in].Bounds != "" {
		c.lookPast(&t)
	}
	c.set(c.old)
	s.troubles = append(s.troubles, t)
}

// attemptAll is what becomes of each step for each value, and how it fails.
func (c *choice) attemptAll(tried []*big.Rat) (went [][]outcome, errs [][]error) {
	for _, v := range tried {
		w, e := c.attempt(v)
		went, errs = append(went, w), append(errs, e)
	}
	return went, errs
}

// lookPast looks past the bounds of an opening for values with which steps would go
// well that do so for none within them.
func (c *choice) lookPast(t *Trouble) {
	c.s.st.Unbounded = true
	defer func() { c.s.st.Unbounded = false }()
	went, _ := c.attemptAll(t.Tried)
	for i := range t.Fails {
		f := &t.Fails[i]
		n := slices.Index(c.steps, f.Step)
		past := Fail{Step: f.Step, Unbounded: true}
		if c.bounds(&past, t.Tried, n, func(k int) bool { return went[k][n] == well }); !f.Fits && past.Fits {
			f.Past = &past
		}
	}
}

// tellsMore tells whether a failure says more of a step than another one: that nothing
// says which place is meant, where others say that there is none; else with which value
// is nearer to the plain one.
func (c *choice) tellsMore(v *big.Rat, err error, than *Fail) bool {
	if a, b := manyPlaces(err), manyPlaces(than.Err); a != b {
		return a
	}
	return c.away(v) < c.away(than.Value)
}

func manyPlaces(err error) bool {
	fault, is := err.(*program.Fault)
	return is && fault.Unclear != ""
}

// away is how far a value is from the plain one.
func (c *choice) away(v *big.Rat) float64 {
	d, _ := new(big.Rat).Sub(v, c.l.plain).Float64()
	return max(d, -d)
}

// outcome is what became of a step.
type outcome uint8

const (
	well outcome = iota
	failed
	passed // over, for want of what it needs
)

// sweep is the values to try, ascending: of openings, more than for a choice.
func (c *choice) sweep() []*big.Rat {
	all := c.s.values(c.in)
	if c.s.p.Inputs[c.in].Kind == program.Opening {
		for x := c.l.at / mostWider; x < mostWider*c.l.at; x *= 1.12 {
			all = append(all, decimal(x, x/30))
		}
	}
	slices.SortFunc(all, (*big.Rat).Cmp)
	return slices.CompactFunc(all, func(a, b *big.Rat) bool { return a.Cmp(b) == 0 })
}

// attempt does all steps for a value, whether those before went well or not.
func (c *choice) attempt(v *big.Rat) (went []outcome, errs []error) {
	c.s.st.Inputs[c.in] = v
	for _, i := range c.steps {
		c.s.unmake(i)
	}
	for _, i := range c.steps {
		c.s.perform(i)
		err := c.s.errs[i]
		is := well
		switch {
		case err == program.Poisoned:
			is = passed
		case err != nil:
			is = failed
		}
		went, errs = append(went, is), append(errs, err)
	}
	return went, errs
}

// bounds finds between which values the nth step goes well.
func (c *choice) bounds(f *Fail, tried []*big.Rat, n int, fine func(k int) bool) {
	first, last := -1, -1
	for k := range tried {
		if fine(k) {
			if first < 0 {
				first = k
			}
			last = k
		}
	}
	if first < 0 {
		return
	}
	f.Fits = true
	if first > 0 {
		f.Lo = c.bound(tried[first-1], tried[first], n)
	}
	if last < len(tried)-1 {
		f.Hi = c.bound(tried[last+1], tried[last], n)
	}
}

// bound is the last value from a fine one towards one that is not, for which
// the nth step goes well.
func (c *choice) bound(bad, fine *big.Rat, n int) *big.Rat {
	x, _ := bad.Float64()
	y, _ := fine.Float64()
	for range 24 {
		mid := (x + y) / 2
		if went, _ := c.attempt(new(big.Rat).SetFloat64(mid)); went[n] == well {
			y = mid
		} else {
			x = mid
		}
	}
	return inwards(y, y > x)
}

// inwards is x to three digits, rounded up or down; as it is where it is such a
// number but for the rounding of floats.
func inwards(x float64, up bool) *big.Rat {
	grain := x / 500
	near := decimal(x, grain)
	if f, _ := near.Float64(); same(f, x) {
		return near
	}
	if up {
		return decimal(x+grain/2, grain)
	}
	return decimal(x-grain/2, grain)
}
