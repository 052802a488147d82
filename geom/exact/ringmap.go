package exact

// Ring maps from a field of the tower to the residues modulo a prime. Let R be the
// ring of whole polynomials in the roots of some levels. A map R → F_p sends each root
// to a root of the image of its radicand, which must be a square other than 0.
//
// Such a map says two things for certain. What it does not send to 0 is not written 0.
// And if an x of R with an image other than 0 is a square in the field, then its image
// is a square: since neither 2 nor a radicand goes to 0, and p divides no discriminant
// of a base level, R is unramified over the whole numbers at the kernel of the map, hence
// integrally closed there: so it has √x, and the map sends that to a root of the image of x.
//
// Maps are found depth first. At each level both roots are tried, or there is none:
// half of the branches die and the others fork, so that a prime gives about one map
// however many levels there are (by Chebotarev's theorem, on the average; the search
// for primes in which all radicands split would be exponential). That is for
// speed alone; nothing is proved by how often maps are found.

import "slices"

// ringMap is a map to the residues modulo a prime p ≡ 3 (mod 4).
type ringMap struct {
	p      uint64
	root   []uint64 // by level
	square []int8   // quadratic characters of radicands by level; unknown until asked
}

// unknownCharacter stands for a character that has not been worked out.
const unknownCharacter = 2

// baseImage is what the roots modulo p of the polynomial of a base level depend on.
type baseImage struct {
	p        uint64
	level    int
	constant uint64 // coefficient of the polynomial; the others are the same for all
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

// mapOf is the k-th ring map of the field of the levels in s; nil if not so many maps
// are found at that many primes more.
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

// extend completes a map of the first k levels in every way, until there are enough maps.
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

// generatorsModulo are the roots of the polynomial of a base level if it splits modulo
// p, else none.
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
