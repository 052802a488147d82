package exact

// Numbers by enclosures: as floats, as tight as they are wanted, and as what an
// undecided one looks like. Nothing here decides what a user is told.

import (
	"fmt"
	"math"
	"math/big"
)

// Bounds is an interval of floats that holds x, cheap and maybe wide.
func (x *Real) Bounds() (lo, hi float64) { return x.bounds.lo, x.bounds.hi }

// enclose bounds x from its operands, at a working precision: the more these cancel, the
// wider the result. The tightest so far is kept.
func (x *Real) enclose(prec uint) enclosure {
	if x.op == ratio {
		return encloseRatio(integer{k: x.num}, integer{k: x.den}, prec)
	}
	if x.near.isEverything() || x.near.prec < prec {
		if z := x.workOutEnclosure(prec); !z.isEverything() {
			x.near = z
		} else {
			return z
		}
	}
	return x.near
}

// workOutEnclosure is enclose, whatever is known.
func (x *Real) workOutEnclosure(prec uint) enclosure {
	if x.x == nil {
		return x.exact.enclose(prec)
	}
	var y enclosure
	if x.y != nil {
		y = x.y.enclose(prec)
	}
	return x.op.enclose(x.x.enclose(prec), y, prec)
}

// Enclose is an interval around x, of a relative width below 2^-prec. It
// decides whether x is 0 if that is needed, and so may panic with *Undecided.
func (x *Real) Enclose(prec uint) (lo, hi *big.Float) {
	for work := prec + 32; ; work += work / 2 {
		z := x.enclose(work)
		if z.isTight(prec) {
			return new(big.Float).Copy(z.lo), new(big.Float).Copy(z.hi)
		}
		if _, ok := z.sign(); !ok && x.Sign() == 0 {
			return new(big.Float), new(big.Float)
		}
	}
}

// Float is x to within a few units in the last place; it decides nothing.
func (x *Real) Float() float64 {
	if x.isRatio() {
		return float64(x.num) / float64(x.den)
	}
	if f, ok := x.bounds.middle(); ok {
		return f
	}
	if x.field.rough {
		return x.bounds.lo + (x.bounds.hi-x.bounds.lo)/2
	}
	f := floatOf(x.enclose)
	x.bounds = x.bounds.meet(x.near.interval())
	return f
}

// Near is x to within 10^-9 of itself or of 1, whichever is more: for choosing
// only. Unlike Float it does not work out how near to 0 a number is that may be 0.
func (x *Real) Near() float64 {
	mid := x.bounds.lo + (x.bounds.hi-x.bounds.lo)/2
	if x.bounds.hi-x.bounds.lo <= 1e-9*math.Max(1, math.Abs(mid)) {
		return mid
	}
	return x.Float()
}

// floatOf is the float nearest to what tighter and tighter enclosures hold, or next to
// that.
func floatOf(enclose func(uint) enclosure) float64 {
	for prec := uint(64); ; prec *= 4 {
		if z := enclose(prec); z.isTight(54) || z.isTiny() {
			f, _ := z.lo.Float64()
			return f + 0 // never -0
		}
	}
}

// middle is the midpoint of a narrow interval, at most 4 units in the last
// place from any of its numbers.
func (x interval) middle() (float64, bool) {
	if x.lo >= -math.SmallestNonzeroFloat64 && x.hi <= math.SmallestNonzeroFloat64 {
		return 0, true
	}
	if x.hi-x.lo > 0x1p-50*min(math.Abs(x.lo), math.Abs(x.hi)) || math.IsInf(x.hi-x.lo, 0) {
		return 0, false
	}
	return x.lo + (x.hi-x.lo)/2, true
}

// isTiny tells whether every number in x rounds to the float 0.
func (x enclosure) isTiny() bool {
	const below = -1075 // half of the smallest float
	return x.lo != nil && isBelow(x.lo, below) && isBelow(x.hi, below)
}

func isBelow(x *big.Float, exponent int) bool {
	return x.Sign() == 0 || x.MantExp(nil) <= exponent
}

// approximately says what an x that could not be decided looks like, as the difference of
// two others; nothing if a long enclosure does not tell.
func (x *Real) approximately() string {
	z := x.enclose(mostBits)
	if z.isEverything() {
		return ""
	}
	if s, ok := z.sign(); ok && s != 0 {
		return fmt.Sprintf("%.6g", z.lo)
	}
	if decimals := -z.exponent() * 301 / 1000; decimals > 0 {
		return fmt.Sprintf("equal: they agree to %d decimals", decimals)
	}
	if x.op == sum || x.op == difference { // of large numbers
		if digits := (x.x.enclose(mostBits).exponent() - z.exponent()) * 301 / 1000; digits > 0 {
			return fmt.Sprintf("equal: they agree to %d digits", digits)
		}
	}
	return ""
}

// exponent is the least e with every number in x below 2^e in size.
func (x enclosure) exponent() int {
	switch {
	case x.lo.Sign() == 0:
		return x.hi.MantExp(nil)
	case x.hi.Sign() == 0:
		return x.lo.MantExp(nil)
	}
	return max(x.lo.MantExp(nil), x.hi.MantExp(nil))
}
