package exact

import (
	"math/big"
	"testing"
)

// TestLoosen: angles that are freed keep their sums, and no more; and they are near their own.
func TestLoosen(t *testing.T) {
	f := NewField()
	f.Loosen(func(near *big.Rat) *big.Rat { return new(big.Rat).Add(near, big.NewRat(1, 1<<20)) })
	at := func(num, den int64) (cos, sin *Real) {
		cos, sin, err := f.CosSin(big.NewRat(num, den))
		if err != nil {
			t.Fatal(err)
		}
		return cos, sin
	}
	a, b := big.NewRat(233, 4), big.NewRat(50, 1)
	at(233, 4) // 58°15'
	at(50, 1)
	rest := new(big.Rat).Sub(big.NewRat(180, 1), new(big.Rat).Add(a, b))
	cos, sin := at(233, 4)
	for _, d := range []*big.Rat{b, rest} {
		c, s, _ := f.CosSin(d)
		cos, sin = turned(cos, sin, c, s)
	}
	if cos.Cmp(f.Int(-1)) != 0 || sin.Sign() != 0 {
		t.Errorf("58°15' + 50° + the rest is no straight angle: cosine %v", cos.Float())
	}
	c, s := at(233, 8)
	c, _ = turned(c, s, c, s)
	if whole, _ := at(233, 4); !c.Equal(whole) {
		t.Error("twice half of an angle is another")
	}
	fixed, _, _ := NewField().CosSin(a)
	if loose, _ := at(233, 4); loose.Float() == fixed.Float() || loose.Float()-fixed.Float() > 1e-5 {
		t.Errorf("cos 58°15' has become %v", loose.Float())
	}
	if shift := f.Loosened(a); shift <= 0 || shift > 1e-5 {
		t.Errorf("58°15' is turned by %v", shift)
	}
	// 40° is a third of 120°, which an angle near it is not.
	c, s = at(40, 1)
	c2, s2 := turned(c, s, c, s)
	if c, _ = turned(c, s, c2, s2); c.Equal(f.Int(-1).Mul(f.ratio(1, 2))) {
		t.Error("40° has not been freed")
	}
	if at(75, 1); f.Loosened(big.NewRat(75, 1)) != 0 {
		t.Error("75° has been freed")
	}
	if !f.IsLoose() || NewField().IsLoose() {
		t.Error("a field does not know whether it has been loosened")
	}
}
