package syntax

import (
	"fmt"
	"reflect"
	"slices"

	"trammel/lang/source"
)

// sounding looks over a statement that parses for what the grammar cannot
// say: how many points a run has, what may stand side by side, where a range
// may stand.
type sounding struct {
	file      *source.File
	statement *Statement
	problems  *source.List
	known     *known
	said      map[*Ref]bool // what has been reported
}

// sound reports what is wrong within a statement; it gives the statement if
// nothing is.
func (c *sounding) sound(l line, s *Statement) *Statement {
	if s == nil {
		return nil
	}
	before := len(*c.problems)
	c.statement = s
	walk(reflect.ValueOf(s), c.node)
	l.noteComma(c.file, c.problems, before)
	if len(*c.problems) > before {
		return nil
	}
	return s
}

// walk calls visit on every node below v, parents first, in the order of the
// source.
func walk(v reflect.Value, visit func(node any)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && v.Elem().Kind() == reflect.Struct {
			visit(v.Interface())
			walk(v.Elem(), visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			switch v.Field(i).Kind() {
			case reflect.Pointer, reflect.Slice:
				walk(v.Field(i), visit)
			case reflect.Struct:
				if v.Type().Field(i).Name == "Opening" {
					walk(v.Field(i), visit)
				}
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), visit)
		}
	}
}

func (c *sounding) wrong(n Node, help, format string, args ...any) {
	c.problems.Add(n.Span(c.file), fmt.Sprintf(format, args...)).Help = help
}

// text is the node as written.
func (c *sounding) text(n Node) string { return n.Span(c.file).Text() }

func (c *sounding) node(node any) {
	switch n := node.(type) {
	case *Paper:
		c.measured(n.Width, "the paper's width")
		c.measured(n.Height, "the paper's height")
	case *Unit:
		c.measured(n.Size, "a unit")
	case *Expr:
		c.about(n)
	case *Product:
		c.product(n)
	case *Index:
		c.index(n)
	case *Relation:
		c.relation(n)
	case *Ref:
		c.thing(n)
	default:
		c.made(node)
		c.places(node)
	}
}

// measured wants a length of paper, in mm or cm.
func (c *sounding) measured(e *Expr, what string) {
	if e == nil {
		return
	}
	found := false
	walk(reflect.ValueOf(e), func(node any) {
		v, ok := node.(*Value)
		found = found || ok && (v.Unit != "" || v.Ref != nil && habits[v.Ref.Name] != "")
	})
	if !found {
		number := c.text(e.Node)
		if head := e.Head.Head.Value; head.Number != "" && len(e.Head.Tail) > 0 {
			number = head.Number // 1 inch
		}
		c.wrong(e.Node, "write "+number+" mm or "+number+" cm", "%s is measured in mm or cm", what)
	}
}

// index lets a range stand only where a family of points is made.
func (c *sounding) index(n *Index) {
	if n.To == nil || c.statement.StepOff != nil && c.statement.StepOff.Points.holds(n) {
		return
	}
	if named := c.statement.Named; named != nil && named.By != nil {
		for _, r := range named.Names {
			if r.holds(n) {
				return
			}
		}
	}
	if c.inRun(n) {
		return
	}
	c.wrong(n.Node, "name one thing: P[1]", "a range stands only where a family is made or in a run")
}

func (r *Ref) holds(n *Index) bool {
	return r.Index == n || len(r.Points) == 1 && r.Points[0].Index == n
}

// inRun tells whether a range stands in a run of points, as in join AP[1 to 5]A.
func (c *sounding) inRun(n *Index) bool {
	found := false
	walk(reflect.ValueOf(c.statement), func(node any) {
		r, ok := node.(*Ref)
		for i := 0; ok && i < len(r.Points); i++ {
			found = found || r.Points[i].Index == n && (len(r.Points) > 1 || c.takesRun(r))
		}
	})
	return found
}

// takesRun tells whether a reference stands where many points may, so that one
// family alone can be all of them: claim regular P[1 to 5].
func (c *sounding) takesRun(r *Ref) bool {
	if j := c.statement.Join; j != nil && slices.Contains(j.Runs, r) {
		return true
	}
	rel := c.statement.Claim
	return rel != nil && (rel.Relation.ShapeOf == r || rel.Relation.Collinear == r || rel.Relation.Concyclic == r)
}

// relation checks the number of points, and that not has one relation.
func (c *sounding) relation(n *Relation) {
	c.run(n.Triangle, 3, 3, "a triangle")
	c.run(n.Triangle2, 3, 3, "a triangle")
	c.run(n.Collinear, 3, many, "collinear")
	c.run(n.Concyclic, 4, many, "concyclic")
	c.run(n.Midpoint, 2, 2, "a straight")
	c.run(n.Bisects, 3, 3, "an angle")
	c.points(n.Between, n.And)
	if n.Shape == "regular" {
		c.run(n.ShapeOf, 3, many, "a regular polygon")
	} else {
		c.run(n.ShapeOf, 4, 4, "a "+n.Shape)
	}
	if k := len(n.Concurrent); k == 2 {
		c.wrong(n.Node, "name a third: concurrent l, m, n", "two straights are always concurrent or parallel")
	}
	if n.Not && len(n.Chain) > 1 {
		c.wrong(n.Node, "write a claim for each", "not takes one relation, this is a chain of %d", len(n.Chain))
	}
}
