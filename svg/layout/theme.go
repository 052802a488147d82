package layout

import (
	"math"

	"trammel/geom/figure"
	"trammel/svg"
)

// Ink colours. No grey is lighter than #767676, which still copies and reads.
const (
	black = "#000000"
	grey  = "#767676"
	tint  = "#e6e6e6"
	white = "#ffffff"
)

// pen is how a stroke is inked.
type pen struct {
	width  svg.Micrometre
	colour string
	dashed bool
	dash   float64 // length of a dash; 0 follows the width
}

// layer is the order of painting, the lowest first.
type layer uint8

const (
	shadeLayer layer = iota
	constructionLayer
	givenLayer
	resultLayer
	markLayer
	dotLayer
	labelLayer
	toolLayer
	layers
)

// classes name the groups of the drawing for the user's own tools.
var classes = [layers]string{"shade", "construction", "given", "result", "marks", "points", "labels", "tools"}

// theme is a set of weights and sizes. Widths come from the series of
// ISO 128, heights of letters from that of ISO 3098.
type theme struct {
	construction, given, result, bold, mark pen
	dot                                     float64        // radius
	label, small                            svg.Micrometre // small for notes and narrow angles
	sans                                    bool           // no serifs, no italics, for weak eyes
	smaller                                 *theme         // for crowded figures; may be nil
	screen                                  bool           // cropped to the shape of a screen, 16 : 9
	mag                                     float64        // of marks and distances
	gap                                     float64        // least distance between separate things; 0 leaves it to the eye
	dash                                    float64        // least length of a dash
	braille                                 bool
}

func themed(thin, given, result, bold int, faint string) theme {
	return theme{
		construction: pen{width: thin, colour: faint},
		given:        pen{width: given, colour: black},
		result:       pen{width: result, colour: black},
		bold:         pen{width: bold, colour: black},
		mark:         pen{width: given, colour: black},
		dot:          0.6 * mm, label: 3500, small: 2500, mag: 1,
	}
}

// themes are those a figure can ask for by name.
var themes = map[string]theme{
	"textbook":    printed(grey),
	"exam":        printed(black),
	"slide":       slide(),
	"tactile":     tactile(),
	"large-print": sans(enlarged(themed(250, 500, 700, 1000, black), 1.4, 5000, 5000)),
}

// printed is for a page: lines as a book has them, and smaller type for a figure
// that has no room for the usual one.
func printed(faint string) theme {
	t := themed(250, 350, 500, 700, faint)
	small := enlarged(t, 0.8, 2500, 1800)
	t.smaller = &small
	return t
}

// enlarged sets larger letters and marks.
func enlarged(t theme, mag float64, label, small svg.Micrometre) theme {
	t.mag = mag
	t.dot *= mag
	t.label, t.small = label, small
	return t
}

// slide is for the back row: heavy lines, and the largest type that the figure has room for.
func slide() theme {
	var t *theme
	for _, size := range []struct {
		mag          float64
		label, small svg.Micrometre
	}{{1, 3500, 2500}, {1.4, 5000, 3500}, {2, 7000, 5000}} {
		larger := enlarged(themed(350, 700, 1000, 1400, grey), size.mag, size.label, size.small)
		larger.screen, larger.smaller = true, t
		t = &larger
	}
	return *t
}

func sans(t theme) theme {
	t.sans = true
	return t
}

// ink is the pen and the layer of a thing: by its role, unless the source
// wished otherwise.
func (t theme) ink(x *figure.Thing) (pen, layer) {
	p, l := t.given, givenLayer
	switch {
	case x.Weight == figure.Faint:
		p, l = t.construction, constructionLayer
	case x.Weight == figure.Plain && x.Role == figure.Construction: // as what is given
	case x.Weight == figure.Bold:
		p, l = t.bold, resultLayer
	case x.Role == figure.Construction:
		p, l = t.construction, constructionLayer
	case x.Role == figure.Result:
		p, l = t.result, resultLayer
	}
	if x.Dashed && x.Weight != figure.Bold {
		p.width = min(p.width, t.given.width) // a help, not a result
	}
	p.dashed, p.dash = x.Dashed, t.dash
	return p, l
}

// outranks tells which of two pens inks a stretch that both would draw.
func (p pen) outranks(q pen) bool {
	switch {
	case p.width != q.width:
		return p.width > q.width
	case p.colour != q.colour:
		return p.colour == black
	default:
		return !p.dashed && q.dashed
	}
}

func (p pen) half() float64 { return float64(p.width) / 2 }

// ink is the pen as the drawing has it along a curve of that length. Dashes
// are about four times as long as the pen is wide, gaps half a dash. They are
// stretched to end as they begin, on a dash, with another at the middle where
// ticks stand; on a closed curve they come round evenly.
func (p pen) ink(length float64, closed bool) svg.Ink {
	ink := svg.Ink{Stroke: p.colour, Width: p.width}
	if !p.dashed {
		return ink
	}
	wanted := max(p.dash, float64(4*max(p.width, 250)))
	lengths := length / wanted // in dashes: n of them and n-1 gaps are 3n/2 - 1/2
	if !closed {
		lengths += 0.5
	}
	pairs := max(0, math.Round((lengths/1.5-1)/2))
	n := 2*pairs + 1
	dash := length / (1.5*n - 0.5)
	if closed {
		dash = length / (1.5 * n)
	}
	ink.Dash = []svg.Micrometre{whole(dash), whole(dash / 2)}
	return ink
}
