package layout

import "sort"

// What touching costs. A spot whose cost reaches costTouch is a bad one.
const (
	costTouch   = 1000 // black ink; dashes are five sixths, grey two thirds
	costMark    = 1200
	costDot     = 2000
	costSign    = 170 // a mark beside a length
	costTight   = 90  // ink within the tight distance
	costNear    = 30  // ink within the comfortable one
	costLost    = 800 // another thing is nearer than one's own
	costAcross  = 680 // a heavy straight is between it and its point; a faint one would rather be cut
	costFarther = 300 // for each millimetre that it is nearer
	costDoubt   = 200 // or all but as near
	costLabels  = 4000
	costClose   = 60  // labels closer than a letter apart
	costWord    = 400 // and those on one line, closer than two words
	costMixed   = 150 // a length nearer to another label than to its own middle
)

// Distances in millimetres that a label keeps.
const (
	clearInk     = 0.3 // from ink, at least
	tightInk     = 0.55
	comfortInk   = 0.9
	signInk      = 1.8 // of a length from a mark, which beside a number looks like a minus sign
	clearLabel   = 0.5 // from another label, at least
	comfortLabel = 1.6
	noteApart    = 5   // of a note from one on the same line
	wordApart    = 2   // from one on the same line, lest the two be read as one word
	nearer       = 0.7 // by which a label should be nearer to its own
)

// least is a distance that must be kept, in this theme.
func (d *drawing) least(n float64) float64 { return max(d.mm(n), d.theme.gap) }

// maxPairs bounds the pairs that are tried together.
const maxPairs = 400

// placeLabels chooses a spot for every label: the most constrained first, each
// where it costs least; then each in turn moves to its best answer to the
// others until none wants to; then pairs that still suffer move together.
// Nothing is left to chance, and ties go by the order of the source.
func (d *drawing) placeLabels() {
	d.priceSpots()
	d.findRivals()
	for _, l := range d.constrainedFirst() {
		l.at = d.best(l)
	}
	d.settle()
	for left := maxPairs; left > 0 && d.movePairs(&left); {
		d.settle()
	}
	for _, l := range d.labels {
		s := l.spots[l.at]
		l.text.At = s.lo.sub(l.ink.lo).xy()
		d.texts = append(d.texts, l.text)
	}
}

// lay makes the grid of what is inked; marks enter it as they are drawn.
func (d *drawing) lay() {
	var all []obstacle
	for i := range d.strokes {
		all = append(all, d.obstacle(i))
	}
	for i, o := range d.dots {
		all = append(all, obstacle{o.disc, 0, costDot, false, -1, i})
	}
	d.ground = newGrid(all)
}

// obstacle is a stroke as what labels keep clear of.
func (d *drawing) obstacle(i int) obstacle {
	s := d.strokes[i]
	switch s.layer {
	case markLayer:
		return obstacle{s.curve, s.half(), costMark, false, i, -1}
	case constructionLayer:
		return obstacle{s.curve, s.half(), costTouch * 2 / 3, true, i, -1}
	}
	if s.dashed {
		return obstacle{s.curve, s.half(), costTouch * 5 / 6, false, i, -1}
	}
	return obstacle{s.curve, s.half(), costTouch, false, i, -1}
}

// priceSpots adds to each spot what the ink about it costs.
func (d *drawing) priceSpots() {
	for _, l := range d.labels {
		for i := range l.spots {
			d.price(l, &l.spots[i])
		}
		d.refine(l)
	}
}

// hopeless is a cost at which a spot is not looked at further.
const hopeless = 12 * costTouch

func (d *drawing) price(l *label, s *spot) {
	if !l.round {
		s.own = l.away(s.box)
	}
	s.line = d.mm(wordApart)
	if l.note() {
		s.line = d.mm(noteApart)
	}
	s.reach = d.mm(wordApart)
	if l.middle {
		s.reach = max(s.reach, s.own)
	}
	about := s.grow(max(d.mm(signInk), s.own+max(d.mm(nearer), s.own/4)))
	d.ground.near(about, func(o *obstacle) bool {
		if o.within(about) {
			s.cost += d.strange(l, s, o) + d.inTheWay(l, s, o)
		}
		return s.cost < hopeless
	})
}

// inTheWay is what it costs that ink lies under the label at s, or close by.
func (d *drawing) inTheWay(l *label, s *spot, o *obstacle) int {
	switch {
	case s.broken && l.runsAlong(o):
		return 0
	case o.within(s.grow(d.least(clearInk))):
		if o.thin {
			s.thin++
		} else {
			s.hits++
		}
		return o.weight
	case l.middle && o.weight == costMark && o.within(s.grow(d.mm(signInk))):
		return costSign
	case d.owns(l, o):
		return 0
	case o.within(s.grow(d.mm(tightInk))):
		return costTight
	case o.within(s.grow(d.mm(comfortInk))):
		return costNear
	}
	return 0
}

// runsAlong tells that o is ink of the segment that l belongs to, or of its line.
func (l *label) runsAlong(o *obstacle) bool {
	g, ok := o.shape.(segment)
	return ok && o.weight != costMark && l.whole.along(g)
}

// away is how far a box is from what the label belongs to.
func (l *label) away(b box) float64 {
	switch {
	case l.pointed:
		return l.from(l.home, b)
	case l.base != nil:
		return l.off(*l.base, b)
	case l.arc != nil:
		return l.off(*l.arc, b)
	}
	return 0
}

// strange is what it costs that the label at s would be read as that of o: of
// another point, or of another line that is not fainter than its own.
func (d *drawing) strange(l *label, s *spot, o *obstacle) int {
	switch {
	case d.owns(l, o) || o.thin && !l.round && !l.faint:
		return 0
	case l.pointed && o.dot >= 0 && d.dots[o.dot].c != l.home:
		switch far, near := l.within(d.dots[o.dot].c, s.box, s.own+max(d.mm(nearer), s.own/4)); {
		case !near:
			return 0
		case far <= s.own:
			s.lost = true
			return costLost + price(costFarther*(s.own-far)/mm)
		}
		return costDoubt
	case l.pointed && l.owner != nil && o.stroke >= 0 && !o.thin:
		if g, ok := o.shape.(segment); ok && o.weight != costMark && d.across(l, g, s) {
			s.across = true
			return costAcross
		}
	case l.arc != nil:
		if a, ok := o.shape.(arc); ok && o.weight == costMark && a.c != l.arc.c && l.off(a, s.box) < s.own {
			s.lost = true
			return costLost
		}
	case l.round && o.stroke >= 0 && d.strokes[o.stroke].layer != markLayer:
		switch {
		case o.touches(s.grow(s.own)):
			return 2 * costLost
		case o.touches(s.grow(s.own + d.mm(nearer)/2)):
			return costDoubt
		}
	case l.base != nil && o.stroke >= 0 && d.strokes[o.stroke].layer != markLayer:
		g, ok := o.shape.(segment)
		if ok && l.base.along(g) || !o.touches(s.grow(s.own+d.mm(nearer)/2)) {
			return 0
		}
		switch far := l.off(o.shape, s.box); {
		case o.thin && o.touches(s.box) && s.own < d.mm(1.1*sideGaps[0].gap): // it will be broken there
			return costDoubt
		case far > s.own+d.mm(nearer)/2:
			return 0
		case far > s.own:
			return costDoubt
		case far > s.own-d.mm(nearer) && !l.middle:
			return 2 * costMixed
		}
		s.lost = true
		return costLost
	}
	return 0
}

// across tells whether a straight that does not go through the dot of a point lies between
// it and the words at s, which would be read as those of a point beyond it.
func (d *drawing) across(l *label, g segment, s *spot) bool {
	to := segment{l.home, s.centre()}
	return g.parts(to.a, to.b) && to.parts(g.a, g.b) && g.dist(l.home) > d.theme.dot
}

// owns tells whether the label belongs to the obstacle.
func (d *drawing) owns(l *label, o *obstacle) bool {
	if l.owner == nil {
		return false
	}
	return o.dot >= 0 && d.dots[o.dot].owner == l.owner || o.stroke >= 0 && d.strokes[o.stroke].owner == l.owner
}

// unplaced is where a label is before it has a spot.
const unplaced = -1

// mostRivals and mostEffort bound the search on a sheet where hundreds of
// labels want the same place: none of them will be read.
const (
	mostRivals = 250
	mostEffort = 30e6 // comparisons of two labels
)

// findRivals tells each label which others may get in its way.
func (d *drawing) findRivals() {
	room := make([]box, len(d.labels))
	for i, l := range d.labels {
		l.at = unplaced
		room[i] = nowhere
		for _, s := range l.spots {
			room[i] = room[i].union(s.grow(max(s.reach, s.line)))
		}
	}
	for i, l := range d.labels {
		for j, o := range d.labels {
			if i != j && room[i].overlaps(room[j]) && len(l.rivals) < mostRivals {
				l.rivals = append(l.rivals, o)
			}
		}
	}
}

// constrainedFirst orders the labels by how few good spots they have.
func (d *drawing) constrainedFirst() []*label {
	order := append([]*label(nil), d.labels...)
	good := make(map[*label]int, len(order))
	for _, l := range order {
		for _, s := range l.spots {
			if s.hits+s.thin == 0 {
				good[l]++
			}
		}
	}
	sort.SliceStable(order, func(i, j int) bool { return good[order[i]] < good[order[j]] })
	return order
}

// clash is what two labels at these spots cost each other.
func (d *drawing) clash(a, b *spot) int {
	reach, line, cost := max(a.reach, b.reach), max(a.line, b.line), 0
	switch {
	case !a.grow(max(reach, line)).overlaps(b.box):
		return 0
	case a.grow(d.least(clearLabel)).overlaps(b.box):
		return costLabels
	case a.level(b.box) && a.grow(line).overlaps(b.box):
		cost = costWord
	case a.grow(d.mm(comfortLabel)).overlaps(b.box):
		cost = costClose
	}
	if reach > d.mm(wordApart) && a.grow(reach).overlaps(b.box) {
		cost += costMixed
	}
	return cost
}

// total is what l at its spot i costs among its rivals, leaving out one.
func (d *drawing) total(l *label, i int, but *label) int {
	cost := l.spots[i].cost
	d.effort += len(l.rivals)
	for _, o := range l.rivals {
		if o != but && o.at != unplaced {
			cost += d.clash(&l.spots[i], &o.spots[o.at])
		}
	}
	return cost
}

// best is the spot where l costs least as the others stand.
func (d *drawing) best(l *label) int {
	best, least := max(l.at, 0), 0
	least = d.total(l, best, nil)
	for i := range l.spots {
		if d.effort > mostEffort {
			break
		}
		if l.spots[i].cost >= least {
			continue
		}
		if cost := d.total(l, i, nil); cost < least {
			best, least = i, cost
		}
	}
	return best
}

// settle lets each label answer the others in turn. The sum of all costs falls
// with every move, so it ends; the bound keeps it short.
func (d *drawing) settle() {
	for range 20 {
		moved := false
		for _, l := range d.labels {
			if best := d.best(l); best != l.at {
				l.at, moved = best, true
			}
		}
		if !moved || d.effort > mostEffort {
			return
		}
	}
}

// movePairs moves a label that suffers together with a rival, where the two
// gain by it, and tells whether any did. Left counts the pairs that may still
// be tried.
func (d *drawing) movePairs(left *int) bool {
	moved := false
	for _, l := range d.labels {
		for _, o := range l.rivals {
			if d.total(l, l.at, nil) < costTouch/2 {
				break
			}
			if *left--; *left < 0 || d.effort > mostEffort {
				return moved
			}
			moved = d.movePair(l, o) || moved
		}
	}
	return moved
}

func (d *drawing) movePair(l, o *label) bool {
	costL, costO := d.totals(l, o), d.totals(o, l)
	i, j := l.at, o.at
	least := costL[i] + costO[j] + d.clash(&l.spots[i], &o.spots[j])
	for a := range costL {
		for b := range costO {
			if costL[a]+costO[b] >= least {
				continue
			}
			if c := costL[a] + costO[b] + d.clash(&l.spots[a], &o.spots[b]); c < least {
				least, i, j = c, a, b
			}
		}
	}
	moved := i != l.at || j != o.at
	l.at, o.at = i, j
	return moved
}

// totals are the costs of all spots of l, whatever one rival does.
func (d *drawing) totals(l, but *label) []int {
	costs := make([]int, len(l.spots))
	for i := range costs {
		costs[i] = d.total(l, i, but)
	}
	return costs
}
