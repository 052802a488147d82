package geom_test

import (
	"strings"
	"testing"

	"trammel/geom"
)

func TestShow(t *testing.T) {
	tests := []struct{ number, want string }{
		{"0", "0"},
		{"7", "7"},
		{"1234567", "1234567"},
		{"3/2", "1.5"},
		{"-1/2", "−0.5"},
		{"-3", "−3"},
		{"-1/3", "−1/3"},
		{"-√2/2", "−√2/2"},
		{"-0.1234567", "≈ −0.123"},
		{"1-√2-√3-√5-√7", "≈ −7.028"},
		{"1/8", "0.125"},
		{"1/3", "1/3"},
		{"22/7", "22/7"},
		{"√2", "√2"},
		{"√8", "2√2"},
		{"√12-√3", "√3"},
		{"√2/2", "√2/2"},
		{"1/2+√5/2", "(1 + √5)/2"},
		{"2√2-2", "2√2 − 2"},
		{"√2+√3+√5+√7", "≈ 8.028"},
		{"√123457", "√123457"},
		{"0.1234567", "≈ 0.123"},
	}
	for _, test := range tests {
		x := num(test.number)
		if got := geom.Show(x); got != test.want {
			t.Errorf("%s is shown as %s, want %s", test.number, got, test.want)
		}
		if got, ok := geom.ShortSurd(x); ok && got != test.want || ok == strings.HasPrefix(test.want, "≈") {
			t.Errorf("%s as a short surd: %s, %v", test.number, got, ok)
		}
	}
	if got := pt("3/2,√2").String(); got != "(1.5, √2)" {
		t.Errorf("a point is shown as %s", got)
	}
}

func TestTrimZeros(t *testing.T) {
	for text, want := range map[string]string{
		"1.500": "1.5", "1.000": "1", "100": "100", "0.0": "0", "-0.00": "0", "-0": "0", "-1.50": "−1.5", "10.010": "10.01", "": "",
	} {
		if got := geom.TrimZeros(text); got != want {
			t.Errorf("%q is trimmed to %q, want %q", text, got, want)
		}
	}
}
