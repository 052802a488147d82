package exact

// Formulas with roots: Σ c·y for registers c and products y of roots. They are kept as the
// elements of a tower are, but no root has been shown to be new. So what is written 0 is 0,
// and what is not may be 0 all the same.

// expansion is a register, at level 0, or a + b·y for the root y of its level.
type expansion struct {
	level    int
	register int
	a, b     *expansion
}

// adjoined is the root y ≥ 0 of an expansion. The first one has level 1.
type adjoined struct{ square *expansion }

func plain(register int) *expansion { return &expansion{register: register} }

func (f *formula) number(n int64) *expansion { return plain(f.constant(integer{k: n})) }

func (f *formula) isZero(x *expansion) bool { return x.level == 0 && f.isConstant(x.register, 0) }

// join is a + b·y at a level.
func (f *formula) join(level int, a, b *expansion) *expansion {
	if f.isZero(b) {
		return a
	}
	return &expansion{level: level, a: a, b: b}
}

// parts are a and b of x as a + b·y at a level that is not below its own.
func (f *formula) parts(x *expansion, level int) (a, b *expansion) {
	if x.level < level {
		return x, f.number(0)
	}
	return x.a, x.b
}

// combined is x + y or x - y, as op adds or subtracts registers.
func (f *formula) combined(op func(x, y int) int, x, y *expansion) *expansion {
	level := max(x.level, y.level)
	if level == 0 {
		return plain(op(x.register, y.register))
	}
	a, b := f.parts(x, level)
	c, d := f.parts(y, level)
	return f.join(level, f.combined(op, a, c), f.combined(op, b, d))
}

func (f *formula) plus(x, y *expansion) *expansion  { return f.combined(f.sum, x, y) }
func (f *formula) minus(x, y *expansion) *expansion { return f.combined(f.difference, x, y) }

func (f *formula) times(x, y *expansion) *expansion {
	level := max(x.level, y.level)
	switch {
	case level == 0:
		return plain(f.product(x.register, y.register))
	case f.isZero(x):
		return x
	case f.isZero(y):
		return y
	}
	a, b := f.parts(x, level)
	c, d := f.parts(y, level)
	yy := f.times(f.times(b, d), f.roots[level-1].square)
	return f.join(level, f.plus(f.times(a, c), yy), f.plus(f.times(a, d), f.times(b, c)))
}

// norm is x times its conjugate over the level below, a² - b²y², and that conjugate.
func (f *formula) norm(x *expansion) (conjugate, norm *expansion) {
	bb := f.times(f.times(x.b, x.b), f.roots[x.level-1].square)
	return f.join(x.level, x.a, f.opposite(x.b)), f.minus(f.times(x.a, x.a), bb)
}

func (f *formula) opposite(x *expansion) *expansion { return f.minus(f.number(0), x) }

// root is the root of a positive expansion, adjoined unless it has been.
func (f *formula) root(square *expansion) *expansion {
	if square.level == 0 && f.isConstant(square.register, 1) {
		return square
	}
	level := 1
	for level <= len(f.roots) && !f.roots[level-1].square.equal(square) {
		level++
	}
	if level > len(f.roots) {
		f.roots = append(f.roots, adjoined{square})
	}
	return f.join(level, f.number(0), f.number(1))
}

func (x *expansion) equal(y *expansion) bool {
	if x.level != y.level {
		return false
	}
	if x.level == 0 {
		return x.register == y.register
	}
	return x.a.equal(y.a) && x.b.equal(y.b)
}

// coefficients are the registers in x.
func (x *expansion) coefficients() []int {
	if x.level == 0 {
		return []int{x.register}
	}
	return append(x.a.coefficients(), x.b.coefficients()...)
}

// element is the expansion of an element of the tower.
func (f *formula) element(x *element) *expansion {
	if x.level == 0 {
		return plain(f.constant(x.n))
	}
	return f.plus(f.element(x.a), f.times(f.element(x.b), f.generator(x.level)))
}

// generator is the expansion of the root of a level of the tower.
func (f *formula) generator(level int) *expansion {
	switch level {
	case ninthLevel:
		return plain(f.doubleCosine(turn{1, 9}))
	case twentySeventhLevel:
		return plain(f.doubleCosine(turn{1, 27}))
	case twentyFifthLevel:
		return plain(f.sum(f.doubleCosine(turn{1, 25}), f.doubleCosine(turn{7, 25})))
	}
	return f.root(f.element(f.field.tower.levels[level].radicand))
}
