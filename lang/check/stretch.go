package check

import (
	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// stretch draws lines as far as a claim that holds speaks of them: to the point
// that lies on one, where a circle touches it, where they all meet. Without
// that a theorem is stated of a place that its line does not reach.
func (s *scope) stretch(r *syntax.Relation) func(*program.State) {
	if s.view != shown || s.depth > 0 || r.Not {
		return func(*program.State) {}
	}
	switch {
	case r.Collinear != nil:
		return s.stretchAlong(r.Collinear)
	case len(r.Concurrent) > 0:
		return s.stretchToMeeting(r.Concurrent)
	case r.Touches != nil:
		return s.stretchToTouch(plainRef(r.Left), r.Touches.What)
	case r.On != nil:
		return s.stretchToPoint(plainRef(r.Left), r.On)
	}
	return func(*program.State) {}
}

// open is a line or a ray, as far as a reference names one that is drawn.
func (s *scope) open(r *syntax.Ref) (slot int, ok bool) {
	if r == nil {
		return 0, false
	}
	slot, ok = s.quietCurve(r)
	return slot, ok && s.slot(slot).Kind == program.Line && s.slot(slot).Ink != nil
}

// reachTo draws the line of a slot as far as p, unless it ends before.
func reachTo(st *program.State, slot int, p geom.Point) {
	if c, ok := st.Value(slot).(*program.Curve); ok && c.Straight.Reaches(p) {
		c.Used = append(c.Used, p)
	}
}

func (s *scope) stretchAlong(r *syntax.Ref) func(*program.State) {
	ps, _ := s.distinct(r, 0)
	lines := s.openLines()
	return func(st *program.State) {
		pts := st.Points(ps)
		for _, slot := range lines {
			c, ok := st.Value(slot).(*program.Curve)
			if !ok || !knowsTwo(c, pts) {
				continue
			}
			for _, p := range pts {
				reachTo(st, slot, p)
			}
		}
	}
}

// knowsTwo tells that a curve was drawn through two of the points.
func knowsTwo(c *program.Curve, pts []geom.Point) bool {
	known := 0
	for _, p := range pts {
		if c.Knows(p) {
			known++
		}
	}
	return known >= 2
}

// openLines are the lines of the scope that are drawn.
func (s *scope) openLines() (slots []int) {
	for _, slot := range s.names {
		if sl := s.slot(slot); sl.Kind == program.Line && sl.Ink != nil {
			slots = append(slots, slot)
		}
	}
	return slots // each is stretched by itself: their order is of no account
}

func (s *scope) stretchToMeeting(refs []*syntax.Ref) func(*program.State) {
	var all []curve
	for _, r := range refs {
		l, ok := s.line(r)
		if !ok {
			return func(*program.State) {}
		}
		all = append(all, l)
	}
	return func(st *program.State) {
		a, err1 := all[0].whole(st)
		b, err2 := all[1].whole(st)
		if err1 != nil || err2 != nil {
			return
		}
		p, err := geom.MeetLines(a, b)
		if err != nil {
			return
		}
		for _, r := range refs {
			if slot, ok := s.open(r); ok {
				reachTo(st, slot, p)
			}
		}
	}
}

func (s *scope) stretchToTouch(a, b *syntax.Ref) func(*program.State) {
	line, ok := s.open(b)
	round := a
	if !ok {
		line, ok = s.open(a)
		round = b
	}
	k, isCurve := s.curve(round)
	if !ok || !isCurve || !k.circle {
		return func(*program.State) {}
	}
	return func(st *program.State) {
		c, err := k.value(st)
		l, drawn := st.Value(line).(*program.Curve)
		if err == nil && drawn {
			reachTo(st, line, l.Line().Foot(c.Circle.C))
		}
	}
}

func (s *scope) stretchToPoint(point, on *syntax.Ref) func(*program.State) {
	line, ok := s.open(on)
	p, named := s.point(point)
	if !ok || !named {
		return func(*program.State) {}
	}
	return func(st *program.State) { reachTo(st, line, st.Point(p)) }
}
