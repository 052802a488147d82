package check

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
)

// opposite is the side across from a triangle's corner.
func opposite(i int) element { return sideOf((i+1)%3, (i+2)%3) }

// triangle completes a triangle's data and gives its corners.
func (sh *shape) triangle(traits []string) (func(*program.State) ([]geom.Point, error), bool) {
	if !sh.applyTraits(traits) {
		return nil, false
	}
	known := len(sh.s.c.prog.Inputs)
	sh.isosceles()
	sh.complete(slices.Contains(traits, "obtuse"))
	for _, in := range sh.s.c.prog.Inputs[known:] {
		in.Obtuse = sh.is == "obtuse"
	}
	return sh.solve(), true
}

// solve is the triangle of corners 0, 1, 2 from its data, when the program runs.
func (sh *shape) solve() func(*program.State) ([]geom.Point, error) {
	var side, angle [3]*expr
	for i := range 3 {
		side[i], angle[i] = sh.datum(opposite(i)), sh.datum(angleAt(i))
	}
	known := geom.TriangleData{Names: [3]string(sh.letters), Sides: sh.sides, Shape: sh.whole().kind, Kind: sh.is}
	return func(st *program.State) ([]geom.Point, error) {
		d := known
		for i := range 3 {
			if side[i] != nil {
				r, err := real1(st, *side[i])
				if err != nil {
					return nil, err
				}
				d.Side[i] = r
			}
			if angle[i] != nil {
				a, err := angle[i].size(st)
				if err != nil {
					return nil, err
				}
				d.Angle[i] = &a
			}
		}
		ps, err := geom.Triangle(st.Field, d)
		return ps[:], err
	}
}

// equal makes two elements equal.
func (sh *shape) equal(e, f element) {
	c, first := &class{elems: []element{e, f}}, e
	var rest []*class
	for _, old := range sh.classes {
		if !old.shares(c) {
			rest = append(rest, old)
			continue
		}
		if c.value == nil {
			c.value = old.value
		} else if old.value != nil && old.value != c.value {
			sh.unlike = append(sh.unlike, unlike{first, old.elems[0], c.value, old.value})
		}
		if len(c.elems) == 2 {
			first = old.elems[0]
		}
		c.elems = append(c.elems, old.elems...)
	}
	sh.classes = append(rest, c)
}

// count is how many sides, or angles, are given.
func (sh *shape) count(sides bool) int {
	n := 0
	for i := range 3 {
		e := angleAt(i)
		if sides {
			e = opposite(i)
		}
		if sh.datum(e) != nil {
			n++
		}
	}
	return n
}

// isosceles works out the angles of a triangle whose equal sides have no value
// yet: the angles opposite them are equal too (Euclid I.5, I.6).
func (sh *shape) isosceles() {
	for apex := range 3 {
		j, k := (apex+1)%3, (apex+2)%3
		if !sh.same(opposite(j), opposite(k)) && !sh.same(angleAt(j), angleAt(k)) {
			continue
		}
		if sh.datum(opposite(j)) != nil && sh.datum(opposite(k)) != nil {
			continue
		}
		top, base := sh.datum(angleAt(apex)), sh.datum(angleAt(j))
		if base == nil {
			base = sh.datum(angleAt(k))
		}
		switch {
		case base != nil:
			sh.set(angleAt(j), *base)
			sh.set(angleAt(k), *base)
		case top != nil:
			half := expr{node: sh.n, angle: true, size: func(st *program.State) (geom.Angle, error) {
				a, err := top.size(st)
				return geom.Degrees(rat(90, 1)).Add(a.Mul(rat(-1, 2))), err
			}}
			sh.set(angleAt(j), half)
			sh.set(angleAt(k), half)
		case sh.datum(opposite(apex)) != nil:
			sh.chanceAngle(angleAt(j), 68)
			sh.set(angleAt(k), *sh.datum(angleAt(j)))
		default:
			sh.equal(opposite(j), opposite(k))
			leg := rat(6, 1)
			if sh.is == "obtuse" {
				leg = rat(42, 10) // the third side is far longer
			}
			sh.chanceSide(opposite(j), leg)
		}
	}
}

func (sh *shape) same(e, f element) bool {
	for _, c := range sh.classes {
		if c.has(e) && c.has(f) {
			return true
		}
	}
	return false
}

// complete leaves to chance what the data do not fix, so that the triangle is
// plainly scalene.
func (sh *shape) complete(obtuse bool) {
	sh.chooseTied()
	sides, angles := sh.count(true), sh.count(false)
	if sides == 0 {
		base := opposite(2)
		if c := sh.datum(angleAt(2)); c != nil && c.rat != nil && c.rat.Cmp(rat(50, 1)) < 0 {
			base = opposite(0) // across from a small angle the others would be long
		}
		for i := range 3 {
			if v := sh.datum(angleAt(i)); v != nil && v.rat != nil && v.rat.Cmp(rat(85, 1)) > 0 {
				base = opposite(i) // the longest
			}
		}
		sh.chanceSide(base, rat(7, 1))
		sides = sh.count(true)
	}
	centres := sh.s.callsAhead(sh.letters)
	switch {
	case sides == 1 && angles == 0 && obtuse:
		sh.chanceAngle(angleAt(0), 23)
		sh.chanceAngle(angleAt(1), 53)
	case sides == 1 && angles == 0 && (centres == 2 || centres == 3):
		sh.chanceAngle(angleAt(0), 58) // its centres and feet lie plainly apart
		sh.chanceAngle(angleAt(1), 43)
	case sides == 1 && angles == 0:
		sh.chanceAngle(angleAt(0), 62)
		sh.chanceAngle(angleAt(1), 47)
	case sides == 1 && angles == 1:
		sh.chanceSecondAngle(obtuse)
	case sides == 2 && angles == 0 && obtuse:
		sh.chanceAngle(angleAt(sh.missingSide()), 116)
	case sides == 2 && angles == 0:
		sh.chanceAngle(angleAt(sh.missingSide()), 57)
	}
}

// missingSide is the corner across from the one side that is not given.
func (sh *shape) missingSide() int {
	for i := range 3 {
		if sh.datum(opposite(i)) == nil {
			return i
		}
	}
	return 0
}

// chanceSecondAngle leaves one more angle to chance, a part of what is left of 180°.
func (sh *shape) chanceSecondAngle(obtuse bool) {
	known, side := 0, 0
	for i := range 3 {
		if sh.datum(angleAt(i)) != nil {
			known = i
		}
		if sh.datum(opposite(i)) != nil {
			side = i
		}
	}
	next := (known + 1) % 3
	if obtuse && side != known {
		next = side // so that the side that is given is the longest
	}
	first := *sh.datum(angleAt(known))
	in := sh.s.input(sh.n, program.Fraction, sh.describe(angleAt(next)), rat(43, 100))
	sh.set(angleAt(next), expr{node: sh.n, angle: true, size: func(st *program.State) (geom.Angle, error) {
		a, err := first.size(st)
		if err != nil {
			return a, err
		}
		plain := math.Tan(secondAngle(a.Float(), obtuse) / 2 * math.Pi / 180)
		whole := st.Field.Rat(big.NewRat(int64(math.Round(plain*20)), 20))
		return geom.Turned(turnOf(st.Input(in).Div(st.Field.Rat(rat(43, 100))).Mul(whole))), nil
	}})
}

// secondAngle is a plain angle of a triangle beside a known one, in degrees: no two are
// alike, and none is nearly right. Beside an acute one that of an obtuse triangle is
// plainly obtuse, if there is room.
func secondAngle(known float64, obtuse bool) float64 {
	switch {
	case obtuse && known < 90:
		return 90 + (90-known)/2
	case known < 34:
		return 0.3 * (180 - known)
	}
	return 0.43 * (180 - known)
}
