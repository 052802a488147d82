package solve

import (
	"math"
	"slices"

	"trammel/lang/program"
)

// seat is a point on a circle, and the input that leaves it to chance.
type seat struct {
	*search
	in, ring, dot int
}

// What a plain hand leaves between points on a circle, in degrees: it looks for another
// place where its habit leaves less than narrow, and less than half of an even share, tries
// some all round, and keeps off places across from a point by so much.
const (
	narrow = 40
	apart  = 15
	across = 12
)

// sweep is how far round an arc that is struck is drawn on to the next of its points, in degrees.
const sweep = 60

// spread brings a point that is left to chance on a circle to where most of it is free, if
// the place that it has by habit is too near to others.
func (s *search) spread(in int) {
	at, ok := s.seat(in)
	if !ok {
		return
	}
	if s.sight.seats[at.dot] = true; at.clear() {
		return
	}
	step := s.p.Inputs[in].Step
	v, most := s.plain[in], at.room()
	for x := 7.0; x < 360; x += apart {
		s.st.Inputs[in] = degrees(x)
		s.unmake(step)
		if s.perform(step); !s.went(step) {
			continue
		}
		if room := at.room(); room > most {
			v, most = s.st.Inputs[in], room
		}
	}
	s.take(in, v)
	s.redo(s.effects(in, len(s.p.Steps)))
}

// seat is that of an input; false if it puts no point on a circle that is drawn.
func (s *search) seat(in int) (at seat, ok bool) {
	step := s.p.Inputs[in].Step
	if s.p.Inputs[in].Kind != program.Bearing || s.errs[step] != nil || len(s.writes[step]) != 1 {
		return at, false
	}
	dot := s.writes[step][0]
	for _, slot := range s.known[step].reads {
		if o, t := &s.sight.slots[slot], &s.sight.slots[dot]; o.kind == circle && t.kind == point && t.on(o) {
			return seat{s, in, slot, dot}, true
		}
	}
	return at, false
}

// on tells whether a point is on a circle.
func (t *thing) on(o *thing) bool { return same(math.Hypot(t.x-o.x, t.y-o.y), o.r) }

// clear tells whether the point is not too near to others, and on an arc not off what is drawn.
func (at seat) clear() bool {
	n := at.neighbours()
	if at.strays(n) {
		return false
	}
	share := n.count + 1
	if r := at.p.Inputs[at.in].Round; r != nil {
		share = max(share, r.Points)
	}
	return min(n.left, n.right) >= min(narrow, 180/float64(share))
}

// strays tells whether a point on an arc is far from all others: it would stand alone.
func (at seat) strays(n neighbours) bool {
	return at.sight.slots[at.ring].struck && n.count > 0 && min(n.left, n.right) > sweep
}

// room is how good the place is: in the widest gap between the others, but plainly not in the
// middle of it, and rather above than below. On an arc it is best where that is drawn anyway.
func (at seat) room() float64 {
	o, t, n := &at.sight.slots[at.ring], &at.sight.slots[at.dot], at.neighbours()
	switch {
	case at.strays(n):
		return -min(n.left, n.right)
	case o.struck && n.count > 0:
		room := min(0.6*n.left, n.right)
		if n.left+n.right <= 2*sweep {
			room += 360
		}
		return room
	}
	return min(0.6*n.left, n.right) - max(0, across-n.facing) + 3*(t.y-o.y)/o.r
}

// neighbours tells of the other points on a circle that do not follow one: how many they
// are, how far it is to the next one either way, and how far one is from being across, in
// degrees.
type neighbours struct {
	count               int
	left, right, facing float64
}

func (at seat) neighbours() neighbours {
	o := &at.sight.slots[at.ring]
	bearing := func(p *thing) float64 { return math.Atan2(p.y-o.y, p.x-o.x) * 180 / math.Pi }
	n, here := neighbours{left: 360, right: 360, facing: 180}, bearing(&at.sight.slots[at.dot])
	for _, slot := range at.sight.points {
		p := &at.sight.slots[slot]
		if _, follows := slices.BinarySearch(at.slotDeps[slot], at.in); follows || p.kind != point || p.hidden || !p.on(o) {
			continue
		}
		way := math.Mod(bearing(p)-here+360, 360)
		n.count++
		n.left, n.right, n.facing = min(n.left, way), min(n.right, 360-way), min(n.facing, math.Abs(way-180))
	}
	return n
}
