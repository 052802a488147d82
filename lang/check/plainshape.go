package check

import (
	"math"
	"math/big"

	"trammel/lang/program"
)

// plainLengths6 are the sides AB, BC, CD, DA and the diagonals AC, BD of plain quadrilaterals,
// in tenths: what is left to chance of one keeps to what is given as it does there. The
// plain angles are at the kinds themselves.
var plainLengths6 = map[string][6]int64{
	"rectangle":           {70, 46, 70, 46, 84, 84},
	"parallelogram":       {70, 40, 70, 40, 93, 66},
	"rhombus":             {50, 50, 50, 50, 85, 53},
	"kite":                {40, 65, 65, 40, 70, 73},
	"trapezium":           {70, 51, 32, 43, 59, 73},
	"isosceles trapezium": {70, 43, 32, 43, 64, 64},
	"quadrilateral":       {75, 29, 43, 54, 76, 63},
}

var elements6 = [6]element{{0, 1}, {1, 2}, {2, 3}, {0, 3}, {0, 2}, {1, 3}}

// knownLengths are those that are given of a quadrilateral, and how long they are
// together in a plain one.
type knownLengths struct {
	of    []*expr
	plain int64 // tenths
}

// measure finds what is known of a quadrilateral before anything of it is left to chance.
func (sh *shape) measure(isosceles bool) {
	kind := sh.kind
	if isosceles {
		kind = "isosceles " + kind
	}
	for k, e := range elements6 {
		if v := sh.datum(e); v != nil {
			sh.lengths.of = append(sh.lengths.of, v)
			sh.lengths.plain += plainLengths6[kind][k]
		}
	}
}

// chanceSide leaves a side to chance: so long if nothing is known, else in proportion to
// the lengths that are.
func (sh *shape) chanceSide(e element, plain *big.Rat) {
	sh.whole().chosen = true
	k := sh.whole().lengths
	if k.plain == 0 {
		in := sh.s.input(sh.n, program.Opening, sh.describe(e), plain)
		sh.set(e, expr{node: sh.n, dim: 1, value: func(st *program.State) (program.Amount, error) {
			return pure(st.Input(in)), nil
		}})
		return
	}
	size, _ := plain.Float64()
	in := sh.s.input(sh.n, program.Fraction, sh.describe(e), rat(int64(math.Round(1000*size/float64(k.plain))), 100))
	sh.set(e, expr{node: sh.n, dim: 1, value: func(st *program.State) (program.Amount, error) {
		sum := st.Field.Int(0)
		for _, v := range k.of {
			x, err := positive(st, v)
			if err != nil {
				return nil, err
			}
			sum = sum.Add(x)
		}
		return pure(sum.Mul(st.Input(in))), nil
	}})
}
