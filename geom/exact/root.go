package exact

// Square roots in a tower: found in it, denested, or adjoined as a new level.
//
// A root √(a + b√e) over a field K is the sum of roots over K if a² - b²e is a square
// s² in K: (√(2(a + s)) + √(2(a - s)))/2. (Of the two criteria of Borodin, Fagin,
// Hopcroft and Tompa, Decreasing the nesting depth of expressions involving square
// roots, J. Symbolic Computation 1 (1985), this is the first; Landau, Simplification of
// nested radicals, SIAM J. Computing 21 (1992), has the general case. Both from
// memory.) A root that could be denested and is not makes the tower larger than it
// need be, and nothing else.

// sqrt is the root of a number x > 0, adjoined if the tower has none.
func (t *tower) sqrt(x *number) *number {
	f, d := x.radicand()
	return t.elementRoot(d).mul(f)
}

// elementRoot is the root of a positive element.
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

// levelsToDenest bounds the levels of a radicand that is tried: its norm can have a
// term for each set of these but the highest.
const levelsToDenest = 6

// denested is a root of d = a + b√e if its norm a² - b²e is a square s² below the
// level of √e: with u = √(2(a + s)), it is u/2 + (b/u)√e. Of u and √(2(a - s)), which
// is 2b√e/u, the one with the shorter radicand is adjoined. (Were s allowed to stand
// higher, denesting u might lead back to d.)
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
