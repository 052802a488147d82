package exact

import "testing"

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

func TestSurd(t *testing.T) {
	k := newKit()
	s5 := k.sqrt(5)
	for _, c := range []struct {
		x    *Real
		want string
	}{
		{k.int(0), "0"},
		{k.int(-3), "−3"},
		{k.frac(7, 2), "7/2"},
		{k.frac(-7, 2), "−7/2"},
		{k.sqrt(18), "3√2"},
		{k.sqrt(18).Neg(), "−3√2"},
		{k.frac(1, 2).Sqrt(), "√2/2"},
		{k.int(1).Add(s5).Div(k.int(2)), "(1 + √5)/2"},
		{s5.Sub(k.int(1)).Div(k.int(2)), "(√5 − 1)/2"},
		{k.sqrt(12).Sub(k.int(1)), "2√3 − 1"},
		{k.int(2).Sub(k.sqrt(3)), "2 − √3"},
		{k.root(k.int(10).Add(s5.MulInt(2))), "√(10 + 2√5)"},
		{k.root(k.int(10).Sub(s5.MulInt(2))).Div(k.int(4)), "√(10 − 2√5)/4"},
		{k.root(k.int(5).Sub(s5).Div(k.int(2))), "√(10 − 2√5)/2"},
		{k.root(k.int(5).Add(k.sqrt(6).MulInt(2))), "√3 + √2"},
		{k.root(k.int(2).Add(k.sqrt(3))), "(√6 + √2)/2"},
		{k.root(k.int(2).Sub(k.sqrt(3))), "(√6 − √2)/2"},
		{k.sqrt(2).Mul(k.sqrt(3)).Mul(k.sqrt(6)), "6"},
		{k.root(k.int(2).Add(k.root(k.int(2).Add(k.sqrt(2))))).Div(k.int(2)), "√(2 + √(2 + √2))/2"},
	} {
		got, ok := c.x.Surd()
		if !ok || got != c.want {
			t.Errorf("Surd() = %q, %v, want %q", got, ok, c.want)
		}
	}
}
