package layout

import (
	"math"
	"slices"
	"sort"

	"trammel/geom/figure"
)

// corner is an angle on the paper: anticlockwise from an arm through sweep.
type corner struct {
	at          vec
	from, sweep float64
	leg         float64 // the shorter arm, as far as its point
}

// band is the room that the mark of a corner takes about its vertex.
type band struct {
	corner
	lo, hi float64
	group  int // marks of one group are equal angles
}

// Sizes in millimetres of the marks of angles.
const (
	square    = 3.0
	arcRadius = 6.0
	arcApart  = 1.0
	arcStep   = 0.9 // between arcs of equal angles side by side
	arcsStep  = 1.5 // between double ones: each falls between two others
	arcToText = 0.9
	arcLength = 4.5 // an arc shorter than this gets a greater radius
	bandApart = 1.4
	farStep   = 20.0 // arcs step outward so far at most
	legPart   = 0.4  // of the shorter arm: no arc is larger,
	roundPart = 0.75 // but for one that goes round those of its parts
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
// that a narrow angle, which wants a greater radius anyhow, steps outward. Last
// come the divided angles: their arcs go round those of their parts.
func (d *drawing) drawAngles() {
	d.angleText = d.angleHeight()
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.RightAngle); ok {
			d.drawSquare(m)
		}
	}
	wanted := d.arcsWanted()
	sort.SliceStable(wanted, func(i, j int) bool {
		a, b := wanted[i], wanted[j]
		switch {
		case (a.roomy > 0) != (b.roomy > 0):
			return b.roomy > 0
		case a.roomy > 0:
			return a.sweep < b.sweep-0.001
		}
		return a.sweep > b.sweep+0.001
	})
	for _, w := range wanted {
		d.drawAngleArcs(w)
	}
}

// wanted is an angle that is to have arcs.
type wanted struct {
	corner
	count, group, step int
	roomy              float64 // radius beyond which the label of a divided angle has room; else 0
}

// arcsWanted lists the angles with arcs: the equal ones, and those that have
// a label and no other mark.
func (d *drawing) arcsWanted() []wanted {
	var list []wanted
	for i, m := range d.fig.Marks {
		if m, ok := m.(figure.AngleArcs); ok {
			for _, a := range m.Angles {
				list = append(list, wanted{d.corner(a), m.Count, i, m.Step, 0})
			}
		}
	}
	for i, m := range d.fig.Marks {
		m, ok := m.(figure.AngleLabel)
		if !ok {
			continue
		}
		c := d.corner(m.Angle)
		if _, square := d.bandOf(c); square {
			continue
		}
		at := slices.IndexFunc(list, func(w wanted) bool { return w.same(c) })
		if at < 0 {
			at = len(list)
			list = append(list, wanted{c, 1, i, m.Step, 0})
		}
		list[at].roomy = d.roomFor(m, c)
	}
	return list
}

// roomFor is the least radius beyond which the label of a divided angle fits
// between the straights that divide it, and 0 if none do.
func (d *drawing) roomFor(m figure.AngleLabel, c corner) float64 {
	l, ok := d.request(d.fig.Words(m.Label), m.Name, d.angleText, "", m.Step)
	if len(d.ways(c)) == 2 || !ok {
		return 0
	}
	return max(d.clearOfArms(l, c)-d.mm(arcToText), 1)
}

// clearOfArms is how far from the vertex of an angle its label begins at the nearest, to be
// clear of the arms and of the straights between them.
func (d *drawing) clearOfArms(l *label, c corner) float64 {
	least, ways := math.Inf(1), d.ways(c)
	for i, to := range ways[1:] {
		from := ways[i]
		u, clear := way((from+to)/2), max(l.reach(way(from).left()), l.reach(way(to).left()))+d.mm(tightInk)+d.theme.result.half()
		least = min(least, clear/math.Sin(min(to-from, math.Pi)/2)-l.reach(u))
	}
	return least
}

// sizeApart is how many millimetres the arc of a divided angle keeps from those
// of its parts, with which it must not be counted.
const sizeApart = 4.0

// beyondParts is the least radius at which the arc of a divided angle lies
// outside of the marks and the sizes of its parts.
func (d *drawing) beyondParts(w wanted) float64 {
	least := 0.0
	for _, b := range d.bands {
		if b.group >= 0 && b.group != w.group && w.holds(b.corner) {
			least = max(least, b.hi+d.mm(sizeApart), d.sizeEnd(b))
		}
	}
	return least
}

// sizeEnd is how far from its vertex the size of an angle ends, with a gap, where it
// stands as near to its mark as it fits; 0 if it is not written.
func (d *drawing) sizeEnd(b band) float64 {
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.AngleLabel); ok && d.corner(m.Angle).same(b.corner) {
			if l, ok := d.request(d.fig.Words(m.Label), m.Name, d.angleText, "", m.Step); ok {
				gap := d.mm(arcToText)
				u, size := way(b.middle()), l.ink.size()
				c := u.times(max(b.hi+gap, d.clearOfArms(l, b.corner)) + l.reach(u))
				return around(c, size.x/2, size.y/2).far(vec{}) + gap
			}
		}
	}
	return 0
}

// holds tells whether o is a part of c.
func (c corner) holds(o corner) bool {
	const slack = 0.001
	from := turn(o.from - c.from + slack)
	return c.at == o.at && !c.same(o) && from+o.sweep <= c.sweep+2*slack
}

// ways are those of the arms and of the straights that leave the vertex
// between them, in order from the first arm.
func (d *drawing) ways(c corner) []float64 {
	const slack = 0.01
	ways := []float64{c.from}
	d.through(c.at, func(k curve) {
		if g, ok := k.(segment); ok && len(ways) < mostRays {
			for _, r := range g.rays(c.at) {
				if off := turn(r - c.from); slack < off && off < c.sweep-slack {
					ways = append(ways, c.from+off)
				}
			}
		}
	})
	slices.Sort(ways)
	return append(ways, c.from+c.sweep)
}

// arm is how far the shorter arm of an angle is drawn.
func (d *drawing) arm(c corner) float64 {
	arms := [2]float64{c.leg, c.leg}
	d.through(c.at, func(k curve) {
		g, ok := k.(segment)
		if !ok {
			return
		}
		for i, u := range [2]vec{way(c.from), way(c.from + c.sweep)} {
			a, b := g.a.sub(c.at), g.b.sub(c.at)
			if math.Abs(u.cross(a)) < touching && math.Abs(u.cross(b)) < touching {
				arms[i] = max(arms[i], u.dot(a), u.dot(b))
			}
		}
	})
	return min(arms[0], arms[1])
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

// squareSizes are the sides of squares that are tried, as parts of the usual one:
// the first of them in all the quadrants before the last.
var squareSizes = [2][]float64{{1, 0.8, 0.65}, {0.5}}

// drawSquare draws the square of a right angle, where the arms run on past the
// vertex in that of the four that touches least. The angle of the source comes first.
func (d *drawing) drawSquare(m figure.RightAngle) {
	d.marking = m.Step
	c := d.corner(m.Angle)
	side := d.squareSide(c.at)
	if !d.roomy(side, m.Step) {
		return
	}
	own := d.besides(c.at)
	best, at, least := [2]segment{}, c, math.MaxInt
	for _, sizes := range squareSizes {
		for _, q := range d.quadrants(m, c) {
			for _, size := range sizes {
				mark := squareAt(c.at, q.a.times(side*size), q.b.times(side*size))
				if n := d.touched([]curve{mark[0], mark[1]}, markClear, own); n < least {
					best, at, least = mark, q.corner, n
				}
			}
		}
	}
	d.breakFor([]curve{best[0], best[1]}, own)
	hook := squareHook + " " + d.cornerHook(c)
	for _, s := range best {
		d.mark(hook, s)
		d.squares[s] = c.at
	}
	d.bands = append(d.bands, band{at, 0, side * math.Sqrt2, -1})
}

// squareSide is the side of the squares at a vertex: they share their sides, and so
// they are of one size, which the shortest arm decides.
func (d *drawing) squareSide(at vec) float64 {
	side := d.mm(square)
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.RightAngle); ok && d.place(m.Vertex) == at {
			side = min(side, 0.35*d.corner(m.Angle).leg)
		}
	}
	return side
}

// besides tells what a square does not keep off: what passes through its vertex, and
// the squares beside it, with which it shares its sides. Fingers want them apart.
func (d *drawing) besides(at vec) func(o *obstacle) bool {
	through := passes(at)
	return func(o *obstacle) bool {
		g, _ := o.shape.(segment)
		beside, ok := d.squares[g]
		return through(o) || ok && beside == at && d.theme.gap == 0
	}
}

// squareAt has its near corner at v and two sides along p and q.
func squareAt(v, p, q vec) [2]segment {
	far := v.add(p).add(q).snap()
	return [2]segment{{v.add(p).snap(), far}, {far, v.add(q).snap()}}
}

// quadrants are the arms of the right angles at the vertex of c where a square
// says the same: c, and those whose arms are drawn too. An angle that has its
// size written in it keeps its square.
func (d *drawing) quadrants(m figure.RightAngle, c corner) []quadrant {
	a, b := c.at.to(d.place(m.A)), c.at.to(d.place(m.B))
	if apart(a.angle(), c.from) > 0.1 {
		a, b = b, a
	}
	list := []quadrant{{a, b, c}}
	if d.sized(c) {
		return list
	}
	rays := d.raysAt(c.at)
	inked := func(u vec) bool {
		return slices.ContainsFunc(rays, func(r float64) bool { return apart(r, u.angle()) < 0.01 })
	}
	for range 3 {
		a, b = b, a.times(-1)
		c.from = turn(c.from + math.Pi/2)
		if inked(a) && inked(b) {
			list = append(list, quadrant{a, b, c})
		}
	}
	return list
}

// quadrant is a right angle with the unit vecs of its arms.
type quadrant struct {
	a, b vec
	corner
}

// sized tells that the size of an angle is written in it.
func (d *drawing) sized(c corner) bool {
	return slices.ContainsFunc(d.fig.Marks, func(m figure.Mark) bool {
		l, ok := m.(figure.AngleLabel)
		return ok && d.corner(l.Angle).same(c)
	})
}

// passes tells what goes through the vertex of an angle: its arms, and whatever
// divides it. The arcs of other angles there keep off by their bands.
func passes(p vec) func(o *obstacle) bool {
	return func(o *obstacle) bool {
		c, ok := o.shape.(curve)
		return ok && (off(c, p) < touching || o.weight == costMark && about(c, p)) || o.dot >= 0 && o.bounds().centre() == p
	}
}

func (d *drawing) drawAngleArcs(w wanted) {
	d.marking = w.step
	thick := float64(w.count-1) * d.mm(arcApart)
	r := d.radius(w, thick)
	if !d.roomy(r, w.step) {
		return
	}
	d.breakFor(d.angleArcs(w, r), passes(w.at))
	if !d.free(w, r, r+thick) {
		d.fouled++
	}
	for _, a := range d.angleArcs(w, r) {
		d.mark(arcHook+" "+d.cornerHook(w.corner), a)
	}
	d.bands = append(d.bands, band{w.corner, r, r + thick, w.group})
}

// radius is that of the innermost arc: as large as the angle wants, stepping
// outward past other marks at the vertex and other ink while the arms allow,
// else inward.
func (d *drawing) radius(w wanted, thick float64) float64 {
	arm := d.arm(w.corner)
	round := d.beyondParts(w)
	most := max(float64(legPart*arm), min(round, roundPart*arm)) - thick
	first := min(max(d.mm(arcRadius), d.mm(arcLength)/w.sweep, w.roomy-thick, round), most)
	most = min(most, first+d.mm(farStep))
	best, least := first, math.MaxInt
	try := func(r float64) bool {
		n := d.touched(d.angleArcs(w, r), markClear, passes(w.at))
		if !d.free(w, r, r+thick) {
			n += tooMany
		}
		if n < least {
			best, least = r, n
		}
		return n == 0
	}
	for r := first; r <= most; r += d.mm(0.5) {
		if try(r) {
			return r
		}
	}
	for r := first; r >= d.mm(2.5); r -= d.mm(0.5) {
		if try(r) {
			return r
		}
	}
	return best
}

// angleArcs are the arcs of an angle from the radius r on.
func (d *drawing) angleArcs(w wanted, r float64) []curve {
	var list []curve
	for i := range w.count {
		list = append(list, arc{w.at, math.Round(r + float64(float64(i)*d.mm(arcApart))), w.from, w.sweep})
	}
	return list
}

func (d *drawing) free(w wanted, lo, hi float64) bool {
	gap, step := d.mm(bandApart), d.mm(arcStep)
	if w.count > 1 {
		step = d.mm(arcsStep)
	}
	for _, b := range d.bands {
		switch {
		case !b.meets(w.corner):
		case (b.group != w.group || d.theme.gap > 0) && lo < b.hi+gap && b.lo < hi+gap:
			return false
		case b.group == w.group && math.Abs(lo-b.lo) < step-1:
			return false
		}
	}
	return true
}

func about(c curve, p vec) bool {
	a, ok := c.(arc)
	return ok && a.c == p
}
