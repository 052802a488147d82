package svg

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"trammel/svg/glyph"
)

// Options says how a Doc is written.
type Options struct {
	LiveText bool // letters stay letters, for editing, and look as the reader's fonts do
}

// maxBytes is how large a file may be: 16 MiB.
const maxBytes = 16 << 20

// Write writes the drawing, wholly or not at all. The bytes depend on nothing
// but the drawing and the options.
func (d *Doc) Write(w io.Writer, o Options) error {
	if d.Width <= 0 || d.Height <= 0 {
		return fmt.Errorf("svg: the drawing is %d by %d µm: both must be over 0", d.Width, d.Height)
	}
	s := newSheet()
	d.start(s)
	for i := range d.Groups {
		s.group(&d.Groups[i], o)
		if s.err != nil {
			return fmt.Errorf("%w (group %d, %q)", s.err, i, d.Groups[i].Class)
		}
	}
	s.endRoot()
	if s.err != nil {
		return s.err
	}
	_, err := s.WriteTo(w)
	return err
}

// Check tells whether the drawing can be written, as Write would, and so
// whether the writers of other formats can rely on it.
func (d *Doc) Check() error { return d.Write(io.Discard, Options{LiveText: true}) }

var language = regexp.MustCompile(`^[A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*$`)

// start opens the root and describes the drawing to those who cannot see it.
func (d *Doc) start(s *sheet) {
	if d.Lang != "" && !language.MatchString(d.Lang) {
		s.fail("the language %q is not a tag like en or pt-BR", d.Lang)
	}
	words := []struct{ tag, text string }{{"title", d.Title}, {"desc", d.Desc}}
	var ids []string
	for _, e := range words {
		if e.text != "" {
			ids = append(ids, d.id(e.tag))
		}
	}
	a := attributes{}
	a.set("role", "graphics-document document")
	a.set("lang", d.Lang)
	a.set("aria-labelledby", strings.Join(ids, " "))
	s.startRoot(d.Width, d.Height, a)
	for _, e := range words {
		if e.text != "" {
			s.described(e.tag, d.id(e.tag), e.text)
		}
	}
}

var notInID = regexp.MustCompile(`[^A-Za-z0-9_-]+`)

// id is a name with the drawing's prefix, so that several drawings can stand in
// one page. It starts with a letter, whatever the prefix does.
func (d *Doc) id(name string) string {
	prefix := strings.TrimLeft(notInID.ReplaceAllString(d.ID, "-"), "-_0123456789")
	if prefix == "" {
		prefix = "figure"
	}
	return prefix + "-" + name
}

var class = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9-]*( [A-Za-z][A-Za-z0-9-]*)*$`)

func (s *sheet) group(g *Group, o Options) {
	if len(g.Items) == 0 {
		return
	}
	a := s.hook(g.Class)
	a.set("fill", "none")
	a.set("stroke-linecap", "round")
	a.set("stroke-linejoin", "round")
	s.startGroup(a)
	for _, item := range g.Items {
		s.item(item, o)
		if s.Len() > maxBytes {
			s.fail("the drawing needs more than the %d MiB that a file may have", maxBytes>>20)
		}
		if s.err != nil {
			return
		}
	}
	s.endGroup()
}

// hook checks a class.
func (s *sheet) hook(words string) attributes {
	if words != "" && !class.MatchString(words) {
		s.fail("a class is words of letters, digits and hyphens, not %q", words)
	}
	a := attributes{}
	a.set("class", words)
	return a
}

func (s *sheet) item(item Item, o Options) {
	switch v := item.(type) {
	case Path:
		s.stroke(v)
	case Disc:
		if v.Radius <= 0 {
			s.fail("a circle has the radius %d µm", v.Radius)
		}
		s.circle(v.Centre, v.Radius, s.ink(v.Ink, v.Class))
	case Text:
		s.text(v, o)
	default:
		s.fail("%T is no item that can be drawn", item)
	}
}

// ink checks how an item is drawn: one that nobody could see is an error.
func (s *sheet) ink(ink Ink, class string) attributes {
	a := s.hook(class)
	if ink.Width < 0 || ink.Width > 0 && ink.Stroke == "" || ink.Width == 0 && ink.Fill == "" {
		s.fail("an item has no ink: stroke %q of %d µm, fill %q", ink.Stroke, ink.Width, ink.Fill)
	}
	if ink.Width > 0 {
		a.set("stroke", s.colour(ink.Stroke))
		a.set("stroke-width", s.mm(ink.Width))
		a.set("stroke-dasharray", s.dashes(ink.Dash))
		if len(ink.Dash) > 0 {
			a.set("stroke-linecap", "butt")
		}
	}
	a.set("fill", s.colour(ink.Fill))
	return a
}

func (s *sheet) dashes(lengths []Micrometre) string {
	numbers := make([]string, len(lengths))
	for i, v := range lengths {
		if v <= 0 {
			s.fail("a dash or gap is %d µm long", v)
		}
		numbers[i] = s.mm(v)
	}
	return strings.Join(numbers, " ")
}

// stroke draws a path; one straight piece is a line.
func (s *sheet) stroke(p Path) {
	if len(p.Pieces) == 0 {
		s.fail("a path goes nowhere from (%d, %d)", p.Start.X, p.Start.Y)
		return
	}
	if len(p.Pieces) == 1 && p.Pieces[0].Radius == 0 && p.Fill == "" {
		s.line(p.Start, p.Pieces[0].To, s.ink(p.Ink, p.Class))
		return
	}
	data := []string{"M" + s.pair(p.Start)}
	for _, piece := range p.Pieces {
		data = append(data, s.piece(piece))
	}
	if p.Closed {
		data = append(data, "Z")
	}
	s.path(strings.Join(data, " "), s.ink(p.Ink, p.Class))
}

func (s *sheet) piece(p Piece) string {
	if p.Radius < 0 {
		s.fail("an arc has the radius %d µm", p.Radius)
	}
	if p.Radius == 0 {
		return "L" + s.pair(p.To)
	}
	r := s.mm(p.Radius)
	return "A" + r + " " + r + " 0 " + digit(p.Large) + " " + digit(p.Clockwise) + " " + s.pair(p.To)
}

func (s *sheet) pair(at XY) string { return s.mm(at.X) + " " + s.mm(at.Y) }

func digit(set bool) string {
	if set {
		return "1"
	}
	return "0"
}

// text draws letters as outlines that look the same everywhere, with the words
// beside them for those who listen. Letters without an outline stay letters.
func (s *sheet) text(t Text, o Options) {
	if t.Size <= 0 || t.Fill == "" {
		s.fail("the text %q has no ink: size %d µm, fill %q", t, t.Size, t.Fill)
		return
	}
	b := t.set()
	live := !t.Braille && (o.LiveText || b.missing)
	shapes := b.roots
	if !live {
		shapes = append(shapes, b.signs...)
	}
	outline := outlines(shapes, glyph.Point(t.At))
	if len(outline) > 0 {
		a := s.hook(t.Class)
		a.set("fill", s.colour(t.Fill))
		a.set("role", "img")
		a.set("aria-label", t.String())
		s.path(s.outline(outline), a)
	}
	if live {
		s.words(b.words, t, len(outline) > 0)
	}
}

// outline is closed contours as path data.
func (s *sheet) outline(segments []glyph.Segment) string {
	var data []string
	for i, g := range segments {
		if g.Op == 'M' && i > 0 {
			data = append(data, "Z")
		}
		var numbers []string
		for _, p := range g.Points() {
			numbers = append(numbers, s.pair(XY(p)))
		}
		data = append(data, string(g.Op)+strings.Join(numbers, " "))
	}
	return strings.Join(append(data, "Z"), " ")
}

// words writes text that stays text, each word at its own place, for renderers
// do not agree on spans that are placed relative to each other. They are not
// read out where an outline beside them has said it all.
func (s *sheet) words(words []word, t Text, said bool) {
	family := "STIX Two Text, Times New Roman, Times, serif"
	if t.Sans {
		family = "Arial, Helvetica, sans-serif"
	}
	a := s.hook(t.Class)
	a.set("fill", s.colour(t.Fill))
	a.set("font-family", family)
	if said {
		a.set("aria-hidden", "true")
	}
	s.startText(t.At, a)
	for _, w := range words {
		a := attributes{}
		a.set("x", s.mm(t.At.X+w.X))
		a.set("y", s.mm(t.At.Y+w.Y))
		a.set("font-size", s.mm(w.face.Em(w.size)))
		if w.face == glyph.Italic {
			a.set("font-style", "italic")
		}
		s.span(w.text, a)
	}
	s.endText()
}
