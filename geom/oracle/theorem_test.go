package oracle

import (
	"fmt"
	"testing"

	"trammel/geom"
)

// theorems hold of every figure of their kind; the last point of each may be
// moved a little, and then they do not.
var theorems = []struct {
	name string
	ask  func(s *sketch, moved func(mark) mark) question
}{
	{"the altitudes meet", altitudes},
	{"the nine-point circle", ninePoints},
	{"Euler's line", eulerLine},
	{"Simson's line", simson},
	{"Pascal", pascal},
	{"Pappus", pappus},
	{"Desargues", desargues},
	{"Feuerbach", feuerbach},
	{"Ptolemy", ptolemy},
	{"Napoleon", napoleon},
	{"radical axes", radicalAxes},
	{"Thales", thales},
	{"tangents are equal", tangents},
	{"the bisector divides", bisector},
}

// noRoom says why a draw has no room for its theorem.
type noRoom string

// corners are n points with coordinates of one or two surds.
func (s *sketch) corners(n int) (out []mark) {
	for range n {
		m := [2]*term{}
		for i := range m {
			m[i] = whole(s.between(-6, 6))
			if s.IntN(3) > 0 {
				r, _ := s.surd(1)
				m[i] = m[i].plus(r)
			}
		}
		out = append(out, s.mark(m[0], m[1]))
	}
	return out
}

func (w *world) along(a, b mark, t *term) mark {
	at := a.at.plus(a.at.to(b.at).times(t))
	return w.mark(at.x, at.y)
}

// met is the meeting of ab and cd, by both.
func (s *sketch) met(a, b, c, d mark) mark {
	p, err := geom.MeetLines(join(a, b), join(c, d))
	if err != nil {
		panic(noRoom(err.Error()))
	}
	return marked(p, crossing(a.at, b.at, c.at, d.at))
}

func footOf(a, b, c mark) mark {
	u := a.at.to(b.at)
	t := a.at.to(c.at).dot(u).over(u.norm2())
	return marked(join(a, b).Foot(c.p), a.at.plus(u.times(t)))
}

func midpoint(a, b mark) mark {
	return marked(geom.Midpoint(a.p, b.p), a.at.plus(b.at).times(fraction(1, 2)))
}

func centreOf(a, b, c mark) mark {
	circle, ok := geom.Circumcircle(a.p, b.p, c.p)
	if !ok {
		panic(noRoom("three points are on a line"))
	}
	return marked(circle.C, circling(a.at, b.at, c.at))
}

// second is where the line from a through b meets the circle about c through a
// again.
func second(a, b, c mark) mark {
	found, err := geom.MeetLineCircle(join(a, b), disc{c, a}.circle(), &a.p)
	u := a.at.to(b.at)
	t := u.dot(a.at.to(c.at)).times(whole(2)).over(u.norm2())
	if err != nil || len(found) != 2 {
		panic(noRoom("the line touches the circle"))
	}
	at := a.at.plus(u.times(t))
	if t.about > 0 {
		return marked(found[1], at)
	}
	return marked(found[0], at)
}

func onLine(name string, a, b, c mark) question {
	return isZero(name, a.at.to(b.at).cross(a.at.to(c.at)), func() bool { return geom.Collinear(a.p, b.p, c.p) })
}

func onCircle(name string, a, b, c, d mark) question {
	return isZero(name, concyclic(a.at, b.at, c.at, d.at), func() bool { return geom.Concyclic(a.p, b.p, c.p, d.p) })
}

func altitudes(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	h := moved(s.met(t[0], footOf(t[1], t[2], t[0]), t[1], footOf(t[0], t[2], t[1])))
	return isZero("", t[2].at.to(h.at).dot(t[0].at.to(t[1].at)), func() bool { return geom.Perpendicular(join(t[2], h), join(t[0], t[1])) })
}

func ninePoints(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	return onCircle("", midpoint(t[0], t[1]), midpoint(t[1], t[2]), midpoint(t[2], t[0]), moved(footOf(t[1], t[2], t[0])))
}

func eulerLine(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	g := s.met(t[0], midpoint(t[1], t[2]), t[1], midpoint(t[0], t[2]))
	h := s.met(t[0], footOf(t[1], t[2], t[0]), t[1], footOf(t[0], t[2], t[1]))
	return onLine("", g, h, moved(centreOf(t[0], t[1], t[2])))
}

func simson(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	p := moved(second(t[0], s.corners(1)[0], centreOf(t[0], t[1], t[2])))
	return onLine("", footOf(t[0], t[1], p), footOf(t[1], t[2], p), footOf(t[2], t[0], p))
}

// onUnitCircle is the point of it at slope t from (-1, 0).
func (w *world) onUnitCircle(t *term) mark {
	one := whole(1)
	d := one.plus(t.square())
	return w.mark(one.minus(t.square()).over(d), t.times(whole(2)).over(d))
}

func pascal(s *sketch, moved func(mark) mark) question {
	var p [6]mark
	for i := range p {
		p[i] = s.onUnitCircle(whole(int64(i)).plus(fraction(s.between(1, 9), 10)))
		if i%2 == 0 {
			p[i] = s.onUnitCircle(root(int64(3*i*i) + s.between(2, 4)))
		}
	}
	p[5] = moved(p[5])
	return onLine("", s.met(p[0], p[1], p[3], p[4]), s.met(p[1], p[2], p[4], p[5]), s.met(p[2], p[3], p[5], p[0]))
}

func pappus(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	var p, q [3]mark
	for i := range p {
		n := int64(i * i)
		p[i] = s.along(t[0], t[1], root(2+n))
		q[i] = s.along(t[0], t[2], whole(n+s.between(1, 2)))
	}
	q[2] = moved(q[2])
	return onLine("", s.met(p[0], q[1], p[1], q[0]), s.met(p[0], q[2], p[2], q[0]), s.met(p[1], q[2], p[2], q[1]))
}

func desargues(s *sketch, moved func(mark) mark) question {
	p := s.corners(4)
	var q [3]mark
	for i := range q {
		q[i] = s.along(p[3], p[i], root(int64(i*i)+s.between(2, 3)))
	}
	q[2] = moved(q[2])
	return onLine("", s.met(p[0], p[1], q[0], q[1]), s.met(p[1], p[2], q[1], q[2]), s.met(p[2], p[0], q[2], q[0]))
}

// feuerbach: the incircle touches the nine-point circle.
func feuerbach(s *sketch, moved func(mark) mark) question {
	a, b := s.mark(whole(0), whole(0)), s.mark(whole(s.between(3, 9)), whole(0))
	c := s.mark(whole(s.between(1, 5)), whole(s.between(2, 8)))
	u, v, w := b.at.to(c.at).norm2().root(), c.at.to(a.at).norm2().root(), a.at.to(b.at).norm2().root()
	sum := sumOf(u, v, w)
	at := a.at.times(u).plus(b.at.times(v)).plus(c.at.times(w)).over(sum)
	in := s.mark(at.x, at.y)
	nine := disc{centreOf(midpoint(a, b), midpoint(b, c), midpoint(c, a)), midpoint(a, b)}
	inner := disc{in, moved(footOf(a, b, in))}
	d2, r, t := nine.centre.at.to(in.at).norm2(), nine.r2(), inner.r2()
	away := d2.minus(r).minus(t)
	return isZero("", away.square().minus(r.times(t).times(whole(4))),
		func() bool { return geom.CirclesTouch(nine.circle(), inner.circle()) != 0 })
}

// ptolemy: in a quadrilateral on a circle, AC·BD = AB·CD + BC·DA.
func ptolemy(s *sketch, moved func(mark) mark) question {
	var p [4]mark
	for i := range p {
		p[i] = s.onUnitCircle(fraction(int64(4*i)+s.between(1, 3), 5))
	}
	p[3] = moved(p[3])
	at := func(i, j int) *term { return p[i].at.to(p[j].at).norm2().root() }
	is := func(i, j int) geom.Real { return geom.Dist(p[i].p, p[j].p) }
	return isZero("", at(0, 2).times(at(1, 3)).minus(at(0, 1).times(at(2, 3))).minus(at(1, 2).times(at(3, 0))),
		func() bool { return is(0, 2).Mul(is(1, 3)).Equal(is(0, 1).Mul(is(2, 3)).Add(is(1, 2).Mul(is(3, 0)))) })
}

// napoleon: the centres of the equilateral triangles on the sides are those of
// an equilateral triangle.
func napoleon(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	centre := func(a, b mark) mark {
		third := root(3).over(whole(6))
		at := midpoint(a, b).at.plus(a.at.to(b.at).left().times(third))
		return s.mark(at.x, at.y)
	}
	x, y, z := centre(t[0], t[1]), centre(t[1], t[2]), moved(centre(t[2], t[0]))
	return isZero("", x.at.to(y.at).norm2().minus(y.at.to(z.at).norm2()),
		func() bool { return geom.Dist(x.p, y.p).Equal(geom.Dist(y.p, z.p)) })
}

// radicalAxes: the common chords of three circles meet in a point. Circles about
// three corners pass through two points each, so that nothing needs a root.
func radicalAxes(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	other := func(c, d disc) mark {
		found, err := geom.MeetCircles(c.circle(), d.circle(), geom.Known{Common: &c.on.p})
		if err != nil || len(found) != 2 {
			panic(noRoom("circles touch"))
		}
		u := c.centre.at.to(d.centre.at)
		k := c.centre.at.to(c.on.at).dot(u).over(u.norm2())
		at := c.centre.at.plus(u.times(k)).times(whole(2)).plus(c.on.at.times(whole(-1)))
		if found[0].Equal(c.on.p) {
			return marked(found[1], at)
		}
		return marked(found[0], at)
	}
	o := s.corners(3)
	// Circle i passes through corners i and i+1: its centre is on their bisector.
	var c [3]disc
	for i := range c {
		c[i] = disc{centreOf(t[i], t[(i+1)%3], o[i]), t[(i+1)%3]}
	}
	x, y := other(c[0], disc{c[1].centre, c[0].on}), other(c[1], disc{c[2].centre, c[1].on})
	z := moved(other(c[2], disc{c[0].centre, c[2].on}))
	meet := s.met(t[1], x, t[2], y)
	return onLine("", t[0], z, meet)
}

func thales(s *sketch, moved func(mark) mark) question {
	t := s.corners(3)
	m := midpoint(t[0], t[1])
	p := moved(second(t[0], t[2], m))
	return isZero("", p.at.to(t[0].at).dot(p.at.to(t[1].at)), func() bool { return geom.Perpendicular(join(p, t[0]), join(p, t[1])) })
}

// tangents from a point, by Thales' circle, are equally long and touch.
func tangents(s *sketch, moved func(mark) mark) question {
	t := s.corners(2)
	far := s.along(t[0], t[1], whole(s.between(2, 4)))
	k, half := disc{t[0], t[1]}, disc{midpoint(t[0], far), far}
	found, err := geom.MeetCircles(k.circle(), half.circle(), geom.Known{})
	if err != nil || len(found) != 2 {
		panic(noRoom("no tangents"))
	}
	touch := moved(marked(found[0], around(k.centre.at, k.r2(), half.centre.at, half.r2(), 1)))
	u, w := far.at.to(touch.at), far.at.to(k.centre.at)
	return isZero("", u.cross(w).square().minus(k.r2().times(u.norm2())), func() bool { return geom.LineTouches(join(far, touch), k.circle()) })
}

// bisector: it divides the opposite side as the others are (Euclid VI.3).
func bisector(s *sketch, moved func(mark) mark) question {
	a, b, c := s.mark(whole(0), whole(0)), s.mark(root(s.between(2, 9)), whole(s.between(1, 4))), s.mark(whole(s.between(-5, -1)), root(s.between(2, 9)))
	u, v := a.at.to(b.at).norm2().root(), a.at.to(c.at).norm2().root()
	at := b.at.times(v).plus(c.at.times(u)).over(u.plus(v))
	d := moved(s.mark(at.x, at.y))
	left, right := geom.Corner(b.p, a.p, d.p, false), geom.Corner(d.p, a.p, c.p, false)
	x, y := a.at.to(b.at), a.at.to(d.at)
	z := a.at.to(c.at)
	difference := x.cross(y).times(y.dot(z)).minus(y.cross(z).times(x.dot(y)))
	return isZero("", difference, func() bool {
		sign, err := left.Cmp(right)
		if err != nil {
			panic(err)
		}
		return sign == 0
	})
}

// someTheorems asks each of them in turn, every other time of a point that was
// moved.
func someTheorems(from uint64, n int) (out []question) {
	for i := range n {
		s := &sketch{draw: newDraw(from + uint64(i)), world: newWorld()}
		c := theorems[(int(from)+i)%len(theorems)]
		name := fmt.Sprintf("%s %d", c.name, from+uint64(i))
		moved := func(m mark) mark { return m }
		if s.IntN(2) == 0 {
			k := 5 + s.IntN(50)
			name += fmt.Sprintf(", moved by 10^-%d", k)
			moved = func(m mark) mark {
				return s.mark(m.at.x.plus(rational(tenTo(k))), m.at.y)
			}
		}
		if s.IntN(4) == 0 {
			s.setting(s.world)
		}
		var q question
		func() {
			defer func() {
				// A draw may put points where the theorem has no room for them.
				switch e := recover().(type) {
				case nil:
				case noRoom:
					q = question{told: string(e)}
				default:
					panic(e)
				}
			}()
			q = c.ask(s, moved)
		}()
		if q.name = name; q.x != nil {
			out = append(out, q)
		}
	}
	return out
}

func TestTheoremsAgainstPARI(t *testing.T) {
	t.Parallel()
	t.Log(compare(t, someTheorems(*from, many(420))))
}
