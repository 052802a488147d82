package svg

import (
	"cmp"
	"slices"

	"trammel/svg/glyph"
)

// Hull is the convex hull of a text's ink, relative to its At: its corners one
// after the other. A text without ink has none.
func Hull(t Text) []XY {
	b := t.set()
	if b.box.Empty() {
		return nil
	}
	var all []XY
	for _, s := range append(outlines(b.signs, glyph.Point{}), outlines(b.roots, glyph.Point{})...) {
		for _, p := range s.Points() {
			all = append(all, XY(p))
		}
	}
	if b.missing || len(all) == 0 {
		low, high := b.box.Min, b.box.Max
		all = append(all, XY(low), XY{low.X, high.Y}, XY(high), XY{high.X, low.Y})
	}
	return hull(all)
}

// hull goes along the points from left to right and back, and drops each at
// which the way does not turn the same way (Andrew 1979; from memory).
func hull(all []XY) []XY {
	slices.SortFunc(all, func(a, b XY) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	all = slices.Compact(all)
	var round []XY
	for range 2 {
		start := len(round)
		for _, p := range all {
			for len(round) >= start+2 && !turns(round[len(round)-2], round[len(round)-1], p) {
				round = round[:len(round)-1]
			}
			round = append(round, p)
		}
		round = round[:max(len(round)-1, 1)] // the next way starts there
		slices.Reverse(all)
	}
	return round
}

// turns tells whether the way from a through b to c turns clockwise on the paper.
func turns(a, b, c XY) bool {
	return (b.X-a.X)*(c.Y-b.Y)-(b.Y-a.Y)*(c.X-b.X) > 0
}
