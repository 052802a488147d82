package check

import (
	"fmt"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
)

// sameLine tells whether a point's place is a line, and a stretch of the same line:
// "on m, between A and B", A and B being points of m. The stretch comes first then,
// as what its place is left to chance on.
func (s *scope) sameLine(pl *places) bool {
	if len(pl.loci) != 2 {
		return false
	}
	for i, l := range pl.loci {
		stretch, other := !l.isCircle && l.on.run && l.on.slot < 0, pl.loci[1-i]
		if stretch && !other.isCircle && s.carries(other.on, l.on.from) && s.carries(other.on, l.on.to) {
			pl.loci = []locus{l, other}
			return true
		}
	}
	return false
}

// carries tells whether a point is known to lie on a straight, as the source puts it.
func (s *scope) carries(c curve, p int) bool {
	switch {
	case c.circle:
		return false
	case c.run:
		return p == c.from || p == c.to
	case s.slot(c.slot).Between != nil && slices.Contains(s.slot(c.slot).Between[:], p):
		return true
	}
	return slices.Contains(s.c.metOn[p], c.slot)
}

// picksFree refuses nearest and farthest of a point that nothing but chance places:
// they pick one of two places.
func (s *scope) picksFree(slot int, pl *places) bool {
	for _, c := range pl.conds {
		if !c.picks {
			continue
		}
		name := s.slot(slot).Name
		s.c.fail(c.span, "%s picks one of two places, and %s may be anywhere here", c.text, name).Help = "name a meeting, as in: n meets k at " + name + " " + c.text
		return true
	}
	return false
}

// called is a locus in the words of the source.
func (l locus) called(s *scope) string {
	if l.isCircle {
		return "the circle about " + s.slot(l.centre).Name
	}
	return l.on.text
}

// curveOf is the curve of a locus in a run.
func (s *scope) curveOf(st *program.State, l locus) (*program.Curve, error) {
	if !l.isCircle {
		return l.on.value(st)
	}
	r2, err := squareOf(st, l.distance, s)
	if err != nil {
		return nil, err
	}
	return &program.Curve{Circle: &geom.Circle{C: st.Point(l.centre), R2: r2}}, nil
}

// holds checks that a point fixed by other phrases is on the locus too.
func (l locus) holds(st *program.State, name string, p geom.Point) error {
	if l.isCircle {
		x, err := l.distance.value(st)
		if err != nil {
			return err
		}
		r, _ := x.Constructible()
		from := st.Point(l.centre)
		if r != nil && !geom.Dist2(p, from).Equal(r.Mul(r)) {
			return &program.Fault{Text: fmt.Sprintf("%s would be at %s, which is %s and not %s from %s", name, p, geom.Show(geom.Dist(p, from)), geom.Show(r), st.Program.Slots[l.centre].Name)}
		}
		return nil
	}
	c, err := l.on.value(st)
	if err != nil {
		return err
	}
	if !on(c, p) {
		return &program.Fault{Text: fmt.Sprintf("%s would be at %s, which is not on %s", name, p, l.on.text)}
	}
	if len(within([]geom.Point{p}, c)) == 0 {
		return &program.Fault{Text: fmt.Sprintf("%s would be at %s, past the end of %s", name, p, l.on.text), Help: "produce " + l.on.text + " first", Range: true}
	}
	return nil
}

// crossLoci is where two loci meet. A distance along a line from a point of it
// goes in the line's own direction.
func (s *scope) crossLoci(a, b locus) spot {
	return func(st *program.State) ([]geom.Point, error) {
		ca, err := s.curveOf(st, a)
		if err != nil {
			return nil, err
		}
		cb, err := s.curveOf(st, b)
		if err != nil {
			return nil, err
		}
		if ca.Straight == nil && cb.Straight != nil {
			ca, cb, a, b = cb, ca, b, a
		}
		ps, err := meetCurves(ca, cb)
		if err != nil {
			return nil, &program.Fault{Text: "there is no such point on " + a.called(s) + " and " + b.called(s) + ": " + err.Error(), Help: "leave out one of them, or change it"}
		}
		if ca.Straight != nil && b.isCircle && len(ps) == 2 && on(ca, st.Point(b.centre)) {
			l, err := a.on.whole(st)
			if err != nil {
				return nil, err
			}
			return geom.Ordered(ps[1], ps[0], ps[1].Sub(ps[0]).Dot(l.D))[:1], nil
		}
		st.Touch(ca, cb, ps)
		return ps, nil
	}
}
