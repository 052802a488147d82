package check

import (
	"fmt"
	"math/big"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// want is what a place in a source can take, where the form alone leaves it open.
type want uint8

const (
	wantAny     want = iota
	wantNumber       // a pure number
	wantLength       // a run of two is a length
	wantAngle        // a run of three is an angle
	wantOpening      // a length, or a circle for its radius
)

// expr is an expression with its kind settled; its value comes with a run.
type expr struct {
	node  syntax.Node
	angle bool
	dim   int      // power of length: 0 number, 1 length, 2 area
	bare  bool     // a number without a unit: takes the unit of what it meets
	sum   bool     // of several terms: in brackets where it is taken away
	rat   *big.Rat // the value, where it is a fraction known beforehand
	ends  *pair    // the two points, where it is plainly a distance
	size  func(*program.State) (geom.Angle, error)
	value func(*program.State) (program.Amount, error)
}

func (e expr) kindWord() string {
	switch {
	case e.angle:
		return "an angle"
	case e.dim == 0:
		return "a number"
	case e.dim == 1:
		return "a length"
	case e.dim == 2:
		return "an area"
	}
	return fmt.Sprintf("a length to the power %d", e.dim)
}

// expr resolves an expression.
func (s *scope) expr(e *syntax.Expr, w want) (expr, bool) {
	out, ok := s.product(e.Head, w)
	if !ok {
		return out, false
	}
	if e.Neg {
		out = scale(out, big.NewRat(-1, 1))
	}
	for _, t := range e.Tail {
		next, ok := s.product(t.Term, w)
		if !ok {
			return out, false
		}
		if t.Op == "-" {
			next = scale(next, big.NewRat(-1, 1))
		}
		if out, ok = s.sum(out, next); !ok {
			return out, false
		}
	}
	out.node, out.sum = e.Node, len(e.Tail) > 0
	if out, ok = s.wanted(out, w); ok && e.About {
		out = s.about(out)
	}
	return out, ok
}

// wanted reports an expression of the wrong kind for its place.
func (s *scope) wanted(e expr, w want) (expr, bool) {
	switch {
	case w == wantNumber && (e.angle || e.dim != 0):
		s.fail(e.node, "a number is wanted here, and this is %s", e.kindWord())
		return e, false
	case (w == wantLength || w == wantOpening) && (e.angle || e.dim != 1 && !e.bare):
		s.fail(e.node, "a length is wanted here, and this is %s", e.kindWord())
		return e, false
	case w == wantAngle && !e.angle:
		if !e.bare {
			s.fail(e.node, "an angle is wanted here, and this is %s", e.kindWord()).Help = "angles read: 60° · angle ABC"
			return e, false
		}
		return s.degrees(e)
	}
	return e, true
}

// degrees takes a bare number for degrees.
func (s *scope) degrees(e expr) (expr, bool) {
	if e.rat == nil {
		s.fail(e.node, "an angle in degrees must be a fraction").Help = "write it as 22.5°"
		return e, false
	}
	return sizeValue(e.node, e.rat), true
}

// sum adds two expressions of one kind.
func (s *scope) sum(a, b expr) (expr, bool) {
	a, b, ok := s.agree(a, b, "added to")
	if !ok {
		return a, false
	}
	if a.angle {
		fa, fb := a.size, b.size
		return expr{node: a.node, angle: true, size: func(st *program.State) (geom.Angle, error) {
			x, err := fa(st)
			if err != nil {
				return x, err
			}
			y, err := fb(st)
			if err != nil {
				return y, err
			}
			return x.Add(y), nil
		}}, true
	}
	out := combine(a, b, program.Amount.Add)
	out.dim, out.bare = a.dim, a.bare && b.bare
	if a.rat != nil && b.rat != nil {
		out.rat = new(big.Rat).Add(a.rat, b.rat)
	}
	return out, true
}

// agree makes the kinds of two expressions alike, or reports that they are not:
// a bare number takes the unit of what it meets.
func (s *scope) agree(a, b expr, verb string) (expr, expr, bool) {
	ok := true
	switch {
	case a.angle && b.angle:
	case a.angle && b.bare:
		b, ok = s.degrees(b)
	case b.angle && a.bare:
		a, ok = s.degrees(a)
	case a.angle != b.angle:
		s.fail(b.node, "%s cannot be %s %s", b.kindWord(), verb, a.kindWord())
		ok = false
	case a.dim == b.dim:
	case b.bare:
		b.dim = a.dim
	case a.bare:
		a.dim = b.dim
	default:
		p := s.fail(b.node, "%s cannot be %s %s", b.kindWord(), verb, a.kindWord())
		if a.dim == 2 && b.dim == 1 || a.dim == 1 && b.dim == 2 {
			p.Help = "a square is AB² or AB * AB"
		}
		ok = false
	}
	return a, b, ok
}

func combine(a, b expr, op func(program.Amount, program.Amount) program.Amount) expr {
	fa, fb := a.value, b.value
	return expr{node: a.node, value: func(st *program.State) (program.Amount, error) {
		x, err := fa(st)
		if err != nil {
			return nil, err
		}
		y, err := fb(st)
		if err != nil {
			return nil, err
		}
		return op(x, y), nil
	}}
}

// scale is k times e.
func scale(e expr, k *big.Rat) expr {
	out := expr{node: e.node, angle: e.angle, dim: e.dim, bare: e.bare}
	if e.rat != nil {
		out.rat = new(big.Rat).Mul(e.rat, k)
	}
	if e.angle {
		f := e.size
		out.size = func(st *program.State) (geom.Angle, error) {
			a, err := f(st)
			if err != nil {
				return a, err
			}
			return a.Mul(k), nil
		}
		return out
	}
	f := e.value
	out.value = func(st *program.State) (program.Amount, error) {
		x, err := f(st)
		if err != nil {
			return nil, err
		}
		return x.Mul(exact.Pure(st.Field.Rat(k))), nil
	}
	return out
}

// product goes left to right.
func (s *scope) product(p *syntax.Product, w want) (expr, bool) {
	if len(p.Tail) > 0 && w != wantAngle {
		if w != wantNumber && w != wantOpening {
			w = wantAny
		}
	}
	out, ok := s.factor(p.Head, w)
	if !ok {
		return out, false
	}
	for _, t := range p.Tail {
		next, ok := s.factor(t.Factor, w)
		if !ok {
			return out, false
		}
		if t.Op == "/" {
			out, ok = s.quotient(out, next)
		} else {
			out, ok = s.times(out, next)
		}
		if !ok {
			return out, false
		}
	}
	out.node = p.Node
	return out, true
}

func (s *scope) times(a, b expr) (expr, bool) {
	switch {
	case a.angle && b.angle:
		s.fail(b.node, "two angles cannot be multiplied")
		return a, false
	case a.angle || b.angle:
		if b.angle {
			a, b = b, a
		}
		if b.rat == nil {
			s.fail(b.node, "an angle can be multiplied by a fraction only")
			return a, false
		}
		return scale(a, b.rat), true
	}
	out := combine(a, b, program.Amount.Mul)
	out.dim, out.bare = a.dim+b.dim, a.bare && b.bare
	if a.rat != nil && b.rat != nil {
		out.rat = new(big.Rat).Mul(a.rat, b.rat)
	}
	return out, true
}

func (s *scope) quotient(a, b expr) (expr, bool) {
	if b.rat != nil && b.rat.Sign() == 0 {
		s.fail(b.node, "this divides by 0")
		return a, false
	}
	switch {
	case a.angle && b.angle:
		s.fail(b.node, "two angles cannot be divided").Help = "compare multiples: angle ABC = 2 angle DEF, or a ratio: angle ABC : angle DEF = 2 : 1"
		return a, false
	case b.angle:
		s.fail(b.node, "%s cannot be divided by an angle", a.kindWord())
		return a, false
	case a.angle:
		if b.rat == nil {
			s.fail(b.node, "an angle can be divided by a fraction only")
			return a, false
		}
		return scale(a, new(big.Rat).Inv(b.rat)), true
	}
	return s.over(a, b), true
}

// over is a / b of amounts.
func (s *scope) over(a, b expr) expr {
	span := s.span(b.node)
	fa, fb := a.value, b.value
	out := expr{node: a.node, dim: a.dim - b.dim, bare: a.bare && b.bare}
	out.value = func(st *program.State) (program.Amount, error) {
		x, err := fa(st)
		if err != nil {
			return nil, err
		}
		y, err := fb(st)
		if err != nil {
			return nil, err
		}
		if y.Sign() == 0 {
			return nil, &program.Fault{Text: "this divides by " + span.Text() + ", which is 0", Span: &span}
		}
		q, ok := x.Div(y)
		if !ok {
			return nil, &program.Fault{Text: "a sum with π in it cannot be divided by", Span: &span}
		}
		return q, nil
	}
	if a.rat != nil && b.rat != nil {
		out.rat = new(big.Rat).Quo(a.rat, b.rat)
	}
	return out
}

func (s *scope) factor(f *syntax.Factor, w want) (expr, bool) {
	if f.Square && w != wantNumber {
		w = wantAny
	}
	out, ok := s.valueOf(f.Value, w)
	if !ok {
		return out, false
	}
	out.node = f.Node
	switch unit := f.Value.Unit; {
	case f.Square && (unit == "mm" || unit == "cm"):
		out = s.areaLiteral(out, unit)
	case f.Square:
		if out, ok = s.times(out, out); !ok {
			return out, false
		}
	}
	if f.Half {
		out = scale(out, big.NewRat(1, 2))
	}
	out.node = f.Node
	return out, true
}

// areaLiteral is 36 cm² from 36 cm: the unit is squared, not the number.
func (s *scope) areaLiteral(length expr, unit string) expr {
	return s.ratValue(length.node, new(big.Rat).Mul(length.rat, s.unitOf(unit)), 2, false)
}
