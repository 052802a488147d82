package exact

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestSurd writes numbers as a textbook would (common practice, no source).
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

// TestSurdsMeanTheirNumbers reads the surds of random numbers again.
func TestSurdsMeanTheirNumbers(t *testing.T) {
	written := 0
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			for _, x := range someNumbers(t, k) {
				text, ok := x.x.Surd()
				if !ok {
					continue
				}
				written++
				if !k.formula(plainly(text)).Equal(x.x) {
					t.Errorf("%s is written %s", x.x.Decimal(20), text)
				}
			}
		})
	})
	if written < 100 {
		t.Errorf("only %d numbers could be written", written)
	}
}

// plainly is a surd in the notation of the tables: 3√2 is 3*sqrt(2).
func plainly(surd string) string {
	text := strings.NewReplacer(" ", "", "−", "-").Replace(surd)
	text = regexp.MustCompile(`(\d)√`).ReplaceAllString(text, "$1*√")
	text = regexp.MustCompile(`√(\d+)`).ReplaceAllString(text, "√($1)")
	return strings.ReplaceAll(text, "√", "sqrt")
}
