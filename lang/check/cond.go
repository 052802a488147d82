package check

import (
	"fmt"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// cond is a which-one phrase: a condition on a point among all that there are.
type cond struct {
	text  string
	span  source.Span
	picks bool // nearest and farthest: it compares places, and says nothing of one
	test  func(st *program.State, p geom.Point, all []geom.Point) (bool, error)
}

// conds resolves the phrases that follow a name.
func (s *scope) conds(list []*syntax.Cond) ([]cond, bool) {
	var out []cond
	good := true
	for _, c := range list {
		test, ok := s.condTest(c)
		good = good && ok
		span := s.span(c.Node)
		out = append(out, cond{span.Text(), span, c.Nearest != nil || c.Farthest != nil, test})
	}
	return out, good
}

type pointTest = func(*program.State, geom.Point, []geom.Point) (bool, error)

func (s *scope) condTest(c *syntax.Cond) (pointTest, bool) {
	switch {
	case c.Word != "":
		return s.aboveTest(c)
	case c.SideOf != nil:
		return s.leftTest(c)
	case c.Same != nil:
		return s.sideTest(c, c.Same, c.As, 1)
	case c.Other != nil:
		return s.sideTest(c, c.Other, c.From, -1)
	case c.Than != nil:
		p, ok := s.point(c.Than)
		return func(st *program.State, q geom.Point, _ []geom.Point) (bool, error) {
			return !q.Equal(st.Point(p)), nil
		}, ok
	case c.Nearest != nil:
		return s.distanceTest(c.Nearest, -1)
	case c.Farthest != nil:
		return s.distanceTest(c.Farthest, 1)
	case c.Between != nil:
		return s.onLineTest(c.Between, c.And, geom.Between)
	}
	return s.beyondTest(c)
}

// aboveTest is above or below a line on the page.
func (s *scope) aboveTest(c *syntax.Cond) (pointTest, bool) {
	l, ok := s.line(c.Of)
	want := 1
	if c.Word == "below" {
		want = -1
	}
	span := s.span(c.Node)
	return func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		line, err := l.whole(st)
		if err != nil {
			return false, err
		}
		right := line.D.X.Sign()
		if right == 0 {
			return false, &program.Fault{
				Text: fmt.Sprintf("%s is upright, so nothing is above or below it", l.text),
				Help: leftHelp(st, l),
				Span: &span,
			}
		}
		holds := line.Side(p)*right == want
		if holds {
			line.Across(p).Mul(line.D.X).MulInt(int64(want)).Sure()
		}
		return holds, nil
	}, ok
}

// leftHelp offers the phrase that works on an upright line.
func leftHelp(st *program.State, l curve) string {
	if l.run {
		a, b := st.Program.Slots[l.from].Name, st.Program.Slots[l.to].Name
		return fmt.Sprintf("say left of %s%s or right of %s%s", a, b, a, b)
	}
	return "name two points of it: left of AB or right of AB"
}

// leftTest is the side of a run, seen from its first point to its second.
func (s *scope) leftTest(c *syntax.Cond) (pointTest, bool) {
	word := "right"
	want := -1
	if c.Left {
		word, want = "left", 1
	}
	if c.SideOf.Name != "" {
		s.fail(c.Node, "%s of a line says nothing without its direction", word).Help = fmt.Sprintf("name two points of %s: %s of AB, standing at A and looking to B", c.SideOf.Name, word)
		return nil, false
	}
	if len(c.SideOf.Points) == 1 {
		point := s.span(c.SideOf.Node).Text()
		s.fail(c.Node, "%s of a point says nothing without a direction", word).Help = fmt.Sprintf("name two points: %s of %s%s, standing at %s; or say which one otherwise: nearest A, other than A, beyond B on AB",
			word, point, s.partner(point), point)
		return nil, false
	}
	ps, ok := s.distinct(c.SideOf, 2)
	return func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		a, b := st.Point(ps[0]), st.Point(ps[1])
		if a.Equal(b) {
			return false, sameSpot(st, ps[0], ps[1])
		}
		across := geom.Through(a, b).Across(p)
		holds := across.Sign() == want
		if holds {
			across.MulInt(int64(want)).Sure()
		}
		return holds, nil
	}, ok
}

// sideTest is on the same side of a line as a point, or on the other.
func (s *scope) sideTest(c *syntax.Cond, line, as *syntax.Ref, want int) (pointTest, bool) {
	l, ok1 := s.line(line)
	q, ok2 := s.point(as)
	span := s.span(c.Node)
	return func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		m, err := l.whole(st)
		if err != nil {
			return false, err
		}
		other := m.Across(st.Point(q))
		side := other.Sign()
		if side == 0 {
			return false, &program.Fault{Text: fmt.Sprintf("%s lies on %s, on neither side of it", st.Program.Slots[q].Name, l.text), Span: &span}
		}
		across := m.Across(p)
		holds := across.Sign() == want*side
		if holds {
			across.Mul(other).MulInt(int64(want)).Sure()
		}
		return holds, nil
	}, ok1 && ok2
}

// distanceTest is the nearest to a point, or with order 1 the farthest.
func (s *scope) distanceTest(r *syntax.Ref, order int) (pointTest, bool) {
	a, ok := s.point(r)
	span := s.span(r.Node)
	return func(st *program.State, p geom.Point, all []geom.Point) (bool, error) {
		from := st.Point(a)
		for _, q := range all {
			if q == p {
				continue
			}
			farther := geom.Dist2(p, from).Sub(geom.Dist2(q, from))
			switch farther.Sign() * order {
			case 1:
				farther.MulInt(int64(order)).Sure()
			case -1:
				return false, nil
			case 0:
				return false, &program.Fault{Text: fmt.Sprintf("%s and %s are equally far from %s", p, q, st.Program.Slots[a].Name), Span: &span}
			}
		}
		return true, nil
	}, ok
}

func (s *scope) onLineTest(ra, rb *syntax.Ref, holds func(p, a, b geom.Point) bool) (pointTest, bool) {
	a, ok1 := s.point(ra)
	b, ok2 := s.point(rb)
	return func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		pa, pb := st.Point(a), st.Point(b)
		if pa.Equal(pb) {
			return false, sameSpot(st, a, b)
		}
		if !holds(p, pa, pb) {
			return false, nil
		}
		p.Sub(pa).Dot(pb.Sub(pa)).Sure()
		p.Sub(pb).Dot(pa.Sub(pb)).Sure()
		return true, nil
	}, ok1 && ok2
}

// beyondTest is past one end of a run, on its line.
func (s *scope) beyondTest(c *syntax.Cond) (pointTest, bool) {
	ps, ok1 := s.distinct(c.On, 2)
	end, ok2 := s.point(c.Beyond)
	if !ok1 || !ok2 {
		return nil, false
	}
	from := ps[0]
	switch end {
	case ps[0]:
		from = ps[1]
	case ps[1]:
	default:
		s.fail(c.Node, "%s is not an end of %s", s.slot(end).Name, s.span(c.On.Node).Text()).Help = s.endsOf(ps)
		return nil, false
	}
	return func(st *program.State, p geom.Point, _ []geom.Point) (bool, error) {
		a, b := st.Point(from), st.Point(end)
		if a.Equal(b) {
			return false, sameSpot(st, from, end)
		}
		if !geom.Beyond(p, a, b) {
			return false, nil
		}
		p.Sub(b).Dot(b.Sub(a)).Sure()
		p.Sub(a).Dot(b.Sub(a)).Sure()
		return true, nil
	}, true
}

// endsOf offers the ends of a straight.
func (s *scope) endsOf(ps []int) string {
	return fmt.Sprintf("say beyond %s or beyond %s", s.slot(ps[0]).Name, s.slot(ps[1]).Name)
}

// holdAll tells whether p meets every phrase; the first that fails is named.
func holdAll(st *program.State, conds []cond, p geom.Point, all []geom.Point) (bool, string, error) {
	before := st.Field.Noted()
	for _, c := range conds {
		ok, err := c.test(st, p, all)
		if err != nil || !ok {
			st.Field.Forget(before)
			return false, c.text, err
		}
	}
	return true, "", nil
}
