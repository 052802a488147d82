package layout

import "sort"

// span is a stretch of a line or a circle, along it.
type span struct{ lo, hi float64 }

func sortSpans(s []span) {
	sort.SliceStable(s, func(i, j int) bool { return s[i].lo < s[j].lo })
}

// uncovered is what the covers leave of s, in order.
func (s span) uncovered(covers []span) []span {
	covers = append([]span(nil), covers...)
	sortSpans(covers)
	var rest []span
	lo := s.lo
	for _, c := range covers {
		if c.lo > lo+touching && lo < s.hi {
			rest = append(rest, span{lo, min(c.lo, s.hi)})
		}
		lo = max(lo, c.hi)
	}
	if lo < s.hi-touching {
		rest = append(rest, span{lo, s.hi})
	}
	return rest
}
