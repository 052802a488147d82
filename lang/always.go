package lang

import (
	"errors"
	"math/big"
	"math/rand/v2"

	"trammel/lang/eval"
	"trammel/lang/program"
)

// Reach is how far a claim's truth goes.
type Reach uint8

// The reaches.
const (
	Fixed     Reach = iota // the claim hangs on nothing that is left free
	Always                 // it holds wherever what is free lies
	HereOnly               // it holds in this figure, and fails in another
	Tried                  // an inequality that held in every figure tried
	Undecided              // no other figure could be made, or decided
)

// String is the verdict in the words of a report.
func (r Reach) String() string {
	return [...]string{"holds", "holds always", "holds here only", "holds in all figures tried", "holds, elsewhere not decided"}[r]
}

// A claim with an equation in it fails on a set where some polynomial in the
// free positions is 0, or everywhere. At positions drawn from a grid of 2^20
// steps a polynomial of degree d that is not 0 everywhere is 0 with a chance of
// at most d/2^20 (Schwartz 1980, Zippel 1979): for degrees up to 2^8, five
// independent draws leave a wrong "always" a chance of 2^-60.
const (
	samples  = 5
	gridBits = 20
	attempts = 40 // to make another figure, by ever smaller moves
	stream   = 0x7472616d6d656c
)

// Reaches tells for each claim of a figure how far it holds, by resolving the
// figure anew, exactly, at other positions of what the source leaves free.
// Sides that the source names are kept; seed fixes the positions.
func (r *Result) Reaches(seed uint64) []Reach {
	out := make([]Reach, len(r.Claims))
	if r.Figure == nil {
		return out
	}
	free := false
	for i, c := range r.program.Claims {
		if r.hangs(c.Step) {
			out[i], free = Always, true
		}
	}
	if !free {
		return out
	}
	random := rand.New(rand.NewPCG(seed, stream))
	for range samples {
		if !r.sample(random, out) {
			break
		}
	}
	for i, c := range r.program.Claims {
		if out[i] == Always && c.Inequality {
			out[i] = Tried
		}
	}
	return out
}

// accidentSeed fixes the one other figure in which every build tries its claims.
const accidentSeed = 2

// refuseAccidents makes an error of claims that hold only because of what was
// chosen for the source: a claim is meant of every figure that it describes.
// Equations are tried in one other figure, inequalities in several, far apart.
func (r *Result) refuseAccidents() {
	equations, inequalities := false, false
	for _, c := range r.program.Claims {
		if !c.Here && r.hangs(c.Step) {
			equations = equations || !c.Inequality
			inequalities = inequalities || c.Inequality
		}
	}
	if equations {
		if inputs := r.otherFigure(); inputs != nil {
			r.refuse(inputs, false)
		}
	}
	if inequalities {
		random := rand.New(rand.NewPCG(accidentSeed, stream))
		for range farTrials {
			r.refuse(r.far(random), true)
		}
	}
}

// refuse makes errors of the claims of a kind that fail on other inputs.
func (r *Result) refuse(inputs []*big.Rat, inequalities bool) {
	failed, err := eval.Claims(r.program, inputs, false)
	if err != nil {
		return
	}
	for i, c := range r.program.Claims {
		var f *program.Fault
		if c.Here || c.Inequality != inequalities || !r.Claims[i].Holds || !errors.As(failed[c.Step], &f) || !f.False {
			continue
		}
		p := r.Problems.Add(c.Step.Span, "the claim holds only for what was chosen here, and not always")
		p.Help = "give what makes it true, or write: claim here " + c.Text
		r.Claims[i].Holds = false
	}
}

// farTrials is how many figures an inequality is tried in.
const farTrials = 12

// far are inputs that may lie anywhere that a source lets them: openings up to
// three times as wide or narrow, points anywhere about, parts of a way all along it.
func (r *Result) far(random *rand.Rand) []*big.Rat {
	out := make([]*big.Rat, len(r.inputs))
	for i, v := range r.inputs {
		n := random.Int64N(31) + 1 // of 32
		switch r.program.Inputs[i].Kind {
		case program.Opening:
			out[i] = new(big.Rat).Mul(v, big.NewRat(n+8, 16))
		case program.Coordinate:
			out[i] = new(big.Rat).Add(v, big.NewRat(n-16, 3))
		case program.Fraction:
			out[i] = big.NewRat(n, 32)
		case program.Bearing:
			out[i] = big.NewRat(n*360, 33)
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
		if _, err := eval.Claims(r.program, inputs, false); err == nil {
			return inputs
		}
		delta.Mul(delta, big.NewRat(1, 2))
	}
	return nil
}

// sample resolves one other figure and lowers the reach of the claims that fail in it.
func (r *Result) sample(random *rand.Rand, out []Reach) bool {
	delta := big.NewRat(1, 4)
	for range attempts {
		inputs := r.moved(random, delta, gridBits)
		failed, err := eval.Claims(r.program, inputs, true)
		if err != nil {
			delta.Mul(delta, big.NewRat(3, 4))
			continue
		}
		for i, c := range r.program.Claims {
			if e := failed[c.Step]; e != nil && out[i] == Always {
				out[i] = HereOnly
				var f *program.Fault
				if !errors.As(e, &f) || !f.False {
					out[i] = Undecided
				}
			}
		}
		return true
	}
	for i := range out {
		if out[i] == Always {
			out[i] = Undecided
		}
	}
	return false
}

// moved are the inputs, each moved by a random part of delta of itself, on a
// grid of that many bits.
func (r *Result) moved(random *rand.Rand, delta *big.Rat, bits int) []*big.Rat {
	out := make([]*big.Rat, len(r.inputs))
	for i, v := range r.inputs {
		n := random.Int64N(1<<(bits+1)) - 1<<bits
		if n >= 0 {
			n++ // every input moves
		}
		step := new(big.Rat).SetFrac64(n, 1<<bits)
		step.Mul(step, delta)
		size := v
		if v.Sign() == 0 {
			size = big.NewRat(1, 1)
		}
		out[i] = new(big.Rat).Add(v, step.Mul(step, size))
	}
	return out
}

// hangs tells whether a step depends on anything left free.
func (r *Result) hangs(step *program.Step) bool { return r.state.Free[step] }
