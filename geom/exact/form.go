package exact

// exhausted is the panic of a computation in a tower that would cost too much.
type exhausted struct{ why string }

// missed is the panic of a tower whose element x is 0 without being written 0:
// one of its roots depends on the others.
type missed struct {
	t *tower
	x *element
}

// The budget of one decision: the longest number that may be written, and the
// work on the way. A unit of work is about the product of two machine words.
const (
	mostCoefficientBits = 256 * 8192
	mostWork            = 400_000_000
)

func (t *tower) checkWork() {
	if t.work > mostWork {
		panic(&exhausted{"too many steps"})
	}
}

func (t *tower) checkSize(x *number) {
	if x.num.level == 0 {
		return
	}
	if terms, bits := x.num.size(); terms*(bits+x.den.bitLen()) > mostCoefficientBits {
		panic(&exhausted{"too long an expression"})
	}
}

// spend runs f with a fresh budget and tells whether it was exhausted.
func (f *Field) spend(run func()) (spent *exhausted) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case *exhausted:
			spent = e
		default:
			panic(e)
		}
	}()
	f.tower.work = 0
	f.settled(run)
	return nil
}

// settled runs f, mends the tower if f comes upon a missed dependence, and
// then runs f again.
func (f *Field) settled(run func()) {
	for {
		fault := f.attempt(run)
		if fault == nil {
			return
		}
		var mended *tower
		if f.attempt(func() { mended = fault.t.mended(fault.x) }) != nil {
			panic(&exhausted{"a second dependence between roots while mending the first"})
		}
		f.tower = mended
	}
}

func (f *Field) attempt(run func()) (fault *missed) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case *missed:
			fault = e
		default:
			panic(e)
		}
	}()
	run()
	return nil
}

// form is the exact form of x, or a panic with *Undecided.
func (x *Real) form() *number {
	var n *number
	if spent := x.field.spend(func() { n = x.exactly() }); spent != nil {
		panic(&Undecided{Probably: x.approximately()})
	}
	return n
}

// exactly writes x out in the tower and keeps the result.
func (x *Real) exactly() *number {
	t := x.field.tower
	if x.exact == nil {
		x.exact = x.workOut(t)
		x.simplify()
	} else if x.exact.t != t {
		x.exact = x.exact.in(t)
	}
	return x.exact
}

// simplify makes x a ratio if that is what it has turned out to be.
func (x *Real) simplify() {
	num, den := x.exact.num, x.exact.den
	if num.level == 0 && num.n.wide == nil && den.wide == nil {
		r := x.field.ratio(num.n.k, den.k)
		r.exact = x.exact
		*x = *r
	}
}

func (x *Real) workOut(t *tower) *number {
	switch x.op {
	case sum:
		return x.x.exactly().add(x.y.exactly())
	case difference:
		return x.x.exactly().sub(x.y.exactly())
	case product:
		return x.x.exactly().mul(x.y.exactly())
	case quotient:
		return x.x.exactly().div(x.y.exactly())
	case negation:
		return x.x.exactly().neg()
	case root:
		return t.sqrt(x.x.exactly())
	}
	return t.fraction(constant(integer{k: x.num}), integer{k: x.den})
}

// in is x as a number of the tower that has replaced its own.
func (x *number) in(t *tower) *number {
	for x.t != t {
		x = x.t.translate(x.num).scale(one, x.den)
	}
	return x
}

// translate writes an element in the tower that t was replaced by.
func (t *tower) translate(x *element) *number {
	if x.level == 0 {
		return t.moved.whole(x.n)
	}
	return t.translate(x.a).add(t.translate(x.b).mul(t.images[x.level]))
}

// mended is a tower without the dependence that x shows: x = a + b√d or its
// conjugate is 0, so √d is ±a/b, which is verified by squaring.
func (t *tower) mended(x *element) *tower {
	for x.level > baseLevels && t.looksZero(x.b) {
		x = x.b
	}
	if x.level <= baseLevels {
		panic(&exhausted{"a dependence between roots that does not show itself"})
	}
	lower := t.fraction(x.a, one).div(t.fraction(x.b, one))
	square := lower.mul(lower)
	if !square.den.isOne() || !square.num.equal(t.levels[x.level].radicand) {
		panic(&exhausted{"a dependence between roots that cannot be proved"})
	}
	if lower.sign() < 0 {
		lower = lower.neg()
	}
	fresh := newTower()
	fresh.plain = t.plain
	t.moved, t.images = fresh, make([]*number, len(t.levels))
	for i := 1; i < len(t.levels); i++ {
		switch {
		case i <= baseLevels:
			t.images[i] = fresh.rootAt(i)
		case i == x.level:
			t.images[i] = t.translate(lower.num).scale(one, lower.den)
		default:
			t.images[i] = fresh.sqrt(t.translate(t.levels[i].radicand))
		}
	}
	return fresh
}

func (t *tower) looksZero(x *element) bool {
	_, ok := t.enclose(x, mostBits).sign()
	return !ok
}

// It pays to look for ring maps before writing a number out if it needs a few
// levels; the search must not take longer than the writing.
const (
	levelsWorthMaps = 5
	mapsTried       = 3 // at which some denominator may be 0
	primesTried     = 32
)

// surelyNotZero finds a ring map that does not send x to 0. Every such map
// sends what is written 0 to 0; so the exact form of x, not built here, would
// not be written 0.
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

// rootLevels gathers the levels that the roots below x need.
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

// residues are the images of nodes under a ring map, defined as long as no
// denominator has gone to 0.
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
	if b == 1 {
		return a
	}
	if b == 0 {
		r.defined = false
	}
	return a * power(b, r.m.p-2, r.m.p) % r.m.p
}
