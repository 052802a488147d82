package exact

import (
	"math/big"
	"testing"
)

// nearMisses are positive numbers below 10^-19, made up here; of the sums of two roots that
// nearly agree, and of Pell's equation, the kinds are well known (from memory).
var nearMisses = []struct {
	name  string
	value func(k *kit) *Real
}{
	{"√(10^40 + 1) - 10^20", func(k *kit) *Real {
		big20 := k.f.Rat(new(big.Rat).SetInt(powerOfTen(20)))
		return k.root(big20.Mul(big20).Add(k.int(1))).Sub(big20)
	}},
	{"sums of two roots", func(k *kit) *Real {
		n := k.f.Rat(new(big.Rat).SetInt(powerOfTen(14)))
		return k.root(n).Add(k.root(n.Add(k.int(3)))).
			Sub(k.root(n.Add(k.int(1))).Add(k.root(n.Add(k.int(2))))).Neg()
	}},
	{"(√2 - 1)^60", func(k *kit) *Real {
		x, p := k.sqrt(2).Sub(k.int(1)), k.int(1)
		for range 60 {
			p = p.Mul(x)
		}
		return p
	}},
	{"a Pell number against (1 + √2)^60", func(k *kit) *Real {
		a, b := big.NewInt(1), big.NewInt(0) // a + b√2 = (1 + √2)^n
		for range 60 {
			a, b = new(big.Int).Add(a, new(big.Int).Lsh(b, 1)), new(big.Int).Add(a, b)
		}
		x, y := k.f.Rat(new(big.Rat).SetInt(a)), k.f.Rat(new(big.Rat).SetInt(b))
		return x.Sub(y.Mul(k.sqrt(2)))
	}},
	{"√(55 - 10√29) off by 10^-30", func(k *kit) *Real {
		x := k.root(k.int(55).Sub(k.sqrt(29).MulInt(10)))
		tiny := k.f.Rat(new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(30)))
		return k.root(x.Mul(x).Add(tiny).Add(k.sqrt(7)).Sub(k.sqrt(7))).Sub(x)
	}},
}

// TestNearMisses tells the sign of each, of its opposite, and that it is equal to itself.
func TestNearMisses(t *testing.T) {
	for _, c := range nearMisses {
		k := newKit()
		x := c.value(k)
		if s := x.Sign(); s != 1 {
			t.Errorf("%s: sign %d", c.name, s)
		}
		if f := x.Float(); f <= 0 || f > 1e-19 {
			t.Errorf("%s: float %g", c.name, f)
		}
		if s := c.value(k).Neg().Sign(); s != -1 {
			t.Errorf("%s, negated: sign %d", c.name, s)
		}
		if y := c.value(k); !y.Sub(x).IsZero() {
			t.Errorf("%s: twice the same is not the same", c.name)
		}
	}
}

// TestLongCoefficients takes signs of numbers that cancel far more digits
// than enclosures begin with: a - b√2 = ±(√2 - 1)^n.
func TestLongCoefficients(t *testing.T) {
	a, b := big.NewInt(1), big.NewInt(0)
	for range 8000 {
		a, b = new(big.Int).Add(a, new(big.Int).Lsh(b, 1)), new(big.Int).Add(a, b)
	}
	k := newKit()
	whole := func(n *big.Int) *Real { return k.f.Rat(new(big.Rat).SetInt(n)) }
	x := whole(a).Sub(whole(b).Mul(k.sqrt(2)))
	x = x.Add(k.sqrt(3)).Sub(k.sqrt(3))
	if s := x.Sign(); s != 1 {
		t.Errorf("the sign of (√2 - 1)^8000 is %d", s)
	}
	if s := x.Neg().Sign(); s != -1 {
		t.Errorf("the sign of -(√2 - 1)^8000 is %d", s)
	}
}
