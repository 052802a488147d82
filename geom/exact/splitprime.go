package exact

// Cosines modulo primes. Modulo a prime p ≡ 1 (mod n) there are primitive n-th roots of unity
// ζ, and 2cos(2πk/n) can be ζ^k + ζ^-k for any of them.

import (
	"iter"
	"math/big"
	"math/bits"
)

// splitPrime is a prime p ≡ 1 (mod n), with the images of 2cos(2πk/n) under one of the maps
// to the residues modulo p; the others permute them. A residue r is kept as r·2^64
// (Montgomery, Modular multiplication without trial division, Math. Comp. 44 (1985)).
type splitPrime struct {
	p       uint64
	inverse uint64 // of p modulo 2^64
	square  uint64 // 2^128 modulo p
	unit    uint64 // 1
	n       uint64
	cosines []uint64 // by k
}

// primeBits is the length of the greatest of them: below 2^62, sums do not overflow.
const primeBits = 62

// mostSplits is how many of them a field keeps for each n.
const mostSplits = 32

// splitPrimes are those for n, from the greatest.
func (f *Field) splitPrimes(n uint64) iter.Seq[*splitPrime] {
	return func(yield func(*splitPrime) bool) {
		p := uint64(1) << primeBits
		for i := 0; ; i++ {
			if i == len(f.splits[n]) && i < mostSplits {
				f.splits[n] = append(f.splits[n], newSplitPrime(splitPrimeBelow(p, n), n))
			}
			var s *splitPrime
			if i < mostSplits {
				s = f.splits[n][i]
			} else {
				s = newSplitPrime(splitPrimeBelow(p, n), n)
			}
			if p = s.p; !yield(s) {
				return
			}
		}
	}
}

// splitPrimeBelow is the greatest prime ≡ 1 (mod n) below p.
func splitPrimeBelow(p, n uint64) uint64 {
	for p = (p-2)/n*n + 1; ; p -= n {
		if !hasSmallFactor(p) && new(big.Int).SetUint64(p).ProbablyPrime(0) { // certainly, below 2^64
			return p
		}
	}
}

// hasSmallFactor sorts out most of the numbers that are no primes.
func hasSmallFactor(p uint64) bool {
	for d := uint64(3); d < 400; d += 2 {
		if p%d == 0 {
			return true
		}
	}
	return false
}

func newSplitPrime(p, n uint64) *splitPrime {
	s := &splitPrime{p: p, inverse: p, n: n}
	for range 5 { // Newton's iteration: p is its own inverse modulo 8
		s.inverse *= 2 - p*s.inverse
	}
	r := new(big.Int).Lsh(big.NewInt(1), 128)
	s.square = r.Mod(r, new(big.Int).SetUint64(p)).Uint64()
	s.unit = s.mul(1, s.square)
	s.cosines = s.doubleCosines()
	return s
}

// doubleCosines are ζ^k + ζ^-k, by k.
func (s *splitPrime) doubleCosines() []uint64 {
	powers, cosines := make([]uint64, s.n), make([]uint64, s.n)
	zeta := s.rootOfUnity()
	for k, z := 0, s.unit; k < len(powers); k++ {
		powers[k] = z
		z = s.mul(z, zeta)
	}
	for k := range s.n {
		cosines[k] = s.add(powers[k], powers[(s.n-k)%s.n])
	}
	return cosines
}

// rootOfUnity is a primitive n-th root of unity.
func (s *splitPrime) rootOfUnity() uint64 {
	for a := int64(2); ; a++ {
		z := s.power(s.residue(integer{k: a}), (s.p-1)/s.n)
		primitive := true
		for _, q := range primeFactors(s.n) {
			primitive = primitive && s.power(z, s.n/q) != s.unit
		}
		if primitive {
			return z
		}
	}
}

// primeFactors are the primes that divide n.
func primeFactors(n uint64) (factors []uint64) {
	for q := uint64(2); n > 1; q++ {
		if n%q == 0 {
			factors = append(factors, q)
		}
		for n%q == 0 {
			n /= q
		}
	}
	return factors
}

// residue is n modulo p.
func (s *splitPrime) residue(n integer) uint64 { return s.mul(n.mod(s.p), s.square) }

// mul is Montgomery's product a·b/2^64, which keeps the factor 2^64.
func (s *splitPrime) mul(a, b uint64) uint64 {
	hi, lo := bits.Mul64(a, b)
	m, _ := bits.Mul64(lo*s.inverse, s.p)
	return s.sub(hi, m)
}

func (s *splitPrime) add(a, b uint64) uint64 {
	if a += b; a >= s.p {
		a -= s.p
	}
	return a
}

func (s *splitPrime) sub(a, b uint64) uint64 {
	if a < b {
		a += s.p
	}
	return a - b
}

func (s *splitPrime) power(a, e uint64) uint64 {
	r := s.unit
	for ; e > 0; e >>= 1 {
		if e&1 == 1 {
			r = s.mul(r, a)
		}
		a = s.mul(a, a)
	}
	return r
}
