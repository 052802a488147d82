package check

import (
	"fmt"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// hand follows the compasses and the straightedge through the acts, inner ones
// too, and counts their operations. It knows which openings are equal, as far
// as the acts themselves make them so.
type hand struct {
	count   program.Operations
	opening int  // the class of the opening between the legs; -1: none yet
	kept    bool // the last swing had the opening of the one before
	needle  int  // the point where the needle stands, -1: none
	classes []int
	lengths map[pair]int // classes of distances
	circles map[int]int  // classes of the radii of circles
	others  map[string]int
	same    map[int]int     // slots that are other names of a slot
	free    map[int]freedom // points taken anywhere and not yet used
	drawn   map[pair]int    // how far the straight between two points reaches
}

// freedom is how loosely a point was chosen: the first to use it need not aim.
type freedom uint8

const (
	aimed freedom = iota
	onLine
	anywhere
)

func newHand() *hand {
	return &hand{
		opening: -1, needle: -1,
		lengths: map[pair]int{}, circles: map[int]int{}, others: map[string]int{},
		same: map[int]int{}, free: map[int]freedom{}, drawn: map[pair]int{},
	}
}

// class is a new class of equal lengths.
func (h *hand) class() int {
	h.classes = append(h.classes, len(h.classes))
	return len(h.classes) - 1
}

// find is the class that a class has been made one with.
func (h *hand) find(c int) int {
	for h.classes[c] != c {
		h.classes[c] = h.classes[h.classes[c]] // so that no chain grows long
		c = h.classes[c]
	}
	return c
}

// point is the first name of a point that has several.
func (h *hand) point(slot int) int {
	for {
		first, ok := h.same[slot]
		if !ok {
			return slot
		}
		slot = first
	}
}

func (h *hand) pair(a, b int) pair { return pairOf(h.point(a), h.point(b)) }

// distance is the class of the distance between two points.
func (h *hand) distance(a, b int) int {
	k := h.pair(a, b)
	if _, ok := h.lengths[k]; !ok {
		h.lengths[k] = h.class()
	}
	return h.find(h.lengths[k])
}

// known is the class of a distance that an act has drawn as a radius.
func (h *hand) known(ends []int) (int, bool) {
	if len(ends) != 2 {
		return 0, false
	}
	c, ok := h.lengths[h.pair(ends[0], ends[1])]
	if !ok {
		return 0, false
	}
	return h.find(c), true
}

// equal makes two classes one.
func (h *hand) equal(a, b int) { h.classes[h.find(a)] = h.find(b) }

// met notes that a point lies on a circle: its distance from the centre is the radius.
func (h *hand) met(circle, centre, point int) {
	if centre >= 0 {
		h.equal(h.distance(centre, point), h.radius(circle))
	}
}

// aim is what it costs to set a leg or an edge on a point for the first time.
func (h *hand) aim(point int) freedom {
	point = h.point(point)
	f := h.free[point]
	delete(h.free, point)
	return f
}

// leg sets a leg of the compasses on a point: C1, or C2 on any point of a line.
func (h *hand) leg(point int) {
	switch h.aim(point) {
	case aimed:
		h.count.C1++
	case onLine:
		h.count.C2++
	}
}

// stand puts the needle on a point.
func (h *hand) stand(point int) {
	if point = h.point(point); h.needle != point {
		h.leg(point)
		h.needle = point
	}
}

// span takes the distance of two points between the legs; the needle ends on
// the first.
func (h *hand) span(a, b int) {
	if h.needle == h.point(b) {
		a, b = b, a
	}
	h.stand(a)
	h.leg(b)
}

// swing draws a circle about a centre with the opening that is there.
func (h *hand) swing(centre int) {
	h.stand(centre)
	h.count.C3++
}

// rule draws a straight through two points: R1 for each, and R2.
func (h *hand) rule(a, b, reach int) {
	old := h.drawn[h.pair(a, b)]
	if old >= reach || old > 0 && reach < reachLine {
		return
	}
	for _, p := range []int{a, b} {
		if h.aim(p) == aimed {
			h.count.R1++
		}
	}
	h.count.R2++
}

// ruled notes how far the straight between two points reaches.
func (h *hand) ruled(a, b, reach int) {
	k := h.pair(a, b)
	h.drawn[k] = max(h.drawn[k], reach)
}

// opens sets the compasses for an opening about a centre, and gives its class.
func (s *scope) opens(o *syntax.Opening, centre int) int {
	h := s.c.hand
	class, take := s.openingOf(o, centre)
	h.kept = h.opening >= 0 && h.find(h.opening) == h.find(class)
	if !h.kept {
		take()
	}
	h.opening = class
	return class
}

// openingOf is the class of an opening, and how the hand takes it.
func (s *scope) openingOf(o *syntax.Opening, centre int) (class int, take func()) {
	h := s.c.hand
	if o.Any {
		return h.class(), func() {}
	}
	if o.Through != nil {
		p, _ := s.point(o.Through)
		return h.distance(centre, p), func() { h.span(centre, p) }
	}
	r := plainExpr(o.Radius)
	twice := func() { h.count.C1 += 2; h.needle = -1 }
	switch {
	case r != nil && r.Name == "":
		ps, _ := s.letters1(r).(program.Letters)
		if len(ps) == 2 {
			a, b := ps[0], ps[1]
			if h.point(b) == h.point(centre) {
				a, b = b, a
			}
			return h.distance(a, b), func() { h.span(a, b) }
		}
	case r != nil:
		name, _ := s.indexed(r.Name, r.Index)
		if slot, ok := s.names[name]; ok && s.slot(slot).Kind == program.Circle {
			return h.radius(slot), twice
		}
	}
	if r == nil && bareNumber(o.Radius) == nil {
		h.count.Beyond++
	}
	key := fmt.Sprintf("%d %s", s.first, s.span(o.Radius.Node).Text())
	if _, ok := h.others[key]; !ok {
		h.others[key] = h.class()
	}
	return h.others[key], twice
}

// radius is the class of a circle's radius.
func (h *hand) radius(circle int) int {
	circle = h.point(circle)
	if _, ok := h.circles[circle]; !ok {
		h.circles[circle] = h.class()
	}
	return h.circles[circle]
}

// chosen notes how a point is taken on the way: loosely, or measured off.
func (s *scope) chosen(p *syntax.PlacedPoint, slot int) {
	h := s.c.hand
	freed := anywhere
	for _, place := range p.Places {
		switch {
		case place.Distance != nil || place.OnAngle != nil:
			h.count.Beyond++
			freed = aimed
		case place.Centre != nil:
			freed = aimed
		case place.On != nil && freed == anywhere:
			freed = onLine
		}
	}
	if p.At == nil && freed != aimed {
		h.free[slot] = freed
	}
}

// lies notes the circles that a point is put on.
func (s *scope) lies(p *syntax.PlacedPoint, slot int) {
	for _, place := range p.Places {
		if place.On == nil || place.On.Name == "" {
			continue
		}
		if c, ok := s.curveName(place.On).(program.CurveName); ok && s.slot(int(c)).Kind == program.Circle {
			s.c.hand.met(int(c), s.centre(int(c)), slot)
		}
	}
}

// swings draws the circle of a slot by hand, from a point to another if it is a
// part arc.
func (s *scope) swings(slot int, o *syntax.Opening, centre int, ends *[2]int) {
	if ends != nil {
		s.swingsPart(slot, centre, ends)
		return
	}
	class := s.opens(o, centre)
	s.c.hand.circles[slot] = class
	s.c.hand.swing(centre)
	if o.Through != nil {
		if p, ok := s.point(o.Through); ok {
			s.c.hand.met(slot, centre, p)
		}
	}
}

// swingsPart opens the compasses from the centre to the start of a part arc.
func (s *scope) swingsPart(slot, centre int, ends *[2]int) {
	h := s.c.hand
	class := h.distance(centre, ends[0])
	if h.kept = h.opening >= 0 && h.find(h.opening) == h.find(class); !h.kept {
		h.span(centre, ends[0])
	}
	h.opening = class
	h.circles[slot] = class
	h.swing(centre)
	h.met(slot, centre, ends[1])
}
