package check

import (
	"errors"
	"fmt"
	"strings"

	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// needs emits the step that holds a call against what its construction needs.
// Only then do the parameters have values inside: a failing need poisons the
// results and nothing else is blamed.
func (s *scope) needs(n *syntax.Named, def *definition, in *scope) {
	var all []need
	for _, st := range def.node.Body {
		if st.Needs == nil {
			continue
		}
		if rel, ok := in.needed(st.Needs.Relation); ok {
			all = append(all, need{rel, st.Needs.Span(def.file)})
		}
	}
	if len(all) == 0 {
		return
	}
	copies := map[int]int{}
	var order []int
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
		s.c.hand.same[inner] = outer
		s.c.outer[inner] = outer
		order = append(order, inner)
	}
	in.copies = copies
	name := def.node.Name
	s.emit(n.Node, func(st *program.State) error {
		for _, need := range all {
			if err := need.check(st, name); err != nil {
				return err
			}
		}
		for _, inner := range order {
			st.Set(inner, st.Value(copies[inner]))
		}
		return nil
	})
}

// needed resolves what a construction needs of its parameters.
func (in *scope) needed(r *syntax.Relation) (relation, bool) {
	in.needing = true
	defer func() { in.needing = false }()
	return in.relation(r)
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
			span := st.Needs.Span(def.file)
			p := s.fail(n.Node, "%s needs %s: %s", def.node.Name, strings.TrimSpace(strings.TrimPrefix(span.Text(), "needs")), in.knownValues(r))
			p.Notes = append(p.Notes, source.Note{Span: span, Text: "what " + def.node.Name + " needs"})
			return false
		}
	}
	return true
}

// need is one thing that must hold of a construction's parameters.
type need struct {
	holds relation
	span  source.Span
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
	text := strings.TrimSpace(strings.TrimPrefix(n.span.Text(), "needs"))
	return &program.Fault{Text: fmt.Sprintf("%s needs %s: %s", name, text, v.why), Notes: []source.Note{note}}
}

// knownValues tells what the number parameters in a comparison are: "n is 1".
func (in *scope) knownValues(r *syntax.Relation) string {
	var out []string
	for _, side := range append([]*syntax.Side{r.Left}, sidesOf(r.Chain)...) {
		if ref := plainRef(side); ref != nil && ref.Name != "" {
			out = append(out, ref.Name+" is "+in.consts[ref.Name].RatString())
		}
	}
	return strings.Join(out, ", ")
}
