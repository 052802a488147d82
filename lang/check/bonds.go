package check

import (
	"strings"

	"trammel/lang/syntax"
)

// bonds tell which names of a source belong to one figure: acts say where the one is by where
// the other is. Lengths and angles that are only taken over, and claims, bind nothing. Names
// that differ by their numbers alone count as one.
type bonds struct {
	first   map[string]string   // a name that each is bound to; none: itself
	lines   map[string][]string // the points through which lines are drawn, that bind nothing yet
	centres map[string]bool     // of circles
}

func newBonds() bonds { return bonds{map[string]string{}, map[string][]string{}, map[string]bool{}} }

// letter is a name without its number.
func letter(name string) string { return strings.TrimRight(name, "0123456789") }

// root is the name that stands for all that are bound to one.
func (b bonds) root(name string) string {
	name = letter(name)
	for {
		next, known := b.first[name]
		if !known || next == name {
			return name
		}
		name = next
	}
}

// tie binds names to each other; those of lines, the points that these go through.
func (b bonds) tie(names []string) {
	for _, name := range names {
		b.first[b.root(name)] = b.root(names[0])
		for _, point := range b.lines[letter(name)] {
			b.first[b.root(point)] = b.root(name)
		}
	}
}

// namesIn are the names in references; some may be missing.
func namesIn(refs ...*syntax.Ref) (names []string) {
	for _, r := range refs {
		if r == nil {
			continue
		}
		if r.Name != "" {
			names = append(names, r.Name)
		}
		for _, p := range r.Points {
			names = append(names, p.Name)
		}
	}
	return names
}

// first is the first name of a reference.
func first(r *syntax.Ref) string { return append(namesIn(r), "")[0] }

func (b bonds) tieRefs(refs ...*syntax.Ref) { b.tie(namesIn(refs...)) }

// read binds what statements bind; it looks constructions up in a scope.
func (b bonds) read(s *scope, statements []*syntax.Statement) {
	for _, st := range statements {
		switch {
		case st.Step != nil:
			b.read(s, st.Step.Body)
		case st.Repeat != nil:
			b.read(s, st.Repeat.Body)
		case st.Given != nil:
			b.given(st.Given)
		case st.Take != nil:
			b.placed(st.Take.Point)
		case st.Arc != nil:
			b.swung(namesIn(st.Arc.Name, st.Arc.Centre, st.Arc.From, st.Arc.To, st.Arc.Through), st.Arc.Cuts)
		case st.Circle != nil:
			b.centres[first(st.Circle.Centre)] = true
			b.swung(namesIn(st.Circle.Name, st.Circle.Centre, st.Circle.Through), st.Circle.Cuts)
		case st.Line != nil:
			name := letter(first(st.Line.Name))
			b.lines[name] = append(b.lines[name], namesIn(st.Line.A, st.Line.B)...)
			b.ruled(namesIn(st.Line.Name), st.Line.Cuts)
		case st.Ray != nil:
			b.ruled(namesIn(st.Ray.Points), st.Ray.Cuts)
		case st.Join != nil:
			for _, run := range st.Join.Runs {
				b.ruled(namesIn(run), st.Join.Cuts)
			}
		case st.Produce != nil:
			b.produced(st.Produce)
		case st.StepOff != nil:
			b.tieRefs(st.StepOff.Points, st.StepOff.On, st.StepOff.From, st.StepOff.Through, st.StepOff.Towards)
		case st.Locus != nil:
			b.tieRefs(append(st.Locus.Names, st.Locus.One, st.Locus.Other, st.Locus.From)...)
		case st.Named != nil && st.Named.Meets != nil:
			b.cuts(namesIn(st.Named.Names...), st.Named.Meets)
		case st.Named != nil:
			b.called(s, st.Named)
		}
	}
}

func (b bonds) given(g *syntax.Given) {
	switch {
	case g.Line != nil:
		names := namesIn(g.Line.Name)
		for _, p := range append(g.Line.Through, g.Line.Via) {
			if p != nil {
				names = append(names, namesIn(p.Point)...)
			}
		}
		if g.Line.Via == nil {
			names = append(names, namesIn(g.Line.Parallel)...)
		}
		b.tie(names)
	case g.Circle != nil:
		names := namesIn(g.Circle.Name, g.Circle.Through)
		if g.Circle.Centre != nil {
			names = append(names, namesIn(g.Circle.Centre.Point)...)
		}
		b.tie(names)
	case g.Angle != nil:
		b.tie(append(namesIn(g.Angle.Angle), condNames(g.Angle.Sides)...))
	case g.Shape != nil:
		b.tie(append(namesIn(g.Shape.Points), condNames(g.Shape.Sides)...))
	case g.Point != nil:
		b.placed(g.Point)
	}
}

func (b bonds) placed(p *syntax.PlacedPoint) {
	names := namesIn(p.Point)
	for _, place := range p.Places {
		names = append(names, namesIn(place.On, place.Inside, place.Outside, place.Centre, place.From, place.Towards)...)
		if place.Cond != nil {
			names = append(names, condNames([]*syntax.Cond{place.Cond})...)
		}
	}
	b.tie(names)
}

// condNames are the names in which-one phrases.
func condNames(conds []*syntax.Cond) (names []string) {
	for _, c := range conds {
		names = append(names, namesIn(c.Of, c.SideOf, c.Same, c.As, c.Other, c.From, c.Than, c.Nearest, c.Farthest, c.Between, c.And, c.Beyond, c.On)...)
	}
	return names
}

// cuts binds names, and what they meet where.
func (b bonds) cuts(names []string, cuts *syntax.Cuts) {
	for _, m := range cuts.Meets {
		names = append(names, meetingNames(m)...)
	}
	b.tie(names)
}

// ruled binds the points of a straight where it meets something; one that is only drawn
// leaves them where they are.
func (b bonds) ruled(names []string, cuts *syntax.Cuts) {
	if cuts != nil {
		b.cuts(names, cuts)
	}
}

// swung binds what a circle or an arc is drawn by, and what it meets.
func (b bonds) swung(names []string, cuts *syntax.Cuts) {
	b.tie(names)
	b.ruled(names, cuts)
}

func meetingNames(m *syntax.Meeting) []string {
	names := namesIn(m.With)
	for _, pick := range m.Picks {
		names = append(append(names, namesIn(pick.Point)...), condNames(pick.Conds)...)
	}
	return names
}

func (b bonds) produced(p *syntax.Produce) {
	names := namesIn(p.Straight, p.Beyond, p.End)
	if p.Meet != nil {
		names = append(names, meetingNames(p.Meet)...)
	}
	b.tie(names)
}

// called binds the results of a call to what the construction makes them from, as its own
// acts do.
func (b bonds) called(s *scope, n *syntax.Named) {
	def := s.knownConstruction(n.By.Name)
	all := namesIn(n.Names...)
	if def == nil || len(def.Params) != len(n.By.Args) {
		for _, arg := range n.By.Args {
			all = append(all, namesIn(plainExpr(arg))...)
		}
		b.tie(all)
		return
	}
	inner := s.bondsWithin(def)
	groups := map[string][]string{}
	for i, p := range def.Params {
		if p.Kind != "length" && p.Kind != "angle" && p.Kind != "number" {
			root := inner.root(first(p.Name))
			groups[root] = append(groups[root], namesIn(plainExpr(n.By.Args[i]))...)
		}
	}
	for _, g := range def.Gives {
		root := inner.root(first(g.Name))
		groups[root] = append(groups[root], all...)
	}
	for _, group := range groups {
		b.tie(group)
	}
}

// bondsWithin are those of a construction. One that calls itself is refused elsewhere.
func (s *scope) bondsWithin(def *syntax.Construction) bonds {
	b, known := s.c.bonds[def]
	if !known {
		b = newBonds()
		s.c.bonds[def] = b
		b.read(s, def.Body)
		for _, g := range def.Gives {
			b.tie(namesIn(g.Name))
		}
	}
	return b
}

// knownConstruction is that of a name, as far as it is known before the acts are expanded.
func (s *scope) knownConstruction(name string) *syntax.Construction {
	if def := s.env.find(name); def != nil {
		return def.node
	}
	if head := s.c.heads[name]; head != nil {
		return head
	}
	if def := s.inLibrary(name); def != nil {
		return def.node
	}
	return nil
}

// bonds are those of the whole source.
func (s *scope) bonds() bonds {
	if s.bound.first == nil {
		s.bound = newBonds()
		s.bound.read(s, s.acts)
	}
	return s.bound
}
