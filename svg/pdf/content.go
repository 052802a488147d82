package pdf

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"

	"trammel/svg"
	"trammel/svg/glyph"
)

// content is the operators that draw one page, in millimetres from its upper
// left corner, with Y down.
type content struct {
	bytes.Buffer
	document *document
	height   svg.Micrometre
	fonts    []*font
	state    map[string]string // what each operator of ink has set last
	marked   int               // how many stretches are marked content
}

// toPoints turns millimetres into points.
const toPoints = "2.834645669291"

func (c *content) draw(d *svg.Doc) error {
	c.state = map[string]string{}
	fmt.Fprintf(c, "q %s 0 0 -%s 0 %.9f cm 1 j\n", toPoints, toPoints, float64(points(c.height)))
	c.tag("Figure", "")
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if err := c.item(item); err != nil {
				return err
			}
			if c.Len() > maxBytes {
				return fmt.Errorf("the drawing needs more than the %d MiB that a page may have", maxBytes>>20)
			}
		}
	}
	c.WriteString("EMC Q\n")
	return nil
}

func (c *content) item(item svg.Item) error {
	switch v := item.(type) {
	case svg.Path:
		c.shape(v.Ink, v.Stretches(), v.Closed)
	case svg.Disc:
		c.shape(v.Ink, v.Stretches(), true)
	case svg.Text:
		return c.text(v)
	}
	return nil
}

// shape strokes and fills.
func (c *content) shape(ink svg.Ink, outline []svg.Stretch, closed bool) {
	c.setInk(ink)
	c.WriteString(at(outline[0].From) + " m\n")
	for _, s := range outline {
		c.stretch(s)
	}
	if closed {
		c.WriteString("h ")
	}
	switch {
	case ink.Width > 0 && ink.Fill != "":
		c.WriteString("B\n")
	case ink.Width > 0:
		c.WriteString("S\n")
	default:
		c.WriteString("f\n")
	}
}

// stretch draws a line, or a cubic curve from each spoke of an arc to the next.
// With both handles 4/3 tan(θ/4) of the radius long, where θ is the turn, such
// a curve has the circle's ends, middle and directions.
func (c *content) stretch(s svg.Stretch) {
	if len(s.Spokes) == 0 {
		c.WriteString(at(s.To) + " l\n")
	}
	for i := 1; i < len(s.Spokes); i++ {
		u, v := s.Spokes[i-1], s.Spokes[i]
		a, b := s.On(i-1), s.On(i)
		sine, cosine := u.X*v.Y-u.Y*v.X, u.X*v.X+u.Y*v.Y
		half := sine / (1 + cosine) // tan θ/2, negative anticlockwise
		handle := s.Radius * 4 / 3 * half / (1 + math.Sqrt(1+half*half))
		c.WriteString(strings.Join([]string{
			at(svg.Place{X: a.X - u.Y*handle, Y: a.Y + u.X*handle}),
			at(svg.Place{X: b.X + v.Y*handle, Y: b.Y - v.X*handle}),
			at(b), "c\n"}, " "))
	}
}

// setInk sets what is not set so already. Dashes are cut square.
func (c *content) setInk(ink svg.Ink) {
	if ink.Fill != "" {
		c.set("rg", colour(ink.Fill))
	}
	if ink.Width == 0 {
		return
	}
	round, dashes := "1", make([]string, len(ink.Dash))
	for i, d := range ink.Dash {
		round, dashes[i] = "0", mm(float64(d))
	}
	c.set("RG", colour(ink.Stroke))
	c.set("w", mm(float64(ink.Width)))
	c.set("J", round)
	c.set("d", "["+strings.Join(dashes, " ")+"] 0")
}

func (c *content) set(operator, operand string) {
	if c.state[operator] != operand {
		c.state[operator] = operand
		c.WriteString(operand + " " + operator + "\n")
	}
}

// colour is "#rrggbb" as three numbers from 0 to 1.
func colour(hex string) string {
	n, _ := strconv.ParseUint(hex[1:], 16, 32) // the drawing has been checked
	return fmt.Sprintf("%s %s %s", share(n>>16), share(n>>8&255), share(n&255))
}

func share(n uint64) string { return strconv.FormatFloat(float64(n)/255, 'f', -1, 32) }

// at is a place in millimetres.
func at(p svg.Place) string { return mm(p.X) + " " + mm(p.Y) }

// mm is a length given in micrometres, in millimetres, to a tenth of a micrometre.
func mm(v float64) string {
	tenths := int64(math.Round(v * 10))
	sign := ""
	if tenths < 0 {
		sign, tenths = "-", -tenths
	}
	whole := sign + strconv.FormatInt(tenths/10_000, 10)
	if tenths%10_000 == 0 {
		return whole
	}
	return whole + "." + strings.TrimRight(fmt.Sprintf("%04d", tenths%10_000), "0")
}

// tag begins marked content. Words take the place of what is in it for those who
// search or copy.
func (c *content) tag(kind, instead string) {
	if instead != "" {
		instead = "/ActualText " + words(instead).PDFString()
	}
	fmt.Fprintf(c, "/%s <</MCID %d%s>> BDC\n", kind, c.marked, instead)
	c.marked++
}

// text sets words, and fills roots, bars and braille. What can be found and
// copied is what one would type: that has to be said where letters are lowered,
// for some readers take them for another line, and where shapes stand for letters.
func (c *content) text(t svg.Text) error {
	set := t.Set()
	if set.Lacks != 0 {
		return &svg.Unlettered{Letter: set.Lacks, Text: t.String()}
	}
	lowered := func(r svg.Run) bool { return r.Sub }
	if len(set.Shapes) == 0 && !slices.ContainsFunc(t.Runs, lowered) {
		c.set("rg", colour(t.Fill))
		c.letters(set.Letters)
		return nil
	}
	c.WriteString("EMC\n")
	c.tag("Span", t.String())
	c.set("rg", colour(t.Fill))
	c.outline(set.Shapes)
	c.letters(set.Letters)
	c.WriteString("EMC\n")
	c.tag("Figure", "")
	return nil
}

// letters shows letters, those of one font at a time.
func (c *content) letters(all []svg.Letter) {
	for len(all) > 0 {
		n := sameFont(all)
		c.run(all[:n])
		all = all[n:]
	}
}

// outline fills closed contours.
func (c *content) outline(segments []glyph.Segment) {
	if len(segments) == 0 {
		return
	}
	operators := map[byte]string{'M': "m", 'L': "l", 'C': "c"}
	for _, s := range segments {
		for _, p := range s.Points() {
			c.WriteString(at(svg.Place{X: float64(p.X), Y: float64(p.Y)}) + " ")
		}
		c.WriteString(operators[s.Op] + "\n")
	}
	c.WriteString("f\n")
}

// sameFont is how many letters follow each other in one face, size and line.
func sameFont(letters []svg.Letter) int {
	first, _ := face(letters[0])
	for i, l := range letters {
		if f, _ := face(l); f != first || l.Size != letters[0].Size || l.At.Y != letters[0].At.Y {
			return i
		}
	}
	return len(letters)
}

// face is where a letter's shape comes from, and its number there.
func face(l svg.Letter) (glyph.Face, uint16) {
	from, number, _ := l.Face.Find(l.Sign)
	return from, number
}

// run shows letters of one font. Between them stand corrections, in thousandths
// of the size, wherever the next is not where the widths in the font put it.
func (c *content) run(letters []svg.Letter) {
	from, _ := face(letters[0])
	f := c.font(from)
	size := from.Em(letters[0].Size)
	start := letters[0].At
	fmt.Fprintf(c, "BT /%s %s Tf 1 0 0 -1 %s %s Tm [<", f.name, mm(float64(size)), mm(float64(start.X)), mm(float64(start.Y)))
	pen := float64(start.X)
	for _, l := range letters {
		if off := pen - float64(l.At.X); math.Abs(off) >= 0.5 {
			correction := math.Round(off * 1e6 / float64(size))
			fmt.Fprintf(c, ">%s<", mm(correction))
			pen -= correction * float64(size) / 1e6
		}
		_, number := face(l)
		code := f.code(number, l.Sign)
		fmt.Fprintf(c, "%04X", code)
		pen += float64(f.widths[code]) * float64(size) / 1000
	}
	c.WriteString(">] TJ ET\n")
}

// font is a face under its name on this page.
func (c *content) font(from glyph.Face) *font {
	f := c.document.font(from)
	for _, known := range c.fonts {
		if known == f {
			return f
		}
	}
	c.fonts = append(c.fonts, f)
	return f
}

// resources are the fonts of the page.
func (c *content) resources() types.Dict {
	fonts := types.Dict{}
	for _, f := range c.fonts {
		fonts[f.name] = f.ref
	}
	return types.Dict{"Font": fonts}
}
