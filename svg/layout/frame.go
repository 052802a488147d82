package layout

import (
	"fmt"
	"math"

	"trammel/geom/figure"
	"trammel/svg"
)

const (
	margin    = figure.Margin * mm
	farthest  = 5000 * mm // of a drawing across
	pageWide  = figure.PageWide * mm
	pageTall  = figure.PageTall * mm
	helpUnit  = "choose a smaller unit"
	belowPage = "browsers shrink what is larger than a page's 170 × 257 mm"
)

// extent is the paper that all the ink and the words take.
func (d *drawing) extent() box {
	b := d.inkExtent()
	for _, t := range d.texts {
		m := svg.Measure(t)
		at := vec{float64(t.At.X), float64(t.At.Y)}
		b = b.union(box{vec{float64(m.Left), float64(m.Top)}, vec{float64(m.Right), float64(m.Bottom)}}.shift(at))
	}
	return b
}

func (d *drawing) inkExtent() box {
	b := nowhere
	for _, s := range d.strokes {
		b = b.union(s.bounds().grow(s.half()))
	}
	for _, o := range d.dots {
		b = b.union(o.bounds())
	}
	for _, s := range d.shades {
		b = b.union(outline(s))
	}
	for _, h := range d.hatches {
		b = b.union(h.bounds())
	}
	return b
}

// outline bounds a shade: its corners, and for its arcs the whole circles
// about their chords' ends, which never leave the circle that is drawn.
func outline(p svg.Path) box {
	at := vec{float64(p.Start.X), float64(p.Start.Y)}
	b := box{at, at}
	for _, piece := range p.Pieces {
		to := vec{float64(piece.To.X), float64(piece.To.Y)}
		b = b.union(box{to, to})
		if piece.Radius > 0 {
			b = b.union(chordArc(at, to, float64(piece.Radius), piece.Large, piece.Clockwise).bounds())
		}
		at = to
	}
	return b
}

// chordArc is the arc that SVG draws from a to b.
func chordArc(a, b vec, r float64, large, clockwise bool) arc {
	if clockwise {
		a, b = b, a
	}
	half := a.dist(b) / 2
	h := math.Sqrt(max(0, float64(r*r)-float64(half*half)))
	if large {
		h = -h
	}
	c := a.mid(b).add(a.to(b).left().times(h))
	from := a.sub(c).angle()
	return arc{c, r, from, turn(b.sub(c).angle() - from)}
}

// frame crops the drawing to its extent and an even margin, or sets it in the
// middle of its paper.
func (d *drawing) frame() (*svg.Doc, error) { return d.frameOf(d.extent()) }

// frameOf is frame about a box in which all of the drawing lies.
func (d *drawing) frameOf(b box) (*svg.Doc, error) {
	if b.empty() {
		b = box{}
	}
	size := b.size()
	if size.x > farthest || size.y > farthest {
		return nil, &Refusal{Text: fmt.Sprintf("the figure is %s across, more than 5 m of paper", size2(size)), Help: helpUnit}
	}
	if d.fig.Paper != nil {
		return d.onPaper(b)
	}
	w, h := d.padded(withMargin(b))
	if !d.theme.screen && (w > pageWide || h > pageTall) {
		help := helpUnit
		if d.theme.gap > 0 {
			help = "print the PDF, which keeps its size" // fingers need the unit
		}
		d.warnings = append(d.warnings, Warning{0, "the figure takes " + size2(vec{w, h}) + " of paper: " + belowPage, help})
	}
	return d.doc(b, w, h), nil
}

// padded is a size, or a little more: whole numbers of CSS pixels, and on a
// slide as wide as a screen is to its height.
func (d *drawing) padded(size vec) (w, h float64) {
	if d.theme.screen {
		const wide, high = 16, 9
		size = vec{max(size.x, size.y*wide/high), max(size.y, size.x*high/wide)}
	}
	return float64(svg.PadToPixels(whole(size.x))), float64(svg.PadToPixels(whole(size.y)))
}

func (d *drawing) onPaper(b box) (*svg.Doc, error) {
	paper, need := d.paper(), withMargin(b)
	if d.fits(b) {
		return d.doc(b, paper.x, paper.y), nil
	}
	return nil, &Refusal{
		Text: fmt.Sprintf("the figure with its margin is %s and the paper %s: it is %s", size2(need), size2(paper), tooMuch(need.sub(paper))),
		Help: d.fitting(need, paper),
	}
}

// paper is the size of the figure's paper.
func (d *drawing) paper() vec {
	w, _ := d.fig.Paper.Width.Float64()
	h, _ := d.fig.Paper.Height.Float64()
	return vec{w, h}.times(mm).snap()
}

// fits tells whether the figure's paper has room for what lies in b.
func (d *drawing) fits(b box) bool {
	paper, need := d.paper(), withMargin(b)
	return need.x <= paper.x && need.y <= paper.y
}

func withMargin(b box) vec { return b.size().add(vec{2 * margin, 2 * margin}) }

func tooMuch(over vec) string {
	wide, high := fmt.Sprintf("%.1f mm too wide", over.x/mm), fmt.Sprintf("%.1f mm too high", over.y/mm)
	switch {
	case over.y <= 0:
		return wide
	case over.x <= 0:
		return high
	}
	return wide + " and " + high
}

// scaling is the span of the points and circles, which grows with the unit, while words
// and margins keep their size.
func (d *drawing) scaling() box {
	b := nowhere
	for _, o := range d.dots {
		b = b.union(box{o.c, o.c})
	}
	for _, s := range d.strokes {
		if a, ok := s.curve.(arc); ok && s.owner != nil {
			b = b.union(a.bounds())
		}
	}
	return b
}

// tooSmall is the span of a figure whose letters are as large as itself.
const tooSmall = 10 * mm

// warnSmall adds that there is nothing to see, or little beside the letters.
func (d *drawing) warnSmall() {
	if d.inkExtent().empty() && len(d.texts) == 0 {
		d.warnings = append(d.warnings, Warning{0, "nothing is drawn: the figure is empty", "give points or a shape, or leave something unhidden"})
		return
	}
	if size := d.scaling().size(); len(d.dots) > 1 && max(size.x, size.y) < tooSmall {
		d.warnings = append(d.warnings, Warning{0, "the figure is only " + size2(size) + ", hardly larger than its letters", "choose a larger unit, or larger measurements"})
	}
}

// fitting names a unit with which the figure would fit; or paper, where places are left to chance and
// keep to the paper with any unit.
func (d *drawing) fitting(need, paper vec) string {
	if d.fig.Chance {
		return fmt.Sprintf("paper %.0f mm by %.0f mm would do, or a smaller unit if measures are given", math.Ceil(max(need.x, paper.x)/mm), math.Ceil(max(need.y, paper.y)/mm))
	}
	scales := d.scaling().size()
	fits := d.scale / mm
	for _, x := range [2][3]float64{{need.x, paper.x, scales.x}, {need.y, paper.y, scales.y}} {
		if x[0] > x[1] && x[2] > 0 {
			fits = min(fits, d.scale/mm*(x[1]-x[0]+x[2])/x[2])
		}
	}
	switch {
	case fits >= 2:
		return fmt.Sprintf("unit %d mm would fit", int(fits))
	case fits >= 0.1:
		return fmt.Sprintf("unit %.1f mm would fit", math.Floor(fits*10)/10)
	}
	return "larger paper is needed"
}

// size2 is a size in words.
func size2(v vec) string { return fmt.Sprintf("%.1f × %.1f mm", v.x/mm, v.y/mm) }

// doc moves everything so that b lies in the middle of a paper of that size,
// and hands the ink over layer by layer.
func (d *drawing) doc(b box, w, h float64) *svg.Doc {
	var items [layers][]svg.Item
	for _, s := range d.shades {
		items[shadeLayer] = append(items[shadeLayer], s)
	}
	items[shadeLayer] = append(items[shadeLayer], d.hatchItems()...)
	for l := constructionLayer; l <= markLayer; l++ {
		items[l] = d.paths(l)
	}
	for _, o := range d.dots {
		items[dotLayer] = append(items[dotLayer], svg.Disc{Ink: svg.Ink{Fill: black}, Class: d.hooks[o.owner], Centre: o.c.xy(), Radius: whole(o.r)})
	}
	for _, t := range d.texts {
		items[labelLayer] = append(items[labelLayer], t)
	}
	for _, p := range d.tools {
		items[toolLayer] = append(items[toolLayer], p)
	}
	off, doc := shiftTo(b, w, h).xy(), &svg.Doc{Width: whole(w), Height: whole(h)}
	for l, list := range items {
		if len(list) > 0 {
			doc.Groups = append(doc.Groups, svg.Group{Class: classes[l], Items: svg.Moved(list, off)})
		}
	}
	return doc
}

// shiftTo moves b into the middle of a paper.
func shiftTo(b box, w, h float64) vec {
	return vec{(w - b.size().x) / 2, (h - b.size().y) / 2}.sub(b.lo).snap()
}
