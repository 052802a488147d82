package solve

import (
	"math"
	"math/big"
	"slices"
)

// choose gives an input the value that costs least, as far as the steps show that
// hang on it: that is bad, or far from the plain one. So a value moves only as
// far as it is worth while, and moves little when the source changes a little.
// It is false if every value fails, and then changes nothing.
func (s *search) choose(in int, steps []int) bool {
	c := s.choice(in, steps)
	if c.climb() && c.settle() {
		return true
	}
	c.set(c.old)
	return false
}

// choice is the search for one input's value.
type choice struct {
	s      *search
	in     int
	all    []int    // the steps that hang on the input,
	steps  []int    // and those of them that are looked at
	other  *big.Rat // beside the old one, for which aside has what these make; nil: it has not
	old    *big.Rat
	l      *ladder
	j      *judge
	now    *big.Rat // for which all steps have been done, and went well; nil: they have not
	moves  []move   // what is done to try a value,
	moving []int    // which steps these are
	rest   []int    // the steps that make the same for each value,
	of     *big.Rat // and the one for which they were done
	wheels []int    // circles that are as wide as the value, and stay where they are
	value  *big.Rat // the best one so far, for which the search keeps what the moves have made,
	bad    float64  // and how bad it is
	// A thorough search does all steps for each value.
	thorough bool
}

// move is a step that a choice changes, and its place among the judge's parts, -1 if it is
// none; with what it makes that came out as it was and is read by steps that are not looked at.
type move struct {
	step, part int
	kept       []kept
}

// kept is a slot and its mark.
type kept struct{ slot, mark int }

func (s *search) choice(in int, steps []int) *choice {
	c := &choice{s: s, in: in, all: steps, steps: steps, old: s.st.Inputs[in], l: s.ladder(in)}
	if !slices.ContainsFunc(steps, func(i int) bool { return s.errs[i] != nil }) {
		c.now = c.old
	}
	return c
}

// set gives the input a value; it gives the first step that fails, or -1.
func (c *choice) set(v *big.Rat) int {
	if c.now != nil && c.now.Cmp(v) == 0 {
		return -1
	}
	c.now, c.s.st.Inputs[c.in] = nil, v
	at := c.s.redo(c.all)
	if at < 0 {
		c.now = v
	}
	return at
}

// try is how bad a value is; infinitely if it fails, or is surely worse than a limit.
func (c *choice) try(v *big.Rat, limit float64) float64 {
	if c.s.budget < 0 {
		return math.Inf(1)
	}
	if c.j != nil {
		return c.price(v, limit)
	}
	if c.set(v) >= 0 {
		return math.Inf(1)
	}
	c.j = c.s.judge
	c.j.look(c.all...)
	c.j.weigh()
	if len(c.steps) < len(c.all) {
		c.j.only(c.steps)
	}
	c.j.learning = true
	bad := c.j.badness()
	if bad > good {
		c.learn(v)
		bad = c.j.badness()
	}
	c.j.learning = false
	c.plan(v)
	return bad
}

// learn shows the judge the figure for a value beside v, and comes back.
func (c *choice) learn(v *big.Rat) {
	f := &c.s.before
	f.take(c.s, c.steps)
	c.j.learn(f, func(other func()) {
		if w := c.beside(v); w != nil {
			other()
			c.wheels = f.wheels(c.s, v, w)
		}
		f.back(c.s)
		c.now, c.s.st.Inputs[c.in] = v, v
	})
}

// beside makes the figure for a value beside v; it gives that, or nil where there is none.
func (c *choice) beside(v *big.Rat) *big.Rat {
	if c.other != nil && v == c.old {
		c.s.aside.back(c.s)
		return c.other
	}
	for _, w := range c.l.beside(v) {
		if c.set(w) < 0 {
			return w
		}
	}
	return nil
}

// plan parts the steps into those that a try has to do, and those that make
// nothing else for another value that the judge or a step of the first kind sees.
func (c *choice) plan(v *big.Rat) {
	c.moves, c.of = c.moves[:0], v
	read := c.s.read // slots
	isRead := func(slot int) bool { return read[slot] }
	clear(read)
	for _, i := range without(c.all, c.steps) {
		for _, slot := range c.s.known[i].reads {
			read[slot] = true
		}
	}
	outside := slices.Clone(read)
	k := len(c.j.parts) - 1
	for _, i := range slices.Backward(c.steps) {
		m := move{step: i, part: -1}
		if k >= 0 && c.j.parts[k].step == i {
			m.part = k
			k--
		}
		if m.part < 0 && !c.thorough && len(c.s.writes[i]) > 0 && !slices.ContainsFunc(c.s.writes[i], isRead) {
			continue
		}
		for _, slot := range c.s.writes[i] {
			if outside[slot] {
				m.kept = append(m.kept, kept{slot, c.s.marks[slot]})
			}
		}
		c.moves = append(c.moves, m)
		for _, slot := range c.s.known[i].reads {
			read[slot] = true
		}
	}
	slices.Reverse(c.moves)
	c.moving = c.moving[:0]
	for _, m := range c.moves {
		c.moving = append(c.moving, m.step)
	}
	c.rest = without(c.all, c.moving)
}

// rounding is more than floats lose when objections are added up in another order.
const rounding = 1e-9

// price is try by the moves alone; it stops where what has been seen is bad enough.
func (c *choice) price(v *big.Rat, limit float64) float64 {
	s := c.s
	if c.forecast(v) > limit+rounding {
		return math.Inf(1)
	}
	c.j.begin()
	c.now, s.st.Inputs[c.in] = nil, v
	for _, m := range c.moves {
		if s.again(m.step); !s.went(m.step) {
			return math.Inf(1)
		}
		if slices.ContainsFunc(m.kept, func(k kept) bool { return s.marks[k.slot] != k.mark }) {
			return c.priceAll(v)
		}
		if m.part >= 0 && c.j.add(m.part) > limit+rounding {
			return math.Inf(1)
		}
	}
	return c.j.whole(limit + rounding)
}

// priceAll is price by all steps, where more of them move than were seen to.
func (c *choice) priceAll(v *big.Rat) float64 {
	if c.set(v) >= 0 {
		return math.Inf(1)
	}
	return c.j.badness()
}

// forecast is what a value costs at least, seen without doing anything: by what its
// circles are like.
func (c *choice) forecast(v *big.Rat) (least float64) {
	if len(c.wheels) == 0 {
		return 0
	}
	c.j.begin()
	r := float(v)
	for _, slot := range c.wheels {
		t := c.j.slots[slot]
		t.r = r
		least = max(least, c.j.likeness(slot, &t))
	}
	return least
}

// keep makes a value that has just been tried the best one.
func (c *choice) keep(v *big.Rat, bad float64) {
	c.s.best.take(c.s, c.moving)
	c.value, c.bad = v, bad
}

// settle gives the input the best value. Where a step fails with it that was taken to
// stay as it is, or moves, the choice is made again with all steps.
func (c *choice) settle() bool {
	s := c.s
	s.best.back(s)
	s.st.Inputs[c.in] = c.value
	if c.of.Cmp(c.value) == 0 || c.stays() {
		return true
	}
	c.j, c.now, c.wheels, c.value, c.steps, c.other, c.thorough = nil, nil, nil, nil, c.all, nil, true
	return c.climb() && c.settle()
}

// stays does the steps that were taken to make the same for each value, and tells
// whether they do.
func (c *choice) stays() bool {
	for _, i := range c.rest {
		if c.s.current(i) {
			continue
		}
		if c.s.again(i); !c.s.went(i) || c.s.was.moved(c.s) {
			return false
		}
	}
	return true
}

// rung is a value, what it costs, and where it stands: the nth on a side of
// the plain value, which is the one before the first.
type rung struct {
	v      *big.Rat
	cost   float64
	way, n int
}

// pricing is what a value costs if that is less than a limit, else infinity.
type pricing func(v *big.Rat, limit float64) float64

// climb weighs how bad a value is against how far it is from the plain one. It
// goes up and down at once, until the way alone costs more than the best value,
// and then looks about that one.
func (c *choice) climb() bool {
	plain := rung{c.l.plain, c.within(c.l.plain, math.Inf(1)), 0, -1}
	if plain.cost == 0 || c.guess() {
		return true
	}
	best := c.far(plain, c.within)
	if math.IsInf(best.cost, 1) {
		return c.lastResort()
	}
	c.closer(best, c.within)
	return true
}

// guess climbs by forecasts where the plain value is poor by these alone. What it comes to
// is taken if it costs no more than was seen.
func (c *choice) guess() bool {
	if c.forecast(c.l.plain) <= good {
		return false
	}
	seen := func(v *big.Rat, limit float64) float64 {
		if v == nil || c.l.far(v) >= limit {
			return math.Inf(1)
		}
		return max(0, c.forecast(v)-good) + c.l.far(v)
	}
	best := c.closer(c.far(rung{c.l.plain, seen(c.l.plain, math.Inf(1)), 0, -1}, seen), seen)
	return best.v != c.l.plain && !math.IsInf(c.within(best.v, best.cost+rounding), 1)
}

// patience is after how many rungs that are no better the best one is taken.
const patience = 10

// far finds the best rung.
func (c *choice) far(best rung, price pricing) rung {
	var closed [2]bool // ways that have become too far
	idle := 0
	for k := 0; (!closed[0] || !closed[1]) && (idle < patience || math.IsInf(best.cost, 1)); k++ {
		for way := range closed {
			v := c.l.rung(way, k)
			if closed[way] = closed[way] || v == nil || c.l.far(v) >= best.cost; closed[way] {
				continue
			}
			idle++
			if cost := price(v, best.cost); cost < best.cost {
				best, idle = rung{v, cost, way, k}, 0
			}
		}
	}
	return best
}

// closer looks between the best rung and its neighbours.
func (c *choice) closer(best rung, price pricing) rung {
	near, away := c.l.rung(best.way, best.n-1), c.l.rung(best.way, best.n+1)
	if best.n < 0 {
		near = c.l.rung(1, 0)
	}
	for range 2 {
		a, b := c.l.between(near, best.v), c.l.between(away, best.v)
		x := price(a, best.cost)
		y := price(b, min(x, best.cost))
		switch {
		case x < best.cost && x <= y:
			best.v, best.cost, away = a, x, best.v
		case y < best.cost:
			best.v, best.cost, near = b, y, best.v
		default:
			near, away = a, b
		}
	}
	return best
}

// within is what a value costs, how much worse than good it is and how far from the
// plain one, if there is one and that is less than a limit; it is the best one then.
// Else it is infinite.
func (c *choice) within(v *big.Rat, limit float64) float64 {
	if v == nil {
		return math.Inf(1)
	}
	far := c.l.far(v)
	if far >= limit {
		return math.Inf(1)
	}
	bad := c.try(v, limit-far+good)
	cost := max(0, bad-good) + far
	if !(cost < limit) {
		return math.Inf(1)
	}
	c.keep(v, bad)
	return cost
}

// lastResort takes the least bad of the values that are strange; it tells whether there is one.
func (c *choice) lastResort() bool {
	least := math.Inf(1)
	for _, v := range c.l.last() {
		if bad := c.try(v, least); bad < least {
			least = bad
			c.keep(v, bad)
		}
	}
	return c.value != nil
}
