package check

import (
	"trammel/geom"
	"trammel/lang/program"
)

// trapezium has AB parallel to DC. Shifting BC along to D leaves the triangle
// AED with AE = AB - DC and ED = BC.
func (sh *shape) trapezium(isosceles bool) (corners, bool) {
	if isosceles {
		sh.alike([2]element{sideOf(0, 3), sideOf(1, 2)}, [2]element{sideOf(0, 2), sideOf(1, 3)},
			[2]element{angleAt(0), angleAt(1)}, [2]element{angleAt(2), angleAt(3)})
	}
	for p := range 4 {
		sh.cornerBySides(p, nextCorner(p, 1), nextCorner(p, 2))
	}
	sh.supplement(0, 3)
	sh.supplement(1, 2)
	ab, cd := sh.datum(sideOf(0, 1)), sh.datum(sideOf(2, 3))
	t := &shape{of: sh, s: sh.s, n: sh.n, kind: "triangle", letters: []string{sh.letters[0], sh.letters[1], sh.letters[3]}}
	take := func(to, from element) {
		if v := sh.datum(from); v != nil {
			t.set(to, *v)
		}
	}
	t.sides = [3]string{sh.describe(sideOf(1, 2)), sh.describe(sideOf(0, 3)), sh.describe(sideOf(0, 1)) + " − " + sh.describe(sideOf(2, 3))}
	if isosceles {
		t.alike([2]element{sideOf(0, 2), sideOf(1, 2)}, [2]element{angleAt(0), angleAt(1)})
	}
	take(sideOf(0, 2), sideOf(0, 3))
	take(sideOf(1, 2), sideOf(1, 2))
	take(angleAt(0), angleAt(0))
	take(angleAt(1), angleAt(1))
	if p, q := sh.datum(sideOf(0, 2)), sh.datum(sideOf(1, 3)); (p != nil || q != nil) && t.count(true)+t.count(false) == 0 {
		sh.openDiagonals()
		ab, cd = sh.datum(sideOf(0, 1)), sh.datum(sideOf(2, 3))
	}
	if f, ok := sh.slantedDiagonals(ab, cd); ok {
		return f, true
	}
	if isosceles && t.count(false) > 0 && t.count(true) == 0 && (ab == nil || cd == nil) {
		t.chanceSide(sideOf(0, 2), rat(36, 10)) // the angles and both parallels may make a tower
	}
	known := t.count(true) + t.count(false)
	if ab == nil && (cd == nil || known < 3) {
		sh.chanceSide(sideOf(0, 1), rat(7, 1))
		ab = sh.datum(sideOf(0, 1))
	}
	if cd == nil && known < 3 {
		sh.chanceSide(sideOf(2, 3), rat(32, 10))
		cd = sh.datum(sideOf(2, 3))
	}
	if known == 0 {
		t.chanceSide(sideOf(0, 2), rat(43, 10))
	}
	if known < 2 && !isosceles {
		t.trapeziumAngle()
	}
	return t.trapeziumCorners(ab, cd), true
}

// openDiagonals leaves to chance what a trapezium with a diagonal lacks: the other
// diagonal, and the parallel sides.
func (sh *shape) openDiagonals() {
	for _, e := range []struct {
		element
		plain rational
	}{{sideOf(0, 2), rat(59, 10)}, {sideOf(1, 3), rat(73, 10)}, {sideOf(0, 1), rat(7, 1)}, {sideOf(2, 3), rat(32, 10)}} {
		if sh.datum(e.element) == nil {
			sh.chanceSide(e.element, e.plain)
		}
	}
}

// slantedDiagonals is a trapezium from its parallel sides and both diagonals:
// BD shifted along to C makes a triangle on AB + DC with AC.
func (sh *shape) slantedDiagonals(ab, cd *expr) (corners, bool) {
	p, q := sh.datum(sideOf(0, 2)), sh.datum(sideOf(1, 3))
	if p == nil || q == nil || ab == nil || cd == nil {
		return nil, false
	}
	t := &shape{of: sh, s: sh.s, n: sh.n, kind: "triangle", letters: []string{sh.letters[0], sh.letters[1], sh.letters[2]}}
	base := combine(*ab, *cd, program.Amount.Add)
	t.set(sideOf(0, 1), expr{node: sh.n, dim: 1, value: base.value})
	t.set(sideOf(0, 2), *p)
	t.set(sideOf(1, 2), *q)
	t.sides = [3]string{sh.describe(sideOf(1, 3)), sh.describe(sideOf(0, 2)), sh.describe(sideOf(0, 1)) + " + " + sh.describe(sideOf(2, 3))}
	f := t.solve()
	return func(st *program.State) ([]geom.Point, error) {
		tri, err := f(st)
		if err != nil {
			return nil, err
		}
		long, err := positive(st, ab)
		if err != nil {
			return nil, err
		}
		short, err := positive(st, cd)
		if err != nil {
			return nil, err
		}
		way := tri[1].Sub(tri[0])
		return []geom.Point{tri[0], geom.Along(tri[0], way, long), tri[2], geom.Along(tri[2], way.Neg(), short)}, nil
	}, true
}

// cornerBySides works out the angle at q where the triangle p, q, r is given by its sides.
func (sh *shape) cornerBySides(p, q, r int) {
	t := sh.part(p, q, r)
	if t.count(true) < 3 || sh.datum(angleAt(q)) != nil {
		return
	}
	f := t.solve()
	sh.set(angleAt(q), expr{node: sh.n, angle: true, size: func(st *program.State) (geom.Angle, error) {
		ps, err := f(st)
		if err != nil {
			return geom.Angle{}, err
		}
		return geom.Corner(ps[0], ps[1], ps[2], false), nil
	}})
}

// trapeziumAngle leaves one angle at the base to chance.
func (t *shape) trapeziumAngle() {
	if t.datum(angleAt(0)) == nil && t.datum(sideOf(1, 2)) == nil {
		t.chanceAngle(angleAt(0), 77)
	} else if t.datum(angleAt(1)) == nil {
		t.chanceAngle(angleAt(1), 74)
	} else {
		t.chanceSide(sideOf(0, 2), rat(43, 10))
	}
}

// trapeziumCorners puts the triangle and the shift together.
func (t *shape) trapeziumCorners(ab, cd *expr) corners {
	if ab != nil && cd != nil {
		t.set(sideOf(0, 1), t.computed(func(st *program.State) (geom.Real, error) {
			a, err := positive(st, ab)
			if err != nil {
				return nil, err
			}
			c, err := positive(st, cd)
			if err != nil {
				return nil, err
			}
			if a.Cmp(c) <= 0 {
				return nil, &program.Fault{Text: "the parallel sides are " + geom.Show(a) + " and " + geom.Show(c) + ": the first one named must be the longer", Help: "begin with the longer side's letters", Range: true}
			}
			return a.Sub(c), nil
		}))
	}
	f := t.solve()
	return func(st *program.State) ([]geom.Point, error) {
		p, err := f(st)
		if err != nil {
			return nil, err
		}
		long, err := t.longSide(st, p, ab, cd)
		if err != nil {
			return nil, err
		}
		b := geom.Along(p[0], p[1].Sub(p[0]), long)
		c := p[2].Add(b.Sub(p[1]))
		if c.Sub(p[2]).Dot(b.Sub(p[0])).Sign() <= 0 {
			return nil, &program.Fault{Text: "the two slanting sides meet before they reach the parallel: the shape is no trapezium", Range: true}
		}
		return []geom.Point{p[0], b, c, p[2]}, nil
	}
}

// longSide is AB: as it is given, or CD and what the triangle adds to it.
func (t *shape) longSide(st *program.State, p []geom.Point, ab, cd *expr) (geom.Real, error) {
	if ab != nil {
		return positive(st, ab)
	}
	short, err := positive(st, cd)
	if err != nil {
		return nil, err
	}
	return geom.Dist(p[0], p[1]).Add(short), nil
}
