package lang

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"

	"trammel/geom/exact"
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
	Tried                  // it held in every figure tried, which proves nothing
	Undecided              // no other figure could be made, or decided
)

// String is the verdict in the words of a report.
func (r Reach) String() string {
	return [...]string{"holds", "holds always", "holds here only", "holds in all figures tried", "holds, elsewhere not decided"}[r]
}

// surety is the least number of bits, as a chance of 2^-surety, by which each of
// two ways to "holds always" is wrong: by 2^-60 at most either is.
//
// A claim of equations fails either in all figures of the same sides but for
// those where some polynomial in the free positions is 0, or in none. Values
// drawn alike from n for each position make a polynomial of degree d that is
// not 0 everywhere 0 with a chance of d/n at most (Schwartz 1980, Zippel 1979,
// DeMillo and Lipton 1978); that a value's set may hang on those drawn before
// leaves the proof, which is by induction over the variables, as it is. The degree is not
// assumed: each exact run bounds the sum of the degrees of all that was 0 in it
// (exact.Field.Vanished; for square roots it takes norms). So a run on a grid
// of n steps adds log2(n/d) bits; runs are made until the sum is surety, their
// grids as fine as that takes. A position where the figure does not exist is
// drawn again, and each draw is counted.
const surety = 61

const (
	firstBits = 44  // of the first grid
	mostBits  = 700 // of any grid: past that, "always" is not said
	mostRuns  = 6   // and past so many runs
	attempts  = 40  // to make another figure, by ever smaller moves
	stream    = 0x7472616d6d656c
)

// Reaches tells for each claim of a figure how far it holds; figures is in how many others,
// far off, it was tried. seed fixes the positions of the exact runs.
//
// An equation holds always if two things show it. Exact runs, to within the chance that surety states, show that it holds at
// all positions of what is free that are reached from the figure without a length, an
// angle or a root passing 0 or a choice of meetings going over to another: there it is
// analytic. The formulas (onAllSides) show that it holds beyond as well. What these do not show is
// tried: in figures far off, on all sides of special positions, and across (elsewhere). Inequalities
// are only tried.
func (r *Result) Reaches(seed uint64) (reaches []Reach, figures int) {
	out := make([]Reach, len(r.Claims))
	if r.Figure == nil || !r.anyFree(out) {
		return out, 0
	}
	for i, told := range r.onAllSides(fewLines) {
		if out[i] == Always && !told && r.far().isRefuted(i) {
			out[i] = HereOnly
		}
	}
	sides := r.onAllSides(mostLines)
	doubted := r.prove(rand.New(rand.NewPCG(seed, stream)), out)
	for i, c := range r.program.Claims {
		switch {
		case out[i] != Always || !c.Inequality && !doubted[i] && sides[i]:
		case r.far().figures > 0:
			out[i] = Tried
		default:
			out[i] = Undecided
		}
	}
	if r.other != nil {
		figures = r.other.figures
	}
	return out, figures
}

// anyFree sets the claims that hang on something free to Always, for a start,
// and tells whether there is one.
func (r *Result) anyFree(out []Reach) bool {
	any := false
	for i, c := range r.program.Claims {
		if r.hangs(c.Step) {
			out[i], any = Always, true
		}
	}
	return any
}

// prove makes exact runs near the figure until what holds in all of them is as
// sure as it must be. It tells which claims are not proved, whether or not they hold.
//
// At first angles in degrees are free too: what holds of all angles near 58°
// holds of 58°, and is shown on fractions. What does not is left to runs in which
// they are as they are.
func (r *Result) prove(random *rand.Rand, out []Reach) (doubted []bool) {
	doubted, sample := r.runs(random, out, true)
	if sample != nil && !sample.State.Field.IsLoose() {
		return doubted
	}
	for i, c := range r.program.Claims {
		if out[i] == Always && doubted[i] && !c.Inequality {
			strictly, _ := r.runs(random, out, false)
			for j := range doubted {
				doubted[j] = doubted[j] && strictly[j]
			}
			break
		}
	}
	return doubted
}

// runs are exact runs, with angles in degrees free or as they are; last is one of
// them, if there was any.
func (r *Result) runs(random *rand.Rand, out []Reach, loosely bool) (doubted []bool, last *eval.Trial) {
	doubted = make([]bool, len(out))
	bits, gained := firstBits, 0.0
	for range mostRuns {
		t, draws := r.sample(random, bits, loosely)
		if t == nil {
			break
		}
		last = t
		for i, c := range r.program.Claims {
			doubted[i] = doubted[i] || t.Failed[c.Step] != nil
		}
		if !t.State.Field.IsLoose() {
			r.lower(t, out)
		}
		degree := math.Max(t.Degree, 0) + math.Log2(float64(draws))
		gained += math.Max(float64(bits)-degree, 0)
		if gained >= surety {
			return doubted, last
		}
		if degree > mostBits-surety {
			break
		}
		bits = max(bits, int(math.Ceil(degree+surety-gained))+1)
	}
	for i := range doubted {
		doubted[i] = true
	}
	return doubted, last
}

// lower takes back what a trial refutes.
func (r *Result) lower(t *eval.Trial, out []Reach) {
	for i, c := range r.program.Claims {
		if out[i] == Always && isFalse(t.Failed[c.Step]) {
			out[i] = HereOnly
		}
	}
}

// sample resolves a figure near this one, exactly, on a grid of that many bits, with
// angles in degrees free or as they are;
// draws is how many positions were tried for it. It is nil where none is found,
// or where that would take too much.
func (r *Result) sample(random *rand.Rand, bits int, loosely bool) (t *eval.Trial, draws int) {
	delta := big.NewRat(1, 4)
	numbers := eval.Exactly
	if loosely {
		numbers = func() *exact.Field {
			f := exact.NewField()
			f.Loosen(turner(random, bits))
			return f
		}
	}
	for draws = 1; draws <= attempts; draws++ {
		t, err := eval.Try(r.program, r.moved(random, delta, bits), numbers)
		var spent *exact.Undecided
		if err == nil || errors.As(err, &spent) {
			return t, draws
		}
		delta.Mul(delta, big.NewRat(3, 4))
	}
	return nil, attempts
}

// turner moves a number by a random part of 2^-turning, on a grid of that many bits.
func turner(random *rand.Rand, bits int) func(*big.Rat) *big.Rat {
	return func(near *big.Rat) *big.Rat {
		step := new(big.Rat).SetFrac(gridStep(random, bits), new(big.Int).Lsh(big.NewInt(1), uint(bits+turning)))
		return step.Add(step, near)
	}
}

// turning makes the angles that are freed differ from their own by so little that
// the figure seldom becomes another by that.
const turning = 12

// moved are the figure's inputs, moved.
func (r *Result) moved(random *rand.Rand, delta *big.Rat, bits int) []*big.Rat {
	return r.movedFrom(r.inputs, random, delta, bits)
}

// movedFrom are inputs, each moved by a random part of delta of itself, on a
// grid of that many bits.
func (r *Result) movedFrom(inputs []*big.Rat, random *rand.Rand, delta *big.Rat, bits int) []*big.Rat {
	out := make([]*big.Rat, len(inputs))
	for i, v := range inputs {
		size := v
		if v.Sign() == 0 || r.program.Inputs[i].Kind == program.Bearing {
			size = big.NewRat(1, 1)
		}
		step := new(big.Rat).SetFrac(gridStep(random, bits), new(big.Int).Lsh(big.NewInt(1), uint(bits)))
		out[i] = new(big.Rat).Add(v, step.Mul(step, delta).Mul(step, size))
	}
	return out
}

// gridStep is a whole number from -2^bits to 2^bits, each alike, but not 0:
// every input moves.
func gridStep(random *rand.Rand, bits int) *big.Int {
	n := new(big.Int)
	for range (bits + 31) / 32 {
		n.Lsh(n, 32).Or(n, big.NewInt(int64(random.Uint32())))
	}
	n.Rsh(n, uint((bits+31)/32*32-bits))
	n.Add(n, big.NewInt(1))
	if random.Uint32()&1 == 0 {
		n.Neg(n)
	}
	return n
}

// hangs tells whether a step depends on anything left free.
func (r *Result) hangs(step *program.Step) bool { return r.state.Free[step] }
