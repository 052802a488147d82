package syntax

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"trammel/lang/source"
)

func FuzzParse(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		var problems source.List
		file := source.NewFile("f", text)
		tree := Parse(file, &problems)
		for _, p := range problems {
			if p.Span.Start < 0 || p.Span.End < p.Span.Start || p.Span.End > len(text) || p.Text == "" {
				t.Fatalf("%q: problem %q at %d..%d", text, p.Text, p.Span.Start, p.Span.End)
			}
		}
		walk(reflect.ValueOf(tree.Statements), func(node any) {
			n := reflect.ValueOf(node).Elem().FieldByName("Node").Interface().(Node)
			if s := n.Span(file); s.Start >= s.End {
				t.Fatalf("%q: a %T of nothing", text, node)
			}
		})
		texts(problems)
	})
}

func FuzzFormat(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		var problems source.List
		if _, ok := Format(source.NewFile("f", text), &problems); ok {
			checkFormat(t, "f", text)
		}
	})
}

func seed(f *testing.F) {
	for _, text := range sources(f) {
		f.Add(text)
	}
	for _, form := range slices.Concat(Forms, Phrases) {
		for _, e := range form.Examples {
			f.Add(e.Line)
			f.Add(e.Line + ",\n" + strings.ToUpper(e.Line))
		}
	}
}
