package exact

// Decimals, correctly rounded at any length.

import (
	"math/big"
	"strconv"
	"strings"
)

// Decimal is x correctly rounded to that many places after the point, halves
// away from zero. Whether x is exactly a half is decided, never guessed, and
// so Decimal may panic with *Undecided.
func (x *Real) Decimal(places int) string {
	if x.field.rough {
		return strconv.FormatFloat(x.Float()+0, 'f', places, 64)
	}
	return pointed(x.roundedTo(places), places)
}

// roundedTo is the whole number nearest to x·10^places.
func (x *Real) roundedTo(places int) *big.Int {
	scale := powerOfTen(places)
	if x.isRatio() {
		return nearest(new(big.Rat).Mul(big.NewRat(x.num, x.den), new(big.Rat).SetInt(scale)))
	}
	lo, hi := scaled(x.enclose, scale, startingBits(places))
	if lo.Cmp(hi) == 0 {
		return lo
	}
	// The enclosure holds the half between lo and hi, and x may be just that.
	half := new(big.Rat).SetFrac(new(big.Int).Add(lo, hi), new(big.Int).Lsh(scale, 1))
	switch s := x.Cmp(x.field.Rat(half)); {
	case s < 0, s == 0 && half.Sign() < 0:
		return lo
	}
	return hi
}

func powerOfTen(n int) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}

// startingBits is a precision likely to be enough for that many decimals.
func startingBits(places int) uint { return uint(places)*10/3 + 64 }

// scaled rounds both ends of an enclosure, times a scale, to whole numbers, at most
// 1 apart.
func scaled(enclose func(uint) enclosure, scale *big.Int, prec uint) (lo, hi *big.Int) {
	for ; ; prec *= 2 {
		z := enclose(prec)
		if z.isEverything() {
			continue
		}
		lo, hi = nearestTo(z.lo, scale), nearestTo(z.hi, scale)
		if new(big.Int).Sub(hi, lo).Cmp(big.NewInt(1)) <= 0 {
			return lo, hi
		}
	}
}

// nearestTo is the whole number nearest to x·scale.
func nearestTo(x *big.Float, scale *big.Int) *big.Int {
	r, _ := x.Rat(nil)
	return nearest(r.Mul(r, new(big.Rat).SetInt(scale)))
}

// nearest rounds to a whole number, halves away from zero.
func nearest(r *big.Rat) *big.Int {
	twice := new(big.Int).Lsh(r.Num(), 1)
	if r.Sign() < 0 {
		twice.Sub(twice, r.Denom())
	} else {
		twice.Add(twice, r.Denom())
	}
	return twice.Quo(twice, new(big.Int).Lsh(r.Denom(), 1))
}

// pointed writes n/10^places.
func pointed(n *big.Int, places int) string {
	digits := new(big.Int).Abs(n).String()
	if missing := places + 1 - len(digits); missing > 0 {
		digits = strings.Repeat("0", missing) + digits
	}
	if places > 0 {
		point := len(digits) - places
		digits = digits[:point] + "." + digits[point:]
	}
	if n.Sign() < 0 {
		return "-" + digits
	}
	return digits
}
