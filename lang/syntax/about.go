package syntax

import (
	"reflect"
	"slices"
)

// about lets the word stand only before a whole measurement with which
// something is given, taken or struck.
func (c *sounding) about(n *Expr) {
	if !n.About {
		return
	}
	measured, first := false, false
	walk(reflect.ValueOf(c.statement), func(node any) {
		measured = measured || slices.Contains(measurements(node), n)
		q, ok := node.(*Equation)
		first = first || ok && q.Terms[0] == n
	})
	switch {
	case measured:
	case first:
		c.wrong(n.Node, "write it after the sign: AB = about 6", "about stands before the measurement")
	case c.statement.Claim != nil || c.statement.Needs != nil || c.statement.Mark != nil:
		c.wrong(n.Node, "leave about out; say it of the measurement that is given: given B about 6 from A", "what is claimed or marked holds exactly or not at all")
	default:
		c.wrong(n.Node, "it reads: given B about 6 from A · given C about (2, 3) · radius about 3", "about belongs before a whole measurement that is given or taken")
	}
}

// measurements are the expressions of a node that a ruler, a protractor or the
// compasses' opening is set to.
func measurements(node any) []*Expr {
	switch n := node.(type) {
	case *Coords:
		return []*Expr{n.X, n.Y}
	case *Place:
		return []*Expr{n.Distance, n.OnAngle, n.Bearing}
	case *GivenAngle:
		return []*Expr{n.Size}
	case *GivenLen:
		return []*Expr{n.Size}
	case *Equation:
		return n.Terms[1:]
	case *GivenCirc:
		return []*Expr{n.Radius}
	case *Arc:
		return []*Expr{n.Radius}
	case *Circle:
		return []*Expr{n.Radius}
	case *StepOff:
		return []*Expr{n.Radius}
	}
	return nil
}
