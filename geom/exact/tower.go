package exact

// The tower of fields K₀ ⊂ K₁ ⊂ … in which numbers are written out. K₀ is the field
// of the base levels over the rationals (base.go). Each level above adjoins the root of
// a positive element d that is no square in the field below.
//
// Whether d is a square below is decided in square.go; mostly that is proved, and then no
// number but 0 is written 0, and 0 in no other way. A square can be missed only where too
// few ring maps are found (see levelsWithoutMaps). Then some number is 0 and is not written
// so, which is noticed (towersign.go) and mended (mend.go) before it can become a verdict.

// tower is K₀ ⊂ K₁ ⊂ … as far as roots have been adjoined.
type tower struct {
	levels    []level // [0] is the rationals; then the base; then the roots
	maps      map[levelSet]*mapSearch
	baseRoots map[baseImage][]uint64
	work      int // spent since the last decision began
	limit     int // on work, for this decision

	plain  bool      // leave out the complete square test, to try what mends its lack
	moved  *tower    // what replaced this tower when it proved to be no field
	images []*number // where each level went in it
}

// level is a root r ≥ 0 with r² = radicand, an element of lower levels.
type level struct {
	radicand *element
	closure  levelSet // the levels that the radicand needs, with all that those need
	norm     integer  // of the radicand, down to a whole number; 0 while unknown
	root     enclosure
}

// newTower is the base, without roots.
func newTower() *tower {
	t := &tower{
		limit:     mostWork,
		levels:    make([]level, baseLevels+1),
		maps:      map[levelSet]*mapSearch{},
		baseRoots: map[baseImage][]uint64{},
	}
	for i, g := range generators {
		for _, j := range g.needs {
			t.levels[i].closure.add(j)
		}
	}
	return t
}

// adjoin adds the root of d, which must be positive and no square, and
// returns it.
func (t *tower) adjoin(d *element) *number {
	if len(t.levels) == maxLevels {
		panic(&exhausted{"more than 250 independent roots"})
	}
	t.levels = append(t.levels, level{radicand: d, closure: t.close(d.levels())})
	return t.rootAt(len(t.levels) - 1)
}

// rootAt is the root of a level as a number.
func (t *tower) rootAt(i int) *number {
	return &number{t: t, num: join(i, zero, unit), den: one}
}

// all are the levels of roots, with what they need of the base.
func (t *tower) all() levelSet { return t.below(len(t.levels)) }

// below are the levels of roots under level n, with what they need of the base.
func (t *tower) below(n int) (s levelSet) {
	for i := baseLevels + 1; i < n; i++ {
		s = s.with(setOf(i)).with(t.levels[i].closure)
	}
	return s
}

// close adds to s all that its levels need.
func (t *tower) close(s levelSet) levelSet {
	closed := s
	for i := range s.each {
		closed = closed.with(t.levels[i].closure)
	}
	return closed
}
