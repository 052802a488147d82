package exact

import (
	"math"
	"testing"
)

// TestCosSinNearFloats holds every cosine and sine to that of the library math.
func TestCosSinNearFloats(t *testing.T) {
	k := newKit()
	for _, den := range []int64{2, 3, 5, 15, 60} {
		for n := int64(-400); n <= 800; n++ {
			c, s := k.cos(n, den), k.sin(n, den)
			a := float64(n) / float64(den) * math.Pi / 180
			if math.Abs(c.Float()-math.Cos(a)) > 1e-14 || math.Abs(s.Float()-math.Sin(a)) > 1e-14 {
				t.Fatalf("%d/%d°: %v, %v", n, den, c.Float(), s.Float())
			}
		}
	}
}

// TestAngleIdentities decides identities between whole degrees (from memory; that of cos 20°
// cos 40° cos 80° is known as Morrie's law).
func TestAngleIdentities(t *testing.T) {
	k := newKit()
	for n := int64(0); n <= 180; n++ {
		c, s := k.cos(n, 1), k.sin(n, 1)
		if !c.Mul(c).Add(s.Mul(s)).Equal(k.int(1)) {
			t.Errorf("sin² + cos² is not 1 at %d°", n)
		}
		if triple := k.cos(3*n, 1); !c.Mul(c).Mul(c).MulInt(4).Sub(c.MulInt(3)).Equal(triple) {
			t.Errorf("4cos³ - 3cos is not the cosine of the triple at %d°", n)
		}
	}
	tan := func(n int64) *Real { return k.sin(n, 1).Div(k.cos(n, 1)) }
	x := k.cos(40, 1)
	for _, c := range []struct {
		name        string
		left, right *Real
	}{
		{"8x³ + 1 = 6x at cos 40°", x.Mul(x).Mul(x).MulInt(8).Add(k.int(1)), x.MulInt(6)},
		{"cos 20° cos 40° cos 80°", k.cos(20, 1).Mul(k.cos(40, 1)).Mul(k.cos(80, 1)), k.frac(1, 8)},
		{"cos 40° + cos 80°", k.cos(40, 1).Add(k.cos(80, 1)), k.cos(20, 1)},
		{"sin 50°", k.sin(50, 1), k.cos(40, 1)},
		{"tan 10° tan 50° tan 70°", tan(10).Mul(tan(50)).Mul(tan(70)), k.sqrt(3).Div(k.int(3))},
		{"cos 20.5° by halving", k.cos(41, 2).square().MulInt(2).Sub(k.int(1)), k.cos(41, 1)},
		{"√(1 - cos² 40°)", k.root(k.int(1).Sub(x.square())), k.sin(40, 1)},
		{"√(1 - cos² 7°)", k.root(k.int(1).Sub(k.cos(7, 1).square())), k.sin(7, 1)},
	} {
		if !c.left.Equal(c.right) {
			t.Errorf("%s: %s is not %s", c.name, c.left.Decimal(20), c.right.Decimal(20))
		}
	}
}

// TestFractionsOfDegrees tries identities over the larger bases: every
// generator must be the cosine it is taken for, and roots must be recognised.
func TestFractionsOfDegrees(t *testing.T) {
	for _, den := range []int64{3, 5, 15, 10, 60} {
		k := newKit()
		for _, n := range []int64{1, 7} {
			c, s := k.cos(n, den), k.sin(n, den)
			if !c.Mul(c).Add(s.Mul(s)).Equal(k.int(1)) {
				t.Errorf("sin² + cos² is not 1 at %d/%d°", n, den)
			}
			if double := k.cos(2*n, den); !c.Mul(c).MulInt(2).Sub(k.int(1)).Equal(double) {
				t.Errorf("2cos² - 1 is not the cosine of the double at %d/%d°", n, den)
			}
			if den < 10 && !k.root(k.int(1).Sub(c.Mul(c))).Equal(s) {
				t.Errorf("√(1 - cos²) is not the sine at %d/%d°", n, den)
			}
		}
	}
}

// TestBaseRoots finds roots of squares in the base, none of twice a square, and inverses.
func TestBaseRoots(t *testing.T) {
	tower := newTower()
	ninth, fifth := polynomial(ninthLevel, 3, -2, 5), polynomial(twentyFifthLevel, -1, 4, 0, 2, 7)
	root27 := horner(twentySeventhLevel, []*element{ninth, constant(integer{k: 4}), ninth})
	for _, x := range []*element{ninth, fifth, root27, ninth.add(fifth), tower.mul(ninth, fifth), root27.add(fifth)} {
		square := tower.mul(x, x)
		r := tower.baseRoot(square)
		if r == nil || !tower.mul(r.num, r.num).equal(square.scale(r.den.mul(r.den))) {
			t.Errorf("no root of the square of %v", x.levels())
		}
		if r := tower.baseRoot(square.scale(integer{k: 2})); r != nil {
			t.Errorf("a root of twice the square of %v", x.levels())
		}
		inverse, n := tower.invert(x)
		if !tower.mul(inverse, x).equal(constant(n)) || n.sign() == 0 {
			t.Errorf("no inverse of %v", x.levels())
		}
	}
	conjugate := tower.fraction(generators[twentyFifthLevel].conjugate, integer{k: 7})
	square := conjugate.mul(conjugate)
	if r := tower.numberRoot(square, levelSet{}); r == nil || !r.mul(r).num.equal(square.num) {
		t.Errorf("the square of a conjugate, which needs a denominator, has no root")
	}
}

// TestMinutesShareRoots holds how few roots all minutes of arc together need.
func TestMinutesShareRoots(t *testing.T) {
	k := newKit()
	for n := int64(1); n < 120; n += 7 {
		k.cos(n, 60).form()
	}
	if got := len(k.f.tower.levels) - baseLevels - 1; got > 6 {
		t.Errorf("%d roots, where √2, √3, √5, √(10 + 2√5), √(2 + √2) and √(2 + √(2 + √2)) are enough", got)
	}
}
