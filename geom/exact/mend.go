package exact

// Mending a tower in which a dependence between roots was missed.
//
// That shows by an element a + b√d that is 0 and not written 0: by an enclosure that
// holds 0 at a great precision (towersign.go), or by a norm that is written 0 (invert).
// Then √d = ±a/b, which is verified by squaring. All levels are adjoined again to a
// new tower, in which √d is that number; and what was being worked out is begun
// again. If the equation cannot be verified there is no verdict.

// missed is the panic of a tower whose element x is 0 without being written 0:
// one of its roots depends on the others.
type missed struct {
	t *tower
	x *element
}

// settled runs something. If it comes upon a missed dependence, the tower is mended,
// and it is run again. Each time the tower loses a level, so this ends.
func (f *Field) settled(run func()) {
	for {
		fault := attempt(run)
		if fault == nil {
			return
		}
		var mended *tower
		if attempt(func() { mended = fault.t.mended(fault.x) }) != nil {
			panic(&exhausted{"two dependences between roots to be found at once"})
		}
		mended.limit, mended.work = f.tower.limit, f.tower.work
		f.tower = mended
	}
}

// attempt runs something and returns the *missed that it panicked with.
func attempt(run func()) (fault *missed) {
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

// mended is a tower without the dependence that x shows. Terms of x that look like 0
// may be 0 by another one; their coefficients are tried first.
func (t *tower) mended(x *element) *tower {
	for x.level > baseLevels && t.looksZero(x.b) {
		x = x.b
	}
	if x.level <= baseLevels {
		panic(&exhausted{"a search for a dependence between roots"})
	}
	lower := t.fraction(x.a, one).div(t.fraction(x.b, one))
	square := lower.mul(lower)
	if !square.den.isOne() || !square.num.equal(t.levels[x.level].radicand) {
		panic(&exhausted{"a proof that its roots depend on each other, which was not found"})
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

// looksZero tells whether an enclosure at a great precision holds 0.
func (t *tower) looksZero(x *element) bool {
	_, ok := t.enclose(x, mostBits).sign()
	return !ok
}
