package layout

import (
	"math"
	"slices"
)

// Where few of a label's spots are good, those between them are tried too, and
// the best are kept: round a point twice as many ways and so many millimetres
// apart, beside a stretch at so many places.
const (
	fewGood     = 8
	costGood    = 300
	fineStep    = 0.35
	fineMost    = 8.0
	fineNearest = 0.75 // beside a stretch
	fineParts   = 40
	fineKept    = 40
)

// refine adds the clear spots between those of a label that has few.
func (d *drawing) refine(l *label) {
	var fine []spot
	switch {
	case l.good() >= fewGood:
		return
	case l.middle && !l.pinned:
		fine = d.fineBeside(l)
	case l.pointed && l.owner != nil && !l.pinned:
		fine = d.fineAround(l)
	}
	var found []spot
	for _, s := range fine {
		if d.price(l, &s); s.clear() {
			found = append(found, s)
		}
	}
	slices.SortStableFunc(found, func(a, b spot) int { return a.cost - b.cost })
	l.spots = append(l.spots, found[:min(len(found), fineKept)]...)
}

// fineAround are the spots round a point.
func (d *drawing) fineAround(l *label) []spot {
	rays := d.raysAt(l.home)
	var spots []spot
	for gap := pointGaps[1].gap; gap < fineMost; gap += fineStep {
		for i := range 2 * directions {
			w := float64(i) * fullway / (2 * directions)
			spots = append(spots, d.pointSpot(l, w, gap, price(costFar*max(0, gap-pointGaps[0].gap))+comfort(rays, w)))
		}
	}
	return spots
}

// fineBeside are the spots along the middle of a stretch.
func (d *drawing) fineBeside(l *label) []spot {
	s := l.whole
	sides := d.sides(s.a, s.b)
	u := s.a.to(s.b)
	var spots []spot
	for i := 1; i < fineParts; i++ {
		part := float64(i) / fineParts
		p := s.a.add(s.b.sub(s.a).times(part))
		for j, n := range [2]vec{u.left(), u.left().times(-1)} {
			for gap := fineNearest; gap < sideGaps[3].gap; gap += fineStep {
				cost := costShift*math.Abs(part-0.5) + sides[j] + costFar*math.Abs(gap-sideGaps[0].gap)
				spot := l.spotAt(p.add(n.times(l.reach(n)+d.mm(gap))), price(cost), p)
				spot.own = d.mm(gap)
				spots = append(spots, spot)
			}
		}
	}
	return spots
}

// clear tells that nothing is under the spot, and no other thing nearer.
func (s *spot) clear() bool { return s.hits+s.thin == 0 && !s.lost }

// good counts the clear spots that are no farther than is customary.
func (l *label) good() int {
	n := 0
	for i := range l.spots {
		if s := &l.spots[i]; s.clear() && s.cost < costGood {
			n++
		}
	}
	return n
}
