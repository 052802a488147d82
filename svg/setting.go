package svg

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"trammel/svg/glyph"
)

// Box is how much paper a text takes, relative to its At: Advance is how far
// the next word would start, the rest is the rectangle that its ink fills.
// A text without ink has an empty rectangle at At.
type Box struct {
	Advance                  Micrometre
	Left, Top, Right, Bottom Micrometre // Y runs down: Top is usually negative
}

// Measure sets a text and measures it.
func Measure(t Text) Box {
	b := t.set()
	if b.box.Empty() {
		return Box{Advance: b.advance}
	}
	return Box{b.advance, b.box.Min.X, b.box.Min.Y, b.box.Max.X, b.box.Max.Y}
}

// Letter is a sign of a text that has been set, with its left end on the
// baseline at At.
type Letter struct {
	At   XY
	Sign rune
	Size Micrometre // height of a capital
	Face glyph.Face
}

// Setting is a text as it stands on the paper.
type Setting struct {
	Letters []Letter        // those that the embedded faces have
	Shapes  []glyph.Segment // outlines of what is no letter, to be filled: surds, bars, braille
	Lacks   rune            // the first letter that no embedded face has, or 0
}

// Unlettered is the error of a text with a letter that no embedded face has. An SVG
// keeps it as text; where letters are drawn or embedded it cannot be shown.
type Unlettered struct {
	Letter rune
	Text   string
}

// Error names the letter.
func (u *Unlettered) Error() string {
	return fmt.Sprintf("the letter %c of %q is in none of the embedded faces", u.Letter, u.Text)
}

// Set sets the text. Places are on the paper.
func (t Text) Set() Setting {
	b := t.set()
	for i := range b.letters {
		b.letters[i].At.X += t.At.X
		b.letters[i].At.Y += t.At.Y
	}
	shapes := b.roots
	if t.Braille {
		shapes = b.signs
	}
	return Setting{b.letters, outlines(shapes, glyph.Point(t.At)), b.lacks}
}

// String is the text as one would type it: a radicand of several signs is in
// brackets, and every space is a plain one.
func (t Text) String() string { return strings.ReplaceAll(spell(t.Runs, 0), string(thin), " ") }

func spell(runs []Run, over int) string {
	var s strings.Builder
	for len(runs) > 0 {
		n := radicand(runs, over)
		s.WriteString(runs[0].Text)
		if runs[0].Top != nil {
			s.WriteString(term(runs[0].Top, isSum) + "/" + term(runs[0].Bottom, isProduct))
		}
		if n > 0 {
			inner := spell(runs[1:1+n], over+1)
			if _, used := argument([]rune(inner)); used < utf8.RuneCountInString(inner) {
				inner = "(" + inner + ")"
			}
			s.WriteString(inner)
		}
		runs = runs[1+n:]
	}
	return s.String()
}

// term is one of a fraction as one would type it, in brackets if it needs them.
func term(runs []Run, needs func(text string) bool) string {
	text := spell(runs, 0)
	if needs(text) {
		return "(" + text + ")"
	}
	return text
}

// isProduct tells that a text is more than one factor.
func isProduct(text string) bool {
	_, used := argument([]rune(text))
	if strings.HasPrefix(text, surd) {
		_, used = argument([]rune(text)[1:])
		used++
	}
	return used < utf8.RuneCountInString(text)
}

// isSum tells that a text has a space or a slash outside of its brackets.
func isSum(text string) bool {
	depth := 0
	for _, r := range text {
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case depth == 0 && (r == ' ' || r == '/'):
			return true
		}
	}
	return false
}

// radicand is how many runs after the first lie under the bar of its last sign.
// A run that is under a bar without a root before it has no bar.
func radicand(runs []Run, over int) int {
	n := 0
	if strings.HasSuffix(runs[0].Text, surd) {
		for 1+n < len(runs) && runs[1+n].Over > over {
			n++
		}
	}
	return n
}

// block is text that has been set with its left end on the baseline at the origin.
type block struct {
	signs, roots []shape  // the letters, and surds with their bars
	words        []word   // the letters again, for text that stays text
	letters      []Letter // and again one by one, where the faces have them
	advance      int
	box          glyph.Box
	missing      bool // a letter has no outline, so the words must be shown
	lacks        rune // the first letter that is in no face, or 0
}

// shape is an outline at a place. The outline may be shared.
type shape struct {
	glyph.Point
	outline []glyph.Segment
}

// word is a run that stays text, with its left end on the baseline at X, Y.
type word struct {
	glyph.Point
	text string
	size int // height of a capital
	face glyph.Face
}

// set sets the whole text.
func (t Text) set() block {
	if t.Braille {
		return setBraille(t.Runs)
	}
	return t.line(t.Runs, 0)
}

// line sets runs that have over bars above them all.
func (t Text) line(runs []Run, over int) block {
	line := block{box: glyph.NoBox}
	for len(runs) > 0 {
		n := radicand(runs, over)
		first := runs[0]
		if n > 0 {
			first.Text = strings.TrimSuffix(first.Text, surd)
		}
		switch primes, rest := primesAfter(runs); {
		case first.Top != nil:
			line.add(t.fraction(first))
		case primes != "":
			line.add(t.stacked(first, primes))
			runs = append([]Run{first}, rest...)
		default:
			line.add(t.run(first))
		}
		if n > 0 {
			line.add(t.root(t.line(runs[1:1+n], over+1)))
		}
		runs = runs[1+n:]
	}
	return line
}

// Subscripts are seven tenths as high as what they belong to and stand three
// tenths of its height lower.
const subSize, subDrop, tenths = 7, 3, 10

// maxOutlined is how many bytes of text are drawn as outlines, which take a
// hundred times as many: longer text stays letters.
const maxOutlined = 2000

// run sets letters of one face and size.
func (t Text) run(r Run) block {
	face, size, drop := t.face(r), t.Size, 0
	if r.Sub {
		size, drop = t.Size*subSize/tenths, t.Size*subDrop/tenths
	}
	b := block{box: glyph.NoBox}
	previous := ' '
	for i, letter := range r.Text {
		b.advance += face.Kern(previous, letter, size)
		if letter != ' ' && b.words == nil { // renderers drop spaces at the start
			b.words = []word{{glyph.Point{X: b.advance, Y: drop}, r.Text[i:], size, face}}
		}
		b.add(set(letter, face, size, drop, len(r.Text) <= maxOutlined))
		previous = letter
	}
	return b
}

// stacked sets a subscript with primes above it.
func (t Text) stacked(sub Run, primes string) block {
	b, above := t.run(sub), t.run(Run{Text: primes})
	b.put(above, glyph.Point{})
	b.advance = max(b.advance, above.advance)
	return b
}

// primesAfter are the primes that follow a subscript, and the runs after it without them.
func primesAfter(runs []Run) (primes string, rest []Run) {
	if !runs[0].Sub || len(runs) == 1 || runs[1].Sub {
		return "", nil
	}
	next := runs[1]
	without := strings.TrimLeft(next.Text, "′")
	primes = strings.TrimSuffix(next.Text, without)
	next.Text = without
	return primes, append([]Run{next}, runs[2:]...)
}

// set sets one letter.
func set(letter rune, face glyph.Face, size, drop int, inOutline bool) block {
	g, ok := outlined(letter, face, size)
	b := unknown(face.Em(size), drop)
	if ok && inOutline {
		at := glyph.Point{Y: drop}
		b = block{signs: []shape{{at, g.Outline}}, advance: g.Advance, box: g.Box.Moved(at)}
	}
	if ok {
		b.letters = []Letter{{XY{0, drop}, letter, size, face}}
	} else {
		b.lacks = letter
	}
	return b
}

func (t Text) face(r Run) glyph.Face {
	switch {
	case t.Sans:
		return glyph.Sans
	case r.Italic:
		return glyph.Italic
	}
	return glyph.Roman
}

// outlined finds a letter's glyph. Marks that combine with the letter before
// them have none, for the tables that place them are not read here.
func outlined(letter rune, face glyph.Face, size int) (glyph.Glyph, bool) {
	if unicode.Is(unicode.M, letter) {
		return glyph.Glyph{}, false
	}
	return face.Glyph(letter, size)
}

// unknown keeps the room of a letter that another font will draw: a whole em,
// as letters of the widest scripts take.
func unknown(em, drop int) block {
	room := glyph.NoBox.Grow(glyph.Point{Y: drop - em*9/10}, glyph.Point{X: em, Y: drop + em*3/10})
	return block{advance: em, box: room, missing: true}
}

// add puts another block at the end of b.
func (b *block) add(next block) {
	b.put(next, glyph.Point{X: b.advance})
	b.advance += next.advance
}

// put puts another block into b, moved by a distance.
func (b *block) put(next block, by glyph.Point) {
	b.signs = append(b.signs, moved(next.signs, by)...)
	b.roots = append(b.roots, moved(next.roots, by)...)
	for _, w := range next.words {
		w.Point = w.Point.Add(by)
		b.words = append(b.words, w)
	}
	for _, l := range next.letters {
		l.At.X += by.X
		l.At.Y += by.Y
		b.letters = append(b.letters, l)
	}
	if b.lacks == 0 {
		b.lacks = next.lacks
	}
	if next := next.box.Moved(by); !next.Empty() {
		b.box = b.box.Grow(next.Min, next.Max)
	}
	b.missing = b.missing || next.missing
}

// moved is the shapes moved by a distance.
func moved(shapes []shape, by glyph.Point) []shape {
	all := slices.Clone(shapes)
	for i := range all {
		all[i].Point = all[i].Add(by)
	}
	return all
}

// outlines are the shapes' own, moved by a distance.
func outlines(shapes []shape, by glyph.Point) (all []glyph.Segment) {
	for _, shape := range shapes {
		at := shape.Add(by)
		for _, s := range shape.outline {
			for i := range s.Points() {
				s.To[i] = s.To[i].Add(at)
			}
			all = append(all, s)
		}
	}
	return all
}
