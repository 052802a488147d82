// Package svgtest holds what the tests of all writers of drawings need: the
// drawings, and the programs that look at what was written.
package svgtest

import (
	"bytes"
	"image"
	"image/draw"
	_ "image/png" // of the pictures that programs make
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// Tool is where a program is. Without it the test is skipped, or fails in
// continuous integration, which has to install it.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is missing: .ci/run installs it", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}

// Run runs a program and returns what it writes to its standard output.
func Run(t testing.TB, name string, args ...string) string {
	t.Helper()
	var out, said bytes.Buffer
	cmd := exec.Command(Tool(t, name), args...)
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %q: %v\n%s", name, args, err, said.String())
	}
	return out.String()
}

// Save puts data into a file of the test's own.
func Save(t testing.TB, name string, data []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// SVG is a file with the drawing in SVG.
func SVG(t testing.TB, d *svg.Doc) string {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	return Save(t, "drawing.svg", b.Bytes())
}

// Pixels reads a picture.
func Pixels(t testing.TB, file string) image.Image {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// Rendered is the drawing as librsvg makes it of the SVG, on white.
func Rendered(t testing.TB, d *svg.Doc, dpi string) image.Image {
	t.Helper()
	drawing := SVG(t, d)
	Run(t, "rsvg-convert", "-d", dpi, "-p", dpi, "--background-color", "white", "-o", drawing+".png", drawing)
	return Pixels(t, drawing+".png")
}

// Difference compares two pictures where they overlap. Mean is how much the
// pixels differ, from 0 to 255. Strays are the pixels that are dark in one, with
// nothing even greyish within reach in the other: none, if all ink is in its
// place. Pixels that are cut at an edge differ a little between programs.
func Difference(a, b image.Image, reach int) (mean float64, strays int) {
	box := a.Bounds().Intersect(b.Bounds())
	p, q := greys(a, box), greys(b, box)
	for i := range p {
		mean += math.Abs(float64(p[i]) - float64(q[i]))
		for _, pair := range [][2][]uint8{{p, q}, {q, p}} {
			if pair[0][i] < 100 && !near(pair[1], box, i, reach) {
				strays++
			}
		}
	}
	return mean / float64(len(p)), strays
}

// greys are the pixels of a box, row by row.
func greys(picture image.Image, box image.Rectangle) []uint8 {
	grey := image.NewGray(image.Rect(0, 0, box.Dx(), box.Dy()))
	draw.Draw(grey, grey.Rect, picture, box.Min, draw.Src)
	return grey.Pix
}

// near tells whether there is ink within reach of a pixel.
func near(grey []uint8, box image.Rectangle, i, reach int) bool {
	x0, y0 := i%box.Dx(), i/box.Dx()
	for y := max(0, y0-reach); y <= min(box.Dy()-1, y0+reach); y++ {
		for x := max(0, x0-reach); x <= min(box.Dx()-1, x0+reach); x++ {
			if grey[y*box.Dx()+x] < 230 {
				return true
			}
		}
	}
	return false
}

var (
	drawing sync.Mutex
	drawn   = map[string]map[string]*svg.Doc{}
)

// Examples are the drawings of all sources in a folder, by name. Nobody may
// change them: they are drawn once.
func Examples(t testing.TB, folder string) map[string]*svg.Doc {
	t.Helper()
	drawing.Lock()
	defer drawing.Unlock()
	if drawn[folder] == nil {
		docs := map[string]*svg.Doc{}
		if err := examples(folder, docs); err != nil {
			t.Fatal(err)
		}
		drawn[folder] = docs
	}
	return drawn[folder]
}

func examples(folder string, docs map[string]*svg.Doc) error {
	return filepath.WalkDir(folder, func(name string, e fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(name) != ".trm" {
			return err
		}
		text, err := os.ReadFile(name)
		if r := lang.Compile(name, text); err == nil && r.Figure != nil {
			base := strings.TrimSuffix(filepath.Base(name), ".trm")
			docs[base], _, err = layout.Draw(r.Figure, layout.Options{ID: base})
		}
		return err
	})
}

// Everything has each kind of item once, in letters that the faces have.
func Everything() *svg.Doc {
	const black = "#000000"
	thin := svg.Ink{Stroke: "#767676", Width: 180}
	heavy := svg.Ink{Stroke: black, Width: 500}
	label := func(text string, name bool, x, y int) svg.Text {
		return svg.Text{At: svg.XY{X: x, Y: y}, Runs: svg.Label(text, name), Size: 3500, Fill: black}
	}
	sans := label("Café", false, 60_000, 50_000)
	sans.Sans, sans.Fill = true, "#0072b2"
	dots := label("A", false, 92_000, 55_000)
	dots.Braille = true
	corner := []svg.Piece{{To: svg.XY{X: 90_000, Y: 10_000}}, {To: svg.XY{X: 75_000, Y: 35_120}}}
	return &svg.Doc{
		Width: svg.PadToPixels(100_000), Height: svg.PadToPixels(60_000),
		ID: "everything", Lang: "en-GB", Title: `Arcs (& "lines") < 5′`, Desc: "Every kind of thing, once.\nIn no order: ⟂.",
		Groups: []svg.Group{
			{Class: "construction", Items: []svg.Item{
				svg.Path{Ink: thin, Start: svg.XY{X: 10_000, Y: 30_000}, Pieces: []svg.Piece{{To: svg.XY{X: 50_000, Y: 30_000}, Radius: 25_000, Clockwise: true}}},
				svg.Path{Ink: thin, Start: svg.XY{X: 10_000, Y: 30_000}, Pieces: []svg.Piece{{To: svg.XY{X: 50_000, Y: 30_000}, Radius: 25_000, Large: true}}},
				svg.Disc{Ink: thin, Centre: svg.XY{X: 30_000, Y: 30_000}, Radius: 20_005},
				svg.Disc{Ink: svg.Ink{Stroke: black, Width: 350, Dash: []int{1500, 750}}, Centre: svg.XY{X: 30_000, Y: 30_000}, Radius: 9000},
				svg.Path{Ink: svg.Ink{Stroke: black, Width: 350, Dash: []int{2000, 1050}}, Start: svg.XY{X: 1000, Y: 1000}, Pieces: []svg.Piece{{To: svg.XY{X: 50_000, Y: 1007}}, {To: svg.XY{X: 55_000, Y: 9000}}}},
			}},
			{Class: "empty"},
			{Class: "result shaded", Items: []svg.Item{
				svg.Path{Ink: svg.Ink{Stroke: black, Width: 500, Fill: "#e6e6e6"}, Closed: true, Start: svg.XY{X: 60_000, Y: 10_000}, Pieces: corner},
				svg.Path{Ink: svg.Ink{Stroke: "#d55e00", Width: 1200}, Start: svg.XY{X: 60_000, Y: 10_000}, Pieces: corner},
				svg.Path{Ink: heavy, Start: svg.XY{X: 60_000, Y: 40_000}, Pieces: []svg.Piece{{To: svg.XY{X: 90_000, Y: 40_100}}}},
				svg.Disc{Ink: svg.Ink{Fill: black}, Centre: svg.XY{X: 60_000, Y: 10_000}, Radius: 600},
			}},
			{Class: "labels", Items: []svg.Item{
				label("P1", true, 10_000, 56_000),
				label("BC = 3/4 AB", false, 65_000, 57_000),
				dots,
				label("A'", true, 20_000, 56_000),
				label("√(10 + 2√5) cm", false, 30_000, 56_000),
				label("∠ABC = 22.5° ⟂ VAT", false, 53_000, 45_000),
				sans,
			}},
		},
	}
}

// Ruler is a level line of 100 mm and a circle with a radius of 30 mm.
func Ruler() *svg.Doc {
	ink := svg.Ink{Stroke: "#000000", Width: 500}
	line := svg.Path{Ink: ink, Start: svg.XY{X: 10_000, Y: 10_000}, Pieces: []svg.Piece{{To: svg.XY{X: 110_000, Y: 10_000}}}}
	circle := svg.Disc{Ink: ink, Centre: svg.XY{X: 60_000, Y: 50_000}, Radius: 30_000}
	return &svg.Doc{
		Width: svg.PadToPixels(120_000), Height: svg.PadToPixels(90_000), Title: "100 mm",
		Groups: []svg.Group{{Items: []svg.Item{line, circle}}},
	}
}
