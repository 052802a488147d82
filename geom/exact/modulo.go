package exact

// Arithmetic modulo primes a little above 2^30.

import (
	"math/bits"
	"sync"
)

// power is a^e modulo p.
func power(a, e, p uint64) uint64 {
	r := uint64(1)
	for ; e > 0; e >>= 1 {
		if e&1 == 1 {
			r = r * a % p
		}
		a = a * a % p
	}
	return r
}

// jacobi is Jacobi's symbol (a/n) for odd n, by quadratic reciprocity.
func jacobi(a, n uint64) int8 {
	t := int8(1)
	for a %= n; a != 0; {
		z := bits.TrailingZeros64(a)
		a >>= z
		if z&1 == 1 && (n&7 == 3 || n&7 == 5) {
			t = -t
		}
		if a < n {
			if a&3 == 3 && n&3 == 3 {
				t = -t
			}
			a, n = n, a
		}
		a -= n
	}
	if n == 1 {
		return t
	}
	return 0
}

// quotientModulo is a/b modulo p; false where b is 0.
func quotientModulo(a, b, p uint64) (uint64, bool) {
	if b == 0 {
		return 0, false
	}
	return a * inverse(b, p) % p, true
}

// inverse is 1/b modulo p, by Euclid's algorithm.
func inverse(b, p uint64) uint64 {
	r, s := int64(p), int64(b)
	x, y := int64(0), int64(1)
	for s != 1 {
		q := r / s
		r, s = s, r-q*s
		x, y = y, x-q*y
	}
	if y < 0 {
		y += int64(p)
	}
	return uint64(y)
}

// ratioModulo is num/den modulo p; false where p divides den.
func ratioModulo(num, den int64, p uint64) (uint64, bool) {
	return quotientModulo(integer{k: num}.mod(p), integer{k: den}.mod(p), p)
}

// fractionModulo is a fraction of small numbers that is v modulo p, by Euclid's algorithm (Wang 1981).
func fractionModulo(v, p uint64) (num, den int64) {
	r, s, x, y := int64(p), int64(v), int64(0), int64(1)
	for s > smallFraction {
		q := r / s
		r, s, x, y = s, r-q*s, y, x-q*y
	}
	if y < 0 {
		s, y = -s, -y
	}
	if y == 0 || y > smallFraction {
		return 0, 0
	}
	return s, y
}

const smallFraction = 1 << 14

// tableSize is how many primes there are for ring maps.
const tableSize = 1 << 13

// mapPrimes are ≡ 3 (mod 4), so that roots are powers.
var mapPrimes = sync.OnceValue(func() []uint64 { return primesIn(3, 4) })

// primesIn are the first tableSize primes in the arithmetic progression first + k·step
// from 2^30, by a sieve.
func primesIn(first, step uint64) []uint64 {
	const span, limit = 1 << 17, 33000 // limit² is more than any number here
	start := uint64(1)<<30/step*step + first
	composite, small := make([]bool, span), make([]bool, limit)
	for q := uint64(3); q < limit; q += 2 {
		if small[q] {
			continue
		}
		for k := q * q; k < limit; k += 2 * q {
			small[k] = true
		}
		if step%q == 0 {
			continue
		}
		for k := (q - start%q) * power(step%q, q-2, q) % q; k < span; k += q {
			composite[k] = true
		}
	}
	var primes []uint64
	for k := uint64(0); k < span && len(primes) < tableSize; k++ {
		if !composite[k] {
			primes = append(primes, start+k*step)
		}
	}
	return primes
}
