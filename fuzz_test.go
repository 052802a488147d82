package trammel_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// FuzzCompile takes any text through the whole program: no panic, no hang, and
// what is accepted gives a drawing within the safe subset of SVG.
func FuzzCompile(f *testing.F) {
	for _, text := range sources(f) {
		f.Add(text)
	}
	f.Fuzz(compileAnything)
}

// FuzzLines puts lines of the repository's sources together at random, and
// changes numbers in them: most of what it makes means something.
func FuzzLines(f *testing.F) {
	var pool []string
	seen := map[string]bool{}
	for _, text := range sources(f) {
		for line := range strings.Lines(text) {
			line = strings.TrimSpace(line)
			if line != "" && !seen[line] && !strings.HasPrefix(line, "#") {
				seen[line] = true
				pool = append(pool, line)
			}
		}
	}
	for seed := range 64 {
		f.Add([]byte{byte(seed), byte(seed * 7), byte(seed * 31), 3, byte(seed * 11), 9, byte(seed * 13), 1, byte(seed * 17), 4})
	}
	number := regexp.MustCompile(`[0-9]+`)
	f.Fuzz(func(t *testing.T, choice []byte) {
		var b strings.Builder
		b.WriteString("given A (0, 0)\ngiven B (6, 1)\ngiven C (2, 5)\ngiven line m\ngiven circle k centre O radius 3\n")
		for i := 0; i+1 < len(choice) && i < 80; i += 2 {
			line := pool[(int(choice[i])<<8|int(choice[i+1]))%len(pool)]
			if choice[i]%5 == 0 {
				line = number.ReplaceAllString(line, strconv.Itoa(int(choice[i+1])%12))
			}
			b.WriteString(line + "\n")
		}
		compileAnything(t, b.String())
	})
}

// hang is longer than any source may take, on a machine with much else to do.
const hang = time.Minute

func compileAnything(t *testing.T, text string) {
	began := time.Now()
	r := lang.Compile("fuzz.trm", []byte(text))
	if spent := time.Since(began); spent > hang {
		t.Errorf("took %v", spent)
	}
	if r.Figure != nil && r.Problems.Failed() {
		t.Error("errors, and a figure all the same")
	}
	r.Problems.Print(io.Discard, false)
	if r.Figure == nil {
		return
	}
	doc, _, err := layout.Draw(r.Figure, layout.Options{ID: "fuzz"})
	if err != nil {
		return // larger than its paper, say
	}
	var out bytes.Buffer
	if err := doc.Write(&out, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	subset(t, out.Bytes())
}

// sources are all that the repository holds: seeds.
func sources(f *testing.F) []string {
	var out []string
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".trm") {
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			out = append(out, string(text))
		}
		return err
	})
	if err != nil {
		f.Fatal(err)
	}
	return out
}

var (
	elements  = map[string]bool{"svg": true, "g": true, "title": true, "desc": true, "line": true, "circle": true, "polyline": true, "polygon": true, "path": true, "rect": true, "text": true, "tspan": true}
	badNumber = regexp.MustCompile(`NaN|Inf|(^|[ ,])-?[0-9.]+e[-+]?[0-9]|rgba|transparent`)
)

// subset reads the drawing by a reader of its own.
func subset(t *testing.T, drawing []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(drawing))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if !elements[start.Name.Local] {
			t.Errorf("element %s", start.Name.Local)
		}
		for _, a := range start.Attr {
			if a.Name.Local != "aria-label" && a.Name.Local != "id" && badNumber.MatchString(a.Value) {
				t.Errorf("%s=%q", a.Name.Local, a.Value)
			}
		}
	}
}
