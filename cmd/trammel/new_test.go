package main

import (
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/svg/layout"
)

// TestTopics: each source to start from is laid out in the usual way, compiles
// and is drawn without any warning, claims something, and has a first line for
// the list.
func TestTopics(t *testing.T) {
	if len(topics()) < 9 {
		t.Errorf("topics: %q", topics())
	}
	for _, name := range topics() {
		text, err := topic(name)
		if err != nil {
			t.Fatal(err)
		}
		var problems source.List
		if usual, ok := syntax.Format(source.NewFile(name, text), &problems); !ok || usual != text {
			t.Errorf("%s is not laid out in the usual way", name)
		}
		if first, _, _ := strings.Cut(text, "\n"); !strings.HasPrefix(first, "# ") || !strings.HasSuffix(first, ".") || len(first) > 70 {
			t.Errorf("%s begins with %q", name, first)
		}
		for _, line := range warningsOf(t, name, text) {
			t.Errorf("%s: %s", name, line)
		}
		if !strings.Contains(text, "\nworksheet ") && !strings.Contains(text, "\nclaim ") && !strings.Contains(text, "\n  claim ") {
			t.Errorf("%s claims nothing", name)
		}
	}
}

// warningsOf are the problems of a source and of its drawing.
func warningsOf(t *testing.T, name, text string) (found []string) {
	r := lang.Compile(name+".trm", []byte(text))
	for _, p := range r.Problems {
		found = append(found, p.Text)
	}
	if r.Figure == nil {
		return found
	}
	_, warnings, err := layout.Draw(r.Figure, layout.Options{ID: name})
	if err != nil {
		t.Errorf("%s: %v", name, err)
	}
	for _, w := range warnings {
		found = append(found, w.Text)
	}
	return found
}

// TestTopicLines: the lines that the comments offer compile too. Whole figures
// stand under their own figure line; the others replace what makes the same.
func TestTopicLines(t *testing.T) {
	text, err := topic("bisector")
	if err != nil {
		t.Fatal(err)
	}
	_, second, found := strings.Cut(text, "\n# figure ")
	if !found {
		t.Fatal("the second figure is gone")
	}
	second = strings.ReplaceAll("figure "+second, "\n# ", "\n")
	if list := warningsOf(t, "second", second); len(list) > 0 {
		t.Errorf("%s\n%q", second, list)
	}
	for _, text := range []string{
		"given triangle ABC with AB = 6, AC = 5, angle A = 40°",
		"given triangle ABC with AB = 6, angle A = 40°, angle B = 65°",
		"given acute triangle ABC",
		"given line m through A (0, 0) and B (8, 0)\ngiven P above m\nn, F by drop(m, P)",
	} {
		if list := warningsOf(t, "line", "figure \"F\"\n"+text+"\n"); len(list) > 0 {
			t.Errorf("%s: %q", text, list)
		}
		if !offered(text) {
			t.Errorf("no topic offers %s any more", text)
		}
	}
}

// offered tells whether a topic offers the last line of a text in a comment.
func offered(text string) bool {
	last := text[strings.LastIndex(text, "\n")+1:]
	for _, name := range topics() {
		source, err := topic(name)
		if err == nil && strings.Contains(source, "#   "+last+"\n") {
			return true
		}
	}
	return false
}
