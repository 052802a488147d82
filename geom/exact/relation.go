package exact

import (
	"math/bits"
	"slices"
)

// relation says that a product of numbers that are positive in every figure is a square in the
// field of the figure at hand, so that modulo primes it is one as well. In any
// other figure the product is positive too, so that where it is minus a square there is
// none.
type relation struct {
	others []int32 // lines of the product, but for the last one
	odd    bool    // an odd number of all of them are negative instead
}

// admits tells whether the last number of the product may be v at a point; a product that is 0 says nothing.
func (r *relation) admits(pt *place, v uint64) bool {
	none := jacobi(v, pt.p) < 0
	for _, i := range r.others {
		if pt.value[i] == 0 {
			return true
		}
		none = none != (jacobi(pt.value[i], pt.p) < 0)
	}
	return none == r.odd || v == 0
}

// bitRow is a vector over the field of two elements, or a set.
type bitRow []uint64

func newRow(n int) bitRow { return make(bitRow, (n+63)/64) }

func (v bitRow) set(i int)      { v[i/64] |= 1 << (i % 64) }
func (v bitRow) has(i int) bool { return v[i/64]>>(i%64)&1 == 1 }

func (v bitRow) add(w bitRow) {
	for i := range w {
		v[i] ^= w[i]
	}
}

// join adds the elements of another set; what is no row has none.
func (v bitRow) join(w bitRow) {
	for i := range w {
		v[i] |= w[i]
	}
}

// elements are the ones of a set, ascending.
func (v bitRow) elements() (out []int32) {
	for k, w := range v {
		for ; w != 0; w &= w - 1 {
			out = append(out, int32(64*k+bits.TrailingZeros64(w)))
		}
	}
	return out
}

func (v bitRow) isZero() bool { return !slices.ContainsFunc(v, func(w uint64) bool { return w != 0 }) }

// characterSpan is vectors over the field of two elements, reduced to a basis.
type characterSpan struct {
	rows []characterRow
}

type characterRow struct {
	pivot  int
	vector bitRow
	made   bitRow // of which vectors it is the sum
}

// reduce takes off v what it has of the basis, and adds to made of which vectors that is the sum.
func (p *characterSpan) reduce(v, made bitRow) {
	for _, r := range p.rows {
		if v.has(r.pivot) {
			v.add(r.vector)
			made.add(r.made)
		}
	}
}

// add adds the k-th of n vectors; if it depends on others, made says on which.
func (p *characterSpan) add(v bitRow, k, n int) (made bitRow, depends bool) {
	v, made = slices.Clone(v), newRow(n)
	if p.reduce(v, made); v.isZero() {
		return made, true
	}
	pivot := 0
	for !v.has(pivot) {
		pivot++
	}
	made.set(k)
	p.rows = append(p.rows, characterRow{pivot, v, made})
	return nil, false
}

// spans tells whether v is a sum of vectors of the basis, and of which of n vectors.
func (p *characterSpan) spans(v bitRow, n int) (made bitRow, spans bool) {
	v, made = slices.Clone(v), newRow(n)
	p.reduce(v, made)
	return made, v.isZero()
}
