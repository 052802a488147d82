package exact

// Roots of polynomials modulo a prime, by Cantor and Zassenhaus's splitting (A new
// algorithm for factoring polynomials over finite fields, Math. Comp. 36 (1981); from
// memory).

// residuePolynomial has coefficients modulo a prime, that of Xⁱ at i; the last
// is not 0.
type residuePolynomial []uint64

// splitRoots are the roots of a monic polynomial that has as many as its degree. The
// greatest common divisor of f and (X + a)^((p-1)/2) - 1 has those roots r for which
// r + a is a square: for half of the a or more it is a proper divisor.
func (f residuePolynomial) splitRoots(p uint64) []uint64 {
	if len(f) == 2 {
		return []uint64{(p - f[0]) % p}
	}
	for a := uint64(1); ; a++ {
		h := f.powerOf(residuePolynomial{a, 1}, (p-1)/2, p)
		h[0] = (h[0] + p - 1) % p
		g := append(residuePolynomial(nil), f...).commonDivisor(h.trim(), p)
		if 1 < len(g) && len(g) < len(f) {
			rest, _ := f.quotient(g, p)
			return append(g.splitRoots(p), rest.splitRoots(p)...)
		}
	}
}

// trim is f without leading coefficients that are 0.
func (f residuePolynomial) trim() residuePolynomial {
	for len(f) > 0 && f[len(f)-1] == 0 {
		f = f[:len(f)-1]
	}
	return f
}

// powerOf is x^e modulo f, for x of degree 1 and f of degree 2 at least.
func (f residuePolynomial) powerOf(x residuePolynomial, e, p uint64) residuePolynomial {
	r := residuePolynomial{1}
	for i := 63; i >= 0; i-- {
		r = f.product(r, r, p)
		if e>>i&1 == 1 {
			r = f.product(r, x, p)
		}
	}
	return append(r, make(residuePolynomial, len(f)-1-len(r))...)
}

// product is x·y modulo f.
func (f residuePolynomial) product(x, y residuePolynomial, p uint64) residuePolynomial {
	z := make(residuePolynomial, len(x)+len(y)-1)
	for i, a := range x {
		for j, b := range y {
			z[i+j] = (z[i+j] + a*b) % p
		}
	}
	_, rest := z.quotient(f, p)
	return rest
}

// quotient divides by a monic g; the remainder is not trimmed.
func (f residuePolynomial) quotient(g residuePolynomial, p uint64) (q, rest residuePolynomial) {
	rest = append(rest, f...)
	top := len(g) - 1
	if len(f) > top {
		q = make(residuePolynomial, len(f)-top)
	}
	for k := len(q) - 1; k >= 0; k-- {
		q[k] = rest[k+top]
		for j, b := range g[:top] {
			rest[k+j] = (rest[k+j] + q[k]*(p-b)) % p
		}
		rest = rest[:k+top]
	}
	return q, rest
}

// commonDivisor is the greatest common divisor, monic.
func (f residuePolynomial) commonDivisor(g residuePolynomial, p uint64) residuePolynomial {
	for len(g) > 0 {
		over := inverse(g[len(g)-1], p)
		for i := range g {
			g[i] = g[i] * over % p
		}
		_, rest := f.quotient(g, p)
		f, g = g, rest.trim()
	}
	return f
}
