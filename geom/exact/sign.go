package exact

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

// decide goes up the ladder: what is known, the signs of factors, a comparison
// of squares, a longer enclosure, and then what alone can say that a sum is 0:
// the exact form, an identity where that would be too long, or its conjugates, which
// come first where some cosine is none of whole degrees: those are quick to write out.
func (x *Real) decide() int {
	if x.exact != nil && x.exact.isZero() {
		return x.settle(0)
	}
	if x.field.rough {
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

// byConjugates is the sign if the conjugates tell whether x is 0.
func (x *Real) byConjugates() (sign int, ok bool) {
	switch x.provedByConjugates() {
	case isZero:
		return 0, true
	case isNotZero:
		return x.refined(nil), true
	}
	return 0, false
}

// writtenOut works out the exact form of x, unless x is surely not 0 or proves
// to be 0 by an identity. That is tried when a small part of the budget has not
// been enough, and first of all once it was not in this field, as long as
// identities are found there more often than not.
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

// smallPart of the budget, one in so many, is enough for nearly every figure.
const smallPart = 100

// settle notes a sign, in the interval too; not a 0 that an enclosure was
// trusted for, on the way.
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

// refined encloses x, which is thought not to be 0, until it shows its sign.
// If it still does not at mostBits, then either the budget was spent before
// the exact form was there, or a dependence between roots was missed.
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

// signOfFactors decides anything but a sum from its operands.
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

// comparedSquares decides p√a - q√b with rational p and q from p²a - q²b,
// without adjoining a root.
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
