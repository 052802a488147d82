package check

import (
	"math"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/geom/region"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// bounding gives a condition of a region when the run knows its things.
type bounding = func(*program.State) (region.Condition, error)

// The most regions of a figure, and conditions of a region: what the eye can
// tell apart, and what keeps a hostile source from eating time.
const (
	maxRegions    = 20
	maxConditions = 20
)

// shadeWhere hatches the points for which all conditions hold.
func (s *scope) shadeWhere(h *syntax.Shade) {
	if s.c.regions++; s.c.regions > maxRegions {
		s.fail(h.Node, "the figure has more than %d hatched regions", maxRegions)
		return
	}
	if len(h.Where) > maxConditions {
		s.fail(h.Node, "the region has more than %d conditions", maxConditions)
		return
	}
	var all []bounding
	var words []string
	good := true
	for _, w := range h.Where {
		b, ok := s.where(w)
		good = good && ok
		all, words = append(all, b), append(words, s.span(w.Node).Text())
	}
	if !good {
		return
	}
	text := strings.Join(words, " and ")
	step, seen := max(len(s.c.prog.Acts)-1, 0), s.view == shown
	s.prove(h.Node, func(st *program.State) error {
		r, err := regionOf(st, all)
		if err != nil {
			return err
		}
		if !shows(st, r) {
			return &program.Fault{
				Text: "nothing of this region would show on the paper: no place within reach of the figure is " + text,
				Help: "change a distance, or leave a condition out",
			}
		}
		if seen {
			st.Marks = append(st.Marks, figure.Hatch{Region: r, Where: text, Step: step})
		}
		return nil
	})
}

func regionOf(st *program.State, all []bounding) (region.Region, error) {
	var r region.Region
	for _, b := range all {
		c, err := b(st)
		if err != nil {
			return nil, err
		}
		r = append(r, c)
	}
	return r, nil
}

// fine is how far apart, in millimetres of paper, the lines are on which a
// region is looked for.
const fine = 0.2

// shows tells whether a region has a place on the paper that the eye can find.
func shows(st *program.State, r region.Region) bool {
	b, bounded := r.Box()
	if !bounded {
		b = reach(st)
	}
	mm, _ := st.Program.Unit.Float64()
	return len(r.Hatch(b, math.Pi/4, fine/mm)) > 0
}

// reach is the box of all that is there, and as much about it again.
func reach(st *program.State) region.Box {
	b := region.Box{Left: math.Inf(1), Bottom: math.Inf(1), Right: math.Inf(-1), Top: math.Inf(-1)}
	add := func(p geom.Point, r float64) {
		x, y := p.X.Float(), p.Y.Float()
		b = region.Box{Left: min(b.Left, x-r), Bottom: min(b.Bottom, y-r), Right: max(b.Right, x+r), Top: max(b.Top, y+r)}
	}
	for _, v := range st.Values {
		switch v := v.(type) {
		case geom.Point:
			add(v, 1)
		case *program.Curve:
			if v.Circle != nil {
				add(v.Circle.C, math.Sqrt(v.Circle.R2.Float()))
			} else {
				add(v.Straight.P, 1)
			}
		}
	}
	w, h := b.Right-b.Left, b.Top-b.Bottom
	return region.Box{Left: b.Left - w, Bottom: b.Bottom - h, Right: b.Right + w, Top: b.Top + h}
}

// where resolves one condition on the points of a region.
func (s *scope) where(w *syntax.Where) (bounding, bool) {
	switch {
	case w.Nearer != nil:
		return s.nearer(w)
	case w.Distance != nil:
		return s.farFrom(w)
	case w.Inside != nil:
		return s.insideOf(w.Inside, region.Inside, region.Within)
	case w.Outside != nil:
		return s.insideOf(w.Outside, region.Outside, region.Beyond)
	}
	return s.sideOf(w.Side)
}

// straightOf gives a straight when the run knows it.
type straightOf = func(*program.State) (geom.Straight, error)

// spine is a point, or a straight as it is drawn, to measure distances from.
func (s *scope) spine(r *syntax.Ref) (straightOf, bool) {
	if isPoint(r) {
		p, ok := s.point(r)
		return func(st *program.State) (geom.Straight, error) { return region.Spot(st.Point(p)), nil }, ok
	}
	c, ok := s.line(r)
	return func(st *program.State) (geom.Straight, error) {
		v, err := c.value(st)
		if err != nil {
			return geom.Straight{}, err
		}
		return *v.Straight, nil
	}, ok
}

// nearer compares distances. Two straights are taken as their locus takes
// them: as the arms of an angle where they share a letter, else as whole lines.
func (s *scope) nearer(w *syntax.Where) (bounding, bool) {
	one, ok1 := s.spine(w.Nearer)
	other, ok2 := s.spine(w.Than)
	if !ok1 || !ok2 {
		return nil, false
	}
	if !isPoint(w.Nearer) && !isPoint(w.Than) {
		a, _ := s.line(w.Nearer)
		b, _ := s.line(w.Than)
		one, other = wholeLine(a), wholeLine(b)
		if v, p, q, ok := arms(a, b); ok {
			one, other = rayTo(v, p), rayTo(v, q)
		}
	}
	return func(st *program.State) (region.Condition, error) {
		a, err := one(st)
		if err != nil {
			return nil, err
		}
		b, err := other(st)
		if err != nil {
			return nil, err
		}
		return region.Nearer(a, b), nil
	}, true
}

func wholeLine(c curve) straightOf {
	return func(st *program.State) (geom.Straight, error) {
		l, err := c.whole(st)
		return geom.Straight{Line: l}, err
	}
}

// rayTo is the ray from a vertex through a point.
func rayTo(vertex, through int) straightOf {
	return func(st *program.State) (geom.Straight, error) {
		v, p := st.Point(vertex), st.Point(through)
		if v.Equal(p) {
			return geom.Straight{}, sameSpot(st, vertex, through)
		}
		return geom.Straight{Line: geom.Through(v, p), Start: &v}, nil
	}
}

// farFrom is under or over a distance.
func (s *scope) farFrom(w *syntax.Where) (bounding, bool) {
	d, ok1 := s.distance(w.Distance)
	of, ok2 := s.spine(w.From)
	make := region.Within
	if w.Over {
		make = region.Beyond
	}
	return func(st *program.State) (region.Condition, error) {
		r, err := d(st)
		if err != nil {
			return nil, err
		}
		spine, err := of(st)
		if err != nil {
			return nil, err
		}
		return make(spine, r.Mul(r)), nil
	}, ok1 && ok2
}

// insideOf is inside or outside of a polygon, a circle or a rim.
func (s *scope) insideOf(r *syntax.Ref, polygon func([]geom.Point) region.Condition, round func(geom.Straight, geom.Real) region.Condition) (bounding, bool) {
	if r.Name == "" {
		ps, ok := s.polygon(r)
		return func(st *program.State) (region.Condition, error) {
			pts := st.Points(ps)
			if !geom.Simple(pts) {
				return nil, &program.Fault{Text: "the outline " + s.letters(ps) + " crosses itself", Help: "name the corners in their order round the figure"}
			}
			return polygon(pts), nil
		}, ok
	}
	name, ok := s.indexed(r.Name, r.Index)
	if !ok {
		return nil, false
	}
	slot, ok := s.lookup(name, r.Node, program.Circle, program.Rim)
	return func(st *program.State) (region.Condition, error) {
		if rim, ok := st.Value(slot).(geom.Rim); ok {
			return round(rim.Spine, rim.R.Mul(rim.R)), nil
		}
		k := st.Curve(slot).Circle
		return round(region.Spot(k.C), k.R2), nil
	}, ok
}

// sideOf is one side of a line: the side on which the phrase holds.
func (s *scope) sideOf(c *syntax.Cond) (bounding, bool) {
	ref := c.Of
	for _, r := range []*syntax.Ref{c.SideOf, c.Same, c.Other} {
		if r != nil {
			ref = r
		}
	}
	if ref == nil {
		s.fail(c.Node, "%s picks one point out, and says no region", s.span(c.Node).Text()).Help = "regions read: nearer A than B · under 3 from A · inside ABC · above m · left of AB"
		return nil, false
	}
	test, ok1 := s.condTest(c)
	if !ok1 {
		return nil, false
	}
	l, ok2 := s.line(ref)
	return func(st *program.State) (region.Condition, error) {
		line, err := l.whole(st)
		if err != nil {
			return nil, err
		}
		left, err := test(st, line.P.Add(line.D.Left()), nil)
		if err != nil {
			return nil, err
		}
		if !left {
			line.D = line.D.Neg()
		}
		return region.LeftOf(line), nil
	}, ok2
}
