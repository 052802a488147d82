package exact

// sqrt is the root of a number x > 0, adjoined if the tower has none.
func (t *tower) sqrt(x *number) *number {
	f, d := x.radicand()
	return t.elementRoot(d).mul(f)
}

func (t *tower) elementRoot(d *element) *number {
	for i := baseLevels + 1; i < len(t.levels); i++ {
		if t.levels[i].radicand.equal(d) {
			return t.rootAt(i)
		}
	}
	r := t.squareRoot(d, t.all())
	if r == nil {
		r = t.denested(d)
	}
	switch {
	case r == nil:
		return t.adjoin(d)
	case r.sign() < 0:
		return r.neg()
	}
	return r
}

// denested is a root of d = a + b√e when its norm a² - b²e is a square s²
// below the level of √e: with u = √(2(a + s)), it is u/2 + (b/u)√e. Only u has
// to be adjoined, a root over a smaller field. (Were s allowed to stand higher,
// denesting u might lead back to d.)
func (t *tower) denested(d *element) *number {
	n := d.level
	if n <= baseLevels {
		return nil
	}
	s := t.numberRoot(t.fraction(t.norm(d), one), t.below(n))
	if s == nil {
		return nil
	}
	a, b := t.fraction(d.a, one), t.fraction(d.b, one)
	p, q := a.add(s).add(a.add(s)), a.sub(s).add(a.sub(s))
	if weight(q) < weight(p) {
		p = q
	}
	u := t.sqrt(p)
	return u.half().add(b.div(u).mul(t.rootAt(n)))
}

// weight measures how long a radicand is, to choose the shorter.
func weight(x *number) int {
	_, d := x.radicand()
	terms, bits := d.size()
	return terms<<20 + bits
}

// inertPrimes generate, with 2cos 40°, a field of p³ elements (p ≢ ±1 mod 9),
// and are ≡ 3 (mod 4), so that roots in it are powers.
var inertPrimes = [...]int64{11, 23, 47, 59, 67, 79, 83, 103, 131, 139}

// baseRoot is the root of an element of the base, if it is a square: Hensel's
// lifting at an inert prime, proved by squaring.
func (t *tower) baseRoot(x *element) *number {
	if x.level == 0 {
		if s, ok := x.n.sqrt(); ok {
			return t.whole(s)
		}
		return nil
	}
	for _, p := range inertPrimes {
		m := modulus{t, integer{k: p}}
		if residue := m.reduce(x); !residue.isZero() {
			return m.lift(x, residue)
		}
	}
	panic(&exhausted{"a root in the field of 2cos 40° with a radicand that 10 primes divide"})
}

// modulus reduces coefficients into -n/2..n/2.
type modulus struct {
	t *tower
	n integer
}

func (m modulus) reduce(x *element) *element {
	if x.level > 0 {
		return join(x.level, m.reduce(x.a), m.reduce(x.b))
	}
	return constant(x.n.residue(m.n))
}

func (m modulus) mul(x, y *element) *element { return m.reduce(m.t.mul(x, y)) }

func (m modulus) power(x *element, e integer) *element {
	r := unit
	for i := e.bitLen() - 1; i >= 0; i-- {
		r = m.mul(r, r)
		if e.big().Bit(i) == 1 {
			r = m.mul(r, x)
		}
	}
	return r
}

// lift finds z = 1/√x modulo higher and higher powers of p by
// z ← z + z(1 - xz²)/2, then √x = xz, whose coefficients are about half as
// long as those of x.
func (m modulus) lift(x, residue *element) *number {
	q := m.n.mul(m.n).mul(m.n)
	z := m.power(residue, q.sub(integer{k: 3}).quo(integer{k: 4}))
	if !m.mul(m.mul(z, z), residue).isOne() {
		return nil
	}
	_, length := x.size()
	for {
		if m.n.bitLen() > length/2+16 {
			y := m.mul(m.reduce(x), z)
			if m.t.mul(y, y).equal(x) {
				return m.t.fraction(y, one)
			}
			return nil
		}
		m.n = m.n.mul(m.n)
		half := m.n.add(one).quo(integer{k: 2})
		e := unit.sub(m.mul(m.mul(z, z), m.reduce(x)))
		z = m.reduce(z.add(m.mul(z, e).scale(half)))
	}
}
