package svg

import (
	"slices"

	"trammel/svg/glyph"
)

const surd = "√"

// Distances about a root, in hundredths of a capital's height, and the slope of
// the surd's long stroke in hundredths.
const (
	rootGap   = 16 // least clearance between the radicand and the bar
	rootEnd   = 5  // the bar runs on past the radicand
	rootAfter = 5  // then what follows stands off
	rootSlope = 26
)

// root puts a block under a surd. The sign of the face is a polygon that ends
// in the beginning of a bar, all of it that is higher than a capital. That end
// is lifted along the long stroke until it clears the radicand, and its right
// side is drawn out to cover it, so that sign and bar are one piece.
func (t Text) root(radicand block) block {
	sign, _ := glyph.Roman.Glyph('√', t.Size)
	outline := slices.Clone(sign.Outline)
	underside := 0
	for _, s := range outline {
		if y := s.To[0].Y; y < -t.Size && (underside == 0 || y > underside) {
			underside = y
		}
	}
	lift := 0
	if !radicand.box.Empty() {
		lift = max(0, underside-(radicand.box.Min.Y-t.Size*rootGap/100))
	}
	lean := lift * rootSlope / 100
	start := sign.Advance + lean
	end := start + max(radicand.advance, radicand.box.Max.X) + t.Size*rootEnd/100
	for i := range outline {
		p := &outline[i].To[0]
		switch {
		case p.Y >= -t.Size: // below the lifted end
		case p.X >= sign.Advance:
			*p = glyph.Point{X: end, Y: p.Y - lift}
		default:
			*p = glyph.Point{X: p.X + lean, Y: p.Y - lift}
		}
	}
	b := block{roots: []shape{{outline: outline}}, advance: start, box: glyph.NoBox}
	b.add(radicand)
	b.advance = end + t.Size*rootAfter/100
	b.box = b.box.Grow(outlinePoints(outline)...)
	return b
}

func outlinePoints(outline []glyph.Segment) []glyph.Point {
	var points []glyph.Point
	for _, s := range outline {
		points = append(points, s.Points()...)
	}
	return points
}
