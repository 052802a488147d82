package exact

// Whole numbers: a machine word as long as it fits, else a big.Int. Every operation
// on words is checked for overflow.

import (
	"math"
	"math/big"
	"math/bits"
)

// integer is a whole number, kept in a machine word as long as it fits: k
// counts only while wide is nil, and wide never holds what k could.
type integer struct {
	k    int64
	wide *big.Int
}

// one is the multiplicative unit; the zero value of integer is 0.
var one = integer{k: 1}

func whole(z *big.Int) integer {
	if z.IsInt64() {
		return integer{k: z.Int64()}
	}
	return integer{wide: z}
}

// newWide is room for a number of some words, made at once: most that do not fit a word are
// little longer.
func newWide() *big.Int {
	c := new(struct {
		z     big.Int
		words [4]big.Word
	})
	return c.z.SetBits(c.words[:0])
}

// big is n as a big.Int, which the caller must not change.
func (n integer) big() *big.Int {
	if n.wide != nil {
		return n.wide
	}
	return big.NewInt(n.k)
}

func (n integer) sign() int {
	if n.wide != nil {
		return n.wide.Sign()
	}
	switch {
	case n.k > 0:
		return 1
	case n.k < 0:
		return -1
	}
	return 0
}

func (n integer) isOne() bool { return n.wide == nil && n.k == 1 }

func (n integer) equal(m integer) bool {
	if n.wide == nil || m.wide == nil {
		return n == m
	}
	return n.wide.Cmp(m.wide) == 0
}

func (n integer) add(m integer) integer {
	if n.wide == nil && m.wide == nil {
		if s := n.k + m.k; (s > n.k) == (m.k > 0) {
			return integer{k: s}
		}
	}
	return whole(newWide().Add(n.big(), m.big()))
}

func (n integer) sub(m integer) integer {
	if n.wide == nil && m.wide == nil {
		if s := n.k - m.k; (s < n.k) == (m.k > 0) {
			return integer{k: s}
		}
	}
	return whole(newWide().Sub(n.big(), m.big()))
}

func (n integer) neg() integer {
	if n.wide == nil && n.k != math.MinInt64 {
		return integer{k: -n.k}
	}
	return whole(newWide().Neg(n.big()))
}

func (n integer) abs() integer {
	if n.sign() < 0 {
		return n.neg()
	}
	return n
}

func (n integer) mul(m integer) integer {
	if n.wide == nil && m.wide == nil {
		if p, ok := mul64(n.k, m.k); ok {
			return integer{k: p}
		}
	}
	return whole(newWide().Mul(n.big(), m.big()))
}

// sumOfProducts is ab + cd.
func sumOfProducts(a, b, c, d integer) integer {
	p, q := a.mul(b), c.mul(d)
	if p.wide != nil && q.wide != nil {
		return whole(p.wide.Add(p.wide, q.wide)) // both are new
	}
	return p.add(q)
}

// subBoth is n - m - k.
func (n integer) subBoth(m, k integer) integer {
	if n.wide == nil && m.wide == nil {
		return n.sub(m).sub(k)
	}
	z := newWide().Sub(n.big(), m.big())
	return whole(z.Sub(z, k.big()))
}

// quo is n/m where m divides n.
func (n integer) quo(m integer) integer {
	if n.wide == nil && m.wide == nil && n.k != math.MinInt64 {
		return integer{k: n.k / m.k}
	}
	return whole(newWide().Quo(n.big(), m.big()))
}

// gcd is the greatest common divisor, never negative.
func (n integer) gcd(m integer) integer {
	if n.isOne() || m.isOne() {
		return one
	}
	if n.wide == nil && m.wide == nil && n.k != math.MinInt64 && m.k != math.MinInt64 {
		return integer{k: gcd64(n.k, m.k)}
	}
	return whole(new(big.Int).GCD(nil, nil, n.abs().big(), m.abs().big()))
}

func (n integer) bitLen() int {
	if n.wide != nil {
		return n.wide.BitLen()
	}
	return bits.Len64(magnitude(n.k))
}

// mod is the residue of n in 0..p-1.
func (n integer) mod(p uint64) uint64 {
	var r uint64
	if n.wide == nil {
		r = magnitude(n.k) % p
	} else {
		r = wideMod(n.wide, p)
	}
	if r != 0 && n.sign() < 0 {
		r = p - r
	}
	return r
}

// wideMod is |z| modulo p, digit by digit from the top.
func wideMod(z *big.Int, p uint64) (r uint64) {
	words := z.Bits()
	for i := len(words) - 1; i >= 0; i-- {
		r = remainder(r, words[i], p)
	}
	return r
}

// remainder is r·2^w + d modulo p for a digit d of w bits, where r < p.
func remainder(r uint64, d big.Word, p uint64) uint64 {
	if bits.UintSize == 32 {
		return (r<<32 | uint64(d)) % p // p is below 2^31
	}
	return bits.Rem64(r, uint64(d), p)
}

// residue is the number nearest to 0 that is n modulo m > 0.
func (n integer) residue(m integer) integer {
	r := whole(new(big.Int).Mod(n.big(), m.big()))
	if r.add(r).sub(m).sign() > 0 {
		return r.sub(m)
	}
	return r
}

// sqrt is the square root of n if n is a square.
func (n integer) sqrt() (integer, bool) {
	if n.sign() < 0 {
		return integer{}, false
	}
	if n.wide == nil {
		s := int64(math.Sqrt(float64(n.k)))
		for s*s > n.k || s > 3037000499 {
			s--
		}
		for s < 3037000499 && (s+1)*(s+1) <= n.k {
			s++
		}
		return integer{k: s}, s*s == n.k
	}
	s := new(big.Int).Sqrt(n.wide)
	return whole(s), new(big.Int).Mul(s, s).Cmp(n.wide) == 0
}

// smallPrimes are those whose squares are pulled out of radicands.
var smallPrimes = [...]int64{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89, 97}

// squarePart writes n > 0 as s²·rest. No square of a small prime divides rest; and
// rest is square-free if n is a square times small primes.
func (n integer) squarePart() (s, rest integer) {
	if s, ok := n.sqrt(); ok {
		return s, one
	}
	s = one
	rest = one
	for _, p := range smallPrimes {
		prime := integer{k: p}
		odd := false
		for n.mod(uint64(p)) == 0 {
			n = n.quo(prime)
			if odd = !odd; !odd {
				s = s.mul(prime)
			}
		}
		if odd {
			rest = rest.mul(prime)
		}
	}
	if r, ok := n.sqrt(); ok {
		return s.mul(r), rest
	}
	return s, rest.mul(n)
}

func magnitude(k int64) uint64 {
	if k < 0 {
		return -uint64(k)
	}
	return uint64(k)
}

func gcd64(a, b int64) int64 {
	u, v := magnitude(a), magnitude(b)
	for v != 0 {
		u, v = v, u%v
	}
	return int64(u)
}

// mul64 is a·b, and false when that overflows.
func mul64(a, b int64) (int64, bool) {
	if int64(int32(a)) == a && int64(int32(b)) == b {
		return a * b, true
	}
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}
