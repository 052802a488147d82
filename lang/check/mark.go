package check

import (
	"slices"

	"fmt"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// maxClass is how many ticks, arcs or arrows a mark may have.
const maxClass = 4

// mark proves what it says and puts it into the figure.
func (s *scope) mark(m *syntax.Mark) {
	switch {
	case len(m.Right) > 0:
		for _, r := range m.Right {
			s.markRight(m.Node, r)
		}
	case len(m.Parallel) > 0:
		s.markParallel(m)
	case s.mentionsAngle(m.First):
		s.markAngles(m)
	default:
		s.markEqual(m)
	}
}

// putBare is put, if any of what is marked has no mark yet.
func (s *scope) putBare(bare []bool, make func(step int, st *program.State) figure.Mark) func(*program.State) {
	if !slices.Contains(bare, true) {
		return func(*program.State) {}
	}
	return s.put(make)
}

// put adds a mark to the figure, if this is a place whose marks are seen.
func (s *scope) put(make func(step int, st *program.State) figure.Mark) func(*program.State) {
	step := max(len(s.c.prog.Acts)-1, 0)
	if s.view != shown {
		return func(*program.State) {}
	}
	return func(st *program.State) { st.Marks = append(st.Marks, make(step, st)) }
}

// classes are the groups of one kind of mark: which things are marked alike.
type classes struct {
	count int
	of    map[any]int // by what is marked
}

// class gives out the class of things that are marked alike, and which of them
// have no mark yet: equal is transitive, and so a mark that names a thing of a
// class goes on with it.
func (s *scope) class(n syntax.Node, all *classes, what string, things []any) (class int, bare []bool) {
	for _, thing := range things {
		if class == 0 {
			class = all.of[thing]
		}
	}
	if class == 0 {
		class = s.next(n, &all.count, what)
	}
	if all.of == nil {
		all.of = map[any]int{}
	}
	for _, thing := range things {
		_, marked := all.of[thing]
		bare = append(bare, !marked)
		if !marked {
			all.of[thing] = class
		}
	}
	return class, bare
}

// next counts the classes of a kind of mark.
func (s *scope) next(n syntax.Node, count *int, what string) int {
	*count++
	if *count == maxClass+1 && s.view == shown {
		s.fail(n, "a fifth group of %s cannot be told from the others", what).Help = "mark fewer groups, or claim instead"
	}
	return min(*count, maxClass)
}

// kept are the things of a list for which keep is true.
func kept[T any](all []T, keep []bool) (some []T) {
	for i, x := range all {
		if keep[i] {
			some = append(some, x)
		}
	}
	return some
}

// markRight proves a right angle and puts a square into it.
func (s *scope) markRight(n syntax.Node, r *syntax.Ref) {
	ps, ok := s.angleRun(r)
	if !ok {
		return
	}
	put := s.put(func(step int, st *program.State) figure.Mark {
		return figure.RightAngle{Angle: angleOf(st, ps, false), Step: step}
	})
	drawn := s.armsDrawn(r, ps)
	s.prove(n, func(st *program.State) error {
		if _, err := cornerOf(st, ps, false); err != nil {
			return err
		}
		if err := drawn(st); err != nil {
			return err
		}
		u, w := st.Point(ps[0]).Sub(st.Point(ps[1])), st.Point(ps[2]).Sub(st.Point(ps[1]))
		if u.Dot(w).Sign() != 0 {
			a, _ := cornerOf(st, ps, false)
			return &program.Fault{Text: fmt.Sprintf("the mark is false: angle %s is %s, %s° off a right angle", s.letters(ps), a, sig(abs(90-a.Float())))}
		}
		put(st)
		return nil
	})
}

func (s *scope) letters(ps []int) string {
	var b strings.Builder
	for _, p := range ps {
		b.WriteString(s.slot(p).Name)
	}
	return b.String()
}

func angleOf(st *program.State, ps []int, reflex bool) figure.Angle {
	return figure.Angle{A: st.Point(ps[0]), Vertex: st.Point(ps[1]), B: st.Point(ps[2]), Reflex: reflex}
}

// armsDrawn checks that something is drawn along both arms of an angle.
func (s *scope) armsDrawn(r *syntax.Ref, ps []int) func(*program.State) error {
	first, second := s.drawn(r.Node, ps[1], ps[0]), s.drawn(r.Node, ps[1], ps[2])
	return func(st *program.State) error {
		if err := first(st); err != nil {
			return err
		}
		return second(st)
	}
}

// drawn checks that a drawn straight covers the stretch between two points, or
// at least begins to, so that a mark has something to stand on.
func (s *scope) drawn(n syntax.Node, a, b int) func(*program.State) error {
	bars := append([]int{}, s.bars...)
	if s.view != shown {
		return func(*program.State) error { return nil }
	}
	return func(st *program.State) error {
		pa, pb := st.Point(a), st.Point(b)
		hidden := false
		for _, bar := range bars {
			c, ok := st.Value(bar).(*program.Curve)
			if !ok || !covers(c, pa, pb) {
				continue
			}
			if !st.Program.Slots[bar].Ink.Hidden {
				return nil
			}
			hidden = true
		}
		name := s.names2(a, b)
		if hidden {
			return &program.Fault{Text: name + " is hidden, so the mark has nothing to stand on", Help: "leave the hide out, or the mark"}
		}
		return &program.Fault{Text: name + " is not drawn, so the mark has nothing to stand on", Help: "join " + name + " first", Cascade: true}
	}
}

// covers tells whether a straight runs all the way from p to q. Lines whose
// ends are open are drawn past their points.
func covers(c *program.Curve, p, q geom.Point) bool {
	return c.Straight.Contains(p) && c.Straight.Contains(q)
}

// markEqual proves lengths equal and ticks them.
func (s *scope) markEqual(m *syntax.Mark) {
	var pairs []pair
	var terms []expr
	good := true
	for _, e := range append([]*syntax.Expr{m.First}, m.Equal...) {
		t, ok := s.expr(e, wantAny)
		if ok && t.ends == nil {
			s.fail(e.Node, "only a join can carry ticks, and this is no pair of points").Help = "such as: mark AB = CD"
			ok = false
		}
		good = good && ok
		if ok {
			pairs = append(pairs, *t.ends)
			terms = append(terms, t)
		}
	}
	if !good {
		return
	}
	if len(terms) < 2 {
		s.fail(m.Node, "equal to what?").Help = "such as: mark AB = CD, or label AB length"
		return
	}
	things := make([]any, len(pairs))
	for i, p := range pairs {
		things[i] = pairOf(p[0], p[1])
	}
	class, bare := s.class(m.Node, &s.home().ticks, "ticks", things)
	put := s.putBare(bare, func(step int, st *program.State) figure.Mark {
		return figure.Ticks{Segments: segments(st, kept(pairs, bare)), Count: class, Step: step}
	})
	s.proveMark(m, pairs, s.links(terms), put)
}

// links compares each term of a mark with the first.
func (s *scope) links(terms []expr) []relation {
	var out []relation
	for _, t := range terms[1:] {
		if l, ok := s.compare(terms[0], "=", t); ok {
			out = append(out, l)
		}
	}
	return out
}

// proveMark proves all of a mark, checks that it stands on ink, and puts it.
func (s *scope) proveMark(m *syntax.Mark, pairs []pair, links []relation, put func(*program.State)) {
	var ink []func(*program.State) error
	for _, p := range pairs {
		ink = append(ink, s.drawn(m.Node, p[0], p[1]))
	}
	s.prove(m.Node, func(st *program.State) error {
		for _, l := range links {
			v, err := l(st)
			if err != nil {
				return err
			}
			if !v.holds {
				return &program.Fault{Text: "the mark is false: " + v.why}
			}
		}
		for _, check := range ink {
			if err := check(st); err != nil {
				return err
			}
		}
		put(st)
		return nil
	})
}

func segments(st *program.State, pairs []pair) []figure.Segment {
	var out []figure.Segment
	for _, p := range pairs {
		out = append(out, figure.Segment{A: st.Point(p[0]), B: st.Point(p[1])})
	}
	return out
}

// markAngles proves angles equal and gives them arcs.
func (s *scope) markAngles(m *syntax.Mark) {
	var corners [][]int
	var reflex []bool
	var terms []expr
	s.stating = true
	defer func() { s.stating = false }()
	for _, e := range append([]*syntax.Expr{m.First}, m.Equal...) {
		t, ok := s.expr(e, wantAngle)
		if !ok {
			return
		}
		ref, bent := angleRef(e)
		if ref == nil {
			s.fail(e.Node, "only an angle of three points can carry arcs").Help = "such as: mark angle ABC = DEF"
			return
		}
		ps, ok := s.angleRun(ref)
		if !ok {
			return
		}
		corners, reflex, terms = append(corners, ps), append(reflex, bent), append(terms, t)
	}
	things := make([]any, len(corners))
	for i, ps := range corners {
		things[i] = corner{ps[1], pairOf(ps[0], ps[2]), reflex[i]}
	}
	class, bare := s.class(m.Node, &s.home().arcs, "angle arcs", things)
	put := s.putBare(bare, func(step int, st *program.State) figure.Mark {
		var out []figure.Angle
		for i, ps := range corners {
			if bare[i] {
				out = append(out, angleOf(st, ps, reflex[i]))
			}
		}
		return figure.AngleArcs{Angles: out, Count: class, Step: step}
	})
	var arms []pair
	for _, ps := range corners {
		arms = append(arms, pair{ps[1], ps[0]}, pair{ps[1], ps[2]})
	}
	s.proveMark(m, arms, s.links(terms), put)
}

// corner is an angle as a thing that is marked.
type corner struct {
	vertex int
	arms   pair
	reflex bool
}

// angleRef is the three points of angle ABC, or of ABC where an angle is wanted.
func angleRef(e *syntax.Expr) (*syntax.Ref, bool) {
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) > 0 || e.Head.Head.Half || e.Head.Head.Square {
		return nil, false
	}
	v := e.Head.Head.Value
	if v.Angle != nil && v.Angle.Name == "" {
		return v.Angle, v.Reflex
	}
	if v.Ref != nil && v.Ref.Name == "" {
		return v.Ref, false
	}
	return nil, false
}

// markParallel proves straights parallel and gives them arrows.
func (s *scope) markParallel(m *syntax.Mark) {
	first := plainExpr(m.First)
	if first == nil {
		s.fail(m.First.Node, "a straight is wanted here")
		return
	}
	var lines []curve
	var links []relation
	for _, r := range append([]*syntax.Ref{first}, m.Parallel...) {
		l, ok := s.line(r)
		if !ok {
			return
		}
		lines = append(lines, l)
		if r != first {
			link, ok := s.twoLines(first, r, 0)
			if !ok {
				return
			}
			links = append(links, link)
		}
	}
	things := make([]any, len(lines))
	for i, l := range lines {
		if things[i] = l.slot; l.run {
			things[i] = pairOf(l.from, l.to)
		}
	}
	class, bare := s.class(m.Node, &s.home().arrows, "arrows", things)
	put := s.putBare(bare, func(step int, st *program.State) figure.Mark {
		var out []figure.Segment
		for _, l := range kept(lines, bare) {
			out = append(out, l.stretch(st))
		}
		return figure.Arrows{Segments: out, Count: class, Step: step}
	})
	var pairs []pair
	for _, l := range lines {
		if l.run {
			pairs = append(pairs, pair{l.from, l.to})
		}
	}
	s.proveMark(m, pairs, links, put)
}

// stretch is the part of a straight that a mark goes on: between its letters,
// or between the outermost of its points.
func (c curve) stretch(st *program.State) figure.Segment {
	if c.run {
		return figure.Segment{A: st.Point(c.from), B: st.Point(c.to)}
	}
	k := st.Curve(c.slot)
	l := k.Line()
	if len(k.Used) == 0 {
		return figure.Segment{A: l.P, B: l.P.Add(l.D)}
	}
	lo, hi := k.Used[0], k.Used[0]
	for _, p := range k.Used {
		if p.Sub(lo).Dot(l.D).Float() < 0 {
			lo = p
		}
		if p.Sub(hi).Dot(l.D).Float() > 0 {
			hi = p
		}
	}
	if lo == hi {
		hi = lo.Add(nearUnit(l.D).Scale(st.Field.Int(2)))
	}
	return figure.Segment{A: lo, B: hi}
}

// home is the scope whose marks share their classes: the file's.
func (s *scope) home() *scope {
	for s.parent != nil {
		s = s.parent
	}
	return s
}
