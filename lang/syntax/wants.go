package syntax

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// many is no upper bound on the points of a run.
const many = 1 << 30

// touch is what a message says of a run in pieces.
const touch = "the points of a run touch"

// made checks the names and points that a statement makes.
func (c *sounding) made(node any) {
	switch n := node.(type) {
	case *FreePoints:
		c.points(n.Names...)
	case *GivenLine:
		c.name(n.Name, "a line")
		c.twoPoints(n)
	case *CoordPoint:
		c.points(n.Point)
	case *GivenCirc:
		c.name(n.Name, "a circle")
		c.points(n.Through)
	case *GivenAngle:
		c.run(n.Angle, 3, 3, "an angle")
	case *GivenLen:
		c.name(n.Name, "a length")
	case *GivenShape:
		c.corners(n)
	case *PlacedPoint:
		c.points(n.Point)
	case *Arc:
		c.name(n.Name, "an arc")
		c.points(n.Centre, n.From, n.To)
		c.opening(n.Node, n.Opening, n.From != nil, "arc")
	case *Circle:
		c.name(n.Name, "a circle")
		c.points(n.Centre)
		c.opening(n.Node, n.Opening, false, "circle")
	case *Line:
		c.name(n.Name, "a line")
		c.points(n.A, n.B)
	case *Choose:
		c.name(n.Name, "a chosen number")
	case *Repeat:
		c.name(n.Var, "a loop's number")
	case *Param:
		c.param(n)
	case *StepOff:
		c.steppedOff(n)
	case *Locus:
		for _, r := range n.Names {
			c.name(r, "a locus")
		}
	}
}

// places checks the points that a statement speaks of.
func (c *sounding) places(node any) {
	switch n := node.(type) {
	case *Place:
		c.points(n.From, n.Towards)
	case *Cond:
		c.points(n.As, n.From, n.Than, n.Nearest, n.Farthest, n.Between, n.And, n.Beyond)
	case *Meeting:
		if k := len(n.Picks); k > 2 {
			c.wrong(Node{Pos: n.Picks[0].Pos, EndPos: n.Picks[k-1].EndPos}, "name two of them", "%s", twice(k))
		}
	case *Pick:
		c.points(n.Point)
	case *Ray:
		c.run(n.Points, 2, 2, "a ray")
	case *Join:
		c.joined(n)
	case *Produce:
		c.points(n.Beyond, n.End)
	case *Touch:
		c.points(n.At)
	case *Mark:
		for _, r := range n.Right {
			c.run(r, 3, 3, "a right angle")
		}
	case *Label:
		c.run(n.Angle, 3, 3, "an angle")
	case *Shade:
		if n.Sector {
			c.run(n.What, 3, 3, "a sector")
		}
	case *Value:
		c.angle(n)
	}
}

// points wants single points.
func (c *sounding) points(refs ...*Ref) {
	for _, r := range refs {
		switch {
		case r == nil || len(r.Points) == 1 || c.said[r]:
		case r.Name != "" && c.known.made[r.Name]:
			c.wrongRef(r, "a point is a capital letter: A, P1, X'", "a point is wanted here, and %s names something else", c.text(r.Node))
		case r.Name != "":
			c.noCapital(r)
		default:
			c.wrongRef(r, "", "one point is wanted here, not %s", c.text(r.Node))
		}
	}
}

func (c *sounding) noCapital(r *Ref) {
	c.wrongRef(r, capital(r.Name), "a point is a capital letter, not %s", c.text(r.Node))
}

// wrongRef is wrong for a reference that is then done with.
func (c *sounding) wrongRef(r *Ref, help, format string, args ...any) {
	c.wrong(r.Node, help, format, args...)
	c.said[r] = true
}

// twice is the fault of n names for the meetings of two things.
func twice(n int) string {
	return fmt.Sprintf("two things meet twice at most, and here are %d names", n)
}

// thing finds a run in small letters where the name of a thing may stand.
func (c *sounding) thing(r *Ref) {
	if r.Index == nil && !c.said[r] && c.known.spells(r.Name) {
		c.small(r, "")
	}
}

// small reports a run in small letters; before is the word that it follows.
func (c *sounding) small(r *Ref, before string) {
	c.wrongRef(r, "write "+before+strings.ToUpper(r.Name), "points are capital letters, not %s", r.Name)
}

// twoPoints: given line m through AB
func (c *sounding) twoPoints(n *GivenLine) {
	if len(n.Through) != 1 {
		return
	}
	r := n.Through[0].Point
	switch letters := lettersOf(r.Name); {
	case len(r.Points) == 2:
		both := c.text(r.Points[0].Node) + " and " + c.text(r.Points[1].Node)
		c.wrongRef(r, "write through "+both, `"and" is missing between %s`, both)
	case len(letters) == 2:
		both := strings.ToUpper(letters[0]) + " and " + strings.ToUpper(letters[1])
		c.wrongRef(r, "write through "+both, "points are capital letters, not %s", r.Name)
	}
}

// joined wants runs. Single points with commas between were meant for one.
func (c *sounding) joined(n *Join) {
	run, single := "", len(n.Runs) > 1
	for _, r := range n.Runs {
		run += c.text(r.Node)
		single = single && len(r.Points) == 1 && !r.hasRange()
	}
	if single {
		all := Node{Pos: n.Runs[0].Pos, EndPos: n.Runs[len(n.Runs)-1].EndPos}
		c.wrong(all, "write "+clip(run, 2*maxName), touch)
		return
	}
	for _, r := range n.Runs {
		c.run(r, 2, many, "a join")
	}
}

// capital offers the point that a one-letter name may have meant.
func capital(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	if strings.Trim(name[size:], "0123456789'") != "" {
		return "points are capitals: A, P1, X'"
	}
	return "write " + strings.ToUpper(string(first)) + name[size:]
}

// name wants the lower-case name of a thing that is made.
func (c *sounding) name(r *Ref, what string) {
	if r == nil || r.Name != "" {
		return
	}
	help := "take a lower-case word, such as m"
	if len(r.Points) == 1 {
		help = "write " + strings.ToLower(r.Points[0].Name)
	}
	c.wrong(r.Node, help, "%s is named by a lower-case word, not %s", what, c.text(r.Node))
}

// run wants between low and high points.
func (c *sounding) run(r *Ref, low, high int, what string) {
	if r == nil || len(r.Points) >= low && len(r.Points) <= high || high == many && r.hasRange() {
		return
	}
	if n := len(lettersOf(r.Name)); n >= low && n <= high && c.known.maySpell(r.Name) {
		before := ""
		if what == "an angle" {
			before = "angle "
		}
		c.small(r, before)
		return
	}
	example := "ABCDEFGH"[:low]
	count := fmt.Sprintf("%d points", low)
	if high == many {
		count += " or more"
	}
	help := ""
	if len(r.Points) < 2 {
		help = "write them together, as in " + example
	}
	c.wrongRef(r, help, "%s takes %s, not %s", what, count, c.text(r.Node))
}

// hasRange tells whether a family, of any number of points, stands in a run.
func (r *Ref) hasRange() bool {
	return slices.ContainsFunc(r.Points, func(p *PointName) bool { return p.Index != nil && p.Index.To != nil })
}

func (c *sounding) corners(n *GivenShape) {
	if n.Kind == "triangle" {
		c.run(n.Points, 3, 3, "a triangle")
		return
	}
	c.run(n.Points, 4, 4, "a "+n.Kind)
	if len(n.Traits) > 0 && (n.Kind != "trapezium" || n.Traits[0] != "isosceles" || len(n.Traits) > 1) {
		c.wrong(n.Node, "leave it out", "%s is said of triangles only", n.Traits[0])
	}
}

// angle wants three points; a corner's one letter will do in a triangle's data.
func (c *sounding) angle(n *Value) {
	if n.Angle == nil || len(n.Angle.Points) == 3 || c.said[n.Angle] {
		return
	}
	if name := n.Angle.Name; name != "" {
		if len(lettersOf(name)) == 3 && c.known.maySpell(name) {
			c.small(n.Angle, "angle ")
		}
		return
	}
	if given := c.statement.Given; len(n.Angle.Points) == 1 && given != nil && given.Shape != nil {
		return
	}
	c.wrong(n.Angle.Node, AngleHelp(c.text(n.Angle.Node)), "an angle takes 3 points, not %s", c.text(n.Angle.Node))
}

// AngleHelp says how an angle is named, for who has named it by other than three
// points: by its vertex, as a rule.
func AngleHelp(named string) string {
	example := map[string]string{"A": "BAC", "B": "ABC", "C": "ACB"}[named]
	switch {
	case example != "":
	case strings.TrimRight(named, "0123456789'′") == string([]rune(named)[:1]):
		example = "A" + named + "B"
	default:
		example = "ABC"
	}
	return "name it by three points, the vertex in the middle: angle " + example
}

// opening wants one way, not two, to say how wide the compasses are.
func (c *sounding) opening(n Node, o Opening, part bool, what string) {
	said := o.Any || o.Radius != nil || o.Through != nil
	c.points(o.Through)
	switch {
	case said && part:
		c.wrong(n, "leave the radius out: it is the distance to the first point", "a part arc has its opening from its points")
	case !said && !part:
		help := "end it with radius any, radius 3, radius AB or through A"
		if c.statement.StepOff != nil {
			help = "end it with radius any, radius 3 or radius AB"
		}
		c.wrong(n, help, "nothing says how wide this %s is", what)
	}
}

func (c *sounding) param(n *Param) {
	family := n.Kind == "points"
	switch {
	case n.Kind != "point" && !family:
		c.name(n.Name, "a "+n.Kind)
	case family && len(n.Name.Points) == 1 && n.Name.Points[0].Index != nil && n.From != nil:
	case family:
		c.wrong(n.Node, "write points P[i] from 1 to n", "a family of points has an index and its range")
	case n.Name.Name != "":
		c.noCapital(n.Name)
	default:
		c.points(n.Name)
	}
	if !family && n.From != nil {
		c.wrong(n.Node, "write points P[i] from 1 to n", "only points have a range")
	}
}

func (c *sounding) steppedOff(n *StepOff) {
	c.points(n.From, n.Towards)
	if len(n.Points.Points) != 1 || n.Points.Points[0].Index == nil || n.Points.Points[0].Index.To == nil {
		c.wrong(n.Points.Node, "write step off P[1 to 6] …", "stepping off makes a family of points")
	}
	c.opening(n.Node, n.Opening, false, "stepping off")
}
