package lang

import (
	"math"
	"math/big"
	"math/rand/v2"

	"trammel/geom"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// elsewhere is what other figures of the source, far off, say of its claims. They are
// found once, and all who ask of figures far off ask of these.
type elsewhere struct {
	figures int            // that stand
	refuted [][][]*big.Rat // by claim, inputs with which it fails
	cleared []int          // by claim, figures in which it seemed to fail in floats only
}

// The other figures. Each is worked out in floats, which is quick, and one in which a
// claim seems to fail by enclosures too: by these alone a claim is refuted.
const (
	elsewhereSeed = 2
	mostFigures   = 200    // at random, that stand
	randomSteps   = 24_000 // in all of these together
	aroundSteps   = 12_000 // around special positions
	mostRefuting  = 8      // figures of one claim, of which the most legible is drawn
	mostCleared   = 40     // of one claim: floats are no use for it, and enclosures had their say
)

// far finds the other figures of the source: at random, and on all sides of special
// positions, where a length or an angle of a claim may come to be taken the other way
// in a region so small that chance does not find it.
func (r *Result) far() *elsewhere {
	if r.other == nil {
		n := len(r.program.Claims)
		r.other = &elsewhere{refuted: make([][][]*big.Rat, n), cleared: make([]int, n)}
		r.other.figures = r.lookFar()
		r.lookAround()
		r.lookAcross()
	}
	return r.other
}

func (r *Result) lookFar() (figures int) {
	random := rand.New(rand.NewPCG(elsewhereSeed, stream))
	size, _ := spread(r.state)
	for draw, left := 0, randomSteps; left > 0 && figures < mostFigures; draw++ {
		t, inputs, work := eval.Fit(r.program, r.draw(random, draw, size))
		if left -= work; t != nil {
			r.refute(t, inputs)
			figures++
		}
	}
	return figures
}

// lookAround tries figures hardly and a little off special positions.
func (r *Result) lookAround() {
	left := aroundSteps / (len(r.program.Steps) + 1)
	for _, part := range []int64{1 << 20, 1 << 6} {
		for _, p := range r.specials() {
			for _, inputs := range r.around(p, big.NewRat(1, part)) {
				if left--; left < 0 {
					return
				}
				r.stands(inputs)
			}
		}
	}
}

// stands tells whether there is such a figure, and notes which claims fail in it.
func (r *Result) stands(inputs []*big.Rat) bool {
	t, err := eval.Try(r.program, inputs, eval.Roughly)
	if err == nil {
		r.refute(t, inputs)
	}
	return err == nil
}

// refute notes the claims that fail in a rough trial, and in enclosures too.
func (r *Result) refute(rough *eval.Trial, inputs []*big.Rat) {
	var sure *eval.Trial
	merged, asked := false, false
	for i, c := range r.program.Claims {
		if !isFalse(rough.Failed[c.Step]) {
			continue
		}
		if !asked {
			merged, asked = r.merges(rough.State), true
		}
		if merged || len(r.other.refuted[i]) == mostRefuting || r.other.cleared[i] == mostCleared {
			continue
		}
		if sure == nil {
			t, err := eval.Try(r.program, inputs, eval.Enclosed)
			if err != nil {
				return
			}
			sure = t
		}
		if isFalse(sure.Failed[c.Step]) {
			r.other.refuted[i] = append(r.other.refuted[i], inputs)
		} else {
			r.other.cleared[i]++
		}
	}
}

// merges tells whether points that are apart in the figure are one in a run of others: there
// an equation may mean nothing, which is no reason against it.
func (r *Result) merges(st *program.State) bool {
	size, _ := spread(st)
	own, there := r.named(r.state), r.named(st)
	for i, p := range own {
		for j, q := range own[:i] {
			if math.Hypot(p[0]-q[0], p[1]-q[1]) > 1e-9 && math.Hypot(there[i][0]-there[j][0], there[i][1]-there[j][1]) < 1e-9*size {
				return true
			}
		}
	}
	return false
}

// named are the places of the points that have a name in a run.
func (r *Result) named(st *program.State) (out [][2]float64) {
	for i, slot := range r.program.Slots {
		if _, ok := r.state.Values[i].(geom.Point); !ok || !slot.Top || slot.Name == "" {
			continue
		}
		at := [2]float64{math.NaN(), math.NaN()}
		if p, ok := st.Values[i].(geom.Point); ok {
			at = [2]float64{p.X.Float(), p.Y.Float()}
		}
		out = append(out, at)
	}
	return out
}

// draw are inputs of another figure, which may not exist: in turn far off, far off with
// all openings wide, and about as far off as the figure is large; some of each half as far, or up to
// sixteen times; each with all inputs moved, and with half of them.
func (r *Result) draw(random *rand.Rand, draw int, size float64) []*big.Rat {
	kind, half := draw%5, draw/5%2 == 1
	out := r.anywhere(random, kind%2 == 1, size)
	if kind == 4 {
		out = r.moved(random, big.NewRat(int64(draw/5%4+1), 4), 10)
	}
	if kind == 2 || kind == 3 {
		r.widen(out)
	}
	if draw%3 == 2 {
		r.stretch(out, draw/3%6-1)
	}
	if half && len(out) > 1 {
		for i := range out {
			if random.Uint32()&1 == 0 {
				out[i] = r.inputs[i]
			}
		}
	}
	return out
}

// stretch makes moves 2^by times as large, of points and measurements.
func (r *Result) stretch(inputs []*big.Rat, by int) {
	times := new(big.Rat).SetFloat64(math.Ldexp(1, by))
	for i, v := range r.inputs {
		switch r.program.Inputs[i].Kind {
		case program.Abscissa, program.Ordinate, program.Nearby, program.Fraction:
			move := new(big.Rat).Sub(inputs[i], v)
			inputs[i] = move.Add(move.Mul(move, times), v)
		}
	}
}

// anywhere are inputs that may lie anywhere that a source lets them: openings from half to
// two and a half times as wide, points all over the figure's size about, measurements
// from a fourth to four times as large, parts of a way all along it; and, if beyond, past its ends.
func (r *Result) anywhere(random *rand.Rand, beyond bool, size float64) []*big.Rat {
	out := make([]*big.Rat, len(r.inputs))
	span := big.NewRat(int64(max(size, 5))+1, 512)
	for i, v := range r.inputs {
		n := random.Int64N(1023) + 1 // of 1024, so fine that no two points meet by it
		switch r.program.Inputs[i].Kind {
		case program.Opening:
			out[i] = new(big.Rat).Mul(v, big.NewRat(n+256, 512))
		case program.Abscissa, program.Ordinate:
			step := new(big.Rat).Mul(span, big.NewRat(n-512, 1))
			out[i] = step.Add(step, v)
		case program.Slope:
			out[i] = new(big.Rat).Add(v, big.NewRat(n-512, 96))
		case program.Fraction:
			out[i] = big.NewRat(n, 1024)
			if beyond {
				out[i] = big.NewRat(3*n-1024, 1024)
			}
		case program.Bearing:
			out[i] = big.NewRat(n%31*11+16, 1)
			if !beyond { // as an angle of a shape
				out[i] = big.NewRat(n%89*2+1, 1)
			}
		case program.Nearby:
			out[i] = nearby(n, beyond)
		}
	}
	return out
}

// nearby is by what part of itself a measurement is another: from a fourth of it to
// four times as much; or up to twice itself either way, for one that may be negative.
func nearby(n int64, negative bool) *big.Rat {
	switch {
	case negative:
		return big.NewRat(n-512, 256)
	case n < 512:
		return big.NewRat(3*(n-512), 2048)
	}
	return big.NewRat(3*(n-512), 512)
}

// widen makes all openings wide, each wider than the one before: where the points lie
// anywhere, arcs that chance has opened seldom all meet, and these mostly do.
func (r *Result) widen(inputs []*big.Rat) {
	open := new(big.Rat)
	for i, v := range r.inputs {
		if r.program.Inputs[i].Kind == program.Opening && v.Cmp(open) > 0 {
			open = v
		}
	}
	open = new(big.Rat).Mul(open, big.NewRat(3, 1))
	for i := range inputs {
		if r.program.Inputs[i].Kind == program.Opening {
			inputs[i], open = open, new(big.Rat).Mul(open, big.NewRat(11, 10))
		}
	}
}

// isRefuted tells whether a claim fails far off.
func (e *elsewhere) isRefuted(claim int) bool { return len(e.refuted[claim]) > 0 }
