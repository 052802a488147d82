package exact

// Sums of angles by enclosures: which of two angles is greater, where that is not a matter
// of cosines, as the sign of 2·∠ABC - ∠DEF - 40° is not.

import "math/big"

// Turn is so many times the angle from the x axis anticlockwise to (X, Y), which lies from
// 0° up to 360°. X and Y are not both 0.
type Turn struct {
	Times *big.Rat
	X, Y  *Real
}

// SumOfTurns is the sign of a sum of turns and degrees, of which there may be any number,
// whole or not, and the size of the sum in radians. A sign of 0 says that enclosures do not
// tell it: that never proves the sum to be 0. Nor can a field tell it that is rough, or
// has freed angles.
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

// enclose bounds a turn in radians. In the quadrant that begins n right angles on, turned
// back to the first, the angle is n·π/2 + π/4 + arctan (y - x)/(y + x).
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
