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

// TestPrintedSurd tells which lengths a textbook prints exactly; "" stands for a
// rounded one (common practice, no source).
func TestPrintedSurd(t *testing.T) {
	for number, want := range map[string]string{
		"7": "7", "12345": "12345", "3/2": "1.5", "3.125": "3.125", "1/3": "1/3", "22/7": "22/7", "72/95": "", "361/630": "",
		"√2": "√2", "2√3": "2√3", "√181": "√181", "√37/2": "√37/2", "2√13/3": "2√13/3", "√181/10": "", "9√101/10": "", "√10217": "",
		"33√5002/730": "", "1/2+√5/2": "(1 + √5)/2", "√2473/5": "", "√2+√3": "√3 + √2",
	} {
		got, ok := geom.PrintedSurd(num(number))
		if !ok {
			got = ""
		}
		if got != want {
			t.Errorf("%s is printed as %q, want %q", number, got, want)
		}
	}
}
