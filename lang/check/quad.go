package check

import (
	"fmt"
	"math/big"

	"trammel/geom"
	"trammel/lang/program"
)

type corners = func(*program.State) ([]geom.Point, error)

// quad completes a quadrilateral's data and gives its corners A, B, C, D,
// anticlockwise.
func (sh *shape) quad(traits []string) (corners, bool) {
	isosceles := len(traits) == 1 && traits[0] == "isosceles" && sh.kind == "trapezium"
	if len(traits) > 0 && !isosceles {
		sh.s.fail(sh.n, "only a triangle can be %s", traits[0])
		return nil, false
	}
	if sh.kind != "kite" && sh.kind != "quadrilateral" {
		sh.convex()
	}
	if sh.kind == "square" || sh.kind == "rectangle" {
		sh.allAngles(90)
	}
	if sh.kind == "square" || sh.kind == "kite" {
		sh.chooseTied()
	}
	sh.measure(isosceles)
	switch sh.kind {
	case "square":
		return sh.square(), true
	case "kite":
		return sh.kite()
	case "trapezium":
		return sh.trapezium(isosceles), true
	case "quadrilateral":
		return sh.quadrilateral(), true
	}
	return sh.parallelogram(), true
}

// convex adds that each angle given lies between 0° and 180°.
func (sh *shape) convex() {
	sh.holdAngles(func(angle string, a geom.Angle) error {
		if x := a.Float(); x > 0 && x < 180 {
			return nil
		}
		return &program.Fault{Text: fmt.Sprintf("%s is %s, and an angle of a %s lies between 0° and 180°", angle, a, sh.kind)}
	})
}

// alike makes elements equal, pair by pair.
func (sh *shape) alike(pairs ...[2]element) {
	for _, p := range pairs {
		sh.equal(p[0], p[1])
	}
}

// square has any side or diagonal for its size.
func (sh *shape) square() corners {
	sh.alike([2]element{sideOf(0, 1), sideOf(1, 2)}, [2]element{sideOf(1, 2), sideOf(2, 3)},
		[2]element{sideOf(2, 3), sideOf(0, 3)}, [2]element{sideOf(0, 2), sideOf(1, 3)})
	diagonal := sh.datum(sideOf(0, 2))
	if diagonal == nil && sh.datum(sideOf(0, 1)) == nil {
		sh.chanceSide(sideOf(0, 1), rat(5, 1))
	}
	side := sh.datum(sideOf(0, 1))
	return func(st *program.State) ([]geom.Point, error) {
		size := side
		if size == nil {
			size = diagonal
		}
		r, err := positive(st, size)
		if err != nil {
			return nil, err
		}
		if side == nil {
			r = r.Div(st.Field.Int(2).Sqrt())
		}
		zero := st.Field.Int(0)
		return []geom.Point{{X: zero, Y: zero}, {X: r, Y: zero}, {X: r, Y: r}, {X: zero, Y: r}}, nil
	}
}

func positive(st *program.State, e *expr) (geom.Real, error) {
	r, err := real1(st, *e)
	if err != nil {
		return nil, err
	}
	if r.Sign() <= 0 {
		return nil, &program.Fault{Text: "a side is " + geom.Show(r) + ", and it must be more than 0"}
	}
	r.Sure()
	return r, nil
}

// parallelogram is one, or a rhombus or a rectangle. What is left to chance of it is
// first two sides, then the angle between.
func (sh *shape) parallelogram() corners {
	sh.alike([2]element{sideOf(0, 1), sideOf(2, 3)}, [2]element{sideOf(1, 2), sideOf(0, 3)},
		[2]element{angleAt(0), angleAt(2)}, [2]element{angleAt(1), angleAt(3)})
	sh.addUp(0, 1)
	sh.straight(0, 1)
	switch sh.kind {
	case "rhombus":
		sh.alike([2]element{sideOf(0, 1), sideOf(1, 2)})
	case "rectangle":
		sh.alike([2]element{sideOf(0, 2), sideOf(1, 3)})
		if sh.datum(angleAt(1)) == nil {
			sh.set(angleAt(1), sizeValue(sh.n, rat(90, 1)))
		}
	}
	return newSurvey(sh, sideOf(0, 1), sideOf(1, 2), angleAt(1), sideOf(0, 2), sideOf(1, 3)).plan()
}

// straight works out two angles that make 180° where they are given as equal, or one as a
// multiple of the other.
func (sh *shape) straight(i, j int) {
	if sh.datum(angleAt(i)) != nil || sh.datum(angleAt(j)) != nil {
		return
	}
	if sh.same(angleAt(i), angleAt(j)) {
		sh.set(angleAt(i), sizeValue(sh.n, rat(90, 1)))
	}
	for _, t := range sh.ties {
		e, f := t.e.a, t.f.a
		if t.e.b < 0 && e != f && sh.same(angleAt(e), angleAt(i)) && sh.same(angleAt(f), angleAt(j)) {
			sh.set(angleAt(j), sizeValue(sh.n, new(big.Rat).Quo(rat(180, 1), new(big.Rat).Add(t.k, rat(1, 1)))))
		}
	}
}

// addUp holds two angles that are both given to 180°.
func (sh *shape) addUp(i, j int) {
	if a, b := sh.datum(angleAt(i)), sh.datum(angleAt(j)); a != nil && b != nil {
		sh.rules = append(sh.rules, func(st *program.State) error {
			x, err := a.size(st)
			if err != nil {
				return err
			}
			y, err := b.size(st)
			if err != nil {
				return err
			}
			sum := x.Add(y)
			sign, err := sum.Cmp(geom.Degrees(rat(180, 1)))
			if err == nil && sign != 0 {
				err = &program.Fault{
					Text: fmt.Sprintf("the angles at %s and %s add up to 180° in a %s, and these to %s", sh.letters[i], sh.letters[j], sh.kind, sum),
					Help: "leave one of the two out",
				}
			}
			return err
		})
	}
}

// part is the triangle of three corners, with what is given of it. Its angles
// at the ends are those of the triangle, not of the whole shape, so only the
// middle one is taken over.
func (sh *shape) part(i, j, k int) *shape {
	t := &shape{of: sh, s: sh.s, n: sh.n, kind: "triangle", letters: []string{sh.letters[i], sh.letters[j], sh.letters[k]}}
	at := []int{i, j, k}
	for a := range 3 {
		for b := a + 1; b < 3; b++ {
			if v := sh.datum(sideOf(at[a], at[b])); v != nil {
				t.set(sideOf(a, b), *v)
			}
		}
	}
	if v := sh.datum(angleAt(j)); v != nil {
		t.set(angleAt(1), *v)
	}
	return t
}

// kite has AB = AD and CB = CD: the triangle ABC and its mirror image in AC.
func (sh *shape) kite() (corners, bool) {
	sh.alike([2]element{sideOf(0, 1), sideOf(0, 3)}, [2]element{sideOf(1, 2), sideOf(2, 3)}, [2]element{angleAt(1), angleAt(3)})
	t := sh.part(0, 1, 2)
	for _, end := range []int{0, 2} {
		if v := sh.datum(angleAt(end)); v != nil {
			t.set(angleAt(end), scale(*v, rat(1, 2)))
		}
	}
	sh.kiteSides(t)
	sh.kiteWidth(t)
	lacking := 3 - t.count(true) - t.count(false)
	for _, side := range []struct {
		e     element
		plain rational
	}{{sideOf(0, 1), rat(4, 1)}, {sideOf(1, 2), rat(65, 10)}, {sideOf(0, 2), rat(7, 1)}} {
		if lacking > 0 && t.datum(side.e) == nil {
			t.chanceSide(side.e, side.plain)
			lacking--
		}
	}
	f := t.solve()
	return func(st *program.State) ([]geom.Point, error) {
		p, err := f(st)
		if err != nil {
			return nil, err
		}
		ps := []geom.Point{p[0], p[1], p[2], geom.Through(p[0], p[2]).Mirror(p[1])}
		return ps, sh.plainly(ps)
	}, true
}

// kiteSides finds the sides of a kite of known width as far as they are needed:
// from the angles that its axis halves, else by chance.
func (sh *shape) kiteSides(t *shape) {
	bd := sh.datum(sideOf(1, 3))
	if bd == nil {
		return
	}
	for _, end := range []int{0, 2} {
		half, side := t.datum(angleAt(end)), sideOf(min(end, 1), max(end, 1))
		if half == nil || t.datum(side) != nil {
			continue
		}
		t.set(side, sh.computed(func(st *program.State) (geom.Real, error) {
			w, err := positive(st, bd)
			if err != nil {
				return nil, err
			}
			a, err := half.size(st)
			if err != nil {
				return nil, err
			}
			_, sin, err := a.CosSin(st.Field)
			if err != nil {
				return nil, err
			}
			return w.Div(sin.MulInt(2)), nil
		}))
	}
	for i, plain := range []rational{rat(4, 1), rat(6, 1)} {
		if known := t.count(true); known < 2 && t.datum(sideOf(i, i+1)) == nil {
			t.chanceSide(sideOf(i, i+1), plain)
		}
	}
}

// kiteWidth turns the cross diagonal BD, which AC halves at right angles, into
// sides: each of AB, BC and its part of AC make a right triangle with half of BD.
func (sh *shape) kiteWidth(t *shape) {
	bd := sh.datum(sideOf(1, 3))
	if bd == nil {
		return
	}
	ab, bc, ac := t.datum(sideOf(0, 1)), t.datum(sideOf(1, 2)), t.datum(sideOf(0, 2))
	switch {
	case ab != nil && bc != nil && ac == nil:
		t.set(sideOf(0, 2), sh.computed(func(st *program.State) (geom.Real, error) {
			x, err := leg(st, ab, bd)
			if err != nil {
				return nil, err
			}
			y, err := leg(st, bc, bd)
			if err != nil {
				return nil, err
			}
			return x.Add(y), nil
		}))
	case ac != nil && ab != nil && bc == nil:
		t.set(sideOf(1, 2), sh.farSide(ab, bd, ac))
	case ac != nil && bc != nil && ab == nil:
		t.set(sideOf(0, 1), sh.farSide(bc, bd, ac))
	}
}

// leg is the part of a kite's axis beside a side, by Pythagoras' theorem.
func leg(st *program.State, side, width *expr) (geom.Real, error) {
	s, err := positive(st, side)
	if err != nil {
		return nil, err
	}
	w, err := positive(st, width)
	if err != nil {
		return nil, err
	}
	h := w.Div(st.Field.Int(2))
	if s.Cmp(h) <= 0 {
		return nil, &program.Fault{Text: "a side of the kite is " + geom.Show(s) + ", not more than half of its width, " + geom.Show(h)}
	}
	return s.Mul(s).Sub(h.Mul(h)).Sqrt(), nil
}

// farSide is a kite's other side, from the one, the width and the axis.
func (sh *shape) farSide(side, width, axis *expr) expr {
	return sh.computed(func(st *program.State) (geom.Real, error) {
		x, err := leg(st, side, width)
		if err != nil {
			return nil, err
		}
		w, err := positive(st, width)
		if err != nil {
			return nil, err
		}
		d, err := positive(st, axis)
		if err != nil {
			return nil, err
		}
		h, rest := w.Div(st.Field.Int(2)), d.Sub(x)
		return h.Mul(h).Add(rest.Mul(rest)).Sqrt(), nil
	})
}

// computed is a length that follows from others.
func (sh *shape) computed(f func(*program.State) (geom.Real, error)) expr {
	return expr{node: sh.n, dim: 1, value: func(st *program.State) (program.Amount, error) {
		r, err := f(st)
		if err != nil {
			return nil, err
		}
		return pure(r), nil
	}}
}
