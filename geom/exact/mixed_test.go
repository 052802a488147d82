package exact

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

// TestPolynomialsInPi holds how they are written, rounded and compared.
func TestPolynomialsInPi(t *testing.T) {
	k := newKit()
	pi := k.f.Pi()
	pure := func(n int64) *Mixed { return Pure(k.int(n)) }
	r2 := Pure(k.sqrt(2))
	golden := Pure(k.int(1).Add(k.sqrt(5)).Div(k.int(2)))
	for _, c := range []struct {
		x       *Mixed
		surd    string
		decimal string
		sign    int
	}{
		{pi, "π", "3.141592653589793238462643383280", 1},
		{pi.Mul(pure(6)), "6π", "18.849555921538759430775860299677", 1},
		{pi.Mul(Pure(k.frac(9, 2))), "9π/2", "14.137166941154069573081895224758", 1},
		{pi.Mul(r2).Mul(pure(-3)), "−3π√2", "-13.328648814475098741047642970182", -1},
		{pi.Mul(golden), "(1 + √5)π/2", "5.083203692315259815809509013242", 1},
		{pi.Mul(pi).Sub(pure(10)), "π² − 10", "-0.130395598910641381165509000124", -1},
		{pi.Mul(r2).Add(pure(3)), "π√2 + 3", "7.442882938158366247015880990061", 1},
		{pi.Sub(pi), "0", "0.000000000000000000000000000000", 0},
		{pi.Mul(r2).Mul(r2).Sub(pi.Mul(pure(2))), "0", "0.000000000000000000000000000000", 0},
		{pi.Mul(pure(113)).Sub(pure(355)), "113π − 355", "-0.000030144353364053721297689416", -1},
	} {
		if got, ok := c.x.Surd(); !ok || got != c.surd {
			t.Errorf("Surd() = %q, %v, want %q", got, ok, c.surd)
		}
		if got := c.x.Decimal(30); got != c.decimal {
			t.Errorf("%s = %s, want %s", c.surd, got, c.decimal)
		}
		if got := c.x.Sign(); got != c.sign {
			t.Errorf("sign of %s = %d, want %d", c.surd, got, c.sign)
		}
	}
	if f := pi.Float(); f != math.Pi {
		t.Errorf("Float() = %v", f)
	}
}

// TestDivisionByPolynomialsInPi divides where that leaves no remainder, and only there.
func TestDivisionByPolynomialsInPi(t *testing.T) {
	k := newKit()
	pi := k.f.Pi()
	circumference := pi.Mul(Pure(k.sqrt(18)))
	ratio, ok := circumference.Div(pi.Mul(Pure(k.sqrt(2))))
	if x, pure := ratio.Constructible(); !ok || !pure || !x.Equal(k.int(3)) {
		t.Errorf("π√18/π√2 = %v, %v, %v", x.Decimal(3), ok, pure)
	}
	if q, ok := pi.Mul(pi).Sub(Pure(k.int(4))).Div(pi.Add(Pure(k.int(2)))); !ok || !q.Equal(pi.Sub(Pure(k.int(2)))) {
		t.Errorf("(π² - 4)/(π + 2) is not π - 2")
	}
	if _, ok := Pure(k.int(1)).Div(pi); ok {
		t.Errorf("1/π passes for a polynomial in π")
	}
	if _, pure := pi.Constructible(); pure {
		t.Errorf("π passes for constructible")
	}
	zero := pi.Sub(pi)
	if err := Try(func() { pi.Div(zero) }); err == nil || err.Error() != "division by zero" {
		t.Errorf("π/0: %v", err)
	}
}

// TestNearlyPi tells π from what comes near to it: a convergent of its continued fraction,
// Ramanujan's fourth root of 2143/22 (Modular equations and approximations to π, 1914), and its
// own decimals. All from memory.
func TestNearlyPi(t *testing.T) {
	k := newKit()
	pi := k.f.Pi()
	for _, c := range []struct {
		x    *Mixed
		want int
	}{
		{pi.Sub(Pure(k.frac(245850922, 78256779))), 1},      // 7.8·10^-17
		{pi.Sub(Pure(k.root(k.root(k.frac(2143, 22))))), 1}, // Ramanujan's, 10^-9
		{Pure(k.root(k.root(k.frac(2143, 22)))).Sub(pi), -1},
		{pi.Mul(pi).Sub(pi.Mul(Pure(k.frac(245850922, 78256779)))), 1},
		{pi.Mul(Pure(k.sqrt(2))).Mul(Pure(k.sqrt(3))).Sub(pi.Mul(Pure(k.sqrt(6)))), 0},
	} {
		if got := c.x.Sign(); got != c.want {
			t.Errorf("sign of %s: %d, want %d", c.x.Decimal(20), got, c.want)
		}
		if got := c.x.Neg().Abs().Cmp(c.x.Abs()); got != 0 {
			t.Errorf("|-x| and |x| compare as %d at %s", got, c.x.Decimal(20))
		}
	}
	near := pi.Sub(Pure(k.f.Rat(decimalOfPi(19_800))))
	if near.IsZero() || near.Equal(near.Add(near)) {
		t.Error("π is equal to its first 19800 decimals")
	}
	if err := Try(func() { near.Sign() }); err == nil || strings.Contains(err.Error(), "probably") {
		t.Errorf("the sign of what is below 10^-19800, and surely not 0: %v", err)
	}
	const digits = "3.1415926535897932384626433832795028841971693993751" +
		"058209749445923078164062862089986280348253421170680"
	if got := pi.Decimal(100); got != digits {
		t.Errorf("π = %s", got)
	}
	if f := pi.Mul(Pure(k.sqrt(2))).Float(); math.Abs(f-4.442882938158366) > 1e-15 {
		t.Errorf("π√2 = %v", f)
	}
}

// decimalOfPi is π rounded to so many places.
func decimalOfPi(places int) *big.Rat {
	r, _ := new(big.Rat).SetString(NewField().Pi().Decimal(places))
	return r
}
