package check

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// between is the angle that two lines make, for a message.
func between(l, m geom.Line) string {
	return fmt.Sprintf("%s°", sig(lineAngle(l, m)))
}

// offRight is by how much the angle of two lines misses 90°, to three digits
// however small.
func offRight(l, m geom.Line) string {
	return sig(lineAngle(l, geom.Line{P: m.P, D: m.D.Left()})) + "°"
}

func lineAngle(l, m geom.Line) float64 {
	cross, dot := l.D.Cross(m.D).Float(), l.D.Dot(m.D).Float()
	return math.Atan2(math.Abs(cross), math.Abs(dot)) * 180 / math.Pi
}

// sig writes a float to three significant digits for a message.
func sig(x float64) string { return geom.Significant(x) }

// collinear is that all points lie on one line.
func (s *scope) collinear(r *syntax.Ref) (relation, bool) {
	ps, ok := s.distinct(r, 0)
	if ok && len(ps) < 3 {
		s.fail(r.Node, "two points are always on a line").Help = "name three or more"
		return nil, false
	}
	return func(st *program.State) (verdict, error) {
		pts := st.Points(ps)
		if geom.Collinear(pts...) {
			return yes, nil
		}
		for i := 2; i < len(pts); i++ {
			if !pts[0].Equal(pts[1]) && !geom.Through(pts[0], pts[1]).Holds(pts[i]) {
				n := st.Program.Slots
				d := geom.Dist(pts[i], geom.Through(pts[0], pts[1]).Foot(pts[i]))
				return no("%s is %s off the line %s%s", n[ps[i]].Name, st.Exactly(1, d), n[ps[0]].Name, n[ps[1]].Name), nil
			}
		}
		return no("the points are not on one line"), nil
	}, ok
}

// onSide is that two points lie on one side of a line, or with -1 on either side.
func (s *scope) onSide(p, line, as *syntax.Ref, want int) (relation, bool) {
	x, ok1 := s.point(p)
	l, ok2 := s.line(line)
	y, ok3 := s.point(as)
	return func(st *program.State) (verdict, error) {
		m, err := l.whole(st)
		if err != nil {
			return verdict{}, err
		}
		a, b := m.Side(st.Point(x)), m.Side(st.Point(y))
		first, second := st.Program.Slots[x].Name, st.Program.Slots[y].Name
		switch {
		case a == 0:
			return no("%s lies on %s", first, l.text), nil
		case b == 0:
			return no("%s lies on %s", second, l.text), nil
		case a == b:
			return verdictOf(want > 0, "%s and %s lie on one side of %s", first, second, l.text), nil
		}
		return verdictOf(want < 0, "%s and %s lie on either side of %s", first, second, l.text), nil
	}, ok1 && ok2 && ok3
}

// concyclic is that all points lie on one circle.
func (s *scope) concyclic(r *syntax.Ref) (relation, bool) {
	ps, ok := s.distinct(r, 0)
	if ok && len(ps) < 4 {
		s.fail(r.Node, "three points are always on a circle, if not on a line").Help = "name four or more"
		return nil, false
	}
	return func(st *program.State) (verdict, error) {
		pts := st.Points(ps)
		if geom.Concyclic(pts...) {
			return yes, nil
		}
		c, round := geom.CircleThrough(pts)
		if !round {
			return no("they are on a line, or no three of them are different places"), nil
		}
		for i, p := range pts {
			if !c.Holds(p) {
				d := geom.Dist(p, c.C).Sub(c.R2.Sqrt())
				return no("%s is %s off the circle through the first three", st.Program.Slots[ps[i]].Name, st.Exactly(1, d)), nil
			}
		}
		return yes, nil
	}, ok
}

// concurrent is that all lines go through one point.
func (s *scope) concurrent(r *syntax.Relation) (relation, bool) {
	var lines []curve
	good := true
	for _, ref := range r.Concurrent {
		l, ok := s.line(ref)
		good = good && ok
		lines = append(lines, l)
	}
	if good && len(lines) < 3 {
		s.fail(r.Node, "two lines that are not parallel always meet").Help = "name three or more"
		return nil, false
	}
	return func(st *program.State) (verdict, error) {
		var ls []geom.Line
		for _, l := range lines {
			m, err := l.whole(st)
			if err != nil {
				return verdict{}, err
			}
			ls = append(ls, m)
		}
		p, err := geom.MeetLines(ls[0], ls[1])
		if err != nil {
			return no("%s and %s have no single meeting: %s", lines[0].text, lines[1].text, err), nil
		}
		for i, l := range ls[2:] {
			if !l.Holds(p) {
				return no("%s passes %s from where %s and %s meet", lines[i+2].text, st.Exactly(1, geom.Dist(p, l.Foot(p))), lines[0].text, lines[1].text), nil
			}
		}
		return yes, nil
	}, good
}

// twoTriangles is congruence or similarity, corners in written order.
func (s *scope) twoTriangles(r *syntax.Relation) (relation, bool) {
	a, ok1 := s.distinct(r.Triangle, 3)
	b, ok2 := s.distinct(r.Triangle2, 3)
	if !ok1 || !ok2 {
		return nil, false
	}
	return func(st *program.State) (verdict, error) {
		p, q := st.Points(a), st.Points(b)
		for _, t := range [][]geom.Point{p, q} {
			if geom.Collinear(t...) {
				return no("the corners of one of them are on a line"), nil
			}
		}
		for i := range 3 {
			j, k := (i+1)%3, (i+2)%3
			x, y := geom.Dist2(p[i], p[j]), geom.Dist2(q[i], q[j])
			if r.Congruent && !x.Equal(y) {
				return no("%s and %s differ by %s", s.names2(a[i], a[j]), s.names2(b[i], b[j]), st.Exactly(1, x.Sqrt().Sub(y.Sqrt()))), nil
			}
			u, v := geom.Dist2(p[j], p[k]), geom.Dist2(q[j], q[k])
			if r.Similar && !x.Mul(v).Equal(y.Mul(u)) {
				n1, n2 := x.Float()/y.Float(), u.Float()/v.Float()
				return no("%s : %s is %s and %s : %s is %s", s.names2(a[i], a[j]), s.names2(b[i], b[j]), sig(math.Sqrt(n1)), s.names2(a[j], a[k]), s.names2(b[j], b[k]), sig(math.Sqrt(n2))), nil
			}
		}
		return yes, nil
	}, true
}

func (s *scope) names2(a, b int) string { return s.slot(a).Name + s.slot(b).Name }

// shapeRelation is a named kind of polygon, corners in their order round it.
func (s *scope) shapeRelation(r *syntax.Relation) (relation, bool) {
	n := 4
	if r.Shape == "regular" {
		n = 0
	}
	ps, ok := s.distinct(r.ShapeOf, n)
	if ok && len(ps) < 3 {
		s.fail(r.ShapeOf.Node, "a polygon has three corners or more")
		return nil, false
	}
	return func(st *program.State) (verdict, error) {
		v := s.polygonVerdict(st, r.Shape, ps)
		return v, nil
	}, ok
}

// polygonVerdict tells whether four corners, or any number for a regular
// polygon, make a figure of a kind.
func (s *scope) polygonVerdict(st *program.State, kind string, ps []int) verdict {
	if kind == "regular" {
		return s.regular(st, ps)
	}
	q := four{s, st, ps, st.Points(ps)}
	if !(st.Field.KeepsFormulas() && parallelSides[kind]) && !geom.Simple(q.pts) {
		return no("the corners do not go round a figure in this order")
	}
	switch kind {
	case "kite":
		return q.kite()
	case "trapezium":
		return verdictOf(q.parallel(0) || q.parallel(1), "%s", q.askew(0).why)
	}
	for i := range 2 {
		if !q.parallel(i) {
			return q.askew(i)
		}
	}
	if (kind == "square" || kind == "rectangle") && !q.side(0).Dot(q.side(3)).IsZero() {
		l, m := geom.Line{P: q.pts[0], D: q.side(0)}, geom.Line{P: q.pts[0], D: q.side(3)}
		return no("the angle at %s is %s off a right angle", s.slot(ps[0]).Name, offRight(l, m))
	}
	if (kind == "square" || kind == "rhombus") && !q.equal(0, 1) {
		return q.apart(0, 1)
	}
	return yes
}

// parallelSides are kinds with two pairs of parallel sides, which go round a figure if
// they have any width: there is no need to know by which signs.
var parallelSides = map[string]bool{"square": true, "rectangle": true, "parallelogram": true, "rhombus": true}

// four is a quadrilateral, by slots and places.
type four struct {
	s   *scope
	st  *program.State
	ps  []int
	pts []geom.Point
}

// side is the way from corner i to the next.
func (q four) side(i int) geom.Vector { return q.pts[(i+1)%4].Sub(q.pts[i%4]) }

func (q four) name(i int) string { return q.s.names2(q.ps[i%4], q.ps[(i+1)%4]) }

func (q four) parallel(i int) bool { return q.side(i).Cross(q.side(i + 2)).IsZero() }

func (q four) equal(i, j int) bool { return q.side(i).Norm2().Equal(q.side(j).Norm2()) }

func (q four) apart(i, j int) verdict {
	d := q.side(i).Norm2().Sqrt().Sub(q.side(j).Norm2().Sqrt())
	return no("%s and %s differ by %s", q.name(i), q.name(j), q.st.Exactly(1, d))
}

func (q four) askew(i int) verdict {
	l, m := geom.Line{P: q.pts[i], D: q.side(i)}, geom.Line{P: q.pts[i], D: q.side(i + 2)}
	return no("%s and %s are not parallel: they make %s", q.name(i), q.name(i+2), between(l, m))
}

// kite has two pairs of equal sides that meet.
func (q four) kite() verdict {
	switch {
	case q.equal(0, 3) && q.equal(1, 2) || q.equal(0, 1) && q.equal(2, 3):
		return yes
	case q.equal(0, 3):
		return q.apart(1, 2)
	}
	return q.apart(0, 3)
}

// regular is equal sides and equal turns, once round: on one circle, every
// corner is the one before turned by the same angle, and the turns add up to
// one full turn.
func (s *scope) regular(st *program.State, ps []int) verdict {
	pts := st.Points(ps)
	n := len(pts)
	struck := struckRadii(st, pts)
	side := func(i int) geom.Real { return struck.dist2(pts[i], pts[(i+1)%n]) }
	first := side(0)
	for i := 1; i < n; i++ {
		if a, b := first, side(i); !a.Equal(b) {
			return no("%s and %s differ by %s", s.names2(ps[0], ps[1]), s.names2(ps[i], ps[(i+1)%n]), st.Exactly(1, a.Sqrt().Sub(b.Sqrt())))
		}
	}
	c, round := struck.around(st, pts)
	if !round {
		c, round = geom.Circumcircle(pts[0], pts[1], pts[2])
	}
	if !round {
		return no("the first three corners are on a line")
	}
	for i, p := range pts {
		if !struck.dist2(c.C, p).Equal(c.R2) {
			return no("%s is %s off the circle through the first three corners", s.slot(ps[i]).Name, st.Exactly(1, geom.Dist(p, c.C).Sub(c.R2.Sqrt())))
		}
	}
	return verdictOf(onceRound(c.C, pts), "the corners go round more than once, or back and forth")
}

// onceRound tells of corners with equal chords on one circle, which turn by
// equal angles and so by a whole number of turns, whether they all go one way,
// and by one turn: floats tell that.
func onceRound(centre geom.Point, pts []geom.Point) bool {
	total := 0.0
	for i, p := range pts {
		u, v := p.Sub(centre), pts[(i+1)%len(pts)].Sub(centre)
		turn := math.Atan2(u.Cross(v).Float(), u.Dot(v).Float())
		if turn*total < 0 {
			return false
		}
		total += turn
	}
	return math.Abs(math.Abs(total)-2*math.Pi) < 1
}

// radii are the squares of the distances at which points lie from centres that
// circles were struck about.
type radii map[[2]geom.Point]geom.Real

// struckRadii are those of some points, from the circles that are known to pass
// through them: they need not be worked out from places.
func struckRadii(st *program.State, pts []geom.Point) radii {
	wanted := map[geom.Point]bool{}
	for _, p := range pts {
		wanted[p] = true
	}
	out := radii{}
	for _, v := range st.Values {
		if c, ok := v.(*program.Curve); ok && c.Circle != nil {
			for _, p := range c.On {
				if wanted[p] {
					out[[2]geom.Point{c.Circle.C, p}] = c.Circle.R2
				}
			}
		}
	}
	return out
}

func (r radii) dist2(p, q geom.Point) geom.Real {
	for _, k := range [][2]geom.Point{{p, q}, {q, p}} {
		if d, known := r[k]; known {
			return d
		}
	}
	return geom.Dist2(p, q)
}

// around is a circle that is known to pass through all points.
func (r radii) around(st *program.State, pts []geom.Point) (geom.Circle, bool) {
	for _, v := range st.Values {
		c, ok := v.(*program.Curve)
		if !ok || c.Circle == nil {
			continue
		}
		all := true
		for _, p := range pts {
			all = all && r[[2]geom.Point{c.Circle.C, p}] == c.Circle.R2
		}
		if all {
			return *c.Circle, true
		}
	}
	return geom.Circle{}, false
}
