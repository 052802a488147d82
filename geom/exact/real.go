// Package exact does arithmetic in the constructible numbers without error.
package exact

import "math/big"

// Field is the world of one figure's numbers. Not safe for concurrent use.
type Field struct{}

// NewField is an empty field: the rationals, growing as roots are taken.
func NewField() *Field { return &Field{} }

// Real is an exact number of a Field; it never changes.
type Real struct{}

// Int is a whole number.
func (f *Field) Int(n int64) *Real { panic("stub") }

// Rat is a fraction.
func (f *Field) Rat(r *big.Rat) *Real { panic("stub") }

// CosSin gives the cosine and sine of an angle in degrees.
func (f *Field) CosSin(degrees *big.Rat) (cos, sin *Real, err error) { panic("stub") }

// Field is where x lives.
func (x *Real) Field() *Field     { panic("stub") }
func (x *Real) Add(y *Real) *Real { panic("stub") }
func (x *Real) Sub(y *Real) *Real { panic("stub") }
func (x *Real) Mul(y *Real) *Real { panic("stub") }

// Div panics with *DivisionByZero if y is 0.
func (x *Real) Div(y *Real) *Real { panic("stub") }
func (x *Real) Neg() *Real        { panic("stub") }
func (x *Real) Abs() *Real        { panic("stub") }

// MulInt is n times x.
func (x *Real) MulInt(n int64) *Real { panic("stub") }

// Sqrt panics with *NegativeRoot if x is negative.
func (x *Real) Sqrt() *Real { panic("stub") }

// Sign is -1, 0 or 1. It panics with *Undecided when the budget is spent.
func (x *Real) Sign() int { panic("stub") }

// Cmp is the sign of x - y.
func (x *Real) Cmp(y *Real) int { panic("stub") }

// Equal is Cmp == 0.
func (x *Real) Equal(y *Real) bool { panic("stub") }

// Float is x to within a few units in the last place; it decides nothing.
func (x *Real) Float() float64 { panic("stub") }

// Bounds is an interval of floats that holds x, cheap and maybe wide.
func (x *Real) Bounds() (lo, hi float64) { panic("stub") }

// Enclose is an interval around x, of a relative width about 2^-prec.
func (x *Real) Enclose(prec uint) (lo, hi *big.Float) { panic("stub") }

// Rational tells whether x is a fraction, and which.
func (x *Real) Rational() (*big.Rat, bool) { panic("stub") }

// Surd is x as a textbook writes it: "3√2", "(1 + √5)/2"; false when that
// would be longer than a label can be.
func (x *Real) Surd() (string, bool) { panic("stub") }

// Decimal is x correctly rounded to that many places after the point.
func (x *Real) Decimal(places int) string { panic("stub") }

// Undecided is the panic value of a decision that would cost more than the budget.
type Undecided struct{ Probably string }

// Error says so honestly.
func (u *Undecided) Error() string { return "not decided" }

// Try runs f and returns the Undecided, DivisionByZero or NegativeRoot it panicked with.
func Try(f func()) (err error) { panic("stub") }
