package main

import (
	"fmt"
	"io"
)

// many is how many figures are worth a progress line: fewer are drawn before
// anyone has read it.
const many = 10

// progress is a line that says how far the work has come, the last on the
// terminal. A nil progress says nothing.
type progress struct {
	terminal    io.Writer
	done, total int
}

// newProgress is the progress of drawing so many figures, nil if they are few
// or nobody looks on.
func (e *env) newProgress(total int) *progress {
	if !e.watched || total < many {
		return nil
	}
	return &progress{terminal: e.stderr, total: total}
}

// step erases the line, has messages written in its place, and shows it again
// with one figure more; when there are no more, it stays erased.
func (p *progress) step(messages func()) {
	if p == nil {
		messages()
		return
	}
	io.WriteString(p.terminal, "\r\x1b[K") // ECMA-48: erase to the end of the line
	messages()
	if p.done++; p.done < p.total {
		fmt.Fprintf(p.terminal, "%d of %d", p.done, p.total)
	}
}
