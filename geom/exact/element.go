package exact

// The ring of whole polynomials in the roots of a tower. Its elements are sparse and
// recursive: a + b·r for the highest root r that occurs. Equal elements are written
// alike, so being 0 is a matter of form, as long as no root lies in the field of
// the lower ones (see tower.go).

// element is a + b·r for the root r of its level, with b ≠ 0 and a and b from lower
// levels; or the whole number n at level 0.
//
// At a base level, whose generator θ has an odd degree, it is a polynomial in θ in
// Horner's form: b may itself stand at that level, so that the whole has a degree
// below that of θ.
type element struct {
	level int
	n     integer
	a, b  *element
}

var (
	zero   = &element{}
	unit   = &element{n: one}
	common = smallElements()
)

// smallElements are shared, since most coefficients are tiny.
func smallElements() (table [33]*element) {
	for i := range table {
		table[i] = &element{n: integer{k: int64(i - 16)}}
	}
	table[16], table[17] = zero, unit
	return table
}

// isSmall tells whether there is a shared element of n.
func (n integer) isSmall() bool { return n.wide == nil && n.k >= -16 && n.k <= 16 }

// constant is n as an element.
func constant(n integer) *element {
	if n.isSmall() {
		return common[n.k+16]
	}
	return &element{n: n}
}

func (x *element) isZero() bool { return x.level == 0 && x.n.wide == nil && x.n.k == 0 }
func (x *element) isOne() bool  { return x.level == 0 && x.n.isOne() }

// join is a + b·r at a level.
func join(level int, a, b *element) *element {
	if b.isZero() {
		return a
	}
	return &element{level: level, a: a, b: b}
}

// pair is m + n·r at a level, made at once: half of all elements are such.
func pair(level int, m, n integer) *element {
	if m.isSmall() || n.isSmall() {
		return join(level, constant(m), constant(n))
	}
	x := new([3]element)
	x[1].n, x[2].n = m, n
	x[0] = element{level: level, a: &x[1], b: &x[2]}
	return &x[0]
}

func (x *element) equal(y *element) bool {
	switch {
	case x == y:
		return true
	case x.level != y.level:
		return false
	case x.level == 0:
		return x.n.equal(y.n)
	}
	return x.a.equal(y.a) && x.b.equal(y.b)
}

func (x *element) add(y *element) *element {
	if x.level < y.level {
		x, y = y, x
	}
	switch {
	case x.level == 0:
		return constant(x.n.add(y.n))
	case y.isZero():
		return x
	case x.level > y.level:
		return &element{level: x.level, a: x.a.add(y), b: x.b}
	case x.isPlain() && y.isPlain():
		return pair(x.level, x.a.n.add(y.a.n), x.b.n.add(y.b.n))
	}
	return join(x.level, x.a.add(y.a), x.b.add(y.b))
}

func (x *element) sub(y *element) *element {
	switch {
	case x.level == 0 && y.level == 0:
		return constant(x.n.sub(y.n))
	case y.isZero():
		return x
	case x.level > y.level:
		return &element{level: x.level, a: x.a.sub(y), b: x.b}
	case x.level < y.level:
		return &element{level: y.level, a: x.sub(y.a), b: y.b.neg()}
	}
	return join(x.level, x.a.sub(y.a), x.b.sub(y.b))
}

func (x *element) neg() *element {
	if x.level == 0 {
		return constant(x.n.neg())
	}
	return &element{level: x.level, a: x.a.neg(), b: x.b.neg()}
}

// scale is x·n.
func (x *element) scale(n integer) *element {
	switch {
	case n.isOne():
		return x
	case n.sign() == 0:
		return zero
	case x.level == 0:
		return constant(x.n.mul(n))
	}
	return &element{level: x.level, a: x.a.scale(n), b: x.b.scale(n)}
}

// shrink is x/n, where n divides every coefficient.
func (x *element) shrink(n integer) *element {
	switch {
	case n.isOne():
		return x
	case x.level == 0:
		return constant(x.n.quo(n))
	}
	return &element{level: x.level, a: x.a.shrink(n), b: x.b.shrink(n)}
}

// commonDivisor is the greatest common divisor of g and all coefficients of x.
func (x *element) commonDivisor(g integer) integer {
	if g.isOne() {
		return g
	}
	if x.level == 0 {
		return x.n.gcd(g)
	}
	return x.a.commonDivisor(x.b.commonDivisor(g))
}

// content is the greatest common divisor of the coefficients.
func (x *element) content() integer { return x.commonDivisor(integer{}) }

// size counts the non-zero coefficients and the bits of the longest.
func (x *element) size() (terms, bits int) {
	if x.level == 0 {
		if x.isZero() {
			return 0, 0
		}
		return 1, x.n.bitLen()
	}
	ta, ba := x.a.size()
	tb, bb := x.b.size()
	return ta + tb, max(ba, bb)
}

// levels are those whose roots occur in x.
func (x *element) levels() (s levelSet) {
	x.gatherLevels(&s)
	return s
}

func (x *element) gatherLevels(s *levelSet) {
	if x.level > 0 {
		s.add(x.level)
		x.a.gatherLevels(s)
		x.b.gatherLevels(s)
	}
}

// mul is x·y in the tower's ring.
func (t *tower) mul(x, y *element) *element {
	if x.level < y.level {
		x, y = y, x
	}
	switch {
	case x.level == 0:
		t.work += 30 + (x.n.bitLen()>>6)*(y.n.bitLen()>>6)
		t.checkWork()
		return constant(x.n.mul(y.n))
	case y.isZero():
		return zero
	case y.isOne():
		return x
	case x.level > y.level:
		return join(x.level, t.mul(x.a, y), t.mul(x.b, y))
	case x.level <= baseLevels:
		return t.mulBase(x, y)
	case x == y:
		return t.square(x)
	}
	t.checkWork()
	return t.mulSame(x, y)
}

// mulSame multiplies two elements of one level by three products, where the plain
// rule takes four (Karatsuba and Ofman 1962).
func (t *tower) mulSame(x, y *element) *element {
	if x.isPlain() && y.isPlain() && t.levels[x.level].radicand.level == 0 {
		return t.mulPlain(x, y)
	}
	bb := t.mul(x.b, y.b)
	rr := t.mul(bb, t.levels[x.level].radicand)
	switch {
	case x.a.isZero() && y.a.isZero():
		return rr
	case x.a.isZero():
		return join(x.level, rr, t.mul(x.b, y.a))
	case y.a.isZero():
		return join(x.level, rr, t.mul(x.a, y.b))
	}
	aa := t.mul(x.a, y.a)
	ab := t.mul(x.a.add(x.b), y.a.add(y.b)).subBoth(aa, bb)
	return join(x.level, aa.add(rr), ab)
}

// isPlain tells whether x is m + n·r with whole m and n.
func (x *element) isPlain() bool { return x.a.level == 0 && x.b.level == 0 }

// mulPlain multiplies two elements m + n·r over the root r of a whole number.
func (t *tower) mulPlain(x, y *element) *element {
	a, b, c, d := x.a.n, x.b.n, y.a.n, y.b.n
	t.work += 120 + 4*(a.bitLen()>>6)*(c.bitLen()>>6)
	rr := b.mul(t.levels[x.level].radicand.n)
	return pair(x.level, sumOfProducts(a, c, rr, d), sumOfProducts(a, d, b, c))
}

// subBoth is x - y - z.
func (x *element) subBoth(y, z *element) *element {
	if x.level == 0 || x.level != y.level || x.level != z.level {
		if x.level == 0 && y.level == 0 && z.level == 0 {
			return constant(x.n.subBoth(y.n, z.n))
		}
		return x.sub(y).sub(z)
	}
	if x.isPlain() && y.isPlain() && z.isPlain() {
		return pair(x.level, x.a.n.subBoth(y.a.n, z.a.n), x.b.n.subBoth(y.b.n, z.b.n))
	}
	return join(x.level, x.a.subBoth(y.a, z.a), x.b.subBoth(y.b, z.b))
}

// square is x·x.
func (t *tower) square(x *element) *element {
	bb := t.mul(t.mul(x.b, x.b), t.levels[x.level].radicand)
	if x.a.isZero() {
		return bb
	}
	ab := t.mul(x.a, x.b)
	return join(x.level, t.mul(x.a, x.a).add(bb), ab.add(ab))
}

// norm is x times its conjugate over the level below: a² - b²d for a + b√d.
func (t *tower) norm(x *element) *element {
	bb := t.mul(x.b, x.b)
	return t.mul(x.a, x.a).sub(t.mul(bb, t.levels[x.level].radicand))
}

// conjugate is a - b√d for x = a + b√d.
func conjugate(x *element) *element {
	return &element{level: x.level, a: x.a, b: x.b.neg()}
}

// invert finds y and a whole n ≠ 0 with x·y = n, for x ≠ 0: from level to level y is
// multiplied by a conjugate, and x·y is a norm. A norm that is written 0 shows that
// √d = ±a/b lies in the field below.
func (t *tower) invert(x *element) (y *element, n integer) {
	if x.level == 0 {
		return unit, x.n
	}
	if g := x.content(); !g.isOne() {
		y, n = t.invert(x.shrink(g))
		return y, n.mul(g)
	}
	if x.level <= baseLevels {
		return t.invertBase(x)
	}
	norm := t.norm(x)
	if norm.isZero() {
		panic(&missed{t, conjugate(x)})
	}
	y, n = t.invert(norm)
	y = t.mul(conjugate(x), y)
	if g := y.commonDivisor(n); !g.isOne() {
		y, n = y.shrink(g), n.quo(g)
	}
	return y, n
}
