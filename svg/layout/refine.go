package layout

import (
	"cmp"
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
	l.spots = append(l.spots, d.clearest(l, fine)...)
}

// clearest are the clear ones among spots that cost least, so many as are kept. What a
// spot costs by itself is a lower bound, so most need not be looked at.
func (d *drawing) clearest(l *label, spots []spot) []spot {
	order := make([]int, len(spots))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Or(spots[i].cost-spots[j].cost, i-j) })
	var found []spot
	for _, i := range order {
		s := spots[i]
		full := len(found) == fineKept
		if full && s.cost >= found[fineKept-1].cost {
			break
		}
		if !d.bare(&s) {
			continue
		}
		if d.price(l, &s); !s.clear() {
			continue
		}
		if full {
			found = found[:fineKept-1]
		}
		at, _ := slices.BinarySearchFunc(found, s.cost+1, func(f spot, cost int) int { return f.cost - cost })
		found = slices.Insert(found, at, s)
	}
	return found
}

// bare tells that no ink is under the spot.
func (d *drawing) bare(s *spot) bool {
	bare, under := true, s.grow(d.least(clearInk))
	d.ground.near(under, func(o *obstacle) bool {
		bare = !o.within(under)
		return bare
	})
	return bare
}

// fineAround are the spots round a point.
func (d *drawing) fineAround(l *label) []spot {
	ways := waysFrom(d.raysAt(l.home), 0, 2*directions)
	var spots []spot
	for gap := pointGaps[1].gap; gap < fineMost; gap += fineStep {
		for _, w := range ways {
			spots = append(spots, l.spotTo(w, d.mm(gap), price(costFar*max(0, gap-pointGaps[0].gap))))
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
