package oracle

import (
	"fmt"
	"testing"

	"trammel/geom"
)

// sketch is a figure that grows at random.
type sketch struct {
	draw
	*world
	name      string
	marks     []mark
	questions []question
}

// mostRoots keeps the oracles' separation bounds within reach.
const mostRoots = 5

func newSketch(seed uint64) *sketch {
	s := &sketch{draw: newDraw(seed), world: newWorld(), name: fmt.Sprintf("figure %d", seed)}
	for range s.between(4, 6) {
		s.marks = append(s.marks, s.mark(s.coordinate(), s.coordinate()))
	}
	return s
}

// coordinate is a small whole number, so that much is true by chance, and now
// and then something else.
func (s *sketch) coordinate() *term {
	switch s.IntN(10) {
	case 0:
		return root(s.between(2, 12))
	case 1:
		return fraction(s.between(-9, 9), s.between(2, 5))
	}
	return whole(s.between(-3, 3))
}

// some are n marks at different places.
func (s *sketch) some(n int) []mark {
	var out []mark
	for tries := 0; len(out) < n && tries < 200; tries++ {
		m := s.marks[s.IntN(len(s.marks))]
		fresh := true
		for _, o := range out {
			fresh = fresh && !o.p.Equal(m.p)
		}
		if fresh {
			out = append(out, m)
		}
	}
	if len(out) < n {
		return s.fresh(n)
	}
	return out
}

// fresh are new marks that differ.
func (s *sketch) fresh(n int) (out []mark) {
	for i := range n {
		m := s.mark(whole(int64(i)), whole(int64(i*i+i)))
		s.marks = append(s.marks, m)
		out = append(out, m)
	}
	return out
}

// add takes a new point in, and asks whether it is where the oracles have it.
func (s *sketch) add(how string, p geom.Point, at place) {
	x, y := s.real(at.x), s.real(at.y)
	if !p.X.Equal(x) || !p.Y.Equal(y) {
		// Coordinates made in two ways must agree, whatever they are.
		s.questions = append(s.questions, question{s.name + ": " + how, whole(0), "not where the oracles have it"})
	}
	if at.x.roots()+at.y.roots() <= 2*mostRoots {
		s.marks = append(s.marks, marked(p, at))
	}
}

// grow adds a point by one act.
func (s *sketch) grow() {
	acts := []func(){s.crossLines, s.pierce, s.strike, s.halve, s.foot, s.circleThrough}
	acts[s.IntN(len(acts))]()
}

func (s *sketch) crossLines() {
	m := s.some(4)
	parallel := m[0].at.to(m[1].at).cross(m[2].at.to(m[3].at))
	p, err := geom.MeetLines(join(m[0], m[1]), join(m[2], m[3]))
	s.questions = append(s.questions, isZero(s.name+": parallel", parallel, func() bool { return err != nil }))
	if err == nil {
		s.add("crossing", p, crossing(m[0].at, m[1].at, m[2].at, m[3].at))
	}
}

// meetings asks whether the number of meetings is right: 2 where the
// discriminant is positive, 1 where it is 0.
func (s *sketch) meetings(how string, disc *term, n int) {
	s.questions = append(s.questions, hasSign(s.name+": "+how, disc, func() int { return n - 1 }))
}

func (s *sketch) pierce() {
	m := s.some(3)
	c := disc{m[2], s.some(1)[0]}
	if c.on.p.Equal(c.centre.p) {
		return
	}
	u, w := m[0].at.to(m[1].at), m[0].at.to(c.centre.at)
	found, _ := geom.MeetLineCircle(join(m[0], m[1]), c.circle(), s.common(c, m[0], m[1]))
	s.meetings("line and circle", c.r2().times(u.norm2()).minus(u.cross(w).square()), len(found))
	if len(found) == 2 {
		i := s.IntN(2)
		s.add("piercing", found[i], piercing(m[0].at, m[1].at, c.centre.at, c.r2(), int64(2*i-1)))
	}
}

// common is the point through which the circle was struck, if it is also one of
// those of the line.
func (s *sketch) common(c disc, ends ...mark) *geom.Point {
	for _, e := range ends {
		if e.p.Equal(c.on.p) {
			return &c.on.p
		}
	}
	return nil
}

func (s *sketch) strike() {
	m := s.some(2)
	c, d := disc{m[0], s.some(1)[0]}, disc{m[1], s.some(1)[0]}
	if c.on.p.Equal(c.centre.p) || d.on.p.Equal(d.centre.p) {
		return
	}
	d2 := c.centre.at.to(d.centre.at).norm2()
	along := d2.plus(c.r2()).minus(d.r2())
	found, _ := geom.MeetCircles(c.circle(), d.circle(), geom.Known{Common: s.common(c, d.on)})
	s.meetings("two circles", d2.times(c.r2()).times(whole(4)).minus(along.square()), len(found))
	if len(found) == 2 {
		i := s.IntN(2)
		s.add("striking", found[i], around(c.centre.at, c.r2(), d.centre.at, d.r2(), int64(1-2*i)))
	}
}

func (s *sketch) halve() {
	m := s.some(2)
	s.add("halving", geom.Midpoint(m[0].p, m[1].p), m[0].at.plus(m[1].at).times(fraction(1, 2)))
}

func (s *sketch) foot() {
	m := s.some(3)
	u := m[0].at.to(m[1].at)
	t := m[0].at.to(m[2].at).dot(u).over(u.norm2())
	at := m[0].at.plus(u.times(t))
	if s.IntN(2) == 0 {
		s.add("foot", join(m[0], m[1]).Foot(m[2].p), at)
		return
	}
	s.add("mirror", join(m[0], m[1]).Mirror(m[2].p), at.times(whole(2)).plus(m[2].at.times(whole(-1))))
}

func (s *sketch) circleThrough() {
	m := s.some(3)
	straight := m[0].at.to(m[1].at).cross(m[0].at.to(m[2].at))
	c, ok := geom.Circumcircle(m[0].p, m[1].p, m[2].p)
	s.questions = append(s.questions, isZero(s.name+": circle through three", straight, func() bool { return !ok }))
	if ok {
		s.add("circling", c.C, circling(m[0].at, m[1].at, m[2].at))
	}
}

// claim asks one thing of points taken at random.
func (s *sketch) claim() {
	m := s.some(4)
	a, b, c, d := m[0], m[1], m[2], m[3]
	u, v := a.at.to(b.at), c.at.to(d.at)
	circle := disc{a, b}
	claims := []func() question{
		func() question {
			return hasSign("side of a line", u.cross(a.at.to(c.at)), func() int { return join(a, b).Side(c.p) })
		},
		func() question {
			return hasSign("side of a circle", a.at.to(c.at).norm2().minus(circle.r2()), func() int { return circle.circle().Side(c.p) })
		},
		func() question {
			return hasSign("two lengths", u.norm2().root().minus(v.norm2().root()), func() int { return geom.Dist(a.p, b.p).Cmp(geom.Dist(c.p, d.p)) })
		},
		func() question {
			return hasSign("three lengths", u.norm2().root().plus(v.norm2().root()).minus(a.at.to(c.at).norm2().root()),
				func() int { return geom.Dist(a.p, b.p).Add(geom.Dist(c.p, d.p)).Cmp(geom.Dist(a.p, c.p)) })
		},
		func() question {
			return isZero("parallel", u.cross(v), func() bool { return geom.Parallel(join(a, b), join(c, d)) })
		},
		func() question {
			return isZero("perpendicular", u.dot(v), func() bool { return geom.Perpendicular(join(a, b), join(c, d)) })
		},
		func() question {
			w := c.at.to(a.at)
			return isZero("tangent", v.cross(w).square().minus(circle.r2().times(v.norm2())), func() bool { return geom.LineTouches(join(c, d), circle.circle()) })
		},
		func() question {
			return isZero("concyclic", concyclic(a.at, b.at, c.at, d.at), func() bool {
				return geom.Concyclic(a.p, b.p, c.p, d.p) || geom.Collinear(a.p, b.p, c.p, d.p)
			})
		},
		func() question {
			d2 := a.at.to(c.at).norm2()
			r, t := circle.r2(), v.norm2()
			away := d2.minus(r).minus(t)
			return isZero("circles touch", away.square().minus(r.times(t).times(whole(4))),
				func() bool { return geom.CirclesTouch(circle.circle(), disc{c, d}.circle()) != 0 })
		},
	}
	q := claims[s.IntN(len(claims))]()
	q.name = s.name + ": " + q.name
	s.questions = append(s.questions, q)
}

// someFigures grows them and asks.
func someFigures(from uint64, n int) (out []question) {
	for seed := range uint64(n) {
		s := newSketch(from + seed)
		why := told(func() int {
			for range s.between(2, 6) {
				s.grow()
			}
			for range 12 {
				s.claim()
			}
			return 0
		})
		if why != "0" {
			s.questions = append(s.questions, question{s.name + " while it was made", whole(0), why})
		}
		out = append(out, s.questions...)
	}
	return out
}

func TestFiguresAgainstPARI(t *testing.T) {
	t.Parallel()
	t.Log(compare(t, someFigures(*from, many(300))))
}
