package geom

import "fmt"

// NoMeeting says why two curves have no meeting. Its text is the fact; Help is
// what would mend it, and may be empty.
type NoMeeting struct{ Fact, Help string }

// Error is the fact.
func (e *NoMeeting) Error() string { return e.Fact }

// MeetLines gives the meeting of two lines.
func MeetLines(l, m Line) (Point, error) {
	d := l.D.Cross(m.D)
	if d.IsZero() {
		if l.Holds(m.P) {
			return Point{}, &NoMeeting{Fact: "they are one and the same line"}
		}
		return Point{}, &NoMeeting{Fact: "the lines are parallel"}
	}
	return l.P.Add(l.D.Scale(m.P.Sub(l.P).Cross(m.D).Div(d))), nil
}

// MeetLineCircle gives the meetings in the order along l: two, or one where
// the line touches. common, when known, is one of them; the other is then its
// mirror image, without a root.
func MeetLineCircle(l Line, c Circle, common *Point) ([]Point, error) {
	w := c.C.Sub(l.P)
	d2 := l.D.Norm2()
	side := l.D.Cross(w)
	disc := c.R2.Mul(d2).Sub(side.Mul(side))
	foot := l.P.Add(l.D.Scale(w.Dot(l.D).Div(d2)))
	switch disc.Sign() {
	case -1:
		return nil, tooFar(side, d2, c)
	case 0:
		return []Point{foot}, nil
	}
	if common != nil {
		other := foot.Add(foot.Sub(*common))
		return Ordered(*common, other, other.Sub(*common).Dot(l.D)), nil
	}
	return eachWay(foot, l.D.Scale(disc.EitherSqrt().Div(d2))), nil
}

// Ordered is two points, p first if x is positive, else q. A field that keeps formulas gets one of
// both orders.
func Ordered(p, q Point, x Real) []Point {
	if x.Field().KeepsFormulas() {
		step := p.Sub(q).Scale(x.Div(x.Abs()).Div(x.Field().Int(2)))
		return eachWay(p.Add(q.Sub(p).Scale(x.Field().Int(1).Div(x.Field().Int(2)))), step.Neg())
	}
	if x.Sign() > 0 {
		return []Point{p, q}
	}
	return []Point{q, p}
}

// eachWay is the points at a step before and after another.
func eachWay(p Point, step Vector) []Point { return []Point{p.Add(step.Neg()), p.Add(step)} }

func tooFar(side, d2 Real, c Circle) error {
	dist, r := side.Abs().Div(d2.Sqrt()), c.R2.Sqrt()
	far, radius := versus(dist, r)
	help := "to more than " + far
	if far != Show(dist) {
		help = "by more than " + Show(dist.Sub(r))
	}
	return &NoMeeting{
		Fact: fmt.Sprintf("the centre is %s from the line and the radius is only %s", far, radius),
		Help: "open the compasses " + help,
	}
}

// Known is what is known of two circles beforehand; it saves roots and
// divisions, and each part may be nil.
type Known struct {
	Common *Point // one of their meetings
	Apart2 Real   // the square of their centres' distance
}

// MeetCircles gives the meetings of two circles, first the one to the left of
// the way from c's centre to d's: two, or one where they touch. Of two, the
// second is the mirror image of the first in the way.
func MeetCircles(c, d Circle, known Known) ([]Point, error) {
	way, d2 := d.C.Sub(c.C), known.Apart2
	if d2 == nil {
		d2 = way.Norm2()
	}
	if d2.IsZero() {
		if c.R2.Equal(d.R2) {
			return nil, &NoMeeting{Fact: "they are one and the same circle"}
		}
		return nil, &NoMeeting{Fact: "they have one centre and different radii"}
	}
	a := d2.Add(c.R2).Sub(d.R2)
	disc := d2.Mul(c.R2).MulInt(4).Sub(a.Mul(a))
	two := d2.MulInt(2)
	foot := c.C.Add(way.Scale(a.Div(two)))
	switch disc.Sign() {
	case -1:
		return nil, circlesApart(c, d, d2)
	case 0:
		return []Point{foot}, nil
	}
	if p := known.Common; p != nil {
		other := foot.Add(foot.Sub(*p))
		return Ordered(*p, other, (Line{c.C, way}).Across(*p)), nil
	}
	return eachWay(foot, way.Left().Scale(disc.EitherSqrt().Div(two)).Neg()), nil
}

func circlesApart(c, d Circle, d2 Real) error {
	dist, r, s := d2.Sqrt(), c.R2.Sqrt(), d.R2.Sqrt()
	if dist.Cmp(r.Add(s)) > 0 {
		far, reach := versus(dist, r.Add(s))
		return &NoMeeting{
			Fact: fmt.Sprintf("the centres are %s apart and the radii add up to %s", far, reach),
			Help: fmt.Sprintf("open one arc by more than %s", Show(dist.Sub(r).Sub(s))),
		}
	}
	gap := r.Sub(s).Abs()
	far, reach := versus(dist, gap)
	return &NoMeeting{
		Fact: fmt.Sprintf("one circle lies inside the other: the centres are %s apart and the radii differ by %s", far, reach),
		Help: fmt.Sprintf("close the wider one by more than %s, or open the narrower one", Show(gap.Sub(dist))),
	}
}

// LineTouches tells whether l is a tangent of c.
func LineTouches(l Line, c Circle) bool {
	side := l.D.Cross(c.C.Sub(l.P))
	return side.Mul(side).Equal(c.R2.Mul(l.D.Norm2()))
}

// CirclesTouch tells how c and d touch: 1 from outside, -1 one inside the
// other, 0 not at all.
func CirclesTouch(c, d Circle) int {
	d2 := Dist2(c.C, d.C)
	if d2.IsZero() {
		return 0
	}
	a := d2.Sub(c.R2).Sub(d.R2)
	if !a.Mul(a).Equal(c.R2.Mul(d.R2).MulInt(4)) {
		return 0
	}
	return a.Sign()
}
