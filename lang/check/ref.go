package check

import (
	"fmt"
	"math/big"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// indexed is a name with its index worked in: P[i+1] is P4 when i is 3.
func (s *scope) indexed(name string, ix *syntax.Index) (string, bool) {
	if ix == nil {
		return name, true
	}
	if ix.To != nil {
		s.fail(ix.Node, "a family such as %s[1 to 4] cannot stand here", name).Help = "name one of them: " + name + "1"
		return name, false
	}
	i, ok := s.whole(ix.From)
	if !ok {
		return name, false
	}
	if i < 0 {
		s.fail(ix.Node, "the index is %d, less than 0", i)
		return name, false
	}
	return fmt.Sprintf("%s%d", name, i), true
}

// family is the names of P[1 to 4], or of a plain name alone.
func (s *scope) family(name string, ix *syntax.Index) ([]string, bool) {
	names, ok := s.namesOf(name, ix)
	if ok && len(names) == 0 {
		s.fail(ix.Node, "%s%s holds nothing", name, s.span(ix.Node).Text()).Help = "count upwards, as in " + name + "[1 to 4]"
		return nil, false
	}
	return names, ok
}

// namesOf is family where P[1 to 0] may stand, which has no names.
func (s *scope) namesOf(name string, ix *syntax.Index) ([]string, bool) {
	if ix == nil || ix.To == nil {
		one, ok := s.indexed(name, ix)
		return []string{one}, ok
	}
	from, ok1 := s.whole(ix.From)
	to, ok2 := s.whole(ix.To)
	if !ok1 || !ok2 {
		return nil, false
	}
	if to-from >= maxObjects {
		s.fail(ix.Node, "the family has %d points, more than the limit of %d", to-from+1, maxObjects)
		return nil, false
	}
	if from < 0 {
		s.fail(ix.From.Node, "the index is %d, less than 0", from)
		return nil, false
	}
	var out []string
	for i := from; i <= to; i++ {
		out = append(out, fmt.Sprintf("%s%d", name, i))
	}
	return out, true
}

// whole is the value of an expression that must be a whole number known now.
func (s *scope) whole(e *syntax.Expr) (int, bool) {
	r, ok := s.constant(e)
	if !ok {
		return 0, false
	}
	if !r.IsInt() || !r.Num().IsInt64() || r.Num().Int64() > 1e6 || r.Num().Int64() < -1e6 {
		s.fail(e.Node, "%s is not a whole number", r.RatString())
		return 0, false
	}
	return int(r.Num().Int64()), true
}

// constant is the value of an expression that must be known before drawing.
func (s *scope) constant(e *syntax.Expr) (*big.Rat, bool) {
	v, ok := s.expr(e, wantNumber)
	if !ok {
		return nil, false
	}
	if v.rat == nil {
		s.fail(e.Node, "a number that is known beforehand is wanted here").Help = "numbers, loop variables and number parameters may stand here"
		return nil, false
	}
	return v.rat, true
}

// lookup finds a name of a wanted kind and reports what is wrong otherwise.
func (s *scope) lookup(name string, at syntax.Node, kinds ...program.Kind) (int, bool) {
	slot, ok := s.names[name]
	if !ok {
		if _, counting := s.consts[name]; counting {
			s.fail(at, "%s is a number, not a %s", name, kindWords(kinds))
			return 0, false
		}
		if s.c.lost.has(name) {
			return 0, false
		}
		p := s.fail(at, "%s is not known here", name)
		s.unmet(name, p)
		switch near := s.nearName(name, kinds...); {
		case s.needing:
			p.Help = "needs speaks of the parameters, and of points that are made above it"
		case s.depth > 0 && s.parent != nil && s.outside(name):
			p.Help = "a construction sees only its parameters: add " + name + " to them"
		case near != "":
			p.Help = "did you mean " + near + "?"
		case kinds[0] == program.Point:
			p.Help = "make it first: given " + name + " (0, 0), take " + name + " on …, or as a meeting: … at " + name
		case syntax.FollowsNumber(s.file, p.Span.Start):
			p.Text = name + " is not known here, and is no unit"
			p.Help = "the units are mm, cm and deg"
		case s.allPoints(syntax.AsRun(name)):
			p.Help = "points are capital letters: write " + strings.Join(syntax.AsRun(name), "")
		default:
			p.Help = "a name can be used only after the line that makes it"
		}
		return 0, false
	}
	if s.making.makes(slot) {
		s.making.unmade()
		return 0, false
	}
	s.slot(slot).Mentioned = true
	s.c.use(slot)
	if k, ok := s.c.circleOf[slot]; ok {
		s.slot(k).Mentioned = true
	}
	for _, k := range kinds {
		if s.slot(slot).Kind == k {
			return slot, true
		}
	}
	p := s.fail(at, "%s is a %s; a %s is wanted here", name, s.slot(slot).Kind, kindWords(kinds))
	p.Notes = append([]source.Note{{Span: s.slot(slot).Span, Text: name + " is made here"}}, p.Notes...)
	if s.slot(slot).Kind == program.Line && len(kinds) == 1 && kinds[0] == program.Circle {
		p.Help = fmt.Sprintf("of a line say on %[1]s, above %[1]s or below %[1]s", name)
	}
	if s.slot(slot).Kind == program.Rim {
		p.Help = "a curve round a join bounds a region, as in: shade where inside " + name + "; its sides and half circles have no names of their own"
	}
	return 0, false
}

// allPoints tells whether every one of the names, two or more, is a known point.
func (s *scope) allPoints(names []string) bool {
	for _, name := range names {
		if slot, known := s.names[name]; !known || s.slot(slot).Kind != program.Point {
			return false
		}
	}
	return len(names) > 1
}

// unmet notes the first use of an unknown name; further uses are passed over.
func (s *scope) unmet(name string, p *source.Problem) {
	if s.depth == 0 && s.c.unmet != nil {
		s.c.unmet[name] = p
		s.c.lost.names[name] = true
	}
}

// settleUnmet tells names that are made only later from those that never are.
func (s *scope) settleUnmet() {
	for name, p := range s.c.unmet {
		slot, made := s.names[name]
		if !made || s.slot(slot).Span.Start < p.Span.Start {
			continue
		}
		p.Text = name + " is used before it is made"
		p.Help = "move this line below the one that makes it"
		p.Notes = append(p.Notes, source.Note{Span: s.slot(slot).Span, Text: name + " is made here"})
	}
}

func (s *scope) outside(name string) bool {
	for o := s.parent; o != nil; o = o.parent {
		if _, ok := o.names[name]; ok {
			return true
		}
	}
	return false
}

func kindWords(kinds []program.Kind) string {
	var words []string
	for _, k := range kinds {
		words = append(words, k.String())
	}
	return strings.Join(words, " or ")
}

// point is the slot of one known point.
func (s *scope) point(r *syntax.Ref) (int, bool) {
	if r.Name != "" {
		name, ok := s.indexed(r.Name, r.Index)
		if !ok {
			return 0, false
		}
		if _, known := s.names[name]; !known && !s.c.lost.has(name) {
			s.fail(r.Node, "a point is wanted here, and points have capital letters").Help = "write " + strings.ToUpper(r.Name) + " if that is the point"
			return 0, false
		}
		return s.lookup(name, r.Node, program.Point)
	}
	if len(r.Points) != 1 {
		s.fail(r.Node, "one point is wanted here, and this is a run of %d", len(r.Points))
		return 0, false
	}
	return s.pointName(r.Points[0])
}

func (s *scope) pointName(p *syntax.PointName) (int, bool) {
	name, ok := s.indexed(p.Name, p.Index)
	if !ok {
		return 0, false
	}
	return s.lookup(name, p.Node, program.Point)
}

// run is the slots of a run of points; n is how many there must be, or 0 for two or more.
func (s *scope) run(r *syntax.Ref, n int) ([]int, bool) {
	if r.Name != "" {
		s.fail(r.Node, "points are wanted here, and points have capital letters")
		return nil, false
	}
	var out []int
	good := true
	for _, p := range r.Points {
		names, ok := s.family(p.Name, p.Index)
		good = good && ok
		for _, name := range names {
			slot, ok := s.lookup(name, p.Node, program.Point)
			good = good && ok
			out = append(out, slot)
		}
	}
	switch {
	case !good:
		return nil, false
	case n > 0 && len(out) != n:
		s.fail(r.Node, "%d points are wanted here, and this is a run of %d", n, len(out)).Help = s.runHelp(out, n)
		return nil, false
	case n == 0 && len(out) < 2:
		s.fail(r.Node, "a run of points is wanted here, such as AB")
		return nil, false
	}
	return out, true
}

// distinct is run for points of a polygon, none named twice.
func (s *scope) distinct(r *syntax.Ref, n int) ([]int, bool) {
	ps, ok := s.run(r, n)
	if !ok {
		return nil, false
	}
	seen := map[int]bool{}
	for _, p := range ps {
		if seen[p] {
			s.fail(r.Node, "%s stands twice in %s", s.slot(p).Name, s.words(r.Node))
			return nil, false
		}
		seen[p] = true
	}
	return ps, true
}

// runHelp says what a run of n points names that has fewer or more.
func (s *scope) runHelp(ps []int, n int) string {
	first := s.slot(ps[0]).Name
	switch {
	case n == 2 && len(ps) == 1:
		return "two points name a straight, such as " + first + s.partner(first)
	case n == 2:
		return "two points name a straight, such as " + first + s.slot(ps[1]).Name
	case n == 3:
		return "three points name an angle, its vertex in the middle, or a triangle"
	}
	return fmt.Sprintf("name all %d corners, in their order round it", n)
}

// curve is a straight or circle that the source names. A run AB stands for the
// longest straight drawn under that name, else for the whole line.
type curve struct {
	slot   int // -1: the whole line through ends
	ends   pair
	from   int // first letter of a run, for the direction
	to     int
	run    bool
	circle bool
	text   string
}

// curve resolves a name or a run of two.
func (s *scope) curve(r *syntax.Ref) (curve, bool) {
	return s.curveOr(r, "line or circle")
}

// partner is a known point that can name a straight together with another.
func (s *scope) partner(name string) string {
	best := -1
	for other, slot := range s.names {
		if other != name && s.slot(slot).Kind == program.Point && (best < 0 || slot < best) {
			best = slot
		}
	}
	if best < 0 {
		return "B"
	}
	return s.slot(best).Name
}

// curveOr is curve with a word for what is wanted.
func (s *scope) curveOr(r *syntax.Ref, wanted string) (curve, bool) {
	text := s.words(r.Node)
	if r.Name != "" {
		name, ok := s.indexed(r.Name, r.Index)
		if !ok {
			return curve{}, false
		}
		slot, ok := s.lookup(name, r.Node, program.Line, program.Circle)
		if !ok {
			return curve{}, false
		}
		if s.needing {
			name = text
		}
		return curve{slot: slot, circle: s.slot(slot).Kind == program.Circle, text: name}, true
	}
	if len(r.Points) == 1 {
		s.fail(r.Node, "%s is a point; a %s is wanted here", text, wanted).Help = "two points name a straight, such as " + text + s.partner(text)
		return curve{}, false
	}
	ps, ok := s.distinct(r, 2)
	if !ok {
		return curve{}, false
	}
	c := curve{slot: -1, ends: pairOf(ps[0], ps[1]), from: ps[0], to: ps[1], run: true, text: text}
	if drawn := s.straights[c.ends]; len(drawn) > 0 {
		c.slot = drawn[0]
	}
	return c, true
}

// line is curve where only a straight will do.
func (s *scope) line(r *syntax.Ref) (curve, bool) {
	c, ok := s.curveOr(r, "line")
	if ok && c.circle {
		s.fail(r.Node, "%s is a circle; a line is wanted here", c.text).Help = fmt.Sprintf("of a circle say on %[1]s, inside %[1]s, outside %[1]s or touches", c.text)
		return c, false
	}
	return c, ok
}

// circle is the slot of a circle or arc.
func (s *scope) circle(r *syntax.Ref) (int, bool) {
	if r.Name == "" {
		s.fail(r.Node, "a circle is wanted here, and %s names points", s.span(r.Node).Text())
		return 0, false
	}
	name, ok := s.indexed(r.Name, r.Index)
	if !ok {
		return 0, false
	}
	return s.lookup(name, r.Node, program.Circle)
}

// value is the curve as the run of the program has it, pieces as they are drawn.
func (c curve) value(st *program.State) (*program.Curve, error) {
	if c.slot >= 0 {
		return st.Curve(c.slot), nil
	}
	a, b := st.Point(c.from), st.Point(c.to)
	if a.Equal(b) {
		return nil, sameSpot(st, c.from, c.to)
	}
	return &program.Curve{Straight: &geom.Straight{Line: geom.Through(a, b)}, On: []geom.Point{a, b}}, nil
}

// whole is the whole line of a straight curve, from the first letter to the
// second where it is a run.
func (c curve) whole(st *program.State) (geom.Line, error) {
	if c.run {
		a, b := st.Point(c.from), st.Point(c.to)
		if a.Equal(b) {
			return geom.Line{}, sameSpot(st, c.from, c.to)
		}
		return geom.Through(a, b), nil
	}
	return st.Curve(c.slot).Line(), nil
}

// sameSpot is the fault of two names for one place where two places are needed.
func sameSpot(st *program.State, a, b int) error {
	na, nb := st.Program.Slots[a].Name, st.Program.Slots[b].Name
	help := "move one of them"
	if a == b {
		help = "name two points"
	}
	return &program.Fault{Text: fmt.Sprintf("%s and %s are one and the same place, so %s%s is no straight", na, nb, na, nb), Help: help}
}

// bar registers a straight drawn under the name of two points; the longest is kept first.
func (s *scope) bar(a, b, slot int, reach int) {
	s.c.hand.ruled(a, b, reach)
	k := pairOf(a, b)
	at := len(s.straights[k])
	for i, other := range s.straights[k] {
		if s.reachOf(other) < reach {
			at = i
			break
		}
	}
	list := s.straights[k]
	list = append(list[:at:at], append([]int{slot}, list[at:]...)...)
	s.straights[k] = list
	s.c.reaches[slot] = reach
	if s.slot(slot).Between == nil {
		s.slot(slot).Between = &[2]int{a, b}
	}
}
