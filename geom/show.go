package geom

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// Show writes a number for a message: exact when that can be read at a glance, else to
// three places with a "≈", or to three digits when it is smaller than that.
func Show(x Real) string {
	if s, ok := ShortSurd(x); ok {
		if _, below, _ := strings.Cut(s, "/"); digits(below) <= mostBelow {
			return s
		}
	}
	if s := TrimZeros(x.Decimal(3)); s != "0" {
		return "≈ " + s
	}
	return "≈ " + Significant(x.Float())
}

// mostBelow is how many digits of a denominator are read at a glance.
const mostBelow = 2

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
		if d, exact := FiniteDecimal(r, 4); exact && len(strings.TrimPrefix(d, "−")) <= 6 {
			return d, true
		}
	}
	return s, true
}

// PrintedSurd is the exact text of x when a textbook would print that rather than
// a rounded one: a whole number, a short decimal, or a fraction or surd of few digits
// over one at most (common practice, no source).
func PrintedSurd(x Real) (string, bool) {
	s, ok := ShortSurd(x)
	_, below, fraction := strings.Cut(s, "/")
	whole := !fraction && !strings.Contains(s, "√")
	return s, ok && (whole || digits(s) <= mostPrinted && digits(below) <= 1)
}

// mostPrinted is how many digits a printed fraction or surd has, at most: as in 2√13/3.
const mostPrinted = 4

func digits(s string) int {
	return len(s) - len(strings.Map(func(r rune) rune {
		if '0' <= r && r <= '9' {
			return -1
		}
		return r
	}, s))
}

// FiniteDecimal is r as a decimal; false if that needs more places.
func FiniteDecimal(r *big.Rat, places int) (string, bool) {
	text := r.FloatString(places)
	back, _ := new(big.Rat).SetString(text)
	return TrimZeros(text), back.Cmp(r) == 0
}

// TrimZeros cuts the zeros that end a decimal, and gives it the minus of print.
func TrimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return strings.Replace(s, "-", "−", 1)
}

// String is the place of p, as in "(3, 1.5)".
func (p Point) String() string { return "(" + Show(p.X) + ", " + Show(p.Y) + ")" }

// Significant writes a float to three significant digits, small ones as a power of ten.
func Significant(x float64) string {
	text := strings.TrimSuffix(fmt.Sprintf("%#.3g", x), ".")
	mantissa, exponent, small := strings.Cut(text, "e")
	text = strings.Replace(mantissa, "-", "−", 1)
	if small {
		n, _ := strconv.Atoi(exponent)
		text += "·10" + Superscript(n)
	}
	return text
}

// Superscript is a number raised to stand as an exponent.
func Superscript(n int) string {
	return strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹").Replace(strconv.Itoa(n))
}

// versus shows two lengths that differ; where they print alike, the first is
// given by how far it is from the second.
func versus(x, y Real) (string, string) {
	s, t := Show(x), Show(y)
	if strings.TrimPrefix(s, "≈ ") != strings.TrimPrefix(t, "≈ ") {
		return s, t
	}
	gap := x.Sub(y)
	word := " more than "
	if gap.Sign() < 0 {
		word = " less than "
	}
	return Significant(gap.Abs().Float()) + word + t, t
}
