package solve

import (
	"math"
	"math/big"
)

// choose gives an input the value that costs least, as far as the steps show that
// hang on it: that is bad, or far from the plain one. So a value moves only as
// far as it is worth while, and moves little when the source changes a little.
// It is false if every value fails, and then changes nothing.
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

// rung is a value, what it costs, and where it stands: the nth on a side of
// the plain value, which is the one before the first.
type rung struct {
	v      *big.Rat
	cost   float64
	way, n int
}

// climb weighs how bad a value is against how far it is from the plain one. It
// goes up and down at once, until the way alone costs more than the best value,
// and then looks about that one.
func (c *choice) climb() (*big.Rat, bool) {
	best := rung{c.l.plain, c.cost(c.l.plain), 0, -1}
	if best.cost == 0 {
		return best.v, true
	}
	for k := range max(len(c.l.rungs[0]), len(c.l.rungs[1])) {
		for way, rungs := range c.l.rungs {
			if k >= len(rungs) {
				continue
			}
			if cost := c.within(rungs[k], best.cost); cost < best.cost {
				best = rung{rungs[k], cost, way, k}
			}
		}
	}
	if math.IsInf(best.cost, 1) {
		return c.lastResort()
	}
	return c.closer(best), true
}

// cost is how much worse than good a value is, and how far from the plain one.
func (c *choice) cost(v *big.Rat) float64 { return max(0, c.try(v)-good) + c.l.far(v) }

// closer looks between the best rung and its neighbours.
func (c *choice) closer(best rung) *big.Rat {
	near, away := c.l.rung(best.way, best.n-1), c.l.rung(best.way, best.n+1)
	if best.n < 0 {
		near = c.l.rung(1, 0)
	}
	v, cost := best.v, best.cost
	for range 2 {
		a, b := c.l.between(near, v), c.l.between(away, v)
		x, y := c.within(a, cost), c.within(b, cost)
		switch {
		case x < cost && x <= y:
			v, cost, away = a, x, v
		case y < cost:
			v, cost, near = b, y, v
		default:
			near, away = a, b
		}
	}
	return v
}

// within is what a value costs, if there is one and the way alone costs less
// than a limit.
func (c *choice) within(v *big.Rat, limit float64) float64 {
	if v == nil || c.l.far(v) >= limit {
		return math.Inf(1)
	}
	return c.cost(v)
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
