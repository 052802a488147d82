package gate

import (
	"math"
	"slices"
)

// Distances under which signs are read together: of labels, in parts of the lower one's
// height; of the arcs of a whole angle and its part, in widths of the stroke.
const (
	spaceBetween = 0.25
	arcsBetween  = 8
)

// sizes finds those that stand outside of their angles, where they are read as the sizes
// of others.
func (r *Report) sizes(s *sheet) {
	for _, l := range s.labels {
		own, _ := s.claimants(l)
		at := l.bounds().middle()
		if l.what == "angle" && len(own) > 0 && !slices.ContainsFunc(own, func(m *item) bool { return m.spans(at) }) {
			r.fault(Outside, l, nil, at, 0)
		}
	}
}

// joins tells whether two labels stand on one line with no space between them.
func (i *item) joins(o *item) bool {
	a, b := i.bounds(), o.bounds()
	low := min(a.hi.y-a.lo.y, b.hi.y-b.lo.y)
	level := math.Abs(a.middle().y-b.middle().y) < low/2
	return level && max(a.lo.x-b.hi.x, b.lo.x-a.hi.x) < spaceBetween*low
}

// arcs finds those of whole angles that are counted with the arcs of their parts.
func (r *Report) arcs(s *sheet) {
	for _, m := range s.marks {
		for _, o := range s.marks {
			if m.holds(o) && math.Abs(m.round.r-o.round.r) < arcsBetween*2*m.half {
				r.fault(Mixed, m, o, m.lines[0][0], m.round.r-o.round.r)
			}
		}
	}
}

// holds tells whether an arc marks a whole angle and another a part of it.
func (i *item) holds(o *item) bool {
	if i.what != "arc" || o.what != "arc" || i.round.c.dist(o.round.c) > meets {
		return false
	}
	ends := []xy{o.round.point(0.02), o.round.point(0.98)}
	return math.Abs(i.round.sweep) > math.Abs(o.round.sweep)+square && i.spans(ends[0]) && i.spans(ends[1])
}
