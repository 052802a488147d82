package layout

import (
	"math"
	"sort"

	"trammel/geom/figure"
)

// corner is an angle on the paper: anticlockwise from an arm through sweep.
type corner struct {
	at          vec
	from, sweep float64
	leg         float64 // the shorter arm
}

// band is the room that the mark of a corner takes about its vertex.
type band struct {
	corner
	lo, hi float64
	group  int // marks of one group are equal angles and may touch
}

// Sizes in millimetres of the marks of angles.
const (
	square    = 3.0
	arcRadius = 6.0
	arcApart  = 1.0
	arcLength = 4.5 // an arc shorter than this gets a greater radius
	bandApart = 1.4
	legPart   = 0.4 // of the shorter arm: no arc is larger
)

func (d *drawing) corner(a figure.Angle) corner {
	v, p, q := d.place(a.Vertex), d.place(a.A), d.place(a.B)
	c := corner{at: v, from: p.sub(v).angle(), leg: min(v.dist(p), v.dist(q))}
	to := q.sub(v).angle()
	c.sweep = turn(to - c.from)
	if (c.sweep > math.Pi) != a.Reflex {
		c.from, c.sweep = to, fullway-c.sweep
	}
	return c
}

// middle is the direction of the bisector.
func (c corner) middle() float64 { return c.from + c.sweep/2 }

// same tells whether two corners are the same angle.
func (c corner) same(o corner) bool {
	return c.at == o.at && apart(c.from, o.from) < 0.001 && math.Abs(c.sweep-o.sweep) < 0.001
}

// meets tells whether two corners at one vertex overlap or share an arm.
func (c corner) meets(o corner) bool {
	const slack = 0.001
	return c.at == o.at && (turn(o.from-c.from) <= c.sweep+slack || turn(c.from-o.from) <= o.sweep+slack)
}

// drawAngles draws right angles first and then the arcs, the widest first, so
// that a narrow angle, which wants a greater radius anyhow, steps outward.
func (d *drawing) drawAngles() {
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.RightAngle); ok {
			d.drawSquare(m)
		}
	}
	wanted := d.arcsWanted()
	sort.SliceStable(wanted, func(i, j int) bool { return wanted[i].sweep > wanted[j].sweep+0.001 })
	for _, w := range wanted {
		d.drawAngleArcs(w)
	}
}

// wanted is an angle that is to have arcs.
type wanted struct {
	corner
	count, group, step int
}

// arcsWanted lists the angles with arcs: the equal ones, and those that have
// a label and no other mark.
func (d *drawing) arcsWanted() []wanted {
	var list []wanted
	for i, m := range d.fig.Marks {
		if m, ok := m.(figure.AngleArcs); ok {
			for _, a := range m.Angles {
				list = append(list, wanted{d.corner(a), m.Count, i, m.Step})
			}
		}
	}
	for i, m := range d.fig.Marks {
		if m, ok := m.(figure.AngleLabel); ok && !d.marked(d.corner(m.Angle), list) {
			list = append(list, wanted{d.corner(m.Angle), 1, i, m.Step})
		}
	}
	return list
}

func (d *drawing) marked(c corner, list []wanted) bool {
	for _, w := range list {
		if w.same(c) {
			return true
		}
	}
	_, ok := d.bandOf(c)
	return ok
}

// bandOf is the mark of an angle, if it has one.
func (d *drawing) bandOf(c corner) (band, bool) {
	for _, b := range d.bands {
		if b.same(c) {
			return b, true
		}
	}
	return band{}, false
}

func (d *drawing) drawSquare(m figure.RightAngle) {
	v := d.place(m.Vertex)
	a, b := v.to(d.place(m.A)), v.to(d.place(m.B))
	c := d.corner(m.Angle)
	side := min(d.mm(square), 0.35*c.leg)
	if !d.roomy(side, m.Step) {
		return
	}
	p, q := v.add(a.times(side)), v.add(b.times(side))
	far := p.add(b.times(side)).snap()
	d.mark(segment{p.snap(), far})
	d.mark(segment{far, q.snap()})
	d.bands = append(d.bands, band{c, 0, side * math.Sqrt2, -1})
}

func (d *drawing) drawAngleArcs(w wanted) {
	thick := float64(w.count-1) * d.mm(arcApart)
	r := d.radius(w, thick)
	if !d.roomy(r, w.step) {
		return
	}
	for i := range w.count {
		a := arc{w.at, math.Round(r + float64(float64(i)*d.mm(arcApart))), w.from, w.sweep}
		d.mark(a)
	}
	d.bands = append(d.bands, band{w.corner, r, r + thick, w.group})
}

// radius is that of the innermost arc: as large as the angle wants, stepping
// outward past other marks at the vertex while the arms allow, else inward.
func (d *drawing) radius(w wanted, thick float64) float64 {
	most := float64(legPart*w.leg) - thick
	first := min(max(d.mm(arcRadius), d.mm(arcLength)/w.sweep), most)
	for r := first; r <= most; r += d.mm(0.5) {
		if d.free(w, r, r+thick) {
			return r
		}
	}
	for r := first; r >= d.mm(2.5); r -= d.mm(0.5) {
		if d.free(w, r, r+thick) {
			return r
		}
	}
	return first
}

func (d *drawing) free(w wanted, lo, hi float64) bool {
	gap := d.mm(bandApart)
	for _, b := range d.bands {
		if b.group != w.group && b.meets(w.corner) && lo < b.hi+gap && b.lo < hi+gap {
			return false
		}
	}
	return true
}
