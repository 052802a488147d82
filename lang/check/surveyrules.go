package check

import (
	"fmt"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
)

// followSums adds what follows from sums: of the parts of an angle, of the angles of a
// quadrilateral, and of what is parallel in a trapezium.
func (v *survey) followSums() bool {
	more := false
	for i := range 4 {
		more = v.parts(i) || more
		more = v.lastAngle(i) || more
	}
	more = v.equals() || more
	for _, p := range v.alike() {
		more = v.same(p[0], p[1]) || v.same(p[1], p[0]) || more
	}
	for _, p := range v.straights() {
		more = v.supplement(p[0], p[1]) || v.supplement(p[1], p[0]) || more
	}
	switch v.form {
	case trapezium:
		return v.parallels() || more
	case parallelogram:
		return v.halves() || more
	}
	return more
}

// parallels adds the sum and the difference of a trapezium's parallel sides.
func (v *survey) parallels() bool {
	ab, cd := lengthOf(0, 1), lengthOf(2, 3)
	more := v.minus(difference, ab, cd) || v.minus(cd, ab, difference) || v.plus(ab, cd, difference)
	return v.plus(sum, ab, cd) || v.minus(ab, sum, cd) || v.minus(cd, sum, ab) || more
}

// halves adds those of a parallelogram's diagonals, and of a rhombus those of its angles
// and the right angle between the diagonals.
func (v *survey) halves() (more bool) {
	half, double := big.NewRat(1, 2), big.NewRat(2, 1)
	for _, p := range [][2]quantity{{halfAC, lengthOf(0, 2)}, {halfBD, lengthOf(1, 3)}} {
		more = v.times(p[0], p[1], half) || v.times(p[1], p[0], double) || more
	}
	if v.sh.kind == "rhombus" {
		more = v.add(surveyStep{makes: apex, do: func(r *surveyRun) error {
			r.angle[apex] = geom.Degrees(rat(90, 1))
			return nil
		}}) || more
		for i := range 4 {
			more = v.times(next(i), whole(i), half) || more
		}
	}
	return more
}

// straights are the pairs of angles that make 180°.
func (v *survey) straights() [][2]quantity {
	switch v.form {
	case trapezium:
		return [][2]quantity{{whole(0), whole(3)}, {whole(1), whole(2)}}
	case parallelogram:
		return [][2]quantity{{whole(0), whole(1)}, {apex, far}}
	}
	return nil
}

// equals adds what is given as equal to something, or as a multiple of it.
func (v *survey) equals() (more bool) {
	for _, c := range v.sh.classes {
		for i, e := range c.elems {
			for _, f := range c.elems[:i] {
				more = v.same(quantityOf(e), quantityOf(f)) || v.same(quantityOf(f), quantityOf(e)) || more
			}
		}
	}
	for _, t := range v.sh.ties {
		more = v.times(quantityOf(t.e), quantityOf(t.f), t.k) || more
	}
	return more
}

// times adds a quantity that is a multiple of another.
func (v *survey) times(q, of quantity, k *big.Rat) bool {
	return v.add(surveyStep{q, []quantity{of}, func(r *surveyRun) error {
		if of >= cornerAngles && of < difference {
			r.angle[q] = r.angle[of].Mul(k)
			return nil
		}
		r.length[q] = r.length[of].Mul(r.st.Field.Rat(k))
		return nil
	}})
}

// alike are the quantities that are equal where there are parallels: alternate angles; of an
// isosceles trapezium what lies on either side of its axis, of a rhombus the halves of angles.
func (v *survey) alike() (out [][2]quantity) {
	if v.form == anyForm {
		return nil
	}
	out = [][2]quantity{{next(0), next(2)}, {previous(1), previous(3)}}
	switch v.sh.kindOf() {
	case "isosceles trapezium":
		out = append(out, [2]quantity{whole(0), whole(1)}, [2]quantity{whole(2), whole(3)}, [2]quantity{next(0), previous(1)})
	case "trapezium":
	default:
		out = append(out, [2]quantity{next(1), next(3)}, [2]quantity{previous(0), previous(2)})
	}
	if v.sh.kind == "rhombus" {
		out = append(out, [2]quantity{next(0), previous(0)}, [2]quantity{next(1), previous(1)})
	}
	return out
}

// same adds a quantity that is equal to one that is known.
func (v *survey) same(q, as quantity) bool {
	return v.add(surveyStep{q, []quantity{as}, func(r *surveyRun) error {
		r.length[q], r.angle[q] = r.length[as], r.angle[as]
		return nil
	}})
}

// parts are those of the angle at a corner that its diagonal parts.
func (v *survey) parts(i int) bool {
	w, a, b := whole(i), next(i), previous(i)
	rest := func(part, other quantity) bool {
		return v.add(surveyStep{part, []quantity{w, other}, func(r *surveyRun) error {
			r.angle[part] = r.angle[w].Add(r.angle[other].Mul(rat(-1, 1)))
			if r.angle[part].Float() <= 0 {
				return v.overfull(i, other, r)
			}
			return nil
		}})
	}
	whole := v.add(surveyStep{w, []quantity{a, b}, func(r *surveyRun) error {
		r.angle[w] = r.angle[a].Add(r.angle[b])
		return nil
	}})
	return rest(a, b) || rest(b, a) || whole
}

// overfull is the fault of an angle that is smaller than its part.
func (v *survey) overfull(i int, part quantity, r *surveyRun) error {
	l, beside := v.sh.letters, nextCorner(i, 1)
	if part >= previouses {
		beside = nextCorner(i, 3)
	}
	return &program.Fault{
		Text:  fmt.Sprintf("the other data make the angle %s%s%s %s, more than the angle at %s, which is %s", l[beside], l[i], l[nextCorner(i, 2)], r.angle[part], l[i], r.angle[whole(i)]),
		Help:  fmt.Sprintf("make the angle at %s larger, or give other sides", l[i]),
		Range: true,
	}
}

// lastAngle is what three angles leave of 360°.
func (v *survey) lastAngle(i int) bool {
	others := []quantity{whole(i + 1), whole(i + 2), whole(i + 3)}
	return v.add(surveyStep{whole(i), others, func(r *surveyRun) error {
		rest := geom.Degrees(rat(360, 1))
		for _, q := range others {
			rest = rest.Add(r.angle[q].Mul(rat(-1, 1)))
		}
		r.angle[whole(i)] = rest
		if rest.Float() <= 0 {
			sum := geom.Degrees(rat(360, 1)).Add(rest.Mul(rat(-1, 1)))
			return &program.Fault{Text: "three angles add up to " + sum.String() + ", and all four of a quadrilateral to 360°", Range: true}
		}
		return nil
	}})
}

// supplement is what an angle leaves of 180°.
func (v *survey) supplement(q, of quantity) bool {
	return v.add(surveyStep{q, []quantity{of}, func(r *surveyRun) error {
		r.angle[q] = geom.Degrees(rat(180, 1)).Add(r.angle[of].Mul(rat(-1, 1)))
		return nil
	}})
}

func (v *survey) plus(q, a, b quantity) bool {
	return v.add(surveyStep{q, []quantity{a, b}, func(r *surveyRun) error {
		r.length[q] = r.length[a].Add(r.length[b])
		return nil
	}})
}

// minus is a difference of the parallel sides, or of what is made of them, above 0.
func (v *survey) minus(q, a, b quantity) bool {
	return v.add(surveyStep{q, []quantity{a, b}, func(r *surveyRun) error {
		r.length[q] = r.length[a].Sub(r.length[b])
		switch {
		case r.length[q].Sign() > 0:
			return nil
		case q == difference:
			are := "the parallel sides are " + geom.Show(r.length[a]) + " and " + geom.Show(r.length[b])
			if v.loose[a] {
				are = v.sh.describe(sideOf(0, 1)) + " would not be longer than " + v.sh.describe(sideOf(2, 3))
			}
			return &program.Fault{
				Text:  are + ": the first one named must be the longer",
				Help:  "begin with the longer side's letters",
				Range: true,
			}
		}
		return &program.Fault{Text: "the two slanting sides meet before they reach the parallel: the shape is no trapezium", Range: true}
	}})
}

// followTriangles solves the triangles that three known elements settle; or, with
// doubtful, one of which there may be two.
func (v *survey) followTriangles(doubtful bool) bool {
	more := false
	for k := range v.triangles {
		if v.knows(solved + quantity(k)) {
			more = v.read(k) || more
			continue
		}
		if !doubtful {
			more = v.thirdAngle(k) || more
		}
		three, ok := v.settling(k, doubtful)
		if !ok {
			continue
		}
		fork := -1
		if doubtful {
			fork = v.forks
			v.forks++
		}
		if slices.Equal(three, v.triangles[k].side[:]) && v.hangs(three) && !v.equalSides(k) {
			v.reaches++
		}
		from := v.withSurplus(k, three)
		v.add(surveyStep{solved + quantity(k), from, func(r *surveyRun) error { return r.solve(k, from, fork) }})
		more = true
		if doubtful {
			break
		}
	}
	return more
}

// equalSides tells of a triangle that is isosceles by its kind.
func (v *survey) equalSides(k int) bool {
	switch v.sh.kindOf() {
	case "isosceles trapezium":
		return true
	case "rhombus":
		return k < 4
	}
	return false
}

// hangs tells of quantities of which one hangs on chance.
func (v *survey) hangs(qs []quantity) bool {
	return slices.ContainsFunc(qs, func(q quantity) bool { return v.loose[q] })
}

// withSurplus adds to elements that settle a triangle what else is given of it, unless they
// hang on chance: then the whole shape is held to it.
func (v *survey) withSurplus(k int, three []quantity) []quantity {
	if v.hangs(three) {
		return three
	}
	t := v.triangles[k]
	for _, q := range append(t.side[:3:3], t.angle[:]...) {
		if v.depth[q] == 1 && !v.loose[q] && !slices.Contains(three, q) {
			three = append(three, q)
		}
	}
	return three
}

// thirdAngle is what two angles of a triangle leave of 180°.
func (v *survey) thirdAngle(k int) bool {
	a := v.triangles[k].angle
	for i := range 3 {
		q, others := a[i], []quantity{a[(i+1)%3], a[(i+2)%3]}
		if v.add(surveyStep{q, others, func(r *surveyRun) error {
			two := r.angle[others[0]].Add(r.angle[others[1]])
			r.angle[q] = geom.Degrees(rat(180, 1)).Add(two.Mul(rat(-1, 1)))
			if r.angle[q].Float() <= 0 {
				return v.overturned(k, two)
			}
			return nil
		}}) {
			return true
		}
	}
	return false
}

// overturned is the fault of two angles with no room for a third.
func (v *survey) overturned(k int, two geom.Angle) error {
	n := v.triangles[k].names
	return &program.Fault{
		Text:  fmt.Sprintf("two angles of the triangle %s%s%s add up to %s, and in a triangle they stay under 180°", n[0], n[1], n[2], two),
		Help:  "make one of the angles smaller",
		Range: true,
	}
}

// settling is three elements that settle a triangle, those that hang on the fewest
// others: two sides and the angle between, three sides, or a side and two angles; with
// doubtful two sides and an angle across from one.
func (v *survey) settling(k int, doubtful bool) (best []quantity, ok bool) {
	t, least := v.triangles[k], 0
	try := func(three ...quantity) {
		if !v.knows(three...) {
			return
		}
		if deep := v.depth[three[0]] + v.depth[three[1]] + v.depth[three[2]]; best == nil || deep < least {
			best, least = three, deep
		}
	}
	for i := range 3 {
		j, h := (i+1)%3, (i+2)%3
		if doubtful {
			try(t.side[i], t.side[j], t.angle[i])
			try(t.side[i], t.side[h], t.angle[i])
			continue
		}
		try(t.side[j], t.side[h], t.angle[i])
	}
	if !doubtful {
		try(t.side[:]...)
		for i := range 3 {
			for j := range 3 {
				try(t.side[i], t.angle[j], t.angle[(j+1)%3])
			}
		}
	}
	return best, best != nil
}

// read adds the sides and angles of a triangle that is solved.
func (v *survey) read(k int) bool {
	t, from, more := v.triangles[k], []quantity{solved + quantity(k)}, false
	for i := range 3 {
		j, h := (i+1)%3, (i+2)%3
		more = v.add(surveyStep{t.side[i], from, func(r *surveyRun) error {
			ps := r.triangle[k]
			r.length[t.side[i]] = geom.Dist(ps[j], ps[h])
			return nil
		}}) || more
		more = v.add(surveyStep{t.angle[i], from, func(r *surveyRun) error {
			ps := r.triangle[k]
			r.angle[t.angle[i]] = geom.Corner(ps[j], ps[i], ps[h], false)
			return nil
		}}) || more
	}
	return more
}
