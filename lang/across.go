package lang

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/program"
)

// lookAcross tries figures on the other side of where something changes that claims hang
// on: the order of points on a line, the side of a line that a point is on, the way an angle
// opens. Each of these is a number that goes through 0 there: a length or an
// area of which the size is taken, or a number by whose sign something was chosen. They are
// found from this figure and from some far off, by moving one input at a time.
func (r *Result) lookAcross() {
	x := &across{Result: r, runs: acrossSteps / (len(r.program.Steps) + 1)}
	if x.wanted(); len(x.claims) == 0 {
		return
	}
	random := rand.New(rand.NewPCG(elsewhereSeed+1, stream))
	size, _ := spread(r.state)
	for start := 0; start < mostStarts && x.runs > 0; start++ {
		inputs := slices.Clone(r.inputs)
		if start > 0 {
			inputs = r.draw(random, start, size)
		}
		x.from(inputs)
	}
}

const (
	acrossSteps = 6000
	mostStarts  = 12
	mostNewton  = 8
	mostNumbers = 24
)

// across is the state of such a search.
type across struct {
	*Result
	runs   int // that are left
	claims []int
}

// wanted finds the claims for which it is worth looking.
func (x *across) wanted() {
	for i, c := range x.program.Claims {
		if x.hangs(c.Step) && !c.Inequality && !x.other.isRefuted(i) && !x.onAllSides(fewLines)[i] {
			x.claims = append(x.claims, i)
		}
	}
}

// from looks about a figure, if there is one.
func (x *across) from(inputs []*big.Rat) {
	now := x.numbers(inputs)
	if now == nil {
		return
	}
	for i := range inputs {
		if x.program.Inputs[i].Kind == program.Bearing {
			x.round(inputs, i)
			continue
		}
		x.along(inputs, i, now, math.Inf(1))
	}
}

// along looks where one input may bring a number to 0, within so much of where it is.
func (x *across) along(inputs []*big.Rat, i int, now []float64, within float64) {
	slope, tried := x.slopes(inputs, i, now), map[float64]bool{}
	for k, v := range now {
		if k < len(slope) && slope[k] != 0 && math.Abs(v/slope[k]) < within {
			x.cross(inputs, i, k, v, slope[k], tried)
		}
	}
}

// round looks about figures with a point at other places of its circle: a bearing goes on
// for half a radian only from each whole number of degrees.
func (x *across) round(inputs []*big.Rat, i int) {
	for degrees := 0.0; degrees < 360; degrees += 30 {
		from := x.with(inputs, i, degrees+1.0/64)
		x.along(from, i, x.numbers(from), 0.45)
	}
}

// cross moves one input to where a number is 0, and tries figures beyond.
func (x *across) cross(inputs []*big.Rat, i, k int, value, slope float64, tried map[float64]bool) {
	at, _ := inputs[i].Float64()
	from := at
	for range mostNewton {
		step := -value / slope
		if at += step; math.IsNaN(at) || math.Abs(at) > 1e6 || x.runs <= 0 {
			return
		}
		if math.Abs(step) < 1e-9*(1+math.Abs(at)) {
			break
		}
		moved := x.with(inputs, i, at)
		now := x.numbers(moved)
		if k >= len(now) || math.Abs(now[k]) < 1e-12 {
			break
		}
		slopes := x.slopes(moved, i, now)
		if k >= len(slopes) || slopes[k] == 0 {
			break
		}
		value, slope = now[k], slopes[k]
	}
	key := math.Round(at*1e6) / 1e6
	if tried[key] {
		return
	}
	tried[key] = true
	far := math.Max(math.Abs(at-from), 1)
	for _, part := range []float64{1e-6, 1.0 / 64, 1.0 / 8, 1} {
		for _, side := range []float64{1, -1} {
			x.runs--
			x.stands(x.with(inputs, i, at+side*part*far))
		}
	}
}

// with are inputs with another value for one.
func (x *across) with(inputs []*big.Rat, i int, v float64) []*big.Rat {
	out := slices.Clone(inputs)
	out[i] = new(big.Rat).SetFloat64(v)
	if x.program.Inputs[i].Kind == program.Opening && v <= 0 {
		out[i] = inputs[i]
	}
	return out
}

// numbers are those that change sign where claims may change; nil where there is no figure.
func (x *across) numbers(inputs []*big.Rat) (out []float64) {
	if x.runs--; x.runs < 0 {
		return nil
	}
	run := runFormulas(x.program, inputs)
	if run == nil {
		return nil
	}
	add := func(n *exact.Notes) {
		for _, v := range slices.Concat(n.Roots, n.Ways, n.Sides) {
			out = append(out, v.Signed())
		}
	}
	for _, i := range x.claims {
		if n := run.notes[x.program.Claims[i].Step]; n != nil && !x.other.isRefuted(i) {
			add(n)
		}
	}
	if len(out) > mostNumbers {
		return out[:mostNumbers]
	}
	return out
}

// slopes are how the numbers change with an input.
func (x *across) slopes(inputs []*big.Rat, i int, now []float64) []float64 {
	const h = 1e-5
	at, _ := inputs[i].Float64()
	moved := x.numbers(x.with(inputs, i, at+h))
	if len(moved) != len(now) {
		return nil
	}
	for k := range moved {
		if moved[k] = (moved[k] - now[k]) / h; math.Abs(moved[k]) < 1e-7 || math.IsNaN(moved[k]) {
			moved[k] = 0
		}
	}
	return moved
}
