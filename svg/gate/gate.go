// Package gate reads a finished SVG file as a stranger would and measures what
// a typesetter would find fault with: labels that run into each other, into ink
// or off the paper, labels nearer to something else than to their own, and
// marks that touch what they do not belong to. It knows the file only: true
// outlines of letters, true widths of strokes, and the classes of the items. It
// has nothing from the layout, so that neither repeats the other's mistakes.
//
// Some things touch by nature, and these rules tell them from faults:
//
//   - A line broken for a label has no ink there, so it does not touch it. A
//     dashed line counts as full: a letter does not belong into a gap of it.
//   - Shaded areas are ground, and words and marks may stand on them. Hatching
//     is ground for marks; words keep clear of its strokes.
//   - A tick may touch the straights that run through its middle at right angles,
//     and a circle of which such a straight is so flat a chord that no tick would
//     be short enough: the arc rises under 1.2 mm over it.
//   - An arrowhead may touch the straights that run through its tip along its axis.
//   - The square and the arc of an angle may touch what passes through the
//     angle's vertex: the arms, and what divides the angle. Squares of one vertex
//     may share their sides.
//   - A dot and the curves of the figure meet where they meet; they are not judged.
//
// Everything else that touches a mark is foreign to it: other curves, dots and
// all other marks.
//
// A label's own is what has a class in common with it. Its rivals are things of
// the same kind: for the name of a point, and a note, the other dots; for the
// size of an angle, the marks of other angles, but for those of angles that it
// does not stand in, while it stands in its own; for a name or a length beside
// a curve, other curves at least as heavy, for a label is read with the heaviest
// line near it. A note may also stand near a place that has no dot.
//
// Labels on one line need a space between them, of a quarter of their height. The arc of
// an angle that goes
// round those of its parts keeps eight times its width from them, lest it be counted with them.
package gate

import (
	"fmt"
	"io"
	"math"
)

// Report is what was measured on one file. Distances are in millimetres; they
// are +Inf where there is nothing to measure.
type Report struct {
	Name   string
	Labels int
	Faults []Fault
	// Breaks is how many labels stand in a gap of a line that is not their own.
	Breaks int
	// Ink is the least clearance of a label from ink, Words that of two labels.
	Ink, Words float64
	// Margins are the distances of all ink from the edges of the paper: left, top,
	// right, bottom.
	Margins [4]float64
}

// Kind is what is wrong.
type Kind int

// The kinds of faults, in the order of the table's columns.
const (
	Overlap Kind = iota // a label touches another
	Contact             // a label touches ink
	Off                 // ink or a label leaves the paper
	Foreign             // a mark touches what it does not belong to
	Nearer              // a label is nearer to a rival than to its own
	Unowned             // a label's own is not on the paper, or it cannot be measured
	Outside             // the size of an angle is not between its arms
	Joined              // labels on one line are so close that they read as one
	Mixed               // the arc of a whole angle is counted with those of its part
	kinds
)

// Fault is one fault: what touches what, where, and by how much in millimetres
// (for a label nearer to a rival, by how much nearer it is).
type Fault struct {
	Kind       Kind
	What, With string
	X, Y, By   float64
}

// Count is how many faults of a kind there are.
func (r *Report) Count(k Kind) int {
	n := 0
	for _, f := range r.Faults {
		if f.Kind == k {
			n++
		}
	}
	return n
}

// Measure reads one drawing. An error means that it is none of trammel's.
func Measure(name string, file io.Reader) (*Report, error) {
	s, err := read(file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	r := &Report{Name: name, Labels: len(s.labels), Ink: math.Inf(1), Words: math.Inf(1)}
	r.paper(s)
	r.words(s)
	r.marks(s)
	r.owners(s)
	r.sizes(s)
	r.arcs(s)
	r.gaps(s)
	return r, nil
}

func (r *Report) fault(k Kind, what, with *item, at xy, by float64) {
	f := Fault{Kind: k, What: what.name(), X: at.x, Y: at.y, By: by}
	if with != nil {
		f.With = with.name()
	}
	r.Faults = append(r.Faults, f)
}

// paper finds what leaves the paper, and measures the margins.
func (r *Report) paper(s *sheet) {
	const slack = 0.001
	paper := box{xy{-slack, -slack}, xy{s.width + slack, s.height + slack}}
	ink := nowhere
	for _, i := range s.all() {
		b := i.bounds()
		if ink = ink.with(b.lo).with(b.hi); !paper.holds(b) {
			r.fault(Off, i, nil, b.middle(), paper.beyond(b))
		}
	}
	r.Margins = [4]float64{ink.lo.x, ink.lo.y, s.width - ink.hi.x, s.height - ink.hi.y}
	for _, t := range s.live {
		r.Faults = append(r.Faults, Fault{Kind: Unowned, What: fmt.Sprintf("the text %q, which has no outline", t)})
	}
}

// touching is the distance in millimetres up to which things touch.
const touching = 0.01

// words measures labels against each other and against ink.
func (r *Report) words(s *sheet) {
	for i, l := range s.labels {
		for _, o := range s.labels[:i] {
			gap, at := l.gap(o, r.Words)
			r.Words = min(r.Words, gap)
			if gap < touching {
				r.fault(Overlap, l, o, at, gap)
			} else if l.joins(o) {
				r.fault(Joined, l, o, at, gap)
			}
		}
		for _, o := range s.ink() {
			gap, at := l.gap(o, max(r.Ink, touching))
			r.Ink = min(r.Ink, gap)
			if gap < touching {
				r.fault(Contact, l, o, at, gap)
			}
		}
	}
}

// marks finds those that touch what is foreign to them.
func (r *Report) marks(s *sheet) {
	for i, m := range s.marks {
		for _, o := range append(s.curves[:len(s.curves):len(s.curves)], s.dots...) {
			if gap, at := m.gap(o, touching); gap < touching && !m.belongs(o) && !m.flat(o, s.curves) {
				r.fault(Foreign, m, o, at, gap)
			}
		}
		for _, o := range s.marks[:i] {
			if gap, at := m.gap(o, touching); gap < touching && !m.beside(o) {
				r.fault(Foreign, m, o, at, gap)
			}
		}
	}
}

// owners finds labels that stand nearer to a rival than to their own.
func (r *Report) owners(s *sheet) {
	for _, l := range s.labels {
		own, rivals := s.claimants(l)
		far, _, _ := l.nearest(own, math.Inf(1))
		if math.IsInf(far, 1) && l.what == "note" {
			continue // near a place that is not on the paper
		}
		if math.IsInf(far, 1) {
			r.fault(Unowned, l, nil, l.bounds().middle(), 0)
			continue
		}
		if near, rival, at := l.nearest(rivals, far); near < far-touching {
			r.fault(Nearer, l, rival, at, far-near)
		}
	}
}

// nearest is the item of a list that is nearest, if it is nearer than within.
func (i *item) nearest(list []*item, within float64) (gap float64, which *item, at xy) {
	gap = within
	for _, o := range list {
		if g, p := i.gap(o, gap); g < gap {
			gap, which, at = g, o, p
		}
	}
	return gap, which, at
}
