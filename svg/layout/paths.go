package layout

import (
	"math"

	"trammel/svg"
)

// paths are the strokes of a layer. Segments that follow one another become
// one path, closed where it comes back to its start, so that corners are
// mitred and a run of dashes goes on round them.
func (d *drawing) paths(l layer, off vec) []svg.Item {
	var items []svg.Item
	var open *svg.Path
	flush := func() {
		if open != nil {
			items = append(items, *open)
			open = nil
		}
	}
	var last *stroke
	for i := range d.strokes {
		s := &d.strokes[i]
		if s.layer != l {
			continue
		}
		g, straight := s.curve.(segment)
		if straight && open != nil && last.pen == s.pen && extend(open, g.a.add(off).xy(), g.b.add(off).xy()) {
			last = s
			if open.Closed {
				flush()
			}
			continue
		}
		flush()
		switch c := s.curve.(type) {
		case segment:
			open = &svg.Path{Ink: s.ink(), Start: c.a.add(off).xy(), Pieces: []svg.Piece{{To: c.b.add(off).xy()}}}
			last = s
		case arc:
			items = append(items, arcItem(c, s.ink(), off))
		}
	}
	flush()
	return items
}

// extend goes on with the segment from a to b if that is where the path ends.
func extend(p *svg.Path, a, b svg.XY) bool {
	end := p.Pieces[len(p.Pieces)-1].To
	if end != a {
		return false
	}
	if b == p.Start && len(p.Pieces) > 1 {
		p.Closed = true
		return true
	}
	p.Pieces = append(p.Pieces, svg.Piece{To: b})
	return true
}

func arcItem(a arc, ink svg.Ink, off vec) svg.Item {
	if a.all() {
		return svg.Disc{Ink: ink, Centre: a.c.add(off).xy(), Radius: whole(a.r)}
	}
	return svg.Path{
		Ink:    ink,
		Start:  a.start().add(off).xy(),
		Pieces: []svg.Piece{{To: a.end().add(off).xy(), Radius: whole(a.r), Large: a.sweep > math.Pi}},
	}
}
