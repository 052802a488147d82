package exact

// Enclosures and signs of elements of a tower.

// enclose bounds an element of the tower.
func (t *tower) enclose(x *element, prec uint) enclosure {
	if x.level == 0 {
		return encloseInteger(x.n, prec)
	}
	z := t.enclose(x.b, prec).mul(t.encloseRoot(x.level, prec), prec)
	if x.a.isZero() {
		return z
	}
	return z.add(t.enclose(x.a, prec), prec)
}

// encloseRoot bounds the root of a level, with at least that precision.
func (t *tower) encloseRoot(i int, prec uint) enclosure {
	l := &t.levels[i]
	if l.root.lo == nil || l.root.prec < prec {
		if i <= baseLevels {
			l.root = t.encloseGenerator(i, prec)
		} else {
			l.root = t.enclose(l.radicand, prec).sqrt(prec)
		}
	}
	return l.root
}

// mostBits is the precision at which an x that is not written 0 is asked whether it is 0
// all the same. It is no bound on how near to 0 a number can be: what comes of the
// question is proved or not decided.
const mostBits = 4096

// sign is that of x, by enclosures. An enclosure of mostBits, and twice as many more as the
// coefficients are long, that still holds 0 suggests that a root depends on lower ones
// unnoticed: a panic with *missed has that proved and mended, or else nothing is decided.
func (t *tower) sign(x *element) int {
	if x.level == 0 {
		return x.n.sign()
	}
	_, length := x.size()
	for prec := uint(128); ; prec *= 2 {
		if s, ok := t.enclose(x, prec).sign(); ok {
			return s
		}
		if prec >= mostBits+2*uint(length) {
			panic(&missed{t, x})
		}
	}
}

// enclose bounds a number of the tower.
func (x *number) enclose(prec uint) enclosure {
	z := x.t.enclose(x.num, prec)
	if x.den.isOne() {
		return z
	}
	return z.quo(encloseInteger(x.den, prec), prec)
}

// sign is that of x.
func (x *number) sign() int { return x.t.sign(x.num) }
