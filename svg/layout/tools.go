package layout

import (
	"math"

	"trammel/svg"
)

// Sizes of the tools in millimetres.
const (
	legLength  = 40.0 // of the compasses, at least
	legWide    = 2.2  // at the hinge
	leadWide   = 0.9  // at the lead
	needle     = 6.0  // length of the needle, and of the lead
	hingeWide  = 2.2  // radius of the hinge
	knobLength = 7.0
	rulerWide  = 9.0
	rulerOver  = 7.0 // past each end of what it draws
	bevel      = 1.8
)

// addTools shows the tool with which a part has drawn its last stroke: the
// needle on the centre and the lead at the end of the swing, or the edge of
// the straightedge along the line.
func (d *drawing) addTools(p part) {
	all := d.newIn(p)
	for len(all) > 0 && all[len(all)-1].owner == nil {
		all = all[:len(all)-1]
	}
	if len(all) == 0 || d.fig.Steps[p.first].Given {
		return
	}
	s := all[len(all)-1]
	if a, ok := s.curve.(arc); ok {
		d.tools = d.compasses(a.c, a.end())
		return
	}
	d.tools = d.straightedge(s.curve.(segment), s.half())
}

// toolExtent is the paper that the tools take.
func (d *drawing) toolExtent() box {
	b := nowhere
	for _, p := range d.tools {
		b = b.union(outline(p))
	}
	return b
}

// compasses stand with the needle on c and the lead at p, the hinge above.
func (d *drawing) compasses(c, p vec) []svg.Path {
	up := c.to(p).left()
	if up.y > 0 || up.y == 0 && up.x < 0 {
		up = up.times(-1)
	}
	half := c.dist(p) / 2
	long := max(d.mm(legLength), 1.15*half)
	hinge := c.mid(p).add(up.times(math.Sqrt(float64(long*long) - float64(half*half))))
	knob := hinge.add(up.times(d.mm(knobLength)))
	point, lead := d.leg(hinge, c, 0), d.leg(hinge, p, d.mm(leadWide))
	return append(append([]svg.Path{d.blade(hinge, knob, d.mm(legWide*0.7), d.mm(legWide*0.7), white)}, append(point, lead...)...), d.ring(hinge))
}

// leg is a leg of the compasses from the hinge to its tip: the arm, and the
// needle or the lead, as wide as that at its end.
func (d *drawing) leg(hinge, tip vec, wide float64) []svg.Path {
	neck := tip.add(tip.to(hinge).times(d.mm(needle)))
	return []svg.Path{
		d.blade(hinge, neck, d.mm(legWide), d.mm(leadWide)*1.4, white),
		d.blade(neck, tip, d.mm(leadWide), wide/3, grey),
	}
}

// blade is a strip from a to b, so wide at each end.
func (d *drawing) blade(a, b vec, wideA, wideB float64, fill string) svg.Path {
	n := a.to(b).left()
	return d.polygon(fill, a.add(n.times(wideA/2)), b.add(n.times(wideB/2)), b.sub(n.times(wideB/2)), a.sub(n.times(wideA/2)))
}

func (d *drawing) ring(c vec) svg.Path {
	r := whole(d.mm(hingeWide))
	right, left := c.add(vec{float64(r), 0}).xy(), c.sub(vec{float64(r), 0}).xy()
	p := d.polygon(white, c.add(vec{float64(r), 0}))
	p.Start, p.Pieces = right, []svg.Piece{{To: left, Radius: r}, {To: right, Radius: r}}
	return p
}

// straightedge lies along g with its edge at the stroke, on the side where
// fewer words are.
func (d *drawing) straightedge(g segment, half float64) []svg.Path {
	u := g.a.to(g.b)
	n := u.left()
	if n.y < 0 {
		n = n.times(-1)
	}
	if d.wordsBeside(g, n) > d.wordsBeside(g, n.times(-1)) {
		n = n.times(-1)
	}
	edge := n.times(half + 0.1*mm)
	a, b := g.a.sub(u.times(d.mm(rulerOver))).add(edge), g.b.add(u.times(d.mm(rulerOver))).add(edge)
	wide, in := n.times(d.mm(rulerWide)), n.times(d.mm(bevel))
	return []svg.Path{d.polygon("", a, b, b.add(wide), a.add(wide)), d.polygon("", a.add(in), b.add(in))}
}

// wordsBeside counts the labels that a straightedge on that side of g would lie on.
func (d *drawing) wordsBeside(g segment, n vec) int {
	count := 0
	for _, l := range d.labels {
		c := l.spots[l.at].centre()
		across, along := c.sub(g.a).dot(n), c.sub(g.a).dot(g.a.to(g.b))
		if across > 0 && across < d.mm(rulerWide) && along > -d.mm(rulerOver) && along < g.length()+d.mm(rulerOver) {
			count++
		}
	}
	return count
}

// polygon is an outline in thin ink, closed where it has more than two corners.
func (d *drawing) polygon(fill string, corners ...vec) svg.Path {
	p := svg.Path{Ink: svg.Ink{Stroke: grey, Width: d.theme.construction.width, Fill: fill}, Class: "tool", Closed: len(corners) != 2}
	p.Start = corners[0].snap().xy()
	for _, c := range corners[1:] {
		p.Pieces = append(p.Pieces, svg.Piece{To: c.snap().xy()})
	}
	return p
}
