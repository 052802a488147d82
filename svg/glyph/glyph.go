// Package glyph draws single signs from the embedded faces: STIX Two for the
// textbook's roman and italic, Go Regular for print without serifs. It works in
// whole numbers, so that an outline is the same on every processor.
package glyph

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Point is a place in a glyph: X from its left end, Y down from its baseline.
type Point struct{ X, Y int }

// Add is p moved by a distance.
func (p Point) Add(by Point) Point { return Point{p.X + by.X, p.Y + by.Y} }

// Segment is a piece of an outline: 'M' and 'L' use To[0], 'C' is a cubic curve
// with the control points To[0] and To[1] and the end To[2].
type Segment struct {
	Op byte
	To [3]Point
}

// Points are the points that the segment uses.
func (s Segment) Points() []Point {
	if s.Op == 'C' {
		return s.To[:]
	}
	return s.To[:1]
}

// Glyph is one sign. Each contour of its outline is closed and starts with 'M'.
type Glyph struct {
	Advance int
	Outline []Segment
	Box     Box // that the points of the outline fill
}

// Glyph draws a sign so that a capital letter is height high. Signs that the
// face lacks come from the mathematical face; false means that neither has it.
// Nobody may change the outline: a sign is drawn once, for text is measured often.
func (f Face) Glyph(r rune, height int) (Glyph, bool) {
	type sign struct {
		face   Face
		letter rune
		height int
	}
	key := sign{f, r, height}
	if g, known := drawn.Load(key); known {
		return g.(Glyph), true
	}
	g, ok := f.glyph(r, height)
	if ok {
		drawn.Store(key, g)
	}
	return g, ok
}

// drawn holds the glyphs that have been drawn.
var drawn sync.Map

func (f Face) glyph(r rune, height int) (Glyph, bool) {
	from, number, ok := f.Find(r)
	if !ok {
		return Glyph{}, false
	}
	return load(from).draw(sfnt.GlyphIndex(number), height)
}

// Find tells which face a sign is taken from, and its number there.
func (f Face) Find(r rune) (from Face, number uint16, ok bool) {
	type sign struct {
		face   Face
		letter rune
	}
	type place struct {
		face   Face
		number uint16
		ok     bool
	}
	key := sign{f, r}
	known, seen := found.Load(key)
	if !seen {
		from, number, ok = f.find(r)
		known = place{from, number, ok}
		found.Store(key, known)
	}
	p := known.(place)
	return p.face, p.number, p.ok
}

// found holds where signs have been looked for.
var found sync.Map

func (f Face) find(r rune) (from Face, number uint16, ok bool) {
	for _, f := range [...]Face{f, Maths} {
		if index, err := load(f).GlyphIndex(nil, r); err == nil && index != 0 {
			return f, uint16(index), true
		}
	}
	return f, 0, false
}

// Kern is how much nearer (negative) or farther the second of two neighbours
// stands than the first one's advance says.
func (f Face) Kern(first, second rune, height int) int {
	type pair struct {
		face          Face
		first, second rune
	}
	key := pair{f, first, second}
	known, seen := kerned.Load(key)
	if !seen {
		known = load(f).kern(first, second)
		kerned.Store(key, known)
	}
	return load(f).scale(known.(fixed.Int26_6), height)
}

// kerned holds the pairs that have been looked up, in font units.
var kerned sync.Map

func (p *parsed) kern(first, second rune) fixed.Int26_6 {
	a, errA := p.GlyphIndex(nil, first)
	b, errB := p.GlyphIndex(nil, second)
	if errA != nil || errB != nil || a == 0 || b == 0 {
		return 0
	}
	kern, err := p.Font.Kern(nil, a, b, p.em, font.HintingNone)
	if err != nil { // the pair is not in the table
		return 0
	}
	return kern
}

// Em is the size of type, as printers count it, whose capitals are height high.
func (f Face) Em(height int) int {
	face := load(f)
	return face.scale(face.em, height)
}

func (p *parsed) draw(index sfnt.GlyphIndex, height int) (Glyph, bool) {
	var buffer sfnt.Buffer
	segments, err := p.LoadGlyph(&buffer, index, p.em, nil)
	if err != nil {
		return Glyph{}, false
	}
	g := Glyph{Outline: make([]Segment, len(segments)), Box: NoBox}
	var pen fixed.Point26_6
	for i, s := range segments {
		g.Outline[i] = p.segment(s, pen, height)
		g.Box = g.Box.Grow(g.Outline[i].Points()...)
		pen = s.Args[arguments(s.Op)-1]
	}
	advance, err := p.GlyphAdvance(&buffer, index, p.em, font.HintingNone)
	g.Advance = p.scale(advance, height)
	return g, err == nil
}

// arguments is how many points an operation has.
func arguments(op sfnt.SegmentOp) int {
	switch op {
	case sfnt.SegmentOpQuadTo:
		return 2
	case sfnt.SegmentOpCubeTo:
		return 3
	}
	return 1
}

// segment scales a piece. A parabola from P by Q to R is the cubic with the
// control points (P+2Q)/3 and (2Q+R)/3.
func (p *parsed) segment(s sfnt.Segment, pen fixed.Point26_6, height int) Segment {
	at := func(v fixed.Point26_6) Point { return Point{p.scale(v.X, height), p.scale(v.Y, height)} }
	third := func(end, control fixed.Point26_6) Point {
		v := end.Add(control).Add(control)
		return Point{divide(int(v.X)*height, 3*p.capital), divide(int(v.Y)*height, 3*p.capital)}
	}
	switch s.Op {
	case sfnt.SegmentOpMoveTo:
		return Segment{'M', [3]Point{at(s.Args[0])}}
	case sfnt.SegmentOpLineTo:
		return Segment{'L', [3]Point{at(s.Args[0])}}
	case sfnt.SegmentOpQuadTo:
		return Segment{'C', [3]Point{third(pen, s.Args[0]), third(s.Args[1], s.Args[0]), at(s.Args[1])}}
	}
	return Segment{'C', [3]Point{at(s.Args[0]), at(s.Args[1]), at(s.Args[2])}}
}

// scale turns font units into the caller's.
func (p *parsed) scale(v fixed.Int26_6, height int) int {
	return divide(int(v)*height, p.capital)
}

// divide rounds to the nearest, halves upwards.
func divide(a, b int) int { return floorDiv(2*a+b, 2*b) }

func floorDiv(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// Box is a rectangle: Min is its upper left corner, Max its lower right one.
type Box struct{ Min, Max Point }

// NoBox holds nothing, and is what a box of points grows from.
var NoBox = Box{Point{math.MaxInt, math.MaxInt}, Point{math.MinInt, math.MinInt}}

// Empty tells whether the box holds no point.
func (b Box) Empty() bool { return b.Min.X > b.Max.X }

// Moved is the box moved by a distance; an empty one stays where it is.
func (b Box) Moved(by Point) Box {
	if b.Empty() {
		return b
	}
	return Box{b.Min.Add(by), b.Max.Add(by)}
}

// Grow is the smallest box that holds b and the points.
func (b Box) Grow(points ...Point) Box {
	for _, p := range points {
		b.Min = Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)}
		b.Max = Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)}
	}
	return b
}
