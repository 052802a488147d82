package lang

import (
	"math/big"
	"math/rand/v2"

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
	t, err := eval.Try(r.program, inputs, false)
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
		out = append(out, r.far(random, i%2 == 1))
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
		n := random.Int64N(31) + 1 // of 32
		switch r.program.Inputs[i].Kind {
		case program.Opening:
			out[i] = new(big.Rat).Mul(v, big.NewRat(n+8, 16))
		case program.Abscissa, program.Ordinate, program.Slope:
			out[i] = new(big.Rat).Add(v, big.NewRat(n-16, 3))
		case program.Fraction:
			out[i] = big.NewRat(n, 32)
			if beyond {
				out[i] = big.NewRat(3*n-32, 32)
			}
		case program.Bearing:
			out[i] = big.NewRat(n*11+5, 1)
		case program.Nearby:
			out[i] = big.NewRat(n-16, 40)
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
		if _, err := eval.Try(r.program, inputs, false); err == nil {
			return inputs
		}
		delta.Mul(delta, big.NewRat(1, 2))
	}
	return nil
}
