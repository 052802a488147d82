package exact

import (
	"math"
	"math/big"
	"testing"
)

// TestVanished holds the bound against functions whose norm has a known degree:
// it must never be below that. Each is 0 at t = 3, u = 4, and not everywhere.
func TestVanished(t *testing.T) {
	for _, test := range []struct {
		name   string
		degree float64
		of     func(f *Field, t, u *Real) *Real
	}{
		{"t − 3", 1, func(f *Field, t, u *Real) *Real { return t.Sub(f.Int(3)) }},
		{"(t − 1)(t − 2)…(t − 8)", 8, func(f *Field, t, u *Real) *Real {
			x := f.Int(1)
			for i := int64(1); i <= 8; i++ {
				x = x.Mul(t.Sub(f.Int(i)))
			}
			return x
		}},
		{"t/u − 3/4", 1, func(f *Field, t, u *Real) *Real { return t.Div(u).Sub(f.Rat(big.NewRat(3, 4))) }},
		{"√(t² + u²) − 5, norm t² + u² − 25", 2, func(f *Field, t, u *Real) *Real {
			return t.Mul(t).Add(u.Mul(u)).Sqrt().Sub(f.Int(5))
		}},
		{"√t + √u − √3 − 2, norm of degree 4 over √3", 2, func(f *Field, t, u *Real) *Real {
			return t.Sqrt().Add(u.Sqrt()).Sub(f.Int(3).Sqrt()).Sub(f.Int(2))
		}},
		{"√(t + √(u + 5)) − √6, norm (t−6)² − u − 5", 2, func(f *Field, t, u *Real) *Real {
			return t.Add(u.Add(f.Int(5)).Sqrt()).Sqrt().Sub(f.Int(6).Sqrt())
		}},
		{"t² by an opening of 16 powers", 16, func(f *Field, t, u *Real) *Real {
			x := t
			for range 4 {
				x = x.Mul(x)
			}
			return x.Sub(f.Int(43046721))
		}},
	} {
		f := NewField()
		x := test.of(f, f.Free(big.NewRat(3, 1)), f.Free(big.NewRat(4, 1)))
		if x.Sign() != 0 {
			t.Fatalf("%s is not 0", test.name)
		}
		got := f.Vanished()
		if want := math.Log2(test.degree); got < want || got > want+8 {
			t.Errorf("%s: 2^%.1f, want 2^%.1f or a little more", test.name, got, want)
		}
		if again := f.Vanished(); !math.IsInf(again, -1) {
			t.Errorf("%s: told twice", test.name)
		}
	}
}

// TestConstantsDoNotVanish: what hangs on no free value counts for nothing.
func TestConstantsDoNotVanish(t *testing.T) {
	f := NewField()
	f.Free(big.NewRat(3, 1))
	two, three := f.Int(2).Sqrt(), f.Int(3).Sqrt()
	if two.Mul(three).Sub(f.Int(6).Sqrt()).Sign() != 0 || !math.IsInf(f.Vanished(), -1) {
		t.Error("√2·√3 − √6 counts as a function")
	}
}

// TestRootsAreKept holds the bound where a value hides of which roots a function
// was made: where it is a fraction, 0 or 1, or a number that the field has
// already. Each function is 0 at these values; its norm has the degree or more.
func TestRootsAreKept(t *testing.T) {
	for _, test := range []struct {
		name   string
		degree float64
		of     func(f *Field) *Real
	}{
		{"1·y, then that times y", 16, func(f *Field) *Real {
			one, y := freeRoots(f, 1), freeRoots(f, 4, 9, 16, 25)
			return one.Mul(y).Mul(freeRoots(f, 1)).Sub(f.Int(14))
		}},
		{"0·y", 17, func(f *Field) *Real { return freeZero(f).Mul(freeRoots(f, 2, 3, 5, 7, 11)) }},
		{"0/y", 17, func(f *Field) *Real { return freeZero(f).Div(freeRoots(f, 2, 3, 5, 7, 11)) }},
		{"1·(y·√2)", 16, func(f *Field) *Real {
			return f.Free(big.NewRat(1, 1)).Mul(freeRoots(f, 4, 9, 16, 25, 36).Mul(f.Int(2).Sqrt())).Sub(f.Int(800).Sqrt())
		}},
		{"(2y)²", 8, func(f *Field) *Real {
			y, same := freeNested(f).MulInt(2), fixedNested(f)
			return y.Mul(y).Sub(same.Mul(same).MulInt(4))
		}},
		{"roots that are all √2", 32, func(f *Field) *Real { return freeRoots(f, 2, 2, 2, 2, 2, 2).Sub(f.Int(72).Sqrt()) }},
		{"|0 + y| for a 0 with roots", 256, func(f *Field) *Real {
			zero := freeRoots(f, 4, 9, 16, 25, 36).Sub(f.Int(20))
			y := zero.Add(freeNested(f))
			return y.Mul(y).Sqrt().Sub(fixedNested(f))
		}},
		{"y deep below", 8, func(f *Field) *Real {
			y, two, seven := freeNested(f), f.Int(2).Sqrt(), f.Int(7).Sqrt()
			for range deepest {
				y = y.Add(two).Sub(seven)
			}
			return y.Sub(two.Sub(seven).MulInt(deepest)).Sub(fixedNested(f))
		}},
	} {
		f := NewField()
		if test.of(f).Sign() != 0 {
			t.Fatalf("%s is not 0", test.name)
		}
		if got := f.Vanished(); got < math.Log2(test.degree) {
			t.Errorf("%s: 2^%.1f, where the degree is 2^%.1f", test.name, got, math.Log2(test.degree))
		}
	}
}

// freeRoots is the sum of the roots of free values.
func freeRoots(f *Field, values ...int64) *Real {
	sum := f.Int(0)
	for _, v := range values {
		sum = sum.Add(f.Free(big.NewRat(v, 1)).Sqrt())
	}
	return sum
}

// freeZero is t - 3 at t = 3.
func freeZero(f *Field) *Real { return f.Free(big.NewRat(3, 1)).Sub(f.Int(3)) }

// freeNested is Σ√(t + √2) at t = 2, 3, 5 and 7; fixedNested is that number, made
// from no free values.
func freeNested(f *Field) *Real {
	return nested(f, func(n int64) *Real { return f.Free(big.NewRat(n, 1)) })
}

func fixedNested(f *Field) *Real { return nested(f, f.Int) }

func nested(f *Field, value func(n int64) *Real) *Real {
	sum := f.Int(0)
	for _, p := range []int64{2, 3, 5, 7} {
		sum = sum.Add(value(p).Add(f.Int(2).Sqrt()).Sqrt())
	}
	return sum
}
