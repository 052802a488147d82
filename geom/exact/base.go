package exact

// The base of a tower: a field of odd degree that holds the cosines which no square roots
// reach.
//
// An element x of a field that is a square in an extension of odd degree n is one already:
// the norm of √x, squared, is x^n. So the base may join a tower at any time and makes no
// new squares among what stands there. Its levels come first, used or not, and the
// roots stand above.
//
// Each level is a cyclic extension inside a field of roots of unity, told by the
// minimal polynomial of a generator θ. Inverses and norms are products of conjugates.
// A square root is lifted by Hensel's lemma from an inert prime and verified by
// squaring; that there is none is proved as well (see spareBits).

import "math/big"

// The base levels.
const (
	ninthLevel         = 1 // θ = 2cos 40°, of degree 3
	twentySeventhLevel = 2 // θ = 2cos 40°/3, of degree 3 over the ninth level
	twentyFifthLevel   = 3 // θ = 2cos 14.4° + 2cos 100.8°, of degree 5
	baseLevels         = 3
)

// generator is that of a base level: a cyclic extension of odd degree of the levels that
// it needs, unramified but at 3 or 5.
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

// generators are the base levels from the bottom.
//
//   - c = 2cos 40°: c³ - 3c + 1 = 0. Doubling the angle gives the conjugate c² - 2.
//   - θ = 2cos 40°/3: θ³ - 3θ = c. Ten times the angle gives the conjugate
//     (2c² - 2) + (c - 1)θ + (1 - c²)θ².
//   - θ = 2cos 14.4° + 2cos 100.8°, Gauss's period of four 25th roots of unity.
//     Doubling the angles gives the conjugate (22 + 36θ - 39θ² - 2θ³ + 4θ⁴)/7.
//
// A prime splits in such a field according to its residue modulo the conductor
// (Washington, Introduction to Cyclotomic Fields, ch. 2; from memory). The equations were
// computed here, and are tried by TestFractionsOfDegrees.
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

// polynomial is Σ cᵢθⁱ for the generator θ of a level.
func polynomial(level int, c ...int64) *element {
	terms := make([]*element, len(c))
	for i, n := range c {
		terms[i] = constant(integer{k: n})
	}
	return horner(level, terms)
}

// horner is Σ termsᵢθⁱ for the generator θ of a level.
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

// conjugateBase is index^(degree-1) times the image of x under the generator of the
// Galois group of a level, so that it is written with whole coefficients.
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

// otherConjugates is the product of the conjugates of x but x itself, each without its
// content: times x it is the norm of x, one level below, but for whole factors.
func (t *tower) otherConjugates(x *element) *element {
	others, conj := unit, x
	for range generators[x.level].degree - 1 {
		conj = t.conjugateBase(x.level, conj)
		conj = conj.shrink(conj.content())
		others = t.mul(others, conj)
	}
	return others
}

// invertBase finds y and a whole n ≠ 0 with x·y = n, for an x of a base level.
func (t *tower) invertBase(x *element) (y *element, n integer) {
	others := t.otherConjugates(x)
	y, n = t.invert(t.mul(x, others))
	y = t.mul(others, y)
	g := y.commonDivisor(n)
	return y.shrink(g), n.quo(g)
}

// inertPrimes stay prime in every base (p ≢ ±1 mod 9 and p ≢ ±1, ±7 mod 25, so that p
// generates the Galois groups), so that the base modulo p is a field. It has p^n elements
// for an odd n, and p ≡ 3 (mod 4), so that square roots in it are powers.
var inertPrimes = [...]int64{11, 23, 47, 59, 67, 79, 83, 103, 131, 139}

// baseRoot is the square root of an element of the base; nil if there is none.
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

// modulus is a whole number modulo which coefficients are taken, from -n/2 to n/2.
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

// power is x^e modulo n.
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

// spareBits is more than the coefficients of a root can be longer than half those of its
// square. For the 45 products of powers of the generators the Vandermonde matrix of all
// conjugates has a norm (of rows) below 2^13, and its inverse one below 2^3 (computed):
// so it is less than 13/2 + 3 bits (TestSpareBits). Hence there is no root if none is found.
const spareBits = 80

// lift finds the root of x, of whose image in the residue field it begins; nil if there is
// none. It lifts z = 1/√x to higher and higher powers of p, by z ← z + z(1 - xz²)/2.
// Then √x = xz.
func (m modulus) lift(x, residue *element, degree int) *element {
	q := one // how many elements the residue field has
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

// encloseGenerator finds a generator by Newton's iteration, and proves its place by a
// change of sign of the polynomial about it. (The other roots are far off.)
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
