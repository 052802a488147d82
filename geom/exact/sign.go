package exact

// The sign of a number, by the cheapest means that can tell it. Three rules hold throughout:
//
//   - A number is 0 only if its exact form is written 0 (form.go), or more primes
//     divide its conjugates than could if it were not (conjugates.go), which are proofs; or
//     if it is 0 by an identity between the numbers that it is built on (cut.go), which
//     is wrong with a chance below 2^-80.
//   - A number is positive or negative only if an enclosure lies on that side of 0.
//     That its form is not written 0, or that its image modulo a prime is not 0, is
//     never enough: a dependence between the roots may have been missed.
//   - What the budget does not reach is a panic with *Undecided.

// Sign is -1, 0 or 1. It panics with *Undecided when the budget is spent.
func (x *Real) Sign() int {
	s, ok := x.bounds.sign()
	if n := x.field.notes; n != nil {
		return n.sign(x)
	}
	if !ok && x.sign != 0 {
		s, ok = int(x.sign), true
	}
	if !ok {
		s = x.decide()
	}
	if s == 0 && x.height > 0 {
		x.field.free.vanish(x)
	}
	return s
}

// IsZero is Sign() == 0.
func (x *Real) IsZero() bool {
	if n := x.field.notes; n != nil {
		return n.isZero(x)
	}
	return x.Sign() == 0
}

// Cmp is the sign of x - y.
func (x *Real) Cmp(y *Real) int {
	switch {
	case x == y:
		return 0
	case x.field.rough: // the intervals may be off: see cancelled
	case x.bounds.lo > y.bounds.hi:
		return 1
	case x.bounds.hi < y.bounds.lo:
		return -1
	}
	return x.Sub(y).Sign()
}

// Equal is Cmp == 0.
func (x *Real) Equal(y *Real) bool {
	if n := x.field.notes; n != nil {
		return n.isZero(x.Sub(y))
	}
	return x.Cmp(y) == 0
}

// decide is the sign of an x whose interval of floats cannot tell it. A rough field
// takes x for 0. Else what may tell it is, in turn: the signs of factors; a
// comparison of squares; longer enclosures; and for an x that still may be 0 its
// exact form, or an identity where that form would be too long, and its
// conjugates. These come first where some cosine is none of whole degrees or their
// halvings, since forms over the larger bases are long.
func (x *Real) decide() int {
	if x.field.rough || x.exact != nil && x.exact.isZero() {
		return x.settle(0)
	}
	if s, ok := x.signOfFactors(); ok {
		return x.settle(s)
	}
	if s, ok := x.comparedSquares(); ok {
		return x.settle(s)
	}
	for _, prec := range []uint{128, 512} {
		if s, ok := x.enclose(prec).sign(); ok {
			return x.settle(s)
		}
	}
	if x.field.trust > 0 {
		s, _ := x.enclose(x.field.trust).sign()
		return s
	}
	if x.field.fine {
		if s, ok := x.byConjugates(); ok {
			return x.settle(s)
		}
	}
	spent, identity := x.writtenOut()
	if identity || x.exact != nil && x.exact.isZero() {
		return x.settle(0)
	}
	if spent != nil && !x.field.fine && len(x.field.turns) > 0 {
		if s, ok := x.byConjugates(); ok {
			return x.settle(s)
		}
	}
	return x.settle(x.refined(spent))
}

// byConjugates is the sign, if the conjugates of x prove that it is 0 or that it is
// not.
func (x *Real) byConjugates() (sign int, ok bool) {
	switch x.provedByConjugates() {
	case isZero:
		return 0, true
	case isNotZero:
		return x.refined(nil), true
	}
	return 0, false
}

// writtenOut works out the exact form of x, unless x turns out not to be 0 or to be
// 0 by an identity. An identity is sought when a small part of the budget has not
// been enough for the form; and before the form, once that has happened in this
// field, as long as identities are found there more often than not.
func (x *Real) writtenOut() (spent *exhausted, identity bool) {
	f, part := x.field, smallPart
	if f.joints == 0 || f.luck < 0 {
		part = 1
	}
	write := func() {
		if !x.surelyNotZero() {
			x.exactly()
		}
	}
	if part == 1 || !f.spent || !x.hasRoots(rootsWorthCutting) {
		if spent = f.spend(part, write); spent == nil || f.joints == 0 {
			return spent, false
		}
		f.spent = true
	}
	if x.isIdentity() {
		f.luck++
		return nil, true
	}
	f.luck--
	if _, ok := x.enclose(mostBits).sign(); ok {
		return nil, false
	}
	if part > 1 {
		spent = f.spend(1, write)
	}
	return spent, false
}

// smallPart is the part of the budget, one in so many, that is enough for nearly every
// figure.
const smallPart = 100

// settle notes the sign of x and narrows its interval by it. A 0 that rests on a
// trusted enclosure is not noted.
func (x *Real) settle(sign int) int {
	if sign == 0 {
		if x.field.trust == 0 {
			x.become(&Real{field: x.field, den: 1, bounds: nothing})
		}
		return 0
	}
	x.sign = int8(sign)
	x.bounds = x.bounds.meet(x.near.interval())
	return sign
}

// refined encloses x, which is thought not to be 0, until its sign shows. If it does
// not at mostBits, then either the budget was spent before the exact form was there,
// or x is 0 and a dependence between roots was missed, which the sign of the
// exact form then finds.
func (x *Real) refined(spent *exhausted) (sign int) {
	for prec := uint(1024); prec <= mostBits; prec *= 2 {
		if s, ok := x.enclose(prec).sign(); ok {
			return s
		}
	}
	if spent == nil {
		spent = x.field.spend(1, func() { sign = x.exactly().sign() })
	}
	if spent != nil {
		panic(&Undecided{Why: spent.why, Probably: x.approximately()})
	}
	return sign
}

// signOfFactors is the sign of anything but a sum or difference, from its operands.
func (x *Real) signOfFactors() (sign int, ok bool) {
	switch x.op {
	case root:
		return 1, true
	case negation:
		return -x.x.Sign(), true
	case product, quotient:
		if sign = x.x.Sign(); sign != 0 {
			sign *= x.y.Sign()
		}
		return sign, true
	}
	return 0, false
}

// comparedSquares is the sign of p√a - q√b with rational p and q. If these have the
// same sign, it is theirs times the sign of p²a - q²b, for which no root need be
// adjoined.
func (x *Real) comparedSquares() (sign int, ok bool) {
	if x.op != difference && x.op != sum {
		return 0, false
	}
	p, a := x.x.radical()
	q, b := x.y.radical()
	if a == nil || b == nil {
		return 0, false
	}
	if x.op == sum {
		q = q.Neg()
	}
	s := p.Sign()
	switch {
	case s == 0:
		return -q.Sign(), true
	case s*q.Sign() <= 0:
		return s, true
	}
	return s * p.Mul(p).Mul(a).Cmp(q.Mul(q).Mul(b)), true
}

// radical writes x as q√a with rational q, if it is built like that.
func (x *Real) radical() (q, a *Real) {
	switch {
	case x.isRatio():
		return x, x.field.Int(1)
	case x.op == root:
		return x.field.Int(1), x.x
	case x.op == negation:
		if q, a = x.x.radical(); a != nil {
			return q.Neg(), a
		}
	case x.op == product && x.x.isRatio() && x.y.op == root:
		return x.x, x.y.x
	}
	return nil, nil
}
