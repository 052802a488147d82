package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"
)

// The subset in one table: which attributes an element may have, and what each
// attribute may hold. Numbers have three decimals at most and no needless zeros.
const (
	over = `([1-9][0-9]*(\.[0-9]{0,2}[1-9])?|0\.[0-9]{0,2}[1-9])`
	num  = `(0|-?` + over + `)`
	ink  = "stroke stroke-width stroke-dasharray stroke-linecap stroke-linejoin fill class role aria-label "
)

var elements = map[string]string{
	"svg":    "xmlns width height viewBox role lang aria-labelledby",
	"title":  "id",
	"desc":   "id",
	"g":      ink,
	"line":   ink + "x1 y1 x2 y2",
	"circle": ink + "cx cy r",
	"path":   ink + "d",
	"text":   ink + "x y font-family aria-hidden",
	"tspan":  ink + "x y font-size font-style",
}

var attributeForms = map[string]string{
	"xmlns": `http://www\.w3\.org/2000/svg`, "width": over + "mm", "height": over + "mm", "viewBox": "0 0 " + over + " " + over,
	"role": "graphics-document document|img", "lang": "[A-Za-z0-9-]+", "id": "[A-Za-z][A-Za-z0-9_-]*",
	"aria-labelledby": "[A-Za-z][A-Za-z0-9_-]*( [A-Za-z][A-Za-z0-9_-]*)?", "aria-label": "(?s).+", "aria-hidden": "true",
	"class": "[A-Za-z][A-Za-z0-9-]*( [A-Za-z][A-Za-z0-9-]*)*", "fill": "#[0-9a-f]{6}|none", "stroke": "#[0-9a-f]{6}",
	"stroke-width": over, "stroke-dasharray": over + "( " + over + ")*", "stroke-linecap": "butt|round", "stroke-linejoin": "round",
	"x1": num, "y1": num, "x2": num, "y2": num, "cx": num, "cy": num, "r": over, "x": num, "y": num,
	"d": "M" + num + " " + num + "( [ML]" + num + " " + num + "| C" + num + "( " + num + "){5}| A" + over + " " + over +
		" 0 [01] [01] " + num + " " + num + "| Z)+",
	"font-family": "[A-Za-z, -]+", "font-size": over, "font-style": "italic",
}

// checkSubset reads a drawing as XML and holds it to the table.
func checkSubset(drawing []byte) error {
	forms := map[string]*regexp.Regexp{}
	for name, form := range attributeForms {
		forms[name] = regexp.MustCompile(`^(` + form + `)$`)
	}
	decoder := xml.NewDecoder(bytes.NewReader(drawing))
	ids := map[string]bool{}
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		switch v := token.(type) {
		case xml.StartElement:
			if err := checkElement(v, forms, ids); err != nil {
				return err
			}
		case xml.Comment, xml.ProcInst, xml.Directive:
			return fmt.Errorf("a %T", v)
		}
	}
}

func checkElement(e xml.StartElement, forms map[string]*regexp.Regexp, ids map[string]bool) error {
	allowed, ok := elements[e.Name.Local]
	if !ok || e.Name.Space != "http://www.w3.org/2000/svg" {
		return fmt.Errorf("the element %v", e.Name)
	}
	for _, a := range e.Attr {
		name := a.Name.Local
		if a.Name.Space != "" || !strings.Contains(" "+allowed+" ", " "+name+" ") {
			return fmt.Errorf("the attribute %v of %s", a.Name, e.Name.Local)
		}
		if !forms[name].MatchString(a.Value) {
			return fmt.Errorf("%s=%q of %s", name, a.Value, e.Name.Local)
		}
		if name == "id" && ids[a.Value] {
			return fmt.Errorf("the id %s twice", a.Value)
		}
		ids[a.Value] = ids[a.Value] || name == "id"
	}
	return nil
}

func TestSubset(t *testing.T) {
	for _, o := range []Options{{}, {LiveText: true}} {
		if err := checkSubset(written(t, everything(), o)); err != nil {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// faults are changes to a drawing that take it out of the subset; none is
// caught by being no XML.
var faults = []struct{ from, to string }{
	{`width="100.013mm"`, `width="1e2mm"`},
	{`width="100.013mm"`, `width="100.0131mm"`},
	{`viewBox="0 0 `, `viewBox="0 0 0 `},
	{`fill="none"`, `fill="rgba(0,0,0,1)"`},
	{`fill="none"`, `fill="transparent"`},
	{`stroke="#000000"`, `stroke="#00000080"`},
	{`stroke="#000000"`, `stroke="black"`},
	{`cx="30"`, `cx="NaN"`},
	{`cx="30"`, `cx="-0"`},
	{`cx="30"`, `cx="30.0"`},
	{`r="20.005"`, `r="+Inf"`},
	{`r="20.005"`, `r="2e1"`},
	{`r="20.005"`, `r="-1"`},
	{`M60 10`, `m60 10`},
	{`L90 10`, `L90 NaN`},
	{`L90 10`, `H90`},
	{`A25 25 0 0 1`, `A25 25 0 001`},
	{`<line `, `<line style="stroke:red" `},
	{`<line `, `<line onclick="x()" `},
	{`<line `, `<line vector-effect="non-scaling-stroke" `},
	{`<line `, `<line marker-end="url(#a)" `},
	{`<text `, `<text dy="1" `},
	{`<text `, `<text dominant-baseline="middle" `},
	{`</svg>`, `<style>line{stroke:red}</style></svg>`},
	{`</svg>`, `<script>x()</script></svg>`},
	{`</svg>`, `<g><foreignObject/></g></svg>`},
	{`</svg>`, `<g><image href="x"/></g></svg>`},
	{`</svg>`, `<g><a xmlns="http://www.w3.org/1999/xhtml"/></g></svg>`},
}

func faulty(t *testing.T, i int) []byte {
	t.Helper()
	good := written(t, everything(), Options{})
	bad := bytes.Replace(good, []byte(faults[i].from), []byte(faults[i].to), 1)
	if bytes.Equal(good, bad) {
		t.Fatalf("%s is not in the drawing", faults[i].from)
	}
	return bad
}

func TestSubsetFindsFaults(t *testing.T) {
	for i, f := range faults {
		if err := checkSubset(faulty(t, i)); err == nil {
			t.Errorf("%s for %s passes", f.to, f.from)
		}
	}
}

var hostile = []string{
	`"><script>alert(1)</script>`, `' onload='x()`, `</title></svg><svg onload="x()">`, "]]>", "<!--", "&lt;&amp;&#0;",
	"a\x00b\x1b[31m\x7f", "\xff\xfe", "\ufffe\uffff", "\u202etxt", "line\r\nbreak\ttab", "%s%d", "\U0001F600", "\ufeff", " ", `"1.000"`,
}

func TestHostileWords(t *testing.T) {
	for _, words := range hostile {
		d := &Doc{Width: 1000, Height: 1000, ID: words, Title: words, Desc: words, Groups: []Group{{Items: []Item{
			Text{Runs: Label(words, true), Size: 3500, Fill: black},
			Text{Runs: []Run{{Text: words, Italic: true}}, Size: 3500, Fill: black},
		}}}}
		for _, o := range []Options{{}, {LiveText: true}} {
			got := written(t, d, o)
			if err := checkSubset(got); err != nil {
				t.Errorf("%q: %v in\n%s", words, err, got)
			}
			if title := textOf(t, got, "title"); title != replaced(words) {
				t.Errorf("the title %q reads %q", words, title)
			}
		}
	}
}

// replaced is text with U+FFFD for what XML cannot hold.
func replaced(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0xFFFE || r == 0xFFFF {
			return 0xFFFD
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD\uFFFD"))
}

// textOf is what the first element of a name holds.
func textOf(t *testing.T, drawing []byte, element string) string {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(drawing))
	for {
		token, err := decoder.Token()
		if err != nil {
			t.Fatalf("no %s: %v", element, err)
		}
		if start, ok := token.(xml.StartElement); ok && start.Name.Local == element {
			var text string
			if err := decoder.DecodeElement(&text, &start); err != nil {
				t.Fatal(err)
			}
			return text
		}
	}
}
