package exact

// The modular filter: a number whose image under a ring map is not 0 need not be written
// out. It is a filter only. The number has no exact form that is written 0, but its
// sign is left to an enclosure.

// The filter pays for a number that needs a few levels; and the search for maps must
// not take longer than writing the number out.
const (
	levelsWorthMaps = 5
	mapsTried       = 3 // some denominator may go to 0
	primesTried     = 32
)

// surelyNotZero tells whether a ring map sends x to something else than 0, so that the
// exact form of x, which is not built, would not be written 0.
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

// rootLevels adds to s the levels that the roots below x need, and writes these out.
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

// residues are the images of nodes under a ring map. They are defined as long as no
// denominator goes to 0.
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
	v, ok := quotientModulo(a, b, r.m.p)
	r.defined = r.defined && ok
	return v
}
