package oracle

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
)

// draw makes terms at random.
type draw struct{ *rand.Rand }

func newDraw(seed uint64) draw { return draw{rand.New(rand.NewPCG(seed, 0x6f7261636c65))} }

func bigRat(text string) *big.Rat {
	q, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return q
}

// tenTo is 10^-k.
func tenTo(k int) *big.Rat {
	return new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(k)), nil))
}

// between is a whole number from lo to hi.
func (d draw) between(lo, hi int64) int64 { return lo + d.Int64N(hi-lo+1) }

// positive is a rational above 0, of small numbers, or of a hundred bits.
func (d draw) positive() *term {
	switch d.IntN(12) {
	case 0:
		n := new(big.Int).Lsh(big.NewInt(d.between(1, 1<<60)), 50)
		n.Add(n, big.NewInt(d.Int64()))
		return rational(new(big.Rat).SetFrac(n, new(big.Int).Lsh(big.NewInt(d.between(1, 1<<40)), 55)))
	case 1, 2, 3:
		return fraction(d.between(1, 40), d.between(1, 12))
	}
	return whole(d.between(1, 30))
}

// signed is a rational that is not 0.
func (d draw) signed() *term {
	x := d.positive()
	if d.IntN(2) == 0 {
		return rational(new(big.Rat).Neg(x.q))
	}
	return x
}

// surd is a positive number with that many roots inside each other, and its
// square, written without the outermost root.
func (d draw) surd(depth int) (x, square *term) {
	if depth <= 0 {
		x = d.positive()
		return x, x.square()
	}
	if depth == 1 {
		square = d.positive()
		return square.root(), square
	}
	inner, _ := d.surd(depth - 1)
	part := inner.times(d.signed())
	square = whole(d.between(1, 9)).plus(part)
	if square.about <= 0.001 {
		square = whole(int64(-part.about) + d.between(2, 9)).plus(part)
	}
	return square.root(), square
}

// mixed is a sum of up to n surds times rationals, with a rational.
func (d draw) mixed(n, depth int) *term {
	x := d.signed()
	for range 1 + d.IntN(n) {
		s, _ := d.surd(1 + d.IntN(depth))
		x = x.plus(d.signed().times(s))
	}
	return x
}

// above is a rational greater than a number by at least 1/2.
func (d draw) above(f float64) *term {
	return fraction(int64(math.Floor(2*f))+d.between(2, 12), 2)
}

// degrees is an angle: whole, or in tenths or minutes at times.
func (d draw) degrees() *big.Rat {
	switch d.IntN(16) {
	case 0:
		return big.NewRat(d.between(1, 899), 10)
	case 1:
		return big.NewRat(d.between(1, 5399), 60)
	case 2, 3:
		return big.NewRat(d.between(1, 179), 2)
	case 4, 5, 6, 7, 8:
		return big.NewRat(3*d.between(1, 29), 1)
	}
	return big.NewRat(d.between(1, 89), 1)
}

// nudged is x with one of its rationals changed by 10^-k.
func (d draw) nudged(x *term, k int) *term {
	var rationals []*term
	for _, t := range x.nodes() {
		if t.op == 'q' {
			rationals = append(rationals, t)
		}
	}
	if len(rationals) == 0 {
		return x.plus(rational(tenTo(k)))
	}
	old := rationals[d.IntN(len(rationals))]
	return x.with(old, rational(new(big.Rat).Add(old.q, tenTo(k))))
}

// with is x with one node exchanged for another.
func (x *term) with(old, other *term) *term {
	changed := map[*term]*term{nil: nil, old: other}
	for _, t := range x.nodes() {
		if t == old {
			continue
		}
		changed[t] = t
		if t.x != nil && (changed[t.x] != t.x || changed[t.y] != t.y) {
			changed[t] = &term{t.op, changed[t.x], changed[t.y], t.q, t.about}
		}
	}
	return changed[x]
}

// crowd is ten roots that have nothing to do with small numbers.
var crowd = []int64{101, 103, 107, 109, 113, 127, 131, 137, 139, 149}

// setting prepares a world so that roots come in an unusual order: beside a
// crowd, or from parts of the terms taken at random.
func (d draw) setting(w *world, terms ...*term) {
	if d.IntN(3) == 0 {
		for _, n := range crowd {
			w.real(root(n)).Rational()
		}
	}
	if d.IntN(2) == 0 {
		var parts []*term
		for _, t := range terms {
			parts = append(parts, t.nodes()...)
		}
		d.Shuffle(len(parts), func(i, j int) { parts[i], parts[j] = parts[j], parts[i] })
		for _, t := range parts[:min(6, len(parts))] {
			w.real(t).Rational()
		}
	}
}

// crowded multiplies or adds what is unrelated on both sides.
func (d draw) crowded(left, right *term) (*term, *term) {
	var roots []*term
	for _, n := range crowd[:d.between(1, 10)] {
		roots = append(roots, root(n))
	}
	other := slices.Clone(roots)
	d.Shuffle(len(other), func(i, j int) { other[i], other[j] = other[j], other[i] })
	if d.IntN(2) == 0 {
		return left.plus(sumOf(roots...)), sumOf(other...).plus(right)
	}
	return left.times(sumOf(roots...)), right.times(sumOf(other...))
}
