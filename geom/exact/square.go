package exact

// squareRoot is a square root of x, of either sign, in the field of the
// levels in the closed set within; nil if there is none.
//
// Let S be the levels that x needs. If no level outside S needs another one
// outside S, the field is Kummer over K_S: x is a square in it exactly when
// x·∏dⱼ is one in K_S for some of the radicands dⱼ outside. Otherwise those
// deep levels join S, with what they need, and then it is.
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

// withDeep adds to s the levels that need something outside s.
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

// rootOver is a square root of x in the field of s and of those levels within
// that are Kummer over it.
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

// exactRoot is a square root of x in the field of the levels in s, which
// holds x; nil if there is none. With u² - v²d = ±√(a² - b²d), a root u + v√d
// of a + b√d has u² = (a ± √(a² - b²d))/2 and v = b/2u.
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

// numberRoot is squareRoot for a number with a denominator.
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

// finding says what came of a search for a dependence.
type finding int

const (
	none    finding = iota // there is no dependence: proved
	likely                 // there is one, if any
	unknown                // too few ring maps to tell
)

// levelsWithoutMaps is the size of a field whose roots can be sought in it
// without ring maps to guide the search. In a larger one a square can be
// missed, which shows when a number is 0 but not written 0, and is mended.
// (Where many roots of whole numbers stand side by side, a prime in which all
// of them split is rare. Maps to fields of p² elements are not; but every whole
// number has a root there, and so they are blind to the factors sought.)
const levelsWithoutMaps = 6

// spareMaps is how many ring maps must agree beyond those that determine a
// dependence.
const spareMaps = 24

// dependence finds which radicands outside s make x a square in the field of
// s when multiplied to it: linear algebra over the field of two elements, on
// the quadratic characters at ring maps of s. No solution is a proof that
// there is none; a solution remains to be proved.
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

// characters is one equation; it is not fit for use if a character is 0.
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
