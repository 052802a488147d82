package layout

import (
	"math"
	"slices"

	"trammel/svg"
)

// Sizes of the tools in millimetres.
const (
	legLength  = 28.0 // of the compasses, at least
	legWide    = 2.2  // at the hinge
	leadWide   = 0.9  // at the lead
	needle     = 6.0  // length of the needle, and of the lead
	hingeWide  = 2.2  // radius of the hinge
	knobLength = 7.0
	rulerWide  = 9.0
	rulerOver  = 7.0 // past each end of what it draws
	bevel      = 1.8
)

// wordGrowth is by how many millimetres the paper may rather grow than a tool
// lie on a word.
const wordGrowth = 25

// addTools shows the tool with which a part has drawn its last stroke: the
// needle on the centre and the lead at the end of the swing, or the edge of
// the straightedge along the line. Of the two sides it takes the one that covers
// fewer words and reaches less far out of the paper.
func (d *drawing) addTools(p part, paper box) {
	all := d.newIn(p)
	for len(all) > 0 && all[len(all)-1].owner == nil {
		all = all[:len(all)-1]
	}
	if len(all) == 0 || d.fig.Steps[p.first].Given {
		return
	}
	s := all[len(all)-1]
	least := math.Inf(1)
	for _, side := range [2]float64{-1, 1} { // up first
		pose := d.held(s, side)
		grown := paper.union(extentOf(pose.ink)).size().sub(paper.size())
		cost := grown.x + grown.y + float64(d.covered(pose))*d.mm(wordGrowth)
		if cost < least {
			least, d.tools = cost, pose.ink
		}
	}
}

// pose is a tool in place, and the middles of its limbs with their half width.
type pose struct {
	ink  []svg.Path
	over []segment
	half float64
}

// held is the tool of a stroke, above or on the left of it where side is negative.
func (d *drawing) held(s stroke, side float64) pose {
	if a, ok := s.curve.(arc); ok {
		return d.compasses(a.c, a.end(), side)
	}
	return d.straightedge(s.curve.(segment), s.half(), side)
}

// upwards is the normal of a direction on a side: up or left where side is negative.
func upwards(u vec, side float64) vec {
	n := u.left()
	if n.y > 0 || n.y == 0 && n.x > 0 {
		n = n.times(-1)
	}
	return n.times(-side)
}

// covered counts the words that a tool lies on.
func (d *drawing) covered(p pose) (count int) {
	for _, l := range d.labels {
		if slices.ContainsFunc(p.over, func(limb segment) bool { return l.spots[l.at].off(limb) < p.half }) {
			count++
		}
	}
	return count
}

// extentOf is the paper that paths take.
func extentOf(paths []svg.Path) box {
	b := nowhere
	for _, p := range paths {
		b = b.union(outline(p))
	}
	return b
}

// compasses stand with the needle on c and the lead at p, the hinge on a side of both.
func (d *drawing) compasses(c, p vec, side float64) pose {
	up := upwards(c.to(p), side)
	half := c.dist(p) / 2
	long := max(d.mm(legLength), 1.15*half)
	hinge := c.mid(p).add(up.times(math.Sqrt(float64(long*long) - float64(half*half))))
	knob := hinge.add(up.times(d.mm(knobLength)))
	point, lead := d.leg(hinge, c, 0), d.leg(hinge, p, d.mm(leadWide))
	return pose{
		ink:  append(append([]svg.Path{d.blade(hinge, knob, d.mm(legWide*0.7), d.mm(legWide*0.7), white)}, append(point, lead...)...), d.ring(hinge)),
		over: []segment{{knob, hinge}, {hinge, c}, {hinge, p}},
		half: d.mm(legWide / 2),
	}
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

// straightedge lies along g, on a side of it, with its edge at the stroke.
func (d *drawing) straightedge(g segment, half, side float64) pose {
	u := g.a.to(g.b)
	n := upwards(u, side)
	edge := n.times(half + 0.1*mm)
	a, b := g.a.sub(u.times(d.mm(rulerOver))).add(edge), g.b.add(u.times(d.mm(rulerOver))).add(edge)
	wide, in := n.times(d.mm(rulerWide)), n.times(d.mm(bevel))
	return pose{
		ink:  []svg.Path{d.polygon("", a, b, b.add(wide), a.add(wide)), d.polygon("", a.add(in), b.add(in))},
		over: []segment{{a.add(wide.times(0.5)), b.add(wide.times(0.5))}},
		half: d.mm(rulerWide / 2),
	}
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
