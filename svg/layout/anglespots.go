package layout

import (
	"math"
	"slices"
)

// angleSpots lie on the bisector beyond the arc, then a little off it, and at
// last outside the arms.
func (d *drawing) angleSpots(l *label, c corner) []spot {
	own, _ := d.bandOf(c)
	r := own.hi
	if own.group >= 0 && r > 0 {
		l.arc = &arc{c.at, r, c.from, c.sweep}
	}
	others, wholes := d.otherBands(c), d.wholesOf(own)
	var spots []spot
	nearest := max(d.clearOfArms(l, c)-r, d.mm(arcToText))
	for i, out := range d.outs(nearest) {
		for _, part := range []float64{0, -0.1, 0.1, -0.17, 0.17, -0.25, 0.25, -0.33, 0.33} {
			u := way(c.middle() + float64(part*c.sweep))
			p := c.at.add(u.times(r + out + l.reach(u)))
			far := max(0, i-6) // out there it would be read as another angle's
			at := l.spotAt(p, i*14+far*far*14+price(math.Abs(part)*200)+doubt(others, p.sub(c.at)), c.at)
			switch {
			case d.shut(c.at, p) || beyond(wholes, at.centre().dist(c.at)):
				at.cost, at.lost = at.cost+costOff, true
			case out > nearest+d.mm(farOut):
				at.cost, at.lost = at.cost+costWithin, true
			}
			spots = append(spots, at)
		}
	}
	for _, arm := range []float64{c.from, c.from + c.sweep} {
		side := 1.0
		if arm == c.from {
			side = -1
		}
		for i, out := range []float64{0, 2, 4, 7} {
			n := way(arm + side*math.Pi/2)
			p := c.at.add(way(arm).times(r + d.mm(out))).add(n.times(l.reach(n) + d.mm(0.9)))
			at := l.spotAt(p, costOff+i*15, c.at)
			at.lost = true
			spots = append(spots, at)
		}
	}
	return spots
}

// farOut is so many millimetres beyond the nearest place that is clear of the arms that
// the size of an angle is no longer looked for there.
const farOut = 10

// outs are the distances from the arc of an angle at which its label is tried, among
// them the nearest.
func (d *drawing) outs(nearest float64) []float64 {
	list := []float64{nearest}
	for _, out := range []float64{arcToText, 1.3, 1.8, 2.4, 3.2, 4.2, 5.5, 7, 9, 12, 15, 19} {
		list = append(list, d.mm(out))
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// shut tells whether a straight that is not faint lies between the vertex and p: what
// stands beyond it is not read as the size of the angle.
func (d *drawing) shut(vertex, p vec) bool {
	way, found := segment{vertex, p}, false
	d.ground.near(way.bounds(), func(o *obstacle) bool {
		g, ok := o.shape.(segment)
		found = ok && o.weight != costMark && !o.thin && g.dist(vertex) > touching && g.parts(vertex, p) && way.parts(g.a, g.b)
		return !found
	})
	return found
}

// wholesOf are the marks of wider angles, of which own is that of a part, beyond it.
func (d *drawing) wholesOf(own band) []band {
	var list []band
	for _, b := range d.bands {
		if b.group >= 0 && b.holds(own.corner) && b.lo > own.hi && len(list) < mostBands {
			list = append(list, b)
		}
	}
	return list
}

// beyond tells whether words so far from the vertex lie beyond one of the marks, where
// they would be read as the size of the whole.
func beyond(wholes []band, far float64) bool {
	return slices.ContainsFunc(wholes, func(b band) bool { return far > b.lo })
}

// mostBands bounds the marks of one vertex that are looked at.
const mostBands = 60

// otherBands are the marks of narrower angles at the vertex of c beyond which
// words would be read as their size. Those within the mark of c itself are not.
func (d *drawing) otherBands(c corner) []band {
	own, _ := d.bandOf(c)
	var list []band
	for _, b := range d.bands {
		if b.at == c.at && !b.same(c) && b.sweep < c.sweep && b.lo >= own.lo && len(list) < mostBands {
			list = append(list, b)
		}
	}
	return list
}

// doubt is what it costs to stand at w from the vertex, with the marks of other
// angles there.
func doubt(others []band, w vec) int {
	for _, b := range others {
		if turn(w.angle()-b.from) <= b.sweep && w.len() > b.lo {
			return costWithin
		}
	}
	return 0
}
