package exact

// Heights: with what chance a number made from free values is 0 by accident.
//
// A number that is made from free values is an algebraic function of them. The
// height of a function is the sum, over all places of its field, of the orders of
// its poles, divided by the degree of the field. For a quotient of polynomials
// without a common factor it is the higher of their degrees; and
//
//	h(x ± y), h(x·y), h(x/y) ≤ h(x) + h(y),  h(√x) = h(x)/2,  h(constant) = 0
//
// (Lang, Fundamentals of Diophantine Geometry, ch. 3; from memory). A function x
// that is made with r roots satisfies an irreducible equation of degree at most
// 2^r, whose coefficients are polynomials in the variables, without a common
// factor. By Gauss's lemma the degrees of these are at most 2^r·h(x). Where x is
// 0, so is the last of them; and that is 0 everywhere only if x is. So values
// drawn from n for each variable are zeros of an x that is not 0 everywhere with
// a chance of at most 2^r·h(x)/n (Schwartz 1980, Zippel 1979, DeMillo and
// Lipton 1978).
//
// The bounds are proved; what follows from them is sure up to that chance.

import (
	"math"
	"math/big"
)

// Free is r as the value of a variable: at another run the variable may have
// another. Each number made from free values keeps a bound of its height.
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

// degree sums up the numbers made from free values that were decided to be 0.
type degree struct {
	sum    float64 // of 2^r·h(x)
	visits int     // that counted roots
}

// vanish notes that x is 0, maybe only at these values of the variables. The
// chance of that is counted, so for what comes after x is 0 everywhere.
func (d *degree) vanish(x *Real) {
	d.visits++
	d.sum += math.Ldexp(x.height, min(x.roots(d.visits), mostBits))
	x.height, x.origin = 0, nil
}

// origin is what a number was made from that its operands do not tell: at these
// values of the variables it was a fraction, say, or a number that the field had
// already. One number may have several, as √t and √u are one where t = u = 2.
type origin struct {
	x, y   *Real
	root   bool // the number is the root of x
	before *origin
}

// trace adds an origin to those of z.
func (z *Real) trace(o origin) {
	o.before = z.origin
	z.origin = &o
}

// roots counts the roots over the variables that x is made with, on a visit of
// that number.
func (x *Real) roots(visit int) int {
	if x == nil || x.height == 0 || x.visit == visit {
		return 0
	}
	x.visit = visit
	n := x.x.roots(visit) + x.y.roots(visit)
	if x.op == root && x.x.height > 0 {
		n++
	}
	for o := x.origin; o != nil; o = o.before {
		n += o.x.roots(visit) + o.y.roots(visit)
		if o.root {
			n++
		}
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

// Vanished is the binary logarithm of the sum of 2^r·h(x) over the numbers x that
// were decided to be 0 since the last call; -Inf when none of them hangs on a free
// value. If one of them is not 0 everywhere, then values drawn alike from n for
// each variable show it with a chance of at least 1 - 2^Vanished/n.
func (f *Field) Vanished() float64 {
	sum := f.free.sum
	f.free.sum = 0
	return math.Log2(sum)
}

// from keeps, for the bound of z, that it was made from x and y. A number that the field
// has for several purposes only gets a larger bound by that.
func (z *Real) from(x, y *Real) *Real {
	height, traced := x.height, z.hides(x, y)
	if y != nil {
		height, traced = height+y.height, traced || z.hides(y, x)
	}
	z.height = max(z.height, height)
	if traced {
		z.trace(origin{x: x, y: y})
	}
	return z
}

// hides tells whether z, made from x and other, may be without roots that x has:
// those in the origins of x, or all, where z has no operands. What x leaves of
// itself, as in x - x, has none.
func (z *Real) hides(x, other *Real) bool {
	if x.height == 0 || z == x || z.x == x || z.y == x {
		return false
	}
	return x.origin != nil || z.x == nil && x != other && !x.isRatio()
}
