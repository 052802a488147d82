package layout

import (
	"math"
	"slices"

	"trammel/geom/figure"
	"trammel/svg"
)

// drawMarks draws the marks that are strokes; their words are labels. Angles
// come first, since they cannot move; what slides along a segment then keeps
// clear of them.
func (d *drawing) drawMarks() {
	d.drawAngles()
	for _, m := range d.fig.Marks {
		switch m := m.(type) {
		case figure.Ticks:
			for _, s := range m.Segments {
				if a, b := d.place(s.A), d.place(s.B); d.roomy(a.dist(b), m.Step) {
					d.drawTicks(a, b, m.Count)
				}
			}
		case figure.Arrows:
			d.drawArrows(m)
		}
	}
}

// tiny is the least size in millimetres that can be marked.
const tiny = 1.0

// roomy tells whether a mark of that size can be seen, and warns if not.
func (d *drawing) roomy(size float64, step int) bool {
	if size < d.mm(tiny) {
		d.warn(step, "a mark has no room on the paper", "enlarge the unit")
		return false
	}
	return true
}

// Sizes of marks in millimetres.
const (
	tickLength  = 3.0
	tickApart   = 1.1
	chevron     = 2.2 // length along the line
	chevronHalf = 1.0 // half its width across
	chevronGap  = 1.5 // between those of one mark
)

func (d *drawing) drawTicks(a, b vec, count int) {
	u := a.to(b)
	apart := min(d.mm(tickApart), 0.5*a.dist(b)/float64(count))
	half := u.left().times(d.mm(tickLength) / 2)
	reach := float64(float64(count-1)*apart)/2 + d.mm(0.9)
	c := d.slide(a, b, reach, d.mm(tickLength)/2)
	for i := range count {
		p := c.add(u.times((float64(i) - float64(count-1)/2) * apart))
		d.mark(tickHook, segment{p.add(half).snap(), p.sub(half).snap()})
	}
}

// drawArrows draws open chevrons, all of them the way the first segment goes.
func (d *drawing) drawArrows(m figure.Arrows) {
	if len(m.Segments) == 0 {
		return
	}
	first := m.Segments[0]
	lead := d.place(first.A).to(d.place(first.B))
	for _, s := range m.Segments {
		a, b := d.place(s.A), d.place(s.B)
		if a.to(b).dot(lead) < 0 {
			a, b = b, a
		}
		if d.roomy(a.dist(b), m.Step) {
			d.drawChevrons(a, b, m.Count)
		}
	}
}

func (d *drawing) drawChevrons(a, b vec, count int) {
	u := a.to(b)
	gap := d.mm(chevronGap)
	reach := float64(float64(count-1)*gap)/2 + d.mm(chevron)
	c := d.slide(a, b, reach, d.mm(chevronHalf))
	wing := u.left().times(d.mm(chevronHalf))
	for i := range count {
		tip := c.add(u.times(float64((float64(i)-float64(count-1)/2)*gap) + d.mm(chevron)/2)).snap()
		back := tip.sub(u.times(d.mm(chevron)))
		d.mark(arrowHook, segment{back.add(wing).snap(), tip})
		d.mark(arrowHook, segment{tip, back.sub(wing).snap()})
	}
}

// slide finds the place nearest the middle of ab where a mark reaching so far
// along it, and half as wide to either side, keeps clear of other ink.
func (d *drawing) slide(a, b vec, reach, half float64) vec {
	u, c := a.to(b), a.mid(b)
	room := min(a.dist(b)/2-reach, a.dist(b)*0.3)
	best, least := c, math.Inf(1)
	for step := 0.0; step < least && step <= max(room, 0); step += 0.5 * mm {
		for _, off := range []float64{step, -step} {
			p := c.add(u.times(off))
			if cost := float64(d.crowd(segment{a, b}, p, reach, half)*10*mm) + step; cost < least {
				best, least = p, cost
			}
		}
	}
	return best.snap()
}

// tooMany strokes in the way are as bad as any more.
const tooMany = 5

// crowd counts the ink, other than what runs along ab, within reach of its
// point p. The mark is covered by small boxes, since a line may cross it at any
// slope.
func (d *drawing) crowd(ab segment, p vec, reach, half float64) float64 {
	var cover []box
	about, u := nowhere, ab.a.to(ab.b)
	for t := -reach; t <= reach; t += reach / 2 {
		b := around(p.add(u.times(t)), half*0.6, half*0.6).grow(d.theme.gap)
		cover, about = append(cover, b), about.union(b)
	}
	n := 0.0
	d.ground.near(about, func(o *obstacle) bool {
		if g, ok := o.shape.(segment); ok && ab.along(g) {
			return true
		}
		if slices.ContainsFunc(cover, o.touches) {
			n++
		}
		return n < tooMany
	})
	return n
}

// drawShades fills the shaded areas, under everything else.
func (d *drawing) drawShades() {
	for _, m := range d.fig.Marks {
		if s, ok := m.(figure.Shade); ok {
			d.shades = append(d.shades, d.shade(s))
		}
	}
}

func (d *drawing) shade(s figure.Shade) svg.Path {
	p := svg.Path{Ink: svg.Ink{Fill: tint}, Closed: true}
	switch {
	case s.Circle != nil:
		c, r := d.place(s.Circle.C), whole(math.Sqrt(s.Circle.R2.Float())*d.scale)
		right, left := c.add(vec{float64(r), 0}).xy(), c.sub(vec{float64(r), 0}).xy()
		p.Start = right
		p.Pieces = []svg.Piece{{To: left, Radius: r}, {To: right, Radius: r}}
	case s.Centre != nil:
		c, from, to := d.place(*s.Centre), d.place(s.Outline[0]), d.place(s.Outline[1])
		sweep := turn(to.sub(c).angle() - from.sub(c).angle())
		p.Start = c.xy()
		p.Pieces = []svg.Piece{{To: from.xy()}, {To: to.xy(), Radius: whole(c.dist(from)), Large: sweep > math.Pi}}
	default:
		p.Start = d.place(s.Outline[0]).xy()
		for _, q := range s.Outline[1:] {
			p.Pieces = append(p.Pieces, svg.Piece{To: d.place(q).xy()})
		}
	}
	return p
}

// drawMeasures draws the given lengths as bars with end strokes, one under
// the other below the figure.
func (d *drawing) drawMeasures() {
	all := d.extent()
	if all.empty() {
		all = box{}
	}
	left, y := all.lo.x, all.hi.y+d.mm(4)
	for _, m := range d.fig.Measures {
		if m.Hidden {
			continue
		}
		length := math.Round(m.Length * d.scale)
		t := d.text(measureText(d.fig, m), d.theme.label)
		ink := inkOf(t)
		y += ink.size().y + d.mm(1)
		base := vec{left, y + d.mm(1.2)}.snap()
		tip := base.add(vec{length, 0})
		end := vec{0, d.mm(1)}
		for _, s := range []segment{{base, tip}, {base.sub(end), base.add(end)}, {tip.sub(end), tip.add(end)}} {
			d.strokes = append(d.strokes, stroke{s, d.theme.given, givenLayer, &m.Thing, d.hooks[&m.Thing]})
		}
		at := base.mid(tip).sub(vec{ink.centre().x, d.mm(1.8) + ink.hi.y})
		at.x = max(at.x, left-ink.lo.x)
		t.At, t.Class = at.xy(), d.hooks[&m.Thing]
		d.texts = append(d.texts, t)
		y += d.mm(5)
	}
}

// measureText is what stands over a bar: "a = 4 cm".
func measureText(f *figure.Figure, m *figure.Measure) []svg.Run {
	name := figure.Label{Text: m.Name, Name: true}
	if m.Label != nil {
		name = *m.Label
	}
	runs := svg.Label(f.Words(name), name.Name)
	if m.Text == "" || !name.Name {
		return runs
	}
	if name.Text != "" {
		runs = append(runs, svg.Run{Text: " = "})
	}
	return append(runs, svg.Label(f.Locale().Numbers(m.Text), false)...)
}
