package source

import (
	"fmt"
	"io"
	"strings"
)

// The colours of a message, for terminals that want them.
const (
	red     = "\x1b[1;31m"
	yellow  = "\x1b[1;33m"
	blue    = "\x1b[1;34m"
	bright  = "\x1b[1m"
	neutral = "\x1b[0m"
)

// Print writes each problem as
//
//	file:line:col: error: text
//	  the line of the source
//	      ^^^^
//	help: the likely fix
//
// followed by its notes in the same shape. What comes from the source is
// escaped, so that no source can command a terminal. The error is the writer's.
func (l List) Print(w io.Writer, colour bool) error {
	p := &printer{colour: colour}
	for _, problem := range l {
		p.problem(problem)
	}
	_, err := io.WriteString(w, p.String())
	return err
}

type printer struct {
	strings.Builder
	colour bool
}

func (p *printer) problem(q *Problem) {
	word, ink := "error", red
	if q.Severity == Warning {
		word, ink = "warning", yellow
	}
	p.place(q.Span)
	p.inked(ink, word+":")
	p.WriteString(" ")
	p.inked(bright, escape(q.Text))
	p.WriteString("\n")
	p.excerpt(q.Span, ink)
	if q.Help != "" {
		for _, line := range strings.Split(q.Help, "\n") {
			p.inked(blue, "help:")
			p.WriteString(" " + escape(line) + "\n")
		}
	}
	for _, n := range q.Notes {
		p.place(n.Span)
		p.inked(blue, "note:")
		p.WriteString(" " + escape(n.Text) + "\n")
		p.excerpt(n.Span, blue)
	}
}

// place writes file:line:col: , or nothing for a span of no file.
func (p *printer) place(s Span) {
	if s.File == nil {
		return
	}
	line, col := s.File.Position(s.Start)
	p.inked(bright, fmt.Sprintf("%s:%d:%d:", escape(s.File.Name), line, col))
	p.WriteString(" ")
}

// excerpt writes the line in which a span starts, with carets under as much of
// the span as the line holds, and under one place at least.
func (p *printer) excerpt(s Span, ink string) {
	if s.File == nil || s.File.Text == "" {
		return
	}
	number, _ := s.File.Position(s.Start)
	line, start := s.File.Line(number), s.Start-s.File.lines[number-1]
	start = min(max(start, 0), len(line))
	cut := excerpt(line, start, min(max(s.End-s.Start, 0), len(line)-start))
	p.WriteString("  " + cut.text + "\n  " + strings.Repeat(" ", cut.before))
	p.inked(ink, strings.Repeat("^", max(cut.under, 1)))
	p.WriteString("\n")
}

func (p *printer) inked(ink, text string) {
	if p.colour {
		text = ink + text + neutral
	}
	p.WriteString(text)
}
