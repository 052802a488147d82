package lang

import (
	"fmt"
	"math/big"
	"slices"

	"trammel/geom"
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

// Exceptions tells for each claim that holds always, or in all figures tried, the special
// positions of free points in which it fails or means nothing: "P is A". They are tried one
// at a time, by exact positions, the simplest first; the claim may fail at others.
func (r *Result) Exceptions(reaches []Reach) [][]string {
	words := make([][]string, len(reaches))
	if r.Figure == nil || !slices.Contains(reaches, Always) && !slices.Contains(reaches, Tried) {
		return words
	}
	x := &exceptions{Result: r, reaches: reaches, found: make([][]exception, len(reaches))}
	for _, p := range r.specials() {
		x.try(p)
	}
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
	reaches []Reach
	found   [][]exception // by claim
}

// try looks at one special position; again with wide openings where nothing stands beside
// it, as arcs that meet in the figure need not meet there.
func (x *exceptions) try(p position) {
	if x.blames(p) || !x.opens() {
		return
	}
	p.inputs = slices.Clone(p.inputs)
	x.widen(p.inputs)
	x.blames(p)
}

// opens tells whether any opening is left to chance.
func (x *exceptions) opens() bool {
	return slices.ContainsFunc(x.program.Inputs, func(in *program.Input) bool { return in.Kind == program.Opening })
}

// blames notes the claims that fail in a special position and not beside it; it is false
// where claims fail and nothing stands beside it.
func (x *exceptions) blames(p position) bool {
	t := eval.At(x.program, p.inputs)
	if t == nil || !p.holds(t.State) {
		return true
	}
	var beside []*eval.Trial
	for i, c := range x.program.Claims {
		known := func(other exception) bool { return other.holds(t.State) }
		if x.reaches[i] != Always && x.reaches[i] != Tried || t.Failed[c.Step] == nil || len(x.found[i]) == mostExceptions || slices.ContainsFunc(x.found[i], known) {
			continue
		}
		if beside == nil {
			if beside = x.beside(p); len(beside) == 0 {
				return false
			}
		}
		if slices.ContainsFunc(beside, func(t *eval.Trial) bool { return t.Failed[c.Step] == nil }) {
			if e, ok := x.cause(p, c, t); ok {
				x.found[i] = append(x.found[i], e)
			}
		}
	}
	return true
}

// cause is the special position to which it is due that a claim fails in a figure: not
// the one that was tried, if the claim holds in another figure that is special in that
// way; then one that this figure happens to be in as well.
func (x *exceptions) cause(p position, c program.Claim, t *eval.Trial) (e exception, ok bool) {
	if !x.holdsAt(p, p.other, c) {
		return p.exception, true
	}
	for _, e := range x.sought {
		if e.words != p.words && e.holds(t.State) {
			return e, true
		}
	}
	return exception{}, false
}

// holdsAt tells whether a claim holds in another figure in which a point is as special.
func (x *exceptions) holdsAt(p position, inputs []*big.Rat, c program.Claim) bool {
	if inputs == nil {
		return false
	}
	t := eval.At(x.program, inputs)
	return t != nil && p.holds(t.State) && t.Failed[c.Step] == nil
}

// beside are figures hardly off a special position. Where none of them stands, the
// position is not to blame for a claim's failing: curves may no longer meet there.
func (x *exceptions) beside(p position) []*eval.Trial {
	out := []*eval.Trial{}
	for _, inputs := range x.around(p, big.NewRat(1, 1<<20)) {
		if t, err := eval.Try(x.program, inputs, eval.Enclosed); err == nil {
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

// ranks are the kinds of special positions, those that take in others before them.
var ranks = []func(prog *program.Program, p freePoint, points, lines, circles []int) []special{
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
	onCircles,
	straightOn,
}

func onLines(prog *program.Program, p freePoint, _, lines, _ []int) (out []special) {
	for _, m := range lines {
		words := fmt.Sprintf("%s lies on %s", prog.Slots[p.slot].Name, prog.Slots[m].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			l := st.Curve(m).Line()
			return []geom.Real{p.Sub(l.P).Cross(l.D)}
		}})
	}
	return out
}

func onCircles(prog *program.Program, p freePoint, _, _, circles []int) (out []special) {
	for _, k := range circles {
		words := fmt.Sprintf("%s lies on %s", prog.Slots[p.slot].Name, prog.Slots[k].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			c := st.Curve(k).Circle
			return []geom.Real{geom.Dist2(p, c.C).Sub(c.R2)}
		}})
	}
	return out
}

// coincidingAlong is coinciding for a point that moves along a line or circle:
// that it lies on another line says less.
func coincidingAlong(prog *program.Program, p freePoint, points, _, _ []int) []special {
	if len(p.inputs) > 1 {
		return nil
	}
	return coinciding(prog, p, points, nil, nil)
}

func coinciding(prog *program.Program, p freePoint, points, _, _ []int) (out []special) {
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

func midway(prog *program.Program, p freePoint, points, _, _ []int) (out []special) {
	eachPair(points, func(a, b int) {
		words := fmt.Sprintf("%s is the midpoint of %s%s", prog.Slots[p.slot].Name, prog.Slots[a].Name, prog.Slots[b].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			return apart(p, geom.Midpoint(st.Point(a), st.Point(b)))
		}})
	})
	return out
}

// straightOn are the positions past one of two points, straight from the other: where a
// claim fails there and not all along their line, as inequalities do.
func straightOn(prog *program.Program, p freePoint, points, _, _ []int) (out []special) {
	if !slices.ContainsFunc(prog.Claims, func(c program.Claim) bool { return c.Inequality }) {
		return nil
	}
	past := func(a, b int) {
		words := fmt.Sprintf("%s lies between %s and %s", prog.Slots[b].Name, prog.Slots[a].Name, prog.Slots[p.slot].Name)
		out = append(out, special{words, func(st *program.State, p geom.Point) []geom.Real {
			from, to := st.Point(a), st.Point(b)
			return apart(p, to.Add(to.Sub(from).Scale(st.Field.Rat(big.NewRat(3, 5)))))
		}})
	}
	eachPair(points, func(a, b int) {
		past(a, b)
		past(b, a)
	})
	return out
}

// pairwise are the positions of a point with two others for which a number is 0.
func pairwise(words string, off func(p, a, b geom.Point) geom.Real) func(*program.Program, freePoint, []int, []int, []int) []special {
	return func(prog *program.Program, p freePoint, points, _, _ []int) (out []special) {
		eachPair(points, func(a, b int) {
			said := fmt.Sprintf(words, prog.Slots[p.slot].Name, prog.Slots[a].Name, prog.Slots[b].Name)
			out = append(out, special{said, func(st *program.State, p geom.Point) []geom.Real {
				return []geom.Real{off(p, st.Point(a), st.Point(b))}
			}})
		})
		return out
	}
}

func parallels(prog *program.Program, p freePoint, points, _, _ []int) (out []special) {
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
