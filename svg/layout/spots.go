package layout

import (
	"math"

	"trammel/geom/figure"
)

// Costs of places. Sharing ink is never worth any other comfort; the rest
// weighs a typesetter's habits against one another.
const (
	costRank   = 5   // for each place down the customary order
	costSector = 80  // for hugging a line at the point
	costBisect = 90  // for turning from the middle of an open corner
	costNarrow = 50  // for a narrow sector, where there is a wide one
	costInside = 60  // for the inner side of a figure or circle
	costArc    = 100 // for moving from the middle of an arc by its length
	costWithin = 150 // for standing in another angle
	costOff    = 900 // for the wrong side of an angle
	costFar    = 75  // for each millimetre farther from a point than is customary
)

// price makes a cost whole. The odd threshold keeps halves and other round
// values away from the edge, where a processor's last bit would decide.
func price(cost float64) int { return int(math.Floor(cost + 0.4987)) }

// directions is how many ways round a point are tried.
const directions = 32

// customary ranks the eight ways round a point, anticlockwise from the right:
// upper right, lower right, upper left, lower left, above, below, left, right.
var customary = [8]float64{7, 0, 4, 2, 6, 3, 5, 1}

// rank is the customary order, between two of its ways by their share.
func rank(angle float64) float64 {
	eighths := turn(angle) / (math.Pi / 4)
	i, part := int(eighths)%8, eighths-math.Floor(eighths)
	return float64(customary[i]*(1-part)) + float64(customary[(i+1)%8]*part)
}

// pointGaps are the distances in millimetres from a point to its label, and
// what each costs.
var pointGaps = []struct {
	gap  float64
	cost int
}{{1.4, 0}, {1.15, 35}, {1.9, 25}, {2.6, 70}, {3.5, 150}, {4.7, 260}, {6, 350}, {9, 500}}

// crowded is how many rays leave a point before its label may go to the last
// two distances: between them there is room only farther out.
const crowded = 6

func (d *drawing) pointSpots(l *label, pin figure.Pin) []spot {
	first, n := 0.0, directions
	if pin.Set {
		first, n = clock(pin), 1
	}
	gaps, rays := pointGaps, d.raysAt(l.home)
	if len(rays) < crowded {
		gaps = gaps[:len(gaps)-2]
	}
	ways := waysFrom(rays, first, n)
	spots := make([]spot, 0, len(gaps)*n)
	for _, g := range gaps {
		for _, w := range ways {
			spots = append(spots, l.spotTo(w, d.mm(g.gap), g.cost))
		}
	}
	return spots
}

// outward is a way from a point, and what a place on it costs.
type outward struct {
	way  vec
	cost int
}

// waysFrom are n ways round a point, of which these rays leave.
func waysFrom(rays []float64, first float64, n int) []outward {
	ways := make([]outward, n)
	for i := range ways {
		w := first + float64(i)*fullway/float64(n)
		ways[i] = outward{way(w), comfort(rays, w)}
	}
	return ways
}

// spotTo is on a way from the point of the label.
func (l *label) spotTo(w outward, gap float64, cost int) spot {
	return l.spotAt(l.home.add(w.way.times(l.beyond(w.way, gap))), cost+w.cost, l.home)
}

// comfort is what a direction from a point costs, by the rays of ink that
// leave it: the middle of a corner that opens wider than half a turn is best;
// elsewhere the customary order rules, in the wider sectors and away from ink.
func comfort(rays []float64, angle float64) int {
	cost := float64(rank(angle) * costRank)
	if len(rays) == 0 {
		return price(cost)
	}
	middle, widest := widestSector(rays)
	before, after := fullway, fullway
	for _, r := range rays {
		before, after = min(before, turn(angle-r)), min(after, turn(r-angle))
	}
	enough := min(widest/2, math.Pi/3.6)
	cost += float64(costSector * max(0, 1-min(before, after)/enough))
	cost += float64(costNarrow * (1 - min(before+after, widest)/widest))
	if widest > 1.03*math.Pi {
		cost += float64(costBisect*apart(angle, middle))/math.Pi - float64(0.6*costRank*rank(angle))
	}
	return price(cost)
}

// mostRays at a point are as good as any more: they leave no room between.
const mostRays = 360

// raysAt are the directions in which lines and arcs leave p.
func (d *drawing) raysAt(p vec) []float64 {
	var rays []float64
	d.through(p, func(c curve) {
		if len(rays) < mostRays {
			rays = append(rays, c.rays(p)...)
		}
	})
	return rays
}

// through visits the lines and arcs that go through p or pass it closely.
func (d *drawing) through(p vec, visit func(c curve)) {
	about := around(p, touching, touching)
	d.ground.near(about, func(o *obstacle) bool {
		if o.stroke >= 0 && d.strokes[o.stroke].layer != markLayer && o.touches(about) {
			visit(d.strokes[o.stroke].curve)
		}
		return true
	})
}

// widestSector is the widest angle free of rays: its middle and its width.
func widestSector(rays []float64) (middle, width float64) {
	if len(rays) == 0 {
		return 0, fullway
	}
	for _, r := range rays {
		gap := fullway
		for _, s := range rays {
			if t := turn(s - r); t > 1e-3 && t < gap {
				gap = t
			}
		}
		if gap > width {
			middle, width = turn(r+gap/2), gap
		}
	}
	return middle, width
}

// sideGaps are the distances in millimetres from a stroke to words beside it,
// and what each costs.
var sideGaps = []struct {
	gap  float64
	cost int
}{{1.1, 0}, {1.6, 9}, {2.3, 36}, {3.1, 81}, {4.2, 125}, {5.4, 165}, {6.8, 225}}

// beside appends spots on both sides of the place p of a straight that runs
// along u. The cost of a side is told by the sides, left first.
func (d *drawing) beside(spots []spot, l *label, p, u vec, cost float64, sides [2]float64) []spot {
	for i, n := range [2]vec{u.left(), u.left().times(-1)} {
		for _, g := range sideGaps {
			c := p.add(n.times(l.reach(n) + d.mm(g.gap)))
			s := l.spotAt(c, price(cost+sides[i])+g.cost, p)
			s.own = d.mm(g.gap)
			spots = append(spots, s)
		}
	}
	return spots
}

// sides tells which side of ab is the inner one of the figure: where its ends
// are joined on to, or else where most points are, the near ones counting most.
// With none, the upper side is taken, or the right of an upright.
func (d *drawing) sides(a, b vec) [2]float64 {
	p, u := a.mid(b), a.to(b)
	inner := lean(p, u, d.joined(a, b))
	if inner == 0 {
		all := make([]vec, len(d.fig.Points))
		for i, q := range d.fig.Points {
			all[i] = d.place(q.At)
		}
		inner = lean(p, u, all)
	}
	switch {
	case inner > 0:
		return [2]float64{costInside, 0}
	case inner < 0:
		return [2]float64{0, costInside}
	}
	if n := u.left(); n.y < -0.1 || math.Abs(n.y) <= 0.1 && n.x > 0 {
		return [2]float64{0, costInside / 4}
	}
	return [2]float64{costInside / 4, 0}
}

// lean is positive when the points lie more to the left of the straight
// through p along u, and 0 when the two sides all but balance.
func lean(p, u vec, points []vec) float64 {
	left, right := 0.0, 0.0
	for _, q := range points {
		w := q.sub(p)
		if math.Abs(u.cross(w)) < touching {
			continue
		}
		near := 1 + w.dot(w)/(mm*mm)
		off := u.cross(w) / float64(near*near)
		left, right = left+max(0, off), right+max(0, -off)
	}
	if math.Abs(left-right) < 0.02*(left+right) {
		return 0
	}
	return left - right
}

// joined are the points that joins lead to from a or from b.
func (d *drawing) joined(a, b vec) []vec {
	var list []vec
	for _, j := range d.joins {
		if j.a == a || j.a == b {
			list = append(list, j.b)
		}
		if j.b == a || j.b == b {
			list = append(list, j.a)
		}
	}
	return list
}

// lengthSpots lie along the segment, best at its middle. That of a piece of
// another segment with a length stands on the other side than that one's.
func (d *drawing) lengthSpots(l *label, m figure.LengthLabel) []spot {
	s := segment{d.place(m.A), d.place(m.B)}
	sides := d.sides(s.a, s.b)
	if line, ok := d.dimensions[s]; ok {
		return d.along(l, line, sides)
	}
	if d.isPiece(s) {
		sides[0], sides[1] = sides[1], sides[0]
	}
	l.parted = m.Measured && !m.Pin.Set && d.divided(s)
	return d.along(l, s, sides)
}

// isPiece tells whether the length of a longer stretch over s is written too.
func (d *drawing) isPiece(s segment) bool {
	for _, m := range d.fig.Marks {
		if m, ok := m.(figure.LengthLabel); ok {
			o := segment{d.place(m.A), d.place(m.B)}
			if o.length() > s.length()+touching && o.dist(s.a) < touching && o.dist(s.b) < touching {
				return true
			}
		}
	}
	return false
}

// costShift is for moving from the middle of a segment by its length.
const costShift = 1400

// along lists the spots beside s. The label belongs to its middle third.
func (d *drawing) along(l *label, s segment, sides [2]float64) []spot {
	at := func(part float64) vec { return s.a.add(s.b.sub(s.a).times(part)) }
	l.base, l.middle, l.whole = &segment{at(1.0 / 3), at(2.0 / 3)}, true, s
	l.faint = d.faintAlong(s)
	var spots []spot
	for _, part := range []float64{0.5, 0.46, 0.54, 0.42, 0.58, 0.37, 0.63, 0.31, 0.69, 0.25, 0.75, 0.18, 0.82} {
		spots = d.beside(spots, l, at(part), s.a.to(s.b), costShift*math.Abs(part-0.5), sides)
	}
	return d.within(spots, l, s)
}

// Words in a gap of their own segment: what that costs, and how many millimetres
// of the segment are seen at each end.
const (
	costBroken = 400
	leastSeen  = 3.5
)

// within appends spots in the segment itself, which is broken for them: for words
// that find no place beside it.
func (d *drawing) within(spots []spot, l *label, s segment) []spot {
	u, size := s.a.to(s.b), l.ink.size()
	half := min(size.x/2/max(math.Abs(u.x), 1e-6), size.y/2/max(math.Abs(u.y), 1e-6))
	for _, off := range []float64{0, 0.06, -0.06, 0.12, -0.12} {
		p := s.a.add(s.b.sub(s.a).times(0.5 + off))
		if s.length()*(0.5-math.Abs(off)) >= half+d.mm(leastSeen) {
			at := l.spotAt(p, costBroken+price(costShift*math.Abs(off)), p)
			at.broken = true
			spots = append(spots, at)
		}
	}
	return spots
}

// faintAlong tells that all ink along s at its middle is that of the construction.
func (d *drawing) faintAlong(s segment) bool {
	faint := false
	mid := s.a.mid(s.b)
	d.ground.near(around(mid, touching, touching), func(o *obstacle) bool {
		if g, ok := o.shape.(segment); ok && o.weight != costMark && s.along(g) && g.dist(mid) < touching {
			faint = o.thin
			return faint
		}
		return true
	})
	return faint
}

// Costs of places for a line's name.
const (
	costEnd    = 80 // for the end that is not the customary one
	costBeside = 60 // for standing beside the line, not in line with it
	costBelow  = 20 // for the lower side of a line
)

// straightSpots are those of a line's name: beyond an end, in line with it, or
// beside it there. The right end is the customary one, the upper one of a
// steep line. A join's name stands at its middle like a length.
func (d *drawing) straightSpots(l *label, s *figure.Straight) []spot {
	if s.Start != nil && s.End != nil {
		j := segment{d.place(*s.Start), d.place(*s.End)}
		return d.along(l, j, d.sides(j.a, j.b))
	}
	r, ok := d.ruled[&s.Thing]
	if !ok {
		r = d.rule(s)
	}
	l.base = &segment{r.point(r.lo), r.point(r.hi)}
	l.faint = d.faintAlong(*l.base)
	var spots []spot
	if s.End == nil {
		spots = d.endSpots(spots, l, r.point(r.hi), r.way, r.hi-r.lo)
	}
	if s.Start == nil {
		spots = d.endSpots(spots, l, r.point(r.lo), r.way.times(-1), r.hi-r.lo)
	}
	return spots
}

// endSpots appends those at the tip of a line that comes there along u.
func (d *drawing) endSpots(spots []spot, l *label, tip, u vec, length float64) []spot {
	cost := 0
	if !customaryEnd(u) {
		cost = costEnd
	}
	for _, g := range sideGaps {
		spots = append(spots, l.spotAt(tip.add(u.times(l.reach(u)+d.mm(g.gap))), cost+g.cost/2, tip))
	}
	sides := [2]float64{0, costBelow}
	if n := u.left(); n.y > 0.1 || math.Abs(n.y) <= 0.1 && n.x < 0 {
		sides = [2]float64{costBelow, 0}
	}
	for i, in := range []float64{1.5, 2.5, 3.5, 5, 7, 9, 12, 15, 19} {
		if d.mm(in) < length {
			spots = d.beside(spots, l, tip.sub(u.times(d.mm(in))), u, float64(cost+costBeside+i*8), sides)
		}
	}
	return spots
}

// customaryEnd tells whether a line that ends along u ends on the right, or at
// the top if it is steep.
func customaryEnd(u vec) bool {
	const steep = 1.2
	if math.Abs(u.y) > steep*math.Abs(u.x) {
		return u.y < 0
	}
	return u.x > 0
}

// circleSpots stand on the rim of what is drawn of the circle, outside first, or
// beyond an end of an arc, in line with it.
func (d *drawing) circleSpots(l *label, c *figure.Circle) []spot {
	k := rounded{c: d.place(c.Circle.C)}
	k.r = math.Round(math.Sqrt(c.Circle.R2.Float()) * d.scale)
	l.round = true
	var spots []spot
	for _, s := range d.sweeps(c, k) {
		n := whole(clamp((s.hi-s.lo)/(fullway/48), 9, 48))
		for i := range n {
			angle := s.lo + float64((float64(i)+0.5)*(s.hi-s.lo))/float64(n)
			p, u := k.c.add(way(angle).times(k.r)), way(angle)
			cost := float64(rank(angle) * costRank)
			if c.Part != nil {
				cost = costArc * math.Abs((angle-s.lo)/(s.hi-s.lo)-0.5)
			}
			cost += d.encircled(p, c)
			spots = d.beside(spots, l, p, u.left().times(-1), cost, [2]float64{0, costInside})
		}
		if s.hi-s.lo < allRound {
			spots = d.tipSpots(spots, l, k, s)
		}
	}
	return spots
}

// tipSpots appends those beyond the ends of an arc.
func (d *drawing) tipSpots(spots []spot, l *label, k rounded, s span) []spot {
	for i, end := range [2]float64{s.lo, s.hi} {
		out := way(end).left().times([2]float64{-1, 1}[i])
		tip := k.c.add(way(end).times(k.r))
		for _, g := range sideGaps {
			at := l.spotAt(tip.add(out.times(l.reach(out)+d.mm(g.gap))), costBeside+g.cost, tip)
			at.own = at.near(tip)
			spots = append(spots, at)
		}
	}
	return spots
}

// encircled is what it costs that p lies within other circles, where a name
// could be read as theirs.
func (d *drawing) encircled(p vec, but *figure.Circle) float64 {
	cost := 0.0
	for _, s := range d.strokes {
		if a, ok := s.curve.(arc); ok && a.all() && s.owner != &but.Thing && a.c.dist(p) < a.r {
			cost += costInside / 2
		}
	}
	return cost
}

// noteSpots are round a place, like a point's but farther out.
func (d *drawing) noteSpots(l *label, p vec) []spot {
	var spots []spot
	for j, gap := range []float64{2.5, 4, 6, 9, 13, 18} {
		for i := range directions {
			u := way(float64(i) * fullway / directions)
			spots = append(spots, l.spotAt(p.add(u.times(l.beyond(u, d.mm(gap)))), j*30+price(rank(u.angle())*costRank), p))
		}
	}
	return spots
}
