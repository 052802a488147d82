package layout

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"trammel/svg"
)

// Stroke is a stretch of ink as the hand draws it, on the paper of its frame:
// from Start to End, straight or anticlockwise about a centre. A whole circle
// begins and ends at its right.
type Stroke struct {
	Start, End svg.XY
	Centre     *svg.XY // of an arc or circle; nil for a straight
	Radius     svg.Micrometre
	Sweep      float64 // of an arc, in radians; a full turn for a circle
	Length     svg.Micrometre
	Class      string // as the items of the frame's Doc have it, "new" left out
	Mark       bool   // a mark, and no act
}

// drawnIn is the strokes of a part in the order of drawing, moved by off.
func (d *drawing) drawnIn(p part, off vec) []Stroke {
	var out []Stroke
	for _, s := range d.newIn(p) {
		out = append(out, s.drawn(off))
	}
	return out
}

// newIn is the strokes that a part has drawn, in the order of drawing.
func (d *drawing) newIn(p part) []stroke {
	var all []stroke
	for _, s := range d.strokes {
		if s.step >= p.first {
			all = append(all, s)
		}
	}
	slices.SortStableFunc(all, func(a, b stroke) int {
		return cmp.Or(cmp.Compare(a.step, b.step), cmp.Compare(a.order(), b.order()))
	})
	return all
}

// order is that of the thing; marks come after things.
func (s stroke) order() int {
	if s.owner == nil {
		return math.MaxInt
	}
	return s.owner.Order
}

func (s stroke) drawn(off vec) Stroke {
	class := strings.TrimSpace(strings.TrimSuffix(s.hook, fresh))
	out := Stroke{Length: whole(s.length()), Class: class, Mark: s.owner == nil}
	if c, ok := s.curve.(arc); ok {
		centre := c.c.add(off).xy()
		out.Start, out.End = c.start().add(off).xy(), c.end().add(off).xy()
		out.Centre, out.Radius, out.Sweep = &centre, whole(c.r), c.sweep
		return out
	}
	g := s.curve.(segment)
	out.Start, out.End = g.a.add(off).xy(), g.b.add(off).xy()
	return out
}
