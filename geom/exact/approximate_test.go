package exact

import (
	"math"
	"math/big"
	"testing"
)

// TestFloats holds floats and enclosures to their numbers, at the ends of the range too.
func TestFloats(t *testing.T) {
	k := newKit()
	huge := k.f.Rat(new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(300), nil)))
	for _, c := range []struct {
		name string
		x    *Real
		want float64
	}{
		{"√2", k.sqrt(2), math.Sqrt2},
		{"(√2 + √3)² - 5 - 2√6", k.sqrt(2).Add(k.sqrt(3)).square().Sub(k.int(5)).Sub(k.sqrt(6).MulInt(2)), 0},
		{"√(10^600)", k.root(huge.Mul(huge)), 1e300},
		{"10^600/10^600", huge.Mul(huge).Div(huge.Mul(huge).Add(k.int(1))), 1},
		{"10^-300", k.int(1).Div(huge), 1e-300},
		{"√10^-600", k.root(k.int(1).Div(huge.Mul(huge))), 1e-300},
		{"10^-600", k.int(1).Div(huge.Mul(huge)), 0},
		{"-10^-600", k.int(-1).Div(huge.Mul(huge)), 0},
	} {
		f := c.x.Float()
		if math.Abs(f-c.want) > 4e-16*math.Abs(c.want) || math.Signbit(f) && f == 0 {
			t.Errorf("%s = %g, want %g", c.name, f, c.want)
		}
		lo, hi := c.x.Enclose(200)
		l, _ := lo.Float64()
		h, _ := hi.Float64()
		if slack := 4e-16 * math.Abs(f); l > f+slack || f-slack > h || lo.Cmp(hi) > 0 {
			t.Errorf("%s: %g outside of %g, %g", c.name, f, l, h)
		}
	}
	if lo, hi := k.sqrt(2).Add(k.sqrt(3)).Bounds(); lo > 3.1462643699419723 || hi < 3.1462643699419723 || hi-lo > 1e-14 {
		t.Errorf("bounds of √2 + √3: %v, %v", lo, hi)
	}
}

// TestRational finds fractions that roots cancel to.
func TestRational(t *testing.T) {
	k := newKit()
	x := k.sqrt(8).Div(k.sqrt(18)).Add(k.root(k.int(3).Add(k.sqrt(8))).Sub(k.sqrt(2)))
	if r, ok := x.Rational(); !ok || r.Cmp(big.NewRat(5, 3)) != 0 {
		t.Errorf("Rational() = %v, %v, want 5/3", r, ok)
	}
	if r, ok := k.sqrt(2).Rational(); ok {
		t.Errorf("√2 = %v", r)
	}
	third := new(big.Rat).SetFrac(powerOfTen(30), big.NewInt(3))
	if r, ok := k.f.Rat(third).Rational(); !ok || r.Cmp(third) != 0 {
		t.Errorf("Rational() = %v, %v", r, ok)
	}
}
