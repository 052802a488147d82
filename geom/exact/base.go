package exact

// The base of a tower is a field of odd degree that holds the cosines which
// no square roots reach. An extension of odd degree makes no new squares
// among the elements below it, so the base may join a tower at any time: its
// levels come first, used or not, and the roots stand above.
const (
	ninthLevel = 1 // θ = 2cos 40°, of degree 3
	baseLevels = 1
)

// generator describes a base level: a cyclic extension of odd degree of the
// levels below it.
type generator struct {
	degree    int
	power     *element // θ^degree in lower powers
	conjugate *element // the image of θ under a generator of the Galois group
	near      float64  // θ to within 10^-6
}

// generators lists the base levels from the bottom. With θ = 2cos 40°,
// θ³ = 3θ - 1, and doubling the angle gives the conjugate θ² - 2.
var generators = [baseLevels + 1]generator{
	ninthLevel: {
		degree:    3,
		power:     polynomial(ninthLevel, -1, 3),
		conjugate: polynomial(ninthLevel, -2, 0, 1),
		near:      1.532089,
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

// conjugateBase is the image of x under the generator of the Galois group.
func (t *tower) conjugateBase(level int, x *element) *element {
	if x.level < level {
		return x
	}
	return x.a.add(t.mul(generators[level].conjugate, t.conjugateBase(level, x.b)))
}

// otherConjugates is the product of the conjugates of x but for x itself:
// with x it makes the norm, which lies one level below.
func (t *tower) otherConjugates(x *element) *element {
	others, conj := unit, x
	for range generators[x.level].degree - 1 {
		conj = t.conjugateBase(x.level, conj)
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
