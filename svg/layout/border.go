package layout

import (
	"math"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/geom/region"
)

// prolongBorders draws the loose ends of straights on as far as they bound a hatched
// region: a border that stops on the way looks as if the region ended there.
func (d *drawing) prolongBorders(all []ruled) {
	for _, m := range d.fig.Marks {
		areas, _ := d.areas(m)
		for _, r := range areas {
			for i := range all {
				d.prolongBorder(&all[i], r)
			}
		}
	}
}

// prolongBorder does it for one straight and one region. A border of a region that
// runs on without end is drawn to the edge of what is hatched at most.
func (d *drawing) prolongBorder(r *ruled, area region.Region) {
	if !r.loose[0] && !r.loose[1] {
		return
	}
	edge := span{math.Inf(-1), math.Inf(1)}
	if _, bounded := area.Box(); !bounded {
		edge = d.open.along(r.at, r.way)
	}
	for _, s := range d.borders(r, area) {
		lo, hi := max(s.lo-d.mm(pastBorder), edge.lo), min(s.hi+d.mm(pastBorder), edge.hi)
		if lo > r.hi || hi < r.lo {
			continue
		}
		if r.loose[0] {
			r.lo = min(r.lo, lo)
		}
		if r.loose[1] {
			r.hi = max(r.hi, hi)
		}
	}
	r.tips = [2]vec{r.point(r.lo), r.point(r.hi)}
}

// pastBorder is how far a straight goes on past the end of a border, in millimetres.
const pastBorder = 3

// borders are the stretches of a straight that have the region on one side only.
func (d *drawing) borders(r *ruled, area region.Region) (out []span) {
	const aside = 20 // micrometres
	beside := func(off float64) (spans []span) {
		at := r.at.add(r.way.left().times(off)).times(1 / d.scale)
		for _, s := range area.Along(at.x, -at.y, math.Atan2(-r.way.y, r.way.x)) {
			spans = append(spans, span{s.Lo * d.scale, s.Hi * d.scale})
		}
		return spans
	}
	one, other := beside(aside), beside(-aside)
	for _, sides := range [2][2][]span{{one, other}, {other, one}} {
		for _, s := range sides[0] {
			for _, s := range s.uncovered(sides[1]) {
				if s.hi-s.lo > d.mm(pastBorder) {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// openExtent is the box in which regions that run on are hatched: a little more than
// what is drawn of straights, circles and points, so that none of these seems to bound them.
func (d *drawing) openExtent(all []ruled) box {
	b := nowhere
	add := func(p geom.Point, size float64) { b = b.union(around(d.place(p), size, size)) }
	for _, p := range d.fig.Points {
		if !p.Hidden {
			add(p.At, d.theme.dot)
		}
	}
	for _, r := range all {
		b = b.union(box{r.tips[0], r.tips[0]}).union(box{r.tips[1], r.tips[1]})
	}
	for _, c := range d.fig.Circles {
		switch {
		case c.Hidden:
		case c.Whole || len(c.Used) == 0:
			add(c.Circle.C, math.Sqrt(c.Circle.R2.Float())*d.scale)
		default:
			for _, p := range c.Used {
				add(p, 0)
			}
		}
	}
	if b.empty() {
		b = box{}
	}
	b = b.grow(d.mm(hatchBeyond))
	least := d.mm(hatchLeast) / 2
	return b.union(around(b.centre(), least, least))
}

// along is the span of a line in the box; empty, from 0 to 0, where it passes by.
func (b box) along(at, way vec) span {
	s := span{math.Inf(-1), math.Inf(1)}
	for _, axis := range [2][4]float64{{at.x, way.x, b.lo.x, b.hi.x}, {at.y, way.y, b.lo.y, b.hi.y}} {
		from, by, lo, hi := axis[0], axis[1], axis[2], axis[3]
		if by == 0 {
			continue
		}
		one, other := (lo-from)/by, (hi-from)/by
		s = span{max(s.lo, min(one, other)), min(s.hi, max(one, other))}
	}
	if s.lo > s.hi {
		return span{}
	}
	return s
}

// longExit is how far a line is drawn on at most, in millimetres, to leave a circle in which
// it would end: it would look like a chord that failed.
const longExit = 60

// prolongExits does that for lines that end in a whole circle. Those that end at its centre
// do so for a reason.
func (d *drawing) prolongExits(all []ruled) {
	for i := range all {
		r := &all[i]
		for _, c := range d.fig.Circles {
			if c.Whole && !c.Hidden && r.loose[0] && r.loose[1] && r.owner.Role == figure.Result {
				d.prolongExit(r, d.place(c.Circle.C), math.Sqrt(c.Circle.R2.Float())*d.scale)
			}
		}
	}
}

func (d *drawing) prolongExit(r *ruled, centre vec, radius float64) {
	middle := r.way.dot(centre.sub(r.at))
	off := r.way.cross(centre.sub(r.at))
	half := math.Sqrt(max(0, radius*radius-off*off))
	in, out := middle-half, middle+half
	if half == 0 || r.hi < in || r.lo > out {
		return
	}
	if r.lo > in && r.lo-in < d.mm(longExit) {
		r.lo = in - d.mm(pastBorder)
	}
	if r.hi < out && out-r.hi < d.mm(longExit) {
		r.hi = out + d.mm(pastBorder)
	}
	r.tips = [2]vec{r.point(r.lo), r.point(r.hi)}
}
