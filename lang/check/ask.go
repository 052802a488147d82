package check

import (
	"strings"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// decimals is how many places an answer has after the point.
const decimals = 6

// ask resolves an expression of the finished figure. Its problems are its own,
// not the source's.
func (s *scope) ask(text string) program.Answer {
	var problems source.List
	f := source.NewFile("", "claim "+text+" = "+text)
	tree := syntax.Parse(f, &problems)
	c := *s.c
	c.problems, c.seen, c.lost, c.unmet = &problems, map[seenKey]bool{}, lost{}, nil
	in := *s
	in.c, in.file = &c, f
	out, ok := program.Answer{}, false
	if len(tree.Statements) == 1 && tree.Statements[0].Claim != nil && !problems.Failed() {
		r := tree.Statements[0].Claim.Relation
		if len(r.Chain) != 1 {
			return program.Answer{Expr: text, Problem: "a relation is no value (claim it in the source, or ask for one side of it)"}
		}
		out, ok = in.answerOf(r.Left)
	}
	out.Expr = text
	if !ok || problems.Failed() {
		out.Problem = firstProblem(problems, len("claim "+text))
	}
	return out
}

// firstProblem is what is wrong with an expression that ends at a place.
func firstProblem(problems source.List, end int) string {
	if len(problems) == 0 {
		return "this is no expression of the figure"
	}
	if problems[0].Span.Start >= end {
		return "the expression ends where a value is wanted"
	}
	text := problems[0].Text
	if strings.Contains(problems[0].Help, "a claim reads") {
		return text + " (an expression reads: AB + BC · AB : CD · angle ABC · area of ABC · radius k)"
	}
	if problems[0].Help != "" {
		text += " (" + problems[0].Help + ")"
	}
	return text
}

// answerOf is a value, or a ratio.
func (s *scope) answerOf(side *syntax.Side) (program.Answer, bool) {
	w := wantAny
	for _, t := range side.Terms {
		if s.mentionsAngle(t) {
			w = wantAngle
		}
	}
	var terms []expr
	for _, t := range side.Terms {
		e, ok := s.chainTerm(t, w)
		if !ok {
			return program.Answer{}, false
		}
		terms = append(terms, e)
	}
	e, n := terms[0], len(terms)
	if n > 2 || n == 2 && e.angle && terms[1].angle {
		return s.ratioAnswer(terms)
	}
	if n == 2 {
		var ok bool
		if e, ok = s.quotient(e, terms[1]); !ok {
			return program.Answer{}, false
		}
	}
	value := amountValue(e)
	if e.angle {
		value = angleValue(e)
	}
	return program.Answer{Angle: e.angle, Dim: e.dim, Value: value}, true
}

func angleValue(e expr) func(*program.State) (program.Value, error) {
	return func(st *program.State) (program.Value, error) {
		a, err := e.size(st)
		if err != nil {
			return program.Value{}, err
		}
		out := program.Value{Decimal: sizeDecimal(a), Rough: a.Float()}
		if text, ok := a.Text(); ok {
			out.Exact = text
		}
		return out, nil
	}
}

func amountValue(e expr) func(*program.State) (program.Value, error) {
	return func(st *program.State) (program.Value, error) {
		x, err := e.value(st)
		if err != nil {
			return program.Value{}, err
		}
		unit := st.Program.UnitWord(e.dim)
		out := program.Value{Decimal: decimalOf(x) + unit, Rough: x.Float()}
		if s, ok := x.Surd(); ok {
			out.Exact = withUnit(s, unit)
		}
		return out, nil
	}
}

// decimalOf is a number to so many places, and one that would read as 0 there to
// three digits.
func decimalOf(x program.Amount) string {
	s := geom.TrimZeros(x.Decimal(decimals))
	if f := x.Float(); s == "0" && f != 0 {
		return geom.Significant(f)
	}
	return s
}

// withUnit puts the unit after a number, which gets brackets if it is a sum.
func withUnit(number, unit string) string {
	depth, sum := 0, false
	for i, r := range number {
		switch r {
		case '(':
			depth++
		case ')':
			depth--
		case '+', '−':
			sum = sum || depth == 0 && i > 0
		}
	}
	if sum && unit != "" {
		return "(" + number + ")" + unit
	}
	return number + unit
}
