package exact

import (
	"math/big"
	"testing"
)

// everywhere makes a figure of free numbers, claims an equation of it, and tells whether
// that is found to hold everywhere.
func everywhere(figure func(f *Field, x []*Real) []*Real, claim func(made []*Real)) bool {
	f := NewFormulaField()
	var x []*Real
	for i := range int64(6) {
		x = append(x, f.Free(big.NewRat(20+7*i+i*i*i, 3+i)))
	}
	made := figure(f, x)
	notes := f.Take()
	claim(made)
	left := 1 << 22
	return HoldEverywhere([]Question{{notes, f.Take()}}, &left)[0]
}

// TestHoldEverywhere: x and y are free. |x| is √(x²), so that of three points on a line the
// distances add up on one side only; unless the source says on which they are.
func TestHoldEverywhere(t *testing.T) {
	line := func(sure bool) func(*Field, []*Real) []*Real {
		return func(_ *Field, x []*Real) []*Real {
			if sure {
				x[0].Sure()
				x[1].Sure()
			}
			return x
		}
	}
	addUp := func(x []*Real) {
		if !x[0].Abs().Add(x[1].Abs()).Equal(x[0].Add(x[1]).Abs()) {
			t.Error("|x| + |y| = |x + y| fails")
		}
	}
	tests := []struct {
		name   string
		figure func(*Field, []*Real) []*Real
		claim  func([]*Real)
		want   bool
	}{
		{"lengths on a line", line(false), addUp, false},
		{"lengths on a line, with the same signs", line(true), addUp, true},
		{"a product of lengths", line(false), func(x []*Real) { x[0].Abs().Mul(x[1].Abs()).Equal(x[0].Mul(x[1]).Abs()) }, true},
		{"an identity", line(false), func(x []*Real) {
			x[0].Add(x[1]).Mul(x[0].Sub(x[1])).Equal(x[0].Mul(x[0]).Sub(x[1].Mul(x[1])))
		}, true},
		{"a root that can be flipped", func(_ *Field, x []*Real) []*Real {
			r := x[0].Mul(x[0]).Add(x[1].Mul(x[1])).Add(x[2]).EitherSqrt()
			return append(x, x[3].Add(r), x[3].Sub(r))
		}, func(x []*Real) {
			x[6].Add(x[7]).Equal(x[3].MulInt(2))
		}, true},
		{"which of two roots it is", func(_ *Field, x []*Real) []*Real {
			return append(x, x[0].Mul(x[0]).EitherSqrt())
		}, func(x []*Real) { x[6].Equal(x[0]) }, false},
		{"a sum of lengths that are positive", func(_ *Field, x []*Real) []*Real {
			x[0].Sub(x[1]).Sure()
			x[1].Sub(x[2]).Sure()
			return x
		}, func(x []*Real) {
			x[0].Sub(x[1]).Abs().Add(x[1].Sub(x[2]).Abs()).Equal(x[0].Sub(x[2]).Abs())
		}, true},
		{"a length that another claim may not make positive", line(false), func(x []*Real) {
			x[0].Mul(x[1]).Abs().Sub(x[0].Mul(x[1])).IsZero()
		}, false},
		{"twice a root, and its square", func(_ *Field, x []*Real) []*Real {
			r := x[0].Mul(x[0]).Add(x[1].Mul(x[1])).Sqrt()
			return append(x, r, r.MulInt(2).Mul(r.MulInt(2)).Sqrt())
		}, func(x []*Real) { x[7].Equal(x[6].MulInt(2)) }, true},
		{"a root with a constant that is none of the figure", func(f *Field, x []*Real) []*Real {
			square := x[0].Mul(x[0])
			return append(x, square.MulInt(5).Sqrt(), square.MulInt(20).Sqrt())
		}, func(x []*Real) { x[7].Equal(x[6].MulInt(2)) }, true},
		{"what is no equation everywhere", line(false), func(x []*Real) { x[0].Sub(x[0].Add(x[1].Mul(x[2].field.ratio(1, 1<<40)))).IsZero() }, false},
	}
	for _, test := range tests {
		if got := everywhere(test.figure, test.claim); got != test.want {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
}

// TestClaimsApart: what one claim is made of says nothing of another, though |xy| of the
// one is positive and the other hangs on the sign of xy.
func TestClaimsApart(t *testing.T) {
	f := NewFormulaField()
	x, y := f.Free(big.NewRat(20, 3)), f.Free(big.NewRat(28, 4))
	f.Take()
	product := x.Mul(y)
	product.Abs().Mul(product.Abs()).Equal(product.Mul(product))
	first := f.Take()
	product.Abs().Equal(product)
	second := f.Take()
	left := 1 << 22
	got := HoldEverywhere([]Question{{&Notes{}, first}, {&Notes{}, second}}, &left)
	if !got[0] || got[1] {
		t.Errorf("|xy|² = (xy)² and |xy| = xy: %v, want [true false]", got)
	}
}

// TestMustElsewhere: what is 0 in every figure, and hangs on roots that the claim has nothing of, makes
// no claim true.
func TestMustElsewhere(t *testing.T) {
	f := NewFormulaField()
	x, y := f.Free(big.NewRat(20, 3)), f.Free(big.NewRat(28, 4))
	f.Take()
	err := f.Demand(func() error {
		far := x.Mul(x).Add(y.Mul(y)).Add(f.Int(1)).Sqrt()
		if !far.Mul(x).Mul(y).Equal(far.Mul(y).Mul(x)) {
			t.Error("xy√ is not yx√")
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	figure := f.Take()
	if len(figure.Must) == 0 {
		t.Fatal("nothing is demanded")
	}
	if !x.Abs().Add(y.Abs()).Equal(x.Add(y).Abs()) {
		t.Error("|x| + |y| = |x + y| fails")
	}
	left := 1 << 22
	if HoldEverywhere([]Question{{figure, f.Take()}}, &left)[0] {
		t.Error("|x| + |y| = |x + y| everywhere")
	}
}

// TestLogarithms: modulo 13 and p ≡ 1 (mod 13), the logarithm of a product is the sum.
func TestLogarithms(t *testing.T) {
	for _, p := range mapPrimes() {
		if p%logBase != 1 {
			continue
		}
		g := newLogs(p, 1)
		for v := uint64(2); v < 60; v++ {
			if got, want := g.log(v*v%p*7%p), (2*g.log(v)+g.log(7))%logBase; got != want {
				t.Fatalf("p = %d: log 7·%d² is %d, want %d", p, v, got, want)
			}
			if g.log(p-v) != g.log(v) {
				t.Fatalf("p = %d: -%d and %d differ", p, v, v)
			}
		}
		return
	}
}

// TestFractions: fractions from floats, and from what they are modulo a prime.
func TestFractions(t *testing.T) {
	p := mapPrimes()[0]
	for num := int64(-40); num < 40; num++ {
		for den := int64(1); den < 30; den++ {
			want := big.NewRat(num, den)
			if num != 0 {
				n, d, ok := fractionNear(float64(num) / float64(den))
				if !ok || want.Cmp(big.NewRat(n, d)) != 0 {
					t.Fatalf("%d/%d: float gives %d/%d", num, den, n, d)
				}
			}
			v, _ := quotientModulo(integer{k: num}.mod(p), integer{k: den}.mod(p), p)
			if n, d := fractionModulo(v, p); d == 0 || want.Cmp(big.NewRat(n, d)) != 0 {
				t.Fatalf("%d/%d modulo %d: %d/%d", num, den, p, n, d)
			}
		}
	}
}
