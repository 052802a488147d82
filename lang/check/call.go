package check

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// named begins with names: d meets e at X, or n by erect(m, P).
func (s *scope) named(n *syntax.Named) {
	if n.Meets != nil {
		if len(n.Names) != 1 {
			s.fail(n.Names[1].Node, "one curve meets another").Help = "write a line for each: d meets e at X"
			s.cuts(curve{}, false, n.Meets)
			return
		}
		c, ok := s.curve(n.Names[0])
		s.cuts(c, ok, n.Meets)
		return
	}
	s.call(n, n.By)
}

// call expands a construction and gives its results to the names.
func (s *scope) call(n *syntax.Named, c *syntax.CallExp) {
	targets, ok := s.targets(n.Names)
	def := s.find(c.Name, c.Node)
	if def == nil || !ok || def.faulty {
		s.poison(targets)
		return
	}
	if s.depth >= maxDepth {
		s.fail(n.Node, "constructions are nested more than %d deep", maxDepth)
		s.c.full = true
		return
	}
	in := s.enter(n, c, def)
	if !in.bind(def, c, s) {
		s.poison(targets)
		return
	}
	if !s.numbersSuit(n, def, in) {
		s.poison(targets)
		return
	}
	if !s.wholeBounds(def, c, in) || !s.needs(n, def, in) || !s.body(n, def, in) {
		s.poison(targets)
		return
	}
	results, ok := in.results(def)
	if !ok || in.broken {
		s.broken = s.broken || in.broken && s.depth > 0
		s.poison(targets)
		return
	}
	if in.view != unseen {
		s.bars = append(s.bars, in.bars...) // they are on the paper, and can carry marks
	}
	s.receive(n, def, targets, results, in.first, in.view == shown)
	s.threaded(in, targets, results)
	if in.view != unseen {
		s.adopt(in, targets, results)
	}
}

// body expands the acts of a construction.
func (s *scope) body(n *syntax.Named, def *definition, in *scope) bool {
	in.foresee(def.node.Body)
	for _, st := range def.node.Body {
		switch {
		case st.Needs == nil && st.Sentence == nil:
			in.statement(st)
		case st.Needs != nil && in.late(def, st.Needs):
			if !s.hold(n, def, in, []*syntax.Needs{st.Needs}) {
				return false
			}
		}
	}
	return true
}

// enter is the scope of one call.
func (s *scope) enter(n *syntax.Named, c *syntax.CallExp, def *definition) *scope {
	in := newScope(s.c, def.file)
	in.env, in.depth, in.parent = def.env, s.depth+1, s
	in.first, in.callers = len(s.c.prog.Slots), map[string]string{}
	mode := brief
	switch {
	case c.Full:
		mode = shown
	case c.Unseen:
		mode = unseen
	}
	in.view = max(mode, s.view)
	in.via = append(append([]program.Call{}, s.via...), program.Call{Span: s.span(n.Node), Name: c.Name, Unseen: in.view == unseen})
	in.grouped = s.grouped && in.view == shown
	return in
}

// target is a name that takes a result.
type target struct {
	name string
	node syntax.Node
}

// targets are the names before by, families spread out.
func (s *scope) targets(refs []*syntax.Ref) ([]target, bool) {
	var out []target
	good := true
	for _, r := range refs {
		var names []string
		ok := true
		switch {
		case r.Name != "":
			names, ok = s.namesOf(r.Name, r.Index)
		case len(r.Points) == 1:
			names, ok = s.namesOf(r.Points[0].Name, r.Points[0].Index)
		default:
			s.fail(r.Node, "one name is wanted here, and this is a run of %d", len(r.Points)).Help = "results are parted by commas: M, n by bisect(A, B)"
			ok = false
		}
		good = good && ok
		for _, name := range names {
			out = append(out, target{name, r.Node})
		}
	}
	return out, good
}

// poison makes the names known without a value, so that their users are not blamed.
func (s *scope) poison(targets []target) {
	for _, t := range targets {
		kind := program.Line
		if syntax.NamesPoint(t.name) {
			kind = program.Point
		}
		if _, taken := s.names[t.name]; !taken {
			s.declare(t.name, kind, t.node)
		}
	}
}

// paramKind is the kind of a parameter or result, by its word.
func (s *scope) paramKind(p *syntax.Param) (program.Kind, bool) {
	kinds := map[string]program.Kind{
		"point": program.Point, "line": program.Line, "circle": program.Circle,
		"length": program.Length, "angle": program.Size, "number": program.Number,
	}
	kind, ok := kinds[p.Kind]
	if !ok {
		s.fail(p.Node, "points can be given, but not taken").Help = "name each point by itself"
	}
	return kind, ok
}

// bind gives the parameters their arguments, resolved in the caller's scope.
func (in *scope) bind(def *definition, c *syntax.CallExp, caller *scope) bool {
	params := def.node.Params
	if len(c.Args) != len(params) {
		p := caller.fail(c.Node, "%s takes %s, not %d", c.Name, plural(len(params), "argument"), len(c.Args))
		p.Help = "it reads: " + head(def)
		return false
	}
	good := true
	for i, p := range params {
		name, kind, ok := in.paramName(p)
		if !ok {
			return false
		}
		slot, ok := caller.argument(c.Args[i], kind, in, name, def)
		good = good && ok
		if ok && slot >= 0 {
			in.names[name] = slot
		}
		in.callName(name, c.Args[i], caller)
	}
	return good
}

func (in *scope) paramName(p *syntax.Param) (string, program.Kind, bool) {
	kind, ok := in.paramKind(p)
	if !ok {
		return "", kind, false
	}
	if p.Name.Name != "" {
		return p.Name.Name, kind, true
	}
	return p.Name.Points[0].Name, kind, true
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// head is a construction's first line, as its author wrote it.
func head(def *definition) string {
	line, _ := def.file.Position(def.node.Span(def.file).Start)
	return strings.TrimSpace(def.file.Line(line))
}

// argument is the slot of one argument; a number known beforehand becomes a
// constant of the inner scope instead, and the slot is -1.
func (s *scope) argument(e *syntax.Expr, kind program.Kind, in *scope, name string, def *definition) (int, bool) {
	switch kind {
	case program.Point, program.Line, program.Circle:
		r := plainExpr(e)
		if r == nil {
			s.fail(e.Node, "a %s is wanted here", kind).Help = "it reads: " + head(def)
			return 0, false
		}
		return s.thingArgument(r, kind, in.view)
	case program.Size:
		return s.angleArgument(e)
	}
	return s.amountArgument(e, kind, in, name)
}

// thingArgument is a point, line or circle by its name.
func (s *scope) thingArgument(r *syntax.Ref, kind program.Kind, v view) (int, bool) {
	switch kind {
	case program.Point:
		return s.point(r)
	case program.Line:
		return s.lineArgument(r, v)
	}
	return s.circle(r)
}

func (s *scope) angleArgument(e *syntax.Expr) (int, bool) {
	v, ok := s.expr(e, wantAngle)
	slot := s.add(program.Size, e.Node)
	if ok {
		s.emit(e.Node, func(st *program.State) error {
			a, err := v.size(st)
			st.Set(slot, a)
			return err
		})
	}
	return slot, ok
}

func (s *scope) amountArgument(e *syntax.Expr, kind program.Kind, in *scope, name string) (int, bool) {
	w := wantOpening
	if kind == program.Number {
		w = wantNumber
	}
	v, ok := s.expr(e, w)
	if ok && kind == program.Number && v.rat != nil {
		in.consts[name] = v.rat
		return -1, true
	}
	slot := s.add(kind, e.Node)
	if ok {
		s.emit(e.Node, func(st *program.State) error {
			x, err := v.value(st)
			if err == nil {
				st.Set(slot, x)
			}
			return err
		})
	}
	return slot, ok
}

// lineArgument is a named line, or the whole line of a run: what a construction
// meets beyond the run's ends is produced faintly.
func (s *scope) lineArgument(r *syntax.Ref, v view) (int, bool) {
	c, ok := s.line(r)
	if !ok || !c.run {
		return c.slot, ok
	}
	slot := s.add(program.Line, r.Node)
	s.slot(slot).Name = c.text
	if v != unseen {
		s.draw(slot, figure.Construction)
		ink := s.slot(slot).Ink
		ink.Label, ink.Weight = nil, figure.Faint
	}
	s.c.through[slot] = pair{c.from, c.to}
	s.straight(r.Node, slot, c.from, c.to, false, false)
	if c.slot >= 0 {
		s.emit(r.Node, func(st *program.State) error {
			st.Curve(slot).On = append(st.Curve(slot).On, st.Curve(c.slot).On...)
			return nil
		})
	}
	return slot, true
}

// result is a slot that a construction gives.
type result struct {
	slot int
	kind program.Kind
}

// results finds what a construction gives, families spread out.
func (in *scope) results(def *definition) ([]result, bool) {
	var out []result
	good := true
	for _, g := range def.node.Gives {
		names, ok := in.givenNames(g)
		good = good && ok
		for _, name := range names {
			slot, known := in.names[name]
			if !known {
				in.fail(g.Node, "%s gives %s, but nothing makes it", def.node.Name, name)
				good = false
				continue
			}
			kind := in.slot(slot).Kind
			if want := strings.TrimSuffix(g.Kind, "s"); kind.String() != want {
				in.fail(g.Node, "%s gives %s as a %s, but it is a %s", def.node.Name, name, want, kind)
				good = false
			}
			out = append(out, result{slot, kind})
		}
	}
	return out, good
}

func (in *scope) givenNames(g *syntax.Param) ([]string, bool) {
	base, ix := g.Name.Name, g.Name.Index
	if base == "" {
		base, ix = g.Name.Points[0].Name, g.Name.Points[0].Index
	}
	if g.From == nil {
		one, ok := in.indexed(base, ix)
		return []string{one}, ok
	}
	from, ok1 := in.whole(g.From)
	to, ok2 := in.whole(g.To)
	if !ok1 || !ok2 {
		return nil, false
	}
	var out []string
	for i := from; i <= to && len(out) <= maxObjects; i++ {
		out = append(out, fmt.Sprintf("%s%d", base, i))
	}
	return out, true
}

// receive gives results their names in the caller's scope.
func (s *scope) receive(n *syntax.Named, def *definition, targets []target, results []result, first int, seen bool) {
	if len(targets) > len(results) || len(targets) < len(results) && def.hasFamily() || len(targets) == 0 {
		p := s.fail(n.Node, "%s gives %s for %s", def.node.Name, plural(len(results), "result"), plural(len(targets), "name"))
		p.Help = "write " + s.asNamed(n, def, results)
		if def.hasFamily() {
			p.Help = "name them all, as a family: " + s.asFamily(n, def, len(results))
		}
		s.poison(targets)
		return
	}
	var made []int
	for i, t := range targets {
		r := results[i]
		if isPoint := syntax.NamesPoint(t.name); isPoint != (r.kind == program.Point) {
			p := s.fail(t.node, "%s gives a %s here, and %s is the name of %s", def.node.Name, r.kind, t.name, map[bool]string{true: "a point", false: "a line or the like"}[isPoint])
			p.Help = "write " + s.asNamed(n, def, results)
			continue
		}
		slot := s.declare(t.name, r.kind, t.node)
		made = append(made, slot)
		s.alias(n.Node, slot, r.slot)
		s.draw(slot, figure.Construction)
		if inner := s.slot(r.slot).Ink; inner != nil {
			s.slot(slot).Ink.Whole, s.slot(slot).Ink.Ends = inner.Whole, inner.Ends
			if r.slot >= first {
				inner.Hidden, inner.Label = true, nil
				if seen {
					s.slot(slot).Ink.Step = inner.Step
					s.c.outer[r.slot] = slot
				}
			}
		}
		if r.kind == program.Number || r.kind == program.Length || r.kind == program.Size {
			s.slot(slot).Ink = nil
		}
		if c, ok := s.c.centres[r.slot]; ok {
			s.c.centres[slot] = c
		}
	}
	s.receiveCentres(targets, results)
	if s.depth == 0 {
		s.c.calls = append(s.c.calls, made)
	}
}

// receiveCentres gives a circle the centre that comes with it.
func (s *scope) receiveCentres(targets []target, results []result) {
	for i, t := range targets {
		centre, ok := s.c.centres[results[i].slot]
		for j, r := range results[:len(targets)] {
			if ok && r.slot == centre {
				s.c.centres[s.names[t.name]] = s.names[targets[j].name]
			}
		}
	}
}

// adopt makes straights that a construction has drawn between points of the
// caller the caller's own, under the caller's names.
func (s *scope) adopt(in *scope, targets []target, results []result) {
	outer := map[int]int{}
	for inner, slot := range in.copies {
		outer[inner] = slot
	}
	for _, slot := range in.names {
		if slot < in.first {
			outer[slot] = slot // a parameter that is the caller's very slot
		}
	}
	for i, t := range targets {
		if i < len(results) {
			outer[results[i].slot] = s.names[t.name]
		}
	}
	var pairs []pair
	for k := range in.straights {
		pairs = append(pairs, k)
	}
	slices.SortFunc(pairs, func(a, b pair) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) })
	for _, k := range pairs {
		a, ok1 := outer[k[0]]
		b, ok2 := outer[k[1]]
		if !ok1 || !ok2 {
			continue
		}
		for _, slot := range in.straights[k] {
			s.bar(a, b, slot, s.reachOf(slot))
		}
	}
}

// alias gives one slot the value of another.
func (s *scope) alias(n syntax.Node, slot, from int) {
	s.c.hand.same[slot] = from
	aside := s.slot(from).Aside
	s.emit(n, func(st *program.State) error {
		if st.Value(from) == nil {
			return program.Poisoned
		}
		st.Set(slot, st.Value(from))
		if p, ok := st.Values[slot].(geom.Point); ok && aside {
			showOn(st, p)
		}
		return nil
	})
}

// showOn makes the curves reach out for a point that was met unseen and is
// shown as a result.
func showOn(st *program.State, p geom.Point) {
	for _, v := range st.Values {
		c, ok := v.(*program.Curve)
		for i := 0; ok && i < len(c.On); i++ {
			if c.On[i] == p {
				c.Used = append(c.Used, p)
				break
			}
		}
	}
}

// pure is a constructible number as an amount.
func pure(x geom.Real) program.Amount { return exact.Pure(x) }

type rational = *big.Rat
