package exact

// Sets of levels of a tower, as bits.

import "math/bits"

// maxLevels keeps level numbers within a levelSet.
const maxLevels = 256

// levelSet is a set of levels.
type levelSet [maxLevels / 64]uint64

func setOf(i int) (s levelSet) {
	s.add(i)
	return s
}

func (s *levelSet) add(i int) { s[i>>6] |= 1 << (i & 63) }

func (s levelSet) has(i int) bool { return s[i>>6]>>(i&63)&1 == 1 }

func (s levelSet) isEmpty() bool { return s == levelSet{} }

// meetsBase tells whether there are base levels in s.
func (s levelSet) meetsBase() bool { return s[0]&(1<<(baseLevels+1)-2) != 0 }

func (s levelSet) with(o levelSet) levelSet {
	for i := range s {
		s[i] |= o[i]
	}
	return s
}

func (s levelSet) without(o levelSet) levelSet {
	for i := range s {
		s[i] &^= o[i]
	}
	return s
}

func (s levelSet) within(o levelSet) bool { return s.without(o).isEmpty() }

func (s levelSet) count() (n int) {
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// top is the highest level of s, or 0 if there is none.
func (s levelSet) top() int {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] != 0 {
			return i<<6 + bits.Len64(s[i]) - 1
		}
	}
	return 0
}

// each yields the levels of s from the lowest.
func (s levelSet) each(yield func(int) bool) {
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			if !yield(i<<6 + bits.TrailingZeros64(w)) {
				return
			}
		}
	}
}
