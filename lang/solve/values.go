package solve

import (
	"math/big"

	"trammel/lang/program"
)

func rat(a, b int64) *big.Rat { return big.NewRat(a, b) }

// openings are tried in this order: middling sizes and short decimals first.
var openings = []*big.Rat{
	rat(3, 1), rat(5, 2), rat(7, 2), rat(4, 1), rat(2, 1), rat(9, 2), rat(5, 1), rat(3, 2), rat(11, 2), rat(6, 1),
	rat(14, 5), rat(16, 5), rat(7, 1), rat(8, 1), rat(1, 1), rat(9, 1), rat(10, 1), rat(12, 1), rat(15, 1), rat(20, 1), rat(1, 2), rat(30, 1),
}

// shifts move a coordinate, in quarters of the scale.
var shifts = []int64{2, -2, 4, -4, 7, -7, 12, -12, 20, -20, 30, -30}

// parts are hundredths of a way; the last ones lie beyond its ends.
var parts = []int64{40, 60, 27, 73, 52, 15, 85, 35, 66, 8, 92, 130, -30, 160, 250}

// bearings are degrees, none of them a multiple of 15.
var bearings = []int64{52, 35, 68, 112, 131, 154, 202, 237, 292, 322, 19, 82, 11, 168}

// values are what an input may be, the default first.
func (s *search) values(in int) []*big.Rat {
	input := s.p.Inputs[in]
	out := []*big.Rat{input.Default}
	switch input.Kind {
	case program.Opening:
		out = out[:0]
		for _, v := range openings {
			out = append(out, new(big.Rat).Mul(v, s.scale))
		}
	case program.Coordinate:
		for _, d := range shifts {
			out = append(out, new(big.Rat).Add(input.Default, new(big.Rat).Mul(rat(d, 4), s.scale)))
		}
		out = append(out, new(big.Rat).Neg(input.Default))
	case program.Fraction:
		for _, v := range parts {
			out = append(out, rat(v, 100))
		}
	case program.Bearing:
		for _, v := range bearings {
			out = append(out, rat(v, 1))
		}
	}
	return out
}
