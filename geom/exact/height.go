package exact

import (
	"math"
	"math/big"
)

// Free is r as the value of a variable: at another run the variable may have
// another. Each number made from free values keeps an upper bound of its height
// as a function of the variables.
//
// The height of a quotient of polynomials without a common factor is the higher
// of their degrees. Over all places of a function field it is the sum of the
// orders of the poles, which holds for algebraic functions too, over a field of
// degree n divided by n; so it is additive for roots, and
//
//	h(x ± y), h(x·y), h(x/y) ≤ h(x) + h(y),  h(√x) = h(x)/2,  h(constant) = 0
//
// (Lang, Fundamentals of Diophantine Geometry, ch. 3). The norm of x, down from
// a field with r roots in it to the quotients of polynomials, is of height 2^r·h(x)
// at most, and 0 wherever x is. By that many a polynomial that is not 0
// everywhere is bounded in degree, which is what Vanished is for.
func (f *Field) Free(r *big.Rat) *Real {
	if f.notes != nil {
		return f.variable(r)
	}
	x := f.Rat(r)
	if !f.rough {
		x.height = 1
	}
	return x
}

// degree sums up what has been decided to be 0 of numbers made from free values.
type degree struct {
	sum    float64 // of the degrees of what was 0
	visits int     // to the operands of what was 0
}

// vanish notes that x is 0, maybe only at these values of the variables. The
// chance of that is counted, so for what comes after x is 0 everywhere.
func (d *degree) vanish(x *Real) {
	d.visits++
	d.sum += math.Ldexp(x.height, min(x.roots(d.visits), mostBits))
	x.height, x.origin = 0, nil
}

// origin is what a number was made from, where roots in that are in none of its
// operands: at these values of the variables they were fractions.
type origin struct {
	x, y *Real
	root bool // the number is the root of x
}

// roots counts the roots that x is made with, on a visit of that number.
func (x *Real) roots(visit int) int {
	if x == nil || x.height == 0 || x.visit == visit {
		return 0
	}
	x.visit = visit
	n := x.x.roots(visit) + x.y.roots(visit)
	if o := x.origin; o != nil {
		n += o.x.roots(visit) + o.y.roots(visit)
	}
	if x.op == root || x.origin != nil && x.origin.root {
		n++
	}
	return n
}

// become makes x the ratio r that it has turned out to be.
func (x *Real) become(r *Real) {
	r.height = x.height
	if d := &x.field.free; x.height > 0 {
		d.visits++
		if x.roots(d.visits) > 0 {
			old := *x
			r.origin = &origin{x: &old}
		}
	}
	*x = *r
}

// Vanished is the binary logarithm of a bound for the sum of the degrees of the
// polynomials whose being 0 made the numbers 0 that were decided to be so since
// the last call; -Inf when none was that hangs on a free value. If any of them
// is not 0 everywhere, then values drawn alike from n for each variable would
// have shown it with a chance of at least 1 - 2^Vanished/n (Schwartz 1980,
// Zippel 1979, DeMillo and Lipton 1978).
func (f *Field) Vanished() float64 {
	sum := f.free.sum
	f.free.sum = 0
	return math.Log2(sum)
}

// from notes of z what it was made from. A number that the field has for several
// purposes only gets a larger bound by that.
func (z *Real) from(x, y *Real) *Real {
	height, traced := x.height, x.origin != nil && z.x != x
	if y != nil {
		height, traced = height+y.height, traced || y.origin != nil && z.y != y
	}
	if height > z.height {
		z.height = height
	}
	if traced {
		z.origin = &origin{x: x, y: y}
	}
	return z
}

// Add is x + y.
func (x *Real) Add(y *Real) *Real { return x.plus(y).from(x, y) }

// Sub is x - y.
func (x *Real) Sub(y *Real) *Real { return x.minus(y).from(x, y) }

// Mul is x·y.
func (x *Real) Mul(y *Real) *Real { return x.times(y).from(x, y) }

// Div is x/y. It panics with *DivisionByZero if y is 0.
func (x *Real) Div(y *Real) *Real { return x.over(y).from(x, y) }

// Neg is -x.
func (x *Real) Neg() *Real { return x.negated().from(x, nil) }

// Sqrt is the root that is not negative. It panics with *NegativeRoot if x is
// negative.
func (x *Real) Sqrt() *Real {
	z := x.rooted()
	if x.height == 0 {
		return z
	}
	z.height = max(z.height, x.height/2)
	if z.op != root || z.x != x {
		z.origin = &origin{x: x, root: true}
	}
	return z
}
