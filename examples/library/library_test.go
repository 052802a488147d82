package library_test

import (
	"io/fs"
	"strings"
	"testing"

	"trammel/examples/library"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// TestComplete wants an example of every construction, that calls it, and of
// nothing else.
func TestComplete(t *testing.T) {
	without := map[string]bool{}
	for _, name := range stdlib.Names() {
		without[name] = true
	}
	files, err := fs.Glob(library.Files, "*.trm")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(file, ".trm")
		if !without[name] {
			t.Errorf("%s is an example of no construction", file)
		}
		delete(without, name)
		if !calls(t, file, name) {
			t.Errorf("%s does not call %s", file, name)
		}
	}
	for name := range without {
		t.Errorf("%s has no example", name)
	}
}

// calls tells whether a source calls a construction.
func calls(t *testing.T, file, name string) bool {
	text, err := fs.ReadFile(library.Files, file)
	if err != nil {
		t.Fatal(err)
	}
	var problems source.List
	for _, s := range syntax.Parse(source.NewFile(file, string(text)), &problems).Statements {
		if s.Named != nil && s.Named.By != nil && s.Named.By.Name == name {
			return true
		}
	}
	return false
}
