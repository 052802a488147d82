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

// The search for special positions stops after so many steps done, and with so
// many exceptions to one claim.
const (
	specialSteps   = 3000
	mostExceptions = 3
)

// special is a position of a free point that a geometer would name.
type special struct {
	words string // "P is A"
	// off is what is 0 there and nowhere near it, in one number or two.
	off func(st *program.State, p geom.Point) []geom.Real
}

// freePoint is a point that is placed with inputs of its own.
type freePoint struct {
	slot   int
	step   int
	inputs []int
}

// exception is a special position in which a claim fails.
type exception struct {
	special
	free freePoint
}

// Exceptions tells for each claim that holds always, or in all figures tried, the special positions of
// free points in which it fails or means nothing: "P is A". They are tried one
// at a time, by exact positions, the simplest first; the claim may fail at others.
func (r *Result) Exceptions(reaches []Reach) [][]string {
	words := make([][]string, len(reaches))
	if r.Figure == nil || !slices.Contains(reaches, Always) && !slices.Contains(reaches, Tried) {
		return words
	}
	x := &exceptions{Result: r, reaches: reaches, found: make([][]exception, len(reaches)), seen: map[string]bool{}}
	x.search()
	for i, list := range x.found {
		for _, e := range list {
			words[i] = append(words[i], e.words)
		}
	}
	return words
}

// exceptions is the state of a search for them.
type exceptions struct {
	*Result
	rough   *program.State
	reaches []Reach
	found   [][]exception // by claim
	seen    map[string]bool
}

func (x *exceptions) search() {
	free := x.freePoints()
	budget := specialSteps
	for _, rank := range ranks {
		for _, p := range free {
			for _, s := range rank(x.program, p, x.besides(p, program.Point), x.besides(p, program.Line)) {
				if budget -= x.try(exception{s, p}); budget < 0 {
					return
				}
			}
		}
	}
}

// try looks at one special position and gives how many steps that took.
func (x *exceptions) try(e exception) int {
	inputs := x.reach(e)
	if inputs == nil || x.seen[fmt.Sprint(inputs)] {
		return 0
	}
	x.seen[fmt.Sprint(inputs)] = true
	t := eval.At(x.program, inputs)
	if t == nil || !e.holds(t.State) {
		return len(x.program.Steps)
	}
	var beside []*eval.Trial
	for i, c := range x.program.Claims {
		known := func(other exception) bool { return other.holds(t.State) }
		if x.reaches[i] != Always && x.reaches[i] != Tried || t.Failed[c.Step] == nil || len(x.found[i]) == mostExceptions || slices.ContainsFunc(x.found[i], known) {
			continue
		}
		if beside == nil {
			beside = x.beside(inputs)
		}
		if slices.ContainsFunc(beside, func(t *eval.Trial) bool { return t.Failed[c.Step] == nil }) {
			x.found[i] = append(x.found[i], e)
		}
	}
	return (1 + len(beside)) * len(x.program.Steps)
}

// neighbours is how many figures are made beside a special position.
const neighbours = 4

// beside are figures hardly off a special position. Where none of them stands, the
// position is not to blame for a claim's failing: curves may no longer meet there.
func (x *exceptions) beside(inputs []*big.Rat) []*eval.Trial {
	out := []*eval.Trial{}
	random := rand.New(rand.NewPCG(elsewhereSeed, stream))
	for range neighbours {
		if t, err := eval.Try(x.program, x.movedFrom(inputs, random, big.NewRat(1, 1<<20), 5), eval.Enclosed); err == nil {
			out = append(out, t)
		}
	}
	return out
}

// holds tells whether a run has the point in its special position.
func (e exception) holds(st *program.State) bool {
	is := false
	eval.Guard(func() error {
		is = !slices.ContainsFunc(e.off(st, st.Point(e.free.slot)), func(x geom.Real) bool { return x.Sign() != 0 })
		return nil
	})
	return is
}

// freePoints runs the figure on rough numbers and finds its free points.
func (x *exceptions) freePoints() (free []freePoint) {
	st := program.NewState(x.program, slices.Clone(x.inputs), exact.NewRoughField())
	for i, step := range x.program.Steps {
		if step.Proof {
			continue
		}
		st.Trace = &program.Trace{}
		if eval.Do(st, step) != nil || len(st.Trace.Inputs) == 0 {
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

// besides are the slots of named things of a kind that were there before a free point.
func (x *exceptions) besides(p freePoint, kind program.Kind) (out []int) {
	for slot, s := range x.program.Slots[:p.slot] {
		if x.rough.Values[slot] != nil && s.Top && s.Name != "" && s.Kind == kind && len(out) < mostBesides {
			out = append(out, slot)
		}
	}
	return out
}

// ranks are the kinds of special positions, those that take in others before them.
var ranks = []func(prog *program.Program, p freePoint, points, lines []int) []special{
	coincidingAlong,
	onLines,
	pairwise("%[1]s lies on %[2]s%[3]s", func(p, a, b geom.Point) geom.Real { return p.Sub(a).Cross(b.Sub(a)) }),
	coinciding,
	pairwise("%[1]s%[2]s = %[1]s%[3]s", func(p, a, b geom.Point) geom.Real { return geom.Dist2(p, a).Sub(geom.Dist2(p, b)) }),
	midway,
	pairwise("angle %[1]s%[2]s%[3]s = 90°", func(p, a, b geom.Point) geom.Real { return p.Sub(a).Dot(b.Sub(a)) }),
	pairwise("angle %[1]s%[3]s%[2]s = 90°", func(p, a, b geom.Point) geom.Real { return p.Sub(b).Dot(a.Sub(b)) }),
	pairwise("angle %[2]s%[1]s%[3]s = 90°", func(p, a, b geom.Point) geom.Real { return a.Sub(p).Dot(b.Sub(p)) }),
	parallels,
}

func onLines(prog *program.Program, p freePoint, _, lines []int) (out []special) {
	for _, m := range lines {
		words := fmt.Sprintf("%s lies on %s", prog.Slots[p.slot].Name, prog.Slots[m].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			l := st.Curve(m).Line()
			return []geom.Real{p.Sub(l.P).Cross(l.D)}
		}})
	}
	return out
}

// coincidingAlong is coinciding for a point that moves along a line or circle:
// that it lies on another line says less.
func coincidingAlong(prog *program.Program, p freePoint, points, _ []int) []special {
	if len(p.inputs) > 1 {
		return nil
	}
	return coinciding(prog, p, points, nil)
}

func coinciding(prog *program.Program, p freePoint, points, _ []int) (out []special) {
	for _, a := range points {
		words := fmt.Sprintf("%s is %s", prog.Slots[p.slot].Name, prog.Slots[a].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real { return apart(p, st.Point(a)) }})
	}
	return out
}

func apart(p, q geom.Point) []geom.Real {
	d := p.Sub(q)
	return []geom.Real{d.X, d.Y}
}

func midway(prog *program.Program, p freePoint, points, _ []int) (out []special) {
	eachPair(points, func(a, b int) {
		words := fmt.Sprintf("%s is the midpoint of %s%s", prog.Slots[p.slot].Name, prog.Slots[a].Name, prog.Slots[b].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			return apart(p, geom.Midpoint(st.Point(a), st.Point(b)))
		}})
	})
	return out
}

// pairwise are the positions of a point with two others for which a number is 0.
func pairwise(words string, off func(p, a, b geom.Point) geom.Real) func(*program.Program, freePoint, []int, []int) []special {
	return func(prog *program.Program, p freePoint, points, _ []int) (out []special) {
		eachPair(points, func(a, b int) {
			said := fmt.Sprintf(words, prog.Slots[p.slot].Name, prog.Slots[a].Name, prog.Slots[b].Name)
			out = append(out, special{said, func(st *program.State, p geom.Point) []geom.Real {
				return []geom.Real{off(p, st.Point(a), st.Point(b))}
			}})
		})
		return out
	}
}

func parallels(prog *program.Program, p freePoint, points, _ []int) (out []special) {
	for _, a := range points {
		eachPair(points, func(b, c int) {
			if b == a || c == a {
				return
			}
			words := fmt.Sprintf("%s%s is parallel to %s%s", prog.Slots[p.slot].Name, prog.Slots[a].Name, prog.Slots[b].Name, prog.Slots[c].Name)
			out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
				return []geom.Real{p.Sub(st.Point(a)).Cross(st.Point(c).Sub(st.Point(b)))}
			}})
		})
	}
	return out
}

func eachPair(slots []int, do func(a, b int)) {
	for i, a := range slots {
		for _, b := range slots[i+1:] {
			do(a, b)
		}
	}
}

// reach finds fractions for the inputs of a free point that bring it to a special
// position, or nil: by Newton's steps on rough numbers, with two inputs for two
// conditions, else with one, the last that will do.
func (x *exceptions) reach(e exception) (found []*big.Rat) {
	in := e.free.inputs
	if len(in) == 2 && len(e.off(x.rough, x.rough.Point(e.free.slot))) == 2 {
		return x.newton(e, in, x.starts(in))
	}
	for i := len(in) - 1; i >= 0 && found == nil; i-- {
		one := in[i : i+1]
		found = x.newton(e, one, x.starts(one))
		for degrees := 0.0; degrees < 360 && found == nil && x.program.Inputs[in[i]].Kind == program.Bearing; degrees += 90 {
			found = x.newton(e, one, []float64{degrees})
		}
	}
	return found
}

// starts are inputs as they were chosen, in floats.
func (x *exceptions) starts(with []int) (at []float64) {
	for _, in := range with {
		f, _ := x.inputs[in].Float64()
		at = append(at, f)
	}
	return at
}

// newton brings the conditions to 0 with some inputs from a start, in floats, and gives the
// fractions near to that, all others as they are.
func (x *exceptions) newton(e exception, with []int, at []float64) []*big.Rat {
	defer func() {
		copy(x.rough.Inputs, x.inputs)
		eval.Do(x.rough, x.program.Steps[e.free.step])
	}()
	residue := func() []float64 { return x.residue(e, with, at) }
	for range 12 {
		now := residue()
		switch {
		case now == nil:
			return nil
		case small(now):
			return x.fractions(with, at)
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

// residue is how far the rough figure is from a special position with some
// inputs set anew; nil where there is none.
func (x *exceptions) residue(e exception, with []int, at []float64) (out []float64) {
	for i, in := range with {
		x.rough.Inputs[in] = new(big.Rat).SetFloat64(at[i])
	}
	if eval.Do(x.rough, x.program.Steps[e.free.step]) != nil {
		return nil
	}
	for _, off := range e.off(x.rough, x.rough.Point(e.free.slot)) {
		out = append(out, off.Float())
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

// fractions are the inputs, some of them at the simplest fractions near floats.
func (x *exceptions) fractions(with []int, at []float64) []*big.Rat {
	out := slices.Clone(x.inputs)
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
