package exact

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// TestDecimal rounds to the nearest decimal, halves away from 0, also where only the exact
// form tells that a number is a half.
func TestDecimal(t *testing.T) {
	k := newKit()
	for _, c := range []struct {
		x      *Real
		places int
		want   string
	}{
		{k.sqrt(2), 3, "1.414"},
		{k.sqrt(2), 0, "1"},
		{k.sqrt(2), 40, "1.4142135623730950488016887242096980785697"},
		{k.frac(5, 2), 0, "3"},
		{k.frac(-5, 2), 0, "-3"},
		{k.frac(1, 8), 2, "0.13"},
		{k.frac(-1, 8), 2, "-0.13"},
		{k.frac(-1, 1000), 2, "0.00"},
		{k.sqrt(2).Sub(k.int(2)), 0, "-1"},
		{k.int(0), 2, "0.00"},
		{k.root(k.int(3).Add(k.sqrt(8))).Sub(k.sqrt(2)).Div(k.int(8)), 2, "0.13"},
		{k.sqrt(2).Sub(k.root(k.int(3).Add(k.sqrt(8)))).Div(k.int(8)), 2, "-0.13"},
		{k.root(k.int(3).Add(k.sqrt(8))).Sub(k.sqrt(2)), 2, "1.00"},
	} {
		if got := c.x.Decimal(c.places); got != c.want {
			t.Errorf("Decimal(%d) = %s, want %s", c.places, got, c.want)
		}
	}
}

// TestDecimalsAreNearest holds decimals of random numbers to within half a unit of the last place.
func TestDecimalsAreNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			x := pick(t, someNumbers(t, k), "x")
			places := rapid.IntRange(0, 60).Draw(t, "places")
			text := x.Decimal(places)
			decimal, ok := new(big.Rat).SetString(text)
			half := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(powerOfTen(places), 1))
			if !ok || x.Sub(k.f.Rat(decimal)).Abs().Cmp(k.f.Rat(half)) > 0 {
				t.Errorf("%d decimals of %v: %s", places, x.Float(), text)
			}
		})
	})
}
