package page

import (
	"strings"

	"trammel/svg"
)

const black = "#000000"

// lead is how far one line lies below the other, in heights of a capital.
const lead = 2.1

// line is one line of words.
func (f *Format) line(text string, size int) svg.Text {
	return svg.Text{Runs: svg.Sentence(text), Size: size, Fill: black, Sans: f.Sans}
}

// Paragraph is words in the text's size, broken into lines that a page takes
// less an indent at the left. Signs such as √ and primes are set as in labels.
func (f *Format) Paragraph(text string, indent int) Block {
	return f.words(text, f.Text, indent, f.Wide()-indent)
}

// Numbered is a paragraph that hangs beside its number.
func (f *Format) Numbered(number, text string, indent int) Block {
	b := f.Paragraph(text, indent)
	t := f.line(number, f.Text)
	t.At = svg.XY{Y: f.Text}
	b.Items = append([]svg.Item{t}, b.Items...)
	return b
}

// Heading is words in half again the text's size.
func (f *Format) Heading(text string) Block {
	return f.words(text, f.Text*3/2, 0, f.Wide())
}

// words breaks a text into lines of a width.
func (f *Format) words(text string, size, indent, wide int) Block {
	b := Block{Name: "the text", Gap: size}
	step := int(lead * float64(size))
	for _, line := range f.broken(text, size, wide) {
		t := f.line(line, size)
		t.At = svg.XY{X: indent, Y: b.Height + size}
		b.Items = append(b.Items, t)
		b.Height += step
	}
	if len(b.Items) > 0 {
		b.Height += size*3/2 - step // the last line has its own depth only
	}
	return b
}

// broken breaks a text between its words. A word that is longer than a line is
// broken inside.
func (f *Format) broken(text string, size, wide int) (lines []string) {
	space := f.width("x x", size) - f.width("xx", size)
	line, taken := "", 0
	for _, word := range strings.FieldsFunc(svg.Unbroken(text), func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }) {
		for _, part := range f.parts(word, size, wide) {
			w := f.width(part, size)
			if line != "" && taken+space+w > wide {
				lines, line = append(lines, line), ""
			}
			if line == "" {
				line, taken = part, w
			} else {
				line, taken = line+" "+part, taken+space+w
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// parts is a word, or what of it fits on a line each.
func (f *Format) parts(word string, size, wide int) (parts []string) {
	letters := []rune(word)
	for len(letters) > 0 {
		n := len(letters)
		for n > 1 && f.width(string(letters[:n]), size) > wide {
			n--
		}
		parts, letters = append(parts, string(letters[:n])), letters[n:]
	}
	return parts
}

func (f *Format) width(text string, size int) int { return svg.Measure(f.line(text, size)).Advance }

// Beside sets words at the left edge, and others at the right, on one line.
func (f *Format) Beside(left, right string) Block {
	l, r := f.line(left, f.Text), f.line(right, f.Text)
	l.At = svg.XY{Y: f.Text}
	r.At = svg.XY{X: f.Wide() - svg.Measure(r).Advance, Y: f.Text}
	return Block{Height: f.Text * 3 / 2, Items: []svg.Item{l, r}, Gap: f.Text}
}

// Blanks are lines to write on, each after its word, side by side.
func (f *Format) Blanks(words ...string) Block {
	b := Block{Height: f.Text * 3 / 2, Gap: 2 * f.Text}
	each := f.Wide() / len(words)
	for i, word := range words {
		t := f.line(word, f.Text)
		t.At = svg.XY{X: i * each, Y: f.Text}
		from, end := t.At.X+svg.Measure(t).Advance+f.Text, (i+1)*each-2*f.Text
		if i == len(words)-1 {
			end = f.Wide()
		}
		b.Items = append(b.Items, t, rule(svg.XY{X: from, Y: f.Text * 5 / 4}, svg.XY{X: end, Y: f.Text * 5 / 4}))
	}
	return b
}

// rule is a thin line.
func rule(from, to svg.XY) svg.Path {
	return svg.Path{Ink: svg.Ink{Stroke: black, Width: 180}, Start: from, Pieces: []svg.Piece{{To: to}}}
}

// Bar is a bar of a true length with its words beside it, by which a print is
// checked: a printer that fits a page to its paper shortens the bar too.
func (f *Format) Bar(length int, words string) Block {
	size := f.Text * 4 / 5
	y := size
	b := Block{Height: 2 * size}
	for _, x := range [][2]svg.XY{
		{{X: 0, Y: y}, {X: length, Y: y}},
		{{X: 0, Y: y - size/2}, {X: 0, Y: y + size/2}},
		{{X: length, Y: y - size/2}, {X: length, Y: y + size/2}},
	} {
		b.Items = append(b.Items, rule(x[0], x[1]))
	}
	return f.beside(b, words, length+3*mm, y+size/2, size)
}

// beside sets words to the right of a bar whose words begin at y, clear of the
// page's number, or below the bar where there is too little room.
func (f *Format) beside(bar Block, words string, indent, y, size int) Block {
	wide := f.Wide()
	if f.Number != nil {
		wide -= f.width(f.Number(888, 888), size) + 3*mm
	}
	if wide-indent < 12*size {
		indent, y = 0, y+2*size
	}
	said := f.words(words, size, indent, max(wide-indent, 1))
	bar.Items = append(bar.Items, svg.Moved(said.Items, svg.XY{Y: y - size})...)
	bar.Height = max(bar.Height, y-size+said.Height)
	return bar
}
