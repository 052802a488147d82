// Package source holds the text of a source file, spans of it, and the
// problems found there. It is the program's one error type: every other
// package of lang reports by adding to a List.
package source

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// File is one source text. Name is what messages show.
type File struct {
	Name  string
	Text  string
	lines []int // byte offset at which each line starts
}

// NewFile prepares text for look-ups by line. A byte order mark is left out.
// Lines may end in \n, in \r\n or, as on old machines, all in \r.
func NewFile(name, text string) *File {
	text = strings.TrimPrefix(text, "\ufeff")
	if !strings.Contains(text, "\n") {
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	f := &File{Name: name, Text: text, lines: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			f.lines = append(f.lines, i+1)
		}
	}
	return f
}

// Position gives the line and the column of a byte offset, both from 1;
// columns count characters, not bytes.
func (f *File) Position(offset int) (line, col int) {
	offset = min(max(offset, 0), len(f.Text))
	line = sort.SearchInts(f.lines, offset+1)
	return line, 1 + utf8.RuneCountInString(f.Text[f.lines[line-1]:offset])
}

// Line is the text of a line (from 1) without its line end.
func (f *File) Line(n int) string {
	if n < 1 || n > len(f.lines) {
		return ""
	}
	end := len(f.Text)
	if n < len(f.lines) {
		end = f.lines[n] - 1
	}
	return strings.TrimRight(f.Text[f.lines[n-1]:end], "\r")
}

// Span is the stretch of a file from byte Start up to byte End.
type Span struct {
	File       *File
	Start, End int
}

// Text is the stretch itself.
func (s Span) Text() string {
	if s.File == nil {
		return ""
	}
	return s.File.Text[s.Start:s.End]
}

// To is the span from the start of s to the end of t.
func (s Span) To(t Span) Span { return Span{s.File, s.Start, t.End} }
