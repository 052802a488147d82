package syntax

import "strings"

// product checks what stands side by side. A number may stand before what it
// multiplies; a product goes left to right, so that 1/2 AB is half of AB.
func (c *sounding) product(p *Product) {
	number := p.Head.isNumber()
	before := p.Head
	for i := 0; i < len(p.Tail); i++ {
		t := p.Tail[i]
		if n := c.inPieces(before, p.Tail[i:]); n > 0 {
			i += n - 1
			t = p.Tail[i]
		} else if t.Op == "" {
			c.juxtaposed(p, before, t.Factor, number)
		} else if t.Op == "/" && number && t.Factor.Value.Unit != "" {
			c.divided(p, t.Factor)
		}
		number = number && t.Factor.isNumber()
		before = t.Factor
	}
}

// inPieces reports a run whose points do not touch, A B or angle A B C, and
// tells how many factors of the tail belong to it.
func (c *sounding) inPieces(first *Factor, tail []*MulTail) int {
	run := first.Value.Ref
	if first.Value.Angle != nil {
		run = first.Value.Angle
	}
	if run == nil || run.Name != "" || c.statement.Named != nil {
		return 0
	}
	point := func(t *MulTail) bool { r := t.Factor.Value.Ref; return t.Op == "" && r != nil && r.Name == "" }
	if len(tail) == 0 || !point(tail[0]) || len(run.Points) > 1 && len(tail[0].Factor.Value.Ref.Points) > 1 {
		return 0
	}
	n := 1
	for n < len(tail) && point(tail[n]) {
		n++
	}
	last := tail[n-1].Factor.EndPos
	rest := strings.Fields(c.text(Node{Pos: tail[0].Pos, EndPos: last}))
	whole := c.text(first.Node) + strings.Join(rest, "")
	c.wrong(Node{Pos: first.Pos, EndPos: last}, "write "+clip(whole, 2*maxName), touch)
	c.said[run] = true
	return n
}

// juxtaposed checks one factor against the one before it; number tells that
// all before it are numbers.
func (c *sounding) juxtaposed(p *Product, before, factor *Factor, number bool) {
	span := Node{Pos: before.Pos, EndPos: factor.EndPos}
	a, b := c.text(before.Node), c.text(factor.Node)
	name := ""
	if r := factor.Value.Ref; r != nil {
		name = r.Name
	}
	unit, called := habits[name], c.statement.Named != nil && c.statement.Named.By != nil
	switch {
	case unit == "mm" || unit == "cm":
		c.wrong(factor.Node, "write "+a+" "+unit, "%s is no unit", name)
	case unit == "π" && !c.known.made[name]:
		c.wrong(factor.Node, "write "+a+" π", "%s is not known", name)
	case unit == "°":
		c.wrong(factor.Node, "write "+a+unit, "%s is no unit", name)
	case before.isNumber() && factor.Value.Number != "":
		c.wrong(span, "put a sign between them; a mixed number is 2 + 1/2", "two numbers stand side by side: %s", c.text(span))
	case number:
	case before.isNumber():
		whole, left := Node{Pos: p.Pos, EndPos: factor.EndPos}, c.text(Node{Pos: p.Pos, EndPos: before.EndPos})
		c.wrong(whole, "write ("+left+") * "+b+", or "+strings.TrimSuffix(left, a)+"("+a+" "+b+")", "%s can be read in two ways", c.text(whole))
	case called:
		c.wrong(span, "write "+a+", "+b, "a comma is missing between %s and %s", a, b)
	case c.fills(factor), c.fills(before):
	case before.Value.Ref != nil && before.Value.Ref.Name != "" && factor.Value.Paren != nil:
		c.wrong(before.Node, "for a product write "+a+" * "+b, "%s is no function", a)
	default:
		c.wrong(span, "write "+a+" * "+b, "only a number may stand before what it multiplies: %s", c.text(span))
	}
}

// fills reports a word of plain speech that passed for a name: AB is parallel
// to CD.
func (c *sounding) fills(f *Factor) bool {
	r := f.Value.Ref
	if r == nil || !fillers[r.Name] || c.known.made[r.Name] {
		return false
	}
	if !c.said[r] {
		c.wrongRef(r, "leave it out", "%s has no place in a source", quote(r.Name))
	}
	return true
}

// fillers are words of plain speech that a source leaves out.
var fillers = wordSet("is are that be")

// divided: 1/2 cm, where the unit belongs to the 2.
func (c *sounding) divided(p *Product, factor *Factor) {
	whole := Node{Pos: p.Pos, EndPos: factor.EndPos}
	unit := factor.Value.Unit
	c.wrong(whole, "write 1 "+unit+" / 2, or 0.5 "+unit+", for half a "+unit, "a unit belongs to the number before it: this divides by %s", c.text(factor.Node))
}

// isNumber tells a constant without a unit: 3, 2 sqrt(3), (1 + sqrt(5)).
func (f *Factor) isNumber() bool {
	v := f.Value
	switch {
	case v.Number != "":
		return v.Unit == ""
	case v.Sqrt != nil:
		return v.Sqrt.isNumber()
	case v.Paren != nil:
		return v.Paren.isNumber()
	}
	return v.Ref != nil && v.Ref.Name == "π"
}

func (e *Expr) isNumber() bool {
	all := e.Head.isNumber()
	for _, t := range e.Tail {
		all = all && t.Term.isNumber()
	}
	return all
}

func (p *Product) isNumber() bool {
	all := p.Head.isNumber()
	for _, t := range p.Tail {
		all = all && t.Factor.isNumber()
	}
	return all
}
