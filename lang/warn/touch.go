package warn

import (
	"math"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
)

const otherMeasurements = "choose other measurements"

// shortJoin is the length in millimetres below which a join may be one of many
// that make a curve.
const shortJoin = 10.0

// bend tells whether two joins with a common end go on from each other nearly
// straight, and warns of it, unless the straight past their end is drawn too: then
// the end lies beside that.
func (f *finder) bend(s, t straight) bool {
	from, at, to, ok := f.through(s, t)
	if !ok || min(s.length, t.length) < shortJoin {
		return false
	}
	a, v, b := f.point(from), f.point(at), f.point(to)
	if a.Equal(b) {
		return false
	}
	side := geom.Through(a, b)
	away := math.Abs(side.D.Cross(v.Sub(a)).Float()) / math.Sqrt(side.D.Norm2().Float()) * f.mm
	if away > nearLine || v.Sub(a).Dot(b.Sub(v)).Float() <= 0 || !surely(func() bool { return side.Side(v) != 0 }) {
		return false
	}
	if !f.joined(from, to) {
		f.warn(f.st.Program.Slots[at].Span, otherMeasurements,
			"%s looks as if it were on the straight from %s to %s and is %s mm off", f.name(at), f.name(from), f.name(to), little(away))
	}
	return true
}

// through gives the ends of two joins, the common one in the middle.
func (f *finder) through(s, t straight) (from, at, to int, ok bool) {
	switch {
	case !f.meet(s, t) || s.length == 0 || t.length == 0:
		return 0, 0, 0, false
	case s.a == t.a:
		return s.b, s.a, t.b, true
	case s.a == t.b:
		return s.b, s.a, t.a, true
	case s.b == t.a:
		return s.a, s.b, t.b, true
	}
	return s.a, s.b, t.a, true
}

// joined tells whether the straight through two points is drawn.
func (f *finder) joined(a, b int) bool {
	for _, s := range f.straights {
		if s.a == a && s.b == b || s.a == b && s.b == a {
			return true
		}
	}
	return false
}

// nearlyOnCircles are points that look as if a circle went through them.
func (f *finder) nearlyOnCircles() {
	for _, c := range f.circles {
		for _, p := range f.points {
			away := math.Abs(math.Hypot(p.x-c.x, p.y-c.y) - c.r)
			if away < nearLine && surely(func() bool { return f.circle(c).Side(f.point(p.slot)) != 0 }) {
				f.warn(f.later(p.slot, c.slot), otherMeasurements, "%s looks as if it were on %s and is %s mm off", p.name, f.called(c), little(away))
			}
		}
	}
}

// nearlyTouching are straights and circles that look as if they touched a circle.
func (f *finder) nearlyTouching() {
	for i, c := range f.circles {
		for _, s := range f.straights {
			along := (c.x-s.x)*s.dx + (c.y-s.y)*s.dy
			away := math.Abs(math.Abs((c.x-s.x)*s.dy-(c.y-s.y)*s.dx) - c.r)
			foot := point{x: s.x + along*s.dx, y: s.y + along*s.dy}
			if away < nearLine && s.alongside(foot) && !f.meetAtPoint(s, c) && surely(func() bool { return !geom.LineTouches(f.line(s), f.circle(c)) }) {
				f.warnTouch(s.slot, c.slot, s.name, f.called(c), away)
			}
		}
		for _, d := range f.circles[:i] {
			apart := math.Hypot(c.x-d.x, c.y-d.y)
			away := min(math.Abs(apart-c.r-d.r), math.Abs(apart-math.Abs(c.r-d.r)))
			if away < nearLine && apart > nearPoint && surely(func() bool { return geom.CirclesTouch(f.circle(d), f.circle(c)) == 0 }) {
				f.warnTouch(d.slot, c.slot, f.called(d), f.called(c), away)
			}
		}
	}
}

// nearlyTangent are straights through a named point of a circle that look as if they
// touched it there.
func (f *finder) nearlyTangent() {
	for _, c := range f.circles {
		for _, s := range f.straights {
			for _, end := range []int{s.a, s.b} {
				off, on := f.slant(s, c, end)
				if on && off < f.near && surely(func() bool { return !geom.LineTouches(f.line(s), f.circle(c)) }) {
					f.warn(f.later(s.slot, c.slot), otherMeasurements, "%s looks as if it touched %s at %s and is %s° off", s.name, f.called(c), f.name(end), little(off))
				}
			}
		}
	}
}

// slant is by how many degrees a straight is turned from the tangent at an end of it, if
// that is on the circle.
func (f *finder) slant(s straight, c circle, end int) (degrees float64, on bool) {
	if end < 0 {
		return 0, false
	}
	x, y := f.point(end).X.Float()*f.mm-c.x, f.point(end).Y.Float()*f.mm-c.y
	return math.Asin(min(1, math.Abs(x*s.dx+y*s.dy)/c.r)) * 180 / math.Pi, math.Abs(math.Hypot(x, y)-c.r) < onCurve
}

// onCurve is how far off in millimetres a point may be computed that is on a curve.
const onCurve = 0.001

// meetAtPoint tells whether the reader sees a point where a straight meets a circle.
func (f *finder) meetAtPoint(s straight, c circle) bool {
	for _, p := range f.points {
		if math.Abs((p.x-s.x)*s.dy-(p.y-s.y)*s.dx) < onCurve && math.Abs(math.Hypot(p.x-c.x, p.y-c.y)-c.r) < onCurve {
			return true
		}
	}
	return false
}

func (f *finder) warnTouch(a, b int, first, second string, away float64) {
	f.warn(f.later(a, b), otherMeasurements, "%s and %s look as if they touched and are %s mm off", first, second, little(away))
}

func (f *finder) circle(c circle) geom.Circle { return *f.st.Values[c.slot].(*program.Curve).Circle }

// called is what the reader calls a circle.
func (f *finder) called(c circle) string {
	if c.name == "" {
		return "the circle"
	}
	return c.name
}

// later is the place of that one of two things which was made last.
func (f *finder) later(a, b int) source.Span {
	s, t := f.st.Program.Slots[a].Span, f.st.Program.Slots[b].Span
	if s.File != f.st.Program.Source || t.File == s.File && t.Start > s.Start {
		return t
	}
	return s
}

// nearlyOneSize are whole circles that look of one size.
func (f *finder) nearlyOneSize() {
	for i, c := range f.circles {
		for _, b := range f.circles[:i] {
			off := math.Abs(c.r - b.r)
			if off > nearSize*max(c.r, b.r) || !surely(func() bool { return !f.circle(b).R2.Equal(f.circle(c).R2) }) {
				continue
			}
			f.warn(f.later(c.slot, b.slot), otherMeasurements,
				"%s and %s look of one size and are not: their radii differ by %s mm", f.called(b), f.called(c), little(off))
		}
	}
}
