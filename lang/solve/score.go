package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
)

// good is the badness under which a choice is left as it is.
const good = 0.12

// badness adds up what a typesetter would object to in what the steps made:
// flat crossings, points and openings that are nearly alike, things out of all
// proportion. Floats choose here; nothing is decided by them.
func (s *search) badness(steps []int) float64 {
	sum := 0.0
	for _, i := range steps {
		for _, sine := range s.sines[i] {
			sum += flatness(sine)
		}
	}
	mine := map[int]bool{}
	for _, i := range steps {
		for _, slot := range s.writes[i] {
			mine[slot] = true
		}
	}
	return sum + s.crowding(mine) + s.likeness(mine) + s.thinness(mine) + s.grazing(mine)
}

// flatness objects to crossings under 45°, and strongly under 30°.
func flatness(sine float64) float64 {
	switch {
	case sine < 0.5:
		return 0.6 + 4*(0.5-sine)
	case sine < 0.75:
		return (0.75 - sine) * 2
	}
	return 0
}

// place is a point, as floats, and its slot.
type place struct {
	x, y float64
	slot int
}

// places are the points that are there, or those of some slots.
func (s *search) places(of map[int]bool) []place {
	var out []place
	for slot, v := range s.st.Values {
		p, ok := v.(geom.Point)
		if sl := s.p.Slots[slot]; ok && sl.Ink != nil && !sl.Aside && (of == nil || of[slot]) {
			out = append(out, place{p.X.Float(), p.Y.Float(), slot})
		}
	}
	return out
}

func spread(pts []place) float64 {
	if len(pts) == 0 {
		return 0
	}
	lo, hi := pts[0], pts[0]
	for _, p := range pts {
		lo.x, lo.y = min(lo.x, p.x), min(lo.y, p.y)
		hi.x, hi.y = max(hi.x, p.x), max(hi.y, p.y)
	}
	return math.Hypot(hi.x-lo.x, hi.y-lo.y)
}

// crowding objects to points that are near each other, to accidental meetings
// of points that hang on different choices, and to a figure that grows too
// large for what was there.
func (s *search) crowding(mine map[int]bool) float64 {
	all := s.places(nil)
	size := spread(all)
	var rest []place
	for _, p := range all {
		if !mine[p.slot] {
			rest = append(rest, p)
		}
	}
	sum := s.oversize(size)
	if was := spread(rest); len(rest) > 1 && size > 1.15*was {
		sum += 0.35 * min(size/was-1.15, 4)
	}
	for _, p := range all {
		if !mine[p.slot] {
			continue
		}
		for _, q := range all {
			if q.slot == p.slot || mine[q.slot] && q.slot < p.slot {
				continue
			}
			near := s.nearness(p, q, size)
			if near != accident && (s.p.Slots[p.slot].Ink.Hidden || s.p.Slots[q.slot].Ink.Hidden) {
				near *= 0.4 // no letter has to stand there
			}
			sum += near
		}
	}
	return sum
}

// accident is what a meeting of points by chance costs.
const accident = 0.15

func (s *search) nearness(p, q place, size float64) float64 {
	d := math.Hypot(p.x-q.x, p.y-q.y) / size
	if d < 1e-9 {
		if slices.Equal(s.slotDeps[p.slot], s.slotDeps[q.slot]) {
			return 0 // one and the same, whatever is chosen
		}
		return accident
	}
	if d < 0.12 {
		return (0.12 - d) * 5
	}
	return 0
}

// likeness objects to openings that are nearly but not exactly, or only by
// accident, the same as others.
func (s *search) likeness(mine map[int]bool) float64 {
	sum := 0.0
	for slot := range s.p.Slots {
		if !mine[slot] {
			continue
		}
		r, ok := s.radius(slot)
		if !ok {
			continue
		}
		for other := range s.p.Slots {
			q, ok := s.radius(other)
			if !ok || other == slot || slices.Equal(s.slotDeps[slot], s.slotDeps[other]) {
				continue
			}
			switch ratio := math.Abs(r-q) / max(r, q); {
			case ratio < 1e-9:
				sum += 0.13
			case ratio < 0.08:
				sum += (0.08 - ratio) * 2
			}
		}
	}
	return sum
}

func (s *search) radius(slot int) (float64, bool) {
	c, ok := s.st.Values[slot].(*program.Curve)
	if !ok || c.Circle == nil {
		return 0, false
	}
	return math.Sqrt(c.Circle.R2.Float()), true
}

// join is a straight and its two points, by slots.
type join struct{ slot, a, b int }

// thinness objects to sharp corners between joins: of a triangle that is hardly one.
func (s *search) thinness(mine map[int]bool) float64 {
	var joins []join
	drawn := map[[2]int]bool{}
	for slot, sl := range s.p.Slots {
		if sl.Between != nil && sl.Ink != nil && !sl.Ink.Hidden && s.st.Values[slot] != nil && len(joins) < 40 {
			a, b := sl.Between[0], sl.Between[1]
			if !drawn[[2]int{a, b}] && !drawn[[2]int{b, a}] {
				drawn[[2]int{a, b}] = true
				joins = append(joins, join{slot, a, b})
			}
		}
	}
	sum := 0.0
	for i, j := range joins {
		for _, k := range joins[:i] {
			if mine[j.slot] || mine[k.slot] {
				sum += s.sharpness(j, k) + s.falseLikeness(j, k)
			}
		}
	}
	return sum
}

// sharpness grows as the corner that two joins share closes up.
func (s *search) sharpness(j, k join) float64 {
	corner, p, q := j.a, j.b, k.b
	switch {
	case j.a == k.a:
	case j.a == k.b:
		q = k.a
	case j.b == k.a:
		corner, p = j.b, j.a
	case j.b == k.b:
		corner, p, q = j.b, j.a, k.a
	default:
		return 0
	}
	v, ok1 := s.st.Values[corner].(geom.Point)
	a, ok2 := s.st.Values[p].(geom.Point)
	b, ok3 := s.st.Values[q].(geom.Point)
	if !ok1 || !ok2 || !ok3 {
		return 0
	}
	u, w := a.Sub(v), b.Sub(v)
	angle := math.Abs(math.Atan2(u.Cross(w).Float(), u.Dot(w).Float())) * 180 / math.Pi
	if angle > 1e-6 && angle < 24 {
		return (24 - angle) / 24
	}
	return 0
}

// falseLikeness objects to two joins that look equal, parallel or at right
// angles and are not.
func (s *search) falseLikeness(j, k join) float64 {
	u, ok1 := s.way(j)
	v, ok2 := s.way(k)
	if !ok1 || !ok2 {
		return 0
	}
	m, n := math.Hypot(u.x, u.y), math.Hypot(v.x, v.y)
	cross, dot := math.Abs(u.x*v.y-u.y*v.x)/(m*n), math.Abs(u.x*v.x+u.y*v.y)/(m*n)
	sum := 0.0
	for _, off := range []float64{math.Abs(m-n) / max(m, n), cross, dot} {
		if off > 1e-9 && off < 0.03 {
			sum += 0.13
		}
	}
	return sum
}

// way is a join from its first point to its second.
func (s *search) way(j join) (place, bool) {
	a, ok1 := s.st.Values[j.a].(geom.Point)
	b, ok2 := s.st.Values[j.b].(geom.Point)
	if !ok1 || !ok2 {
		return place{}, false
	}
	d := b.Sub(a)
	return place{x: d.X.Float(), y: d.Y.Float()}, true
}

// strangeness grows as an opening leaves the size that a plain hand would take.
func (s *search) strangeness(in int) float64 {
	input := s.p.Inputs[in]
	if input.Kind != program.Opening {
		return 0
	}
	plain, _ := new(big.Rat).Mul(input.Default, s.scale).Float64()
	now, _ := s.st.Inputs[in].Float64()
	return 0.03 * math.Abs(math.Log2(now/plain))
}

// oversize objects to a figure that would not go well on a page.
func (s *search) oversize(size float64) float64 {
	unit, _ := s.p.Unit.Float64()
	if mm := size * unit; mm > 150 {
		return min((mm-150)/80, 8)
	}
	return 0
}

// grazing objects to named points that lie close beside a given line.
func (s *search) grazing(mine map[int]bool) float64 {
	pts := s.places(mine)
	size := spread(s.places(nil))
	sum := 0.0
	for slot, v := range s.st.Values {
		c, ok := v.(*program.Curve)
		if !ok || c.Straight == nil || s.p.Slots[slot].Ink == nil || s.p.Slots[slot].Ink.Role != figure.Given {
			continue
		}
		l := c.Line()
		dx, dy, x, y := l.D.X.Float(), l.D.Y.Float(), l.P.X.Float(), l.P.Y.Float()
		for _, p := range pts {
			if s.p.Slots[p.slot].Ink.Hidden {
				continue
			}
			d := math.Abs(dx*(p.y-y)-dy*(p.x-x)) / math.Hypot(dx, dy) / size
			if d > 1e-9 && d < 0.1 {
				sum += (0.1 - d) * 3
			}
		}
	}
	return sum
}
