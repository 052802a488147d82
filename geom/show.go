package geom

import (
	"fmt"
	"strings"
)

// Show writes a number for a message: exact when that is short, else to three
// places with a "≈".
func Show(x Real) string {
	if s, ok := ShortSurd(x); ok {
		return s
	}
	return "≈ " + TrimZeros(x.Decimal(3))
}

// equals is Show after a name: "= 3√2", "≈ 1.449".
func equals(x Real) string {
	if s := Show(x); strings.HasPrefix(s, "≈") {
		return s
	}
	return "= " + Show(x)
}

// ShortSurd is the exact text of x when it is short enough to read at a glance.
func ShortSurd(x Real) (string, bool) {
	s, ok := x.Surd()
	if !ok || len([]rune(s)) > 12 {
		return "", false
	}
	if r, isRat := x.Rational(); isRat {
		if d := r.FloatString(6); len(TrimZeros(d)) <= 6 && !strings.Contains(TrimZeros(d), "-0") {
			if back, exact := r.Float64(); exact || fmt.Sprint(back) == TrimZeros(d) {
				return TrimZeros(d), true
			}
		}
	}
	return s, true
}

// TrimZeros cuts the zeros that end a decimal.
func TrimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// String is the place of p, as in "(3, 1.5)".
func (p Point) String() string { return "(" + Show(p.X) + ", " + Show(p.Y) + ")" }
