package exact

import (
	"math/rand/v2"
	"slices"
)

// sheet is the formulas of some numbers as lines, operands before what is made of them,
// to be worked out at points: values of the variables modulo primes p ≡ 3 (mod 4). It is cut into
// blocks, of which the first hangs on no variable and each other on one more than the one
// before: where a root does not exist modulo p, only the variable of its block is drawn again.
type sheet struct {
	lines []entry
	at    map[*Real]int32
	ends  []int32 // of blocks

	settled int    // blocks after the first of which the variables are angles in degrees
	active  []bool // lines that are worked out at points; nil: all
	guessed []bool // by line: the sign of a root has been left to chance
	failed  []bool // by line: a root has been found not to exist at some point
}

type entry struct {
	x    *Real
	a, b int32
	rule rule
}

// rule says which of its two values a root takes.
type rule struct {
	flips    bool      // either: its radicand is no square, so that an automorphism takes one to the other
	known    *monomial // what it is on the branch of the figure at hand
	relation *relation // says of a positive number what its character is
	fixed    bool      // it hangs on nothing free, by the figure at hand
	world    int       // 1 + the index of a sign that is chosen for each world; 0: none
}

// place is values of the lines of a sheet modulo a prime, as far as they are worked out.
type place struct {
	*constants
	value []uint64
}

func (pt *place) isZero(i int32) bool { return pt.value[i] == 0 }

// constants are the lines of the first block modulo a prime.
type constants struct {
	p     uint64
	value []uint64
}

// newSheet writes down numbers and what they are made of.
func newSheet(numbers []*Real) *sheet {
	g := gathering{block: map[*Real]int{}}
	seen := map[*Real]bool{}
	for _, x := range numbers {
		g.addSettled(x, seen)
	}
	settled := g.variables
	for _, x := range numbers {
		g.add(x)
	}
	slices.SortStableFunc(g.list, func(x, y *Real) int { return g.block[x] - g.block[y] })
	s := &sheet{at: map[*Real]int32{}, ends: make([]int32, g.variables+1), settled: settled}
	s.guessed, s.failed = make([]bool, len(g.list)), make([]bool, len(g.list))
	for i, x := range g.list {
		l := entry{x: x}
		if x.x != nil {
			l.a = s.at[x.x]
		}
		if x.y != nil {
			l.b = s.at[x.y]
		}
		s.at[x], s.lines = int32(i), append(s.lines, l)
		s.ends[g.block[x]] = int32(i) + 1
	}
	for k := 1; k < len(s.ends); k++ {
		s.ends[k] = max(s.ends[k], s.ends[k-1])
	}
	return s
}

// gathering is numbers with what they are made of, operands first, and the last variable that each
// hangs on.
type gathering struct {
	list      []*Real
	block     map[*Real]int
	variables int
}

func (g *gathering) add(x *Real) {
	if x == nil {
		return
	}
	if _, known := g.block[x]; known {
		return
	}
	g.add(x.x)
	g.add(x.y)
	block := max(g.blockOf(x.x), g.blockOf(x.y))
	if x.op == variable {
		g.variables++
		block = g.variables
	}
	g.block[x] = block
	g.list = append(g.list, x)
}

// addSettled adds the variables of x that have one value in all figures.
func (g *gathering) addSettled(x *Real, seen map[*Real]bool) {
	if x == nil || seen[x] {
		return
	}
	seen[x] = true
	g.addSettled(x.x, seen)
	g.addSettled(x.y, seen)
	if x.op == variable && x.settled {
		g.add(x)
	}
}

// hasRootsOf tells whether all roots and variables of x are gathered.
func (g *gathering) hasRootsOf(x *Real) bool {
	if x == nil {
		return true
	}
	if _, known := g.block[x]; known {
		return true
	}
	return x.op != root && x.op != variable && g.hasRootsOf(x.x) && g.hasRootsOf(x.y)
}

func (g *gathering) blockOf(x *Real) int {
	if x == nil {
		return 0
	}
	return g.block[x]
}

// linesOf are the lines of those numbers that are written down.
func (s *sheet) linesOf(xs []*Real) (out []int32) {
	for _, x := range xs {
		if i, ok := s.at[x]; ok {
			out = append(out, i)
		}
	}
	return out
}

// start is the first line of a block.
func (s *sheet) start(block int) int32 {
	if block == 0 {
		return 0
	}
	return s.ends[block-1]
}

// constantsModulo works out the first block; nil where some number of it is none modulo p.
func (s *sheet) constantsModulo(p uint64, random *rand.Rand) *constants {
	base := &ringMap{p: p, root: make([]uint64, baseLevels+1)}
	pt := &place{&constants{p: p}, make([]uint64, len(s.lines))}
	for i := range s.ends[0] {
		l := &s.lines[i]
		ok := true
		switch l.x.op {
		case ratio:
			pt.value[i], ok = ratioModulo(l.x.num, l.x.den, p)
		case written:
			pt.value[i], ok = writtenModulo(l.x, base)
		default:
			ok = s.step(pt, i, random, 0)
		}
		if !ok {
			return nil
		}
	}
	pt.constants.value = pt.value[:s.ends[0]]
	return pt.constants
}

// writtenModulo is the image of a number of the base field, which has one modulo few primes only.
func writtenModulo(x *Real, base *ringMap) (uint64, bool) {
	n, t := x.exactly(), x.field.tower
	var needed levelSet
	n.num.gatherLevels(&needed)
	for i := range t.close(needed).each {
		if i > baseLevels {
			return 0, false
		}
		if base.root[i] == 0 {
			roots := t.generatorsModulo(i, base)
			if len(roots) == 0 {
				return 0, false
			}
			base.root[i] = roots[0]
		}
	}
	return quotientModulo(base.apply(n.num), n.den.mod(base.p), base.p)
}

// newPlace is a point of which the first block is worked out.
func (s *sheet) newPlace(c *constants) *place {
	pt := &place{c, make([]uint64, len(s.lines))}
	copy(pt.value, c.value)
	return pt
}

// step works one line out; false where there is no such number modulo p.
func (s *sheet) step(pt *place, i int32, random *rand.Rand, world uint) (ok bool) {
	l, p := &s.lines[i], pt.p
	a, b := pt.value[l.a], pt.value[l.b]
	v := uint64(0)
	ok = true
	switch l.x.op {
	case variable:
		v = random.Uint64N(p-1) + 1
	case sum:
		if v = a + b; v >= p {
			v -= p
		}
	case difference:
		if v = a + p - b; v >= p {
			v -= p
		}
	case product:
		v = a * b % p
	case quotient:
		v, ok = quotientModulo(a, b, p)
	case negation:
		if v = p - a; a == 0 {
			v = 0
		}
	case root:
		v, ok = s.root(pt, i, random, world)
	}
	pt.value[i] = v
	return ok && (l.x.op == root || !s.binds(l.rule.relation) || l.rule.relation.admits(pt, v))
}

// binds tells whether a relation is of lines that are all worked out.
func (s *sheet) binds(r *relation) bool {
	return r != nil && (s.active == nil || !slices.ContainsFunc(r.others, func(i int32) bool { return !s.active[i] }))
}

// root is a root of the value before it, by its rule.
func (s *sheet) root(pt *place, i int32, random *rand.Rand, world uint) (uint64, bool) {
	l := &s.lines[i]
	p, v := pt.p, pt.value[l.a]
	if v == 0 {
		return 0, true
	}
	r, signed := uint64(0), false
	if k := l.rule.known; k != nil {
		r = k.at(pt)
		signed = r*r%p == v
	}
	if !signed {
		if jacobi(v, p) != 1 {
			s.failed[i] = true
			return 0, false
		}
		r = power(v, (p+1)/4, p)
	}
	minus := false
	switch rel := l.rule.relation; {
	case l.rule.world > 0 && signed:
		minus = world>>(l.rule.world-1)&1 == 1
	case rel != nil:
		minus = !rel.admits(pt, r)
	case !signed:
		s.guessed[i] = true
		minus = random.Uint32()&1 == 1
	}
	if minus {
		r = p - r
	}
	return r, true
}

// fill works out all lines from a block on; false where some block has no values, however often its variable
// is drawn: stuck is the line that fails.
func (s *sheet) fill(pt *place, from int, random *rand.Rand, world uint, left *int) (stuck int32, ok bool) {
	for block := from; block < len(s.ends); block++ {
		if stuck, ok := s.redo(pt, block, s.ends[block], random, world, left); !ok {
			return stuck, false
		}
	}
	return 0, true
}

// redo works out a block up to a line, drawing its variable until that can be done, or
// until some line has failed mostFailures times in a row: a number that there is modulo
// primes there is in half of the cases.
func (s *sheet) redo(pt *place, block int, to int32, random *rand.Rand, world uint, left *int) (stuck int32, ok bool) {
	from := s.start(block)
	failures := map[int32]int{} // by line, since it has passed
	for *left >= 0 {
		i := from
		for ; i < to; i++ {
			if s.active != nil && !s.active[i] {
				continue
			}
			if *left--; !s.step(pt, i, random, world) {
				break
			}
		}
		if i == to {
			return 0, true
		}
		for line := range failures {
			if line < i {
				delete(failures, line)
			}
		}
		if failures[i]++; failures[i] == mostFailures {
			return i, false
		}
	}
	return 0, false
}

const mostFailures = 5
