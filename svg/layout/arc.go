package layout

import "math"

// arc is a round stroke: from the angle from, anticlockwise through sweep,
// which is positive and at most a full turn.
type arc struct {
	c           vec
	r           float64
	from, sweep float64
}

// all tells whether the arc closes on itself.
func (a arc) all() bool { return a.sweep >= fullway }

func (a arc) at(angle float64) vec { return a.c.add(way(angle).times(a.r)) }
func (a arc) length() float64      { return float64(a.r * a.sweep) }
func (a arc) start() vec           { return a.at(a.from).snap() }
func (a arc) end() vec             { return a.at(a.from + a.sweep).snap() }

// spans tells whether the arc goes through its circle's point at the angle.
func (a arc) spans(angle float64) bool { return a.all() || turn(angle-a.from) <= a.sweep }

func (a arc) bounds() box {
	b := box{a.start(), a.start()}.union(box{a.end(), a.end()})
	for q := range 4 {
		if angle := float64(q) * math.Pi / 2; a.spans(angle) {
			p := a.at(angle)
			b = b.union(box{p, p})
		}
	}
	return b
}

// touches holds when the arc starts in the box or comes in through an edge.
func (a arc) touches(b box) bool {
	if b.near(a.c) > a.r || b.far(a.c) < a.r-1 {
		return false // outside the circle, or inside
	}
	var room [8]float64
	return b.holds(a.start()) || len(a.crossings(b, room[:0])) > 0
}

// crossings are the angles at which the arc meets the edges of b, appended to found.
func (a arc) crossings(b box, found []float64) []float64 {
	keep := func(d vec) {
		if angle := d.angle(); a.spans(angle) {
			found = append(found, angle)
		}
	}
	lo, hi := b.lo.sub(a.c), b.hi.sub(a.c)
	for _, x := range [2]float64{lo.x, hi.x} {
		y, ok := a.leg(x)
		for _, y := range [2]float64{-y, y} {
			if ok && lo.y <= y && y <= hi.y {
				keep(vec{x, y})
			}
		}
	}
	for _, y := range [2]float64{lo.y, hi.y} {
		x, ok := a.leg(y)
		for _, x := range [2]float64{-x, x} {
			if ok && lo.x <= x && x <= hi.x {
				keep(vec{x, y})
			}
		}
	}
	return found
}

// leg is the other leg of the right triangle over the radius.
func (a arc) leg(x float64) (float64, bool) {
	if math.Abs(x) > a.r {
		return 0, false
	}
	return math.Sqrt(float64(a.r*a.r) - float64(x*x)), true
}

func (a arc) without(b box) []curve {
	cuts := []span{}
	for _, angle := range a.crossings(b, nil) {
		cuts = append(cuts, span{turn(angle - a.from), 0})
	}
	if len(cuts) == 0 {
		if b.holds(a.start()) {
			return nil
		}
		return []curve{a}
	}
	sortSpans(cuts)
	var rest []curve
	lo := 0.0
	for _, cut := range append(cuts, span{a.sweep, 0}) {
		if piece := (arc{a.c, a.r, turn(a.from + lo), cut.lo - lo}); piece.sweep > 0 && !b.holds(piece.at(piece.from+piece.sweep/2)) {
			rest = append(rest, piece)
		}
		lo = cut.lo
	}
	return rest
}

func (a arc) rays(p vec) []float64 {
	d := p.sub(a.c)
	if a.r == 0 || math.Abs(d.len()-a.r) > touching {
		return nil
	}
	angle, slack := d.angle(), touching/a.r
	var rays []float64
	if before := turn(angle - a.from + slack); a.all() || before > 2*slack && before <= a.sweep+2*slack {
		rays = append(rays, turn(angle-math.Pi/2))
	}
	if before := turn(angle - a.from + slack); a.all() || before <= a.sweep {
		rays = append(rays, turn(angle+math.Pi/2))
	}
	return rays
}

// dist is how far p is from the arc.
func (a arc) dist(p vec) float64 {
	if w := p.sub(a.c); a.spans(w.angle()) {
		return math.Abs(w.len() - a.r)
	}
	return min(p.dist(a.start()), p.dist(a.end()))
}

// samples are places on the arc, its ends among them, no farther apart than step.
func (a arc) samples(step float64) []vec {
	n := max(1, math.Ceil(a.length()/step))
	var list []vec
	for i := 0.0; i <= n; i++ {
		list = append(list, a.at(a.from+float64(a.sweep*i)/n))
	}
	return list
}
