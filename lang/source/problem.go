package source

import "sort"

// Severity tells an error, which stops the figure, from a warning.
type Severity uint8

// The two severities.
const (
	Error Severity = iota
	Warning
)

// Problem is one thing wrong at one place. Text states the fact, in lower case
// and without a full stop; only Help suggests.
type Problem struct {
	Span     Span
	Severity Severity
	Text     string
	Help     string // the likely fix; may be empty
	Notes    []Note // other places that matter: the other definition, the library's line
}

// Note is a remark on another place of a problem. A zero Span prints without a place.
type Note struct {
	Span Span
	Text string
}

// List collects the problems of one run.
type List []*Problem

// Add appends a problem and returns it, so that help and notes can be set.
func (l *List) Add(at Span, text string) *Problem {
	p := &Problem{Span: at, Text: text}
	*l = append(*l, p)
	return p
}

// Failed tells whether the list holds an error.
func (l List) Failed() bool {
	for _, p := range l {
		if p.Severity == Error {
			return true
		}
	}
	return false
}

// Sort orders by file as first met, then by place; equal places keep their order.
func (l List) Sort() {
	order := map[*File]int{}
	for _, p := range l {
		if _, ok := order[p.Span.File]; !ok {
			order[p.Span.File] = len(order)
		}
	}
	sort.SliceStable(l, func(i, j int) bool {
		a, b := l[i].Span, l[j].Span
		if a.File != b.File {
			return order[a.File] < order[b.File]
		}
		return a.Start < b.Start
	})
}
