package gate

import "math"

// xy is a place on the paper in millimetres, Y running down.
type xy struct{ x, y float64 }

func (p xy) add(q xy) xy        { return xy{p.x + q.x, p.y + q.y} }
func (p xy) sub(q xy) xy        { return xy{p.x - q.x, p.y - q.y} }
func (p xy) times(k float64) xy { return xy{p.x * k, p.y * k} }
func (p xy) dot(q xy) float64   { return p.x*q.x + p.y*q.y }
func (p xy) cross(q xy) float64 { return p.x*q.y - p.y*q.x }
func (p xy) len() float64       { return math.Hypot(p.x, p.y) }
func (p xy) dist(q xy) float64  { return p.sub(q).len() }
func (p xy) mid(q xy) xy        { return p.add(q).times(0.5) }
func (p xy) parallel(q xy) float64 { // the sine of the angle between the two
	if l := p.len() * q.len(); l > 0 {
		return math.Abs(p.cross(q)) / l
	}
	return 1
}

// box is an upright rectangle.
type box struct{ lo, hi xy }

var nowhere = box{xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}}

func (b box) with(p xy) box {
	return box{xy{min(b.lo.x, p.x), min(b.lo.y, p.y)}, xy{max(b.hi.x, p.x), max(b.hi.y, p.y)}}
}

func (b box) grow(by float64) box {
	return box{b.lo.sub(xy{by, by}), b.hi.add(xy{by, by})}
}

func (b box) holds(o box) bool {
	return b.lo.x <= o.lo.x && b.lo.y <= o.lo.y && o.hi.x <= b.hi.x && o.hi.y <= b.hi.y
}

// beyond is how far o reaches out of b.
func (b box) beyond(o box) float64 {
	return max(b.lo.x-o.lo.x, b.lo.y-o.lo.y, o.hi.x-b.hi.x, o.hi.y-b.hi.y)
}

func (b box) middle() xy { return b.lo.mid(b.hi) }

// gap is the distance of two boxes.
func (b box) gap(o box) float64 {
	x := max(0, o.lo.x-b.hi.x, b.lo.x-o.hi.x)
	y := max(0, o.lo.y-b.hi.y, b.lo.y-o.hi.y)
	return math.Hypot(x, y)
}

// stretch is a straight piece of a flattened curve.
type stretch struct{ a, b xy }

func (s stretch) bounds() box { return nowhere.with(s.a).with(s.b) }

// near is the point of s nearest to p.
func (s stretch) near(p xy) xy {
	way := s.b.sub(s.a)
	if l := way.dot(way); l > 0 {
		return s.a.add(way.times(min(1, max(0, p.sub(s.a).dot(way)/l))))
	}
	return s.a
}

// gap is the distance of two stretches, and where it is.
func (s stretch) gap(o stretch) (float64, xy) {
	if p, ok := s.crosses(o); ok {
		return 0, p
	}
	least, at := math.Inf(1), s.a
	for _, ends := range [2][2]stretch{{s, o}, {o, s}} {
		for _, p := range [2]xy{ends[0].a, ends[0].b} {
			if q := ends[1].near(p); p.dist(q) < least {
				least, at = p.dist(q), p.mid(q)
			}
		}
	}
	return least, at
}

// crosses is where two stretches that are not parallel cross.
func (s stretch) crosses(o stretch) (xy, bool) {
	d, e := s.b.sub(s.a), o.b.sub(o.a)
	n := d.cross(e)
	if n == 0 {
		return xy{}, false
	}
	w := o.a.sub(s.a)
	t, u := w.cross(e)/n, w.cross(d)/n
	return s.a.add(d.times(t)), 0 <= t && t <= 1 && 0 <= u && u <= 1
}

// fine is how far in millimetres a flattened curve may lie off the true one.
const fine = 0.002

// arc is part of a circle: from an angle on through a sweep, which is positive
// clockwise as seen on the paper.
type arc struct {
	c           xy
	r           float64
	from, sweep float64
}

func (a arc) point(t float64) xy {
	sin, cos := math.Sincos(a.from + t*a.sweep)
	return a.c.add(xy{cos * a.r, sin * a.r})
}

func (a arc) flat() []xy {
	step := 2 * math.Acos(max(0, 1-fine/a.r))
	n := math.Ceil(math.Abs(a.sweep)/step) + 1
	var line []xy
	for i := 0.0; i <= n; i++ {
		line = append(line, a.point(i/n))
	}
	return line
}

// chordArc is the arc that SVG draws between two points, as its specification's
// appendix on elliptical arcs has it, for equal radii.
func chordArc(p, q xy, r float64, large, clockwise bool) arc {
	half := p.sub(q).times(0.5)
	k := math.Sqrt(max(0, r*r/half.dot(half)-1))
	if large == clockwise {
		k = -k
	}
	c := p.mid(q).add(xy{k * half.y, -k * half.x})
	from, to := math.Atan2(p.y-c.y, p.x-c.x), math.Atan2(q.y-c.y, q.x-c.x)
	switch sweep := to - from; {
	case clockwise && sweep < 0:
		return arc{c, r, from, sweep + 2*math.Pi}
	case !clockwise && sweep > 0:
		return arc{c, r, from, sweep - 2*math.Pi}
	default:
		return arc{c, r, from, sweep}
	}
}

// cubic flattens a Bézier curve, leaving out its start.
func cubic(a, b, c, d xy) []xy {
	// Its distance from n chords is at most a bound of its second difference
	// over 8n², times 6.
	bend := max(a.sub(b.times(2)).add(c).len(), b.sub(c.times(2)).add(d).len())
	n := max(1, math.Ceil(math.Sqrt(6*bend/(8*fine))))
	var line []xy
	for i := 1.0; i <= n; i++ {
		t := i / n
		u := 1 - t
		p := a.times(u * u * u).add(b.times(3 * u * u * t)).add(c.times(3 * u * t * t)).add(d.times(t * t * t))
		line = append(line, p)
	}
	return line
}
