package exact

import (
	"math"
	"math/rand/v2"
	"slices"
)

// monomial is a constant times powers of lines: what a root is on the branch of the figure at
// hand if its radicand is the square of such.
type monomial struct {
	num, den int64 // of the constant
	times    int32 // and the line of a constant that it has to be multiplied by; theConstant: none
	factors  []linePower
}

type linePower struct {
	line int32
	exp  int
}

// at is its value at a point.
func (m *monomial) at(pt *place) uint64 {
	p := pt.p
	over, under := integer{k: m.num}.mod(p), integer{k: m.den}.mod(p)
	if m.times >= 0 {
		over = over * pt.value[m.times] % p
	}
	for _, f := range m.factors {
		v := pt.value[f.line]
		for range f.exp {
			over = over * v % p
		}
		for range -f.exp {
			under = under * v % p
		}
	}
	v, _ := quotientModulo(over, under, p)
	return v
}

// learn finds out which roots can be flipped, and what the others are. The points that this
// is seen at are of one prime p ≡ 1 (mod ℓ): there the logarithms modulo ℓ of numbers that are
// products of others depend linearly on those of the others, whatever their signs, as -1
// is an ℓ-th power (Kummer theory). A root of which the radicand is a square at all points
// is taken for one that can not be flipped, and is wrongly so with a chance of about 2^-n.
func (s *sheet) learn(random *rand.Rand, left *int) (surds []int64, ok bool) {
	tries := mostPrimes
	for _, p := range mapPrimes() {
		if p%logBase != 1 {
			continue
		}
		c := s.constantsModulo(p, random)
		if c == nil {
			continue
		}
		n := min(s.differing(c, random, left), mostIndependent)
		u := &learner{sheet: s, logs: newLogs(p, n+spareLogs), random: random, left: left, vector: make([][]uint8, len(s.lines))}
		if u.learn(c) {
			return u.surds, true
		}
		if tries--; tries == 0 || *left < 0 {
			break
		}
	}
	return nil, false
}

// differing is about how many lines there are that others may be products of and that differ, but for
// their signs: as many as do at one point.
func (s *sheet) differing(c *constants, random *rand.Rand, left *int) int {
	pt := s.newPlace(c)
	s.fill(pt, 1, random, 0, left)
	seen := map[uint64]bool{}
	for i := range s.lines {
		if v := pt.value[i]; isCandidate(s.lines[i].x) && v != 0 {
			seen[min(v, c.p-v)] = true
		}
	}
	return len(seen)
}

// learn is learn at one prime, modulo which some numbers that do not hang on what is free may be none.
func (u *learner) learn(c *constants) bool {
	for range u.n {
		u.points = append(u.points, u.newPlace(c))
	}
	for block := 1; block < len(u.ends); block++ {
		for i := u.start(block); i < u.ends[block]; i++ {
			u.lines[i].rule = rule{}
			if !u.line(block, i) {
				return false
			}
		}
	}
	return true
}

const (
	logBase         = 13
	mostIndependent = 256
	spareLogs       = 64
	mostPower       = 3
	mostPrimes      = 24
)

func isCandidate(x *Real) bool {
	switch x.op {
	case sum, difference, variable, root:
		return true
	}
	return false
}

type learner struct {
	*sheet
	*logs
	points []*place
	random *rand.Rand
	left   *int
	noted  int32     // lines that have been
	vector [][]uint8 // of logarithms, by line, while it is up to date
	seen   map[[2]uint64]bool
	surds  []int64
}

// line works one line out at all points.
func (u *learner) line(block int, i int32) bool {
	l := &u.lines[i]
	if l.x.op == root && u.isRootAtAll(l.a) {
		u.know(i)
	} else if l.x.op == root { // one of 0 has no other sign, and may flip as well
		l.rule.flips = true
	}
	again := false
	for k, pt := range u.points {
		if u.step(pt, i, u.random, 0) {
			continue
		}
		again = true
		if _, ok := u.redo(pt, block, i+1, u.random, 0, u.left); !ok && !u.renew(k, block, i+1) {
			return false
		}
	}
	*u.left -= len(u.points)
	if *u.left < 0 {
		return false
	}
	if again {
		clear(u.vector[u.start(block):])
	}
	if again || l.rule.flips {
		u.noted = 0
	}
	return true
}

// noteTo makes the lines before one those that others may be products of: roots first, as
// in products of others what is under them would have halves for exponents.
func (u *learner) noteTo(i int32) {
	if u.noted == 0 {
		u.truncate()
		u.seen = map[[2]uint64]bool{}
		for k := u.ends[0]; k < i; k++ {
			if u.lines[k].x.op == root {
				u.note(k)
			}
		}
	}
	for k := max(u.noted, u.ends[0]); k < i; k++ {
		u.note(k)
	}
	u.noted = i
}

// renew draws a point anew, up to a line, that has no values in a block: it is of another branch
// than the figure, as the sign is of a root that is not known what it is.
func (u *learner) renew(k, block int, to int32) bool {
	for range mostRenewals {
		pt := u.newPlace(u.points[k].constants)
		ok := true
		for b := 1; b < block && ok; b++ {
			_, ok = u.redo(pt, b, u.ends[b], u.random, 0, u.left)
		}
		if ok {
			_, ok = u.redo(pt, block, to, u.random, 0, u.left)
		}
		if ok {
			u.points[k] = pt
			clear(u.vector)
			return true
		}
	}
	return false
}

const mostRenewals = 128

func (u *learner) isRootAtAll(a int32) bool {
	for _, pt := range u.points {
		if jacobi(pt.value[a], pt.p) != 1 {
			return false
		}
	}
	return true
}

// note makes a line one that others may be products of.
func (u *learner) note(i int32) {
	x := u.lines[i].x
	if !isCandidate(x) || x.op == root && u.lines[i].rule.known != nil {
		return
	}
	if u.isSeen(i) {
		return
	}
	if u.vector[i] == nil {
		u.vector[i] = u.logarithms(func(pt *place) uint64 { return pt.value[i] })
	}
	if len(u.vector[i]) > 0 {
		u.add(i, slices.Clone(u.vector[i]))
	}
}

// isSeen tells whether a line has been noted that is this one or its opposite.
func (u *learner) isSeen(i int32) bool {
	var key [2]uint64
	for k := range key {
		v := u.points[k].value[i]
		key[k] = min(v, u.p-v)
	}
	seen := u.seen[key]
	u.seen[key] = true
	return seen
}

// logarithms are those of a number at the points; none if it is 0 at some.
func (u *learner) logarithms(value func(*place) uint64) []uint8 {
	out := make([]uint8, u.n)
	for k := range out {
		v := value(u.points[k])
		if v == 0 {
			return []uint8{}
		}
		out[k] = u.log(v)
	}
	return out
}

// know finds what a root is, of which the radicand is a square at all points.
func (u *learner) know(i int32) {
	l := &u.lines[i]
	v := u.logarithms(func(pt *place) uint64 { return power(pt.value[l.a], (pt.p+1)/4, pt.p) })
	if len(v) == 0 {
		return
	}
	u.noteTo(i)
	coefs, ok := u.express(v)
	if !ok {
		return
	}
	m := &monomial{num: 1, den: 1, times: theConstant}
	for k, coef := range coefs {
		e := int(coef)
		if e > logBase/2 {
			e -= logBase
		}
		switch line := u.basis[k].line; {
		case e == 0 || line == theConstant:
		case e > mostPower || e < -mostPower:
			return
		default:
			m.factors = append(m.factors, linePower{line, e})
		}
	}
	l.rule.known = u.scaled(m, i)
}

// scaled finds the constant of m, which is to be a root: a fraction, or one times a constant of the
// sheet. If it is the root of a fraction, that root is wanted in the sheet.
func (u *learner) scaled(m *monomial, i int32) *monomial {
	l := &u.lines[i]
	size := l.x.bounds.float()
	for _, f := range m.factors {
		size /= math.Pow(u.lines[f.line].x.bounds.float(), float64(f.exp))
	}
	for times := int32(theConstant); times < u.ends[0]; times++ {
		c := size
		if times >= 0 {
			if u.lines[times].x.op == ratio {
				continue
			}
			c /= u.lines[times].x.bounds.float()
		}
		var ok bool
		if m.num, m.den, ok = fractionNear(c); !ok {
			continue
		}
		if m.times = times; u.fits(m, l.a) {
			return m
		}
	}
	if num, den, ok := fractionNear(size * size); ok && num > 0 {
		if n, ok := mul64(num, den); ok {
			_, rest := integer{k: n}.squarePart()
			u.surds = append(u.surds, rest.k)
		}
	}
	return nil
}

// fractionNear is a fraction of small numbers that is hardly another than x.
func fractionNear(x float64) (num, den int64, ok bool) {
	h, k, g, j := int64(1), int64(0), int64(0), int64(1) // convergents and those before
	for rest := x; ; {
		a := math.Floor(rest)
		if math.Abs(a) > 1e7 {
			return 0, 0, false
		}
		h, g = int64(a)*h+g, h
		k, j = int64(a)*k+j, k
		if h > 1e7 || h < -1e7 || k > 1e5 {
			return 0, 0, false
		}
		if math.Abs(float64(h)-x*float64(k)) < 1e-9*math.Abs(x*float64(k)) {
			return h, k, h != 0
		}
		rest = 1 / (rest - a)
	}
}

// fits tells whether the square of m is the line a at all points.
func (u *learner) fits(m *monomial, a int32) bool {
	for _, pt := range u.points {
		if r := m.at(pt); r*r%pt.p != pt.value[a] {
			return false
		}
	}
	return true
}

// theConstant stands for a line that is the same at all points.
const theConstant = -1

// logs is vectors of logarithms modulo ℓ, reduced to a basis.
type logs struct {
	n     int
	p     uint64
	of    map[uint64]uint8 // by power (p-1)/ℓ
	basis []logRow
}

// logRow is a vector that is 1 at its pivot, and 0 at those before; combination says of which
// lines of the basis it is made.
type logRow struct {
	line        int32
	pivot       int
	vector      []uint8
	combination []uint8
}

func newLogs(p uint64, n int) *logs {
	g := &logs{n: n, p: p, of: map[uint64]uint8{}}
	for base := uint64(2); len(g.of) < logBase; base++ {
		clear(g.of)
		z, v := power(base, (p-1)/logBase, p), uint64(1)
		for k := range uint8(logBase) {
			g.of[v] = k
			v = v * z % p
		}
	}
	one := make([]uint8, n)
	for i := range one {
		one[i] = 1
	}
	g.add(theConstant, one)
	return g
}

func (g *logs) log(v uint64) uint8 { return g.of[power(v, (g.p-1)/logBase, g.p)] }

// truncate forgets all lines.
func (g *logs) truncate() { g.basis = g.basis[:1] }

// reduce takes off v what it has of the basis; coefs is how much of each of its rows.
func (g *logs) reduce(v []uint8) (coefs []uint8) {
	coefs = make([]uint8, len(g.basis))
	for _, r := range g.basis {
		if k := v[r.pivot]; k != 0 {
			for i, w := range r.vector {
				v[i] = uint8((uint(v[i]) + uint(logBase-k)*uint(w)) % logBase)
			}
			for i, w := range r.combination {
				coefs[i] = uint8((uint(coefs[i]) + uint(k)*uint(w)) % logBase)
			}
		}
	}
	return coefs
}

// express writes v in lines of the basis.
func (g *logs) express(v []uint8) (coefs []uint8, ok bool) {
	v = slices.Clone(v)
	coefs = g.reduce(v)
	return coefs, !slices.ContainsFunc(v, func(k uint8) bool { return k != 0 })
}

// add adds a line, if it depends on none.
func (g *logs) add(line int32, v []uint8) {
	if len(g.basis) > mostIndependent {
		return
	}
	coefs := g.reduce(v)
	pivot := slices.IndexFunc(v, func(k uint8) bool { return k != 0 })
	if pivot < 0 {
		return
	}
	over := inverseOf[v[pivot]]
	combination := make([]uint8, len(coefs)+1)
	for i, k := range coefs {
		combination[i] = uint8(uint(logBase-k) * uint(over) % logBase)
	}
	combination[len(coefs)] = over
	for i, k := range v {
		v[i] = uint8(uint(k) * uint(over) % logBase)
	}
	g.basis = append(g.basis, logRow{line, pivot, v, combination})
}

var inverseOf = func() (out [logBase]uint8) {
	for a := 1; a < logBase; a++ {
		for b := 1; b < logBase; b++ {
			if a*b%logBase == 1 {
				out[a] = uint8(b)
			}
		}
	}
	return out
}()
