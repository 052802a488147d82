package layout

import (
	"math"

	"trammel/geom/figure"
	"trammel/svg"
)

// drawMarks draws the marks that are strokes; their words are labels. Angles
// come first, since they cannot move; what slides along a segment then keeps
// clear of them.
func (d *drawing) drawMarks() {
	d.squares, d.dimensions = map[segment]vec{}, map[segment]segment{}
	d.drawAngles()
	for _, m := range d.fig.Marks {
		switch m := m.(type) {
		case figure.Ticks:
			d.marking = m.Step
			d.drawTicks(m)
		case figure.Arrows:
			d.marking = m.Step
			d.drawArrows(m)
		}
	}
	d.drawDimensions()
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

// tickSizes are the lengths of ticks that are tried, as parts of the usual one.
var tickSizes = [5]float64{1, 0.75, 0.6, 0.5, 0.42}

// drawTicks draws ticks of one size on all the segments of a class: the
// greatest with which they touch least.
func (d *drawing) drawTicks(m figure.Ticks) {
	var roomy []segment
	for _, s := range m.Segments {
		g := segment{d.place(s.A), d.place(s.B)}
		if d.roomy(g.length(), m.Step) {
			roomy = append(roomy, d.base(g, m))
		}
	}
	var best [][]curve
	least := math.MaxInt
	for _, size := range tickSizes {
		marks, touches := make([][]curve, len(roomy)), 0
		for i, g := range roomy {
			at, n := d.slide(slider{g, d.tickReach(g, m.Count), func(at vec) []curve { return d.ticks(g, at, m.Count, size) }})
			marks[i], touches = d.ticks(g, at, m.Count, size), touches+n
		}
		if touches < least {
			best, least = marks, touches
		}
	}
	for i, mark := range best {
		d.breakFor(mark, onLine(roomy[i]))
		for _, c := range mark {
			d.mark(tickHook, c)
		}
	}
}

// base is what the ticks of a segment stand on: the segment, or a line beside it
// where others on a part of it would be counted with them.
func (d *drawing) base(g segment, m figure.Ticks) segment {
	if !d.partTicked(g, m.Count) {
		return g
	}
	line, ok := d.dimensioned(g)
	if !ok {
		d.warn(m.Step, "ticks of a whole and of its parts stand on one line, and would be counted together", "mark the whole or the parts, or claim instead")
		return g
	}
	return line
}

// partTicked tells whether a part of g has ticks of another class.
func (d *drawing) partTicked(g segment, count int) bool {
	for _, m := range d.fig.Marks {
		m, ok := m.(figure.Ticks)
		if !ok || m.Count == count {
			continue
		}
		for _, s := range m.Segments {
			part := segment{d.place(s.A), d.place(s.B)}
			if g.dist(part.a) < touching && g.dist(part.b) < touching && part.length() < g.length()-touching {
				return true
			}
		}
	}
	return false
}

// tickApart is the distance between the ticks of one mark.
func (d *drawing) tickApart(g segment, count int) float64 {
	return min(d.mm(tickApart), 0.5*g.length()/float64(count))
}

// tickReach is how far a mark reaches along its segment, with some room.
func (d *drawing) tickReach(g segment, count int) float64 {
	return float64(float64(count-1)*d.tickApart(g, count))/2 + d.mm(0.9)
}

// ticks are the strokes of a mark about its place.
func (d *drawing) ticks(g segment, at vec, count int, size float64) []curve {
	u := g.a.to(g.b)
	half := u.left().times(d.mm(tickLength) * size / 2)
	var list []curve
	for i := range count {
		p := at.add(u.times((float64(i) - float64(count-1)/2) * d.tickApart(g, count)))
		list = append(list, segment{p.add(half).snap(), p.sub(half).snap()})
	}
	return list
}

// drawArrows draws open chevrons, all of them the way the first segment goes, and at
// one place on all the segments where that is as clear as places of their own.
func (d *drawing) drawArrows(m figure.Arrows) {
	all, own := d.arrows(m), 0
	if len(all) == 0 {
		return
	}
	places := make([]vec, len(all))
	for i, s := range all {
		at, touches := d.slide(s)
		places[i], own = at, own+touches
	}
	if step, touches := d.slideAll(all); touches <= own {
		for i, s := range all {
			places[i] = s.at(step)
		}
	}
	for i, s := range all {
		for _, c := range s.mark(places[i]) {
			d.mark(arrowHook, c)
		}
	}
}

// arrows are the marks of parallels on the segments that have room for them.
func (d *drawing) arrows(m figure.Arrows) (all []slider) {
	reach := float64(float64(m.Count-1)*d.mm(chevronGap))/2 + d.mm(chevron)
	for i, s := range m.Segments {
		g, first := segment{d.place(s.A), d.place(s.B)}, m.Segments[0]
		if i > 0 && g.a.to(g.b).dot(d.place(first.A).to(d.place(first.B))) < 0 {
			g.a, g.b = g.b, g.a
		}
		if g = d.inked(g); d.roomy(g.length(), m.Step) {
			all = append(all, slider{g, reach, func(at vec) []curve { return d.chevrons(g, at, m.Count) }})
		}
	}
	return all
}

// inked is the longest stretch of a segment that one straight draws, where not all of it
// is drawn; or if none is, what is drawn of its line.
func (d *drawing) inked(g segment) segment {
	u, whole := g.a.to(g.b), span{0, g.length()}
	var drawn []span
	for _, r := range d.record.straights {
		if tips := (segment{r.tips[0], r.tips[1]}); g.along(tips) {
			a, b := u.dot(tips.a.sub(g.a)), u.dot(tips.b.sub(g.a))
			drawn = append(drawn, span{min(a, b), max(a, b)})
		}
	}
	if len(drawn) == 0 || len(whole.uncovered(drawn)) == 0 {
		return g
	}
	best := span{}
	for _, s := range drawn {
		if s = (span{max(s.lo, whole.lo), min(s.hi, whole.hi)}); s.hi-s.lo > best.hi-best.lo {
			best = s
		}
	}
	if best.hi <= best.lo {
		best = drawn[0]
	}
	return segment{g.a.add(u.times(best.lo)).snap(), g.a.add(u.times(best.hi)).snap()}
}

// chevrons are the strokes of an arrow about its place.
func (d *drawing) chevrons(g segment, at vec, count int) []curve {
	u := g.a.to(g.b)
	wing := u.left().times(d.mm(chevronHalf))
	var list []curve
	for i := range count {
		along := float64((float64(i)-float64(count-1)/2)*d.mm(chevronGap)) + d.mm(chevron)/2
		tip := at.add(u.times(along)).snap()
		back := tip.sub(u.times(d.mm(chevron)))
		list = append(list, segment{back.add(wing).snap(), tip}, segment{tip, back.sub(wing).snap()})
	}
	return list
}

// drawShades fills the shaded areas, under everything else. Those for fingers are hatched.
func (d *drawing) drawShades() {
	for _, m := range d.fig.Marks {
		if s, ok := m.(figure.Shade); ok && d.theme.gap == 0 {
			d.shades, d.record.shades = append(d.shades, d.shade(s)), append(d.record.shades, s.Step)
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

// bar is a given length as drawn: its strokes and what stands over it.
type bar struct {
	owner   *figure.Thing
	strokes []segment
	text    svg.Text
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
		if !m.Hidden {
			b := d.bar(m, left, &y)
			d.record.bars = append(d.record.bars, b)
			d.addBar(b)
		}
	}
}

// bar lays a bar out, left and below y, and moves y below it.
func (d *drawing) bar(m *figure.Measure, left float64, y *float64) bar {
	length := math.Round(m.Length * d.scale)
	t := d.text(measureText(d.fig, m), d.theme.label)
	ink := inkOf(t)
	*y += ink.size().y + d.mm(1)
	base := vec{left, *y + d.mm(1.2)}.snap()
	tip := base.add(vec{length, 0})
	end := vec{0, d.mm(1)}
	over := d.mm(1) + max(d.mm(0.8), d.theme.gap+d.theme.given.half())
	at := base.mid(tip).sub(vec{ink.centre().x, over + ink.hi.y})
	at.x = max(at.x, left-ink.lo.x)
	t.At, t.Class = at.xy(), d.hooks[&m.Thing]
	*y += d.mm(5)
	return bar{&m.Thing, []segment{{base, tip}, {base.sub(end), base.add(end)}, {tip.sub(end), tip.add(end)}}, t}
}

func (d *drawing) addBar(b bar) {
	for _, s := range b.strokes {
		d.strokes = append(d.strokes, stroke{s, d.theme.given, givenLayer, b.owner, d.hooks[b.owner], b.owner.Step})
	}
	d.texts = append(d.texts, b.text)
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
