package check

import "slices"

// sameLine tells whether a point's place is a line, and a stretch of the same line:
// "on m, between A and B", A and B being points of m. The stretch comes first then,
// as what its place is left to chance on.
func (s *scope) sameLine(pl *places) bool {
	if len(pl.loci) != 2 {
		return false
	}
	for i, l := range pl.loci {
		stretch, other := !l.isCircle && l.on.run && l.on.slot < 0, pl.loci[1-i]
		if stretch && !other.isCircle && s.carries(other.on, l.on.from) && s.carries(other.on, l.on.to) {
			pl.loci = []locus{l, other}
			return true
		}
	}
	return false
}

// carries tells whether a point is known to lie on a straight, as the source puts it.
func (s *scope) carries(c curve, p int) bool {
	switch {
	case c.circle:
		return false
	case c.run:
		return p == c.from || p == c.to
	case s.slot(c.slot).Between != nil && slices.Contains(s.slot(c.slot).Between[:], p):
		return true
	}
	return slices.Contains(s.c.metOn[p], c.slot)
}

// picksFree refuses nearest and farthest of a point that nothing but chance places:
// they pick one of two places.
func (s *scope) picksFree(slot int, pl *places) bool {
	for _, c := range pl.conds {
		if !c.picks {
			continue
		}
		name := s.slot(slot).Name
		s.c.fail(c.span, "%s picks one of two places, and %s may be anywhere here", c.text, name).Help = "name a meeting, as in: n meets k at " + name + " " + c.text
		return true
	}
	return false
}

// called is a locus in the words of the source.
func (l locus) called(s *scope) string {
	if l.isCircle {
		return "the circle about " + s.slot(l.centre).Name
	}
	return l.on.text
}
