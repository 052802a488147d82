package check

import (
	"math/big"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// chain compares neighbours: a = b = c < d, values or ratios.
func (s *scope) chain(sides []*syntax.Side, ops []string) (relation, bool) {
	if rel, isPoints, ok := s.pointChain(sides, ops); isPoints {
		return rel, ok
	}
	w := wantAny
	for _, side := range sides {
		for _, t := range side.Terms {
			if s.mentionsAngle(t) {
				w = wantAngle
			}
		}
	}
	var all [][]expr
	for _, side := range sides {
		var terms []expr
		for _, t := range side.Terms {
			e, ok := s.chainTerm(t, w)
			if !ok {
				return nil, false
			}
			terms = append(terms, e)
		}
		all = append(all, terms)
	}
	var links []relation
	for i, op := range ops {
		link, ok := s.link(all[i], op, all[i+1], sides[i+1].Node)
		if !ok {
			return nil, false
		}
		links = append(links, link)
	}
	return allOf(links), true
}

// chainTerm resolves a term; in a ratio of angles plain numbers stay numbers.
func (s *scope) chainTerm(t *syntax.Expr, w want) (expr, bool) {
	if w != wantAngle {
		return s.expr(t, w)
	}
	if !s.mentionsAngle(t) && plainExpr(t) == nil {
		return s.expr(t, wantAny)
	}
	if r := plainExpr(t); r != nil && (r.Name != "" || len(r.Points) == 2) {
		return s.expr(t, wantAny)
	}
	return s.expr(t, wantAngle)
}

// mentionsAngle tells whether an angle stands anywhere in an expression.
func (s *scope) mentionsAngle(e *syntax.Expr) bool {
	if s.productAngle(e.Head) {
		return true
	}
	for _, t := range e.Tail {
		if s.productAngle(t.Term) {
			return true
		}
	}
	return false
}

func (s *scope) productAngle(p *syntax.Product) bool {
	if s.valueAngle(p.Head.Value) {
		return true
	}
	for _, t := range p.Tail {
		if s.valueAngle(t.Factor.Value) {
			return true
		}
	}
	return false
}

func (s *scope) valueAngle(v *syntax.Value) bool {
	switch {
	case v.Angle != nil || v.Degrees != "" || v.Unit == "deg":
		return true
	case v.Paren != nil:
		return s.mentionsAngle(v.Paren)
	case v.Ref != nil && v.Ref.Name != "":
		slot, ok := s.names[v.Ref.Name]
		return ok && s.slot(slot).Kind == program.Size
	}
	return false
}

// pointChain compares places: P7 = P1, A ≠ B.
func (s *scope) pointChain(sides []*syntax.Side, ops []string) (rel relation, isPoints, ok bool) {
	var slots []int
	for _, side := range sides {
		r := plainRef(side)
		if r == nil || r.Name != "" || len(r.Points) != 1 {
			return nil, false, false
		}
	}
	for i, side := range sides {
		slot, ok := s.point(plainRef(side))
		if !ok {
			return nil, true, false
		}
		slots = append(slots, slot)
		if i > 0 && ops[i-1] != "=" && ops[i-1] != "≠" {
			s.fail(side.Node, "points can be the same place or not, but not more or less")
			return nil, true, false
		}
	}
	return func(st *program.State) (verdict, error) {
		for i, op := range ops {
			p, q := st.Point(slots[i]), st.Point(slots[i+1])
			if p.Equal(q) == (op == "=") {
				continue
			}
			n, m := st.Program.Slots[slots[i]].Name, st.Program.Slots[slots[i+1]].Name
			if op == "=" {
				return no("%s and %s are %s apart", n, m, st.Exactly(1, geom.Dist(p, q))), nil
			}
			return no("%s and %s are one and the same place", n, m), nil
		}
		return yes, nil
	}, true, true
}

// link compares two neighbours of a chain.
func (s *scope) link(a []expr, op string, b []expr, n syntax.Node) (relation, bool) {
	if a, b, ok := s.oneTerm(a, b); ok {
		return s.link(a, op, b, n)
	}
	if !s.ratioTerms(a) || !s.ratioTerms(b) {
		return nil, false
	}
	if len(a) == 1 && len(b) == 1 {
		return s.compare(a[0], op, b[0])
	}
	if len(a) != len(b) {
		s.fail(n, "a ratio of %d is compared with one of %d", len(a), len(b)).Help = "both sides have as many terms: AB : BC = 6 : 5, or AB/BC = 6/5"
		return nil, false
	}
	if op != "=" {
		s.fail(n, "ratios are compared with = only")
		return nil, false
	}
	var links []relation
	for i := 0; i+1 < len(a); i++ {
		left, ok1 := s.cross(a[i], b[i+1])
		right, ok2 := s.cross(a[i+1], b[i])
		if !ok1 || !ok2 {
			return nil, false
		}
		l, ok := s.compare(left, "=", right)
		if !ok {
			return nil, false
		}
		x, y, p, q := a[i], a[i+1], b[i], b[i+1]
		links = append(links, func(st *program.State) (verdict, error) {
			v, err := l(st)
			if err != nil {
				return v, err
			}
			terms := []expr{y, q} // what is divided by
			if v.holds {
				terms = []expr{x, y, p, q}
			}
			for _, e := range terms {
				if err := s.refuseNothing(st, e); err != nil {
					return verdict{}, err
				}
			}
			if v.holds {
				return v, nil
			}
			return no("the first ratio is %s and the second %s%s", ratioText(st, x, y), ratioText(st, p, q), ratioGap(st, x, y, p, q)), nil
		})
	}
	return allOf(links), true
}

// refuseNothing is a fault where a term of a ratio comes out as 0: multiplied out, the
// proportion would hold whatever the others are.
func (s *scope) refuseNothing(st *program.State, e expr) error {
	var sign int
	if e.angle {
		a, err := e.size(st)
		if err != nil {
			return err
		}
		if sign, err = a.Cmp(geom.Degrees(new(big.Rat))); err != nil {
			return err
		}
	} else {
		x, err := e.value(st)
		if err != nil {
			return err
		}
		if !x.IsZero() {
			sign = 1
		}
	}
	if sign == 0 {
		span := s.span(e.node)
		return &program.Fault{Text: "a ratio has no term 0, and " + span.Text() + " is 0 here", Span: &span}
	}
	return nil
}

// ratioTerms gives a plain number the kind of what it stands beside, and reports
// a ratio with terms of two kinds, or with a term 0.
func (s *scope) ratioTerms(a []expr) bool {
	for i := range a[1:] {
		if x, y := a[i], a[i+1]; x.angle != y.angle && !x.bare && !y.bare || x.dim != y.dim && !x.bare && !y.bare {
			s.fail(y.node, "the terms of a ratio are of one kind: here are %s and %s", x.kindWord(), y.kindWord())
			return false
		} else if y.bare {
			a[i+1].dim = x.dim
		} else if x.bare {
			a[i].dim = y.dim
		}
	}
	for _, e := range a {
		if len(a) > 1 && e.rat != nil && e.rat.Sign() == 0 {
			s.fail(e.node, "a ratio has no term 0")
			return false
		}
	}
	return true
}

// oneTerm turns AB : BC = 1.2 into AB : BC = 1.2 : 1.
func (s *scope) oneTerm(a, b []expr) ([]expr, []expr, bool) {
	one := s.ratValue(syntax.Node{}, big.NewRat(1, 1), 0, true)
	switch {
	case len(a) == 2 && len(b) == 1 && b[0].bare:
		one.node = b[0].node
		return a, []expr{b[0], one}, true
	case len(a) == 1 && a[0].bare && len(b) == 2:
		one.node = a[0].node
		return []expr{a[0], one}, b, true
	}
	return a, b, false
}

// cross multiplies across a proportion; one factor must be a number where the
// other is an angle.
func (s *scope) cross(a, b expr) (expr, bool) { return s.times(a, b) }

func ratioText(st *program.State, a, b expr) string {
	x, y := roughly(st, a), roughly(st, b)
	if y == 0 {
		return sig(x) + " : 0"
	}
	return sig(x/y) + " : 1"
}

// ratioGap is x : y minus p : q, of lengths and numbers.
func ratioGap(st *program.State, x, y, p, q expr) string {
	var v [4]program.Amount
	for i, e := range []expr{x, y, p, q} {
		if e.angle {
			return ""
		}
		a, err := e.value(st)
		if err != nil {
			return ""
		}
		v[i] = a
	}
	gap := v[0].Mul(v[3]).Sub(v[2].Mul(v[1])).Float() / (v[1].Float() * v[3].Float())
	return ": left minus right is " + sig(gap)
}

func roughly(st *program.State, e expr) float64 {
	if e.angle {
		a, err := e.size(st)
		if err != nil {
			return 0
		}
		return a.Float()
	}
	x, err := e.value(st)
	if err != nil {
		return 0
	}
	return x.Float()
}

// compare decides one comparison of two values.
func (s *scope) compare(a expr, op string, b expr) (relation, bool) {
	a, b, ok := s.agree(a, b, "compared with")
	if !ok {
		return nil, false
	}
	at, bt := shortened(s.words(a.node)), shortened(s.words(b.node))
	if b.sum {
		bt = "(" + bt + ")"
	}
	told := gap.difference
	if s.needing {
		told = gap.lack
	}
	return func(st *program.State) (verdict, error) {
		g, err := gapOf(st, a, b)
		if err != nil {
			return verdict{}, err
		}
		if compares(g.sign, op) {
			return yes, nil
		}
		return no("%s", told(g, at, bt)), nil
	}, true
}

// knownChain decides a comparison of numbers that are known beforehand.
func (s *scope) knownChain(sides []*syntax.Side, ops []string) (holds, known bool) {
	var values []*big.Rat
	for _, side := range sides {
		if len(side.Terms) != 1 || !s.mentionsNumbersOnly(side.Terms[0]) {
			return false, false
		}
		e, ok := s.expr(side.Terms[0], wantNumber)
		if !ok || e.rat == nil {
			return false, false
		}
		values = append(values, e.rat)
	}
	for i, op := range ops {
		if !compares(values[i].Cmp(values[i+1]), op) {
			return false, true
		}
	}
	return true, true
}

// mentionsNumbersOnly tells whether an expression is a literal or a known number.
func (s *scope) mentionsNumbersOnly(e *syntax.Expr) bool {
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) > 0 {
		return false
	}
	v := e.Head.Head.Value
	if v.Ref != nil {
		_, known := s.consts[v.Ref.Name]
		return known
	}
	return v.Number != ""
}

func compares(sign int, op string) bool {
	switch op {
	case "=":
		return sign == 0
	case "≠":
		return sign != 0
	case "<":
		return sign < 0
	case ">":
		return sign > 0
	case "≤":
		return sign <= 0
	}
	return sign >= 0
}

// shortened is a text with its middle cut out where it is longer than a message bears.
func shortened(text string) string {
	r := []rune(text)
	if len(r) <= 60 {
		return text
	}
	return string(r[:28]) + " … " + string(r[len(r)-28:])
}
