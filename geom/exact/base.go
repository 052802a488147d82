package exact

import "math/big"

// The base of a tower is a field of odd degree that holds the cosines which
// no square roots reach. An extension of odd degree makes no new squares
// among the elements below it, so the base may join a tower at any time: its
// levels come first, used or not, and the roots stand above.
const (
	ninthLevel         = 1 // θ = 2cos 40°, of degree 3
	twentySeventhLevel = 2 // θ = 2cos 40°/3, of degree 3 over the ninth level
	twentyFifthLevel   = 3 // θ = 2cos 14.4° + 2cos 100.8°, of degree 5
	baseLevels         = 3
)

// generator describes a base level: a cyclic extension of odd degree of the
// levels below it, unramified but at 3 or 5.
type generator struct {
	degree    int
	needs     []int    // lower base levels
	power     *element // θ^degree in lower powers
	conjugate *element // index times the image of θ under a generator of the Galois group
	index     int64    // of the polynomials in θ among the integers of the field
	near      float64  // θ to within 10^-6
	conductor uint64   // a prime p splits according to its residue
	residues  []uint64 // those with which it splits
}

// generators lists the base levels from the bottom. With c = 2cos 40°,
// c³ - 3c + 1 = 0, and doubling the angle gives the conjugate c² - 2. With
// θ = 2cos 40°/3, θ³ - 3θ = c, and ten times the angle gives the conjugate
// (2c² - 2) + (c - 1)θ + (1 - c²)θ². The sum of two cosines is Gauss's period
// of four 25th roots of unity; doubling the angle gives its conjugate
// (22 + 36θ - 39θ² - 2θ³ + 4θ⁴)/7.
var generators = [baseLevels + 1]generator{
	ninthLevel: {
		degree:    3,
		power:     polynomial(ninthLevel, -1, 3),
		conjugate: polynomial(ninthLevel, -2, 0, 1),
		index:     1,
		near:      1.532089,
		conductor: 9, residues: []uint64{1, 8},
	},
	twentySeventhLevel: {
		degree: 3,
		needs:  []int{ninthLevel},
		power:  horner(twentySeventhLevel, []*element{polynomial(ninthLevel, 0, 1), constant(integer{k: 3})}),
		conjugate: horner(twentySeventhLevel, []*element{
			polynomial(ninthLevel, -2, 0, 2), polynomial(ninthLevel, -1, 1), polynomial(ninthLevel, 1, 0, -1)}),
		index:     1,
		near:      1.946090,
		conductor: 27, residues: []uint64{1, 26},
	},
	twentyFifthLevel: {
		degree:    5,
		power:     polynomial(twentyFifthLevel, -1, -10, -5, 10),
		conjugate: polynomial(twentyFifthLevel, 22, 36, -39, -2, 4),
		index:     7,
		near:      1.562396,
		conductor: 25, residues: []uint64{1, 7, 18, 24},
	},
}

// polynomial is Σ cᵢθⁱ.
func polynomial(level int, c ...int64) *element {
	terms := make([]*element, len(c))
	for i, n := range c {
		terms[i] = constant(integer{k: n})
	}
	return horner(level, terms)
}

func horner(level int, terms []*element) *element {
	sum := zero
	for i := len(terms) - 1; i >= 0; i-- {
		sum = join(level, terms[i], sum)
	}
	return sum
}

// coefficients are those of x as a polynomial in θ.
func coefficients(level int, x *element) []*element {
	terms := make([]*element, 0, generators[level].degree)
	for x.level == level {
		terms = append(terms, x.a)
		x = x.b
	}
	return append(terms, x)
}

// mulBase multiplies two elements of one base level.
func (t *tower) mulBase(x, y *element) *element {
	level := x.level
	xs, ys := coefficients(level, x), coefficients(level, y)
	product := make([]*element, len(xs)+len(ys)-1)
	for i := range product {
		product[i] = zero
	}
	for i, a := range xs {
		for j, b := range ys {
			product[i+j] = product[i+j].add(t.mul(a, b))
		}
	}
	return horner(level, t.reduceBase(level, product))
}

// reduceBase writes the powers of θ from its degree upwards in lower ones.
func (t *tower) reduceBase(level int, terms []*element) []*element {
	degree := generators[level].degree
	power := coefficients(level, generators[level].power)
	for k := len(terms) - 1; k >= degree; k-- {
		for i, r := range power {
			j := k - degree + i
			terms[j] = terms[j].add(t.mul(terms[k], r))
		}
		terms = terms[:k]
	}
	return terms
}

// conjugateBase is the image of x under the generator of the Galois group of
// its level, times index^(degree-1) to be integral.
func (t *tower) conjugateBase(level int, x *element) *element {
	g := generators[level]
	terms := coefficients(level, x)
	sum, scale := zero, one
	for i := g.degree - 1; i >= 0; i-- {
		sum = t.mul(sum, g.conjugate)
		if i < len(terms) {
			sum = sum.add(terms[i].scale(scale))
		}
		scale = scale.mul(integer{k: g.index})
	}
	return sum
}

// otherConjugates is the product of the conjugates of x but for x itself, up
// to a power of the index: with x it makes the norm, which lies one level
// below.
func (t *tower) otherConjugates(x *element) *element {
	others, conj := unit, x
	for range generators[x.level].degree - 1 {
		conj = t.conjugateBase(x.level, conj)
		conj = conj.shrink(conj.content())
		others = t.mul(others, conj)
	}
	return others
}

// invertBase finds y and a whole n with x·y = n.
func (t *tower) invertBase(x *element) (y *element, n integer) {
	others := t.otherConjugates(x)
	y, n = t.invert(t.mul(x, others))
	y = t.mul(others, y)
	g := y.commonDivisor(n)
	return y.shrink(g), n.quo(g)
}

// inertPrimes remain prime in every base (p ≢ ±1 mod 9, p ≢ ±1, ±7 mod 25), so
// that the base modulo p is a field; and they are ≡ 3 (mod 4), so that roots in
// it, which has odd degree, are powers.
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
	degree, index := 1, one
	for i := range t.close(x.levels()).each {
		degree *= generators[i].degree
		index = index.mul(integer{k: generators[i].index})
	}
	x = x.scale(index.mul(index)) // so that its root is a polynomial in the generators
	for _, p := range inertPrimes {
		m := modulus{t, integer{k: p}}
		if residue := m.reduce(x); !residue.isZero() {
			if y := m.lift(x, residue, degree); y != nil {
				return t.fraction(y, index)
			}
			return nil
		}
	}
	panic(&exhausted{"the root of a number that too many primes divide"})
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

// spareBits covers how much longer the coefficients of a root may be than half
// those of the square, for what the generators and their conjugates are.
const spareBits = 80

// lift finds z = 1/√x modulo higher and higher powers of p by
// z ← z + z(1 - xz²)/2, then √x = xz, whose coefficients are about half as
// long as those of x.
func (m modulus) lift(x, residue *element, degree int) *element {
	q := one // elements of the residue field
	for range degree {
		q = q.mul(m.n)
	}
	z := m.power(residue, q.sub(integer{k: 3}).quo(integer{k: 4}))
	if !m.mul(m.mul(z, z), residue).isOne() {
		return nil
	}
	_, length := x.size()
	for {
		if m.n.bitLen() > length/2+spareBits {
			y := m.mul(m.reduce(x), z)
			if m.t.mul(y, y).equal(x) {
				return y
			}
			return nil
		}
		m.n = m.n.mul(m.n)
		half := m.n.add(one).quo(integer{k: 2})
		e := unit.sub(m.mul(m.mul(z, z), m.reduce(x)))
		z = m.reduce(z.add(m.mul(z, e).scale(half)))
	}
}

// encloseGenerator is Newton's iteration, proved by a change of sign.
func (t *tower) encloseGenerator(i int, prec uint) enclosure {
	terms := append([]*element(nil), coefficients(i, generators[i].power)...)
	for len(terms) < generators[i].degree {
		terms = append(terms, zero)
	}
	value := func(x *big.Float) enclosure { // θ^degree - power at x
		at := enclosure{x, x, prec}
		sum := encloseInteger(one, prec)
		for k := len(terms) - 1; k >= 0; k-- {
			sum = sum.mul(at, prec).add(t.enclose(terms[k], prec).neg(), prec)
		}
		return sum
	}
	x := new(big.Float).SetPrec(prec).SetFloat64(generators[i].near)
	for reached := uint(16); reached < prec; reached = reached*2 - 8 {
		x = newton(x, value, prec)
	}
	for slack := 6; ; slack++ {
		e := new(big.Float).SetMantExp(big.NewFloat(1), slack-int(prec))
		lo, hi := floor(prec).Sub(x, e), ceil(prec).Add(x, e)
		a, oka := value(lo).sign()
		b, okb := value(hi).sign()
		if oka && okb && a*b < 0 {
			return enclosure{lo, hi, prec}
		}
	}
}

// newton takes one step, the slope from a difference over half the digits.
func newton(x *big.Float, value func(*big.Float) enclosure, prec uint) *big.Float {
	h := new(big.Float).SetMantExp(big.NewFloat(1), -int(prec)/2)
	y, z := value(x).lo, value(new(big.Float).SetPrec(prec).Add(x, h)).lo
	slope := new(big.Float).SetPrec(prec).Sub(z, y)
	slope.Quo(slope, h)
	return new(big.Float).SetPrec(prec).Sub(x, y.Quo(y, slope))
}
