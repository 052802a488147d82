package check

import (
	"fmt"

	"trammel/geom"
	"trammel/lang/program"
)

// Plain sides and angles of a quadrilateral of which nothing is given: AB, BC,
// CD, DA, and the angles at A, B, C, D. It is plainly irregular: no two sides are
// nearly parallel, either.
var (
	plainSides  = []rational{rat(75, 10), rat(29, 10), rat(43, 10), rat(54, 10)}
	plainAngles = []int64{56, 80, 122, 102}
)

// quadrilateral is any one: cut along a diagonal into two triangles, the first
// of which its own data make, and then the second.
func (sh *shape) quadrilateral() (corners, bool) {
	sh.lastAngle()
	sh.closes()
	if f, ok := sh.byDiagonals(); ok {
		return f, true
	}
	first, most := 0, -1
	for p := range 4 {
		if n := sh.usable(p); n > most {
			first, most = p, n
		}
	}
	return sh.cut(first), true
}

// closes adds that of four sides any three together are longer than the fourth.
func (sh *shape) closes() {
	var sides [4]*expr
	for i := range 4 {
		if sides[i] = sh.datum(sideOf(i, nextCorner(i, 1))); sides[i] == nil {
			return
		}
	}
	sh.rules = append(sh.rules, func(st *program.State) error {
		var long [4]geom.Real
		for i, side := range sides {
			var err error
			if long[i], err = positive(st, side); err != nil {
				return err
			}
		}
		for i := range 4 {
			j, k, l := nextCorner(i, 1), nextCorner(i, 2), nextCorner(i, 3)
			if sum := long[j].Add(long[k]).Add(long[l]); sum.Cmp(long[i]) <= 0 {
				name := func(i int) string { return sh.describe(sideOf(i, nextCorner(i, 1))) }
				return &program.Fault{Text: fmt.Sprintf("no quadrilateral has these sides: %s, %s and %s together are %s, not more than %s, which is %s",
					name(j), name(k), name(l), geom.Show(sum), name(i), geom.Show(long[i])), Range: true}
			}
		}
		return nil
	})
}

// lastAngle fills in the fourth angle where three are given.
func (sh *shape) lastAngle() {
	var known []*expr
	missing := -1
	for i := range 4 {
		if a := sh.datum(angleAt(i)); a != nil {
			known = append(known, a)
		} else {
			missing = i
		}
	}
	if len(known) != 3 {
		return
	}
	sh.set(angleAt(missing), expr{node: sh.n, angle: true, size: func(st *program.State) (geom.Angle, error) {
		rest := geom.Degrees(rat(360, 1))
		for _, a := range known {
			x, err := a.size(st)
			if err != nil {
				return x, err
			}
			rest = rest.Add(x.Mul(rat(-1, 1)))
		}
		if rest.Float() <= 0 {
			sum := geom.Degrees(rat(360, 1)).Add(rest.Mul(rat(-1, 1)))
			return rest, &program.Fault{Text: "three angles add up to " + sum.String() + ", and all four of a quadrilateral to 360°", Range: true}
		}
		return rest, nil
	}})
}

// nextCorner is the corner so many after another one.
func nextCorner(p, by int) int { return (p + by) % 4 }

// usable is how many data place the corners, if p, q, r make the first triangle.
func (sh *shape) usable(p int) int {
	t := sh.part(p, nextCorner(p, 1), nextCorner(p, 2))
	return min(t.count(true)+t.count(false), 3) + min(len(sh.beyond(p)), 2)
}

// beyond is what is given of the triangle r, s, p, but for the diagonal.
func (sh *shape) beyond(p int) (known []element) {
	r, s := nextCorner(p, 2), nextCorner(p, 3)
	for _, e := range []element{sideOf(r, s), sideOf(s, p), angleAt(s), angleAt(r), angleAt(p)} {
		if sh.datum(e) != nil {
			known = append(known, e)
		}
	}
	return known
}

// cut is a quadrilateral whose triangle p, q, r comes first; what is lacking is
// left to chance, and then it is convex.
func (sh *shape) cut(p int) corners {
	q, r, s := nextCorner(p, 1), nextCorner(p, 2), nextCorner(p, 3)
	sh.fillPart(p, 3-sh.part(p, q, r).count(true)-sh.part(p, q, r).count(false), sideOf(p, q), sideOf(q, r), angleAt(q))
	if sh.datum(sideOf(r, s)) != nil {
		sh.fillPart(p, 2-len(sh.beyond(p)), sideOf(s, p)) // of that and an angle there may be two, or none
	}
	sh.fillPart(p, 2-len(sh.beyond(p)), angleAt(p), sideOf(s, p), angleAt(r), sideOf(r, s))
	near := sh.part(p, q, r).solve()
	return func(st *program.State) ([]geom.Point, error) {
		t, err := near(st)
		if err != nil {
			return nil, err
		}
		u, err := sh.far(st, p, t)
		if err != nil {
			return nil, err
		}
		ps := make([]geom.Point, 4)
		ps[p], ps[q], ps[r], ps[s] = t[0], t[1], t[2], geom.Similar(u, 0, 2, t[2], t[0])[1]
		return ps, sh.plainly(ps)
	}
}

// fillPart leaves as many elements to chance as are lacking.
func (sh *shape) fillPart(p, lacking int, elems ...element) {
	for _, e := range elems {
		switch {
		case lacking <= 0 || sh.datum(e) != nil:
			continue
		case e.b < 0:
			sh.chanceAngle(e, plainAngles[e.a])
		case e.b-e.a == 3:
			sh.chanceSide(e, plainSides[3])
		default:
			sh.chanceSide(e, plainSides[e.a])
		}
		lacking--
	}
}

// far is the triangle r, s, p beyond the diagonal of the triangle t. Of an angle
// at the diagonal's end it has what t leaves.
func (sh *shape) far(st *program.State, p int, t []geom.Point) ([]geom.Point, error) {
	at := [3]int{nextCorner(p, 2), nextCorner(p, 3), p}
	less := [3]geom.Angle{0: geom.Corner(t[0], t[2], t[1], false), 2: geom.Corner(t[1], t[0], t[2], false)}
	d := geom.TriangleData{Names: [3]string{sh.letters[at[0]], sh.letters[at[1]], sh.letters[at[2]]}, Shape: sh.kind}
	if diagonal := sideOf(at[0], at[2]); sh.datum(diagonal) == nil {
		d.Sides[1] = "the diagonal " + sh.describe(diagonal)
	}
	for i, corner := range at {
		if v := sh.datum(sideOf(at[(i+1)%3], at[(i+2)%3])); v != nil {
			x, err := real1(st, *v)
			if err != nil {
				return nil, err
			}
			d.Side[i] = x
		}
		if v := sh.datum(angleAt(corner)); v != nil {
			a, err := v.size(st)
			if err != nil {
				return nil, err
			}
			if i != 1 {
				a = a.Add(less[i].Mul(rat(-1, 1)))
			}
			d.Angle[i] = &a
		}
	}
	d.Side[1] = geom.Dist(t[0], t[2])
	ps, err := geom.Triangle(st.Field, d)
	return ps[:], err
}

// byDiagonals is a quadrilateral from both diagonals and three sides: the
// triangles on the middle one of these.
func (sh *shape) byDiagonals() (corners, bool) {
	if sh.datum(sideOf(0, 2)) == nil || sh.datum(sideOf(1, 3)) == nil {
		return nil, false
	}
	first, most := 0, -1
	for p := range 4 {
		n := 0
		for k := range 3 {
			if sh.datum(sideOf(nextCorner(p, k), nextCorner(p, k+1))) != nil {
				n++
			}
		}
		if n > most {
			first, most = p, n
		}
	}
	p, q, r, s := first, nextCorner(first, 1), nextCorner(first, 2), nextCorner(first, 3)
	sh.fillPart(p, 3-most, sideOf(p, q), sideOf(q, r), sideOf(r, s))
	left, right := sh.part(p, q, r).solve(), sh.part(q, r, s).solve()
	return func(st *program.State) ([]geom.Point, error) {
		t, err := left(st)
		if err != nil {
			return nil, err
		}
		u, err := right(st)
		if err != nil {
			return nil, err
		}
		ps := make([]geom.Point, 4)
		ps[p], ps[q], ps[r], ps[s] = t[0], t[1], t[2], geom.Similar(u, 0, 1, t[1], t[2])[2]
		return ps, sh.plainly(ps)
	}, true
}

// plainly objects to a quadrilateral, or kite, that its data do not settle and that is not
// convex: with a notch it would be a dart, in this figure or in others.
func (sh *shape) plainly(ps []geom.Point) error {
	if !sh.chosen && !sh.about || convex(ps) {
		return nil
	}
	return &program.Fault{
		Text:  "the " + sh.kind + " is not convex",
		Help:  "one with a notch needs data that settle it, none of them about",
		Range: true,
	}
}

// convex tells whether corners that run anticlockwise turn left at each.
func convex(ps []geom.Point) bool {
	n := len(ps)
	for i := range ps {
		if ps[(i+1)%n].Sub(ps[i]).Cross(ps[(i+2)%n].Sub(ps[(i+1)%n])).Sign() <= 0 {
			return false
		}
	}
	return true
}
