package check

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// equation sorts the terms of AB = AC = 5 into elements of the shape and the value.
func (sh *shape) equation(q *syntax.Equation) bool {
	c, multiples := &class{}, []tie(nil)
	sh.s.making = sh
	defer func() { sh.s.making = nil }()
	for _, t := range q.Terms {
		sh.term = t.Node
		if e, ok := sh.element(t); ok {
			if t.About {
				sh.s.fail(t.Node, "%s is of the %s itself, and is no measurement", sh.describe(e), sh.kind).Help = "about stands before a measurement: AB = AC = about 5"
				return false
			}
			c.elems = append(c.elems, e)
		} else if f, k, ok := sh.multiple(t); ok {
			multiples = append(multiples, tie{f: f, k: k})
		} else if !sh.valued(c, t) {
			return false
		}
	}
	if len(c.elems) == 0 && len(multiples) > 0 {
		c, multiples = multiples[0].whole(c, multiples[1:])
	}
	if len(c.elems) == 0 {
		sh.s.fail(q.Node, "this says nothing about %s", strings.Join(sh.letters, "")).Help = sh.dataHelp()
		return false
	}
	if !ofOneKind(c, multiples) {
		sh.s.fail(q.Node, "a side and an angle cannot be equal")
		return false
	}
	for _, m := range multiples {
		sh.ties = append(sh.ties, tie{c.elems[0], m.f, m.k}, tie{m.f, c.elems[0], new(big.Rat).Inv(m.k)})
	}
	sh.written = append(sh.written, &class{append([]element{}, c.elems...), c.value})
	return sh.merge(c, q)
}

// valued adds the value of an equation, which has one at most.
func (sh *shape) valued(c *class, t *syntax.Expr) bool {
	if p := sh.misnamed(t); p != nil {
		return false
	}
	if what := sh.foreign(t); what != "" {
		sh.s.fail(t.Node, "%s is no %s of the %s %s", sh.s.span(t.Node).Text(), what, sh.kind, strings.Join(sh.letters, "")).Help = sh.dataHelp()
		return false
	}
	w := wantLength
	if len(c.elems) > 0 && c.elems[0].b < 0 {
		w = wantAngle
	}
	v, ok := sh.s.expr(t, w)
	if !ok {
		return false
	}
	if c.value != nil {
		p := sh.s.fail(t.Node, "two values in one equation")
		if p.Help = "one value will do"; len(c.elems) == 0 {
			p.Help = "neither is of the " + sh.kind + ": " + sh.dataHelp()
		}
		return false
	}
	c.value, sh.about = &v, sh.about || t.About
	return true
}

// misnamed refuses a corner's letter for its angle, and a small letter for a side, where
// nothing has that name.
func (sh *shape) misnamed(t *syntax.Expr) *source.Problem {
	r := plainExpr(t)
	if r == nil {
		return nil
	}
	whose := sh.kind + " " + strings.Join(sh.letters, "")
	if r.Name == "" && len(r.Points) == 1 {
		if i := sh.index(r.Points[0]); i >= 0 {
			p := sh.s.fail(t.Node, "%s is a corner of the %s, and neither a side nor an angle", sh.letters[i], whose)
			p.Help = "its angle is angle " + sh.letters[i]
			return p
		}
	}
	if r.Name == "" || sh.s.knows(r.Name) || sh.s.c.lost.has(r.Name) {
		return nil
	}
	p := sh.s.fail(t.Node, "%s is neither a side nor an angle of the %s, and no length that is known", r.Name, whose)
	p.Help = sh.dataHelp()
	if i := slices.Index(sh.letters, strings.ToUpper(r.Name)); i >= 0 && sh.kind == "triangle" {
		p.Help = "a side is named by its ends: " + sh.describe(opposite(i))
	}
	return p
}

// ofOneKind tells whether an equation is of sides only, or of angles only.
func ofOneKind(c *class, multiples []tie) bool {
	isAngle := c.elems[0].b < 0
	return !slices.ContainsFunc(c.elems, func(e element) bool { return (e.b < 0) != isAngle }) &&
		!slices.ContainsFunc(multiples, func(m tie) bool { return (m.f.b < 0) != isAngle })
}

// dataHelp is how a side or an angle is given.
func (sh *shape) dataHelp() string {
	return "give a side, such as " + sh.letters[0] + sh.letters[1] + " = 5, or an angle, such as angle " + sh.letters[0] + " = 40°"
}

// foreign is what a term would be of the shape, a side or an angle, if its letters
// were corners: one of them is known nowhere, or none is lacking and they do not
// follow each other. It is "" for what may be a value.
func (sh *shape) foreign(e *syntax.Expr) string {
	r, what := plainExpr(e), "side"
	if v := e.Head.Head.Value; r == nil && v.Angle != nil && len(e.Tail)+len(e.Head.Tail) == 0 {
		r, what = v.Angle, "angle"
	}
	if r == nil || r.Name != "" || what == "side" && len(r.Points) != 2 {
		return ""
	}
	corners := 0
	for _, p := range r.Points {
		name, ok := sh.s.indexed(p.Name, p.Index)
		if !ok {
			return ""
		}
		if sh.index(p) >= 0 {
			corners++
		} else if !sh.s.knows(name) && !sh.s.c.lost.has(name) {
			return what
		}
	}
	if corners == len(r.Points) && what == "angle" || len(r.Points) == 1 {
		return what
	}
	return ""
}

// merge joins a class with those that share an element.
func (sh *shape) merge(c *class, q *syntax.Equation) bool {
	var rest []*class
	for _, old := range sh.classes {
		if !old.shares(c) {
			rest = append(rest, old)
			continue
		}
		if old.value != nil && c.value != nil {
			sh.s.fail(q.Node, "%s is given twice", sh.describe(c.elems[0])).Help = "keep one of the two"
			return false
		}
		if c.value == nil {
			c.value = old.value
		}
		c.elems = append(c.elems, old.elems...)
	}
	sh.classes = append(rest, c)
	return true
}

func (c *class) shares(d *class) bool {
	for _, e := range c.elems {
		if d.has(e) {
			return true
		}
	}
	return false
}

func (c *class) has(e element) bool {
	for _, f := range c.elems {
		if e == f {
			return true
		}
	}
	return false
}

func (sh *shape) describe(e element) string {
	if e.b < 0 {
		return "the angle at " + sh.letters[e.a]
	}
	return sh.letters[e.a] + sh.letters[e.b]
}

// element reads AB, angle A or angle BAC of the shape's own corners.
func (sh *shape) element(e *syntax.Expr) (element, bool) {
	if e.Neg || len(e.Tail) > 0 || len(e.Head.Tail) > 0 || e.Head.Head.Half || e.Head.Head.Square {
		return element{}, false
	}
	return sh.elementOf(e.Head.Head.Value)
}

func (sh *shape) elementOf(v *syntax.Value) (element, bool) {
	switch {
	case v.Ref != nil && len(v.Ref.Points) == 2:
		i, j := sh.index(v.Ref.Points[0]), sh.index(v.Ref.Points[1])
		return sideOf(i, j), i >= 0 && j >= 0 && i != j
	case v.Angle != nil && !v.Reflex && len(v.Angle.Points) == 1:
		i := sh.index(v.Angle.Points[0])
		return angleAt(i), i >= 0
	case v.Angle != nil && !v.Reflex && len(v.Angle.Points) == 3:
		return sh.fullAngle(v.Angle.Points)
	}
	return element{}, false
}

// fullAngle is an angle of the shape named by three corners that follow each other.
func (sh *shape) fullAngle(ps []*syntax.PointName) (element, bool) {
	n := len(sh.letters)
	a, v, b := sh.index(ps[0]), sh.index(ps[1]), sh.index(ps[2])
	if a < 0 || v < 0 || b < 0 {
		return element{}, false
	}
	beside := (a-v+n)%n == 1 && (b-v+n)%n == n-1 || (b-v+n)%n == 1 && (a-v+n)%n == n-1
	return angleAt(v), beside
}

func (sh *shape) index(p *syntax.PointName) int {
	name, ok := sh.s.indexed(p.Name, p.Index)
	if !ok {
		return -1
	}
	for i, l := range sh.letters {
		if l == name {
			return i
		}
	}
	return -1
}

// hold proves every datum of the source against the corners: none may be left
// out silently, whichever of them the corners were found from.
func (sh *shape) hold(st *program.State, ps []geom.Point) error {
	for _, c := range sh.written {
		for _, e := range c.elems {
			if err := sh.holdElement(st, ps, e, c); err != nil {
				return err
			}
		}
	}
	return sh.holdTies(ps)
}

// holdElement compares one side or angle with the value that it is given, or
// with the first of those that it is to equal.
func (sh *shape) holdElement(st *program.State, ps []geom.Point, e element, c *class) error {
	if e.b < 0 {
		want := sh.corner(ps, c.elems[0].a)
		if c.value != nil {
			a, err := c.value.size(st)
			if err != nil {
				return err
			}
			want = a
		}
		is := sh.corner(ps, e.a)
		sign, err := is.Cmp(want)
		if err != nil || sign == 0 {
			return err
		}
		return sh.disagree(e, is.String(), want.String())
	}
	want := geom.Dist(ps[c.elems[0].a], ps[c.elems[0].b])
	if c.value != nil {
		r, err := real1(st, *c.value)
		if err != nil {
			return err
		}
		want = r
	}
	if is := geom.Dist(ps[e.a], ps[e.b]); !is.Equal(want) {
		return sh.disagree(e, geom.Show(is), geom.Show(want))
	}
	return nil
}

// corner is the angle of the shape at a corner.
func (sh *shape) corner(ps []geom.Point, i int) geom.Angle {
	n := len(ps)
	return geom.Corner(ps[(i+n-1)%n], ps[i], ps[(i+1)%n], false)
}

func (sh *shape) disagree(e element, is, want string) error {
	if sh.chosen {
		return &program.Fault{
			Text:  fmt.Sprintf("%s cannot be brought to %s together with what else is given of the %s", sh.describe(e), want, sh.kind),
			Help:  "give the sides and the angles between them, or leave this out",
			Range: true,
		}
	}
	return &program.Fault{
		Text:  fmt.Sprintf("the other data make %s %s, and not %s", sh.describe(e), is, want),
		Help:  "leave one of the data out, or make them agree",
		Range: true,
	}
}
