package check

import (
	"fmt"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// verdict is how a relation was decided: why says by how much it fails, in the
// figure's own numbers.
type verdict struct {
	holds bool
	why   string
}

// relation decides something of the figure when the program runs.
type relation func(*program.State) (verdict, error)

var yes = verdict{holds: true}

func no(format string, args ...any) verdict { return verdict{why: fmt.Sprintf(format, args...)} }

// verdictOf is yes, or no for the reason given.
func verdictOf(holds bool, format string, args ...any) verdict {
	if holds {
		return yes
	}
	return no(format, args...)
}

// claim proves what the source says, or refuses the figure.
func (s *scope) claim(c *syntax.Claim) {
	s.stating = true
	rel, ok := s.relation(c.Relation)
	s.stating = false
	if !ok {
		return
	}
	s.promote(c.Relation)
	stretch := s.stretch(c.Relation)
	top := s.depth == 0
	text := s.span(c.Relation.Node).Text()
	line, _ := s.file.Position(s.span(c.Node).Start)
	s.prove(c.Node, func(st *program.State) error {
		v, err := rel(st)
		if err != nil {
			return err
		}
		if !v.holds {
			return &program.Fault{Text: "the claim does not hold: " + v.why, False: true}
		}
		stretch(st)
		if top {
			st.Claims = append(st.Claims, figure.Claim{Text: text, Line: line, Here: c.Here})
		}
		return nil
	})
	if top {
		steps := s.c.prog.Steps
		s.c.prog.Claims = append(s.c.prog.Claims, program.Claim{Text: text, Line: line, Step: steps[len(steps)-1], Here: c.Here, Inequality: inequality(c.Relation)})
	}
}

// inequality tells whether a relation is more than equations.
func inequality(r *syntax.Relation) bool {
	for _, l := range r.Chain {
		if l.Op != "=" {
			return true
		}
	}
	return r.Not || r.Inside != nil || r.Outside != nil || r.Same != nil || r.Other != nil || r.Between != nil
}

// promote makes a line or circle that something is claimed of a result of the
// figure, and a circle that something is claimed to lie on or to touch.
func (s *scope) promote(r *syntax.Relation) {
	if s.view != shown || s.depth > 0 {
		return
	}
	for _, line := range r.Concurrent {
		s.makeResult(line, true)
	}
	if r.Left == nil {
		return
	}
	if r.Perp != nil || r.Parallel != nil || r.Bisects != nil || r.Touches != nil || r.On != nil {
		s.makeResult(plainRef(r.Left), true)
	}
	s.makeResult(r.On, true)
	for _, line := range r.Parallel {
		s.makeResult(line, true)
	}
	if r.Touches != nil {
		s.makeResult(r.Touches.What, true)
	}
}

// makeResult gives a construction line or circle a result's ink; lines only if asked.
func (s *scope) makeResult(r *syntax.Ref, lines bool) {
	if r == nil {
		return
	}
	slot, ok := s.quietCurve(r)
	if !ok {
		return
	}
	sl := s.slot(slot)
	if sl.Ink == nil || sl.Ink.Role != figure.Construction || sl.Kind == program.Line && !lines || sl.Kind == program.Circle && !sl.Ink.Whole {
		return
	}
	sl.Ink.Role = figure.Result
	if sl.Kind == program.Line && sl.Top { // the names inside a construction are its own
		s.letter(slot)
	}
}

// quietCurve is the slot of a drawn curve that a reference names, without complaint.
func (s *scope) quietCurve(r *syntax.Ref) (int, bool) {
	if r.Name != "" {
		name, ok := s.indexed(r.Name, r.Index)
		slot, known := s.names[name]
		return slot, ok && known && (s.slot(slot).Kind == program.Line || s.slot(slot).Kind == program.Circle)
	}
	if len(r.Points) != 2 {
		return 0, false
	}
	a, ok1 := s.pointName(r.Points[0])
	b, ok2 := s.pointName(r.Points[1])
	drawn := s.straights[pairOf(a, b)]
	if !ok1 || !ok2 || len(drawn) == 0 {
		return 0, false
	}
	return drawn[0], true
}

// plainRef is the reference that a side consists of, or nil.
func plainRef(s *syntax.Side) *syntax.Ref {
	if s == nil || len(s.Terms) != 1 {
		return nil
	}
	return plainExpr(s.Terms[0])
}

func plainExpr(e *syntax.Expr) *syntax.Ref {
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) > 0 || e.Head.Head.Half || e.Head.Head.Square {
		return nil
	}
	return e.Head.Head.Value.Ref
}

// relation resolves what is claimed or needed.
func (s *scope) relation(r *syntax.Relation) (relation, bool) {
	rel, ok := s.positive(r)
	if !ok || !r.Not {
		return rel, ok
	}
	if len(r.Chain) > 1 {
		s.fail(r.Node, "not takes one relation, and this is a chain").Help = "claim the links one by one"
		return nil, false
	}
	denied := strings.TrimSpace(strings.TrimPrefix(s.span(r.Node).Text(), "not"))
	return func(st *program.State) (verdict, error) {
		v, err := rel(st)
		return verdictOf(!v.holds, "it is true that %s", denied), err
	}, true
}

func (s *scope) positive(r *syntax.Relation) (relation, bool) {
	switch {
	case r.Triangle != nil:
		return s.twoTriangles(r)
	case r.Collinear != nil:
		return s.collinear(r.Collinear)
	case r.Concyclic != nil:
		return s.concyclic(r.Concyclic)
	case len(r.Concurrent) > 0:
		return s.concurrent(r)
	case r.Shape != "":
		return s.shapeRelation(r)
	case len(r.Chain) > 0:
		return s.chain(append([]*syntax.Side{r.Left}, sidesOf(r.Chain)...), opsOf(r.Chain))
	}
	ref := plainRef(r.Left)
	if ref == nil {
		s.fail(r.Left.Node, "a point or line is wanted here")
		return nil, false
	}
	switch {
	case r.Perp != nil:
		return s.twoLines(ref, r.Perp, 90)
	case r.Parallel != nil:
		return s.allParallel(ref, r.Parallel)
	case r.On != nil:
		return s.pointOn(ref, r.On)
	case r.Inside != nil:
		return s.pointInside(ref, r.Inside, -1)
	case r.Outside != nil:
		return s.pointInside(ref, r.Outside, 1)
	case r.Same != nil:
		return s.onSide(ref, r.Same, r.As, 1)
	case r.Other != nil:
		return s.onSide(ref, r.Other, r.From, -1)
	case r.Between != nil:
		return s.pointBetween(ref, r)
	case r.Midpoint != nil:
		return s.midpoint(ref, r.Midpoint)
	case r.Centre != nil:
		return s.centreOf(ref, r.Centre)
	case r.Bisects != nil:
		return s.bisects(ref, r.Bisects)
	case r.Touches != nil:
		return s.touches(ref, r.Touches)
	}
	s.fail(r.Node, "this claims nothing of %s", s.span(ref.Node).Text()).Help = "say what holds, as in: claim " + s.span(ref.Node).Text() + " = 5"
	return nil, false
}

func sidesOf(links []*syntax.Link) []*syntax.Side {
	var out []*syntax.Side
	for _, l := range links {
		out = append(out, l.Right)
	}
	return out
}

func opsOf(links []*syntax.Link) []string {
	var out []string
	for _, l := range links {
		out = append(out, l.Op)
	}
	return out
}

// twoLines is at right angles (90) or parallel (0).
func (s *scope) twoLines(a, b *syntax.Ref, degrees int) (relation, bool) {
	l, ok1 := s.line(a)
	m, ok2 := s.line(b)
	return func(st *program.State) (verdict, error) {
		x, err := l.whole(st)
		if err != nil {
			return verdict{}, err
		}
		y, err := m.whole(st)
		if err != nil {
			return verdict{}, err
		}
		if degrees == 90 {
			return verdictOf(geom.Perpendicular(x, y), "%s and %s make %s, not a right angle: %s off", l.text, m.text, between(x, y), offRight(x, y)), nil
		}
		return verdictOf(geom.Parallel(x, y), "%s and %s are not parallel: they make %s", l.text, m.text, between(x, y)), nil
	}, ok1 && ok2
}

// allParallel is that each line is parallel to the first.
func (s *scope) allParallel(first *syntax.Ref, others []*syntax.Ref) (relation, bool) {
	var links []relation
	for _, other := range others {
		l, ok := s.twoLines(first, other, 0)
		if !ok {
			return nil, false
		}
		links = append(links, l)
	}
	return allOf(links), true
}

// allOf holds when every one does, and fails as the first that fails.
func allOf(links []relation) relation {
	return func(st *program.State) (verdict, error) {
		for _, l := range links {
			if v, err := l(st); err != nil || !v.holds {
				return v, err
			}
		}
		return yes, nil
	}
}

// pointOn is a point on a straight as drawn, or on a circle.
func (s *scope) pointOn(p, r *syntax.Ref) (relation, bool) {
	slot, ok1 := s.point(p)
	c, ok2 := s.curve(r)
	return func(st *program.State) (verdict, error) {
		k, err := c.value(st)
		if err != nil {
			return verdict{}, err
		}
		at, name := st.Point(slot), st.Program.Slots[slot].Name
		if !on(k, at) {
			return no("%s is %s %s", name, beside(st, k, at), c.text), nil
		}
		return verdictOf(len(within([]geom.Point{at}, k)) > 0, "%s is on the line of %s, but past its end", name, c.text), nil
	}, ok1 && ok2
}

// beside is how far a point is from a curve: 2.00 cm from, or inside of a circle.
func beside(st *program.State, c *program.Curve, p geom.Point) string {
	if c.Straight != nil {
		return st.Exactly(1, geom.Dist(p, c.Line().Foot(p))) + " from"
	}
	off, where := geom.Dist(p, c.Circle.C).Sub(c.Circle.R2.Sqrt()), "outside"
	if off.Sign() < 0 {
		off, where = off.Neg(), "inside"
	}
	return st.Exactly(1, off) + " " + where
}

func (s *scope) centreOf(p, k *syntax.Ref) (relation, bool) {
	slot, ok1 := s.point(p)
	circle, ok2 := s.circle(k)
	return func(st *program.State) (verdict, error) {
		c, x := st.Curve(circle).Circle.C, st.Point(slot)
		return verdictOf(x.Equal(c), "%s is %s from the centre, which is at %s", st.Program.Slots[slot].Name, st.Exactly(1, geom.Dist(x, c)), c), nil
	}, ok1 && ok2
}

// pointInside is a point, or a whole circle, inside or outside of a region.
func (s *scope) pointInside(p, r *syntax.Ref, side int) (relation, bool) {
	if p.Name != "" && r.Name != "" {
		return s.circleInside(p, r, side)
	}
	slot, ok1 := s.point(p)
	test, _, ok2 := s.region(r)
	text := s.words(r.Node)
	return func(st *program.State) (verdict, error) {
		got, err := test(st, st.Point(slot))
		word := map[int]string{-1: "inside", 0: "on the edge of", 1: "outside"}
		return verdictOf(got == side, "%s is %s %s", st.Program.Slots[slot].Name, word[got], text), err
	}, ok1 && ok2
}

// circleInside is that no point of the first circle reaches the rim of the second.
func (s *scope) circleInside(a, b *syntax.Ref, side int) (relation, bool) {
	x, ok1 := s.circle(a)
	y, ok2 := s.circle(b)
	at, bt := s.words(a.Node), s.words(b.Node)
	return func(st *program.State) (verdict, error) {
		c, d := st.Curve(x).Circle, st.Curve(y).Circle
		r, q, gap := c.R2.Sqrt(), d.R2.Sqrt(), geom.Dist(c.C, d.C)
		holds, word := gap.Add(r).Cmp(q) < 0, "inside"
		if side > 0 {
			holds, word = gap.Cmp(r.Add(q)) > 0, "outside"
		}
		return verdictOf(holds, "%s is not all %s %s: the centres are %s apart, the radii %s and %s",
			at, word, bt, geom.Show(gap), geom.Show(r), geom.Show(q)), nil
	}, ok1 && ok2
}

func (s *scope) pointBetween(p *syntax.Ref, r *syntax.Relation) (relation, bool) {
	slot, ok1 := s.point(p)
	a, ok2 := s.point(r.Between)
	b, ok3 := s.point(r.And)
	return func(st *program.State) (verdict, error) {
		x, pa, pb := st.Point(slot), st.Point(a), st.Point(b)
		if pa.Equal(pb) {
			return verdict{}, sameSpot(st, a, b)
		}
		n := st.Program.Slots
		if l := geom.Through(pa, pb); !l.Holds(x) {
			return no("%s is %s off the line %s%s", n[slot].Name, st.Exactly(1, geom.Dist(x, l.Foot(x))), n[a].Name, n[b].Name), nil
		}
		return verdictOf(geom.Between(x, pa, pb), "%s is on the line, but not between %s and %s", n[slot].Name, n[a].Name, n[b].Name), nil
	}, ok1 && ok2 && ok3
}

func (s *scope) midpoint(p, r *syntax.Ref) (relation, bool) {
	slot, ok1 := s.point(p)
	ps, ok2 := s.distinct(r, 2)
	return func(st *program.State) (verdict, error) {
		x, m := st.Point(slot), geom.Midpoint(st.Point(ps[0]), st.Point(ps[1]))
		return verdictOf(x.Equal(m), "%s is %s from the midpoint, which is at %s", st.Program.Slots[slot].Name, st.Exactly(1, geom.Dist(x, m)), m), nil
	}, ok1 && ok2
}

// bisects is that AX halves the angle BAC from inside.
func (s *scope) bisects(line, angle *syntax.Ref) (relation, bool) {
	arms, ok := s.angleRun(angle)
	if !ok {
		return nil, false
	}
	through, ok := s.bisectorPoint(line, arms[1])
	return func(st *program.State) (verdict, error) {
		x, err := through(st)
		if err != nil {
			return verdict{}, err
		}
		a, v, b := st.Point(arms[0]), st.Point(arms[1]), st.Point(arms[2])
		if a.Equal(v) || b.Equal(v) {
			_, err := cornerOf(st, arms, false)
			return verdict{}, err
		}
		var first, second geom.Angle
		for _, p := range x {
			first, second = geom.Corner(a, v, p, false), geom.Corner(p, v, b, false)
			whole := geom.Corner(a, v, b, false)
			c, err := first.Cmp(second)
			if err != nil {
				return verdict{}, err
			}
			sum, err := first.Add(second).Cmp(whole)
			if err != nil || c == 0 && sum == 0 {
				return yes, err
			}
		}
		return no("it parts the angle into %s and %s", first, second), nil
	}, ok
}

// bisectorPoint gives points, one each way, on a line through a vertex.
func (s *scope) bisectorPoint(line *syntax.Ref, vertex int) (func(*program.State) ([]geom.Point, error), bool) {
	l, ok := s.line(line)
	return func(st *program.State) ([]geom.Point, error) {
		m, err := l.whole(st)
		if err != nil {
			return nil, err
		}
		v := st.Point(vertex)
		if !m.Holds(v) {
			return nil, &program.Fault{Text: fmt.Sprintf("%s does not go through the vertex %s", l.text, st.Program.Slots[vertex].Name)}
		}
		if l.run && l.from == vertex {
			return []geom.Point{v.Add(m.D)}, nil
		}
		if l.run && l.to == vertex {
			return []geom.Point{v.Add(m.D.Neg())}, nil
		}
		return []geom.Point{v.Add(m.D), v.Add(m.D.Neg())}, nil
	}, ok
}

// touches is tangency, of a circle and a line or of two circles.
func (s *scope) touches(a *syntax.Ref, t *syntax.Touch) (relation, bool) {
	k, ok1 := s.curve(a)
	m, ok2 := s.curve(t.What)
	at, ok3 := -1, true
	if t.At != nil {
		at, ok3 = s.point(t.At)
	}
	if !ok1 || !ok2 || !ok3 {
		return nil, false
	}
	if !k.circle && !m.circle {
		s.fail(t.Node, "two lines cannot touch").Help = "a circle touches a line or a circle"
		return nil, false
	}
	if t.How != "" && !(k.circle && m.circle) {
		s.fail(t.Node, "only two circles touch %s", t.How)
		return nil, false
	}
	how := map[string]int{"": 0, "outside": 1, "inside": -1}[t.How]
	return func(st *program.State) (verdict, error) {
		x, err := k.value(st)
		if err != nil {
			return verdict{}, err
		}
		y, err := m.value(st)
		if err != nil {
			return verdict{}, err
		}
		if x.Straight != nil {
			x, y = y, x
		}
		v := touchVerdict(st, x, y, how, k.text, m.text)
		if v.holds {
			st.SayTouch(x, y)
		}
		if v.holds && at >= 0 {
			p := st.Point(at)
			v = verdictOf(on(x, p) && on(y, p), "they touch, but not at %s", st.Program.Slots[at].Name)
		}
		return v, nil
	}, true
}

// touchVerdict tells whether circle x touches y: how is 1 from outside, -1 from
// inside, 0 either way.
func touchVerdict(st *program.State, x, y *program.Curve, how int, xt, yt string) verdict {
	r := x.Circle.R2
	if y.Straight != nil {
		gap := func() geom.Real { return geom.Dist(x.Circle.C, y.Line().Foot(x.Circle.C)).Sub(r.Sqrt()) }
		if !geom.LineTouches(y.Line(), *x.Circle) {
			return no("%s and %s do not touch: the line is %s off", xt, yt, st.Exactly(1, gap()))
		}
		foot := y.Line().Foot(x.Circle.C)
		return verdictOf(len(within([]geom.Point{foot}, y)) > 0, "%s ends before it touches", yt)
	}
	is := geom.CirclesTouch(*x.Circle, *y.Circle)
	switch {
	case is == 0:
		d, q, s := geom.Dist(x.Circle.C, y.Circle.C), r.Sqrt(), y.Circle.R2.Sqrt()
		return no("%s and %s do not touch: their centres are %s apart, their radii %s and %s", xt, yt, geom.Show(d), geom.Show(q), geom.Show(s))
	case how != 0 && is != how:
		return no("they touch from %s", map[int]string{1: "outside", -1: "inside"}[is])
	}
	return yes
}
