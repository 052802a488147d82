package exact

// A proof by ramification that an element is no square, which spares the search over S'.
//
// Let L be the field of some levels, x an element of a subfield K of it, and q a prime
// that divides neither 2·3·5·7 nor the norm of a radicand of L. Then q is unramified in L:
// the levels of roots ramify only above 2 and their radicands, and the base only above 3
// and 5 (7 divides the index of the polynomials in a generator). If x is a square in L,
// then K(√x) lies in L and is unramified over q as well, so that the primes of K above q
// divide x to even powers. Then q divides the norm of x to an even power; and so it
// does when the norm is taken from level to level, over those that occur only.

// ramifies tells whether a prime proves that x is no square in the field of the levels in
// within with those of x.
func (t *tower) ramifies(x *element, within levelSet) bool {
	norm, ok := t.wholeNorm(x)
	if !ok {
		return false
	}
	rest := norm.abs().coprimeTo(integer{k: 2 * 3 * 5 * 7})
	for j := range within.with(t.close(x.levels())).each {
		if j <= baseLevels {
			continue
		}
		l := &t.levels[j]
		if l.norm.sign() == 0 {
			if l.norm, ok = t.wholeNorm(l.radicand); !ok {
				return false
			}
		}
		rest = rest.coprimeTo(l.norm)
	}
	_, square := rest.sqrt()
	return !square
}

// mostNormBits is the length of an element whose norm is found quickly.
const mostNormBits = 1 << 14

// wholeNorm takes the norm of x from level to level until it is whole; false if that
// would take long, or comes to 0. In the base it is the norm but for squares of
// whole numbers and powers of 7 (see otherConjugates).
func (t *tower) wholeNorm(x *element) (integer, bool) {
	if terms, bits := x.size(); terms*bits > mostNormBits {
		return integer{}, false
	}
	for x.level > baseLevels {
		x = t.norm(x)
	}
	for x.level > 0 {
		x = t.mul(x, t.otherConjugates(x))
	}
	return x.n, x.n.sign() != 0
}

// coprimeTo is n > 0 without the primes that divide m.
func (n integer) coprimeTo(m integer) integer {
	for {
		g := n.gcd(m)
		if g.isOne() {
			return n
		}
		n = n.quo(g)
	}
}
