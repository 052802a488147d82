package check

import (
	"math"
	"math/big"
	"slices"

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

// plainAngles4 are the angles of plain quadrilaterals that are found by a survey. The
// quadrilateral is plainly irregular: no two sides are nearly parallel, either.
var plainAngles4 = map[string][4]int64{
	"trapezium":           {77, 57, 123, 103},
	"isosceles trapezium": {64, 64, 116, 116},
	"quadrilateral":       {56, 80, 122, 102},
	"parallelogram":       {68, 112, 68, 112},
	"rhombus":             {64, 116, 64, 116},
	"rectangle":           {90, 90, 90, 90},
}

// kindOf is a shape's kind, with the word isosceles where it is that.
func (sh *shape) kindOf() string {
	if sh.kind == "trapezium" && sh.same(sideOf(0, 3), sideOf(1, 2)) {
		return "isosceles trapezium"
	}
	return sh.kind
}

// chance leaves an element of a quadrilateral to chance, near what it is in a sketch, or
// without one in a plain quadrilateral.
func (sh *shape) chance(e element, k *sketch) {
	switch {
	case e.b < 0 && k != nil:
		sh.chanceAngle(e, sh.unlikeOthers(e, bend(&k.at, e.a)*180/math.Pi))
	case e.b < 0:
		sh.chanceAngle(e, sh.unlikeOthers(e, float64(plainAngles4[sh.kindOf()][e.a])))
	case k != nil && k.known > 0:
		sh.chancePart(e, long(&k.at, e)/k.known)
	case k != nil:
		sh.chanceSide(e, rat(int64(math.Round(10*long(&k.at, e))), 10))
	default:
		sh.chanceSide(e, rat(plainLengths6[sh.kindOf()][slices.Index(elements6[:], e)], 10))
	}
}

// unlikeOthers is near so many degrees, and plainly not as large as an angle that is
// known already.
func (sh *shape) unlikeOthers(e element, degrees float64) int64 {
	d := int64(math.Round(degrees))
	for i := range 4 {
		v := sh.datum(angleAt(i))
		if v == nil || v.rat == nil || sh.same(e, angleAt(i)) {
			continue
		}
		if other, _ := v.rat.Float64(); math.Abs(other-degrees) < 4 {
			d += 6
		}
	}
	return d
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
	sh.chancePart(e, 10*size/float64(k.plain))
}

// chancePart leaves a side to chance as a part of all lengths that are known.
func (sh *shape) chancePart(e element, part float64) {
	sh.whole().chosen = true
	k := sh.whole().lengths
	in := sh.s.input(sh.n, program.Fraction, sh.describe(e), rat(int64(math.Round(100*part)), 100))
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
