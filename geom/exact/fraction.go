package exact

// Numbers as fractions of a formula: an expansion over a product of registers. The
// denominators are kept as products, so that what two of them share is not multiplied in twice
// when fractions are added. So formulas stay short, and the bounds for their conjugates low.

// fraction is num over the product of den, whose factors are sorted by register.
type fraction struct {
	num *expansion
	den []factor // by register
}

// factor is a power of a register that is not 0.
type factor struct{ register, power int }

// fractionOf is a number as a fraction, worked out once. That of a joint is rid of terms that
// prove to be 0, so that they do not go into all that is built on it.
func (f *formula) fractionOf(x *Real) fraction {
	if x.isRatio() {
		return f.quotient(fraction{num: f.number(x.num)}, fraction{num: f.number(x.den)})
	}
	z, ok := f.fractions[x]
	if !ok {
		z = f.workOut(x)
		if x.joint > 0 {
			z.num = f.settled(z.num)
		}
		f.fractions[x] = z
	}
	return z
}

// settled is x without terms that prove to be 0, such as roots that went into a point and out
// again.
func (f *formula) settled(x *expansion) *expansion {
	if x.level == 0 {
		return x
	}
	if zero, _ := f.vanish(x.b.coefficients()); zero {
		return f.settled(x.a)
	}
	return f.join(x.level, f.settled(x.a), x.b)
}

// workOut is the fraction of a number from those of its operands.
func (f *formula) workOut(x *Real) fraction {
	if c, ok := f.field.turns[x]; ok {
		half := f.fractionOf(c.factor.Mul(x.field.ratio(1, 2)))
		return fraction{f.times(half.num, plain(f.doubleCosine(c.angle))), half.den}
	}
	switch x.op {
	case sum:
		return f.added(f.plus, f.fractionOf(x.x), f.fractionOf(x.y))
	case difference:
		return f.added(f.minus, f.fractionOf(x.x), f.fractionOf(x.y))
	case product:
		return f.multiplied(f.fractionOf(x.x), f.fractionOf(x.y))
	case quotient:
		return f.quotient(f.fractionOf(x.x), f.fractionOf(x.y))
	case negation:
		y := f.fractionOf(x.x)
		return fraction{f.opposite(y.num), y.den}
	case root:
		return f.squareRoot(f.fractionOf(x.x))
	}
	n := x.exactly()
	return f.quotient(fraction{num: f.element(n.num)}, fraction{num: plain(f.constant(n.den))})
}

// added is x + y or x - y, as op adds or subtracts, over the least common denominator. What
// all terms share is left out of the sum and multiplied in again, so that it is still seen
// to be a factor.
func (f *formula) added(op func(x, y *expansion) *expansion, x, y fraction) fraction {
	p, q := f.scaled(x.num, over(y.den, x.den)), f.scaled(y.num, over(x.den, y.den))
	shared := f.content(p, q)
	num := op(f.divided(p, shared), f.divided(q, shared))
	return f.cancelled(f.scaled(num, shared), merged(x.den, y.den, most))
}

// multiplied is x·y.
func (f *formula) multiplied(x, y fraction) fraction {
	p, q := f.content(x.num), f.content(y.num)
	num := f.times(f.divided(x.num, p), f.divided(y.num, q))
	return f.cancelled(f.scaled(num, merged(p, q, plus)), merged(x.den, y.den, plus))
}

// cancelled is num/den without the factors that den and all terms of num share.
func (f *formula) cancelled(num *expansion, den []factor) fraction {
	shared := merged(f.content(num), den, least)
	return fraction{f.divided(num, shared), over(den, shared)}
}

// content is the factors that all terms of some expansions share.
func (f *formula) content(xs ...*expansion) (shared []factor) {
	first := true
	for _, x := range xs {
		for _, c := range x.coefficients() {
			switch {
			case f.isConstant(c, 0):
			case first:
				shared, first = f.factors(c), false
			default:
				shared = merged(shared, f.factors(c), least)
			}
		}
	}
	return shared
}

// divided is x without factors that all of its terms have.
func (f *formula) divided(x *expansion, factors []factor) *expansion {
	switch {
	case len(factors) == 0 || f.isZero(x):
		return x
	case x.level > 0:
		return f.join(x.level, f.divided(x.a, factors), f.divided(x.b, factors))
	}
	return f.scaled(f.number(1), over(f.factors(x.register), factors))
}

// quotient is x/y for y ≠ 0. Both are multiplied by conjugates of the numerator of y until that
// is a register.
func (f *formula) quotient(x, y fraction) fraction {
	for y.num.level > 0 {
		shared := f.content(y.num)
		conjugate, norm := f.norm(f.divided(y.num, shared))
		if norm.level == 0 {
			f.sign(norm.register) // it must not be 0, which it is if the root hangs on others
		}
		x = f.multiplied(x, fraction{conjugate, nil})
		y.num = f.scaled(norm, shared)
	}
	bottom := merged(over(x.den, y.den), f.factors(y.num.register), plus)
	return f.cancelled(f.scaled(x.num, over(y.den, x.den)), bottom)
}

// factors are those of a register: of a product, its operands'; of a whole number 2, 3, 5 and
// the rest.
func (f *formula) factors(x int) []factor {
	if f.registers[x].factors == nil {
		f.registers[x].factors = f.factorised(x)
	}
	return f.registers[x].factors
}

// factorised is factors, worked out.
func (f *formula) factorised(x int) []factor {
	r := f.registers[x]
	switch {
	case f.isConstant(x, 1):
		return []factor{}
	case r.op == product:
		return merged(f.factors(r.x), f.factors(r.y), plus)
	case r.op == negation:
		return merged(f.factors(r.x), []factor{{f.constant(integer{k: -1}), 1}}, plus)
	case r.op == ratio && r.n.sign() != 0:
		for _, p := range []int64{2, 3, 5} {
			if !f.isConstant(x, p) && r.n.mod(uint64(p)) == 0 {
				rest := f.factors(f.constant(r.n.quo(integer{k: p})))
				return merged([]factor{{f.constant(integer{k: p}), 1}}, rest, plus)
			}
		}
	}
	return []factor{{x, 1}}
}

// squareRoot is √x for x > 0. Of the powers of factors only the odd ones stay under the root.
func (f *formula) squareRoot(x fraction) fraction {
	square, top := x.num, []factor(nil)
	if x.num.level == 0 {
		square, top = f.number(1), f.factors(x.num.register)
	}
	up := merged(top, x.den, func(a, b int) int { return max(0, (a-b)/2) })
	down := merged(top, x.den, func(a, b int) int { return max(0, (b-a+1)/2) })
	num := f.scaled(f.number(1), up)
	for _, d := range merged(top, x.den, func(a, b int) int { return (a + b) % 2 }) {
		if root, ok := f.rootOfConstant(d.register); ok {
			num = f.times(num, plain(root))
		} else {
			square = f.scaled(square, []factor{d})
		}
	}
	num = f.times(num, f.root(square))
	if f.signOf(up)*f.signOf(down) < 0 {
		num = f.opposite(num)
	}
	return fraction{num, down}
}

// rootOfConstant is √2 = 2cos 45°, √3 = 2cos 30° or √5 = 4cos 36° - 1, if register x is that
// whole number.
func (f *formula) rootOfConstant(x int) (register int, ok bool) {
	switch {
	case f.isConstant(x, 2):
		return f.doubleCosine(turn{1, 8}), true
	case f.isConstant(x, 3):
		return f.doubleCosine(turn{1, 12}), true
	case f.isConstant(x, 5):
		c := f.doubleCosine(turn{1, 10})
		return f.difference(f.sum(c, c), f.constant(one)), true
	}
	return 0, false
}

// signOf is the sign of a product.
func (f *formula) signOf(factors []factor) int {
	sign := 1
	for _, d := range factors {
		if d.power%2 == 1 {
			sign *= f.sign(d.register)
		}
	}
	return sign
}

// scaled is x times factors.
func (f *formula) scaled(x *expansion, factors []factor) *expansion {
	for _, d := range factors {
		for range d.power {
			x = f.times(x, plain(d.register))
		}
	}
	return x
}

func plus(a, b int) int  { return a + b }
func least(a, b int) int { return min(a, b) }
func most(a, b int) int  { return max(a, b) }

// over is x without the factors of y.
func over(x, y []factor) []factor {
	return merged(x, y, func(a, b int) int { return max(0, a-b) })
}

// merged joins two lists of factors, each sorted by register; power tells the power of a factor
// from those in x and y, 0 where it is missing.
func merged(x, y []factor, power func(a, b int) int) (out []factor) {
	for len(x) > 0 || len(y) > 0 {
		var d factor
		switch {
		case len(y) == 0 || len(x) > 0 && x[0].register < y[0].register:
			d, x = factor{x[0].register, power(x[0].power, 0)}, x[1:]
		case len(x) == 0 || y[0].register < x[0].register:
			d, y = factor{y[0].register, power(0, y[0].power)}, y[1:]
		default:
			d, x, y = factor{x[0].register, power(x[0].power, y[0].power)}, x[1:], y[1:]
		}
		if d.power > 0 {
			out = append(out, d)
		}
	}
	return out
}
