package solve

import (
	"math"
	"math/big"
)

// choose gives an input the good value that is nearest to the plain one, as far
// as the steps show that hang on it; where none is good, the least bad. So a
// value moves only as far as it must, and moves little when the source changes
// a little. It is false if every value fails, and then changes nothing.
func (s *search) choose(in int, steps []int) bool {
	c := s.choice(in, steps)
	best, ok := c.climb()
	if !ok {
		c.set(c.old)
		return false
	}
	c.set(best)
	return true
}

// choice is the search for one input's value.
type choice struct {
	s     *search
	in    int
	steps []int
	old   *big.Rat
	l     ladder
	j     *judge
}

func (s *search) choice(in int, steps []int) *choice {
	return &choice{s: s, in: in, steps: steps, old: s.st.Inputs[in], l: s.ladder(in)}
}

// set gives the input a value; it gives the first step that fails, or -1.
func (c *choice) set(v *big.Rat) int {
	c.s.st.Inputs[c.in] = v
	return c.s.redo(c.steps)
}

// try is how bad a value is; infinitely if it fails.
func (c *choice) try(v *big.Rat) float64 {
	if c.s.budget < 0 || c.set(v) >= 0 {
		return math.Inf(1)
	}
	if c.j != nil {
		return c.j.badness()
	}
	c.j = c.s.judge(c.steps)
	if b := c.j.badness(); b <= good {
		return b
	}
	c.j.learn(func(other func()) { c.vary(v, other) })
	return c.j.badness()
}

// vary shows the figure for a value beside v, and comes back.
func (c *choice) vary(v *big.Rat, other func()) {
	for _, w := range c.l.beside(v) {
		if c.set(w) < 0 {
			other()
			break
		}
	}
	c.set(v)
}

// rung is a value, how bad it is, and where it stands: the nth on a side of the
// plain value, which is the one before the first.
type rung struct {
	bad    float64
	way, n int
}

// nearlyBest is how much worse than the best a value may be that is nearer to
// the plain one.
const nearlyBest = 1.2

// A side is given up after so many rungs that are worse by so much than the
// best.
const (
	hopeless  = 2
	muchWorse = 1.5
)

// climb goes from the plain value up and down at once, to the first good value
// and from there back to the nearest one. Where none is good, good is what is
// nearly as good as the best.
func (c *choice) climb() (*big.Rat, bool) {
	bad := c.try(c.l.plain)
	if bad <= good {
		return c.l.plain, true
	}
	seen, least := []rung{{bad, 0, -1}}, bad
	worse := [2]int{}
	for k := range max(len(c.l.rungs[0]), len(c.l.rungs[1])) {
		for way, rungs := range c.l.rungs {
			if k >= len(rungs) || worse[way] == hopeless {
				continue
			}
			bad := c.try(rungs[k])
			if bad <= good {
				return c.back(way, k, good), true
			}
			if worse[way]++; bad < least+muchWorse || math.IsInf(bad, 1) {
				worse[way] = 0
			}
			seen, least = append(seen, rung{bad, way, k}), min(least, bad)
		}
	}
	limit := max(good, nearlyBest*least)
	for _, r := range seen {
		if r.bad <= limit && !math.IsInf(r.bad, 1) {
			return c.back(r.way, r.n, limit), true
		}
	}
	return c.lastResort()
}

// lastResort is the least bad of the values that are strange.
func (c *choice) lastResort() (best *big.Rat, ok bool) {
	least := math.Inf(1)
	for _, v := range c.l.last {
		if b := c.try(v); b < least {
			best, least = v, b
		}
	}
	return best, best != nil
}

// back halves the way from the rung before the nth to that one, down to the
// nearest value that is no worse than a limit.
func (c *choice) back(way, n int, limit float64) *big.Rat {
	fine := c.l.rung(way, n)
	if n < 0 {
		return fine
	}
	bad := c.l.rung(way, n-1)
	for range 3 {
		mid := c.l.between(bad, fine)
		if mid == nil {
			break
		}
		if c.try(mid) <= limit {
			fine = mid
		} else {
			bad = mid
		}
	}
	return fine
}
