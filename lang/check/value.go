package check

import (
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

// valueOf resolves what stands at the leaves of expressions.
func (s *scope) valueOf(v *syntax.Value, w want) (expr, bool) {
	switch {
	case v.Number != "":
		return s.number(v)
	case v.Degrees != "":
		r, ok := s.degreeLiteral(v)
		return sizeValue(v.Node, r), ok
	case v.Paren != nil:
		if w == wantLength || w == wantAngle {
			w = wantAny
		}
		return s.expr(v.Paren, w)
	case v.Sqrt != nil:
		return s.root(v)
	case v.Radius != nil:
		return s.radius(v.Radius, v.Node, 0)
	case v.Circumference != nil:
		return s.radius(v.Circumference, v.Node, 1)
	case v.Area != nil:
		return s.area(v)
	case v.Perimeter != nil:
		return s.perimeter(v)
	case v.Angle != nil:
		return s.corner(v.Angle, v.Node, v.Reflex)
	}
	return s.refValue(v.Ref, w)
}

// number is a literal, exactly.
func (s *scope) number(v *syntax.Value) (expr, bool) {
	r, ok := new(big.Rat).SetString(v.Number)
	if !ok || strings.ContainsAny(v.Number, "eExX_/") {
		s.fail(v.Node, "%s is not a number", v.Number)
		return expr{}, false
	}
	if r.Cmp(big.NewRat(1_000_000, 1)) > 0 {
		s.fail(v.Node, "%s is more than 1000000", v.Number)
		return expr{}, false
	}
	switch v.Unit {
	case "deg":
		return sizeValue(v.Node, r), true
	case "mm", "cm":
		return s.ratValue(v.Node, r.Mul(r, s.unitOf(v.Unit)), 1, false), true
	}
	return s.ratValue(v.Node, r, 0, true), true
}

// unitOf is how much of the figure's own unit a millimetre or centimetre on
// paper is.
func (s *scope) unitOf(word string) *big.Rat {
	mm := big.NewRat(1, 1)
	if word == "cm" {
		mm = big.NewRat(10, 1)
	}
	return mm.Quo(mm, s.c.prog.Unit)
}

func (s *scope) ratValue(n syntax.Node, r *big.Rat, dim int, bare bool) expr {
	return expr{node: n, dim: dim, bare: bare, rat: r, value: func(st *program.State) (program.Amount, error) {
		return exact.Pure(st.Field.Rat(r)), nil
	}}
}

// sizeValue is an angle of so many degrees.
func sizeValue(n syntax.Node, degrees *big.Rat) expr {
	return expr{node: n, angle: true, rat: degrees, size: func(*program.State) (geom.Angle, error) { return geom.Degrees(degrees), nil }}
}

// degreeLiteral reads 60°, 22.5° or 22°30'.
func (s *scope) degreeLiteral(v *syntax.Value) (*big.Rat, bool) {
	whole, minutes, _ := strings.Cut(v.Degrees, "°")
	r, ok := new(big.Rat).SetString(whole)
	if !ok || strings.ContainsAny(v.Degrees, "eE/_") {
		s.fail(v.Node, "%s is not an angle", v.Degrees)
		return nil, false
	}
	minutes = strings.TrimRight(minutes, "'′")
	if minutes != "" {
		m, ok := new(big.Rat).SetString(minutes)
		if !ok || m.Cmp(big.NewRat(60, 1)) >= 0 {
			s.fail(v.Node, "%s is not an angle: minutes run from 0 to 59", v.Degrees)
			return nil, false
		}
		r.Add(r, m.Quo(m, big.NewRat(60, 1)))
	}
	if r.Cmp(big.NewRat(1_000_000, 1)) > 0 {
		s.fail(v.Node, "%s is more than 1000000°", v.Degrees)
		return nil, false
	}
	return r, true
}

// root is the square root of a number, or of an area as a length.
func (s *scope) root(v *syntax.Value) (expr, bool) {
	in, ok := s.expr(v.Sqrt, wantAny)
	if !ok {
		return in, false
	}
	if in.angle || in.dim%2 != 0 {
		s.fail(v.Node, "%s has no square root", in.kindWord())
		return in, false
	}
	f, node := in.value, v.Node
	return expr{node: v.Node, dim: in.dim / 2, bare: in.bare, value: func(st *program.State) (program.Amount, error) {
		x, err := f(st)
		if err != nil {
			return nil, err
		}
		span := s.span(node)
		r, pure := x.Constructible()
		if !pure {
			return nil, &program.Fault{Text: "a value with π in it has no exact root", Span: &span}
		}
		if r.Sign() < 0 {
			return nil, &program.Fault{Text: fmt.Sprintf("the root of %s, which is negative", geom.Show(r)), Span: &span}
		}
		return exact.Pure(r.Sqrt()), nil
	}}, true
}

// radius is a circle's radius, or its circumference when times is 1.
func (s *scope) radius(r *syntax.Ref, n syntax.Node, around int) (expr, bool) {
	slot, ok := s.circle(r)
	if !ok {
		return expr{}, false
	}
	return expr{node: n, dim: 1, value: func(st *program.State) (program.Amount, error) {
		radius := exact.Pure(st.Curve(slot).Circle.R2.Sqrt())
		if around == 0 {
			return radius, nil
		}
		return radius.Mul(exact.Pure(st.Field.Int(2))).Mul(st.Field.Pi()), nil
	}}, true
}

// area is that of a polygon or a circle.
func (s *scope) area(v *syntax.Value) (expr, bool) {
	out := expr{node: v.Node, dim: 2}
	if v.Area.Name != "" {
		slot, ok := s.circle(v.Area)
		out.value = func(st *program.State) (program.Amount, error) {
			return exact.Pure(st.Curve(slot).Circle.R2).Mul(st.Field.Pi()), nil
		}
		return out, ok
	}
	ps, ok := s.polygon(v.Area)
	text := s.span(v.Area.Node).Text()
	out.value = func(st *program.State) (program.Amount, error) {
		pts := st.Points(ps)
		if len(pts) > 3 && !geom.Simple(pts) {
			return nil, &program.Fault{Text: "the outline " + text + " crosses itself", Help: "name the corners in their order round the figure"}
		}
		return exact.Pure(geom.SignedArea2(pts).Abs().Div(st.Field.Int(2))), nil
	}
	return out, ok
}

// polygon is a run of three or more different points.
func (s *scope) polygon(r *syntax.Ref) ([]int, bool) {
	ps, ok := s.distinct(r, 0)
	if ok && len(ps) < 3 {
		s.fail(r.Node, "a polygon has three corners or more").Help = "name them in their order round it, as in ABC"
		return nil, false
	}
	return ps, ok
}

func (s *scope) perimeter(v *syntax.Value) (expr, bool) {
	ps, ok := s.polygon(v.Perimeter)
	return expr{node: v.Node, dim: 1, value: func(st *program.State) (program.Amount, error) {
		pts := st.Points(ps)
		sum := st.Field.Int(0)
		for i, p := range pts {
			sum = sum.Add(geom.Dist(p, pts[(i+1)%len(pts)]))
		}
		return exact.Pure(sum), nil
	}}, ok
}

// corner is the angle that three letters name.
func (s *scope) corner(r *syntax.Ref, n syntax.Node, reflex bool) (expr, bool) {
	if r.Name == "" && len(r.Points) == 1 {
		s.fail(n, "angle %s alone does not say which angle", s.span(r.Node).Text()).Help = syntax.AngleHelp(s.span(r.Node).Text())
		return expr{}, false
	}
	if r.Name != "" {
		name, ok := s.indexed(r.Name, r.Index)
		if !ok {
			return expr{}, false
		}
		slot, ok := s.lookup(name, r.Node, program.Size)
		return expr{node: n, angle: true, size: func(st *program.State) (geom.Angle, error) {
			return st.Angle(slot), nil
		}}, ok
	}
	ps, ok := s.angleRun(r)
	if !ok {
		return expr{}, false
	}
	s.showArms(ps)
	return expr{node: n, angle: true, size: func(st *program.State) (geom.Angle, error) {
		return cornerOf(st, ps, reflex)
	}}, true
}

// showArms makes the drawn arms of an angle that is claimed or marked results
// of the figure: an angle's arms are never paler than its arc.
func (s *scope) showArms(ps []int) {
	if !s.stating || s.view != shown || s.depth > 0 {
		return
	}
	for _, end := range []int{ps[0], ps[2]} {
		arms := s.straights[pairOf(ps[1], end)]
		for _, slot := range s.c.metOn[end] {
			if b := s.slot(slot).Between; b != nil && (b[0] == ps[1] || b[1] == ps[1]) {
				arms = append(slices.Clip(arms), slot) // met on a ray from the vertex
			}
		}
		for _, slot := range arms {
			if ink := s.slot(slot).Ink; ink.Role == figure.Construction && s.reachOf(slot) < reachLine {
				ink.Role = figure.Result
			}
		}
	}
}

// angleRun is three points whose middle one is the vertex; the arms may pass one point.
func (s *scope) angleRun(r *syntax.Ref) ([]int, bool) {
	ps, ok := s.run(r, 3)
	if ok && (ps[0] == ps[1] || ps[1] == ps[2]) {
		s.fail(r.Node, "an angle needs its vertex and a point on each arm")
		return nil, false
	}
	return ps, ok
}

func cornerOf(st *program.State, ps []int, reflex bool) (geom.Angle, error) {
	a, v, b := st.Point(ps[0]), st.Point(ps[1]), st.Point(ps[2])
	for i, p := range []geom.Point{a, b} {
		if p.Equal(v) {
			arm := st.Program.Slots[ps[2*i]].Name
			return geom.Angle{}, &program.Fault{Text: fmt.Sprintf("the angle has no size: %s and its vertex %s are one and the same place", arm, st.Program.Slots[ps[1]].Name)}
		}
	}
	return geom.Corner(a, v, b, reflex), nil
}

// refValue is a name, or a run of points read as what is wanted.
func (s *scope) refValue(r *syntax.Ref, w want) (expr, bool) {
	if r.Name != "" {
		return s.nameValue(r, w)
	}
	if len(r.Points) == 3 && w == wantAngle {
		return s.corner(r, r.Node, false)
	}
	if len(r.Points) == 1 {
		s.fail(r.Node, "a length needs two points, and %s is one", s.span(r.Node).Text())
		return expr{}, false
	}
	ps, ok := s.run(r, 0)
	if !ok {
		return expr{}, false
	}
	if len(ps) != 2 {
		p := s.fail(r.Node, "%s names %d points; a length has two", s.span(r.Node).Text(), len(ps))
		if len(ps) == 3 {
			p.Help = "for the angle write: angle " + s.span(r.Node).Text()
		}
		return expr{}, false
	}
	k := pair{ps[0], ps[1]}
	return expr{node: r.Node, dim: 1, ends: &k, value: func(st *program.State) (program.Amount, error) {
		return exact.Pure(geom.Dist(st.Point(k[0]), st.Point(k[1]))), nil
	}}, true
}

// nameValue is a loop variable, or a named number, length or angle.
func (s *scope) nameValue(r *syntax.Ref, w want) (expr, bool) {
	name, ok := s.indexed(r.Name, r.Index)
	if !ok {
		return expr{}, false
	}
	if name == "π" && !s.knows(name) {
		return expr{node: r.Node, bare: true, value: func(st *program.State) (program.Amount, error) { return st.Field.Pi(), nil }}, true
	}
	if c, ok := s.consts[name]; ok {
		return s.ratValue(r.Node, c, 0, true), true
	}
	if slot, ok := s.names[name]; ok && s.slot(slot).Kind == program.Circle {
		if w == wantOpening {
			return s.radius(r, r.Node, 0)
		}
		s.fail(r.Node, "%s is a circle, not a length", name).Help = "for its radius write: radius " + name
		return expr{}, false
	}
	kinds := []program.Kind{program.Length, program.Number, program.Size}
	if w == wantNumber {
		kinds = kinds[1:2]
	}
	slot, ok := s.lookup(name, r.Node, kinds...)
	if !ok {
		return expr{}, false
	}
	out := expr{node: r.Node, dim: 1}
	switch s.slot(slot).Kind {
	case program.Size:
		return expr{node: r.Node, angle: true, size: func(st *program.State) (geom.Angle, error) {
			return st.Angle(slot), nil
		}}, true
	case program.Number:
		out.dim, out.bare = 0, true
	}
	out.value = func(st *program.State) (program.Amount, error) { return st.Amount(slot), nil }
	return out, true
}
