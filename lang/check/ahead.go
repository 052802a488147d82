package check

import (
	"slices"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// foresee notes which things are to meet, as a plain hand does that reads the whole
// task before it draws: what is given is then put so that they can.
func (s *scope) foresee(statements []*syntax.Statement) {
	for _, st := range statements {
		switch {
		case st.Step != nil:
			s.foresee(st.Step.Body)
		case st.Ray != nil && st.Ray.Points.Name == "" && len(st.Ray.Points.Points) == 2:
			from, to := st.Ray.Points.Points[0], st.Ray.Points.Points[1]
			s.rays[from.Name] = to.Name
		case st.Locus != nil && st.Locus.Other != nil:
			s.halved[st.Locus.One.Name], s.halved[st.Locus.Other.Name] = true, true
		case st.Take != nil:
			s.expect(st.Take.Point, 1)
		case st.Repeat != nil:
			s.expectAll(st.Repeat, 1)
		case st.Given != nil:
			s.foreseeGiven(st.Given)
		case st.Named != nil && st.Named.Meets != nil:
			s.toMeet(st.Named.Names[0], st.Named.Meets)
		case st.Line != nil && st.Line.Cuts != nil:
			s.toMeet(st.Line.Name, st.Line.Cuts)
		}
	}
}

// expectAll counts the points that a repeat takes which is itself done so many times.
func (s *scope) expectAll(r *syntax.Repeat, times int) {
	from, ok1 := s.countAhead(r.From)
	to, ok2 := s.countAhead(r.To)
	if !ok1 || !ok2 || to < from || to-from >= maxStatements {
		return
	}
	times *= int(to-from) + 1
	for _, st := range r.Body {
		switch {
		case times > maxStatements:
		case st.Take != nil:
			s.expect(st.Take.Point, times)
		case st.Repeat != nil:
			s.expectAll(st.Repeat, times)
		}
	}
}

// countAhead is the value of an end of a repeat, if that is one number, or the name of one.
func (s *scope) countAhead(e *syntax.Expr) (x float64, ok bool) {
	if v, known := s.consts[s.span(e.Node).Text()]; known {
		x, _ = v.Float64()
		return x, true
	}
	return s.inNumbers(e)
}

func (s *scope) foreseeGiven(g *syntax.Given) {
	switch {
	case g.Point != nil:
		s.expect(g.Point, 1)
		s.fixedAt(g.Point.Point, g.Point.At, nil)
	case g.Line != nil:
		for _, p := range append([]*syntax.CoordPoint{g.Line.Via}, g.Line.Through...) {
			if p != nil {
				s.fixedAt(p.Point, p.At, nil)
			}
		}
	case g.Circle != nil:
		s.rounds[g.Circle.Name.Name] = true
		if p := g.Circle.Centre; p != nil {
			s.fixedAt(p.Point, p.At, g.Circle.Radius)
		}
	}
}

// fixedAhead is a point whose coordinates the source gives, and the radius of a circle
// about it, or nil.
type fixedAhead struct {
	name   string
	at     *syntax.Coords
	radius *syntax.Expr
}

func (s *scope) fixedAt(r *syntax.Ref, at *syntax.Coords, radius *syntax.Expr) {
	if at != nil && len(r.Points) == 1 && r.Points[0].Index == nil {
		s.fixed = append(s.fixed, fixedAhead{r.Points[0].Name, at, radius})
	}
}

// place is where something is fixed, in units, and how far it reaches about that.
type place struct{ x, y, r float64 }

// fixedLater are the places, as far as they are written in numbers, of what is still to
// be given: what is free keeps off them, so that the order of givens is no matter.
func (s *scope) fixedLater() (out []place) {
	for _, f := range s.fixed {
		if s.knows(f.name) {
			continue
		}
		x, ok1 := s.inNumbers(f.at.X)
		y, ok2 := s.inNumbers(f.at.Y)
		r, _ := s.inNumbers(f.radius)
		if ok1 && ok2 {
			out = append(out, place{x, y, r})
		}
	}
	return out
}

// inNumbers is the value of a length that is written as one number, or a product of some.
func (s *scope) inNumbers(e *syntax.Expr) (x float64, ok bool) {
	number := func(f *syntax.Factor) bool { return f.Value.Number != "" }
	if e == nil || len(e.Tail) > 0 || !number(e.Head.Head) ||
		slices.ContainsFunc(e.Head.Tail, func(t *syntax.MulTail) bool { return !number(t.Factor) }) {
		return 0, false
	}
	v, ok := s.expr(e, wantLength)
	if !ok || v.rat == nil {
		return 0, false
	}
	x, _ = v.rat.Float64()
	return x, true
}

// aimedAt is the point, there already, through which a ray is to go from one of a name.
func (s *scope) aimedAt(name string) (slot int, ok bool) {
	to, ok := s.rays[name]
	if !ok {
		return 0, false
	}
	slot, ok = s.names[to]
	return slot, ok && s.slot(slot).Kind == program.Point
}

func (s *scope) toMeet(r *syntax.Ref, cuts *syntax.Cuts) {
	for _, m := range cuts.Meets {
		for _, both := range [][2]*syntax.Ref{{r, m.With}, {m.With, r}} {
			for _, key := range keysOf(both[0]) {
				s.meets[key] = append(s.meets[key], both)
			}
		}
	}
}

// roundAhead tells whether the circle of a name is to meet another given circle.
func (s *scope) roundAhead(name string) bool {
	return slices.ContainsFunc(s.meets[name], func(m [2]*syntax.Ref) bool { return s.rounds[m[1].Name] })
}

// keysOf are the name of a thing, or the letters of a run of points.
func keysOf(r *syntax.Ref) (keys []string) {
	if r.Name != "" {
		return []string{r.Name}
	}
	for _, p := range r.Points {
		keys = append(keys, p.Name)
	}
	return keys
}

// sidesAhead are the straights between points that are there already that the line of
// a name is to meet.
func (s *scope) sidesAhead(name string) (out []pair) {
	for _, m := range s.meets[name] {
		if p, ok := s.ends(m[1]); ok && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// ends are the two points of a run, if they are there.
func (s *scope) ends(r *syntax.Ref) (p pair, ok bool) {
	if r.Name != "" || len(r.Points) != 2 {
		return p, false
	}
	for k, point := range r.Points {
		slot, known := s.names[point.Name]
		if !known || point.Index != nil {
			return p, false
		}
		p[k] = slot
	}
	return p, true
}

// chordsAhead is the circle that is there already and is to meet straights between two of
// some letters, and these, by the places of their letters; -1 if there is none.
func (s *scope) chordsAhead(letters []string) (circle int, sides [][2]int) {
	circle = -1
	for i, letter := range letters {
		for _, m := range s.meets[letter] {
			slot, known := s.names[m[1].Name]
			if len(m[0].Points) != 2 || m[0].Points[0].Name != letter || !known || s.slot(slot).Kind != program.Circle {
				continue
			}
			if j := slices.Index(letters, m[0].Points[1].Name); j >= 0 && (circle < 0 || slot == circle) {
				circle, sides = slot, append(sides, [2]int{i, j})
			}
		}
	}
	return circle, sides
}

// linesAhead are the things that are there already and are to meet a straight between
// two of some letters.
func (s *scope) linesAhead(letters []string) (out []int) {
	for _, letter := range letters {
		for _, m := range s.meets[letter] {
			slot, known := s.names[m[1].Name]
			inside := !slices.ContainsFunc(m[0].Points, func(p *syntax.PointName) bool { return !slices.Contains(letters, p.Name) })
			if known && inside && len(m[0].Points) == 2 {
				out = append(out, slot)
			}
		}
	}
	return out
}

// callsAhead is how many calls of the file take all of some letters and nothing else.
func (s *scope) callsAhead(letters []string) (n int) {
	sorted := slices.Sorted(slices.Values(letters))
	for _, st := range s.acts {
		if st.Named == nil || st.Named.By == nil {
			continue
		}
		var names []string
		for _, arg := range st.Named.By.Args {
			names = append(names, namesIn(plainExpr(arg))...)
		}
		if slices.Equal(slices.Sorted(slices.Values(names)), sorted) {
			n++
		}
	}
	return n
}
