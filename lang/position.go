package lang

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// position is inputs that bring a free point to a special position, or as near to it as
// short fractions do.
type position struct {
	exception
	inputs []*big.Rat
	other  []*big.Rat // inputs of another place that is as special; may be nil
}

// positions is the state of a search for special positions.
type positions struct {
	*Result
	rough *program.State
	fixed []bool // by slot: it hangs on nothing free
	seen  map[string]bool
	all   []exception // that were looked for
	found []position
}

// specials are special positions that free points can be brought to, one at a time;
// they are found once.
func (r *Result) specials() []position {
	if r.special == nil {
		x := &positions{Result: r, fixed: make([]bool, len(r.program.Slots)), seen: map[string]bool{}, found: []position{}}
		x.search()
		r.special, r.sought = x.found, x.all
	}
	return r.special
}

func (x *positions) search() {
	free := x.freePoints()
	budget := specialSteps
	for _, rank := range ranks {
		for _, p := range free {
			for _, s := range rank(x.program, p, x.besides(p, program.Point), x.besides(p, program.Line), x.besides(p, program.Circle)) {
				e := exception{s, p}
				if !x.add(e) {
					continue
				}
				if budget -= len(x.program.Steps); budget < 0 {
					return
				}
			}
		}
	}
}

// add finds the inputs of a special position, and tells whether they are new.
func (x *positions) add(e exception) bool {
	x.all = append(x.all, e)
	inputs := x.reach(e)
	if inputs == nil || x.seen[fmt.Sprint(inputs)] {
		return false
	}
	x.seen[fmt.Sprint(inputs)] = true
	x.found = append(x.found, position{e, inputs, x.reachAside(e)})
	return true
}

// around are inputs off a special position, by about such a part, on all sides of it.
func (r *Result) around(p position, part *big.Rat) (out [][]*big.Rat) {
	random := rand.New(rand.NewPCG(elsewhereSeed, stream))
	for side := range 4 {
		inputs := r.movedFrom(p.inputs, random, part, 5)
		for k, in := range p.free.inputs {
			move := new(big.Rat).Sub(inputs[in], p.inputs[in])
			move.Abs(move)
			if side>>(k%2)&1 == 1 {
				move.Neg(move)
			}
			inputs[in] = move.Add(move, p.inputs[in])
		}
		if r.open(inputs) {
			out = append(out, inputs)
		}
	}
	return out
}

// open tells whether all openings are more than nothing.
func (r *Result) open(inputs []*big.Rat) bool {
	for i, v := range inputs {
		if r.program.Inputs[i].Kind == program.Opening && v.Sign() <= 0 {
			return false
		}
	}
	return true
}

// freePoints runs the figure on rough numbers and finds its free points.
func (x *positions) freePoints() (free []freePoint) {
	st := program.NewState(x.program, slices.Clone(x.inputs), exact.NewRoughField())
	for i, step := range x.program.Steps {
		if step.Proof {
			continue
		}
		st.Trace = &program.Trace{}
		if eval.Do(st, step) != nil {
			continue
		}
		for _, slot := range st.Trace.Writes {
			x.fixed[slot] = !x.hangs(step)
		}
		if len(st.Trace.Inputs) == 0 {
			continue
		}
		inputs := slices.Clone(st.Trace.Inputs)
		slices.Sort(inputs)
		for _, slot := range st.Trace.Writes {
			if s := x.program.Slots[slot]; s.Kind == program.Point && s.Top && s.Name != "" {
				free = append(free, freePoint{slot, i, slices.Compact(inputs)})
			}
		}
	}
	st.Trace = nil
	x.rough = st
	return free
}

// mostBesides is how many other points a free point is brought together with.
const mostBesides = 6

// besides are the slots of named things of a kind that do not move with a free point:
// those that were there before it, and those that hang on nothing free.
func (x *positions) besides(p freePoint, kind program.Kind) (out []int) {
	for slot, s := range x.program.Slots {
		if (slot < p.slot || x.fixed[slot]) && x.rough.Values[slot] != nil && s.Top && s.Name != "" && s.Kind == kind && len(out) < mostBesides {
			out = append(out, slot)
		}
	}
	return out
}

// reach finds fractions for the inputs of a free point that bring it to a special
// position, or nil: by Newton's steps on rough numbers, with two inputs for two
// conditions, else with one, the last that will do; where that leads to another point
// only, which is more than the one condition, with the other input moved first.
func (x *positions) reach(e exception) (found []*big.Rat) {
	in := e.free.inputs
	if len(in) == 2 && len(e.off(x.rough, x.rough.Point(e.free.slot))) == 2 {
		return x.newton(e, x.inputs, in, starts(x.inputs, in))
	}
	for i := len(in) - 1; i >= 0 && found == nil; i-- {
		found = x.reachWith(e, x.inputs, in[i])
	}
	if found == nil {
		found = x.reachAside(e)
	}
	return found
}

// reachAside is reach for one condition and two inputs, one of which is moved first.
func (x *positions) reachAside(e exception) (found []*big.Rat) {
	in := e.free.inputs
	if len(in) != 2 || len(e.off(x.rough, x.rough.Point(e.free.slot))) == 2 {
		return nil
	}
	for i := len(in) - 1; i >= 0 && found == nil; i-- {
		found = x.reachWith(e, x.aside(in[1-i]), in[i])
	}
	return found
}

// reachWith is reach with one input, the others as they are in a base.
func (x *positions) reachWith(e exception, base []*big.Rat, in int) []*big.Rat {
	one := []int{in}
	found := x.newton(e, base, one, starts(base, one))
	for degrees := 0.0; degrees < 360 && found == nil && x.program.Inputs[in].Kind == program.Bearing; degrees += 90 {
		found = x.newton(e, base, one, []float64{degrees})
	}
	return found
}

// aside are the figure's inputs, one of them moved by about the size of a figure's part.
func (x *positions) aside(in int) []*big.Rat {
	out := slices.Clone(x.inputs)
	move := big.NewRat(1, 1)
	if x.program.Inputs[in].Kind == program.Nearby {
		move = big.NewRat(1, 4)
	}
	out[in] = move.Add(move, out[in])
	return out
}

// starts are some of the inputs, in floats.
func starts(inputs []*big.Rat, with []int) (at []float64) {
	for _, in := range with {
		f, _ := inputs[in].Float64()
		at = append(at, f)
	}
	return at
}

// newton brings the conditions to 0 with some inputs from a start, in floats, and gives the
// fractions near to that, all others as in a base.
func (x *positions) newton(e exception, base []*big.Rat, with []int, at []float64) []*big.Rat {
	defer func() {
		copy(x.rough.Inputs, x.inputs)
		eval.Do(x.rough, x.program.Steps[e.free.step])
	}()
	copy(x.rough.Inputs, base)
	residue := func() []float64 { return x.residue(e, with, at) }
	for range 12 {
		now := residue()
		switch {
		case now == nil, small(now) && len(now) == 1 && x.meetsOther(e.free):
			return nil
		case small(now):
			return fractions(base, with, at)
		}
		step := descent(at, now, residue)
		for i := range at {
			if at[i] -= step[i]; math.IsNaN(at[i]) || math.Abs(at[i]) > 1e6 {
				return nil
			}
		}
	}
	return nil
}

// meetsOther tells whether the rough figure has a free point where another is that does not
// move with it.
func (x *positions) meetsOther(p freePoint) bool {
	return slices.ContainsFunc(x.besides(p, program.Point), func(a int) bool {
		return small(floats(apart(x.rough.Point(p.slot), x.rough.Point(a))))
	})
}

// residue is how far the rough figure is from a special position with some
// inputs set anew; nil where there is none.
func (x *positions) residue(e exception, with []int, at []float64) []float64 {
	for i, in := range with {
		x.rough.Inputs[in] = new(big.Rat).SetFloat64(at[i])
	}
	if eval.Do(x.rough, x.program.Steps[e.free.step]) != nil {
		return nil
	}
	return floats(e.off(x.rough, x.rough.Point(e.free.slot)))
}

func floats(numbers []geom.Real) (out []float64) {
	for _, n := range numbers {
		out = append(out, n.Float())
	}
	return out
}

func small(v []float64) bool {
	return !slices.ContainsFunc(v, func(x float64) bool { return math.Abs(x) > 1e-11 })
}

// descent is Newton's step for as many unknowns as conditions, and that of least
// squares for one unknown; slopes are differences.
func descent(at, now []float64, residue func() []float64) []float64 {
	const h = 1e-4
	var slopes [][]float64
	for i := range at {
		at[i] += h
		moved := residue()
		at[i] -= h
		slope := make([]float64, len(now))
		for k := range now {
			slope[k] = math.NaN()
			if moved != nil {
				slope[k] = (moved[k] - now[k]) / h
			}
		}
		slopes = append(slopes, slope)
	}
	if len(at) == 1 {
		up, down := 0.0, 0.0
		for k, m := range slopes[0] {
			up, down = up+m*now[k], down+m*m
		}
		return []float64{up / down}
	}
	a, b := slopes[0], slopes[1]
	det := a[0]*b[1] - a[1]*b[0]
	return []float64{(now[0]*b[1] - now[1]*b[0]) / det, (a[0]*now[1] - a[1]*now[0]) / det}
}

// fractions are a base's inputs, some of them at the simplest fractions near floats.
func fractions(base []*big.Rat, with []int, at []float64) []*big.Rat {
	out := slices.Clone(base)
	for i, in := range with {
		out[in] = simplest(at[i])
	}
	return out
}

// simplest is the first convergent of a float's continued fraction that is
// within 10^-10 of it.
func simplest(x float64) *big.Rat {
	var p, q, p1, q1 int64 = 1, 0, int64(math.Floor(x)), 1
	for rest := x - math.Floor(x); math.Abs(float64(p1)/float64(q1)-x) > 1e-10 && q1 < 1e6 && rest > 1e-12; {
		rest = 1 / rest
		a := int64(math.Floor(rest))
		rest -= math.Floor(rest)
		p, q, p1, q1 = p1, q1, a*p1+p, a*q1+q
	}
	return big.NewRat(p1, q1)
}
