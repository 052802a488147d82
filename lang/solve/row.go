package solve

import "math"

// row is where the things of one kind are, close together: each is compared with all others
// again and again, and hardly any are near.
type row struct {
	spots []spot
	made  int // none from here on has been there yet
}

// spot is where a thing is: of a circle u is the radius, of a straight u and v are its
// direction. What is not there is NaN, and so not near to anything.
type spot struct{ x, y, u, v float64 }

// home is a slot's place in a row.
type home struct {
	*row
	at int
}

// settle gives slots their places in a row.
func (s *sight) settle(r *row, slots []int) {
	r.spots = make([]spot, len(slots))
	for at, slot := range slots {
		r.spots[at].x = math.NaN()
		s.homes[slot] = home{r, at}
	}
}

// move notes where the thing of a slot is now.
func (s *sight) move(slot int) {
	h, t := s.homes[slot], &s.slots[slot]
	switch {
	case h.row == nil:
	case t.kind == nothing:
		h.spots[h.at].x = math.NaN()
	default:
		h.spots[h.at] = t.spot()
		h.made = max(h.made, h.at+1)
	}
}

// spot is where a thing is that is there.
func (t *thing) spot() spot {
	if t.kind == circle {
		return spot{t.x, t.y, t.r, 0}
	}
	return spot{t.x, t.y, t.dx, t.dy}
}

// there are the spots up to the last one that has been there.
func (r *row) there() []spot { return r.spots[:r.made] }

// off is how far a place lies from a straight.
func (l *spot) off(x, y float64) float64 { return math.Abs(l.u*(y-l.y) - l.v*(x-l.x)) }

// box is how far things reach; empty before anything was put into it.
type box struct{ left, right, low, high float64 }

func emptyBox() box { return box{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)} }

func (b *box) add(x, y float64) {
	b.left, b.right = min(b.left, x), max(b.right, x)
	b.low, b.high = min(b.low, y), max(b.high, y)
}

func (b *box) addCircle(t *thing) {
	b.add(t.x-t.r, t.y-t.r)
	b.add(t.x+t.r, t.y+t.r)
}

// size is the box's diagonal, 0 for an empty one.
func (b box) size() float64 {
	if b.left > b.right {
		return 0
	}
	return math.Hypot(b.right-b.left, b.high-b.low)
}

// boxOf holds the points and whole circles that are there and not a judge's, and tells how
// many the points are; of nobody's slots it holds all.
func (s *sight) boxOf(is []share) (b box, count int) {
	b = emptyBox()
	for k, p := range s.dots.there() {
		if p.x == p.x && (is == nil || is[s.points[k]] == notMine) {
			b.add(p.x, p.y)
			count++
		}
	}
	for k, c := range s.rings.there() {
		if t := &s.slots[s.circles[k]]; c.x == c.x && t.whole && (is == nil || is[s.circles[k]] == notMine) {
			b.addCircle(t)
		}
	}
	return b, count
}
