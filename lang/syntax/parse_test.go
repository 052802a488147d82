package syntax

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/lang/source"
)

// sources gives every source of testdata by its name.
func sources(t testing.TB) map[string]string {
	t.Helper()
	paths, err := filepath.Glob("testdata/*.trm")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no sources in testdata: %v", err)
	}
	all := map[string]string{}
	for _, p := range paths {
		text, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		all[filepath.Base(p)] = string(text)
	}
	return all
}

func TestSourcesParse(t *testing.T) {
	for name, text := range sources(t) {
		var problems source.List
		tree := Parse(source.NewFile(name, text), &problems)
		for _, p := range problems {
			line, col := p.Span.File.Position(p.Span.Start)
			t.Errorf("%s:%d:%d: %s (%s)", name, line, col, p.Text, p.Span.File.Line(line))
		}
		if got, want := count(tree.Statements), statementLines(text); got != want {
			t.Errorf("%s: %d statements, want %d", name, got, want)
		}
	}
}

func count(body []*Statement) int {
	n := len(body)
	for _, s := range body {
		switch {
		case s.Step != nil:
			n += count(s.Step.Body)
		case s.Repeat != nil:
			n += count(s.Repeat.Body)
		case s.Construction != nil:
			n += count(s.Construction.Body)
		}
	}
	return n
}

// statementLines counts the lines that hold a statement of their own.
func statementLines(text string) int {
	n := 0
	for _, l := range strings.Split(text, "\n") {
		if l = strings.TrimSpace(l); l != "" && l != "end" {
			n++
		}
	}
	return n
}

func BenchmarkParse(b *testing.B) {
	text := sources(b)["forms.trm"]
	lines := strings.Count(text, "\n")
	for b.Loop() {
		var problems source.List
		Parse(source.NewFile("f", text), &problems)
	}
	b.ReportMetric(float64(lines)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

func BenchmarkBuild(b *testing.B) {
	for b.Loop() {
		buildGrammar()
	}
}
