package source

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The width of an excerpt in terminal columns, and what a tab becomes.
const (
	maxWidth = 100
	tab      = "    "
)

// cell is one character of a line as a terminal shows it.
type cell struct {
	shown string
	width int // in terminal columns: 0, 1, 2, or what an escape takes
	size  int // in bytes of the source
}

// cells cuts a line into characters, each as it may safely be shown.
func cells(line string) []cell {
	var all []cell
	for i := 0; i < len(line); {
		r, size := utf8.DecodeRuneInString(line[i:])
		c := cell{line[i : i+size], width(r), size}
		if s := escaped(r, size, line[i]); s != "" {
			c.shown, c.width = s, len(s)
		}
		all = append(all, c)
		i += size
	}
	return all
}

// escaped is what stands for a character that a terminal would obey, hide or
// reorder by; "" for the others.
func escaped(r rune, size int, first byte) string {
	switch {
	case r == '\t':
		return tab
	case r == utf8.RuneError && size == 1:
		return fmt.Sprintf(`\x%02X`, first)
	case r == '\u200c' || r == '\u200d': // they join and part letters
		return ""
	case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co, unicode.Cs):
		return fmt.Sprintf(`\u%04X`, r)
	}
	return ""
}

// escape makes a text from a source fit to print.
func escape(text string) string {
	if strings.IndexFunc(text, suspicious) < 0 {
		return text
	}
	var b strings.Builder
	for _, c := range cells(text) {
		b.WriteString(c.shown)
	}
	return b.String()
}

func suspicious(r rune) bool { return r < ' ' || r >= 0x7f }

// wide are the blocks whose characters take two columns (after the East Asian
// Width property, values W and F).
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115f, Stride: 1}, {Lo: 0x2e80, Hi: 0x303e, Stride: 1}, {Lo: 0x3041, Hi: 0x33ff, Stride: 1},
		{Lo: 0x3400, Hi: 0x4dbf, Stride: 1}, {Lo: 0x4e00, Hi: 0x9fff, Stride: 1}, {Lo: 0xa000, Hi: 0xa4cf, Stride: 1},
		{Lo: 0xac00, Hi: 0xd7a3, Stride: 1}, {Lo: 0xf900, Hi: 0xfaff, Stride: 1}, {Lo: 0xfe30, Hi: 0xfe6f, Stride: 1},
		{Lo: 0xff00, Hi: 0xff60, Stride: 1}, {Lo: 0xffe0, Hi: 0xffe6, Stride: 1},
	},
	R32: []unicode.Range32{{Lo: 0x1f300, Hi: 0x1faff, Stride: 1}, {Lo: 0x20000, Hi: 0x3fffd, Stride: 1}},
}

// width is the number of columns that a character takes.
func width(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me) || r == '\u200c' || r == '\u200d':
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}

// clip is a stretch of a line, and where the carets go: in terminal columns.
type clip struct {
	text          string
	before, under int
}

// excerpt shows a line so that the bytes start..start+size are in it. Of a
// line of any length it looks only at what may be shown.
func excerpt(line string, start, size int) clip {
	const reach = 8 * maxWidth
	from, to := max(0, start-reach), min(len(line), start+reach)
	for from > 0 && !utf8.RuneStart(line[from]) {
		from--
	}
	for to < len(line) && !utf8.RuneStart(line[to]) {
		to++
	}
	return window(cells(line[from:to]), start-from, min(size, to-start))
}

// window cuts cells that are too many for one line on both sides of the bytes
// start..start+size.
func window(all []cell, start, size int) clip {
	first, last := cellRange(all, start, size)
	from, to := first, first
	total := 0
	grow := func(c cell) bool {
		total += c.width
		return total <= maxWidth
	}
	for to < last && grow(all[to]) {
		to++
	}
	for from > 0 && (total < maxWidth*2/3 || to == len(all)) && grow(all[from-1]) {
		from--
	}
	for to < len(all) && grow(all[to]) {
		to++
	}
	for from > 0 && grow(all[from-1]) {
		from--
	}
	return show(all, from, to, first, last)
}

// cellRange are the cells that hold the bytes start..start+size.
func cellRange(all []cell, start, size int) (first, last int) {
	at := 0
	for first < len(all) && at+all[first].size <= start {
		at += all[first].size
		first++
	}
	last = first
	for last < len(all) && at < start+size {
		at += all[last].size
		last++
	}
	return first, last
}

// show draws the cells from..to; the carets stand under first..last.
func show(all []cell, from, to, first, last int) clip {
	var b strings.Builder
	var c clip
	if from > 0 {
		b.WriteString("…")
		c.before = 1
	}
	for i := from; i < to; i++ {
		b.WriteString(all[i].shown)
		switch {
		case i < first:
			c.before += all[i].width
		case i < last:
			c.under += all[i].width
		}
	}
	if to < len(all) {
		b.WriteString("…")
	}
	c.text = strings.TrimRight(b.String(), " ")
	return c
}
