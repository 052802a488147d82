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

// levelsToDenest bounds the norm of a radicand, which can have a term for each
// set of its levels but one.
const levelsToDenest = 6

// denested is a root of d = a + b√e when its norm a² - b²e is a square s²
// below the level of √e: with u = √(2(a + s)), it is u/2 + (b/u)√e. Only u has
// to be adjoined, a root over a smaller field. (Were s allowed to stand higher,
// denesting u might lead back to d.)
func (t *tower) denested(d *element) *number {
	n := d.level
	if n <= baseLevels || d.levels().count() > levelsToDenest {
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
