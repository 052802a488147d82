package check

import (
	"fmt"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// maxValues is the most values that a measurement may be chosen from.
const maxValues = 10_000

// choose gives a measurement one of its values: the middle one, or what the
// variant picks.
func (s *scope) choose(c *syntax.Choose) {
	first, last, by, ok := s.choiceRange(c)
	if !ok || !s.plainName(c.Name) {
		s.c.lost.names[c.Name.Name] = true
		return
	}
	v := program.Varied{Name: c.Name.Name, Span: s.span(c.Node), Word: s.c.prog.UnitWord(first.dim)}
	if first.angle {
		v.Word = "°"
	} else if first.bare {
		v.Word = ""
	} else {
		v.Word, v.Per = s.asTyped(c.From, v.Word)
	}
	for x := first.rat; x.Cmp(last.rat) <= 0; x = new(big.Rat).Add(x, by.rat) {
		if len(v.Values) == maxValues {
			s.fail(c.Node, "there are more than %d values to choose from", maxValues)
			return
		}
		v.Values = append(v.Values, x)
	}
	if end := v.Values[len(v.Values)-1]; end.Cmp(last.rat) != 0 {
		s.c.problems.Warn(v.Span, fmt.Sprintf("the last value is %s: the next would be over %s", numeral(end), numeral(last.rat)), "say a last value that the steps come to")
	}
	v.Picked = (len(v.Values) - 1) / 2
	if i, ok := s.c.picks[v.Name]; ok && i < len(v.Values) {
		v.Picked = i
	}
	s.c.prog.Varied = append(s.c.prog.Varied, v)
	s.settleChoice(c, first, v.Values[v.Picked])
}

// asTyped is the unit in which a length is typed, and how many of it a unit of
// the figure is; word where it has none.
func (s *scope) asTyped(e *syntax.Expr, word string) (string, *big.Rat) {
	switch millimetres := s.c.prog.Unit; e.Head.Head.Value.Unit {
	case "mm":
		return " mm", millimetres
	case "cm":
		return " cm", new(big.Rat).Quo(millimetres, big.NewRat(10, 1))
	}
	return word, nil
}

// choiceRange is the ends and the step, all of one kind.
func (s *scope) choiceRange(c *syntax.Choose) (first, last, by expr, ok bool) {
	first, ok1 := s.fraction(c.From)
	last, ok2 := s.fraction(c.To)
	if !ok1 || !ok2 {
		return first, last, by, false
	}
	by = s.ratValue(c.To.Node, big.NewRat(1, 1), 0, true)
	if c.By != nil {
		if by, ok = s.fraction(c.By); !ok {
			return first, last, by, false
		}
	}
	if first.angle != last.angle {
		s.fail(c.Node, "the values go from %s to %s", first.kindWord(), last.kindWord()).Help = "say what kind both are of, such as: choose α from 40° to 70° by 5°"
		return first, last, by, false
	}
	if first, last, ok = s.agree(first, last, "counted on to"); !ok {
		return first, last, by, false
	}
	if first, by, ok = s.agree(first, by, "added to"); !ok {
		return first, last, by, false
	}
	switch {
	case last.rat.Cmp(first.rat) <= 0:
		s.fail(c.Node, "the last value, %s, is not more than the first, %s, so there is nothing to choose", numeral(last.rat), numeral(first.rat)).Help = "such as: choose a from 4 to 8 by 1/2"
	case by.rat.Sign() <= 0:
		s.fail(c.Node, "the values go up by %s, and it must be more than 0", by.rat.RatString())
	case new(big.Rat).Add(first.rat, by.rat).Cmp(last.rat) > 0:
		s.fail(c.Node, "there is only one value to choose from: the next would be over the last").Help = "count by less, as in: choose a from 4 to 8 by 1/2"
	default:
		return first, last, by, true
	}
	return first, last, by, false
}

// fraction is a value that is a fraction known beforehand.
func (s *scope) fraction(e *syntax.Expr) (expr, bool) {
	v, ok := s.expr(e, wantAny)
	if ok && v.rat == nil {
		s.fail(e.Node, "a value that is known beforehand is wanted here").Help = "such as 4, 35 mm or 40°"
		return v, false
	}
	return v, ok
}

// settleChoice gives the name its value: a plain number may stand wherever a
// number may, a length or an angle is one.
func (s *scope) settleChoice(c *syntax.Choose, kind expr, x *big.Rat) {
	if kind.bare {
		s.consts[c.Name.Name] = x
		return
	}
	k := program.Length
	if kind.angle {
		k = program.Size
	}
	slot := s.declare(c.Name.Name, k, c.Name.Node)
	if s.c.chose[slot] = program.Saying(numeral(x) + "°"); !kind.angle {
		s.c.chose[slot] = s.lengthOf(numeral(x), s.unitKey())
	}
	s.emit(c.Node, func(st *program.State) error {
		if kind.angle {
			st.Set(slot, geom.Degrees(x))
		} else {
			st.Set(slot, exact.Pure(st.Field.Rat(x)))
		}
		return nil
	})
}

// plainName tells whether a name for a number is new and has no index.
func (s *scope) plainName(r *syntax.Ref) bool {
	if r.Name == "" || r.Index != nil {
		s.fail(r.Node, "a choice has a small letter for its name").Help = "such as: choose a from 4 to 8 by 1/2"
		return false
	}
	_, counted := s.consts[r.Name]
	_, named := s.names[r.Name]
	if counted || named {
		s.fail(r.Node, "%s is there already", r.Name).Help = "take another name"
		return false
	}
	return true
}

// task keeps what the figure asks of a pupil.
func (s *scope) task(t *syntax.Task) {
	switch {
	case s.c.prog.Task != nil:
		s.fail(t.Node, "the task is given twice").Help = "write one text; a worksheet may set a figure more than once, in other words"
	case t.From != "" || len(t.Options) > 0:
		s.fail(t.Node, "this belongs in a worksheet").Help = "here a task is its text and its marks: task \"Bisect AB.\" for 2 marks"
	case t.Text == "":
		s.fail(t.Node, "the task has no text").Help = "write what is to be done: task \"Bisect AB.\" for 2 marks"
	default:
		marks, ok := s.marks(t)
		if ok && s.placesKnown(t) {
			s.c.prog.Task = &program.Task{Text: t.Text, Marks: marks}
		}
	}
}

// placesKnown tells whether every {a} of a task's text is a choice made above it.
func (s *scope) placesKnown(t *syntax.Task) bool {
	for _, place := range program.Places(t.Text) {
		if s.c.lost.has(place) {
			return false
		}
		if !slices.ContainsFunc(s.c.prog.Varied, func(v program.Varied) bool { return v.Name == place }) {
			s.fail(t.Node, "{%s} stands for no choice made above", place).Help = "choose " + place + " first: choose a from 4 to 8 by 1/2"
			return false
		}
	}
	brings := func(name string) bool {
		return slices.ContainsFunc(s.c.prog.Varied, func(v program.Varied) bool { return v.Name == name && v.Word != "" })
	}
	if twice := program.Doubled(t.Text, brings); twice != "" {
		s.fail(t.Node, "%s has its unit twice: it is chosen with one, which goes into its place", twice).Help = "leave the unit out of the text, or choose from numbers without one"
		return false
	}
	return true
}

// maxMarks is the most marks of one task.
const maxMarks = 1000

func (s *scope) marks(t *syntax.Task) (int, bool) {
	if t.Marks == nil {
		return 0, true
	}
	n, ok := s.whole(t.Marks)
	if ok && (n < 1 || n > maxMarks) {
		s.fail(t.Marks.Node, "a task is worth 1 to %d marks, not %d", maxMarks, n)
		return 0, false
	}
	return n, ok
}

// answers names what the answer sheet gives.
func (s *scope) answers(a *syntax.Answer) {
	for _, side := range a.Sides {
		if v, ok := s.answerOf(side); ok {
			v.Expr = s.span(side.Node).Text()
			s.c.prog.Answers = append(s.c.prog.Answers, v)
		}
	}
}
