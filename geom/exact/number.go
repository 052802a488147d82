package exact

// Numbers of a tower: one element of its ring over one whole denominator. (A fraction
// for each coefficient was 9 to 37 times slower.)

// number is num/den in lowest terms: den > 0, and no prime divides den and all
// coefficients of num. So it is 0 as soon as it is written 0.
type number struct {
	t   *tower
	num *element
	den integer
}

// fraction is num/den in lowest terms; den is not 0.
func (t *tower) fraction(num *element, den integer) *number {
	if num.isZero() {
		den = one
	}
	if den.sign() < 0 {
		num, den = num.neg(), den.neg()
	}
	if g := num.commonDivisor(den); !g.isOne() {
		num, den = num.shrink(g), den.quo(g)
	}
	x := &number{t: t, num: num, den: den}
	t.checkSize(x)
	return x
}

func (t *tower) whole(n integer) *number {
	return &number{t: t, num: constant(n), den: one}
}

func (x *number) isZero() bool { return x.num.isZero() }

func (x *number) add(y *number) *number {
	if x.den.equal(y.den) {
		return x.t.fraction(x.num.add(y.num), x.den)
	}
	g := x.den.gcd(y.den)
	p, q := x.den.quo(g), y.den.quo(g)
	return x.t.fraction(x.num.scale(q).add(y.num.scale(p)), x.den.mul(q))
}

func (x *number) neg() *number { return &number{t: x.t, num: x.num.neg(), den: x.den} }

func (x *number) sub(y *number) *number { return x.add(y.neg()) }

func (x *number) mul(y *number) *number {
	return x.t.fraction(x.t.mul(x.num, y.num), x.den.mul(y.den))
}

func (x *number) scale(num, den integer) *number {
	return x.t.fraction(x.num.scale(num), x.den.mul(den))
}

func (x *number) half() *number { return x.scale(one, integer{k: 2}) }

// div is x/y for y ≠ 0.
func (x *number) div(y *number) *number {
	inverse, n := x.t.invert(y.num)
	return x.t.fraction(x.t.mul(x.num, inverse).scale(y.den), x.den.mul(n))
}

// radicand writes x as f²·d with f rational, d an integral element whose
// coefficients share no square of a small prime.
func (x *number) radicand() (f *number, d *element) {
	z := x.num.scale(x.den)
	g := z.content()
	s, rest := g.squarePart()
	return x.t.fraction(constant(s), x.den), z.shrink(g).scale(rest)
}
