package exact

// Enclosures: intervals of big floats, as tight as they are wanted. Each operation
// rounds the lower end down and the upper end up.

import "math/big"

// enclosure holds a number between two big floats of a precision; the zero value holds
// everything.
type enclosure struct {
	lo, hi *big.Float
	prec   uint
}

// floor is a big float that rounds down.
func floor(prec uint) *big.Float {
	return new(big.Float).SetPrec(prec).SetMode(big.ToNegativeInf)
}

// ceil is a big float that rounds up.
func ceil(prec uint) *big.Float {
	return new(big.Float).SetPrec(prec).SetMode(big.ToPositiveInf)
}

func encloseInteger(n integer, prec uint) enclosure {
	z := n.big()
	return enclosure{floor(prec).SetInt(z), ceil(prec).SetInt(z), prec}
}

func encloseRatio(num, den integer, prec uint) enclosure {
	if den.isOne() {
		return encloseInteger(num, prec)
	}
	return encloseInteger(num, prec).quo(encloseInteger(den, prec), prec)
}

// enclose bounds the result of an operation on what x and y hold; y counts for nothing where
// there is but one operand.
func (op operation) enclose(x, y enclosure, prec uint) enclosure {
	switch op {
	case sum:
		return x.add(y, prec)
	case difference:
		return x.add(y.neg(), prec)
	case product:
		return x.mul(y, prec)
	case quotient:
		return x.quo(y, prec)
	case negation:
		return x.neg()
	}
	return x.sqrt(prec)
}

func (x enclosure) isEverything() bool { return x.lo == nil }

// sign is that of every number in x; false if x cannot tell.
func (x enclosure) sign() (int, bool) {
	switch {
	case x.lo == nil:
		return 0, false
	case x.lo.Sign() > 0:
		return 1, true
	case x.hi.Sign() < 0:
		return -1, true
	}
	return 0, x.lo.Sign() == 0 && x.hi.Sign() == 0
}

func (x enclosure) add(y enclosure, prec uint) enclosure {
	if x.lo == nil || y.lo == nil {
		return enclosure{}
	}
	return enclosure{floor(prec).Add(x.lo, y.lo), ceil(prec).Add(x.hi, y.hi), prec}
}

func (x enclosure) neg() enclosure {
	if x.lo == nil {
		return x
	}
	lo := new(big.Float).SetMode(big.ToNegativeInf).Neg(x.hi)
	return enclosure{lo, new(big.Float).SetMode(big.ToPositiveInf).Neg(x.lo), x.prec}
}

func (x enclosure) mul(y enclosure, prec uint) enclosure {
	if x.lo == nil || y.lo == nil {
		return enclosure{}
	}
	if x.lo.Sign() >= 0 && y.lo.Sign() >= 0 {
		return enclosure{floor(prec).Mul(x.lo, y.lo), ceil(prec).Mul(x.hi, y.hi), prec}.guarded()
	}
	z := enclosure{prec: prec}
	for _, a := range []*big.Float{x.lo, x.hi} {
		for _, b := range []*big.Float{y.lo, y.hi} {
			z.widen(floor(prec).Mul(a, b), ceil(prec).Mul(a, b))
		}
	}
	return z.guarded()
}

// mostExponent bounds magnitudes. Beyond 2^(2^31) a big.Float is infinite, and
// below the inverse of that it is 0, which would be taken for exact.
const mostExponent = 1 << 29

// guarded is x, or a panic with *Undecided where its ends near the limits of
// big.Float: so what guarded enclosures are multiplied to is within them.
func (x enclosure) guarded() enclosure {
	if isExtreme(x.lo) || isExtreme(x.hi) {
		panic(&Undecided{Why: "numbers above 2^(2^29) or as far below 1"})
	}
	return x
}

func isExtreme(x *big.Float) bool {
	e := x.MantExp(nil)
	return e > mostExponent || e < -mostExponent
}

// widen makes z hold lo and hi too.
func (z *enclosure) widen(lo, hi *big.Float) {
	if z.lo == nil || lo.Cmp(z.lo) < 0 {
		z.lo = lo
	}
	if z.hi == nil || hi.Cmp(z.hi) > 0 {
		z.hi = hi
	}
}

func (x enclosure) quo(y enclosure, prec uint) enclosure {
	s, ok := y.sign()
	if x.lo == nil || !ok || s == 0 {
		return enclosure{}
	}
	if s < 0 {
		x, y = x.neg(), y.neg()
	}
	under, over := y.hi, y.lo
	if x.lo.Sign() < 0 {
		under = y.lo
	}
	if x.hi.Sign() < 0 {
		over = y.hi
	}
	return enclosure{floor(prec).Quo(x.lo, under), ceil(prec).Quo(x.hi, over), prec}.guarded()
}

// sqrt is for an x that holds a number ≥ 0.
func (x enclosure) sqrt(prec uint) enclosure {
	if x.lo == nil {
		return x
	}
	lo, hi := floor(prec), ceil(prec)
	if x.lo.Sign() > 0 {
		stepTo(lo.Sqrt(x.lo), -1)
	}
	if x.hi.Sign() > 0 {
		stepTo(hi.Sqrt(x.hi), 1)
	}
	return enclosure{lo, hi, prec}
}

// stepTo moves x > 0 by two units of its last place, since big.Float.Sqrt
// promises no direction.
func stepTo(x *big.Float, direction float64) {
	unit := new(big.Float).SetMantExp(big.NewFloat(direction), x.MantExp(nil)-int(x.Prec())+1)
	x.Add(x, unit)
}

// isTight tells whether the width is below 2^-prec of the value.
func (x enclosure) isTight(prec uint) bool {
	if x.lo == nil {
		return false
	}
	width := new(big.Float).Sub(x.hi, x.lo)
	if width.Sign() == 0 {
		return true
	}
	smaller := x.lo
	if x.hi.Sign() < 0 {
		smaller = x.hi
	}
	if s, ok := x.sign(); !ok || s == 0 {
		return false
	}
	return width.MantExp(nil)+int(prec) < smaller.MantExp(nil)
}

// interval is x in floats.
func (x enclosure) interval() interval {
	if x.lo == nil {
		return everything
	}
	return bigInterval(x.lo, x.hi)
}
