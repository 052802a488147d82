package check

import (
	"fmt"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// stepOff sets off equal openings along a straight or round a circle. A named
// family keeps the start apart: P[1 to 6] are the six points after A.
func (s *scope) stepOff(o *syntax.StepOff) {
	on, ok1 := s.curve(o.On)
	start, ok2 := s.point(o.From)
	names, ok3 := s.familyRef(o.Points)
	square, ok4 := s.opening(&o.Opening, o.Node, start, "the step")
	towards, ok5 := -1, true
	if o.Towards != nil {
		towards, ok5 = s.point(o.Towards)
	}
	var slots []int
	for _, name := range names {
		slot := s.declare(name, program.Point, o.Points.Node)
		s.draw(slot, figure.Construction)
		slots = append(slots, slot)
	}
	if !ok1 || !ok2 || !ok3 || !ok4 || !ok5 {
		return
	}
	s.opens(&o.Opening, start)
	if o.Opening.Any {
		s.shareOut(len(slots))
	}
	ticks := make([]int, len(slots))
	for i := range ticks {
		ticks[i] = s.add(program.Circle, o.Node)
		s.draw(ticks[i], figure.Construction)
		s.c.hand.swing(append([]int{start}, slots...)[i])
	}
	s.emit(o.Node, func(st *program.State) error {
		return stepAlong(st, on, start, towards, slots, ticks, square)
	})
}

// shareOut makes the latest opening left to chance so small that so many of
// them go into a figure.
func (s *scope) shareOut(steps int) {
	in := s.c.prog.Inputs[len(s.c.prog.Inputs)-1]
	if share := rat(7, int64(steps)); share.Cmp(in.Default) < 0 {
		in.Default = share
	}
}

// familyRef is the names of a family of points or of one.
func (s *scope) familyRef(r *syntax.Ref) ([]string, bool) {
	if r.Name != "" || len(r.Points) != 1 {
		s.fail(r.Node, "a family of points is wanted here").Help = "such as P[1 to 4]"
		return nil, false
	}
	return s.family(r.Points[0].Name, r.Points[0].Index)
}

func stepAlong(st *program.State, way curve, start, towards int, slots, ticks []int, square func(*program.State) (geom.Real, error)) error {
	c, err := way.value(st)
	if err != nil {
		return err
	}
	p := st.Point(start)
	if !on(c, p) {
		return &program.Fault{Text: fmt.Sprintf("%s does not lie on %s", st.Program.Slots[start].Name, way.text),
			Help: "step off from a point of " + way.text}
	}
	r2, err := square(st)
	if err != nil {
		return err
	}
	c.On = append(c.On, p)
	round := turns{circle: c.Circle, start: p}
	var back *geom.Point // the point before p, which the next step must leave behind
	for i, slot := range slots {
		var next geom.Point
		if round.circle != nil && i > 0 {
			next = round.after(i + 1)
		} else if next, err = oneStep(st, c, way, p, r2, back, towards); err != nil {
			return err
		}
		round.first(next)
		arc := &program.Curve{Circle: &geom.Circle{C: p, R2: r2}}
		st.Set(slot, next)
		st.Passes(arc, slot)
		st.Passes(c, slot)
		st.Set(ticks[i], arc)
		prev := p
		back, p = &prev, next
	}
	return nil
}

// turns are equal steps round a circle. The point after n steps is the start
// turned by the n-th power of the first turn, by squaring, so that what is claimed
// of the last of many steps costs as much as a few.
type turns struct {
	circle *geom.Circle
	start  geom.Point
	powers map[int]geom.Vector
}

// first sets the first turn by where it leads, once.
func (t *turns) first(p geom.Point) {
	if t.circle == nil || t.powers != nil {
		return
	}
	u, v := t.start.Sub(t.circle.C), p.Sub(t.circle.C)
	t.powers = map[int]geom.Vector{1: {X: u.Dot(v).Div(t.circle.R2), Y: u.Cross(v).Div(t.circle.R2)}}
}

// after is the point after n steps.
func (t *turns) after(n int) geom.Point {
	z := t.power(n)
	return t.circle.C.Add(t.start.Sub(t.circle.C).Turn(z.X, z.Y))
}

func (t *turns) power(n int) geom.Vector {
	if z, known := t.powers[n]; known {
		return z
	}
	half := t.power(n / 2)
	z := half.Turn(half.X, half.Y)
	if n%2 == 1 {
		z = z.Turn(t.powers[1].X, t.powers[1].Y)
	}
	t.powers[n] = z
	return z
}

// oneStep is the next point after p along a straight, or the first round a circle,
// anticlockwise, or towards a point where the source says so.
func oneStep(st *program.State, c *program.Curve, way curve, p geom.Point, r2 geom.Real, back *geom.Point, towards int) (geom.Point, error) {
	if c.Straight != nil {
		if back != nil {
			return p.Add(p.Sub(*back)), nil
		}
		l, err := way.whole(st)
		if err != nil {
			return p, err
		}
		direction := l.D
		if towards >= 0 && !st.Point(towards).Equal(p) {
			direction = st.Point(towards).Sub(p)
		}
		return geom.Along(p, direction, r2.Sqrt()), nil
	}
	arc := geom.Circle{C: p, R2: r2}
	points, err := meetCurves(c, &program.Curve{Circle: &arc})
	if err != nil {
		return p, tooWide(way.text, *c.Circle, r2)
	}
	if towards >= 0 && len(points) > 1 && geom.Dist2(points[1], st.Point(towards)).Sub(geom.Dist2(points[0], st.Point(towards))).Choice() < 0 {
		return points[1], nil
	}
	return points[0], nil
}

// tooWide is a step that is longer than the circle is across.
func tooWide(name string, k geom.Circle, r2 geom.Real) error {
	across := geom.Show(k.R2.MulInt(4).Sqrt())
	return &program.Fault{
		Text: fmt.Sprintf("the opening is %s, and %s is only %s across", geom.Show(r2.Sqrt()), name, across),
		Help: "open the compasses to " + across + " or less",
	}
}
