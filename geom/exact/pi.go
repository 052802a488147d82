package exact

// Enclosures of π and of arctangents. The series are cut off where the rest is bounded.

import "math/big"

// enclosePi bounds π, with at least that precision.
func (f *Field) enclosePi(prec uint) enclosure {
	if f.pi.isEverything() || f.pi.prec < prec {
		f.pi = machin(prec)
	}
	return f.pi
}

// machin is π by Machin's formula of 1706, π/4 = 4 arctan 1/5 - arctan 1/239, in whole
// multiples of a unit, 2^-(prec+32). Below ten million bits a series has fewer than 2^22
// terms. Each is off by less than two units, for what is cut off of it and of the power
// before it; the rest of the series is less than one. So (16 + 4)·2^23 < 2^28 units bound
// the error.
func machin(prec uint) enclosure {
	const spare = 32
	scale := new(big.Int).Lsh(big.NewInt(1), prec+spare)
	sum := arctanOfInverse(5, scale)
	sum.Lsh(sum, 2).Sub(sum, arctanOfInverse(239, scale)).Lsh(sum, 2)
	slack := big.NewInt(1 << 28)
	bound := func(z *big.Float, n *big.Int) *big.Float {
		z.SetInt(n)
		return z.SetMantExp(z, -int(prec+spare))
	}
	lo := bound(floor(prec), new(big.Int).Sub(sum, slack))
	return enclosure{lo, bound(ceil(prec), new(big.Int).Add(sum, slack)), prec}
}

// arctanOfInverse is scale·arctan 1/n = scale·Σ (-1)^k/((2k+1)·n^(2k+1)).
func arctanOfInverse(n int64, scale *big.Int) *big.Int {
	sum, square := new(big.Int), big.NewInt(n*n)
	power, term := new(big.Int).Quo(scale, big.NewInt(n)), new(big.Int)
	for k := int64(1); power.Sign() > 0; k += 2 {
		term.Quo(power, big.NewInt(k))
		if k%4 == 1 {
			sum.Add(sum, term)
		} else {
			sum.Sub(sum, term)
		}
		power.Quo(power, square)
	}
	return sum
}

// encloseRat bounds a fraction.
func encloseRat(r *big.Rat, prec uint) enclosure {
	return encloseRatio(whole(r.Num()), whole(r.Denom()), prec)
}

// halvings is how often an arctangent is halved before its series is summed.
const halvings = 8

// arctan halves the angle again and again, by arctan x = 2 arctan x/(1 + √(1 + x²)), and
// then sums Gregory's series. Its terms alternate in sign and shrink, so that the first
// one left out bounds the rest.
func (x enclosure) arctan(prec uint) enclosure {
	if x.isEverything() {
		return x
	}
	unit := encloseInteger(one, prec)
	for range halvings {
		hypotenuse := x.mul(x, prec).add(unit, prec).sqrt(prec)
		x = x.quo(hypotenuse.add(unit, prec), prec)
	}
	power, square := x, x.mul(x, prec).neg()
	sum := x
	for k := int64(3); ; k += 2 {
		power = power.mul(square, prec)
		term := power.quo(encloseInteger(integer{k: k}, prec), prec)
		if isBelow(term.lo, -int(prec)) && isBelow(term.hi, -int(prec)) {
			sum = sum.add(term.join(term.neg()), prec)
			return sum.mul(encloseInteger(integer{k: 1 << halvings}, prec), prec)
		}
		sum = sum.add(term, prec)
	}
}

// join is the least enclosure that holds what x and y hold.
func (x enclosure) join(y enclosure) enclosure {
	x.widen(y.lo, y.hi)
	return x
}
