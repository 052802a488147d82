package exact

import (
	"math/big"
	"testing"
)

// dependences are equations between roots that an incomplete test for squares misses, one
// side adjoined before the other. All but Shanks's were made up here.
var dependences = []struct {
	name        string
	hidden      bool // from a test that tries plain S only
	left, right func(k *kit) *Real
}{
	{"norm after conjugates", true,
		func(k *kit) *Real {
			return k.root(k.int(5).Add(k.sqrt(2))).Mul(k.root(k.int(5).Sub(k.sqrt(2))))
		},
		func(k *kit) *Real { return k.sqrt(23) }},
	{"biquadratic before its roots", false,
		func(k *kit) *Real { return k.root(k.int(5).Add(k.sqrt(6).MulInt(2))) },
		func(k *kit) *Real { return k.sqrt(2).Add(k.sqrt(3)) }},
	{"Shanks 1974", false, shanksLeft, shanksRight},
	{"Shanks 1974, from right to left", false, shanksRight, shanksLeft},
	{"a perfect square of the golden field", false,
		func(k *kit) *Real { return k.root(k.int(6).Add(k.sqrt(20))) },
		func(k *kit) *Real { return k.int(1).Add(k.sqrt(5)) }},
	{"three conjugate pairs", true,
		func(k *kit) *Real {
			p := k.int(1)
			for _, n := range []int64{2, 3, 5} {
				p = p.Mul(k.root(k.int(7).Add(k.sqrt(n)))).Mul(k.root(k.int(7).Sub(k.sqrt(n))))
			}
			return p
		},
		func(k *kit) *Real { return k.sqrt(47).Mul(k.sqrt(46)).Mul(k.sqrt(44)) }},
	{"fourth roots", false,
		func(k *kit) *Real { return k.root(k.int(4).Add(k.sqrt(2).MulInt(3))) },
		func(k *kit) *Real { return k.root(k.sqrt(2)).Mul(k.int(1).Add(k.sqrt(2))) }},
	{"a root over two levels", false,
		func(k *kit) *Real {
			return k.root(k.int(10).Add(k.sqrt(24)).Add(k.sqrt(40)).Add(k.sqrt(60)))
		},
		func(k *kit) *Real { return k.sqrt(2).Add(k.sqrt(3)).Add(k.sqrt(5)) }},
	{"a root over three levels", false,
		func(k *kit) *Real {
			a, b, c := k.sqrt(2), k.root(k.int(3).Add(k.sqrt(2))), k.root(k.int(5).Add(k.sqrt(7)))
			squares := k.int(10).Add(a).Add(k.sqrt(7))
			return k.root(squares.Add(a.Mul(b).Add(a.Mul(c)).Add(b.Mul(c)).MulInt(2)))
		},
		func(k *kit) *Real {
			return k.sqrt(2).Add(k.root(k.int(3).Add(k.sqrt(2)))).Add(k.root(k.int(5).Add(k.sqrt(7))))
		}},
}

// The identity of D. Shanks, Incredible identities, Fibonacci Quarterly 12
// (1974): √5 + √(22 + 2√5) = √(11 + 2√29) + √(16 - 2√29 + 2√(55 - 10√29)).
func shanksLeft(k *kit) *Real {
	return k.sqrt(5).Add(k.root(k.int(22).Add(k.sqrt(5).MulInt(2))))
}

func shanksRight(k *kit) *Real {
	inner := k.root(k.int(55).Sub(k.sqrt(29).MulInt(10))).MulInt(2)
	outer := k.root(k.int(16).Sub(k.sqrt(29).MulInt(2)).Add(inner))
	return k.root(k.int(11).Add(k.sqrt(29).MulInt(2))).Add(outer)
}

// TestDependences finds both sides equal, alone and beside ten other roots, by the complete test
// for squares and by mending what the plain one misses.
func TestDependences(t *testing.T) {
	for _, d := range dependences {
		for _, crowded := range []bool{false, true} {
			for _, plain := range []bool{false, true} {
				k := newKit()
				k.f.tower.plain = plain
				if crowded {
					k.crowd()
				}
				left, right := d.left(k), d.right(k)
				left.form()
				right.form()
				before := k.f.tower
				if !left.Equal(right) || left.Sub(right).Sign() != 0 {
					t.Errorf("%s (crowded %v, plain test %v): sides differ", d.name, crowded, plain)
				}
				if mended := k.f.tower != before; mended != (plain && d.hidden) {
					t.Errorf("%s (crowded %v, plain test %v): tower mended: %v", d.name, crowded, plain, mended)
				}
				if left.Equal(right.Add(k.frac(1, 1e18))) {
					t.Errorf("%s (crowded %v, plain test %v): equal to another number", d.name, crowded, plain)
				}
			}
		}
	}
}

// TestHiddenFractions asks for fractions where their form does not show that they are.
func TestHiddenFractions(t *testing.T) {
	for _, d := range dependences {
		k := newKit()
		k.f.tower.plain = true
		x := d.left(k).Div(d.right(k)).Mul(k.frac(5, 7))
		if r, ok := x.Rational(); !ok || r.Cmp(big.NewRat(5, 7)) != 0 {
			t.Errorf("%s: 5/7 of the quotient of the sides is %v, %v", d.name, r, ok)
		}
		if r, ok := x.Add(k.sqrt(2)).Rational(); ok {
			t.Errorf("%s: 5/7 + √2 is %v", d.name, r)
		}
	}
}
