package layout

import "trammel/geom/figure"

// The line of a dimension, in millimetres: how far from its segment it is tried,
// and the length of the strokes that end it. Letters of points stand between.
var dimensionGaps = []float64{7, 8.5, 10, 12, 14, 17}

const dimensionEnd = 2.0

// drawDimensions gives the length of a segment that points divide a line of its own
// beside the whole: at the segment it would be read as the length of a part.
func (d *drawing) drawDimensions() {
	for _, m := range d.fig.Marks {
		m, ok := m.(figure.LengthLabel)
		if !ok || m.Pin.Set {
			continue
		}
		s := segment{d.place(m.A), d.place(m.B)}
		if !d.divided(s) {
			continue
		}
		d.marking = m.Step
		d.dimensioned(s)
	}
}

// dimensioned is the line beside s, which is drawn if it was not yet and there is room.
func (d *drawing) dimensioned(s segment) (line segment, ok bool) {
	if line, ok = d.dimensions[s]; ok {
		return line, true
	}
	if line, ok = d.dimension(s); ok {
		d.dimensions[s] = line
		for _, c := range d.dimensionStrokes(line) {
			d.drawDimension(c, dimensionHook+" "+d.lineHooks(s))
		}
	}
	return line, ok
}

// divided tells whether a point that shows, or the end of another length, lies
// within the segment.
func (d *drawing) divided(s segment) bool {
	within := func(p vec) bool {
		clear := d.mm(tiny)
		return s.dist(p) < touching && p.dist(s.a) > clear && p.dist(s.b) > clear
	}
	for _, o := range d.dots {
		if within(o.c) {
			return true
		}
	}
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.LengthLabel); ok && (within(d.place(m.A)) || within(d.place(m.B))) {
			return true
		}
	}
	return false
}

// dimension is the line beside s that is nearest and clear of other ink, on the
// outer side of the figure if it can be.
func (d *drawing) dimension(s segment) (segment, bool) {
	n := s.a.to(s.b).left()
	if sides := d.sides(s.a, s.b); sides[0] > sides[1] {
		n = n.times(-1)
	}
	for _, apart := range [2]float64{markBetter, markClear} {
		for _, side := range [2]float64{1, -1} {
			for _, gap := range dimensionGaps {
				off := n.times(side * d.mm(gap))
				line := segment{s.a.add(off).snap(), s.b.add(off).snap()}
				if d.touched(d.dimensionStrokes(line), apart, func(*obstacle) bool { return false }) == 0 {
					return line, true
				}
			}
		}
	}
	return segment{}, false
}

// dimensionStrokes are the line and the strokes that end it.
func (d *drawing) dimensionStrokes(line segment) []curve {
	half := line.a.to(line.b).left().times(d.mm(dimensionEnd) / 2)
	list := []curve{line}
	for _, end := range [2]vec{line.a, line.b} {
		list = append(list, segment{end.add(half).snap(), end.sub(half).snap()})
	}
	return list
}

// drawDimension draws a stroke as thin as those of the construction, but black.
func (d *drawing) drawDimension(c curve, hook string) {
	p := pen{width: d.theme.construction.width, colour: black}
	s := stroke{c, p, constructionLayer, nil, hook, d.marking}
	d.strokes, d.record.marks = append(d.strokes, s), append(d.record.marks, s)
	d.ground.add(d.obstacle(len(d.strokes) - 1))
}
