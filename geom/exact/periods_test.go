package exact

import (
	"math"
	"testing"
)

// periods are Gauss's sums of p-th roots of unity for a Fermat prime p with
// the generator 3: at(k, j) has the (p-1)/2^k terms ζ^(3^(2^k·i + j)), and is
// a root of x² - at(k-1, j)·x + at(k, j)·at(k, j + 2^(k-1)).
type periods struct {
	k     *kit
	p     int
	known map[[2]int]*Real
}

func newPeriods(k *kit, p int) *periods {
	return &periods{k, p, map[[2]int]*Real{{0, 0}: k.int(-1)}}
}

// exponents are those of at(k, j).
func (g *periods) exponents(k, j int) (e []int) {
	x := 1
	for range j {
		x = x * 3 % g.p
	}
	step := 1
	for range 1 << k {
		step = step * 3 % g.p
	}
	for range (g.p - 1) >> k {
		e = append(e, x)
		x = x * step % g.p
	}
	return e
}

func (g *periods) float(k, j int) (sum float64) {
	for _, e := range g.exponents(k, j) {
		sum += math.Cos(2 * math.Pi * float64(e) / float64(g.p))
	}
	return sum
}

func (g *periods) at(k, j int) *Real {
	if x, ok := g.known[[2]int{k, j}]; ok {
		return x
	}
	half := 1 << (k - 1)
	low := j % half
	sum, product := g.at(k-1, low), g.product(k, low)
	root := g.k.root(sum.Mul(sum).Sub(product.MulInt(4)))
	more, less := sum.Add(root).Div(g.k.int(2)), sum.Sub(root).Div(g.k.int(2))
	if g.float(k, low) < g.float(k, low+half) {
		more, less = less, more
	}
	g.known[[2]int{k, low}], g.known[[2]int{k, low + half}] = more, less
	return g.known[[2]int{k, j}]
}

// product is at(k, j)·at(k, j + 2^(k-1)) in periods of k-1.
func (g *periods) product(k, j int) *Real {
	count := make([]int64, g.p)
	for _, a := range g.exponents(k, j) {
		for _, b := range g.exponents(k, j+1<<(k-1)) {
			count[(a+b)%g.p]++
		}
	}
	sum := g.k.int(count[0])
	for m := range 1 << (k - 1) {
		if n := count[g.exponents(k-1, m)[0]]; n != 0 {
			sum = sum.Add(g.at(k-1, m).MulInt(n))
		}
	}
	return sum
}

// cosine is cos 2π/p.
func (g *periods) cosine() *Real {
	k := 0
	for 2<<k < g.p-1 {
		k++
	}
	return g.at(k, 0).Div(g.k.int(2))
}

// doubled is T_{2^n}, Chebyshev's polynomial, at x.
func (k *kit) doubled(x *Real, n int) *Real {
	for range n {
		x = x.Mul(x).MulInt(2).Sub(k.int(1))
	}
	return x
}

// TestGaussPeriods closes the p-gon by doubling: since 2^m ≡ -1 (mod p),
// cos 2^m·φ = cos φ for φ = 2π/p.
func TestGaussPeriods(t *testing.T) {
	for _, c := range []struct{ p, m int }{{5, 2}, {17, 4}, {257, 8}} {
		k := newKit()
		x := newPeriods(k, c.p).cosine()
		if !k.doubled(x, c.m).Equal(x) || k.doubled(x, c.m-1).Equal(x) {
			t.Errorf("the %d-gon does not close", c.p)
		}
		if f := math.Cos(2 * math.Pi / float64(c.p)); math.Abs(x.Float()-f) > 1e-14 {
			t.Errorf("cos 2π/%d = %v", c.p, x.Float())
		}
	}
}

func Benchmark257Cosine(b *testing.B) {
	for b.Loop() {
		newPeriods(newKit(), 257).cosine().exactly()
	}
}

func Benchmark257Closes(b *testing.B) {
	for b.Loop() {
		k := newKit()
		x := newPeriods(k, 257).cosine()
		if !k.doubled(x, 8).Equal(x) {
			b.Fatal("open")
		}
	}
}

func Benchmark257Vertices(b *testing.B) {
	for b.Loop() {
		k := newKit()
		x := newPeriods(k, 257).cosine()
		y := k.root(k.int(1).Sub(x.Mul(x)))
		twice, last, now := x.MulInt(2), point{k.int(1), k.int(0)}, point{x, y}
		for range 256 {
			last, now = now, point{twice.Mul(now.x).Sub(last.x), twice.Mul(now.y).Sub(last.y)}
			now.x.exactly()
			now.y.exactly()
		}
		if !now.equal(point{k.int(1), k.int(0)}) {
			b.Fatal("open")
		}
	}
}
