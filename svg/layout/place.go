package layout

import (
	"sort"
)

// What touching costs. A spot whose cost reaches costTouch is a bad one.
const (
	costTouch   = 1000 // black ink; grey is two thirds
	costMark    = 1200
	costDot     = 2000
	costNear    = 45 // ink within the clearance
	costForeign = 70 // another point is nearer than one's own
	costLabels  = 4000
	costClose   = 60 // labels closer than a letter apart
)

// Distances in millimetres that a label keeps.
const (
	clearInk    = 0.3 // from ink, at least
	comfortInk  = 0.8 // from ink, better
	clearLabel  = 0.5
	comfortable = 1.6
)

// placeLabels chooses a spot for every label: the most constrained first, each
// where it costs least; then each in turn moves to its best answer to the
// others until none wants to; then pairs that still suffer move together.
// Nothing is left to chance, and ties go by the order of the source.
func (d *drawing) placeLabels() {
	d.priceSpots()
	order := d.constrainedFirst()
	placed := make([]*label, 0, len(order))
	for _, l := range order {
		l.at = l.best(placed)
		placed = append(placed, l)
	}
	d.settle()
	for range 3 {
		if !d.movePairs() {
			break
		}
		d.settle()
	}
	for _, l := range d.labels {
		s := l.spots[l.at]
		l.text.At = s.lo.sub(l.ink.lo).xy()
		d.texts = append(d.texts, l.text)
	}
}

// obstacles is the ink that labels keep clear of.
func (d *drawing) obstacles() []obstacle {
	var all []obstacle
	for i, s := range d.strokes {
		weight := costTouch
		switch {
		case s.layer == markLayer:
			weight = costMark
		case s.layer == constructionLayer:
			weight = costTouch * 2 / 3
		}
		all = append(all, obstacle{s.curve, s.half(), weight, i, -1})
	}
	for i, o := range d.dots {
		all = append(all, obstacle{o.disc, 0, costDot, -1, i})
	}
	return all
}

// priceSpots adds to each spot what the ink about it costs.
func (d *drawing) priceSpots() {
	g := newGrid(d.obstacles())
	for _, l := range d.labels {
		for i := range l.spots {
			d.price(g, l, &l.spots[i])
		}
	}
}

func (d *drawing) price(g *grid, l *label, s *spot) {
	own := s.near(l.home)
	clear, comfort := d.mm(clearInk), d.mm(comfortInk)
	wide := comfort
	if l.pointed {
		wide = max(wide, own)
	}
	g.near(s.grow(wide+mm), func(o *obstacle) {
		switch {
		case o.touches(s.grow(clear + o.half)):
			s.cost += o.weight
			s.hits++
		case o.touches(s.grow(comfort+o.half)) && !d.owns(l, o):
			s.cost += costNear
		}
		if o.dot >= 0 && l.pointed && d.dots[o.dot].owner != l.owner && s.near(d.dots[o.dot].c) <= own {
			s.cost += costForeign
		}
	})
}

// owns tells whether the label belongs to the obstacle.
func (d *drawing) owns(l *label, o *obstacle) bool {
	if l.owner == nil {
		return false
	}
	return o.dot >= 0 && d.dots[o.dot].owner == l.owner || o.stroke >= 0 && d.strokes[o.stroke].owner == l.owner
}

// constrainedFirst orders the labels by how few good spots they have.
func (d *drawing) constrainedFirst() []*label {
	order := append([]*label(nil), d.labels...)
	good := make(map[*label]int, len(order))
	for _, l := range order {
		for _, s := range l.spots {
			if s.hits == 0 {
				good[l]++
			}
		}
	}
	sort.SliceStable(order, func(i, j int) bool { return good[order[i]] < good[order[j]] })
	return order
}

// clash is what two labels at these spots cost each other.
func clash(a, b box) int {
	switch {
	case !a.grow(comfortable * mm).overlaps(b):
		return 0
	case a.grow(clearLabel * mm).overlaps(b):
		return costLabels
	}
	return costClose
}

// total is what l at spot i costs among the others.
func (l *label) total(i int, others []*label) int {
	cost := l.spots[i].cost
	for _, o := range others {
		if o != l {
			cost += clash(l.spots[i].box, o.spots[o.at].box)
		}
	}
	return cost
}

func (l *label) best(others []*label) int {
	best, least := 0, l.total(0, others)
	for i := 1; i < len(l.spots); i++ {
		if l.spots[i].cost >= least {
			continue
		}
		if cost := l.total(i, others); cost < least {
			best, least = i, cost
		}
	}
	return best
}

// settle lets each label answer the others in turn. The sum of all costs falls
// with every move, so it ends.
func (d *drawing) settle() {
	for range 20 {
		moved := false
		for _, l := range d.labels {
			if best := l.best(d.labels); l.total(best, d.labels) < l.total(l.at, d.labels) {
				l.at, moved = best, true
			}
		}
		if !moved {
			return
		}
	}
}

// movePairs moves a label that suffers together with one in its way, where
// the two gain by it.
func (d *drawing) movePairs() bool {
	moved := false
	for _, l := range d.labels {
		if l.total(l.at, d.labels) < costTouch/2 {
			continue
		}
		for _, o := range d.labels {
			if o != l && l.range_().overlaps(o.range_()) && d.movePair(l, o) {
				moved = true
			}
		}
	}
	return moved
}

// range_ is all the paper that the label might take.
func (l *label) range_() box {
	b := nowhere
	for _, s := range l.spots {
		b = b.union(s.box)
	}
	return b
}

func (d *drawing) movePair(l, o *label) bool {
	others := make([]*label, 0, len(d.labels))
	for _, x := range d.labels {
		if x != l && x != o {
			others = append(others, x)
		}
	}
	costL, costO := l.totals(others), o.totals(others)
	li, oi := l.at, o.at
	least := costL[li] + costO[oi] + clash(l.spots[li].box, o.spots[oi].box)
	for i, a := range costL {
		for j, b := range costO {
			if a+b < least {
				if c := a + b + clash(l.spots[i].box, o.spots[j].box); c < least {
					least, li, oi = c, i, j
				}
			}
		}
	}
	moved := li != l.at || oi != o.at
	l.at, o.at = li, oi
	return moved
}

func (l *label) totals(others []*label) []int {
	costs := make([]int, len(l.spots))
	for i := range costs {
		costs[i] = l.total(i, others)
	}
	return costs
}
