package syntax

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"trammel/lang/source"
)

// said words the problems of a source, one a line: the place, the text, and
// the help in brackets.
func said(text string) string {
	var problems source.List
	Parse(source.NewFile("f", text), &problems)
	var lines []string
	for _, p := range problems {
		line, col := p.Span.File.Position(p.Span.Start)
		s := fmt.Sprintf("%d:%d %s", line, col, p.Text)
		if p.Help != "" {
			s += " (" + p.Help + ")"
		}
		lines = append(lines, s)
	}
	return strings.Join(lines, "\n")
}

type wording struct{ text, want string }

func checkWordings(t *testing.T, tests []wording) {
	t.Helper()
	for _, test := range tests {
		if got := said(test.text); got != test.want {
			t.Errorf("%s\n got %s\nwant %s", test.text, got, test.want)
		}
	}
}

func TestNotes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"join AB,\nd meets e at X", "1:8 the comma here carries the statement on"},
		{"step \"x\"\nconstruction f(line m) gives line n\nend\nend", "1:1 the block that it stands in"},
		{"given А (0, 0)\ngiven B 3 from A", "1:7 the Cyrillic one is here"},
	}
	for _, test := range tests {
		var problems source.List
		Parse(source.NewFile("f", test.text), &problems)
		var got []string
		for _, n := range problems[0].Notes {
			line, col := n.Span.File.Position(n.Span.Start)
			got = append(got, fmt.Sprintf("%d:%d %s", line, col, n.Text))
		}
		if !slices.Equal(got, []string{test.want}) {
			t.Errorf("%s: %q, want %q", test.text, got, test.want)
		}
	}
}
