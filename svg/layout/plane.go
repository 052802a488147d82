package layout

import (
	"math"

	"trammel/svg"
)

// vec is a place or a way on the paper in micrometres, Y down. Places are
// snapped to whole micrometres before ink is laid on them. Every product is
// rounded by itself, so that no processor may fuse it with the sum it enters.
type vec struct{ x, y float64 }

const (
	mm      = 1000.0
	fullway = 2 * math.Pi
)

func (a vec) add(b vec) vec           { return vec{a.x + b.x, a.y + b.y} }
func (a vec) sub(b vec) vec           { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(k float64) vec     { return vec{float64(a.x * k), float64(a.y * k)} }
func (a vec) dot(b vec) float64       { return float64(a.x*b.x) + float64(a.y*b.y) }
func (a vec) len() float64            { return math.Sqrt(a.dot(a)) }
func (a vec) dist(b vec) float64      { return a.sub(b).len() }
func (a vec) xy() svg.XY              { return svg.XY{X: whole(a.x), Y: whole(a.y)} }
func (a vec) snap() vec               { return vec{math.Round(a.x), math.Round(a.y)} }
func (a vec) mid(b vec) vec           { return a.add(b).times(0.5) }
func (a vec) to(b vec) vec            { return b.sub(a).unit() }
func whole(x float64) int             { return int(math.Round(x)) }
func clamp(x, lo, hi float64) float64 { return max(lo, min(x, hi)) }

// cross is positive where b lies to the left of a, as seen on the paper.
func (a vec) cross(b vec) float64 { return float64(a.y*b.x) - float64(a.x*b.y) }

// left is a turned a quarter anticlockwise, as seen on the paper.
func (a vec) left() vec { return vec{a.y, -a.x} }

// unit has the length 1; the way of a zero vec is to the right.
func (a vec) unit() vec {
	if l := a.len(); l > 0 {
		return vec{a.x / l, a.y / l}
	}
	return vec{1, 0}
}

// angle counts anticlockwise from the right, from 0 to below a full turn.
func (a vec) angle() float64 { return turn(math.Atan2(-a.y, a.x)) }

// way is the unit vec at an angle counted like vec.angle.
//
// It is kept to 12 places, which rights the ways along the axes and drops what
// processors may disagree on.
func way(angle float64) vec {
	const places = 1e12
	return vec{math.Round(math.Cos(angle)*places) / places, math.Round(-math.Sin(angle)*places) / places}
}

// turn brings an angle into [0, 2π).
func turn(angle float64) float64 {
	if angle <= -fullway || fullway <= angle { // which is rare, and the remainder slow
		angle = math.Mod(angle, fullway)
	}
	if angle < 0 {
		angle += fullway
	}
	return angle
}

// apart is the angle between two ways, from 0 to π.
func apart(a, b float64) float64 {
	t := turn(a - b)
	return min(t, fullway-t)
}

// box is an upright rectangle, its edges included.
type box struct{ lo, hi vec }

// nowhere is the box of nothing: the start of a union.
var nowhere = box{vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}}

func around(c vec, w, h float64) box { return box{vec{c.x - w, c.y - h}, vec{c.x + w, c.y + h}} }
func (b box) empty() bool            { return b.lo.x > b.hi.x }
func (b box) centre() vec            { return b.lo.mid(b.hi) }
func (b box) size() vec              { return b.hi.sub(b.lo) }
func (b box) grow(d float64) box {
	return box{vec{b.lo.x - d, b.lo.y - d}, vec{b.hi.x + d, b.hi.y + d}}
}
func (b box) shift(d vec) box { return box{b.lo.add(d), b.hi.add(d)} }
func (b box) holds(p vec) bool {
	return b.lo.x <= p.x && p.x <= b.hi.x && b.lo.y <= p.y && p.y <= b.hi.y
}
func (b box) overlaps(c box) bool {
	return b.lo.x <= c.hi.x && c.lo.x <= b.hi.x && b.lo.y <= c.hi.y && c.lo.y <= b.hi.y
}

// level tells whether the middle of each box is between the top and the bottom of the other.
func (b box) level(c box) bool {
	off := math.Abs(b.centre().y - c.centre().y)
	return 2*off <= min(b.size().y, c.size().y)
}

func (b box) union(c box) box {
	return box{vec{min(b.lo.x, c.lo.x), min(b.lo.y, c.lo.y)}, vec{max(b.hi.x, c.hi.x), max(b.hi.y, c.hi.y)}}
}

// near is how far p is from the box, 0 inside.
func (b box) near(p vec) float64 {
	return vec{max(b.lo.x-p.x, 0, p.x-b.hi.x), max(b.lo.y-p.y, 0, p.y-b.hi.y)}.len()
}

// far is how far p is from the farthest corner of the box.
func (b box) far(p vec) float64 {
	return vec{max(p.x-b.lo.x, b.hi.x-p.x), max(p.y-b.lo.y, b.hi.y-p.y)}.len()
}

// off is how far the box is from a segment, 0 where they touch.
func (b box) off(s segment) float64 {
	if s.touches(b) {
		return 0
	}
	off := min(b.near(s.a), b.near(s.b))
	for _, corner := range [4]vec{b.lo, b.hi, {b.lo.x, b.hi.y}, {b.hi.x, b.lo.y}} {
		off = min(off, s.dist(corner))
	}
	return off
}

// shape is what a label may run into.
type shape interface {
	bounds() box
	touches(b box) bool
}

// curve is a stroke of the pen.
type curve interface {
	shape
	length() float64
	// without is what remains of the curve outside b.
	without(b box) []curve
	// rays are the angles at which the curve leaves p, none if it misses p.
	rays(p vec) []float64
	samples(step float64) []vec
}

// segment is a straight stroke.
type segment struct{ a, b vec }

func (s segment) length() float64 { return s.a.dist(s.b) }

func (s segment) bounds() box { return box{s.a, s.a}.union(box{s.b, s.b}) }

// dist is how far p is from the segment.
func (s segment) dist(p vec) float64 {
	u := s.a.to(s.b)
	along := clamp(u.dot(p.sub(s.a)), 0, s.length())
	return p.dist(s.a.add(u.times(along)))
}

// parts tells whether p and q lie on different sides of the line of s.
func (s segment) parts(p, q vec) bool {
	u := s.b.sub(s.a)
	return u.cross(p.sub(s.a))*u.cross(q.sub(s.a)) < 0
}

// along tells whether o lies on the same line as s.
func (s segment) along(o segment) bool {
	u := s.a.to(s.b)
	return math.Abs(u.cross(o.a.sub(s.a))) < touching && math.Abs(u.cross(o.b.sub(s.a))) < touching
}

// touches by separating axes: those of the box, then the segment's own normal.
func (s segment) touches(b box) bool {
	if !s.bounds().overlaps(b) {
		return false
	}
	d, c, h := s.b.sub(s.a), b.centre(), b.size().times(0.5)
	reach := float64(math.Abs(d.y)*h.x) + float64(math.Abs(d.x)*h.y)
	return math.Abs(d.cross(c.sub(s.a))) <= reach
}

func (s segment) without(b box) []curve {
	lo, hi, ok := s.inside(b)
	if !ok {
		return []curve{s}
	}
	var rest []curve
	d := s.b.sub(s.a)
	if lo > 0 {
		rest = append(rest, segment{s.a, s.a.add(d.times(lo)).snap()})
	}
	if hi < 1 {
		rest = append(rest, segment{s.a.add(d.times(hi)).snap(), s.b})
	}
	return rest
}

// inside clips the segment to b (Liang and Barsky): the stretch within, as
// parts of the whole length.
func (s segment) inside(b box) (lo, hi float64, ok bool) {
	hi = 1
	d := s.b.sub(s.a)
	for _, e := range [4][2]float64{{-d.x, s.a.x - b.lo.x}, {d.x, b.hi.x - s.a.x}, {-d.y, s.a.y - b.lo.y}, {d.y, b.hi.y - s.a.y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return 0, 0, false
		case e[0] < 0:
			lo = max(lo, e[1]/e[0])
		case e[0] > 0:
			hi = min(hi, e[1]/e[0])
		}
	}
	return lo, hi, lo < hi
}

// touching is how near a curve must pass to count as going through a place.
const touching = 6.0

func (s segment) rays(p vec) []float64 {
	u, d := s.a.to(s.b), p.sub(s.a)
	along, l := u.dot(d), s.a.dist(s.b)
	if math.Abs(u.cross(d)) > touching || along < -touching || along > l+touching {
		return nil
	}
	var rays []float64
	if along > touching {
		rays = append(rays, u.times(-1).angle())
	}
	if along < l-touching {
		rays = append(rays, u.angle())
	}
	return rays
}

// disc is a filled circle.
type disc struct {
	c vec
	r float64
}

func (d disc) bounds() box        { return around(d.c, d.r, d.r) }
func (d disc) touches(b box) bool { return b.near(d.c) <= d.r }

// samples are places on the segment, its ends among them, no farther apart than step.
func (s segment) samples(step float64) []vec {
	n := max(1, math.Ceil(s.length()/step))
	var list []vec
	for i := 0.0; i <= n; i++ {
		list = append(list, s.a.add(s.b.sub(s.a).times(i/n)))
	}
	return list
}

// bounds and touches make a box a shape of its own.
func (b box) bounds() box        { return b }
func (b box) touches(c box) bool { return b.overlaps(c) }
