package svg

import "trammel/svg/glyph"

// Sizes about a fraction, in hundredths of a capital's height. The bar lies on
// the axis of the mathematical face, at the height of a minus sign.
const (
	termSize     = 80 // of a term's letters
	fractionAxis = 39
	fractionBar  = 7  // thickness, as that of a root's bar
	fractionGap  = 16 // between the bar and a term
	fractionEnd  = 8  // the bar runs on past its terms, and stands off as much
)

// fraction sets one term over the other.
func (t Text) fraction(r Run) block {
	small := t
	small.Size = t.Size * termSize / 100
	part := func(hundredths int) int { return t.Size * hundredths / 100 }
	top, bottom := small.line(r.Top, 0), small.line(r.Bottom, 0)
	width := max(top.advance, bottom.advance) + 2*part(fractionEnd)
	upper, lower := -part(fractionAxis)-part(fractionBar)/2, -part(fractionAxis)+part(fractionBar)/2
	bar := rectangle(part(fractionEnd), upper, part(fractionEnd)+width, lower)
	b := block{roots: []shape{{outline: bar}}, box: glyph.NoBox.Grow(outlinePoints(bar)...)}
	b.put(top, glyph.Point{X: part(fractionEnd) + (width-top.advance)/2, Y: upper - part(fractionGap) - top.box.Max.Y})
	b.put(bottom, glyph.Point{X: part(fractionEnd) + (width-bottom.advance)/2, Y: lower + part(fractionGap) - bottom.box.Min.Y})
	b.advance = width + 2*part(fractionEnd)
	return b
}

func rectangle(left, top, right, bottom int) []glyph.Segment {
	corner := func(op byte, x, y int) glyph.Segment {
		return glyph.Segment{Op: op, To: [3]glyph.Point{{X: x, Y: y}}}
	}
	return []glyph.Segment{corner('M', left, top), corner('L', right, top), corner('L', right, bottom), corner('L', left, bottom)}
}
