// Package slip finds how far the results of a construction move when the hand
// that draws it slips: each act by itself is done a little beside its true
// place, and the rest is drawn on from there. It works on rough numbers; what it
// gives is for a marker's eye and ruler, and proves nothing.
package slip

import (
	"math"
	"slices"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// Tolerance is how far an act may be done beside its true place.
type Tolerance struct {
	Millimetres float64 // of a point, a centre, an opening or a ruler's edge
	Degrees     float64 // of a ruler's direction
}

// Usual is the tolerance of many a marking scheme: 2 mm and 2° (as in the
// published schemes of OCR J560/04; WAEC allows 1 mm and 1°).
var Usual = Tolerance{2, 2}

// Bands gives the bands of the results of a finished run, in the order of the
// source. What no slip moves has none.
func Bands(st *program.State, t Tolerance) []figure.Band {
	r := newRun(st, t)
	if r == nil {
		return nil
	}
	for k := range r.program.Steps {
		for _, slot := range r.writes[k] {
			if r.drawn(slot) {
				r.slip(k, slot)
			}
		}
	}
	var out []figure.Band
	for i := range r.results {
		if b, ok := r.band(&r.results[i]); ok {
			out = append(out, b)
		}
	}
	return out
}

// run is the true drawing on rough numbers, and what became of its results in
// all the slipped ones.
type run struct {
	program *program.Program
	base    *program.State
	reads   [][]int // by step: the slots that it goes by
	writes  [][]int // by step: the slots that it gives a value
	inputs  [][]int // by step: what it takes that is left to chance
	units   float64 // the slip in units of the source
	turn    float64 // in radians
	results []result
}

// result is a slot whose band is wanted, with its values in the slipped drawings.
type result struct {
	slot int
	home shape
	seen []shape
}

// shape is a point, a straight or a circle in floats.
type shape struct {
	kind   program.Kind
	at     figure.XY // the point, a point of the straight, the centre
	way    figure.XY // of the straight, of length 1
	lo, hi float64   // how far the straight is drawn, along its way from at
	radius float64
}

func newRun(st *program.State, t Tolerance) *run {
	mm, _ := st.Program.Unit.Float64()
	r := &run{program: st.Program, units: t.Millimetres / mm, turn: t.Degrees * math.Pi / 180}
	r.base = program.NewState(st.Program, st.Inputs, exact.NewRoughField())
	r.reads = make([][]int, len(st.Program.Steps))
	r.writes, r.inputs = slices.Clone(r.reads), slices.Clone(r.reads)
	for k, step := range st.Program.Steps {
		if step.Proof {
			continue
		}
		r.base.Trace = &program.Trace{}
		if eval.Do(r.base, step) != nil {
			return nil
		}
		r.reads[k], r.writes[k], r.inputs[k] = r.base.Trace.Reads, r.base.Trace.Writes, r.base.Trace.Inputs
	}
	r.base.Trace = nil
	r.findResults()
	return r
}

// drawn tells whether a slot is something that the pupil draws.
func (r *run) drawn(slot int) bool {
	s := r.program.Slots[slot]
	return s.Top && s.Ink != nil && s.Ink.Role != figure.Given
}

// slip draws on from each way in which a slot's thing can be drawn beside its place.
func (r *run) slip(k, slot int) {
	for _, n := range r.nudges(slot) {
		if !r.trial(k, slot, n, 1) {
			r.trial(k, slot, n, small) // a touching that the whole slip would miss
		}
	}
}

// small is the part of a slip that is tried where the whole is too much; what it
// moves is then scaled up.
const small = 1. / 16

// trial makes one slipped drawing with a part of a nudge, and notes where the
// results came. It is false when the drawing could not be made.
func (r *run) trial(k, slot int, n nudge, part float64) bool {
	st := program.NewState(r.program, r.base.Inputs, exact.NewRoughField())
	for i, step := range r.program.Steps {
		if step.Proof {
			continue
		}
		if eval.Do(st, step) != nil {
			return false
		}
		if i == k {
			st.Values[slot] = n.scaled(part).on(st, st.Values[slot])
		}
	}
	for i := range r.results {
		res := &r.results[i]
		if sh, ok := shapeOf(st.Values[res.slot]); ok {
			res.seen = append(res.seen, res.home.towards(sh, 1/part))
		}
	}
	return true
}

// towards is where a shape would be if it had moved f times as far as it has.
func (s shape) towards(t shape, f float64) shape {
	mix := func(a, b float64) float64 { return a + float64(f*(b-a)) }
	return shape{
		kind: s.kind,
		at:   figure.XY{X: mix(s.at.X, t.at.X), Y: mix(s.at.Y, t.at.Y)},
		way:  figure.XY{X: mix(s.way.X, t.way.X), Y: mix(s.way.Y, t.way.Y)},
		lo:   mix(s.lo, t.lo), hi: mix(s.hi, t.hi), radius: mix(s.radius, t.radius),
	}
}

func rough(p geom.Point) figure.XY { return figure.XY{X: p.X.Float(), Y: p.Y.Float()} }

// shapeOf is a slot's value in floats.
func shapeOf(value any) (shape, bool) {
	switch v := value.(type) {
	case geom.Point:
		return shape{kind: program.Point, at: rough(v)}, true
	case *program.Curve:
		if v.Circle != nil {
			return shape{kind: program.Circle, at: rough(v.Circle.C), radius: math.Sqrt(max(0, v.Circle.R2.Float()))}, true
		}
		return straightShape(v), true
	}
	return shape{}, false
}

// straightShape measures a straight from the first of the points it is drawn for.
func straightShape(c *program.Curve) shape {
	l := c.Line()
	dx, dy := l.D.X.Float(), l.D.Y.Float()
	d := math.Hypot(dx, dy)
	s := shape{kind: program.Line, at: rough(l.P), way: figure.XY{X: dx / d, Y: dy / d}}
	points := c.Used
	for _, e := range []*geom.Point{c.Straight.Start, c.Straight.End} {
		if e != nil {
			points = append(points[:len(points):len(points)], *e)
		}
	}
	for i, p := range points {
		t := s.along(rough(p))
		if i == 0 || t < s.lo {
			s.lo = t
		}
		if i == 0 || t > s.hi {
			s.hi = t
		}
	}
	return s
}

// along is how far a place lies along a straight, and off how far to its left.
func (s shape) along(p figure.XY) float64 {
	return float64((p.X-s.at.X)*s.way.X) + float64((p.Y-s.at.Y)*s.way.Y)
}

func (s shape) off(p figure.XY) float64 {
	return float64((p.Y-s.at.Y)*s.way.X) - float64((p.X-s.at.X)*s.way.Y)
}

// place is the point of a straight's own page: so far along, and off to the left.
func (s shape) place(along, off float64) figure.XY {
	return figure.XY{
		X: s.at.X + float64(along*s.way.X) - float64(off*s.way.Y),
		Y: s.at.Y + float64(along*s.way.Y) + float64(off*s.way.X),
	}
}
