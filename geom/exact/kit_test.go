package exact

import "math/big"

// kit builds numbers of one field briefly.
type kit struct {
	f      *Field
	joints bool // makes joints of the points of a chain
}

func newKit() *kit { return &kit{f: NewField()} }

func (k *kit) jointed() *kit {
	k.joints = true
	return k
}

func (k *kit) int(n int64) *Real { return k.f.Int(n) }

func (k *kit) sqrt(n int64) *Real { return k.f.Int(n).Sqrt() }

func (k *kit) root(x *Real) *Real { return x.Sqrt() }

func (k *kit) frac(a, b int64) *Real { return k.f.Int(a).Div(k.f.Int(b)) }

// crowd adjoins ten roots that have nothing to do with the rest.
func (k *kit) crowd() {
	for _, p := range []int64{31, 37, 41, 43, 47, 53, 59, 61, 67, 71} {
		k.sqrt(p).form()
	}
}

// point is just enough of a plane for figures that the kernel alone can do.
type point struct{ x, y *Real }

func (p point) sub(q point) point { return point{p.x.Sub(q.x), p.y.Sub(q.y)} }

func (p point) equal(q point) bool { return p.x.Equal(q.x) && p.y.Equal(q.y) }

func (p point) dot(q point) *Real { return p.x.Mul(q.x).Add(p.y.Mul(q.y)) }

func (p point) cross(q point) *Real { return p.x.Mul(q.y).Sub(p.y.Mul(q.x)) }

// turn multiplies p and q as complex numbers.
func (p point) turn(q point) point {
	return point{p.x.Mul(q.x).Sub(p.y.Mul(q.y)), p.x.Mul(q.y).Add(p.y.Mul(q.x))}
}

// tiny is 10^-400: less than what makes the kernel look for an identity.
func (k *kit) tiny() *Real {
	return k.f.Rat(new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(400)))
}

// primesBelow are the primes below n.
func primesBelow(n int64) (primes []int64) {
	for p := int64(2); p < n; p++ {
		if big.NewInt(p).ProbablyPrime(0) {
			primes = append(primes, p)
		}
	}
	return primes
}

func (k *kit) cos(num, den int64) *Real {
	c, _, err := k.f.CosSin(big.NewRat(num, den))
	if err != nil {
		panic(err)
	}
	return c
}

func (k *kit) sin(num, den int64) *Real {
	_, s, err := k.f.CosSin(big.NewRat(num, den))
	if err != nil {
		panic(err)
	}
	return s
}
