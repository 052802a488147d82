package exact

import "math/big"

// Turn is so many times the angle from the x axis anticlockwise to (X, Y), which
// lies from 0° up to 360°.
type Turn struct {
	Times *big.Rat
	X, Y  *Real
}

// SumOfTurns is the sign of a sum of turns and degrees, of which there may be any
// number, whole or not, and its size in radians; the sign is 0 where enclosures cannot
// tell it, as where the sum is 0. A field whose angles have been loosened, or that is
// rough, cannot tell.
func (f *Field) SumOfTurns(turns []Turn, degrees *big.Rat) (sign int, radians float64) {
	if f.rough || f.IsLoose() {
		return 0, 0
	}
	for prec := uint(128); prec <= mostBits; prec *= 2 {
		ratio := new(big.Rat).Quo(degrees, big.NewRat(180, 1))
		sum := encloseRat(ratio, prec).mul(f.enclosePi(prec), prec)
		for _, t := range turns {
			sum = sum.add(t.enclose(f, prec), prec)
		}
		if s, ok := sum.sign(); ok {
			radians, _ = sum.lo.Float64()
			return s, radians
		}
	}
	return 0, 0
}

// enclose bounds a turn in radians. In the quadrant that begins n right angles
// on, the angle is n·π/2 + π/4 + arctan (y - x)/(y + x).
func (t Turn) enclose(f *Field, prec uint) enclosure {
	x, y, eighths := t.X, t.Y, int64(1)
	for x.Sign() <= 0 || y.Sign() < 0 {
		x, y = y, x.Neg()
		eighths += 2
	}
	u, v := x.enclose(prec), y.enclose(prec)
	rest := v.add(u.neg(), prec).quo(v.add(u, prec), prec).arctan(prec)
	start := encloseRat(big.NewRat(eighths, 4), prec).mul(f.enclosePi(prec), prec)
	return start.add(rest, prec).mul(encloseRat(t.Times, prec), prec)
}
