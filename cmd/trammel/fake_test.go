package main

import (
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"strings"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/source"
)

func init() {
	compileSource = fakeCompile
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
		r.Figure = fakeFigure(f.Text)
	}
	return r
}

func fakeFigure(text string) *figure.Figure {
	_, after, _ := strings.Cut(text, "radius ")
	n := 3
	fmt.Sscan(after, &n)
	f := exact.NewField()
	o := geom.Point{X: f.Int(0), Y: f.Int(0)}
	k := &figure.Circle{Circle: geom.Circle{C: o, R2: f.Int(int64(n * n))}, Whole: true}
	return &figure.Figure{Title: text, Unit: big.NewRat(10, 1), Steps: []figure.Step{{Line: 1}}, Circles: []*figure.Circle{k}, Points: []*figure.Point{{At: o}}}
}
