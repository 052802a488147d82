package exact

import "math/rand/v2"

// sheet is the formulas of some numbers as lines, operands before what is made of them,
// to be worked out modulo primes at random values of the variables.
type sheet struct {
	lines []entry
	at    map[*Real]int32
	roots []int32 // lines
	value []uint64
	base  *ringMap // images of the base levels, where any are needed
	chose []rooted // the roots of the present values

	reached int            // by the last drawing
	tried   map[int32]int  // by root
	failed  map[int32]bool // roots that some drawing has not found
}

type entry struct {
	x    *Real
	a, b int32
}

// rooted is a root that a line has chosen for a radicand.
type rooted struct {
	line           int32
	radicand, root uint64
}

func newSheet() *sheet {
	return &sheet{at: map[*Real]int32{}, tried: map[int32]int{}, failed: map[int32]bool{}}
}

// put writes x down after what it is made of.
func (s *sheet) put(x *Real) int32 {
	if i, ok := s.at[x]; ok {
		return i
	}
	l := entry{x: x}
	switch x.op {
	case ratio, written, variable:
	case negation, root:
		l.a = s.put(x.x)
	default:
		l.a, l.b = s.put(x.x), s.put(x.y)
	}
	i := int32(len(s.lines))
	s.at[x], s.lines = i, append(s.lines, l)
	if x.op == root {
		s.roots = append(s.roots, i)
	}
	return i
}

// draw works all lines out modulo p, at random values and with random roots; false where some
// root or quotient does not exist there.
func (s *sheet) draw(p uint64, random *rand.Rand) bool {
	s.value = make([]uint64, len(s.lines))
	s.chose = s.chose[:0]
	s.base = &ringMap{p: p, root: make([]uint64, baseLevels+1)}
	return s.work(0, len(s.lines), random, nil)
}

// work works some lines out; signs, where it is given, says for roots whether the one
// that is no square is meant.
func (s *sheet) work(from, to int, random *rand.Rand, signs map[*Real]bool) bool {
	p := s.base.p
	for i := from; i < to; i++ {
		l := &s.lines[i]
		var v uint64
		ok := true
		switch a, b := s.value[l.a], s.value[l.b]; l.x.op {
		case ratio:
			v, ok = quotientModulo(integer{k: l.x.num}.mod(p), integer{k: l.x.den}.mod(p), p)
		case written:
			v, ok = s.written(l.x)
		case variable:
			v = random.Uint64N(p-1) + 1
		case sum:
			v = (a + b) % p
		case difference:
			v = (a + p - b) % p
		case product:
			v = a * b % p
		case quotient:
			v, ok = quotientModulo(a, b, p)
		case negation:
			v = (p - a) % p
		case root:
			v, ok = s.root(int32(i), a, random, signs)
		}
		if s.reached = i; !ok {
			return false
		}
		s.value[i] = v
	}
	return true
}

func quotientModulo(a, b, p uint64) (uint64, bool) {
	if b == 1 || b == 0 {
		return a, b == 1
	}
	return a * power(b, p-2, p) % p, true
}

// written is the image of a number of the base field, which has one modulo few primes only.
func (s *sheet) written(x *Real) (uint64, bool) {
	n, t := x.exactly(), x.field.tower
	var needed levelSet
	n.num.gatherLevels(&needed)
	for i := range t.close(needed).each {
		if i > baseLevels {
			return 0, false
		}
		if s.base.root[i] == 0 {
			roots := t.generatorsModulo(i, s.base)
			if len(roots) == 0 {
				return 0, false
			}
			s.base.root[i] = roots[0]
		}
	}
	return quotientModulo(s.base.apply(n.num), n.den.mod(s.base.p), s.base.p)
}

// root is a root of v. Roots that are always positive are equal where their radicands are.
func (s *sheet) root(i int32, v uint64, random *rand.Rand, signs map[*Real]bool) (uint64, bool) {
	p := s.base.p
	if jacobi(v, p) != 1 {
		s.failed[i] = true
		return 0, false
	}
	s.tried[i]++
	either := s.lines[i].x.either
	if !either {
		for _, known := range s.chose {
			if known.radicand == v {
				return known.root, true
			}
		}
	}
	r := power(v, (p+1)/4, p)
	if minus, told := signs[s.lines[i].x]; told && minus || !told && random.Uint32()&1 == 1 {
		r = p - r
	}
	if !either {
		s.chose = append(s.chose, rooted{i, v, r})
	}
	return r, true
}
