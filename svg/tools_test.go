package svg

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// tool skips the test when a program is missing, except in continuous integration.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is missing: install librsvg2-bin, chromium, poppler-utils, libxml2-utils and w3c-sgml-lib", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}

func run(t *testing.T, name string, args ...string) {
	t.Helper()
	if out, err := exec.Command(name, args...).CombinedOutput(); err != nil {
		t.Fatalf("%s %q: %v\n%s", name, args, err, out)
	}
}

func saved(t *testing.T, drawing []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "drawing.svg")
	if err := os.WriteFile(file, drawing, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

const (
	schema = "../testdata/svg/trammel.rng"
	dtd    = "../testdata/svg/trammel.dtd"
)

func TestSchemas(t *testing.T) {
	xmllint := tool(t, "xmllint")
	for _, o := range []Options{{}, {LiveText: true}} {
		file := saved(t, written(t, everything(), o))
		run(t, xmllint, "--nonet", "--noout", "--relaxng", schema, file)
		run(t, xmllint, "--nonet", "--noout", "--dtdvalid", dtd, file)
	}
}

func TestSchemaFindsFaults(t *testing.T) {
	xmllint := tool(t, "xmllint")
	for i, f := range faults {
		out, err := exec.Command(xmllint, "--nonet", "--noout", "--relaxng", schema, saved(t, faulty(t, i))).CombinedOutput()
		if err == nil || !bytes.Contains(out, []byte("fails to validate")) {
			t.Errorf("%s for %s: %v\n%s", f.to, f.from, err, out)
		}
	}
}

// ruler is a level line of 100 mm, 0.5 mm wide.
func ruler() *Doc {
	line := Path{Ink: Ink{Stroke: black, Width: 500}, Start: XY{10_000, 10_000}, Pieces: []Piece{{To: XY{110_000, 10_000}}}}
	return &Doc{Width: PadToPixels(120_000), Height: PadToPixels(20_000), Title: "100 mm", Groups: []Group{{Items: []Item{line}}}}
}

const dpi = "600"

// checkRuler measures the ruler in an image of 600 dots to the inch: its round
// ends add its width.
func checkRuler(t *testing.T, file string) {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	mm := longest(page)*25.4/600 - 0.5
	t.Logf("100 mm come out as %.3f mm", mm)
	if math.Abs(mm-100) > 0.05 {
		t.Error("that is more than 0.05 mm off")
	}
}

// longest is the most ink that a row holds, in pixels; grey ones count in part.
func longest(page image.Image) float64 {
	most := 0
	for y := page.Bounds().Min.Y; y < page.Bounds().Max.Y; y++ {
		row := 0
		for x := page.Bounds().Min.X; x < page.Bounds().Max.X; x++ {
			row += 255 - int(color.GrayModel.Convert(page.At(x, y)).(color.Gray).Y)
		}
		most = max(most, row)
	}
	return float64(most) / 255
}

func TestTrueToScaleInLibrsvg(t *testing.T) {
	rsvg := tool(t, "rsvg-convert")
	drawing := saved(t, written(t, ruler(), Options{}))
	run(t, rsvg, "-d", dpi, "-p", dpi, "--background-color", "white", "-o", drawing+".png", drawing)
	checkRuler(t, drawing+".png")
}

func TestTrueToScaleOnBrowserPaper(t *testing.T) {
	chromium, pdftoppm := tool(t, "chromium"), tool(t, "pdftoppm")
	drawing := saved(t, written(t, ruler(), Options{}))
	run(t, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(),
		"--no-pdf-header-footer", "--print-to-pdf="+drawing+".pdf", "file://"+drawing)
	run(t, pdftoppm, "-r", dpi, "-gray", "-png", "-singlefile", drawing+".pdf", drawing)
	checkRuler(t, drawing+".png")
}
