package main

import (
	"os"
	"path/filepath"
	"strings"

	"trammel/lang/source"
)

func init() {
	compileSource = fakeCompile
	drawFigure = func(f *figureStub, s style) ([]byte, []string, error) {
		return []byte("<svg>" + f.text + "</svg>\n"), nil, nil
	}
	formatSource = func(f *source.File) ([]byte, source.List) {
		r := fakeCompile(f.Name, []byte(f.Text))
		if r.Problems.Failed() {
			return nil, r.Problems
		}
		var b strings.Builder
		for l := range strings.Lines(f.Text) {
			b.WriteString(strings.Join(strings.Fields(l), " ") + "\n")
		}
		return []byte(b.String()), nil
	}
}

func fakeCompile(path string, text []byte) *result {
	r := &result{Files: []string{path}}
	f := source.NewFile(path, string(text))
	off, n := 0, 0
	fig := false
	for l := range strings.Lines(f.Text) {
		n++
		w := strings.Fields(l)
		span := source.Span{File: f, Start: off, End: off + len(l) - 1}
		off += len(l)
		if len(w) == 0 {
			continue
		}
		switch w[0] {
		case "figure":
			fig = true
		case "claim":
			r.Checks = append(r.Checks, claimCheck{n, strings.Join(w[1:], " "), "holds"})
		case "use":
			name := filepath.Join(filepath.Dir(path), strings.Trim(w[1], `"`))
			lib, err := os.ReadFile(name)
			if err != nil {
				r.Problems.Add(span, "cannot read "+name)
				continue
			}
			r.Files = append(r.Files, name)
			r.Problems = append(r.Problems, fakeCompile(name, lib).Problems...)
		case "joyn":
			r.Problems.Add(span, "joyn is no word")
		}
	}
	if fig && !r.Problems.Failed() {
		r.Figure = &figureStub{f.Text}
	}
	return r
}
