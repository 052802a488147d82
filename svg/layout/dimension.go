package layout

import (
	"math"

	"trammel/geom/figure"
)

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

// What it is worth, in millimetres farther off, that the line of a dimension is on the
// outer side, that it is well clear, and that it crosses no line of the construction. It must
// cross steeply, so far from its ends.
const (
	dimensionOut   = 12.0
	dimensionClear = 12.0
	crossFaint     = 3.0
	crossWithin    = 1.2
	crossSlope     = 2.0 // how much longer than at a right angle a crossing may be
)

// crossHeavies is what crossing a heavier line costs on the outer side and on the inner
// one, where it would be within the figure.
var crossHeavies = [2]float64{15, math.Inf(1)}

// dimension is the line beside s that costs least; false where each would run into something.
func (d *drawing) dimension(s segment) (best segment, ok bool) {
	n := s.a.to(s.b).left()
	if sides := d.sides(s.a, s.b); sides[0] > sides[1] {
		n = n.times(-1)
	}
	least := math.Inf(1)
	for i, apart := range [2]float64{markBetter, markClear} {
		for j, side := range [2]float64{1, -1} {
			for _, gap := range dimensionGaps {
				cost := gap + dimensionClear*float64(i) + dimensionOut*float64(j)
				if cost >= least {
					break
				}
				off := n.times(side * d.mm(gap))
				line := segment{s.a.add(off).snap(), s.b.add(off).snap()}
				if cost += d.crossed(line, apart, crossHeavies[j]); cost < least {
					best, least = line, cost
				}
			}
		}
	}
	return best, !math.IsInf(least, 1)
}

// crossed is what it costs that the line of a dimension crosses other ink: without
// end where it runs into a mark or a dot, along a line or over its end.
func (d *drawing) crossed(line segment, apart, heavy float64) float64 {
	strokes := d.dimensionStrokes(line)
	none := func(*obstacle) bool { return false }
	if d.touched(strokes[1:], apart, none) > 0 {
		return math.Inf(1)
	}
	cost, clear := 0.0, d.least(apart)+d.theme.construction.half()
	places := line.samples(d.mm(0.2))
	d.ground.near(line.bounds().grow(clear+mm), func(o *obstacle) bool {
		if n := d.crossings(places, o, clear+o.half); n > 0 && o.thin {
			cost += n * crossFaint
		} else if n > 0 {
			cost += n * heavy
		}
		return !math.IsInf(cost, 1)
	})
	return cost
}

// crossings is how often a line of these places, which keeps so clear, crosses an obstacle.
func (d *drawing) crossings(places []vec, o *obstacle, clear float64) float64 {
	n, run, ends := 0.0, 0, int(crossWithin/0.2)
	for i, p := range places {
		if off(o.shape, p) >= clear {
			run = 0
			continue
		}
		if run++; run == 1 {
			n++
		}
		long := float64(run-1)*d.mm(0.2) > 2*clear*crossSlope
		if o.dot >= 0 || o.weight == costMark || long || d.theme.gap > 0 || i < ends || i >= len(places)-ends {
			return math.Inf(1)
		}
	}
	return n
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
