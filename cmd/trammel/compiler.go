package main

import (
	"errors"
	"fmt"
	"io"

	"trammel/lang/source"
)

type result struct {
	Figure   *figureStub
	Files    []string
	Problems source.List
	Checks   []claimCheck
}

type claimCheck struct {
	Line    int
	Claim   string
	Verdict string
}

var compileSource = func(path string, text []byte) *result {
	return &result{Problems: source.List{{Text: "no compiler"}}}
}

var drawFigure = func(f *figureStub, s style) ([]byte, []string, error) {
	return nil, nil, errors.New("no layout")
}

var formatSource = func(f *source.File) ([]byte, source.List) { return nil, nil }

func printProblem(w io.Writer, p *source.Problem, colour bool) {
	line, col := p.Span.File.Position(p.Span.Start)
	fmt.Fprintf(w, "%s:%d:%d: error: %s\n", printable(p.Span.File.Name), line, col, p.Text)
}

type figureStub struct{ text string }
