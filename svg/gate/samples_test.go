package gate_test

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/svg"
	"trammel/svg/gate"
	"trammel/svg/gate/samples"
	"trammel/svg/layout"
)

var out = flag.String("out", "", "folder to write the samples to, with their sources")

// TestSamples finds no fault in any of the random figures.
func TestSamples(t *testing.T) {
	labels := 0
	for i := range samples.Count {
		name, text := samples.Source(i)
		r, err := gate.Measure(name, bytes.NewReader(draw(t, name, text)))
		if err != nil {
			t.Fatal(err)
		}
		labels += r.Labels
		for _, f := range r.Faults {
			t.Errorf("%s: %s", name, f)
		}
	}
	t.Logf("%d labels in %d figures", labels, samples.Count)
}

// TestThemes finds no fault in any example with larger type, nor in any that is not
// refused as too close for fingers.
func TestThemes(t *testing.T) {
	measured, raised := 0, 0
	err := filepath.WalkDir("../../examples", func(path string, e fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".trm" {
			return err
		}
		text, err := os.ReadFile(path)
		figure := lang.Compile(path, text).Figure
		if figure == nil {
			return err // a worksheet, or constructions
		}
		measured++
		for _, theme := range []string{"slide", "large-print", "tactile"} {
			if theme == "tactile" {
				if _, _, err := layout.Draw(figure.As(theme, ""), layout.Options{}); err != nil {
					continue
				}
				raised++
			}
			name := theme + "-" + strings.TrimSuffix(filepath.Base(path), ".trm")
			r, err := gate.Measure(name, bytes.NewReader(picture(t, name, figure.As(theme, ""), string(text))))
			if err != nil {
				return err
			}
			for _, f := range r.Faults {
				t.Errorf("%s: %s", name, f)
			}
		}
		return nil
	})
	if err != nil || measured < 100 || raised < 30 {
		t.Errorf("%d examples are measured, %d of them raised: %v", measured, raised, err)
	}
}

// draw makes the picture of a source.
func draw(t *testing.T, name, text string) []byte {
	t.Helper()
	r := lang.Compile(name+".trm", []byte(text))
	if r.Figure == nil {
		t.Fatalf("%s: %+v", name, r.Problems)
	}
	return picture(t, name, r.Figure, text)
}

// picture draws a figure, and saves it with its source if asked.
func picture(t *testing.T, name string, f *figure.Figure, text string) []byte {
	t.Helper()
	doc, _, err := layout.Draw(f, layout.Options{ID: name})
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var b bytes.Buffer
	if err := doc.Write(&b, svg.Options{}); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if *out != "" {
		for ending, data := range map[string][]byte{".svg": b.Bytes(), ".trm": []byte(text)} {
			if err := os.WriteFile(filepath.Join(*out, name+ending), data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	return b.Bytes()
}
