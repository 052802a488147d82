package exact

import (
	"math"
	"math/big"
	"testing"
)

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

func TestCosSinNearFloats(t *testing.T) {
	k := newKit()
	for n := int64(-800); n <= 800; n += 1 {
		c, s := k.cos(n, 2), k.sin(n, 2)
		a := float64(n) / 2 * math.Pi / 180
		if math.Abs(c.Float()-math.Cos(a)) > 1e-14 || math.Abs(s.Float()-math.Sin(a)) > 1e-14 {
			t.Fatalf("%v/2°: %v, %v", n, c.Float(), s.Float())
		}
	}
}

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
