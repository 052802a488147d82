package warn

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/program"
)

// most is how many things of a kind are compared with each other.
const most = 60

// collect gathers what the reader sees, in the order of the source.
func (f *finder) collect() {
	for i, s := range f.st.Program.Slots {
		if !seen(s) {
			continue
		}
		switch v := f.st.Values[i].(type) {
		case geom.Point:
			if s.Name != "" && len(f.points) < most {
				f.points = append(f.points, point{v.X.Float() * f.mm, v.Y.Float() * f.mm, i, s.Name})
			}
		case *program.Curve:
			if v.Straight != nil && len(f.straights) < most {
				if t := f.straightOf(i, v.Straight); t.length == 0 || !f.joined(t.a, t.b) {
					f.straights = append(f.straights, t) // a join of a given shape's side shows nothing new
				}
			}
			if v.Circle != nil && s.Ink.Whole && len(f.circles) < most {
				c := v.Circle
				f.circles = append(f.circles, circle{i, s.Name, c.C.X.Float() * f.mm, c.C.Y.Float() * f.mm, math.Sqrt(c.R2.Float()) * f.mm})
			}
		}
	}
}

func (f *finder) straightOf(slot int, s *geom.Straight) straight {
	out := straight{slot: slot, name: f.st.Program.Slots[slot].Name, x: s.P.X.Float() * f.mm, y: s.P.Y.Float() * f.mm, a: -1, b: -1}
	dx, dy := s.D.X.Float(), s.D.Y.Float()
	n := math.Hypot(dx, dy)
	out.dx, out.dy = dx/n, dy/n
	if s.Start != nil && s.End != nil {
		out.length = geom.Dist(*s.Start, *s.End).Float() * f.mm
	}
	out.lo, out.hi = math.Inf(-1), math.Inf(1)
	if p := s.Start; p != nil {
		out.lo = out.along(p.X.Float()*f.mm, p.Y.Float()*f.mm)
	}
	if p := s.End; p != nil {
		out.hi = out.along(p.X.Float()*f.mm, p.Y.Float()*f.mm)
	}
	if ends := f.st.Program.Slots[slot].Between; ends != nil {
		out.a, out.b = ends[0], ends[1]
		if out.name == "" {
			out.name = f.name(ends[0]) + f.name(ends[1])
		}
	}
	return out
}

func (f *finder) name(slot int) string { return f.st.Program.Slots[slot].Name }

func (f *finder) point(slot int) geom.Point { return f.st.Values[slot].(geom.Point) }

// twins are two points nearly in one place.
func (f *finder) twins() {
	for i, p := range f.points {
		for _, q := range f.points[:i] {
			d := math.Hypot(p.x-q.x, p.y-q.y)
			if d < f.apart && surely(func() bool { return !f.point(p.slot).Equal(f.point(q.slot)) }) {
				f.looks(f.span(p.slot), []int{p.slot, q.slot}, "move one of them, or choose other measurements",
					"%s and %s look like one point and are %s mm apart", q.name, p.name, little(d))
				f.explains(p.slot, q.slot)
			}
		}
	}
}

// falseAppearances are what looks equal, at right angles, parallel, in line or
// through one point, and is not.
func (f *finder) falseAppearances() {
	f.nearlyOnStraights()
	f.bends()
	f.nearlyInLine()
	for i, s := range f.straights {
		for _, t := range f.straights[:i] {
			f.compareLengths(t, s)
			f.compareDirections(t, s)
		}
	}
	f.nearlyConcurrent()
	f.nearlyOnCircles()
	f.nearlyTouching()
	f.nearlyTangent()
	f.nearlyOneSize()
	f.nearlyHalved()
	f.nearlyBisected()
}

// directions are what looks at right angles or parallel, and is not.
func (f *finder) directions() {
	for i, s := range f.straights {
		for _, t := range f.straights[:i] {
			f.compareDirections(t, s)
		}
	}
}

// little writes a distance that is small, but not 0.
func little(x float64) string {
	switch {
	case x < 0.001:
		return "less than 0.001"
	case x < 0.1:
		return strconv.FormatFloat(x, 'g', 2, 64)
	}
	return fmt.Sprintf("%.2f", x)
}

func (f *finder) compareLengths(s, t straight) {
	if s.length == 0 || t.length == 0 || s.a < 0 || t.a < 0 || math.Abs(s.length-t.length) > nearSize*math.Max(s.length, t.length) {
		return
	}
	a, b := geom.Dist2(f.point(s.a), f.point(s.b)), geom.Dist2(f.point(t.a), f.point(t.b))
	if !surely(func() bool { return !a.Equal(b) }) {
		return
	}
	f.looks(f.span(t.slot), []int{s.slot, t.slot}, otherMeasurements,
		"%s and %s look equal and are not: they differ by %s mm", s.name, t.name, little(math.Abs(s.length-t.length)))
}

// compareDirections looks at straights that share an end, or one of which ends on the
// other, for a right angle, and at all others for parallels.
func (f *finder) compareDirections(s, t straight) {
	cross, dot := math.Abs(s.dx*t.dy-s.dy*t.dx), math.Abs(s.dx*t.dx+s.dy*t.dy)
	limit := math.Sin(f.near * math.Pi / 180)
	sl, tl := f.line(s), f.line(t)
	at, about := f.span(t.slot), []int{s.slot, t.slot}
	switch {
	case f.drawnBefore(s) || f.drawnBefore(t):
	case dot < limit && (f.meet(s, t) || f.abuts(s, t) || f.abuts(t, s)) && surely(func() bool { return !geom.Perpendicular(sl, tl) }):
		f.looks(at, about, otherMeasurements,
			"%s and %s look perpendicular and are %s° off", s.name, t.name, little(math.Asin(dot)*180/math.Pi))
	case f.bend(s, t):
	case cross < limit && surely(func() bool { return !geom.Parallel(sl, tl) }):
		f.looks(at, about, otherMeasurements,
			"%s and %s look parallel and are %s° off", s.name, t.name, little(math.Asin(cross)*180/math.Pi))
	}
}

func (f *finder) line(s straight) geom.Line {
	return f.st.Values[s.slot].(*program.Curve).Line()
}

// drawnBefore tells whether a straight goes through the points of another that was
// compared in its place.
func (f *finder) drawnBefore(s straight) bool {
	return s.a >= 0 && slices.ContainsFunc(f.straights, func(t straight) bool {
		return t.slot < s.slot && (t.a == s.a && t.b == s.b || t.a == s.b && t.b == s.a)
	})
}

// meet tells whether two straights share an end.
func (f *finder) meet(s, t straight) bool {
	return s.a >= 0 && t.a >= 0 && (s.a == t.a || s.a == t.b || s.b == t.a || s.b == t.b)
}

// abuts tells whether a straight ends on another one.
func (f *finder) abuts(s, t straight) bool {
	for _, end := range []int{s.a, s.b} {
		if end < 0 {
			continue
		}
		x, y := f.point(end).X.Float()*f.mm, f.point(end).Y.Float()*f.mm
		if math.Abs((x-t.x)*t.dy-(y-t.y)*t.dx) < onCurve && t.alongside(point{x: x, y: y}) {
			return true
		}
	}
	return false
}

// nearlyOnStraights are points that look as if a straight went through them.
func (f *finder) nearlyOnStraights() {
	for _, p := range f.points {
		for _, s := range f.straights {
			away := math.Abs((p.x-s.x)*s.dy - (p.y-s.y)*s.dx)
			if away > nearDot || !s.alongside(p) {
				continue
			}
			if surely(func() bool { return f.line(s).Side(f.point(p.slot)) != 0 }) {
				f.looks(f.span(p.slot), []int{p.slot, s.slot}, otherMeasurements,
					"%s looks as if it were on %s and is %s mm off", p.name, s.name, little(away))
				f.explains(p.slot, s.slot)
			}
		}
	}
}

// along is how far a place lies along a straight.
func (s straight) along(x, y float64) float64 { return (x-s.x)*s.dx + (y-s.y)*s.dy }

// alongside tells whether the foot of p on s lies on its drawn part, clear of its ends.
func (s straight) alongside(p point) bool {
	at := s.along(p.x, p.y)
	return at > s.lo+nearPoint && at < s.hi-nearPoint
}

// nearlyConcurrent are three straights that look as if they met in one point
// where the file names none.
func (f *finder) nearlyConcurrent() {
	n := min(len(f.straights), 20)
	for i := range n {
		for j := range i {
			x, y, ok := crossing(f.straights[i], f.straights[j])
			if !ok {
				continue
			}
			for k := range j {
				f.third(f.straights[k], f.straights[j], f.straights[i], x, y)
			}
		}
	}
}

func (f *finder) third(s, t, u straight, x, y float64) {
	away := math.Abs((x-s.x)*s.dy - (y-s.y)*s.dx)
	here := point{x: x, y: y}
	if away > nearLine || !s.alongside(here) || !t.alongside(here) || !u.alongside(here) {
		return
	}
	passes := func() bool {
		p, err := geom.MeetLines(f.line(t), f.line(u))
		return err == nil && f.line(s).Side(p) != 0
	}
	if !surely(passes) {
		return
	}
	f.looks(f.span(u.slot), []int{s.slot, t.slot, u.slot}, otherMeasurements,
		"%s, %s and %s look as if they met in one point: %s passes %s mm from the others' meeting", s.name, t.name, u.name, s.name, little(away))
}

// crossing is where two straights cross, when they do so at 10° or more.
func crossing(s, t straight) (x, y float64, ok bool) {
	d := s.dx*t.dy - s.dy*t.dx
	if math.Abs(d) < 0.17 {
		return 0, 0, false
	}
	k := ((t.x-s.x)*t.dy - (t.y-s.y)*t.dx) / d
	return s.x + k*s.dx, s.y + k*s.dy, true
}

// surely tells whether something is so; what the kernel cannot decide is not.
func surely(f func() bool) (so bool) { return exact.Try(func() { so = f() }) == nil && so }
