package warn

import (
	"math"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
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
	turn := math.Asin(min(1, math.Abs(s.dx*t.dy-s.dy*t.dx))) * 180 / math.Pi
	if away > nearDot || away > nearLine && turn > clumsyAngle || v.Sub(a).Dot(b.Sub(v)).Float() <= 0 || !surely(func() bool { return side.Side(v) != 0 }) {
		return false
	}
	if !f.joined(from, to) {
		f.looks(f.span(at), []int{from, at, to}, otherMeasurements,
			"%s looks as if it were on the straight from %s to %s and is %s mm off", f.name(at), f.name(from), f.name(to), little(away))
		f.explains(from, at, to)
	}
	return true
}

// bends are joins that go on from each other nearly straight.
func (f *finder) bends() {
	for i, s := range f.straights {
		for _, t := range f.straights[:i] {
			f.bend(t, s)
		}
	}
}

// nearlyInLine are three given points that look as if they were in one line, where no
// straight leads from them that would show it.
func (f *finder) nearlyInLine() {
	var given []point
	for _, p := range f.points {
		if f.st.Program.Slots[p.slot].Ink.Role == figure.Given && len(given) < mostInLine && !f.onStraight(p) {
			given = append(given, p)
		}
	}
	for i, p := range given {
		for j, q := range given[:i] {
			for _, r := range given[:j] {
				f.inLine(r, q, p)
			}
		}
	}
}

// onStraight tells whether a straight goes through a point.
func (f *finder) onStraight(p point) bool {
	return slices.ContainsFunc(f.straights, func(s straight) bool { return math.Abs((p.x-s.x)*s.dy-(p.y-s.y)*s.dx) < onCurve })
}

// mostInLine is how many given points are looked at for that.
const mostInLine = 12

// inLine looks at three points, which may stand in any order along their line.
func (f *finder) inLine(ps ...point) {
	for i, p := range ps {
		q, r := ps[(i+1)%3], ps[(i+2)%3]
		dx, dy := r.x-q.x, r.y-q.y
		d := math.Hypot(dx, dy)
		away, along := math.Abs(dx*(p.y-q.y)-dy*(p.x-q.x))/d, (dx*(p.x-q.x)+dy*(p.y-q.y))/d
		if away > nearDot || along < shortJoin || along > d-shortJoin {
			continue
		}
		if surely(func() bool { return geom.Through(f.point(q.slot), f.point(r.slot)).Side(f.point(p.slot)) != 0 }) {
			f.looks(f.span(ps[2].slot), []int{p.slot, q.slot, r.slot}, otherMeasurements,
				"%s looks as if it were on the straight from %s to %s and is %s mm off", p.name, q.name, r.name, little(away))
			f.explains(p.slot, q.slot, r.slot)
		}
	}
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
			if away < nearDot && surely(func() bool { return f.circle(c).Side(f.point(p.slot)) != 0 }) {
				f.looks(f.later(p.slot, c.slot), []int{p.slot, c.slot}, otherMeasurements, "%s looks as if it were on %s and is %s mm off", p.name, f.called(c), little(away))
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
			if away < nearTouch && s.alongside(foot) && !f.meetAtPoint(s, c) && surely(func() bool { return !geom.LineTouches(f.line(s), f.circle(c)) }) {
				f.warnTouch(s.slot, c.slot, s.name, f.called(c), away)
			}
		}
		for _, d := range f.circles[:i] {
			apart := math.Hypot(c.x-d.x, c.y-d.y)
			away := min(math.Abs(apart-c.r-d.r), math.Abs(apart-math.Abs(c.r-d.r)))
			if away < nearTouch && apart > nearPoint && surely(func() bool { return geom.CirclesTouch(f.circle(d), f.circle(c)) == 0 }) {
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
					f.looks(f.later(s.slot, c.slot), []int{s.slot, c.slot}, otherMeasurements, "%s looks as if it touched %s at %s and is %s° off", s.name, f.called(c), f.name(end), little(off))
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
	f.looks(f.later(a, b), []int{a, b}, otherMeasurements, "%s and %s look as if they touched and are %s mm off", first, second, little(away))
}

func (f *finder) circle(c circle) geom.Circle { return *f.st.Values[c.slot].(*program.Curve).Circle }

// called is what the reader calls a circle.
func (f *finder) called(c circle) string {
	if c.name == "" {
		return "the circle"
	}
	return c.name
}

// nearlyOneSize are whole circles that look of one size.
func (f *finder) nearlyOneSize() {
	for i, c := range f.circles {
		for _, b := range f.circles[:i] {
			off := math.Abs(c.r - b.r)
			if off > nearSize*max(c.r, b.r) || !surely(func() bool { return !f.circle(b).R2.Equal(f.circle(c).R2) }) {
				continue
			}
			f.looks(f.later(c.slot, b.slot), []int{c.slot, b.slot}, otherMeasurements,
				"%s and %s look of one size and are not: their radii differ by %s mm", f.called(b), f.called(c), little(off))
		}
	}
}
