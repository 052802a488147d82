package lang

import (
	"math/big"
	"math/rand/v2"
	"slices"

	"trammel/lang/eval"
	"trammel/lang/program"
)

// accidentSeed fixes the other figures in which every build tries its claims.
const accidentSeed = 2

// refuseAccidents makes an error of claims that hold only because of what was
// chosen for the source: a claim is meant of every figure that it describes. They are
// tried in one figure near it and in several far off.
func (r *Result) refuseAccidents() {
	tried := false
	for _, c := range r.program.Claims {
		tried = tried || !c.Here && r.hangs(c.Step)
	}
	if !tried {
		return
	}
	random := rand.New(rand.NewPCG(accidentSeed, stream))
	for _, inputs := range r.others(random) {
		r.refuse(inputs)
	}
}

// refuse makes errors of the claims that fail on other inputs.
func (r *Result) refuse(inputs []*big.Rat) {
	t, err := eval.Try(r.program, inputs, eval.Enclosed)
	if err != nil {
		return
	}
	for i, c := range r.program.Claims {
		if c.Here || !r.Claims[i].Holds || !isFalse(t.Failed[c.Step]) {
			continue
		}
		p := r.Problems.Add(c.Step.Span, "the claim holds only for what was chosen here, and not always")
		p.Help = "give what makes it true, or write: claim here " + c.Text
		r.Claims[i].Holds = false
	}
}

// others are the inputs of other figures of the source, one near and more far
// off, of which some may not exist.
func (r *Result) others(random *rand.Rand) (out [][]*big.Rat) {
	for i := range farTrials {
		inputs := r.far(random, i%2 == 1)
		out = append(out, inputs)
		if wide := r.wide(inputs); wide != nil {
			out = append(out, wide)
		}
	}
	if near := r.otherFigure(); near != nil {
		out = append(out, near)
	}
	return out
}

// far are inputs that may lie anywhere that a source lets them: openings up to
// three times as wide or narrow, points anywhere about, parts of a way all along it
// and, if beyond, past its ends.
func (r *Result) far(random *rand.Rand, beyond bool) []*big.Rat {
	out := make([]*big.Rat, len(r.inputs))
	for i, v := range r.inputs {
		n := random.Int64N(1023) + 1 // of 1024, so fine that no two points meet by it
		switch r.program.Inputs[i].Kind {
		case program.Opening:
			out[i] = new(big.Rat).Mul(v, big.NewRat(n+256, 512))
		case program.Abscissa, program.Ordinate, program.Slope:
			out[i] = new(big.Rat).Add(v, big.NewRat(n-512, 96))
		case program.Fraction:
			out[i] = big.NewRat(n, 1024)
			if beyond {
				out[i] = big.NewRat(3*n-1024, 1024)
			}
		case program.Bearing:
			out[i] = big.NewRat(n%31*11+16, 1)
		case program.Nearby:
			out[i] = big.NewRat(n-512, 1280)
		}
	}
	return out
}

// wide are inputs with all openings wide, each wider than the one before: where
// the points lie anywhere, arcs that chance has opened seldom all meet, and these mostly do.
func (r *Result) wide(inputs []*big.Rat) []*big.Rat {
	out, open := slices.Clone(inputs), new(big.Rat)
	for i, v := range r.inputs {
		if r.program.Inputs[i].Kind == program.Opening && v.Cmp(open) > 0 {
			open = v
		}
	}
	if open.Sign() == 0 {
		return nil
	}
	open = new(big.Rat).Mul(open, big.NewRat(3, 1))
	for i := range out {
		if r.program.Inputs[i].Kind == program.Opening {
			out[i], open = open, new(big.Rat).Mul(open, big.NewRat(11, 10))
		}
	}
	return out
}

// otherFigure is the inputs of another figure of the same source, in short
// fractions, or nil where none is found.
func (r *Result) otherFigure() []*big.Rat {
	random := rand.New(rand.NewPCG(accidentSeed, stream))
	delta := big.NewRat(1, 4)
	for range attempts {
		inputs := r.moved(random, delta, 5)
		if _, err := eval.Try(r.program, inputs, eval.Enclosed); err == nil {
			return inputs
		}
		delta.Mul(delta, big.NewRat(1, 2))
	}
	return nil
}
