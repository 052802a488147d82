package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	svgo "github.com/ajstarks/svgo/float"
)

// sheet is the one way to the SVG library, which neither escapes attributes nor
// checks numbers nor keeps errors: everything here is escaped and checked, and
// the first error stays. The bytes gather in memory, for a file is written
// whole or not at all.
type sheet struct {
	bytes.Buffer
	elements *svgo.SVG
	err      error
}

func newSheet() *sheet {
	s := &sheet{}
	s.elements = svgo.New(&s.Buffer)
	s.elements.Decimals = 3
	return s
}

// fail keeps the first error.
func (s *sheet) fail(format string, args ...any) {
	if s.err == nil {
		s.err = fmt.Errorf("svg: "+format, args...)
	}
}

// attributes are written in the order in which they were set.
type attributes []string

// set adds name="value" unless the value is empty.
func (a *attributes) set(name, value string) {
	if value != "" {
		*a = append(*a, name+`="`+escape(value)+`"`)
	}
}

// escape makes any text safe between tags and between quotes. What XML does not
// allow, such as most control characters, becomes the replacement character.
func escape(text string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) // a Builder never fails
	return b.String()
}

// farthest is how far out a coordinate can be: 100 m. Renderers count in single
// precision, and nothing on paper is farther.
const farthest Micrometre = 100_000_000

// mm is the only number format: millimetres with at most three decimals and no
// trailing zeros, exponent or negative zero.
func (s *sheet) mm(v Micrometre) string {
	s.check(v)
	sign := ""
	if v < 0 {
		sign, v = "-", -v
	}
	whole := sign + strconv.Itoa(v/1000)
	if v%1000 == 0 {
		return whole
	}
	return whole + "." + strings.TrimRight(fmt.Sprintf("%03d", v%1000), "0")
}

func (s *sheet) check(v Micrometre) {
	if v < -farthest || v > farthest {
		s.fail("a length of %d µm is beyond the largest, %d", v, farthest)
	}
}

var colour = regexp.MustCompile(`^#[0-9a-f]{6}$`)

// colour checks a colour; an empty one stands for none.
func (s *sheet) colour(c string) string {
	if c != "" && !colour.MatchString(c) {
		s.fail("the colour %q is not of the form #rrggbb, in lower case", c)
	}
	return c
}

// units are the library's numbers, which it prints with three decimals.
func (s *sheet) units(v Micrometre) float64 {
	s.check(v)
	return float64(v) / 1000
}

func (s *sheet) line(from, to XY, a attributes) {
	s.trimmed(func() {
		s.elements.Line(s.units(from.X), s.units(from.Y), s.units(to.X), s.units(to.Y), a...)
	})
}

func (s *sheet) circle(centre XY, radius Micrometre, a attributes) {
	s.trimmed(func() {
		s.elements.Circle(s.units(centre.X), s.units(centre.Y), s.units(radius), a...)
	})
}

// path takes data made of letters and mm numbers only.
func (s *sheet) path(data string, a attributes) { s.elements.Path(data, a...) }

func (s *sheet) startGroup(a attributes) { s.elements.Group(a...) }
func (s *sheet) endGroup()               { s.elements.Gend() }

// startText begins words at a place, that spans with places of their own go on.
func (s *sheet) startText(at XY, a attributes) {
	s.trimmed(func() { s.elements.Textspan(s.units(at.X), s.units(at.Y), "", a...) })
}

func (s *sheet) span(text string, a attributes) { s.elements.Span(text, a...) }
func (s *sheet) endText()                       { s.elements.TextEnd() }

// The library's numbers in attributes that end in zeros: it prints three decimals always.
var zeros = regexp.MustCompile(`\.000"|(\.[0-9])00"|(\.[0-9]{2})0"`)

// trimmed cuts the trailing zeros of the numbers that the library prints in an
// element. That is safe since no words of the user's are in these elements.
func (s *sheet) trimmed(element func()) {
	start := s.Len()
	element()
	short := zeros.ReplaceAll(s.Bytes()[start:], []byte(`$1$2"`))
	s.Truncate(start)
	s.Write(short)
}

// described is an element of words with an id, which the library's have not.
func (s *sheet) described(tag, id, text string) {
	fmt.Fprintf(s, "<%s id=\"%s\">%s</%s>\n", tag, escape(id), escape(text), tag)
}

// startRoot opens the drawing. The library's own root would bring a comment, a
// name space that is not used, and numbers of another format.
func (s *sheet) startRoot(width, height Micrometre, a attributes) {
	w, h := s.mm(width), s.mm(height)
	root := attributes{}
	root.set("xmlns", "http://www.w3.org/2000/svg")
	root.set("width", w+"mm")
	root.set("height", h+"mm")
	root.set("viewBox", "0 0 "+w+" "+h)
	fmt.Fprintf(s, "<svg %s>\n", strings.Join(append(root, a...), " "))
}

func (s *sheet) endRoot() { s.elements.End() }
