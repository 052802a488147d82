package check

import (
	"fmt"
	"math/big"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// How far a straight reaches, for "the longest drawn under that name".
const (
	reachJoin = 1
	reachRay  = 1000 // past any join, however often produced
	reachLine = 2000
)

func (s *scope) reachOf(slot int) int { return s.c.reaches[slot] }

// opening resolves how wide the compasses are: it gives the square of the radius.
func (s *scope) opening(o *syntax.Opening, n syntax.Node, centre int, name string) (func(*program.State) (geom.Real, error), bool) {
	switch {
	case o.Through != nil:
		p, ok := s.point(o.Through)
		return func(st *program.State) (geom.Real, error) {
			a, b := st.Point(centre), st.Point(p)
			if a.Equal(b) {
				return nil, &program.Fault{Text: fmt.Sprintf("the circle goes through its own centre: %s and %s are one place", st.Program.Slots[centre].Name, st.Program.Slots[p].Name)}
			}
			return geom.Dist2(a, b), nil
		}, ok
	case o.Any:
		return s.anyOpening(o, n, name, s.plainOpening())
	case o.Radius == nil:
		s.fail(n, "%s has a centre but no opening", name).Help = "add radius 3, radius any, radius AB or through A"
		return nil, false
	}
	e, ok := s.expr(o.Radius, wantOpening)
	return func(st *program.State) (geom.Real, error) { return squareOf(st, e, s) }, ok
}

// squareOf is the square of an opening, which must be more than 0.
func squareOf(st *program.State, e expr, s *scope) (geom.Real, error) {
	x, err := e.value(st)
	if err != nil {
		return nil, err
	}
	r, ok := x.Constructible()
	span := s.span(e.node)
	if !ok {
		return nil, &program.Fault{Text: "the compasses cannot be opened by a length with π in it", Span: &span}
	}
	if r.Sign() <= 0 {
		return nil, &program.Fault{Text: fmt.Sprintf("the opening is %s, and it must be more than 0", geom.Show(r)), Span: &span}
	}
	r.Sure()
	return r.Mul(r), nil
}

// bound is one limit of an opening left to chance.
type bound struct {
	e    expr
	over bool
	text string
}

// plainOpenings are what a plain hand takes, one after the other: no two alike.
var plainOpenings = []*big.Rat{rat(3, 1), rat(7, 2), rat(26, 10), rat(4, 1), rat(33, 10)}

// plainOpening is the next of them.
func (s *scope) plainOpening() *big.Rat {
	s.openings++
	return plainOpenings[(s.openings-1)%len(plainOpenings)]
}

// anyOpening is an opening left to chance, within its bounds.
func (s *scope) anyOpening(o *syntax.Opening, n syntax.Node, name string, plain *big.Rat) (func(*program.State) (geom.Real, error), bool) {
	var bounds []bound
	for _, b := range o.Bounds {
		e, ok := s.expr(b.Than, wantOpening)
		if !ok {
			return nil, false
		}
		bounds = append(bounds, bound{e, b.Over, s.span(b.Than.Node).Text()})
	}
	in := s.input(n, program.Opening, name, plain)
	if k := len(o.Bounds); k > 0 {
		s.c.prog.Inputs[in].Bounds = s.span(o.Bounds[0].Node).To(s.span(o.Bounds[k-1].Node)).Text()
	}
	return func(st *program.State) (geom.Real, error) {
		r := st.Input(in)
		if r.Sign() <= 0 {
			return nil, &program.Fault{Text: "no opening was found that is more than 0", Range: true}
		}
		r.Sure()
		for _, b := range bounds {
			if holds, err := b.holds(st, r); err != nil {
				return nil, err
			} else if !holds {
				return nil, noOpening(st, bounds)
			}
		}
		return r.Mul(r), nil
	}, true
}

// noOpening is the fault of an opening that is out of its bounds.
func noOpening(st *program.State, bounds []bound) error {
	f := &program.Fault{Text: "no opening was found that is ", Range: true}
	for i, b := range bounds {
		limit, err := b.limit(st)
		if err != nil {
			return err
		}
		if i > 0 {
			f.Text, f.Help = f.Text+", and ", "change one of the bounds"
		}
		if f.Text += b.word() + " " + b.text; limit != nil && geom.Show(limit) != b.text {
			f.Text += ", which is " + geom.Show(limit)
		}
	}
	return f
}

// limit is the length that a bound speaks of, nil where it is no constructible one.
func (b bound) limit(st *program.State) (geom.Real, error) {
	x, err := b.e.value(st)
	if err != nil {
		return nil, err
	}
	limit, _ := x.Constructible()
	return limit, nil
}

func (b bound) word() string {
	if b.over {
		return "over"
	}
	return "under"
}

// holds tells whether an opening is within a bound.
func (b bound) holds(st *program.State, r geom.Real) (bool, error) {
	limit, err := b.limit(st)
	if err != nil || limit == nil || st.Unbounded {
		return true, err
	}
	st.Bounds = append(st.Bounds, program.Bound{Over: b.over, Limit: limit.Float()})
	room := limit.Sub(r)
	if b.over {
		room = r.Sub(limit)
	}
	if room.Sign() <= 0 {
		return false, nil
	}
	room.Sure()
	return true, nil
}

// arc draws an arc, all its circle geometrically.
func (s *scope) arc(a *syntax.Arc) {
	centre, ok := s.point(a.Centre)
	var square func(*program.State) (geom.Real, error)
	var ends *[2]int
	okOpening := true
	if a.From != nil {
		from, ok1 := s.point(a.From)
		to, ok2 := s.point(a.To)
		okOpening = ok1 && ok2
		ends = &[2]int{from, to}
		square = func(st *program.State) (geom.Real, error) { return partArc(st, centre, from, to) }
	} else {
		square, okOpening = s.opening(&a.Opening, a.Node, centre, "arc "+s.span(a.Name.Node).Text())
	}
	s.swing(a.Node, a.Name, round{centre, square, ok && okOpening, &a.Opening, ends, false}, a.Cuts)
}

// round is what an arc and a circle have in common.
type round struct {
	centre  int
	square  func(*program.State) (geom.Real, error)
	ok      bool // centre and opening are known
	opening *syntax.Opening
	ends    *[2]int // of a part arc
	whole   bool    // drawn all round
}

// swing draws an arc or circle and names its meetings.
func (s *scope) swing(n syntax.Node, name *syntax.Ref, r round, cuts *syntax.Cuts) {
	slot, ok := s.newObject(name, program.Circle)
	if ok {
		s.draw(slot, figure.Construction)
		s.slot(slot).Ink.Whole, s.slot(slot).Ink.Ends = r.whole, r.ends
		s.c.centres[slot] = r.centre
	}
	if ok && r.ok {
		s.emit(n, func(st *program.State) error { return setCircle(st, slot, r.centre, r.square) })
		s.through(r.opening.Through, slot)
		s.swings(slot, r.opening, r.centre, r.ends)
	}
	s.cuts(curve{slot: slot, circle: true, text: s.nameOf(slot, ok)}, ok && r.ok, cuts)
}

// partArc checks that both ends are on one circle about the centre.
func partArc(st *program.State, centre, from, to int) (geom.Real, error) {
	c, a, b := st.Point(centre), st.Point(from), st.Point(to)
	r2, s2 := geom.Dist2(c, a), geom.Dist2(c, b)
	names := st.Program.Slots
	if r2.IsZero() {
		return nil, &program.Fault{Text: fmt.Sprintf("%s is the centre itself", names[from].Name)}
	}
	if !r2.Equal(s2) {
		return nil, &program.Fault{Text: fmt.Sprintf("no arc about %s goes from %s to %s: they are %s and %s away from it",
			names[centre].Name, names[from].Name, names[to].Name, geom.Show(r2.Sqrt()), geom.Show(s2.Sqrt())),
			Help: fmt.Sprintf("both ends lie on one circle about %s: move one, or strike a whole arc through it", names[centre].Name)}
	}
	return r2, nil
}

func setCircle(st *program.State, slot, centre int, square func(*program.State) (geom.Real, error)) error {
	c := st.Point(centre)
	r2, err := square(st)
	if err != nil {
		return err
	}
	st.Set(slot, &program.Curve{Circle: &geom.Circle{C: c, R2: r2}})
	return nil
}

func (s *scope) nameOf(slot int, ok bool) string {
	if !ok {
		return ""
	}
	return s.slot(slot).Name
}

// newObject declares a line, circle or measure that has a small-letter name.
func (s *scope) newObject(r *syntax.Ref, kind program.Kind) (int, bool) {
	if r.Name == "" {
		s.fail(r.Node, "a %s is named with a small letter, and %s names points", kind, s.span(r.Node).Text()).Help = "such as m, c or k1"
		return 0, false
	}
	name, ok := s.indexed(r.Name, r.Index)
	if !ok {
		return 0, false
	}
	return s.declare(name, kind, r.Node), true
}

// circleAct draws a circle all round.
func (s *scope) circleAct(c *syntax.Circle) {
	centre, ok := s.point(c.Centre)
	square, ok1 := s.opening(&c.Opening, c.Node, centre, "circle "+s.span(c.Name.Node).Text())
	s.swing(c.Node, c.Name, round{centre, square, ok && ok1, &c.Opening, nil, true}, c.Cuts)
}

// through notes the point that a circle was drawn through.
func (s *scope) through(r *syntax.Ref, slot int) {
	if r == nil {
		return
	}
	if p, ok := s.point(r); ok {
		s.emit(r.Node, func(st *program.State) error {
			st.Passes(st.Curve(slot), p)
			return nil
		})
	}
}

// straight emits the straight through two points; ends tells which of them end it.
func (s *scope) straight(n syntax.Node, slot, a, b int, startsAtA, endsAtB bool) {
	s.emit(n, func(st *program.State) error {
		pa, pb := st.Point(a), st.Point(b)
		if pa.Equal(pb) {
			return sameSpot(st, a, b)
		}
		str := geom.Straight{Line: geom.Through(pa, pb)}
		if startsAtA {
			str.Start = &pa
		}
		if endsAtB {
			str.End = &pb
		}
		c := &program.Curve{Straight: &str}
		st.Passes(c, a)
		st.Passes(c, b)
		st.Set(slot, c)
		return nil
	})
}

// lineAct draws a named line through two points.
func (s *scope) lineAct(l *syntax.Line) {
	a, ok1 := s.point(l.A)
	b, ok2 := s.point(l.B)
	slot, ok3 := s.newObject(l.Name, program.Line)
	if ok3 {
		s.draw(slot, figure.Construction)
	}
	ok := ok1 && ok2 && ok3
	if ok && a == b {
		s.fail(l.B.Node, "a line goes through two points, and %s is named twice", s.slot(a).Name)
		ok = false
	}
	if ok {
		s.c.hand.rule(a, b, reachLine)
		s.c.through[slot] = pair{a, b}
		s.straight(l.Node, slot, a, b, false, false)
		s.bar(a, b, slot, reachLine)
	}
	s.cuts(curve{slot: slot, text: s.nameOf(slot, ok3)}, ok, l.Cuts)
}

// ray draws from its first point through its second and on.
func (s *scope) ray(r *syntax.Ray) {
	ps, ok := s.distinct(r.Points, 2)
	if !ok {
		s.cuts(curve{}, false, r.Cuts)
		return
	}
	slot := s.add(program.Line, r.Node)
	s.draw(slot, figure.Construction)
	s.c.hand.rule(ps[0], ps[1], reachRay)
	s.straight(r.Node, slot, ps[0], ps[1], true, false)
	s.bar(ps[0], ps[1], slot, reachRay)
	s.cuts(curve{slot: slot, text: s.span(r.Points.Node).Text()}, true, r.Cuts)
}

// join draws straights from point to point.
func (s *scope) join(j *syntax.Join) {
	var last curve
	good := true
	for _, r := range j.Runs {
		ps, ok := s.run(r, 0)
		good = good && ok
		for i := 0; i+1 < len(ps); i++ {
			if ps[i] == ps[i+1] {
				s.fail(r.Node, "%s is named twice in a row", s.slot(ps[i]).Name)
				good = false
				continue
			}
			last = s.joinTwo(r.Node, ps[i], ps[i+1])
		}
	}
	if j.Cuts != nil && good && (len(j.Runs) > 1 || len(j.Runs[0].Points) != 2) {
		s.fail(j.Cuts.Node, "several straights are joined, and cuts does not say which one is meant").Help = "join first, then write: AB meets m at X"
		good = false
	}
	s.cuts(last, good, j.Cuts)
}

func (s *scope) joinTwo(n syntax.Node, a, b int) curve {
	slot := s.add(program.Line, n)
	s.draw(slot, figure.Result)
	s.c.hand.rule(a, b, reachJoin)
	s.straight(n, slot, a, b, true, true)
	s.bar(a, b, slot, reachJoin)
	return curve{slot: slot, text: s.slot(a).Name + s.slot(b).Name}
}

// produce lengthens a straight beyond one of its ends.
func (s *scope) produce(p *syntax.Produce) {
	ps, ok := s.distinct(p.Straight, 2)
	beyond, ok2 := s.point(p.Beyond)
	if ok && ok2 && beyond != ps[0] && beyond != ps[1] {
		s.fail(p.Beyond.Node, "%s is not an end of %s", s.slot(beyond).Name, s.span(p.Straight.Node).Text()).Help = s.endsOf(ps)
		ok = false
	}
	if !ok || !ok2 {
		s.orphans(p)
		return
	}
	from := ps[0]
	if beyond == ps[0] {
		from = ps[1]
	}
	s.isDrawn(p, from, beyond)
	s.produceTo(p, from, beyond)
}

// orphans declares what a failed produce would have made, so that its users are not blamed.
func (s *scope) orphans(p *syntax.Produce) {
	if p.End != nil {
		s.newPoint(p.End)
	}
	if p.Meet != nil {
		s.meeting(p.Node, curve{}, false, p.Meet)
	}
}

// isDrawn checks that what is to be produced is drawn, by itself or as a piece
// of something longer.
func (s *scope) isDrawn(p *syntax.Produce, from, beyond int) {
	if len(s.straights[pairOf(from, beyond)]) > 0 || s.view != shown {
		return
	}
	there := s.drawn(p.Straight.Node, from, beyond)
	text := s.span(p.Straight.Node).Text()
	s.emit(p.Straight.Node, func(st *program.State) error {
		if there(st) != nil {
			return &program.Fault{Text: text + " is not drawn, so it cannot be produced", Help: "join " + text + " first", Cascade: true}
		}
		return nil
	})
}

func (s *scope) produceTo(p *syntax.Produce, from, beyond int) {
	s.c.hand.rule(from, beyond, reachLine)
	slot := s.add(program.Line, p.Node)
	reach, role := reachJoin, figure.Construction
	if drawn := s.straights[pairOf(from, beyond)]; len(drawn) > 0 {
		reach, role = s.reachOf(drawn[0])+1, s.slot(drawn[0]).Ink.Role
	}
	s.draw(slot, role)
	text := s.slot(from).Name + s.slot(beyond).Name
	switch {
	case p.Meet != nil:
		whole := s.add(program.Line, p.Node)
		s.straight(p.Node, whole, from, beyond, true, false)
		s.meeting(p.Node, curve{slot: whole, text: text + " produced"}, true, p.Meet)
		if end, ok := s.names[s.meetName(p.Meet)]; ok {
			s.lengthen(p.Node, slot, from, beyond, end)
			s.bar(from, end, slot, reach)
		}
	case p.By != nil:
		s.produceBy(p, slot, from, beyond, reach)
	default:
		s.straight(p.Node, slot, from, beyond, true, false)
		reach = reachRay
	}
	s.bar(from, beyond, slot, reach)
}

func (s *scope) meetName(m *syntax.Meeting) string {
	if len(m.Picks) != 1 || len(m.Picks[0].Point.Points) != 1 {
		return ""
	}
	p := m.Picks[0].Point.Points[0]
	name, _ := s.indexed(p.Name, p.Index)
	return name
}

// lengthen is the straight from a point through another to an end past it.
func (s *scope) lengthen(n syntax.Node, slot, from, beyond, end int) {
	s.emit(n, func(st *program.State) error {
		a, b, c := st.Point(from), st.Point(beyond), st.Point(end)
		if !geom.Beyond(c, a, b) {
			names := st.Program.Slots
			return &program.Fault{
				Text: fmt.Sprintf("%s is not beyond %s on %s%s: the meeting is at %s", names[end].Name, names[beyond].Name, names[from].Name, names[beyond].Name, c),
				Help: fmt.Sprintf("produce %s%s beyond %s instead, if that is meant", names[from].Name, names[beyond].Name, names[from].Name),
			}
		}
		str := geom.Join(a, c)
		curve := &program.Curve{Straight: &str}
		for _, p := range []int{from, beyond, end} {
			st.Passes(curve, p)
		}
		st.Set(slot, curve)
		return nil
	})
}

func (s *scope) produceBy(p *syntax.Produce, slot, from, beyond, reach int) {
	e, ok := s.expr(p.By, wantLength)
	end := s.add(program.Point, p.Node)
	if p.End != nil {
		named, ok2 := s.newPoint(p.End)
		if !ok2 {
			return
		}
		end = named
		s.draw(end, figure.Construction)
	}
	if !ok {
		return
	}
	s.emit(p.Node, func(st *program.State) error {
		a, b := st.Point(from), st.Point(beyond)
		if a.Equal(b) {
			return sameSpot(st, from, beyond)
		}
		r2, err := squareOf(st, e, s)
		if err != nil {
			return err
		}
		st.Set(end, geom.Along(b, b.Sub(a), r2.Sqrt()))
		return nil
	})
	s.lengthen(p.Node, slot, from, beyond, end)
	if p.End != nil {
		s.bar(from, end, slot, reach)
	}
}
