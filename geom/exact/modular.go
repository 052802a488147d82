package exact

import (
	"math/bits"
	"slices"
	"sync"
)

// ringMap is a ring homomorphism from the field of some levels to the whole
// numbers modulo a prime p ≡ 3 (mod 4): it sends each root to a root of the
// image of its radicand. What it does not send to 0 is not written 0.
type ringMap struct {
	p      uint64
	root   []uint64 // by level
	square []int8   // quadratic characters of radicands by level; unknown until asked
}

const unknownCharacter = 2

// baseImage says what the roots of a base level modulo p depend on.
type baseImage struct {
	p        uint64
	level    int
	constant uint64 // of the polynomial whose roots they are
}

// apply is the image of x.
func (m *ringMap) apply(x *element) uint64 {
	if x.level == 0 {
		return x.n.mod(m.p)
	}
	return (m.apply(x.b)*m.root[x.level] + m.apply(x.a)) % m.p
}

// character is 1 if the image of x is a square, -1 if not, 0 if it is 0.
func (m *ringMap) character(x *element) int8 { return jacobi(m.apply(x), m.p) }

// radicandCharacter is the character of the radicand of level i.
func (t *tower) radicandCharacter(m *ringMap, i int) int8 {
	for len(m.square) <= i {
		m.square = append(m.square, unknownCharacter)
	}
	if m.square[i] == unknownCharacter {
		m.square[i] = m.character(t.levels[i].radicand)
	}
	return m.square[i]
}

// mapSearch finds ring maps of one closed set of levels, as many as asked.
type mapSearch struct {
	levels []int
	primes []uint64 // not tried yet
	found  []*ringMap
}

// mapsPerPrime bounds how many maps one prime gives, for the sake of variety.
const mapsPerPrime = 8

// mapOf is the k-th ring map of the field of the levels in s, nil if that many
// more primes do not give so many maps.
func (t *tower) mapOf(s levelSet, k, tries int) *ringMap {
	search := t.maps[s]
	if search == nil {
		search = &mapSearch{primes: mapPrimes()}
		for i := range s.each {
			search.levels = append(search.levels, i)
		}
		t.maps[s] = search
	}
	for ; len(search.found) <= k; tries-- {
		if len(search.primes) == 0 || tries == 0 {
			return nil
		}
		m := &ringMap{p: search.primes[0], root: make([]uint64, s.top()+1)}
		search.primes = search.primes[1:]
		t.extend(search, m, 0, len(search.found)+mapsPerPrime)
	}
	return search.found[k]
}

// extend tries both roots of each level in turn, depth first: half of the
// branches die and the others fork, so that a prime gives about one map
// however many levels there are.
func (t *tower) extend(search *mapSearch, m *ringMap, k, limit int) {
	if len(search.found) >= limit {
		return
	}
	if k == len(search.levels) {
		whole := &ringMap{p: m.p, root: append([]uint64(nil), m.root...)}
		search.found = append(search.found, whole)
		return
	}
	i := search.levels[k]
	for _, r := range t.rootsModulo(m, i) {
		m.root[i] = r
		t.extend(search, m, k+1, limit)
	}
}

// rootsModulo are the values that the root of level i can take.
func (t *tower) rootsModulo(m *ringMap, i int) []uint64 {
	if i <= baseLevels {
		return t.generatorsModulo(i, m)
	}
	v := m.apply(t.levels[i].radicand)
	if jacobi(v, m.p) != 1 {
		return nil
	}
	r := power(v, (m.p+1)/4, m.p)
	if m.p*uint64(2*i+1)*scatter>>63 == 1 { // lest the first one always be a square
		r = m.p - r
	}
	return []uint64{r, m.p - r}
}

// scatter is 2^64 divided by the golden ratio (Knuth, section 6.4): a product
// with it has a top bit that looks like chance.
const scatter = 0x9e3779b97f4a7c15

// generatorsModulo are the roots of the polynomial of a base level, if p
// splits it. They depend on the images of the lower base levels alone.
func (t *tower) generatorsModulo(i int, m *ringMap) []uint64 {
	g := generators[i]
	if !slices.Contains(g.residues, m.p%g.conductor) {
		return nil
	}
	f := make(residuePolynomial, g.degree+1)
	for k, c := range coefficients(i, g.power) {
		f[k] = (m.p - m.apply(c)) % m.p
	}
	f[g.degree] = 1
	key := baseImage{m.p, i, f[0]}
	roots, ok := t.baseRoots[key]
	if !ok {
		roots = f.splitRoots(m.p)
		t.baseRoots[key] = roots
	}
	return roots
}

func power(a, e, p uint64) uint64 {
	r := uint64(1)
	for ; e > 0; e >>= 1 {
		if e&1 == 1 {
			r = r * a % p
		}
		a = a * a % p
	}
	return r
}

// jacobi is Jacobi's symbol (a/n) for odd n.
func jacobi(a, n uint64) int8 {
	t := int8(1)
	for a %= n; a != 0; {
		z := bits.TrailingZeros64(a)
		a >>= z
		if z&1 == 1 && (n&7 == 3 || n&7 == 5) {
			t = -t
		}
		if a < n {
			if a&3 == 3 && n&3 == 3 {
				t = -t
			}
			a, n = n, a
		}
		a -= n
	}
	if n == 1 {
		return t
	}
	return 0
}

// tableSize is how many primes there are for ring maps.
const tableSize = 1 << 13

// mapPrimes are ≡ 3 (mod 4), so that roots are powers.
var mapPrimes = sync.OnceValue(func() []uint64 { return primesIn(3, 4) })

// primesIn sieves the arithmetic progression first + k·step from 2^30.
func primesIn(first, step uint64) []uint64 {
	const span, limit = 1 << 17, 33000 // limit² is more than any number here
	start := uint64(1)<<30/step*step + first
	composite, small := make([]bool, span), make([]bool, limit)
	for q := uint64(3); q < limit; q += 2 {
		if small[q] {
			continue
		}
		for k := q * q; k < limit; k += 2 * q {
			small[k] = true
		}
		if step%q == 0 {
			continue
		}
		for k := (q - start%q) * power(step%q, q-2, q) % q; k < span; k += q {
			composite[k] = true
		}
	}
	var primes []uint64
	for k := uint64(0); k < span && len(primes) < tableSize; k++ {
		if !composite[k] {
			primes = append(primes, start+k*step)
		}
	}
	return primes
}

// It pays to look for ring maps before writing a number out if it needs a few
// levels; the search must not take longer than the writing.
const (
	levelsWorthMaps = 5
	mapsTried       = 3 // at which some denominator may be 0
	primesTried     = 32
)

// surelyNotZero finds a ring map that does not send x to 0. Every such map
// sends what is written 0 to 0; so the exact form of x, not built here, would
// not be written 0.
func (x *Real) surelyNotZero() bool {
	if x.exact != nil {
		return !x.exact.isZero()
	}
	t := x.field.tower
	var needed levelSet
	x.rootLevels(&needed, map[*Real]bool{})
	if needed = t.close(needed); needed.count() < levelsWorthMaps {
		return false
	}
	for k := range mapsTried {
		m := t.mapOf(needed, k, primesTried)
		if m == nil {
			return false
		}
		image := residues{m, map[*Real]uint64{}, true}
		if v := image.of(x); image.defined {
			return v != 0
		}
	}
	return false
}

// rootLevels gathers the levels that the roots below x need.
func (x *Real) rootLevels(s *levelSet, seen map[*Real]bool) {
	if x.op == ratio || seen[x] {
		return
	}
	seen[x] = true
	if x.op == root || x.op == written {
		x.exactly().num.gatherLevels(s)
		return
	}
	x.x.rootLevels(s, seen)
	if x.y != nil {
		x.y.rootLevels(s, seen)
	}
}

// residues are the images of nodes under a ring map, defined as long as no
// denominator has gone to 0.
type residues struct {
	m       *ringMap
	known   map[*Real]uint64
	defined bool
}

func (r *residues) of(x *Real) uint64 {
	if x.op == ratio {
		return r.quotient(integer{k: x.num}.mod(r.m.p), integer{k: x.den}.mod(r.m.p))
	}
	v, ok := r.known[x]
	if !ok {
		v = r.workOut(x)
		r.known[x] = v
	}
	return v
}

func (r *residues) workOut(x *Real) uint64 {
	p := r.m.p
	switch x.op {
	case sum:
		return (r.of(x.x) + r.of(x.y)) % p
	case difference:
		return (r.of(x.x) + p - r.of(x.y)) % p
	case product:
		return r.of(x.x) * r.of(x.y) % p
	case quotient:
		return r.quotient(r.of(x.x), r.of(x.y))
	case negation:
		return (p - r.of(x.x)) % p
	}
	n := x.exactly()
	return r.quotient(r.m.apply(n.num), n.den.mod(p))
}

func (r *residues) quotient(a, b uint64) uint64 {
	if b == 1 {
		return a
	}
	if b == 0 {
		r.defined = false
	}
	return a * power(b, r.m.p-2, r.m.p) % r.m.p
}
