package exact

// form is the exact form of x, or a panic with *Undecided.
func (x *Real) form() *number {
	var n *number
	if spent := x.field.spend(1, func() { n = x.exactly() }); spent != nil {
		panic(&Undecided{Why: spent.why, Probably: x.approximately()})
	}
	return n
}

// exactly writes x out in the tower and keeps the result.
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
