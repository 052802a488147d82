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
		case st.Take != nil:
			s.expect(st.Take.Point)
		case st.Given != nil && st.Given.Point != nil:
			s.expect(st.Given.Point)
		case st.Given != nil && st.Given.Circle != nil:
			s.rounds[st.Given.Circle.Name.Name] = true
		case st.Named != nil && st.Named.Meets != nil:
			s.toMeet(st.Named.Names[0], st.Named.Meets)
		case st.Line != nil && st.Line.Cuts != nil:
			s.toMeet(st.Line.Name, st.Line.Cuts)
		}
	}
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
