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
	var value func(*program.State) (string, string, error)
	ok := false
	if len(tree.Statements) == 1 && tree.Statements[0].Claim != nil && !problems.Failed() {
		r := tree.Statements[0].Claim.Relation
		if len(r.Chain) != 1 {
			return program.Answer{Problem: "a relation is no value (claim it in the source, or ask for one side of it)"}
		}
		value, ok = in.answer(r.Left)
	}
	if !ok || problems.Failed() {
		return program.Answer{Problem: firstProblem(problems, len("claim "+text))}
	}
	return program.Answer{Value: value}
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

// answer is a value, or the ratio of two.
func (s *scope) answer(side *syntax.Side) (func(*program.State) (string, string, error), bool) {
	w := wantAny
	if s.mentionsAngle(side.Terms[0]) {
		w = wantAngle
	}
	e, ok := s.expr(side.Terms[0], w)
	if ok && len(side.Terms) == 2 {
		second, ok2 := s.expr(side.Terms[1], w)
		if !ok2 {
			return nil, false
		}
		e, ok = s.quotient(e, second)
	}
	if !ok {
		return nil, false
	}
	if e.angle {
		return func(st *program.State) (string, string, error) {
			a, err := e.size(st)
			if err != nil {
				return "", "", err
			}
			exact := ""
			if r, ok := a.Exact(); ok {
				exact = geom.TrimZeros(r.FloatString(4)) + "°"
			}
			return exact, sizeDecimal(a), nil
		}, true
	}
	return func(st *program.State) (string, string, error) {
		x, err := e.value(st)
		if err != nil {
			return "", "", err
		}
		unit := st.Program.UnitWord(e.dim)
		text := ""
		if s, ok := x.Surd(); ok {
			text = s + unit
		}
		return text, geom.TrimZeros(x.Decimal(decimals)) + unit, nil
	}, true
}
