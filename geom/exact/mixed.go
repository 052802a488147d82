package exact

// Polynomials in π with coefficients of a Field. Since π is transcendental (Lindemann
// 1882) and the coefficients are algebraic, such a polynomial is 0 only if every
// coefficient is: so being 0 is decided by the coefficients, and any other sign shows at
// some precision.

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Mixed is a polynomial in π whose coefficients are constructible, such as a circumference
// or the area between a circle and a square. It never changes.
type Mixed struct {
	field *Field
	c     []*Real // c[k] multiplies π^k; the last may be 0
}

// Pure is x as a Mixed.
func Pure(x *Real) *Mixed { return &Mixed{x.field, []*Real{x}} }

// Pi is π.
func (f *Field) Pi() *Mixed { return &Mixed{f, []*Real{f.Int(0), f.Int(1)}} }

// Field is where the coefficients of x live.
func (x *Mixed) Field() *Field { return x.field }

// at is the coefficient of π^k.
func (x *Mixed) at(k int) *Real {
	if k < len(x.c) {
		return x.c[k]
	}
	return x.field.Int(0)
}

// Add is x + y.
func (x *Mixed) Add(y *Mixed) *Mixed { return x.combined(y, (*Real).Add) }

// Sub is x - y.
func (x *Mixed) Sub(y *Mixed) *Mixed { return x.combined(y, (*Real).Sub) }

// combined joins x and y coefficient by coefficient.
func (x *Mixed) combined(y *Mixed, op func(x, y *Real) *Real) *Mixed {
	z := &Mixed{x.field, make([]*Real, max(len(x.c), len(y.c)))}
	for k := range z.c {
		z.c[k] = op(x.at(k), y.at(k))
	}
	return z
}

// Neg is -x.
func (x *Mixed) Neg() *Mixed {
	z := &Mixed{x.field, make([]*Real, len(x.c))}
	for k, c := range x.c {
		z.c[k] = c.Neg()
	}
	return z
}

// Mul is x·y.
func (x *Mixed) Mul(y *Mixed) *Mixed {
	if len(x.c) == 0 || len(y.c) == 0 {
		return &Mixed{field: x.field}
	}
	z := &Mixed{x.field, make([]*Real, len(x.c)+len(y.c)-1)}
	for k := range z.c {
		z.c[k] = x.field.Int(0)
	}
	for i, a := range x.c {
		for j, b := range y.c {
			z.c[i+j] = z.c[i+j].Add(a.Mul(b))
		}
	}
	return z
}

// Div is x/y by long division; false if that leaves a remainder, so that x/y is no
// polynomial in π. It panics with *DivisionByZero if y is 0.
func (x *Mixed) Div(y *Mixed) (quotient *Mixed, ok bool) {
	y = y.trimmed()
	if len(y.c) == 0 {
		panic(&DivisionByZero{})
	}
	rest := append([]*Real(nil), x.trimmed().c...)
	q := &Mixed{field: x.field}
	if len(rest) >= len(y.c) {
		q.c = make([]*Real, len(rest)-len(y.c)+1)
	}
	top := len(y.c) - 1
	for k := len(q.c) - 1; k >= 0; k-- {
		q.c[k] = rest[k+top].Div(y.c[top])
		for j, b := range y.c[:top] {
			rest[k+j] = rest[k+j].Sub(q.c[k].Mul(b))
		}
		rest = rest[:k+top]
	}
	return q, len((&Mixed{x.field, rest}).trimmed().c) == 0
}

// trimmed is x without leading coefficients that are 0.
func (x *Mixed) trimmed() *Mixed {
	n := len(x.c)
	for n > 0 && x.c[n-1].Sign() == 0 {
		n--
	}
	return &Mixed{x.field, x.c[:n]}
}

// Constructible is x without π; false if π is in it.
func (x *Mixed) Constructible() (*Real, bool) {
	t := x.trimmed()
	return t.at(0), len(t.c) <= 1
}

// Sign is -1, 0 or 1. It panics with *Undecided when the budget is spent.
func (x *Mixed) Sign() int {
	if s, ok := x.clearSign(); ok {
		return s
	}
	x = x.trimmed()
	if len(x.c) <= 1 {
		return x.at(0).Sign()
	}
	for prec := uint(128); prec <= 16*mostBits; prec *= 2 {
		if s, ok := x.enclose(prec).sign(); ok {
			return s
		}
	}
	panic(&Undecided{Why: "too many digits of π"})
}

// clearSign is the sign where π need not be looked at closely.
func (x *Mixed) clearSign() (sign int, ok bool) {
	if len(x.c) == 1 {
		return x.c[0].Sign(), true
	}
	return x.enclose(64).sign()
}

// IsZero is Sign() == 0; but it needs no digits of π.
func (x *Mixed) IsZero() bool {
	if s, ok := x.clearSign(); ok {
		return s == 0
	}
	return len(x.trimmed().c) == 0
}

// Cmp is the sign of x - y.
func (x *Mixed) Cmp(y *Mixed) int {
	if a, b, ok := constructible(x, y); ok {
		return a.Cmp(b)
	}
	return x.Sub(y).Sign()
}

// Equal is Cmp == 0; but it needs no digits of π.
func (x *Mixed) Equal(y *Mixed) bool {
	if a, b, ok := constructible(x, y); ok {
		return a.Cmp(b) == 0
	}
	return x.Sub(y).IsZero()
}

// constructible is both without π; false if π is in one of them.
func constructible(x, y *Mixed) (a, b *Real, ok bool) {
	a, ok1 := x.Constructible()
	b, ok2 := y.Constructible()
	return a, b, ok1 && ok2
}

// Abs is x or -x, whichever is not negative.
func (x *Mixed) Abs() *Mixed {
	if x.Sign() < 0 {
		return x.Neg()
	}
	return x
}

// enclose bounds x at a working precision, by Horner's rule.
func (x *Mixed) enclose(prec uint) enclosure {
	sum := encloseInteger(integer{}, prec)
	for k := len(x.c) - 1; k >= 0; k-- {
		if k < len(x.c)-1 {
			sum = sum.mul(x.field.enclosePi(prec), prec)
		}
		sum = sum.add(x.c[k].enclose(prec), prec)
	}
	return sum
}

// Float is x to within a few units in the last place; it decides nothing.
func (x *Mixed) Float() float64 {
	if len(x.c) == 1 {
		return x.c[0].Float()
	}
	if x.field.rough {
		sum := 0.0
		for k := len(x.c) - 1; k >= 0; k-- {
			sum = sum*math.Pi + x.c[k].Float()
		}
		return sum
	}
	return floatOf(x.enclose)
}

// Decimal is x correctly rounded to that many places after the point.
func (x *Mixed) Decimal(places int) string {
	x = x.trimmed()
	if len(x.c) <= 1 {
		return x.at(0).Decimal(places)
	}
	scale := powerOfTen(places)
	for prec := startingBits(places); ; prec *= 2 {
		lo, hi := scaled(x.enclose, scale, prec)
		if lo.Cmp(hi) == 0 { // as it must be in the end: x is no fraction
			return pointed(lo, places)
		}
	}
}

// Surd is x as a textbook writes it: "6π", "9π/2", "π√2 + 3"; false when that
// would be longer than a label can be.
func (x *Mixed) Surd() (string, bool) {
	var b strings.Builder
	if Try(func() { x = x.trimmed() }) != nil {
		return "", false
	}
	for k := len(x.c) - 1; k >= 0; k-- {
		s, ok := x.c[k].surd()
		switch {
		case !ok:
			return "", false
		case len(s.terms) == 0:
			continue
		}
		negative := len(s.terms) == 1 && s.terms[0].n.sign() < 0
		b.WriteString(sign(b.Len() == 0, negative))
		b.WriteString(s.times(piToThe(k)))
	}
	if b.Len() == 0 {
		return "0", true
	}
	return b.String(), utf8.RuneCountInString(b.String()) <= longestSurd
}

// piToThe is how π^k is written.
func piToThe(k int) string {
	switch k {
	case 0:
		return ""
	case 1:
		return "π"
	case 2:
		return "π²"
	case 3:
		return "π³"
	}
	return "π^" + strconv.Itoa(k)
}
