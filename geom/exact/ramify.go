package exact

// ramifies proves of some x that it is no square in the field of the levels
// within, which hold x, by a prime q that would have to ramify there.
//
// If x is a square in the field, adjoining √x to a smaller field that holds x
// ramifies nowhere but above 2, the 3 and 5 of the base (7 divides an index
// there) and the primes that divide norms of radicands. At any other q the exponents of the primes above q in x
// are even, and so is that of q in the norm of x, taken level by level.
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

// mostNormBits is the length of an element whose norm is quickly found.
const mostNormBits = 1 << 14

// wholeNorm takes the norm of x from level to level until it is whole; false
// if that would be too long.
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
