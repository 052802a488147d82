package main

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"trammel/lang"
)

// TestFirstFigure draws the figure that the help shows.
func TestFirstFigure(t *testing.T) {
	var figure []string
	for line := range strings.Lines(introduction) {
		if code, ok := strings.CutPrefix(line, "    "); ok && !strings.HasPrefix(code, "trammel ") {
			figure = append(figure, code)
		}
	}
	if len(figure) != 5 {
		t.Fatalf("the figure has %d lines, and the help says five", len(figure))
	}
	path := filepath.Join(t.TempDir(), "first.trm")
	if err := os.WriteFile(path, []byte(strings.Join(figure, "")), 0o666); err != nil {
		t.Fatal(err)
	}
	var said strings.Builder
	e := &env{stdout: &said, stderr: &said, compile: lang.Compile}
	if status := run(e, []string{"build", path}); status != exitGood || said.String() != "" {
		t.Errorf("exit code %d, %s", status, said.String())
	}
	if status := run(e, []string{"fmt", "--check", path}); status != exitGood {
		t.Errorf("the figure is not laid out in the usual way")
	}
}

// TestEveryCommandShown: the introduction has an example of each command.
func TestEveryCommandShown(t *testing.T) {
	commands := reflect.TypeFor[cli]()
	for i := range commands.NumField() {
		field := commands.Field(i)
		if _, ok := field.Tag.Lookup("cmd"); !ok {
			continue
		}
		if name := strings.ToLower(field.Name); !strings.Contains(introduction, "\n    trammel "+name) {
			t.Errorf("nothing is said of trammel %s", name)
		}
	}
}
