package syntax

import (
	"testing"

	"trammel/lang/source"
)

// TestExpressions shows with brackets how values are read.
func TestExpressions(t *testing.T) {
	tests := []struct{ text, want string }{
		{"1/2 AB", "((1/2)·AB)"},
		{"AB/2", "(AB/2)"},
		{"AB / (2 CD)", "(AB/(2·CD))"},
		{"2 * 3 AB", "((2*3)·AB)"},
		{"2 sqrt(3) AB", "((2·sqrt3)·AB)"},
		{"half AB + CD", "(half AB+CD)"},
		{"half AB²", "(half AB)²"},
		{"2 AB² - BC^2", "((2·AB²)-BC²)"},
		{"radius k * 2", "(radius k*2)"},
		{"2 radius k + circumference k", "((2·radius k)+circumference k)"},
		{"half radius k", "half radius k"},
		{"area of ABC / 2", "(area ABC/2)"},
		{"angle ABC + angle DEF", "(angle ABC+angle DEF)"},
		{"1/2 reflex angle ABC", "((1/2)·reflex angle ABC)"},
		{"-AB/2 - -3", ""},
		{"-1/2 AB + 35 mm - 60°", "((-((1/2)·AB)+35mm)-60°)"},
		{"sqrt(2 + sqrt(2))", "sqrt(2+sqrt2)"},
		{"2 (AB + BC)", "(2·(AB+BC))"},
		{"3AB", "(3·AB)"},
		{"1 cm / 2", "(1cm/2)"},
		{"(1 + sqrt(5))/2 AB", "(((1+sqrt5)/2)·AB)"},
		{"22 deg - 22°30'", "(22°-22°30')"},
		{"perimeter of ABC - m", "(perimeter ABC-m)"},
	}
	for _, test := range tests {
		var problems source.List
		tree := Parse(source.NewFile("f", "claim x = "+test.text), &problems)
		if len(problems) > 0 {
			if test.want != "" {
				t.Errorf("%s: %s", test.text, texts(problems))
			}
			continue
		}
		if got := tree.Statements[0].Claim.Relation.Chain[0].Right.Terms[0].bracketed(); got != test.want {
			t.Errorf("%s is read as %s, want %s", test.text, got, test.want)
		}
	}
}

func (e *Expr) bracketed() string {
	s := e.Head.bracketed()
	if e.Neg {
		s = "-" + s
	}
	for _, a := range e.Tail {
		s = "(" + s + a.Op + a.Term.bracketed() + ")"
	}
	return s
}

func (p *Product) bracketed() string {
	s := p.Head.bracketed()
	for _, m := range p.Tail {
		op := m.Op
		if op == "" {
			op = "·"
		}
		s = "(" + s + op + m.Factor.bracketed() + ")"
	}
	return s
}

func (f *Factor) bracketed() string {
	s := f.Value.bracketed()
	if f.Half {
		s = "half " + s
	}
	if f.Half && f.Square {
		s = "(" + s + ")"
	}
	if f.Square {
		s += "²"
	}
	return s
}

func (v *Value) bracketed() string {
	switch {
	case v.Number != "":
		return v.Number + v.Unit
	case v.Degrees != "":
		return v.Degrees
	case v.Sqrt != nil:
		return "sqrt" + v.Sqrt.bracketed()
	case v.Paren != nil:
		return v.Paren.bracketed()
	case v.Radius != nil:
		return "radius " + v.Radius.run()
	case v.Circumference != nil:
		return "circumference " + v.Circumference.run()
	case v.Area != nil:
		return "area " + v.Area.run()
	case v.Perimeter != nil:
		return "perimeter " + v.Perimeter.run()
	case v.Angle != nil && v.Reflex:
		return "reflex angle " + v.Angle.run()
	case v.Angle != nil:
		return "angle " + v.Angle.run()
	}
	return v.Ref.run()
}

func (r *Ref) run() string {
	s := r.Name
	for _, p := range r.Points {
		s += p.Name
	}
	return s
}
