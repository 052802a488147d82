package exact

import "testing"

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
