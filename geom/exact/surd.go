package exact

// Numbers as a textbook writes them, in roots: 3√2, (1 + √5)/2, √(10 + 2√5). The form is
// read off the exact form. It is always right; it is the shortest as far as the tower has
// denested its roots.

import (
	"math/big"
	"slices"
	"strings"
	"unicode/utf8"
)

// surdPart of the budget, one in so many, is enough for what fits a label.
const surdPart = 1000

// longestSurd is how many characters a label can have.
const longestSurd = 40

// Surd is x as a textbook writes it: "3√2", "(1 + √5)/2", "√(10 + 2√5)"; false
// when that would be longer than a label can be, or needs a cosine that no
// square roots reach, or takes long to work out.
func (x *Real) Surd() (string, bool) {
	if x.field.rough {
		return "", false
	}
	s, ok := x.surd()
	if !ok {
		return "", false
	}
	text := s.text()
	return text, utf8.RuneCountInString(text) <= longestSurd
}

// surd is x in roots; false if that takes long, is too long, or has no such form.
func (x *Real) surd() (s surd, ok bool) {
	if x.field.spend(surdPart, func() { s, ok = x.exactly().surd() }) != nil {
		return surd{}, false
	}
	return s, ok
}

// surd is Σ terms / den.
type surd struct {
	terms []surdTerm
	den   integer
}

// surdTerm is n·√under. A plain root has a square-free whole number under it
// (1 for a rational term), a nested one another sum.
type surdTerm struct {
	n     integer
	under integer
	inner *surd
	size  float64 // of the number under the root, to order by
}

// mostTerms is more than a label can hold.
const mostTerms = 24

// surd writes x in roots; false if it is too long or has no such form.
func (x *number) surd() (surd, bool) {
	levels := x.t.close(x.num.levels())
	terms, _ := x.num.size()
	if terms > mostTerms || levels.meetsBase() {
		return surd{}, false
	}
	s := surd{den: x.den}
	if !s.gather(x.t, x.num) {
		return surd{}, false
	}
	s.reduce()
	slices.SortStableFunc(s.terms, surdTerm.compare)
	return s, true
}

// reduce cancels what the denominator shares with every term and drops terms
// that have come to 0.
func (s *surd) reduce() {
	s.terms = slices.DeleteFunc(s.terms, func(t surdTerm) bool { return t.n.sign() == 0 })
	g := s.den
	for _, term := range s.terms {
		g = g.gcd(term.n)
	}
	for i := range s.terms {
		s.terms[i].n = s.terms[i].n.quo(g)
	}
	s.den = s.den.quo(g)
}

// gather adds the terms of an element. Its highest nested root √d comes out with all that
// multiplies it put under its sign: b√d = ±f√e where b²d = f²e.
func (s *surd) gather(t *tower, x *element) bool {
	level := t.highestNested(x)
	if level == 0 {
		s.gatherPlain(t, x, one, one)
		return true
	}
	a, b := split(x, level)
	f, e := t.fraction(t.mul(t.mul(b, b), t.levels[level].radicand), one).radicand()
	inner, ok := t.fraction(e, one).surd()
	if !ok {
		return false
	}
	root := inner.takeSquare()
	n := f.num.n.mul(root)
	if t.sign(b) < 0 {
		n = n.neg()
	}
	size, _ := t.enclose(e, 64).lo.Float64()
	out, _ := new(big.Float).SetInt(root.big()).Float64()
	s.terms = append(s.terms, surdTerm{n: n, inner: &inner, size: size / out / out})
	return s.gather(t, a)
}

// takeSquare takes the largest square out of a sum under a root, and returns the root of
// that square. Terms whose own roots have been simplified can share one that their
// elements do not.
func (s *surd) takeSquare() integer {
	if !s.den.isOne() || len(s.terms) == 0 {
		return one
	}
	shared := s.terms[0].n
	for _, term := range s.terms[1:] {
		shared = shared.gcd(term.n)
	}
	root, _ := shared.abs().squarePart()
	for i := range s.terms {
		s.terms[i].n = s.terms[i].n.quo(root).quo(root)
	}
	return root
}

// highestNested is the highest level in x whose radicand is not rational.
func (t *tower) highestNested(x *element) int {
	nested := 0
	for i := range x.levels().each {
		if !t.levels[i].closure.isEmpty() {
			nested = i
		}
	}
	return nested
}

// split writes x as a + b·r for the root r of a level that need not be the
// highest in x.
func split(x *element, level int) (a, b *element) {
	switch {
	case x.level < level:
		return x, zero
	case x.level == level:
		return x.a, x.b
	}
	a0, b0 := split(x.a, level)
	a1, b1 := split(x.b, level)
	return join(x.level, a0, a1), join(x.level, b0, b1)
}

// gatherPlain adds factor·x·√under, where all roots in x are of whole numbers.
func (s *surd) gatherPlain(t *tower, x *element, factor, under integer) {
	if x.level > 0 {
		s.gatherPlain(t, x.a, factor, under)
		more, rest := under.mul(t.levels[x.level].radicand.n).squarePart()
		s.gatherPlain(t, x.b, factor.mul(more), rest)
		return
	}
	n := x.n.mul(factor)
	if n.sign() == 0 {
		return
	}
	for i := range s.terms {
		if old := &s.terms[i]; old.inner == nil && old.under.equal(under) {
			old.n = old.n.add(n)
			return
		}
	}
	size, _ := encloseInteger(under, 64).lo.Float64()
	s.terms = append(s.terms, surdTerm{n: n, under: under, size: size})
}

// compare orders terms as textbooks do: what is added before what is
// subtracted; a fraction before roots, but after those that it is subtracted
// from; nested roots before plain ones; longer roots before shorter ones.
func (s surdTerm) compare(o surdTerm) int {
	if d := o.n.sign() - s.n.sign(); d != 0 {
		return d
	}
	if d := s.rank() - o.rank(); d != 0 {
		return d
	}
	switch {
	case s.size > o.size:
		return -1
	case s.size < o.size:
		return 1
	}
	return 0
}

// rank orders terms of one sign by their kind.
func (s surdTerm) rank() int {
	switch {
	case s.inner != nil:
		return 1
	case !s.under.isOne():
		return 2
	case s.n.sign() > 0:
		return 0
	}
	return 3
}

// text is the whole sum.
func (s surd) text() string {
	if len(s.terms) == 0 {
		return "0"
	}
	if len(s.terms) == 1 && s.terms[0].n.sign() < 0 {
		return sign(true, true) + s.times("")
	}
	return s.times("")
}

// sign is what goes before a term of a sum.
func sign(first, negative bool) string {
	switch {
	case first && negative:
		return "−"
	case first:
		return ""
	case negative:
		return " − "
	}
	return " + "
}

// times is the product of the sum with a symbol, which may be empty. Where there is but one
// term, it is written without its sign.
func (s surd) times(symbol string) string {
	var b strings.Builder
	switch {
	case len(s.terms) == 1:
		b.WriteString(s.terms[0].times(symbol))
	case s.den.isOne() && symbol == "":
		b.WriteString(s.sum())
	default:
		b.WriteString("(" + s.sum() + ")" + symbol)
	}
	if !s.den.isOne() {
		b.WriteString("/" + s.den.big().String())
	}
	return b.String()
}

// sum is the terms without the denominator.
func (s surd) sum() string {
	var b strings.Builder
	for i, term := range s.terms {
		b.WriteString(sign(i == 0, term.n.sign() < 0))
		b.WriteString(term.times(""))
	}
	return b.String()
}

// times is the product of the term, without its sign, with a symbol: 3π√2.
func (s surdTerm) times(symbol string) string {
	n, root := s.n.abs().big().String(), ""
	switch {
	case s.inner != nil:
		root = "√(" + s.inner.text() + ")"
	case !s.under.isOne():
		root = "√" + s.under.big().String()
	}
	if n == "1" && symbol+root != "" {
		n = ""
	}
	return n + symbol + root
}
