package check

import (
	"math/big"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// tellLength is a length in words; a bare number takes the figure's unit.
func (s *scope) tellLength(e *syntax.Expr) program.Saying {
	if e.About {
		exact := *e
		exact.About = false
		return phrase("about", "a", s.tellLength(&exact))
	}
	if v := bareNumber(e); v != nil {
		return s.lengthOf(program.Numeral(v.Number), s.unitKey())
	}
	if fraction, ok := s.bareFraction(e); ok {
		return s.lengthOf(fraction, s.unitKey())
	}
	if n, ok := s.constantSaid(e); ok {
		return s.lengthOf(n, s.unitKey())
	}
	return s.tellExpr(e)
}

// constantSaid is the value of what a name counts or a choice has settled.
func (s *scope) constantSaid(e *syntax.Expr) (program.Numeral, bool) {
	r := plainExpr(e)
	if r == nil || r.Name == "" || r.Index != nil {
		return "", false
	}
	x, ok := s.consts[r.Name]
	return numeral(x), ok
}

// numeral is a number in decimals, or as a fraction where these do not end soon.
func numeral(x *big.Rat) program.Numeral {
	const most = 6
	if x == nil {
		return ""
	}
	if n, exact := x.FloatPrec(); exact && n <= most {
		return program.Numeral(x.FloatString(n))
	}
	return program.Numeral(x.RatString())
}

// tellAngle is an angle in words; a bare number is of degrees.
func (s *scope) tellAngle(e *syntax.Expr) program.Saying {
	if e.About {
		exact := *e
		exact.About = false
		return phrase("about", "a", s.tellAngle(&exact))
	}
	if v := bareNumber(e); v != nil {
		return program.Numeral(v.Number + "°")
	}
	if n, ok := s.constantSaid(e); ok {
		return n + "°"
	}
	return s.tellExpr(e)
}

func (s *scope) lengthOf(n program.Saying, unit string) program.Saying {
	if unit == "unit" && n == program.Numeral("1") {
		return phrase("length.one", "n", n)
	}
	return phrase("length."+unit, "n", n)
}

// unitKey is cm, mm or unit, whatever a length of 1 measures.
func (s *scope) unitKey() string {
	switch s.c.prog.UnitWord(1) {
	case " cm":
		return "cm"
	case " mm":
		return "mm"
	}
	return "unit"
}

// bareNumber is the number that an expression plainly is, without a unit.
func bareNumber(e *syntax.Expr) *syntax.Value {
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) > 0 || e.Head.Head.Half || e.Head.Head.Square {
		return nil
	}
	if v := e.Head.Head.Value; v.Number != "" && v.Unit == "" {
		return v
	}
	return nil
}

// bareFraction is an expression such as 7/3 or 2*sqrt(3).
func (s *scope) bareFraction(e *syntax.Expr) (program.Saying, bool) {
	for _, f := range factors(e) {
		if f.Half || f.Value.Number == "" && f.Value.Sqrt == nil || f.Value.Unit != "" {
			return nil, false
		}
	}
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) == 0 && e.Head.Head.Value.Sqrt == nil {
		return nil, false
	}
	return s.tellProduct(e.Head), true
}

func factors(e *syntax.Expr) []*syntax.Factor {
	out := []*syntax.Factor{e.Head.Head}
	for _, t := range e.Head.Tail {
		out = append(out, t.Factor)
	}
	return out
}

// tellExpr is a value as it is written in a book: AB + BC, 2√3, the radius of k.
func (s *scope) tellExpr(e *syntax.Expr) program.Saying {
	said := s.tellProduct(e.Head)
	if e.Neg {
		said = phrase("minus.sign", "a", said)
	}
	for _, t := range e.Tail {
		key := "plus"
		if t.Op == "-" {
			key = "minus"
		}
		said = phrase(key, "a", said, "b", s.tellProduct(t.Term))
	}
	return said
}

func (s *scope) tellProduct(p *syntax.Product) program.Saying {
	said := s.tellFactor(p.Head)
	for _, t := range p.Tail {
		key := "times"
		switch {
		case t.Op == "/":
			key = "over.sign"
		case wordy(t.Factor):
			key = "times.sign"
		case t.Op == "" || t.Factor.Value.Sqrt != nil:
			key = "times.close"
		}
		said = phrase(key, "a", said, "b", s.tellFactor(t.Factor))
	}
	return said
}

// wordy tells a value that is said in words and so needs a sign before it.
func wordy(f *syntax.Factor) bool {
	v := f.Value
	return v.Radius != nil || v.Circumference != nil || v.Area != nil || v.Perimeter != nil || v.Angle != nil || f.Half
}

func (s *scope) tellFactor(f *syntax.Factor) program.Saying {
	said := s.tellValue(f.Value)
	if f.Square {
		said = phrase("squared", "a", said)
	}
	if f.Half {
		said = phrase("half", "a", said)
	}
	return said
}

func (s *scope) tellValue(v *syntax.Value) program.Saying {
	switch {
	case v.Number != "" && (v.Unit == "cm" || v.Unit == "mm"):
		return s.lengthOf(program.Numeral(v.Number), v.Unit)
	case v.Number != "" && v.Unit != "":
		return program.Numeral(v.Number + "°")
	case v.Number != "":
		return program.Numeral(v.Number)
	case v.Degrees != "":
		return program.Numeral(v.Degrees)
	case v.Sqrt != nil && bareNumber(v.Sqrt) != nil:
		return phrase("root", "a", s.tellExpr(v.Sqrt))
	case v.Sqrt != nil:
		return phrase("root.long", "a", s.tellExpr(v.Sqrt))
	case v.Paren != nil:
		return phrase("bracket", "a", s.tellExpr(v.Paren))
	case v.Radius != nil:
		return phrase("radius.value", "curve", s.curveName(v.Radius))
	case v.Circumference != nil:
		return phrase("circumference", "curve", s.curveName(v.Circumference))
	case v.Area != nil:
		return phrase("area", "of", s.curveName(v.Area))
	case v.Perimeter != nil:
		return phrase("perimeter", "of", s.curveName(v.Perimeter))
	case v.Angle != nil && v.Reflex:
		return phrase("angle.reflex", "angle", s.letters1(v.Angle))
	case v.Angle != nil && v.Angle.Name != "":
		return s.curveName(v.Angle)
	case v.Angle != nil:
		return phrase("angle", "angle", s.letters1(v.Angle))
	}
	return s.refSaid(v.Ref)
}

// refSaid is a name where a value is meant; the circle k stands for its radius.
func (s *scope) refSaid(r *syntax.Ref) program.Saying {
	if r.Name == "" {
		return s.letters1(r)
	}
	name, _ := s.indexed(r.Name, r.Index)
	if c, ok := s.consts[name]; ok {
		return numeral(c)
	}
	slot, ok := s.names[name]
	if value, chosen := s.c.chose[slot]; ok && chosen {
		return value
	}
	switch {
	case !ok:
		return program.Text(name)
	case s.slot(slot).Kind == program.Circle:
		return phrase("radius.value", "curve", program.CurveName(slot))
	case s.slot(slot).Kind == program.Line:
		return program.CurveName(slot)
	}
	return program.Letters{slot}
}
