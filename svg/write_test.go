package svg

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden drawings")

const black = "#000000"

// everything is a Doc with every feature that there is.
func everything() *Doc {
	thin := Ink{Stroke: "#767676", Width: 180}
	return &Doc{
		Width: PadToPixels(100_000), Height: PadToPixels(60_000),
		ID: "square on AB", Lang: "en-GB", Title: `Arcs & "lines" < 5`, Desc: "Every kind of thing, once.\nIn no order.",
		Groups: []Group{
			{Class: "construction", Items: []Item{
				Path{Ink: thin, Start: XY{10_000, 30_000}, Pieces: []Piece{{To: XY{50_000, 30_000}, Radius: 25_000, Clockwise: true}}},
				Path{Ink: thin, Start: XY{10_000, 30_000}, Pieces: []Piece{{To: XY{50_000, 30_000}, Radius: 25_000, Large: true}}},
				Disc{Ink: thin, Centre: XY{30_000, 30_000}, Radius: 20_005},
				Path{Ink: Ink{Stroke: black, Width: 350, Dash: []Micrometre{2000, 1050}}, Start: XY{-500, 0}, Pieces: []Piece{{To: XY{50_000, 7}}}},
			}},
			{Class: "empty"},
			{Class: "result shaded", Items: []Item{
				Path{Ink: Ink{Stroke: black, Width: 500, Fill: "#e6e6e6"}, Class: "s2 s3 s4", Closed: true, Start: XY{60_000, 10_000},
					Pieces: []Piece{{To: XY{90_000, 10_000}}, {To: XY{75_000, 35_120}}}},
				Path{Ink: Ink{Stroke: black, Width: 500}, Class: "s1", Start: XY{60_000, 40_000}, Pieces: []Piece{{To: XY{90_000, 40_100}}}},
				Disc{Ink: Ink{Fill: black}, Class: "p1", Centre: XY{60_000, 10_000}, Radius: 600},
			}},
			{Items: []Item{
				label("P1", true, 10_000, 50_000),
				label("√(10 + 2√5) cm", false, 20_000, 50_000),
				label("中", true, 80_000, 50_000),
				label("√א", false, 90_000, 50_000),
				Text{At: XY{60_000, 50_000}, Class: "note p1", Runs: Label("Café", false), Size: 3500, Fill: "#0072b2", Sans: true},
			}},
		},
	}
}

func label(text string, name bool, x, y Micrometre) Text {
	return Text{At: XY{x, y}, Runs: Label(text, name), Size: 3500, Fill: black}
}

func written(t *testing.T, d *Doc, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGolden(t *testing.T) {
	for _, test := range []struct {
		file    string
		options Options
	}{
		{"../testdata/svg/everything.svg", Options{}},
		{"../testdata/svg/everything-live.svg", Options{LiveText: true}},
	} {
		got := written(t, everything(), test.options)
		if !bytes.Equal(got, written(t, everything(), test.options)) {
			t.Errorf("%s: two writings differ", test.file)
		}
		if *update {
			if err := os.WriteFile(test.file, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(test.file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s: the drawing has changed:\n%s", test.file, got)
		}
	}
}

func TestElements(t *testing.T) {
	got := string(written(t, everything(), Options{}))
	for _, want := range []string{
		`<svg xmlns="http://www.w3.org/2000/svg" width="100.013mm" height="60.061mm" viewBox="0 0 100.013 60.061" role="graphics-document document" lang="en-GB" aria-labelledby="square-on-AB-title square-on-AB-desc">` + "\n",
		`<title id="square-on-AB-title">Arcs &amp; &#34;lines&#34; &lt; 5</title>`,
		`<path d="M10 30 A25 25 0 0 1 50 30" stroke="#767676" stroke-width="0.18" />`,
		`<path d="M10 30 A25 25 0 1 0 50 30" stroke="#767676" stroke-width="0.18" />`,
		`<circle cx="30" cy="30" r="20.005" stroke="#767676" stroke-width="0.18" />`,
		`<line x1="-0.5" y1="0" x2="50" y2="0.007" stroke="#000000" stroke-width="0.35" stroke-dasharray="2 1.05" stroke-linecap="butt" />`,
		`<path d="M60 10 L90 10 L75 35.12 Z" class="s2 s3 s4" stroke="#000000" stroke-width="0.5" fill="#e6e6e6" />`,
		`<circle cx="60" cy="10" r="0.6" class="p1" fill="#000000" />`,
		`role="img" aria-label="√(10 + 2√5) cm"`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
	if strings.Contains(got, "empty") {
		t.Error("a group without items is written")
	}
}

func TestNumbers(t *testing.T) {
	for v, want := range map[Micrometre]string{
		0: "0", 1: "0.001", -1: "-0.001", 10: "0.01", -500: "-0.5", 1000: "1", -1000: "-1", 10_000: "10",
		100_050: "100.05", 1_234_567: "1234.567", -12_340: "-12.34", farthest: "100000",
	} {
		if got := newSheet().mm(v); got != want {
			t.Errorf("mm(%d) is %s, want %s", v, got, want)
		}
		s := newSheet()
		s.circle(XY{v, v}, v, nil)
		if got := s.String(); !strings.Contains(got, `cx="`+want+`" cy="`+want+`" r="`+want+`"`) {
			t.Errorf("the library writes %d as %s", v, got)
		}
	}
}

func TestErrors(t *testing.T) {
	line := func(ink Ink, to XY) Item { return Path{Ink: ink, Pieces: []Piece{{To: to}}} }
	pen := Ink{Stroke: black, Width: 350}
	for _, test := range []struct {
		item Item
		want string
	}{
		{line(Ink{Stroke: "black", Width: 350}, XY{1, 1}), `the colour "black" is not of the form #rrggbb`},
		{line(Ink{Stroke: `#000000" onload="x()`, Width: 350}, XY{1, 1}), "not of the form #rrggbb"},
		{line(Ink{Stroke: black, Width: -1}, XY{1, 1}), "an item has no ink"},
		{line(Ink{}, XY{1, 1}), "an item has no ink"},
		{line(Ink{Stroke: black, Width: 350, Dash: []Micrometre{1000, 0}}, XY{1, 1}), "a dash or gap is 0 µm long"},
		{line(pen, XY{farthest + 1, 0}), "a length of 100000001 µm is beyond the largest"},
		{line(pen, XY{math.MinInt, 0}), "is beyond the largest"},
		{Path{Ink: pen}, "a path goes nowhere from (0, 0)"},
		{Path{Ink: pen, Pieces: []Piece{{Radius: -1}}}, "an arc has the radius -1 µm"},
		{Disc{Ink: pen}, "a circle has the radius 0 µm"},
		{Text{Runs: Label("A", true), Size: 3500}, `the text "A" has no ink`},
		{Text{Runs: Label("A", true), Fill: black}, `the text "A" has no ink`},
		{&Disc{}, "*svg.Disc is no item"},
		{nil, "is no item"},
	} {
		d := &Doc{Width: 1000, Height: 1000, Groups: []Group{{Class: "given", Items: []Item{test.item}}}}
		var b bytes.Buffer
		err := d.Write(&b, Options{})
		if err == nil || !strings.Contains(err.Error(), test.want) || !strings.Contains(err.Error(), `(group 0, "given")`) {
			t.Errorf("%v: error %v, want %q", test.item, err, test.want)
		}
		if b.Len() > 0 {
			t.Errorf("%v: %d bytes were written before the error", test.item, b.Len())
		}
	}
	for _, d := range []*Doc{{Width: 0, Height: 1}, {Width: 1, Height: -1}, {Width: farthest + 1, Height: 1},
		{Width: 1, Height: 1, Lang: `en" onload="x`}, {Width: 1, Height: 1, Groups: []Group{{Class: `a"b`, Items: []Item{Disc{}}}}}} {
		if err := d.Write(io.Discard, Options{}); err == nil {
			t.Errorf("%+v is written", d)
		}
	}
}

// small takes a few bytes, then fails as a full disk does.
type small struct{ err error }

func (s small) Write(p []byte) (int, error) { return min(len(p), 10), s.err }

func TestWriterErrors(t *testing.T) {
	full := errors.New("no space left")
	if err := everything().Write(small{full}, Options{}); !errors.Is(err, full) {
		t.Errorf("the writer's error became %v", err)
	}
	if err := everything().Write(small{}, Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a short write became %v", err)
	}
}

func TestSizeLimit(t *testing.T) {
	long := Path{Ink: Ink{Stroke: black, Width: 350}, Pieces: make([]Piece, 10_000)}
	d := &Doc{Width: 1000, Height: 1000, Groups: make([]Group, 1)}
	for range 350 { // 50 kB each
		d.Groups[0].Items = append(d.Groups[0].Items, long)
	}
	if err := d.Write(io.Discard, Options{}); err == nil || !strings.Contains(err.Error(), "more than the 16 MiB") {
		t.Errorf("17 MB are written: %v", err)
	}
}

func TestPadToPixels(t *testing.T) {
	for v := range 200_000 {
		padded := PadToPixels(v)
		px := float64(padded) * 96 / 25_400
		if padded < v || padded-v > 265 || px-math.Floor(px) > 96/25_400.0 {
			t.Fatalf("%d µm are padded to %d, which is %f px", v, padded, px)
		}
		if again := PadToPixels(padded); again != padded {
			t.Fatalf("%d µm are padded to %d, and then to %d", v, padded, again)
		}
	}
	if got := PadToPixels(127_000); got != 127_000 { // 480 px
		t.Errorf("127 mm are padded to %d µm", got)
	}
}
