package figure

import (
	"math"
	"slices"

	"trammel/geom"
)

// What paper a figure may take, in millimetres: browsers shrink what is larger than a page
// when they print it. A margin is left all round the ink.
const (
	PageWide = 170
	PageTall = 257
	Margin   = 4
)

// How far ink goes on, in millimetres: a letter beside its point, a straight past its last
// point, and the letter at its end. A straight of one point is drawn so long at least, to
// either side.
const (
	letter   = 5
	PastLast = 5
	atEnd    = 4
	bareArm  = 20
)

// OneSweep is the angle up to which an arc is drawn from one meeting to the next.
const OneSweep = 75 * math.Pi / 180

// Reach is nearly the paper that the figure takes, its margin too, in millimetres: what its
// points, circles, arcs and straights need with letters of the usual size, before these are
// placed. Measures beside outer sides and notes come to it.
func (f *Figure) Reach() (wide, high float64) {
	unit, _ := f.Unit.Float64()
	r := &reach{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for _, p := range f.Points {
		if !p.Hidden && p.Label != nil {
			r.add(p.At.X.Float()*unit, p.At.Y.Float()*unit, letter)
		}
	}
	for _, c := range f.Circles {
		if !c.Hidden {
			r.round(c, unit)
		}
	}
	for _, s := range f.Straights {
		if !s.Hidden {
			r.straight(s, unit)
		}
	}
	if r.left > r.right {
		return 0, 0
	}
	return r.right - r.left + 2*Margin, r.high - r.low + 2*Margin
}

// Excess is how many millimetres a figure is too wide or too high for its paper or a page, by its
// Reach; 0 where it has room.
func (f *Figure) Excess() float64 {
	width, height := float64(PageWide), float64(PageTall)
	if f.Paper != nil {
		width, _ = f.Paper.Width.Float64()
		height, _ = f.Paper.Height.Float64()
	}
	wide, high := f.Reach()
	return max(wide-width, high-height, 0)
}

// reach is how far ink goes, in millimetres.
type reach struct{ left, right, low, high float64 }

func (r *reach) add(x, y, around float64) {
	r.left, r.right = min(r.left, x-around), max(r.right, x+around)
	r.low, r.high = min(r.low, y-around), max(r.high, y+around)
}

// round adds a circle, or of an arc what its sweeps take.
func (r *reach) round(c *Circle, unit float64) {
	x, y, radius := c.Circle.C.X.Float()*unit, c.Circle.C.Y.Float()*unit, math.Sqrt(c.Circle.R2.Float())*unit
	if c.Whole || c.Part == nil && len(c.Used) == 0 {
		r.add(x, y, radius)
		return
	}
	bearing := func(p geom.Point) float64 { return math.Atan2(p.Y.Float()*unit-y, p.X.Float()*unit-x) }
	sweep := func(from, way float64) {
		r.add(x+radius*math.Cos(from), y+radius*math.Sin(from), 0)
		r.add(x+radius*math.Cos(from+way), y+radius*math.Sin(from+way), 0)
		for q := math.Ceil(from / (math.Pi / 2)); q*math.Pi/2 < from+way; q++ {
			r.add(x+radius*math.Cos(q*math.Pi/2), y+radius*math.Sin(q*math.Pi/2), 0)
		}
	}
	if c.Part != nil {
		from := bearing(c.Part[0])
		sweep(from, math.Mod(bearing(c.Part[1])-from+4*math.Pi, 2*math.Pi))
		return
	}
	bearings := make([]float64, len(c.Used))
	for i, p := range c.Used {
		bearings[i] = bearing(p)
	}
	slices.Sort(bearings)
	for i, from := range bearings {
		way := math.Mod(bearings[(i+1)%len(bearings)]-from+2*math.Pi, 2*math.Pi)
		if way > OneSweep {
			way = 0
		}
		sweep(from, way)
	}
}

// straight adds what is drawn of a straight.
func (r *reach) straight(s *Straight, unit float64) {
	dx, dy := s.Line.D.X.Float(), s.Line.D.Y.Float()
	n := math.Hypot(dx, dy)
	dx, dy = dx/n, dy/n
	x, y := s.Line.P.X.Float()*unit, s.Line.P.Y.Float()*unit
	along := func(p geom.Point) float64 { return (p.X.Float()*unit-x)*dx + (p.Y.Float()*unit-y)*dy }
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range s.Used {
		lo, hi = min(lo, along(p)), max(hi, along(p))
	}
	for _, end := range []*geom.Point{s.Start, s.End} {
		if end != nil {
			lo, hi = min(lo, along(*end)), max(hi, along(*end))
		}
	}
	if lo > hi {
		return // drawn in the middle
	}
	past := float64(PastLast)
	if hi-lo < 1e-6 {
		past = bareArm
	}
	if s.Start == nil {
		lo -= past
	}
	if s.End == nil {
		hi += past
		if s.Label != nil {
			hi += atEnd // or at the other one
		}
	}
	r.add(x+lo*dx, y+lo*dy, 0)
	r.add(x+hi*dx, y+hi*dy, 0)
}
