package check

import (
	"errors"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// need is one thing that must hold for a construction to be carried out.
type need struct {
	holds relation
	said  refusal
	help  string
	span  source.Span
	at    *source.Span // what is to blame
	plain bool         // see isPlain
}

// needs emits the step that holds a call against what its construction needs of
// its parameters. Only then do they have values inside: a failing need poisons
// the results and nothing else is blamed. It is false if a need means nothing of
// these arguments.
func (s *scope) needs(n *syntax.Named, def *definition, in *scope) bool {
	var first []*syntax.Needs
	for _, st := range def.node.Body {
		if st.Needs != nil && !in.late(def, st.Needs) {
			first = append(first, st.Needs)
		}
	}
	return s.hold(n, def, in, first)
}

// late tells whether a need speaks of points that the construction makes: it is
// checked at its place among the acts.
func (in *scope) late(def *definition, n *syntax.Needs) bool {
	for _, name := range pointShape.FindAllString(in.span(n.Relation.Node).Text(), -1) {
		if !def.takes(name) {
			return true
		}
	}
	return false
}

// takes tells whether a construction has a parameter of that name.
func (def *definition) takes(name string) bool {
	for _, p := range def.node.Params {
		if p.Name.Name == name || len(p.Name.Points) == 1 && p.Name.Points[0].Name == name {
			return true
		}
	}
	return false
}

// hold emits the step that checks some needs and then hands the arguments on.
func (s *scope) hold(n *syntax.Named, def *definition, in *scope, list []*syntax.Needs) bool {
	var all []need
	for _, one := range list {
		rel, ok := in.needed(one.Relation)
		if !ok {
			return false
		}
		said, at := in.blaming(n, def, one)
		span := s.span(at)
		all = append(all, need{rel, said, in.mending(one), def.need(one), &span, isPlain(one.Relation)})
	}
	if len(all) == 0 {
		return true
	}
	handed := in.copyParams(s, def)
	name := def.node.Name
	s.emit(n.Node, func(st *program.State) error {
		for _, need := range all {
			check := func() error { return need.check(st, name) }
			if need.plain {
				demanded := check
				check = func() error { return st.Field.Demand(demanded) }
			}
			if err := check(); err != nil {
				return err
			}
		}
		for _, h := range handed {
			st.Set(h.inner, st.Value(h.outer))
		}
		return nil
	})
	return true
}

// isPlain tells whether each sign and equation by which a relation is decided must be so
// in every figure, since it holds in no other way.
func isPlain(r *syntax.Relation) bool {
	for _, link := range r.Chain {
		if link.Op != "=" && link.Op != "<" && link.Op != ">" {
			return false
		}
	}
	return !r.Not && (len(r.Chain) > 0 || r.On != nil || r.Collinear != nil || r.Perp != nil || r.Midpoint != nil)
}

// blaming words a need, and tells what is to blame: the call, or one argument.
func (in *scope) blaming(n *syntax.Named, def *definition, one *syntax.Needs) (refusal, syntax.Node) {
	if l := in.limited(def, one); l != nil {
		return l.refusal(in), n.By.Args[l.param].Node
	}
	return in.refusal(def, one), n.Node
}

// need is where a construction says what must hold, without the words for its caller.
func (def *definition) need(n *syntax.Needs) source.Span {
	at := n.Span(def.file)
	at.End = n.Relation.Span(def.file).End
	return at
}

// handed is a parameter's slot inside, and the one that it takes its value from.
type handed struct{ inner, outer int }

// copyParams gives the parameters slots of their own from here on.
func (in *scope) copyParams(s *scope, def *definition) (all []handed) {
	copies := map[int]int{}
	for _, p := range def.node.Params {
		name, _, _ := in.paramName(p)
		outer, ok := in.names[name]
		if !ok {
			continue
		}
		inner := in.add(s.slot(outer).Kind, p.Node)
		s.slot(inner).Name = name
		in.names[name] = inner
		if centre, ok := s.c.centres[outer]; ok {
			s.c.centres[inner] = centre
		}
		copies[inner] = outer
		if first, again := in.copies[outer]; again {
			copies[inner] = first
		}
		s.c.hand.same[inner] = outer
		s.c.outer[inner] = outer
		all = append(all, handed{inner, outer})
	}
	in.copies = copies
	return all
}

// needed resolves what a construction needs of its parameters.
func (in *scope) needed(r *syntax.Relation) (relation, bool) {
	in.needing = true
	defer func() { in.needing = false }()
	return in.relation(r)
}

func (n need) check(st *program.State, name string) error {
	v, err := n.holds(st)
	note := source.Note{Span: n.span, Text: "what " + name + " needs"}
	if err != nil {
		var f *program.Fault
		if errors.As(err, &f) {
			return &program.Fault{Text: f.Text, Help: f.Help, Notes: []source.Note{note}}
		}
		return err
	}
	if v.holds {
		return nil
	}
	return &program.Fault{Text: n.said(st, v.why), Help: n.help, Span: n.at, Notes: []source.Note{note}}
}

// numbersSuit decides the needs that speak of known numbers only, before the
// body is expanded with them.
func (s *scope) numbersSuit(n *syntax.Named, def *definition, in *scope) bool {
	for _, st := range def.node.Body {
		if st.Needs == nil || len(st.Needs.Relation.Chain) == 0 || st.Needs.Relation.Not {
			continue
		}
		r := st.Needs.Relation
		if holds, known := in.knownChain(append([]*syntax.Side{r.Left}, sidesOf(r.Chain)...), opsOf(r.Chain)); known && !holds {
			said, at := in.blaming(n, def, st.Needs)
			p := s.fail(at, "%s", said(nil, in.unlike(r)))
			p.Help = in.mending(st.Needs)
			p.Notes = append(p.Notes, source.Note{Span: def.need(st.Needs), Text: "what " + def.node.Name + " needs"})
			return false
		}
	}
	return true
}

// wholeBounds tells whether the families that a construction gives can be
// counted: with 5/2 for n there are no P1 to Pn.
func (s *scope) wholeBounds(def *definition, c *syntax.CallExp, in *scope) bool {
	for i, p := range def.node.Params {
		r, known := in.consts[p.Name.Name]
		if !known || r.IsInt() || !def.counts(p.Name.Name) {
			continue
		}
		s.fail(c.Args[i].Node, "%s takes a whole number for %s, and this is %s", def.node.Name, p.Name.Name, geom.TrimZeros(r.RatString()))
		return false
	}
	return true
}

// counts tells whether a number bounds a family that the construction gives.
func (def *definition) counts(name string) bool {
	for _, g := range def.node.Gives {
		for _, bound := range []*syntax.Expr{g.From, g.To} {
			if bound != nil && nameIn(bound.Span(def.file).Text(), name) {
				return true
			}
		}
	}
	return false
}
