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
