package gate

import "slices"

// gaps counts the labels for which a foreign curve has been broken: no fault,
// but less than a clear place.
func (r *Report) gaps(s *sheet) {
	breaks := s.breaks()
	for _, l := range s.labels {
		own, _ := s.claimants(l)
		if slices.ContainsFunc(breaks, func(b *item) bool {
			_, _, at := l.nearest([]*item{b}, farBreak)
			return at != (xy{}) && !slices.ContainsFunc(own, b.along)
		}) {
			r.Breaks++
		}
	}
}

// How far in millimetres a break reaches about its label, and how long it is at
// most: a label and its margins. Arcs that were struck at two meetings are farther apart.
const (
	farBreak  = 0.7
	longBreak = 14.0
)

// breaks are the stretches where a curve is not inked between two parts of it.
func (s *sheet) breaks() []*item {
	var list []*item
	for i, p := range s.curves {
		for _, q := range s.curves[:i] {
			if !slices.ContainsFunc(p.owners, func(o string) bool { return slices.Contains(q.owners, o) }) || !p.along(q) {
				continue
			}
			if b := between(p, q); b != nil && !slices.ContainsFunc(s.curves, func(c *item) bool { return c.fills(b) }) {
				list = append(list, b)
			}
		}
	}
	return list
}

// between is what lies between the nearest ends of two parts of a curve.
func between(p, q *item) *item {
	var b *item
	least := longBreak
	for _, m := range p.ends() {
		for _, n := range q.ends() {
			if d := m.dist(n); d < least {
				least, b = d, &item{lines: [][]xy{{m, n}}, corners: []xy{m, n}}
			}
		}
	}
	if b == nil || least < touching {
		return nil
	}
	if p.round != nil {
		b.round = p.round
	}
	return b
}

// ends are those of a curve.
func (i *item) ends() [2]xy {
	line := i.lines[0]
	return [2]xy{line[0], line[len(line)-1]}
}

// fills tells whether the curve covers the middle of a break.
func (i *item) fills(b *item) bool {
	dot := &item{lines: [][]xy{{b.corners[0].mid(b.corners[1])}}}
	gap, _ := i.gap(dot, 2*i.half+fine)
	return i.along(b) && gap < i.half+fine
}
