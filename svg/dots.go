package svg

import (
	"trammel/svg/braille"
	"trammel/svg/glyph"
)

// Sizes of braille in micrometres: those of Specification 800 of the (US) National Library
// Service, which are also the Braille Authority of North America's: dots 1.44 mm
// across, 2.34 mm apart, cells 6.2 mm apart (from memory).
const (
	dotRadius = 720
	dotApart  = 2340
	cellApart = 6200
)

// setBraille sets runs in raised dots. The baseline is the lower edge of the
// third row.
func setBraille(runs []Run) block {
	b := block{box: glyph.NoBox}
	var dots []glyph.Segment
	cells, unknown := braille.Write(dotted(runs, 0))
	for i, c := range cells {
		for dot := range 6 {
			if c.Has(dot + 1) {
				centre := glyph.Point{X: i*cellApart + dot/3*dotApart + dotRadius, Y: (dot%3-2)*dotApart - dotRadius}
				dots = append(dots, round(centre, dotRadius)...)
			}
		}
	}
	b.signs, b.box = []shape{{outline: dots}}, b.box.Grow(outlinePoints(dots)...)
	b.advance = len(cells) * cellApart
	if b.missing = len(unknown) > 0; b.missing {
		b.lacks = unknown[0]
	}
	return b
}

// Unbrailled lists the signs of runs that have no braille here.
func Unbrailled(runs []Run) []rune {
	_, unknown := braille.Write(dotted(runs, 0))
	return unknown
}

// dotted is the text of runs with the marks of braille for roots, fractions and
// lowered digits.
func dotted(runs []Run, over int) string {
	text := ""
	for len(runs) > 0 {
		n, r := radicand(runs, over), runs[0]
		switch {
		case r.Top != nil:
			text += string(braille.OpenTop) + dotted(r.Top, 0) + string(braille.Over) + dotted(r.Bottom, 0) + string(braille.CloseTop)
		case r.Sub:
			text += string(braille.Lower) + r.Text
		case n > 0:
			text += r.Text[:len(r.Text)-len(surd)] + string(braille.OpenRoot) + dotted(runs[1:1+n], over+1) + string(braille.CloseRoot)
		default:
			text += r.Text
		}
		runs = runs[1+n:]
	}
	return text
}

// round is a disc as four cubic curves, which leave the circle by less than
// 0.03 % of its radius.
func round(c glyph.Point, r int) []glyph.Segment {
	k := (r*5523 + 5000) / 10000 // 4/3·(√2 − 1)
	at := func(x, y int) glyph.Point { return glyph.Point{X: c.X + x, Y: c.Y + y} }
	curve := func(p, q, end glyph.Point) glyph.Segment {
		return glyph.Segment{Op: 'C', To: [3]glyph.Point{p, q, end}}
	}
	return []glyph.Segment{
		{Op: 'M', To: [3]glyph.Point{at(r, 0)}},
		curve(at(r, k), at(k, r), at(0, r)),
		curve(at(-k, r), at(-r, k), at(-r, 0)),
		curve(at(-r, -k), at(-k, -r), at(0, -r)),
		curve(at(k, -r), at(r, -k), at(r, 0)),
	}
}
