package oracle

import (
	"fmt"
	"math"
	"math/big"
	"testing"
)

// dependences are equations between numbers whose roots hide that they depend on
// each other; nil for a draw that came out without room.
var dependences = []struct {
	name string
	make func(d draw) (left, right *term)
}{
	{"the square of a sum", squareOfSum},
	{"the product of conjugates", productOfConjugates},
	{"the sum of conjugates", sumOfConjugates},
	{"Shanks", shanks},
	{"a quadratic with known roots", knownRoots},
	{"Vieta", vieta},
	{"the root of a product", rootOfProduct},
	{"the root of a quotient", rootOfQuotient},
	{"four conjugates", fourConjugates},
	{"a cyclic quartic", cyclicQuartic},
	{"the inverse", inverse},
	{"a polynomial in two ways", polynomialTwoWays},
	{"fourth roots", fourthRoots},
	{"a sum in two orders", twoOrders},
	{"three conjugate pairs", threePairs},
	{"a nested tower", nestedTower},
	{"cosines: product and sum", productToSum},
	{"cosines: the root of sin²", rootOfSquaredSine},
	{"cosines: half of an angle", halfAngle},
	{"cosines: three times an angle", tripleAngle},
	{"a whole-degree triangle", degreeTriangle},
	{"a chain of distances", chainOfDistances},
}

// squareOfSum writes a square out and takes its root.
func squareOfSum(d draw) (left, right *term) {
	var sum, square *term
	for range d.between(2, 4) {
		s, s2 := d.surd(1 + d.IntN(2))
		q := d.signed()
		s, s2 = s.times(q), s2.times(q.square())
		if sum == nil {
			sum, square = s, s2
			continue
		}
		square = square.plus(sum.times(s).times(whole(2))).plus(s2)
		sum = sum.plus(s)
	}
	if math.Abs(sum.about) < 1e-3 {
		return nil, nil
	}
	return square.root(), sum.sized()
}

// sized is x or -x, whichever is about positive.
func (x *term) sized() *term {
	if x.about < 0 {
		return whole(0).minus(x)
	}
	return x
}

// productOfConjugates: √(a + w)·√(a - w) = √(a² - w²).
func productOfConjugates(d draw) (left, right *term) {
	w, w2 := d.surd(1 + d.IntN(2))
	a := d.above(w.about)
	return a.plus(w).root().times(a.minus(w).root()), a.square().minus(w2).root()
}

// sumOfConjugates: √(a + w) + √(a - w) = √(2a + 2√(a² - w²)), and the
// difference alike.
func sumOfConjugates(d draw) (left, right *term) {
	w, w2 := d.surd(1 + d.IntN(2))
	a, two := d.above(w.about), whole(2)
	inner := a.square().minus(w2).root()
	if d.IntN(2) == 0 {
		return a.plus(w).root().plus(a.minus(w).root()), a.plus(inner).times(two).root()
	}
	return a.plus(w).root().minus(a.minus(w).root()), a.minus(inner).times(two).root()
}

// shanks generalises D. Shanks, Incredible identities, Fibonacci Quarterly 12
// (1974): √(a + w) + √(a - w + d + 2√(d(a - w))) = √d + √(2a + 2√(a² - w²)).
func shanks(d draw) (left, right *term) {
	w, w2 := d.surd(1 + d.IntN(2))
	a, e, two := d.above(w.about), d.positive(), whole(2)
	if d.IntN(4) == 0 {
		e, _ = d.surd(1)
	}
	less := a.minus(w)
	left = a.plus(w).root().plus(less.plus(e).plus(e.times(less).root().times(two)).root())
	return left, e.root().plus(a.plus(a.square().minus(w2).root()).times(two).root())
}

// knownRoots solves x² - (p + q)x + pq = 0 with p and q known.
func knownRoots(d draw) (left, right *term) {
	p, q := d.mixed(2, 2), d.mixed(2, 1)
	sum, product := p.plus(q), p.times(q)
	disc := sum.square().minus(product.times(whole(4)))
	half := fraction(1, 2)
	more, less := p, q
	if p.about < q.about {
		more, less = q, p
	}
	if d.IntN(2) == 0 {
		return sum.plus(disc.root()).times(half), more
	}
	return sum.minus(disc.root()).times(half), less
}

// vieta takes both roots of a quadratic with radical coefficients.
func vieta(d draw) (left, right *term) {
	s, p := d.mixed(2, 2), d.mixed(2, 1)
	disc := s.square().minus(p.times(whole(4)))
	if disc.about < 1e-3 {
		return nil, nil
	}
	half := fraction(1, 2)
	x, y := s.plus(disc.root()).times(half), s.minus(disc.root()).times(half)
	if d.IntN(2) == 0 {
		return x.times(y), p
	}
	return x.square(), s.times(x).minus(p)
}

// rootOfProduct: √a·√b = √(ab), the product written out.
func rootOfProduct(d draw) (left, right *term) {
	a, r, c, s := d.positive(), d.positive(), d.positive(), d.positive()
	u, v := root(d.between(2, 40)), root(d.between(2, 40))
	x, y := a.plus(r.times(u)), c.plus(s.times(v))
	expanded := sumOf(a.times(c), a.times(s).times(v), r.times(c).times(u), r.times(s).times(u.times(v)))
	return x.root().times(y.root()), expanded.root()
}

// rootOfQuotient: √(a/b) = √(ab)/b.
func rootOfQuotient(d draw) (left, right *term) {
	x, y := d.mixed(2, 1), d.mixed(1, 2)
	if x.about < 1e-2 || y.about < 1e-2 {
		return nil, nil
	}
	return x.over(y).root(), x.times(y).root().over(y)
}

// fourConjugates: the product of √(a ± b√p ± c√q) over all signs is the root of
// a rational.
func fourConjugates(d draw) (left, right *term) {
	p, q, b, c := d.between(2, 30), d.between(2, 30), d.between(1, 5), d.between(1, 5)
	x, y := root(p).times(whole(b)), root(q).times(whole(c))
	a := int64(x.about+y.about) + d.between(1, 9)
	left = whole(1)
	for _, signs := range [][2]int64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		left = left.times(sumOf(whole(a), x.times(whole(signs[0])), y.times(whole(signs[1]))).root())
	}
	n := a*a + b*b*p - c*c*q
	return left, whole(n*n - 4*a*a*b*b*p).root()
}

// cyclicQuartic: with d = b² + c², √(d + b√d)·√(d - b√d) = c√d.
func cyclicQuartic(d draw) (left, right *term) {
	b, c, m := d.between(1, 9), d.between(1, 9), d.between(1, 20)
	n := b*b + c*c
	w := root(n).times(whole(b))
	x, y := whole(n).plus(w).times(whole(m)).root(), whole(n).minus(w).times(whole(m)).root()
	if d.IntN(2) == 0 {
		return x.over(y), whole(n).plus(w).over(root(n).times(whole(c)))
	}
	return x.times(y), root(n).times(whole(c * m))
}

// inverse makes the denominator of 1/(a + w) rational.
func inverse(d draw) (left, right *term) {
	w, w2 := d.surd(1 + d.IntN(3))
	a := d.signed()
	if math.Abs(a.about+w.about) < 1e-3 || math.Abs(a.about-w.about) < 1e-3 {
		return nil, nil
	}
	return whole(1).over(a.plus(w)), a.minus(w).over(a.square().minus(w2))
}

// polynomialTwoWays multiplies (x + a)(x + b)(x + c) out.
func polynomialTwoWays(d draw) (left, right *term) {
	x, a, b, c := d.mixed(3, 2), d.signed(), d.mixed(1, 1), d.signed()
	left = productOf(x.plus(a), x.plus(b), x.plus(c))
	square := sumOf(a, b, c)
	line := sumOf(a.times(b), b.times(c), c.times(a))
	return left, x.plus(square).times(x).plus(line).times(x).plus(productOf(a, b, c))
}

// fourthRoots: √(bc + a√c) = ⁴√c·√(a + b√c), where the last is a square for
// some draws.
func fourthRoots(d draw) (left, right *term) {
	c, m, n := d.between(2, 30), d.between(1, 9), d.between(1, 9)
	r := root(c)
	a, b := m*m+n*n*c, 2*m*n
	left = whole(b * c).plus(whole(a).times(r)).root()
	if d.IntN(2) == 0 {
		return left, r.root().times(whole(a).plus(whole(b).times(r)).root())
	}
	return left, r.root().times(whole(m).plus(whole(n).times(r)))
}

// twoOrders adds the same surds up in two orders, over two denominators.
func twoOrders(d draw) (left, right *term) {
	var up []*term
	for range d.between(3, 12) {
		s, _ := d.surd(1 + d.IntN(2))
		up = append(up, s.times(d.signed()))
	}
	down := append([]*term{}, up...)
	d.Shuffle(len(down), func(i, j int) { down[i], down[j] = down[j], down[i] })
	k := whole(d.between(2, 50))
	return sumOf(up...), sumOf(down...).times(k).over(k)
}

// threePairs multiplies three pairs of conjugates over one rational.
func threePairs(d draw) (left, right *term) {
	left, right = whole(1), whole(1)
	a := d.between(7, 20)
	for range 3 {
		n := d.between(2, a*a-1)
		left = left.times(whole(a).plus(root(n)).root()).times(whole(a).minus(root(n)).root())
		right = right.times(root(a*a - n))
	}
	return left, right
}

// nestedTower puts roots inside each other, and takes the square of what stands
// at the bottom back out.
func nestedTower(d draw) (left, right *term) {
	x, square := d.surd(3 + d.IntN(2))
	k := d.signed()
	y := x.plus(k)
	expanded := square.plus(x.times(k).times(whole(2))).plus(k.square())
	if math.Abs(y.about) < 1e-3 {
		return nil, nil
	}
	return expanded.root(), y.sized()
}

func sumOfAngles(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }

// productToSum: 2 cos a cos b = cos(a + b) + cos(a - b).
func productToSum(d draw) (left, right *term) {
	a, b := d.degrees(), d.degrees()
	less := new(big.Rat).Sub(a, b)
	return productOf(whole(2), cosine(a), cosine(b)), cosine(sumOfAngles(a, b)).plus(cosine(less))
}

// rootOfSquaredSine: √(1 - cos² a) = sin a.
func rootOfSquaredSine(d draw) (left, right *term) {
	a := big.NewRat(d.between(1, 89), 1)
	return whole(1).minus(cosine(a).square()).root(), sine(a)
}

// halfAngle: √((1 + cos 2a)/2) = cos a.
func halfAngle(d draw) (left, right *term) {
	a := big.NewRat(d.between(1, 89), d.between(1, 2))
	return whole(1).plus(cosine(sumOfAngles(a, a))).over(whole(2)).root(), cosine(a)
}

// tripleAngle: 4cos³ a - 3cos a = cos 3a.
func tripleAngle(d draw) (left, right *term) {
	a := d.degrees()
	x := cosine(a)
	return x.square().times(whole(4)).minus(whole(3)).times(x), cosine(new(big.Rat).Mul(a, big.NewRat(3, 1)))
}

// degreeTriangle: in a triangle with angles a, b, c on a circle of diameter 1,
// sin² c = sin² a + sin² b - 2 sin a sin b cos c.
func degreeTriangle(d draw) (left, right *term) {
	a := d.between(5, 100)
	b := d.between(5, 170-a)
	x, y := sine(big.NewRat(a, 1)), sine(big.NewRat(b, 1))
	c := big.NewRat(180-a-b, 1)
	left = x.square().plus(y.square()).minus(productOf(whole(2), x, y, cosine(c)))
	return left.root(), sine(c)
}

// chainOfDistances puts points at two distances from earlier ones, and asks for
// such a distance.
func chainOfDistances(d draw) (left, right *term) {
	points := []place{{whole(0), whole(0)}, {whole(1), whole(0)}, {whole(1), whole(1)}}
	for range d.between(2, 4) {
		a, b := points[len(points)-1], points[len(points)-3+d.IntN(2)]
		gap := a.to(b).norm2()
		r := whole(d.between(1, 6)).plus(gap.times(fraction(1, 4)))
		p := around(a, r, b, r.plus(fraction(d.between(0, 3), 8)), 1)
		if !(p.y.about == p.y.about) {
			return nil, nil
		}
		left, right = p.to(a).norm2(), r
		points = append(points, p)
	}
	return left, right
}

// pair draws two sides that are equal, or nearly.
func (d draw) pair(i int) (name string, left, right *term) {
	c := dependences[i%len(dependences)]
	for left == nil || math.IsNaN(left.about) || math.IsNaN(right.about) {
		left, right = c.make(d)
	}
	name = c.name
	if d.IntN(3) == 0 {
		name += ", in a crowd"
		left, right = d.crowded(left, right)
	}
	switch d.IntN(3) {
	case 0:
		k := 6 + d.IntN(60)
		name += fmt.Sprintf(", nudged by 10^-%d", k)
		right = d.nudged(right, k)
	case 1:
		left, right = right, left
	}
	return name, left, right
}

// someQuestions draws that many of them, two to a world at times.
func someQuestions(seed uint64, n int) (out []question) {
	d := newDraw(seed)
	var w *world
	for i := range n {
		name, left, right := d.pair(i)
		if w == nil || d.IntN(4) > 0 {
			w = newWorld()
		}
		told(func() int { d.setting(w, left, right); return 0 })
		out = append(out, w.ask(fmt.Sprintf("seed %d, question %d, %s", seed, i, name), left, right))
	}
	return out
}

func TestDependencesAgainstPARI(t *testing.T) {
	t.Parallel()
	t.Log(compare(t, someQuestions(*from, many(1200))))
}
