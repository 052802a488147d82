package solve

import (
	"math/big"
	"slices"
)

// record is what a step was last seen to read and make, how far slotDeps had
// grown, and from which values of slots and inputs it has made what stands.
type record struct {
	reads, writes, inputs []int
	grown                 int
	stands                bool
	from                  []int
	chosen                []*big.Rat
}

// copy makes k like another record.
func (k *record) copy(o *record, p *pool) {
	k.reads, k.writes, k.inputs, k.from = p.copy(k.reads, o.reads), p.copy(k.writes, o.writes), p.copy(k.inputs, o.inputs), p.copy(k.from, o.from)
	k.grown, k.stands, k.chosen = o.grown, o.stands, append(k.chosen[:0], o.chosen...)
}

// pool is where short lists are cut from.
type pool struct{ rest []int }

// copy makes one list like another, with the room that it has if that will do.
func (p *pool) copy(to, from []int) []int {
	if n := len(from); n > cap(to) {
		if n > len(p.rest) {
			p.rest = make([]int, max(n, 1000))
		}
		to, p.rest = p.rest[:0:n], p.rest[n:]
	}
	return append(to[:0], from...)
}

// union is what is in one of two lists or in both; all ascend, and one may be the other.
func union(a, b []int) []int {
	switch {
	case holds(a, b):
		return a
	case holds(b, a):
		return b
	}
	all := slices.Concat(a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// holds tells whether all of a list are in another; both ascend.
func holds(list, part []int) bool {
	return len(part) <= len(list) && len(without(part, list)) == 0
}

// without are those of a list that are not in another; both ascend.
func without(list, other []int) (rest []int) {
	for _, i := range list {
		for len(other) > 0 && other[0] < i {
			other = other[1:]
		}
		if len(other) == 0 || other[0] != i {
			rest = append(rest, i)
		}
	}
	return rest
}
