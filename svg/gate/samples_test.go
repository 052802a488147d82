package gate_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

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

// draw makes the picture of a source.
func draw(t *testing.T, name, text string) []byte {
	t.Helper()
	r := lang.Compile(name+".trm", []byte(text))
	if r.Figure == nil {
		t.Fatalf("%s: %+v", name, r.Problems)
	}
	doc, _, err := layout.Draw(r.Figure, layout.Options{ID: name})
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
