package exact

// Is x a square in the field K of the tower?
//
// Let S be the levels that x needs, with all that these need, and suppose that no
// level outside S needs another one outside S. Then K is K_S with the roots of
// some elements dⱼ of K_S, and by Kummer theory (for example Lang, Algebra, VI §8; from
// memory) x is a square in K exactly when x·∏dⱼ is one in K_S, for some of the dⱼ.
// Otherwise the levels that need others outside S join it, with what they need:
// for that S' the same holds.
//
// Which dⱼ come in question is found by linear algebra over F₂ (parity.go). A ring
// map to F_p sends squares to squares; so each map (ringmap.go) gives one linear
// equation for the exponents of the dⱼ, from the quadratic characters of x and the
// dⱼ. If the equations contradict each other, x is proved to be no square. If they
// have a solution, the root of that x·∏dⱼ is sought by norms from level to level; a
// root that is found satisfies its equation by algebra. A solution may still be wrong
// after spareMaps more equations than determine it, with a chance of about 2^-24 (by
// Chebotarev's theorem maps are spread evenly); then the search is in vain, and nothing
// else comes of it.

// squareRoot is a square root of x, of either sign, in the field of the levels in the
// closed set within; nil if there is none, or if it was missed (see
// levelsWithoutMaps). S is tried first, which is often enough, then S'; unless a
// prime proves that there is no root (ramify.go).
func (t *tower) squareRoot(x *element, within levelSet) *number {
	if x.level == 0 {
		if s, ok := x.n.sqrt(); ok {
			return t.whole(s)
		}
	}
	t.checkWork()
	s := t.close(x.levels())
	if r := t.rootOver(x, s, within); r != nil || t.plain {
		return r
	}
	if wider := t.withDeep(s, within); wider != s && !t.ramifies(x, within) {
		return t.rootOver(x, wider, within)
	}
	return nil
}

// withDeep is S' for an S: with the levels that need something outside S, and what they
// need.
func (t *tower) withDeep(s, within levelSet) levelSet {
	wider := s
	for j := range within.without(s).each {
		if j > baseLevels && !t.levels[j].closure.within(s) {
			wider.add(j)
			wider = wider.with(t.levels[j].closure)
		}
	}
	return wider
}

// rootOver is a square root of x in the field of the levels in s and of those of within
// whose radicands lie in the field of s.
func (t *tower) rootOver(x *element, s, within levelSet) *number {
	var outside []int
	for j := range within.without(s).each {
		if j > baseLevels && t.levels[j].closure.within(s) {
			outside = append(outside, j)
		}
	}
	factors, verdict := t.dependence(x, s, outside)
	if verdict == none || verdict == unknown && s.count() > levelsWithoutMaps {
		return nil
	}
	for _, j := range factors {
		x = t.mul(x, t.levels[j].radicand)
	}
	f, d := t.fraction(x, one).radicand()
	r := t.exactRoot(d, s)
	if r == nil {
		return nil
	}
	r = r.mul(f)
	for _, j := range factors {
		r = t.overRoot(r, j)
	}
	return r
}

// overRoot is r/√d for the root of level j.
func (t *tower) overRoot(r *number, j int) *number {
	return r.mul(t.rootAt(j)).div(t.fraction(t.levels[j].radicand, one))
}

// exactRoot is a square root of x in the field of the levels in s, which holds x; nil if
// there is none. Let √d be the root of the highest level.
//
//   - If x = a lies below it, x or x·d is a square below.
//   - If u + v√d is a root of x = a + b√d with b ≠ 0, then u² - v²d = ±√(a² - b²d) lies
//     below, and so u² = (a ± √(a² - b²d))/2 and v = b/2u.
func (t *tower) exactRoot(x *element, s levelSet) *number {
	n := s.top()
	if n <= baseLevels {
		return t.baseRoot(x)
	}
	below := s.without(setOf(n))
	if x.level < n {
		if r := t.squareRoot(x, below); r != nil {
			return r
		}
		r := t.numberRoot(t.fraction(t.mul(x, t.levels[n].radicand), one), below)
		if r == nil {
			return nil
		}
		return t.overRoot(r, n)
	}
	norm := t.numberRoot(t.fraction(t.norm(x), one), below)
	if norm == nil {
		return nil
	}
	a, b := t.fraction(x.a, one), t.fraction(x.b, one)
	for _, root := range []*number{norm, norm.neg()} {
		if u := t.numberRoot(a.add(root).half(), below); u != nil {
			return u.add(b.div(u.add(u)).mul(t.rootAt(n)))
		}
	}
	return nil
}

// numberRoot is squareRoot for a number with a denominator; nil for 0.
func (t *tower) numberRoot(x *number, within levelSet) *number {
	if x.isZero() {
		return nil
	}
	f, d := x.radicand()
	r := t.squareRoot(d, within)
	if r == nil {
		return nil
	}
	return r.mul(f)
}

// finding says what the characters tell about a dependence of x on some radicands.
type finding int

const (
	none    finding = iota // there is none: proved
	likely                 // if there is one, it is this
	unknown                // there are too few ring maps to tell
)

// levelsWithoutMaps is the size of a field in which a root is sought without ring maps
// to guide the search. In a larger one the search would take too long, and a square is
// missed: which shows when a number is 0 but not written 0, and is mended.
// (Where many roots of whole numbers stand side by side, a prime modulo which all of
// them exist is rare. Maps to fields of p² elements are not; but there every whole
// number has a root, and so they cannot tell the factors that are sought.)
const levelsWithoutMaps = 6

// spareMaps is how many ring maps must agree with a dependence beyond those that
// determine it.
const spareMaps = 24

// dependence finds which radicands outside s make x a square in the field of s when
// they are multiplied to it. That there are none is proved; factors that are found
// remain to be proved.
func (t *tower) dependence(x *element, s levelSet, outside []int) (factors []int, f finding) {
	system := newParities(len(outside))
	for k := 0; !system.isSettled(); k++ {
		m := t.mapOf(s, k, tableSize)
		if m == nil {
			break
		}
		row, fit := t.characters(m, x, outside)
		if fit && !system.add(row) {
			return nil, none
		}
	}
	for i := range system.solution().each {
		factors = append(factors, outside[i])
	}
	if !system.isSettled() {
		return factors, unknown
	}
	return factors, likely
}

// characters is the equation that a ring map gives: the sum of the exponents of the
// radicands that go to no square is odd exactly if x goes to no square. It is not
// fit for use if x or a radicand goes to 0.
func (t *tower) characters(m *ringMap, x *element, outside []int) (row parity, fit bool) {
	c := m.character(x)
	if c == 0 {
		return row, false
	}
	row.odd = c < 0
	for i, j := range outside {
		switch t.radicandCharacter(m, j) {
		case 0:
			return row, false
		case -1:
			row.unknowns.add(i)
		}
	}
	return row, true
}
