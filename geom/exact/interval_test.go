package exact

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// TestIntervals holds that intervals of floats hold what they should, at the
// ends of the range too: bounds of operations on their ends and middles.
func TestIntervals(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	ends := []float64{0, math.SmallestNonzeroFloat64, 1e-308, 1e-200, 1, 3, 1e200, 1e308, math.MaxFloat64}
	some := func() interval {
		x, y := ends[r.IntN(len(ends))]*float64(1-2*r.IntN(2)), ends[r.IntN(len(ends))]*float64(1-2*r.IntN(2))
		return interval{min(x, y), max(x, y)}
	}
	exact := func(x float64) *big.Float { return new(big.Float).SetPrec(4000).SetFloat64(x) }
	holds := func(z interval, v *big.Float) bool {
		return v.Cmp(new(big.Float).SetFloat64(z.lo)) >= 0 && v.Cmp(new(big.Float).SetFloat64(z.hi)) <= 0
	}
	for range 20000 {
		x, y := some(), some()
		for _, a := range []float64{x.lo, x.hi} {
			for _, b := range []float64{y.lo, y.hi} {
				p, q := exact(a), exact(b)
				good := holds(x.add(y), new(big.Float).Add(p, q)) && holds(x.sub(y), new(big.Float).Sub(p, q)) &&
					holds(x.mul(y), new(big.Float).Mul(p, q)) && holds(x.square(), new(big.Float).Mul(p, p))
				if b != 0 {
					good = good && holds(x.div(y), new(big.Float).Quo(p, q))
				}
				if a >= 0 {
					good = good && holds(x.sqrt(), new(big.Float).Sqrt(p))
				}
				if !good {
					t.Fatalf("intervals %v and %v lose %v and %v", x, y, a, b)
				}
			}
		}
	}
}
