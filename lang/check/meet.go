package check

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// pick is a name for a meeting, with the phrases that bind it.
type pick struct {
	slot  int
	name  string
	conds []cond
}

// cuts resolves the meetings at the end of an act; the act's curve comes first.
func (s *scope) cuts(first curve, ok bool, c *syntax.Cuts) {
	if c == nil {
		return
	}
	for _, m := range c.Meets {
		s.meeting(m.Node, first, ok, m)
	}
}

// meeting names where two curves meet.
func (s *scope) meeting(n syntax.Node, first curve, ok bool, m *syntax.Meeting) {
	second, ok2 := s.curve(m.With)
	picks, ok3 := s.picks(m)
	if !ok || !ok2 || !ok3 {
		return
	}
	if first.slot >= 0 && first.slot == second.slot && !s.slot(first.slot).Twice {
		s.fail(m.With.Node, "%s cannot meet itself", first.text)
		return
	}
	if len(picks) > 2 || len(picks) == 2 && !first.circle && !second.circle {
		most := "two lines meet once"
		if first.circle || second.circle {
			most = "two curves meet twice at most"
		}
		s.fail(m.Node, "%s, and there are %d names", most, len(picks))
		return
	}
	for _, p := range picks {
		for _, c := range []curve{first, second} {
			if c.circle {
				s.c.hand.met(c.slot, s.centre(c.slot), p.slot)
			}
			if c.slot >= 0 && !c.circle {
				s.c.metOn[p.slot] = append(s.c.metOn[p.slot], c.slot)
			}
		}
	}
	tell := s.tellers(first, second)
	s.emit(n, func(st *program.State) error {
		return meet(st, first, second, picks, tell)
	})
}

func (s *scope) picks(m *syntax.Meeting) ([]pick, bool) {
	var out []pick
	good := true
	for _, p := range m.Picks {
		conds, ok := s.conds(p.Conds)
		slot, ok2 := s.newPoint(p.Point)
		good = good && ok && ok2
		if ok2 {
			s.draw(slot, figure.Construction)
			out = append(out, pick{slot, s.slot(slot).Name, conds})
		}
	}
	return out, good
}

// newPoint declares a point that is made here.
func (s *scope) newPoint(r *syntax.Ref) (int, bool) {
	if r.Name != "" {
		s.fail(r.Node, "a point is made here, and points have capital letters").Help = "write " + strings.ToUpper(r.Name[:1]) + r.Name[1:]
		return 0, false
	}
	if len(r.Points) != 1 {
		s.fail(r.Node, "one new point is wanted here, and this is a run of %d", len(r.Points)).Help = "several points read: " + s.pointList(r)
		return 0, false
	}
	name, ok := s.indexed(r.Points[0].Name, r.Points[0].Index)
	if !ok {
		return 0, false
	}
	return s.declare(name, program.Point, r.Node), true
}

func (s *scope) pointList(r *syntax.Ref) string {
	var names []string
	for _, p := range r.Points {
		names = append(names, p.Name)
	}
	return strings.Join(names, " and ")
}

// meet finds the meetings of two curves and gives them to the names.
func meet(st *program.State, first, second curve, picks []pick, tell []teller) error {
	a, err := first.value(st)
	if err != nil {
		return err
	}
	b, err := second.value(st)
	if err != nil {
		return err
	}
	points, err := meetCurves(a, b)
	if err != nil {
		return noMeeting(err, first, second)
	}
	all := points
	if points = within(points, a, b); len(points) == 0 {
		return endsTooSoon(all, a, first, second)
	}
	chosen, err := choose(st, points, picks, meetingFacts{first, second, tell})
	if err != nil {
		return err
	}
	st.Touch(a, b, all)
	for i, p := range chosen {
		reachesSurely(p, a, b)
		st.Set(picks[i].slot, p)
		st.Passes(a, picks[i].slot)
		st.Passes(b, picks[i].slot)
		st.Meet(a, b, crossing(a, b, p))
	}
	return nil
}

// meetCurves gives all meetings of two curves, straights taken whole.
func meetCurves(a, b *program.Curve) ([]geom.Point, error) {
	switch {
	case a.Straight != nil && b.Straight != nil:
		p, err := geom.MeetLines(a.Line(), b.Line())
		return []geom.Point{p}, err
	case a.Straight != nil:
		return geom.MeetLineCircle(a.Line(), *b.Circle, common(a, b))
	case b.Straight != nil:
		return geom.MeetLineCircle(b.Line(), *a.Circle, common(a, b))
	}
	return geom.MeetCircles(*a.Circle, *b.Circle, geom.Known{Common: common(a, b), Apart2: apart2(a, b)})
}

// apart2 is the square of the distance of two circles' centres where one of them
// is known to lie on the other circle, or nil.
func apart2(a, b *program.Curve) geom.Real {
	switch {
	case a.Knows(b.Circle.C):
		return a.Circle.R2
	case b.Knows(a.Circle.C):
		return b.Circle.R2
	}
	return nil
}

// common is a point that is known to lie on one curve and proves to lie on the
// other, or nil. Nearly always the floats rule a candidate out at once. Where formulas are
// kept, either meeting may be the one that is known, and so it is not used.
func common(a, b *program.Curve) *geom.Point {
	if a.On != nil && a.On[0].X.Field().KeepsFormulas() {
		return nil
	}
	for _, way := range [2][2]*program.Curve{{a, b}, {b, a}} {
		for i, p := range way[0].On {
			if mayLieOn(way[1], p) && on(way[1], p) {
				return &way[0].On[i]
			}
		}
	}
	return nil
}

// mayLieOn tells by floats, generously, whether it is worth asking if p lies on
// a curve. A point that it leaves out costs a root and no truth.
func mayLieOn(c *program.Curve, p geom.Point) bool {
	x, y := p.X.Near(), p.Y.Near()
	if c.Straight != nil {
		l := c.Straight.Line
		dx, dy := l.D.X.Near(), l.D.Y.Near()
		px, py := x-l.P.X.Near(), y-l.P.Y.Near()
		return math.Abs(dx*py-dy*px) <= 1e-6*math.Hypot(dx, dy)*(1+math.Hypot(px, py))
	}
	r2 := c.Circle.R2.Near()
	dx, dy := x-c.Circle.C.X.Near(), y-c.Circle.C.Y.Near()
	return math.Abs(dx*dx+dy*dy-r2) <= 1e-6*(1+r2)
}

// on tells whether p lies on a curve, a straight taken whole.
func on(c *program.Curve, p geom.Point) bool {
	if c.Knows(p) {
		return true
	}
	if c.Straight != nil {
		return c.Straight.Holds(p)
	}
	return c.Circle.Holds(p)
}

func noMeeting(err error, first, second curve) error {
	f := &program.Fault{Text: fmt.Sprintf("%s and %s do not meet: %s", first.text, second.text, err)}
	var why *geom.NoMeeting
	if errors.As(err, &why) {
		f.Help = why.Help
	}
	return f
}

// within keeps the points that both curves reach as drawn.
func within(ps []geom.Point, curves ...*program.Curve) []geom.Point {
	var out []geom.Point
	for _, p := range ps {
		good := true
		for _, c := range curves {
			good = good && (c.Straight == nil || c.Straight.Reaches(p))
		}
		if good {
			out = append(out, p)
		}
	}
	return out
}

func endsTooSoon(all []geom.Point, a *program.Curve, first, second curve) error {
	short := second
	if a.Straight != nil && len(within(all, a)) == 0 {
		short = first
	}
	return &program.Fault{
		Text: fmt.Sprintf("%s ends before it meets the other: they would meet at %s", short.text, placesOf(all)),
		Help: "produce " + short.text + " first, or use the whole line through its points",
	}
}

func placesOf(ps []geom.Point) string {
	var out []string
	for _, p := range ps {
		out = append(out, p.String())
	}
	return strings.Join(out, " and ")
}

// meetingFacts are what a message about a meeting needs.
type meetingFacts struct {
	first, second curve
	tell          []teller
}

// choose gives each name its meeting.
func choose(st *program.State, points []geom.Point, picks []pick, facts meetingFacts) ([]geom.Point, error) {
	if len(picks) > len(points) {
		return nil, &program.Fault{
			Text: fmt.Sprintf("%s and %s touch at %s: one meeting, and two names", facts.first.text, facts.second.text, points[0]),
			Help: "name it once",
		}
	}
	if len(picks) == 1 {
		return chooseOne(st, points, picks[0], facts)
	}
	straight, err := allows(st, points, picks[0], picks[1], points[0], points[1])
	if err != nil || straight {
		return points, err
	}
	crossed, err := allows(st, points, picks[0], picks[1], points[1], points[0])
	if err != nil || crossed {
		return []geom.Point{points[1], points[0]}, err
	}
	return nil, &program.Fault{Text: fmt.Sprintf("the meetings of %s and %s, %s, do not fit the phrases of %s and %s",
		facts.first.text, facts.second.text, placesOf(points), picks[0].name, picks[1].name)}
}

func allows(st *program.State, all []geom.Point, x, y pick, p, q geom.Point) (bool, error) {
	before := st.Field.Noted()
	ok, _, err := holdAll(st, x.conds, p, all)
	if err != nil || !ok {
		return false, err
	}
	ok, _, err = holdAll(st, y.conds, q, all)
	if !ok {
		st.Field.Forget(before)
	}
	return ok, err
}

func chooseOne(st *program.State, points []geom.Point, x pick, facts meetingFacts) ([]geom.Point, error) {
	var fit []geom.Point
	failed := ""
	for _, p := range points {
		ok, phrase, err := holdAll(st, x.conds, p, points)
		if err != nil {
			return nil, err
		}
		if ok {
			fit = append(fit, p)
		} else {
			failed = phrase
		}
	}
	switch len(fit) {
	case 1:
		return fit, nil
	case 0:
		return nil, &program.Fault{
			Text: fmt.Sprintf("%s and %s meet at %s, and none of these is %s", facts.first.text, facts.second.text, placesOf(points), failed),
			Help: facts.offer(st, x.name, points),
		}
	}
	help := fmt.Sprintf("name both, as in %[1]s and %[1]s'", x.name)
	if phrases := facts.offer(st, x.name, fit); phrases != "" {
		help = phrases + "; or name both"
	}
	return nil, &program.Fault{
		Text:    fmt.Sprintf("%s and %s meet at %s, and nothing says which is %s", facts.first.text, facts.second.text, placesOf(fit), x.name),
		Help:    help,
		Unclear: fmt.Sprintf("%s and %s meet twice, and nothing says which is %s", facts.first.text, facts.second.text, x.name),
	}
}

// crossing is the sine of the angle at which two curves meet in p, roughly.
func crossing(a, b *program.Curve, p geom.Point) float64 {
	ux, uy := heading(a, p)
	vx, vy := heading(b, p)
	return abs(ux*vy - uy*vx)
}
