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
