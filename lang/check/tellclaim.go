package check

import (
	"fmt"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// tellMark is what a mark says, and why where it is plain: equal radii.
func (s *scope) tellMark(m *syntax.Mark) program.Saying {
	if len(m.Right) > 0 {
		var all program.List
		for _, r := range m.Right {
			all = append(all, phrase("claim.right", "angle", s.letters1(r)))
		}
		return all
	}
	if len(m.Parallel) > 0 {
		all := program.List{s.tellArgument(m.First)}
		for _, r := range m.Parallel {
			all = append(all, s.curveName(r))
		}
		return phrase("claim.parallel", "lines", all)
	}
	return s.tellChain(append([]*syntax.Expr{m.First}, m.Equal...), "=")
}

// tellTerms is equal values, one after the other: AB = AC = 5 cm.
func (s *scope) tellTerms(terms []*syntax.Expr, op string) program.Saying {
	return s.tellChain(terms, op)
}

// tellChain is values that are compared with one sign. A bare number takes the
// unit of the others; one value alone says nothing.
func (s *scope) tellChain(terms []*syntax.Expr, op string) program.Saying {
	if len(terms) < 2 {
		return nil
	}
	dim, angle := s.measures(terms)
	var said program.Saying
	for i, e := range terms {
		term := s.tellTerm(e, dim, angle)
		if i == 0 {
			said = term
			continue
		}
		key := opKeys[op]
		if e.About {
			key = "about"
		}
		said = phrase("op."+key, "a", said, "b", term)
	}
	if op == "=" && s.radii(terms) {
		return phrase("claim.radii", "equation", said)
	}
	return said
}

// measures is the power of length of what is compared, and whether it is angles.
func (s *scope) measures(terms []*syntax.Expr) (dim int, angle bool) {
	for _, e := range terms {
		if s.mentionsAngle(e) {
			return 0, true
		}
		if v, ok := s.expr(e, wantAny); ok && !v.bare {
			dim = max(dim, v.dim)
		}
	}
	return dim, false
}

// opKeys name the signs of comparison in the catalogue.
var opKeys = map[string]string{"=": "equal", "<": "less", ">": "more", "≤": "most", "≥": "least", "≠": "unequal"}

func (s *scope) tellTerm(e *syntax.Expr, dim int, angle bool) program.Saying {
	if e.About { // the sign says it
		exact := *e
		exact.About = false
		e = &exact
	}
	r := plainExpr(e)
	switch {
	case angle && r != nil && r.Name == "" && len(r.Points) == 3:
		return phrase("angle", "angle", s.letters1(r))
	case angle:
		return s.tellAngle(e)
	case dim == 1:
		return s.tellLength(e)
	case dim == 2 && bareNumber(e) != nil:
		return phrase("area."+s.unitKey(), "n", program.Numeral(bareNumber(e).Number))
	}
	return s.tellExpr(e)
}

// radii tells whether lengths are equal for being radii of one opening.
func (s *scope) radii(terms []*syntax.Expr) bool {
	class := -1
	for _, e := range terms {
		r := plainExpr(e)
		if r == nil || r.Name != "" || len(r.Points) != 2 {
			return false
		}
		ps, _ := s.letters1(r).(program.Letters)
		k, ok := s.c.hand.known(ps)
		if !ok || class >= 0 && k != class {
			return false
		}
		class = k
	}
	return class >= 0
}

// tellRelation is what a claim says. There is a row here for each form.
func (s *scope) tellRelation(r *syntax.Relation) program.Saying {
	said := s.tellPositive(r)
	if r.Not {
		return phrase("claim.not", "claim", said)
	}
	return said
}

func (s *scope) tellPositive(r *syntax.Relation) program.Saying {
	switch {
	case r.Triangle != nil && r.Congruent:
		return phrase("claim.congruent", "a", s.letters1(r.Triangle), "b", s.letters1(r.Triangle2))
	case r.Triangle != nil:
		return phrase("claim.similar", "a", s.letters1(r.Triangle), "b", s.letters1(r.Triangle2))
	case r.Collinear != nil:
		return phrase("claim.collinear", "points", s.separate(r.Collinear))
	case r.Concyclic != nil:
		return phrase("claim.concyclic", "points", s.separate(r.Concyclic))
	case r.Concurrent != nil:
		var all program.List
		for _, l := range r.Concurrent {
			all = append(all, s.curveName(l))
		}
		return phrase("claim.concurrent", "lines", all)
	case r.Shape == "regular":
		return s.tellRegular(r.ShapeOf)
	case r.Shape != "":
		return phrase("claim."+r.Shape, "points", s.letters1(r.ShapeOf))
	}
	return s.tellOf(r)
}

// tellRegular is that a polygon is regular, by its own name where it has one.
func (s *scope) tellRegular(r *syntax.Ref) program.Saying {
	points, _ := s.letters1(r).(program.Letters)
	key := "claim.regular"
	switch n := len(points); n {
	case 3, 4, 5, 6, 8, 10, 12:
		key = fmt.Sprintf("claim.regular.%d", n)
	}
	return phrase(key, "points", points, "n", program.Numeral(fmt.Sprint(len(points))))
}

// separate is points of a run told one by one.
func (s *scope) separate(r *syntax.Ref) program.Saying {
	var all program.List
	ps, _ := s.letters1(r).(program.Letters)
	for _, p := range ps {
		all = append(all, program.Letters{p})
	}
	return inShort(all)
}

// tellOf is what is claimed of the thing on the left.
func (s *scope) tellOf(r *syntax.Relation) program.Saying {
	if len(r.Chain) > 0 {
		return s.tellLinks(r)
	}
	left := s.tellSide(r.Left)
	switch {
	case r.Perp != nil:
		return phrase("claim.perpendicular", "a", left, "b", s.curveName(r.Perp))
	case len(r.Parallel) > 0:
		all := program.List{left}
		for _, l := range r.Parallel {
			all = append(all, s.curveName(l))
		}
		return phrase("claim.parallel", "lines", all)
	case r.On != nil:
		return phrase("claim.on", "a", left, "b", s.curveName(r.On))
	case r.Inside != nil:
		return phrase("claim.inside", "a", left, "b", s.curveName(r.Inside))
	case r.Outside != nil:
		return phrase("claim.outside", "a", left, "b", s.curveName(r.Outside))
	case r.Same != nil:
		return phrase("claim.same", "a", left, "b", s.curveName(r.As), "line", s.curveName(r.Same))
	case r.Other != nil:
		return phrase("claim.other", "a", left, "b", s.curveName(r.From), "line", s.curveName(r.Other))
	case r.Between != nil:
		return phrase("claim.between", "point", left, "a", s.letters1(r.Between), "b", s.letters1(r.And))
	case r.Midpoint != nil:
		return phrase("claim.midpoint", "point", left, "line", s.letters1(r.Midpoint))
	case r.Centre != nil:
		return phrase("claim.centre", "point", left, "circle", s.curveName(r.Centre))
	case r.Bisects != nil:
		return phrase("claim.bisects", "line", left, "angle", s.letters1(r.Bisects))
	}
	return s.tellTouch(left, r.Touches)
}

func (s *scope) tellTouch(left program.Saying, t *syntax.Touch) program.Saying {
	key := "claim.touches"
	if t.How != "" {
		key = fmt.Sprintf("claim.touches.%s", t.How)
	}
	var at program.Saying = nothing
	if t.At != nil {
		at = phrase("at", "point", s.letters1(t.At))
	}
	return phrase(key, "a", left, "b", s.curveName(t.What), "at", at)
}

// tellSide is a value, a ratio, or the thing that something is claimed of.
func (s *scope) tellSide(side *syntax.Side) program.Saying {
	if r := plainRef(side); r != nil {
		return s.tellArgument(side.Terms[0])
	}
	return s.tellRatio(side)
}

func (s *scope) tellRatio(side *syntax.Side) program.Saying {
	said := s.tellExpr(side.Terms[0])
	for _, e := range side.Terms[1:] {
		said = phrase("ratio", "a", said, "b", s.tellExpr(e))
	}
	return said
}

// tellLinks is a chain of comparisons.
func (s *scope) tellLinks(r *syntax.Relation) program.Saying {
	sides := []*syntax.Side{r.Left}
	alike, plain := true, true
	for _, l := range r.Chain {
		sides = append(sides, l.Right)
		alike = alike && l.Op == r.Chain[0].Op
	}
	var terms []*syntax.Expr
	for _, side := range sides {
		plain = plain && len(side.Terms) == 1
		terms = append(terms, side.Terms[0])
	}
	if plain && alike {
		return s.tellPlainChain(terms, r.Chain[0].Op)
	}
	said := s.tellRatio(r.Left)
	for _, l := range r.Chain {
		said = phrase("op."+opKeys[l.Op], "a", said, "b", s.tellRatio(l.Right))
	}
	return said
}

func (s *scope) tellPlainChain(terms []*syntax.Expr, op string) program.Saying {
	if points, ok := s.samePoints(terms); ok && (op == "=" || op == "≠") {
		return phrase("claim.point."+opKeys[op], "points", points)
	}
	if op == "=" && len(terms) == 2 && isRight(terms[1]) {
		if ref, bent := angleRef(terms[0]); ref != nil && !bent && len(ref.Points) == 3 {
			return phrase("claim.right", "angle", s.letters1(ref))
		}
	}
	return s.tellChain(terms, op)
}

// isRight tells 90°, or 90 where an angle is meant.
func isRight(e *syntax.Expr) bool {
	v := e.Head.Head.Value
	return len(e.Tail) == 0 && len(e.Head.Tail) == 0 && (v.Degrees == "90°" || v.Number == "90" && v.Unit != "cm" && v.Unit != "mm")
}

// samePoints are the terms of a chain where all are single points.
func (s *scope) samePoints(terms []*syntax.Expr) (program.List, bool) {
	var all program.List
	for _, e := range terms {
		r := plainExpr(e)
		if r == nil || r.Name != "" || len(r.Points) != 1 {
			return nil, false
		}
		all = append(all, s.letters1(r))
	}
	return all, true
}
