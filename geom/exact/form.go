package exact

// Exact forms: a number written out in the tower of its field, on demand and once.
// A form that is written 0 proves that the number is 0. The converse holds as far as
// no dependence between the roots of the tower has been missed, and so is never
// relied on.

import "math/big"

// form is the exact form of x, or a panic with *Undecided.
func (x *Real) form() *number {
	var n *number
	if spent := x.field.spend(1, func() { n = x.exactly() }); spent != nil {
		panic(&Undecided{Why: spent.why, Probably: x.approximately()})
	}
	return n
}

// exactly is the exact form of x in the tower as it is now; within a budget (see
// spend).
func (x *Real) exactly() *number {
	t := x.field.tower
	if x.exact == nil {
		x.exact = x.workOut(t)
		x.simplify()
	} else if x.exact.t != t {
		x.exact = x.exact.in(t)
	}
	return x.exact
}

// simplify makes x a ratio if that is what it has turned out to be.
func (x *Real) simplify() {
	num, den := x.exact.num, x.exact.den
	if num.level == 0 && num.n.wide == nil && den.wide == nil {
		r := x.field.ratio(num.n.k, den.k)
		r.exact = x.exact
		x.become(r)
	}
}

// workOut is the exact form from those of the operands.
func (x *Real) workOut(t *tower) *number {
	switch x.op {
	case sum:
		return x.x.exactly().add(x.y.exactly())
	case difference:
		return x.x.exactly().sub(x.y.exactly())
	case product:
		return x.x.exactly().mul(x.y.exactly())
	case quotient:
		return x.x.exactly().div(x.y.exactly())
	case negation:
		return x.x.exactly().neg()
	case root:
		return t.sqrt(x.x.exactly())
	}
	return t.fraction(constant(integer{k: x.num}), integer{k: x.den})
}

// Rational tells whether x is a fraction, and which. Its numerator in the exact
// form is an algebraic integer: if x is a fraction, that is a whole number, even
// where it is not written as one because roots depend on each other unnoticed.
func (x *Real) Rational() (*big.Rat, bool) {
	if x.isRatio() {
		return big.NewRat(x.num, x.den), true
	}
	if x.field.rough {
		return nil, false
	}
	n := x.form()
	if n.num.level == 0 {
		return new(big.Rat).SetFrac(n.num.n.big(), n.den.big()), true
	}
	enclose := func(prec uint) enclosure { return n.t.enclose(n.num, prec) }
	lo, hi := scaled(enclose, big.NewInt(1), 64)
	for _, m := range []*big.Int{lo, hi} {
		if r := new(big.Rat).SetFrac(m, n.den.big()); x.Equal(x.field.Rat(r)) {
			return r, true
		}
	}
	return nil, false
}
