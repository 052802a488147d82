package check

import (
	"fmt"
	"slices"
	"strings"

	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// definition is a construction and what it could see where it stands.
type definition struct {
	node   *syntax.Construction
	file   *source.File
	env    *env
	faulty bool // it has mistakes of its own, which have been told
}

// env is the constructions known at a place: the newest first.
type env struct {
	def  *definition
	next *env
}

func (e *env) find(name string) *definition {
	for ; e != nil; e = e.next {
		if e.def.node.Name == name {
			return e.def
		}
	}
	return nil
}

// inLibrary is the library's construction of a name, or nil.
func (s *scope) inLibrary(name string) *definition {
	if def, ok := s.c.library[name]; ok {
		return def
	}
	if f := s.c.loader.Library(name); f != nil {
		for _, st := range f.Statements {
			if st.Construction != nil && st.Construction.Name == name {
				def := &definition{node: st.Construction, file: f.Source}
				s.c.library[name] = def
				return def
			}
		}
	}
	return nil
}

// define makes a construction known from here on, and checks it once by itself.
func (s *scope) define(n *syntax.Construction) {
	if old := s.env.find(n.Name); old != nil && old.file == s.file {
		p := s.fail(n.Node, "%s is defined already", n.Name)
		p.Notes = append(p.Notes, source.Note{Span: old.node.Span(old.file), Text: "here"})
	}
	def := &definition{node: n, file: s.file, env: s.env}
	before := len(*s.c.problems)
	outer := s.c.defining
	s.c.defining = n.Name
	s.rehearse(def, brief, 12)
	s.c.defining = outer
	def.faulty = len(*s.c.problems) > before
	s.env = &env{def, s.env}
}

// Rehearse expands the last construction of a file on imagined arguments, the
// numbers as given, for its acts and their count. It is nil where the file defines
// none, or a faulty one.
func Rehearse(f *syntax.File, loader Loader, number int64) *program.Program {
	var problems source.List
	c := newChecker(f, loader, &problems, Options{})
	s := newScope(c, f.Source)
	for _, st := range f.Statements {
		s.statement(st)
	}
	if s.env == nil || problems.Failed() {
		return nil
	}
	return s.rehearse(s.env.def, shown, number)
}

// rehearse expands a construction on imagined arguments, in a Program of its
// own, so that its mistakes show even where nothing calls it.
func (s *scope) rehearse(def *definition, v view, number int64) *program.Program {
	c := *s.c
	c.prog = &program.Program{Source: s.c.prog.Source, Unit: s.c.prog.Unit}
	c.forget()
	c.allowed = 0 // a call will tell
	c.unmet = nil
	in := newScope(&c, def.file)
	in.env, in.depth, in.view = def.env, s.depth+1, v
	for _, p := range def.node.Params {
		in.imagine(p, number)
	}
	for _, st := range def.node.Body {
		if st.Needs == nil {
			continue
		}
		in.placesAreParams(def, st.Needs)
		if !in.late(def, st.Needs) {
			in.needed(st.Needs.Relation)
		}
	}
	for _, st := range def.node.Body {
		switch {
		case st.Needs == nil:
			in.statement(st)
		case in.late(def, st.Needs):
			in.needed(st.Needs.Relation)
		}
	}
	in.results(def)
	s.c.spent, s.c.full = c.spent, c.full
	c.finish()
	return c.prog
}

// imagine declares a parameter without an argument.
func (in *scope) imagine(p *syntax.Param, number int64) {
	name := p.Name.Name
	if p.Name.Name == "" && len(p.Name.Points) == 1 {
		name = p.Name.Points[0].Name
	}
	if p.Kind == "number" {
		in.consts[name] = rat(number, 1)
	} else if kind, ok := in.paramKind(p); ok {
		in.declare(name, kind, p.Node)
	}
}

// use makes another file's constructions known from here on.
func (s *scope) use(u *syntax.Use) {
	f := s.c.loader.Use(u.Path, s.span(u.Node))
	if f == nil {
		s.c.lost.files = true
		return
	}
	if s.c.isFigure(f) {
		s.fail(u.Node, "%s holds a figure, and only constructions can be used", u.Path).Help = "put the constructions into a file of their own"
		return
	}
	if slices.Contains(s.c.using, f.Source.Name) || len(s.c.using) == maxUses {
		s.fail(u.Node, "%s uses itself: %s", f.Source.Name, strings.Join(append(s.c.using, f.Source.Name), " → ")).Help = "put what both need into a third file"
		return
	}
	s.c.using = append(s.c.using, f.Source.Name)
	defer func() { s.c.using = s.c.using[:len(s.c.using)-1] }()
	in := newScope(s.c, f.Source)
	for _, st := range f.Statements {
		in.statement(st)
	}
	// The used file's constructions come over this file's, in their order.
	var defs []*definition
	for e := in.env; e != nil; e = e.next {
		defs = append(defs, e.def)
	}
	for i := len(defs) - 1; i >= 0; i-- {
		s.env = &env{defs[i], s.env}
	}
}

// find is the construction of a name: the file's own, a used one, or the library's.
func (s *scope) find(name string, at syntax.Node) *definition {
	if def := s.env.find(name); def != nil {
		return def
	}
	if def := s.inLibrary(name); def != nil {
		return def
	}
	if name == s.c.defining {
		s.fail(at, "%s cannot call itself", name).Help = "repeat … end does a thing many times"
		return nil
	}
	if later := s.c.heads[name]; later != nil && s.file == s.c.prog.Source {
		p := s.fail(at, "%s is used before it is defined", name)
		p.Help = "move the construction above this line"
		p.Notes = append(p.Notes, source.Note{Span: later.Span(s.file), Text: name + " is defined here"})
		return nil
	}
	if s.c.lost.constructions[name] || s.c.lost.files {
		return nil
	}
	p := s.fail(at, "there is no construction %s here", name)
	known := s.c.loader.LibraryNames()
	for e := s.env; e != nil; e = e.next {
		known = append(known, e.def.node.Name)
	}
	switch near := syntax.Nearest(name, known); {
	case otherNames[name] != "":
		p.Help = "the library calls it " + otherNames[name]
	case near != "":
		p.Help = "did you mean " + near + "?"
	default:
		p.Help = "trammel doc lists the library; your own stand before their use"
	}
	return nil
}

// otherNames are what people call constructions of the library.
var otherNames = map[string]string{
	"midpoint": "middle, or bisect for the line too", "perpendicular": "erect (at a point) or drop (from a point)",
	"bisector": "bisect (of a join) or halve (of an angle)", "equilateral": "triangleon", "square": "squareon",
	"altitude": "drop", "foot": "drop", "split": "divide", "tangentat": "tangent",
	"bisectangle": "halve", "anglebisector": "halve", "perpendicularbisector": "bisect",
	"incentre": "incircle", "incenter": "incircle", "circumcentre": "circumcircle", "circumcenter": "circumcircle",
	"midpoints": "middle", "medians": "centroid", "altitudes": "orthocentre",
}

// hasFamily tells whether a construction gives a family of points.
func (d *definition) hasFamily() bool {
	for _, g := range d.node.Gives {
		if g.From != nil {
			return true
		}
	}
	return false
}

// asFamily is the caller's line with its one name made a family of n, or else
// what a construction gives, as its head has it.
func (s *scope) asFamily(call *syntax.Named, d *definition, n int) string {
	_, rest, _ := strings.Cut(s.span(call.Node).Text(), " by ")
	if len(d.node.Gives) == 1 && len(call.Names) == 1 {
		name, _, _ := strings.Cut(s.span(call.Names[0].Node).Text(), "[")
		return fmt.Sprintf("%s[1 to %d] by %s", strings.TrimRight(name, "0123456789"), n, rest)
	}
	_, gives, _ := strings.Cut(head(d), " gives ")
	return gives
}

// asNamed is the caller's line with names that suit the results: the caller's own as far
// as they do, in the other case where they do not, and the definition's for what has none.
func (s *scope) asNamed(call *syntax.Named, d *definition, results []result) string {
	_, rest, _ := strings.Cut(s.span(call.Node).Text(), " by ")
	var names []string
	for i, r := range results[:min(len(results), max(1, len(call.Names)))] {
		name := ""
		if i < len(call.Names) {
			name, _, _ = strings.Cut(s.span(call.Names[i].Node).Text(), "[")
		}
		names = append(names, s.suited(name, d.node.Gives[min(i, len(d.node.Gives)-1)], r.kind))
	}
	return strings.Join(names, ", ") + " by " + rest
}

// suited is a name in the case that its kind asks for, or the definition's where it has
// none such or that is taken.
func (s *scope) suited(name string, g *syntax.Param, kind program.Kind) string {
	isPoint := kind == program.Point
	if name != "" && syntax.NamesPoint(name) == isPoint {
		return name
	}
	other := strings.ToLower(name)
	if isPoint {
		other = strings.ToUpper(name)
	}
	if r := []rune(strings.TrimRight(name, "0123456789'")); len(r) != 1 || s.knows(other) {
		return s.span(g.Name.Node).Text()
	}
	return other
}
