package layout

import (
	"math"

	"trammel/svg"
)

// paths are the strokes of a layer. Full segments that follow one another
// become one path, closed where it comes back to its start; its class then
// names the things piece by piece.
func (d *drawing) paths(l layer) []svg.Item {
	var items []svg.Item
	var last *svg.Path
	for _, s := range d.strokes {
		if s.layer != l {
			continue
		}
		c, straight := s.curve.(segment)
		if !straight {
			items, last = append(items, arcItem(s)), nil
			continue
		}
		a, b := c.a.xy(), c.b.xy()
		if last != nil && s.continues(last) && extend(last, a, b) {
			if s.owner != nil {
				last.Class += " " + s.hook
			}
			items[len(items)-1] = *last
		} else {
			last = &svg.Path{Ink: s.ink(s.length(), false), Class: s.hook, Start: a, Pieces: []svg.Piece{{To: b}}}
			items = append(items, *last)
		}
		if s.dashed || last.Closed {
			last = nil
		}
	}
	return items
}

// continues tells whether s may be drawn in one go with what comes before: a
// mark only with more of the same mark.
func (s stroke) continues(p *svg.Path) bool {
	return !s.dashed && p.Width == s.width && p.Stroke == s.colour && (s.owner != nil || p.Class == s.hook)
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

func arcItem(s stroke) svg.Item {
	a := s.curve.(arc)
	ink := s.ink(a.length(), a.all())
	if a.all() {
		return svg.Disc{Ink: ink, Class: s.hook, Centre: a.c.xy(), Radius: whole(a.r)}
	}
	return svg.Path{
		Ink:    ink,
		Class:  s.hook,
		Start:  a.start().xy(),
		Pieces: []svg.Piece{{To: a.end().xy(), Radius: whole(a.r), Large: a.sweep > math.Pi}},
	}
}
