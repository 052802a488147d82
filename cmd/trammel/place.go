package main

import (
	"strings"
	"unicode/utf8"

	"trammel/lang/source"
	"trammel/lang/syntax"
)

// line is the span of a line, counted from 1, without the space around it. No
// such line has no span.
func line(f *source.File, n int) source.Span {
	start := 0
	for l := range strings.Lines(f.Text) {
		if n--; n == 0 {
			words := strings.TrimSpace(l)
			start += strings.Index(l, words)
			return source.Span{File: f, Start: start, End: start + len(words)}
		}
		start += len(l)
	}
	return source.Span{}
}

// letterAt is where a source first has a letter, or else the figure's line.
func letterAt(f *source.File, letter rune) source.Span {
	if i := strings.IndexRune(f.Text, letter); i >= 0 {
		return source.Span{File: f, Start: i, End: i + utf8.RuneLen(letter)}
	}
	return blamed(f, "figure")
}

// blamed is the span of the statement that begins with a keyword, or else of
// the one that names the figure.
func blamed(f *source.File, keyword string) (at source.Span) {
	var known source.List
	for _, s := range syntax.Parse(f, &known).Statements {
		switch {
		case keyword == "paper" && s.Paper != nil:
			return s.Paper.Span(f)
		case keyword == "theme" && s.Theme != nil:
			return s.Theme.Span(f)
		case keyword == "unit" && s.Unit != nil:
			return s.Unit.Span(f)
		case s.Figure != nil:
			at = s.Figure.Span(f)
		}
	}
	return at
}
