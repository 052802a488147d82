package check

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// locusAct draws all the points that lie so far from a thing, or equally far
// from two.
func (s *scope) locusAct(l *syntax.Locus) {
	s.c.hand.count.Beyond++
	switch {
	case l.One != nil:
		s.equidistant(l)
	case isPoint(l.From):
		s.locusCircle(l)
	default:
		s.locusBeside(l)
	}
}

// isPoint tells one point from a name and from a run.
func isPoint(r *syntax.Ref) bool { return r.Name == "" && len(r.Points) == 1 }

// locusNames declares what a locus makes; without the names that it must have,
// the fault is what fact says.
func (s *scope) locusNames(l *syntax.Locus, kind program.Kind, want int, fact, help string) ([]int, bool) {
	good := want == 0 && len(l.Names) <= 2 || len(l.Names) == want
	if !good {
		s.fail(l.Node, "%s, and %s", fact, thereAre(len(l.Names))).Help = help
	}
	var slots []int
	for _, r := range l.Names {
		slot, ok := s.newObject(r, kind)
		if good = good && ok; ok {
			s.draw(slot, figure.Result)
			slots = append(slots, slot)
		}
	}
	return slots, good
}

// thereAre counts names.
func thereAre(n int) string {
	if n == 1 {
		return "there is one name"
	}
	return fmt.Sprintf("there are %d names", n)
}

// locusCircle is the circle of the points so far from a point.
func (s *scope) locusCircle(l *syntax.Locus) {
	d, ok1 := s.distance(l.Distance)
	centre, ok2 := s.point(l.From)
	slots, ok3 := s.locusNames(l, program.Circle, 1, "the points at a distance from a point are one circle", "name it once: locus k 3 from A")
	if !ok1 || !ok2 || !ok3 {
		return
	}
	slot := slots[0]
	s.slot(slot).Ink.Whole = true
	s.c.centres[slot] = centre
	s.emit(l.Node, func(st *program.State) error {
		return setCircle(st, slot, centre, func(st *program.State) (geom.Real, error) {
			r, err := d(st)
			if err != nil {
				return nil, err
			}
			return r.Mul(r), nil
		})
	})
}

// distance is a length that must be more than 0.
func (s *scope) distance(e *syntax.Expr) (func(*program.State) (geom.Real, error), bool) {
	d, ok := s.expr(e, wantLength)
	span := s.span(e.Node)
	return func(st *program.State) (geom.Real, error) {
		r, err := real1(st, d)
		if err != nil {
			return nil, err
		}
		if r.Sign() <= 0 {
			return nil, &program.Fault{Text: fmt.Sprintf("the distance is %s, and it must be more than 0", geom.Show(r)), Span: &span}
		}
		r.Sure()
		return r, nil
	}, ok
}

// locusBeside is the two parallels of a line, or the rim of a join or a ray.
func (s *scope) locusBeside(l *syntax.Locus) {
	d, ok1 := s.distance(l.Distance)
	c, ok2 := s.curve(l.From)
	if ok2 && c.circle {
		s.fail(l.From.Node, "a locus is drawn about a point, a line or a join, and %s is a circle", c.text).Help = "draw the circles about its centre"
		ok2 = false
	}
	far := s.span(l.Distance.Node).Text() + " from " + c.text
	switch {
	case !ok1 || !ok2:
		for _, r := range l.Names {
			s.newObject(r, program.Line)
		}
	case c.run && c.slot >= 0 && s.reachOf(c.slot) < reachLine:
		slots, ok := s.locusNames(l, program.Rim, 1, "the points "+far+" are one curve round its ends", "name it once: locus k "+far)
		if ok {
			s.rim(l, slots[0], c, d)
		}
	default:
		help := "name both: locus p, q " + far
		if c.run && c.slot < 0 {
			help += "; or join " + c.text + " first for the curve round the join alone"
		}
		slots, ok := s.locusNames(l, program.Line, 2, "the points "+far+" are two parallels", help)
		if ok {
			s.parallels(l, slots, c, d)
		}
	}
}

func (s *scope) rim(l *syntax.Locus, slot int, c curve, d func(*program.State) (geom.Real, error)) {
	s.emit(l.Node, func(st *program.State) error {
		r, err := d(st)
		if err != nil {
			return err
		}
		st.Set(slot, geom.Rim{Spine: *st.Curve(c.slot).Straight, R: r})
		return nil
	})
}

// parallels are drawn as far as the line's own points.
func (s *scope) parallels(l *syntax.Locus, slots []int, c curve, d func(*program.State) (geom.Real, error)) {
	s.emit(l.Node, func(st *program.State) error {
		r, err := d(st)
		if err != nil {
			return err
		}
		m, err := c.value(st)
		if err != nil {
			return err
		}
		if m.Straight.Start != nil || m.Straight.End != nil {
			return &program.Fault{Text: c.text + " has an end, so the points at a distance from it are no two lines"}
		}
		line, err := c.whole(st)
		if err != nil {
			return err
		}
		for i, off := range []geom.Real{r, r.Neg()} {
			side := geom.Beside(line, off)
			out := &program.Curve{Straight: &geom.Straight{Line: side}}
			for _, p := range append(m.On, m.Used...) {
				out.Used = append(out.Used, p.Add(side.P.Sub(line.P)))
			}
			st.Set(slots[i], out)
		}
		return nil
	})
}

// equidistant is the points equally far from two points or two straights.
func (s *scope) equidistant(l *syntax.Locus) {
	one, other := isPoint(l.One), isPoint(l.Other)
	if one != other {
		s.fail(l.Node, "the points equally far from a point and a line lie on a parabola, which cannot be drawn with compasses and straightedge").Help = "take two points or two lines"
		for _, r := range l.Names {
			s.newObject(r, program.Line)
		}
		return
	}
	if one {
		s.betweenPoints(l)
		return
	}
	a, ok1 := s.line(l.One)
	b, ok2 := s.line(l.Other)
	if v, p, q, ok := arms(a, b); ok1 && ok2 && ok && len(l.Names) == 1 {
		s.halfAngle(l, v, p, q)
		return
	}
	slots, ok3 := s.locusNames(l, program.Line, 0, "two lines have two bisectors at most", "name both: locus p, q equidistant from m and n")
	if ok1 && ok2 && ok3 {
		s.betweenLines(l, slots, a, b)
	}
}

// arms tells whether two runs are the arms of an angle: the vertex that they
// share, and the other ends.
func arms(a, b curve) (vertex, p, q int, ok bool) {
	if !a.run || !b.run || a.ends == b.ends {
		return 0, 0, 0, false
	}
	for _, v := range a.ends {
		if v == b.from || v == b.to {
			return v, a.from + a.to - v, b.from + b.to - v, true
		}
	}
	return 0, 0, 0, false
}

func (s *scope) betweenPoints(l *syntax.Locus) {
	a, ok1 := s.point(l.One)
	b, ok2 := s.point(l.Other)
	slots, ok3 := s.locusNames(l, program.Line, 1, "the points equally far from two points are one line", "name it once: locus n equidistant from A and B")
	if !ok1 || !ok2 || !ok3 {
		return
	}
	s.emit(l.Node, func(st *program.State) error {
		p, q := st.Point(a), st.Point(b)
		if p.Equal(q) {
			return sameSpot(st, a, b)
		}
		n := geom.Bisector(p, q)
		half := n.D.Scale(st.Field.Rat(rat(1, 2)))
		st.Set(slots[0], &program.Curve{Straight: &geom.Straight{Line: n}, Used: []geom.Point{n.P.Add(half), n.P.Add(half.Neg())}})
		return nil
	})
}

// halfAngle is the ray from the vertex that halves an angle.
func (s *scope) halfAngle(l *syntax.Locus, vertex, a, b int) {
	slots, ok := s.locusNames(l, program.Line, 1, "", "")
	if !ok {
		return
	}
	s.emit(l.Node, func(st *program.State) error {
		v := st.Point(vertex)
		for _, end := range []int{a, b} {
			if v.Equal(st.Point(end)) {
				return sameSpot(st, vertex, end)
			}
		}
		to, too := st.Point(a).Sub(v), st.Point(b).Sub(v)
		if to.Cross(too).IsZero() {
			return &program.Fault{Text: fmt.Sprintf("%s, %s and %s lie on one line, so there is no angle to halve", s.slot(a).Name, s.slot(vertex).Name, s.slot(b).Name)}
		}
		out := &program.Curve{Straight: &geom.Straight{Line: geom.Line{P: v, D: geom.HalfWay(to, too)}, Start: &v}}
		st.Passes(out, vertex)
		out.Used = append(out.Used, ahead(out.Line(), math.Sqrt(min(to.Norm2().Float(), too.Norm2().Float()))))
		st.Set(slots[0], out)
		return nil
	})
}

// betweenLines is the bisectors of two lines. Whether they cross is known when
// they are drawn, and the names must fit then.
func (s *scope) betweenLines(l *syntax.Locus, slots []int, a, b curve) {
	span := s.span(l.Node)
	s.emit(l.Node, func(st *program.State) error {
		la, err := a.whole(st)
		if err != nil {
			return err
		}
		lb, err := b.whole(st)
		if err != nil {
			return err
		}
		lines, err := geom.Equidistant(la, lb)
		if err != nil {
			return &program.Fault{Text: fmt.Sprintf("%s and %s: %s", a.text, b.text, err)}
		}
		if len(lines) != len(slots) {
			return wrongCount(span, len(lines), a, b)
		}
		back, on := a.extent(st, la, lines[0].P)
		if len(lines) == 2 {
			back2, on2 := b.extent(st, lb, lines[0].P)
			back, on = max(back, back2), max(on, on2)
			back, on = max(back, on/2), max(on, back/2)
		}
		for i, line := range lines {
			used := []geom.Point{ahead(line, -back), ahead(line, on)}
			if len(lines) == 1 && !a.reaches(st) && !b.reaches(st) {
				used = nil // it is drawn as far as the parallels are, of which nothing hangs on either
			}
			st.Set(slots[i], &program.Curve{Straight: &geom.Straight{Line: line}, Used: used})
			back, on = max(back, on)/2, max(back, on)/2 // for the second, across
		}
		return nil
	})
}

// reaches tells whether something settles how far a straight is drawn.
func (c curve) reaches(st *program.State) bool { return c.run || len(st.Curve(c.slot).Used) > 0 }

// ahead is a point of a line, about so far from its first point: for how far
// the line is drawn.
func ahead(l geom.Line, far float64) geom.Point {
	return l.P.Add(nearUnit(l.D).Scale(l.P.X.Field().Rat(nearRat(far, 16))))
}

// extent is about how far a straight is drawn from a place, back and on along
// its line.
func (c curve) extent(st *program.State, l geom.Line, from geom.Point) (back, on float64) {
	seg := c.stretch(st)
	n := math.Sqrt(l.D.Norm2().Float())
	a, b := seg.A.Sub(from).Dot(l.D).Float()/n, seg.B.Sub(from).Dot(l.D).Float()/n
	return max(0, -a, -b), max(0, a, b)
}

func wrongCount(at source.Span, lines int, a, b curve) error {
	f := &program.Fault{Span: &at}
	pair := a.text + " and " + b.text
	if lines == 2 {
		f.Text = fmt.Sprintf("%s cross, so the points equally far from them are two lines", pair)
		f.Help = "name both: locus p, q equidistant from " + pair
	} else {
		f.Text = fmt.Sprintf("%s are parallel, so the points equally far from them are one line", pair)
		f.Help = "name it once: locus n equidistant from " + pair
	}
	return f
}
