package check

import (
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// toolsOf is what the act of a statement is done with. The compasses carry a
// length over, and its whole multiples and sums; any other length is measured. A call has the
// tools of the acts in it, and a given has none.
func (s *scope) toolsOf(st *syntax.Statement) program.Tools {
	switch {
	case st.Take != nil:
		return s.placeTools(st.Take.Point)
	case st.Arc != nil:
		return program.Compasses | openingTools(&st.Arc.Opening)
	case st.Circle != nil:
		return program.Compasses | openingTools(&st.Circle.Opening)
	case st.StepOff != nil:
		return program.Compasses | openingTools(&st.StepOff.Opening)
	case st.Line != nil, st.Ray != nil, st.Join != nil:
		return program.Straightedge
	case st.Produce != nil:
		return program.Straightedge | lengthTools(st.Produce.By)
	case st.Locus != nil:
		return locusTools(st.Locus)
	}
	return 0
}

// locusTools: a circle about a point is struck; lines are drawn without a construction.
func locusTools(l *syntax.Locus) program.Tools {
	if l.From != nil && isPoint(l.From) {
		return program.Compasses | openingTools(&syntax.Opening{Radius: l.Distance})
	}
	return program.Outright
}

func openingTools(o *syntax.Opening) program.Tools {
	if o.Radius != nil && !carried(o.Radius) {
		return program.Ruler
	}
	return 0 // "over half AB" is by eye
}

// lengthTools is for a length on a straight: carried over with the compasses, or measured.
func lengthTools(e *syntax.Expr) program.Tools {
	switch {
	case e == nil:
		return 0
	case carried(e):
		return program.Compasses
	}
	return program.Ruler
}

// placeTools is for a point that is taken on the way.
func (s *scope) placeTools(p *syntax.PlacedPoint) (tools program.Tools) {
	if p.At != nil {
		return program.Ruler
	}
	for _, place := range p.Places {
		tools |= lengthTools(place.Distance)
		if place.Bearing != nil || place.OnAngle != nil {
			tools |= program.Protractor
		}
		if place.Centre != nil && !s.centreDrawn(place.Centre) {
			tools |= program.Outright
		}
	}
	return tools
}

// centreDrawn tells that a circle has its centre on the paper: it was given with
// it, or struck about it.
func (s *scope) centreDrawn(r *syntax.Ref) bool {
	k, ok := s.circle(r)
	if !ok {
		return false
	}
	centre := s.centre(k)
	return centre >= 0 && s.slot(centre).Ink != nil
}

// carried tells that a length is one of the figure, or a sum of whole multiples of such.
func carried(e *syntax.Expr) bool {
	if e.About || e.Neg || !carriedProduct(e.Head) {
		return false
	}
	for _, t := range e.Tail {
		if !carriedProduct(t.Term) {
			return false
		}
	}
	return true
}

// carriedProduct tells that a product is a whole number of times one length of the figure.
func carriedProduct(p *syntax.Product) bool {
	lengths := 0
	for i, f := range append([]*syntax.Factor{p.Head}, factorsOf(p.Tail)...) {
		switch v := f.Value; {
		case f.Half || f.Square || i > 0 && p.Tail[i-1].Op == "/":
			return false
		case v.Ref != nil || v.Radius != nil:
			lengths++
		case v.Paren != nil && carried(v.Paren):
			lengths++
		case v.Number == "" || v.Unit != "" || !wholeNumber(v.Number):
			return false
		}
	}
	return lengths == 1
}

func wholeNumber(digits string) bool {
	for _, r := range digits {
		if r < '0' || r > '9' {
			return false
		}
	}
	return true
}

func factorsOf(tail []*syntax.MulTail) (out []*syntax.Factor) {
	for _, t := range tail {
		out = append(out, t.Factor)
	}
	return out
}

// using notes which tools may be used.
func (s *scope) using(u *syntax.Using) {
	if s.c.drawing {
		s.fail(u.Node, "the tools come after acts that are done with some").Help = "say them before the first act"
		return
	}
	if s.c.allowed != 0 {
		s.fail(u.Node, "the tools have been said already").Help = "say all of them in one line"
		return
	}
	for _, word := range u.Tools {
		s.c.allowed |= program.ToolOf(word)
	}
}

// take notes what the act of a statement is done with, and refuses a tool other
// than those that may be used.
func (s *scope) take(st *syntax.Statement) {
	s.tools = s.toolsOf(st)
	s.c.drawing = s.c.drawing || s.tools != 0
	over := s.c.allowed.Beyond(s.tools)
	if s.c.allowed == 0 || over == 0 {
		return
	}
	at, own := s.span(st.Node), s.span(st.Node)
	if len(s.via) > 0 {
		at = s.via[0].Span
	}
	text, help := Forbidden(over)
	p := s.c.fail(at, "%s, and this figure is made using %s only", text, s.c.allowed)
	p.Help = help
	if len(s.via) > 0 && len(p.Notes) == 0 {
		p.Notes = append(p.Notes, source.Note{Span: own, Text: "in " + s.via[len(s.via)-1].Name})
	}
}

// Forbidden says what an act does with a tool that it may not take, and what to
// do instead.
func Forbidden(over program.Tools) (text, help string) {
	said := forbidden[over.Each()[0]]
	return said[0], said[1]
}

// forbidden is what an act does with each tool, and what to do instead.
var forbidden = map[program.Tools][2]string{
	program.Straightedge: {"a straight is drawn here, which takes a straightedge", "find its points by arcs, or allow the straightedge"},
	program.Compasses:    {"an arc is struck here, which takes compasses", "allow the compasses"},
	program.Ruler:        {"a length is measured here, which takes a ruler", "take it from the figure: radius AB, radius any, or a given length"},
	program.Protractor:   {"an angle is measured here, which takes a protractor", "construct it: angle60, halve and copyangle are in the library"},
	program.Outright:     {"this is found outright, by no tool", "construct it: bisect, halve, parallel and centreof are in the library; or give a circle with its centre"},
}
