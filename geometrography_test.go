package trammel_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/program"
)

// TestGeometrography counts the operations of constructions after Lemoine, and
// wants the symbols of the table, whose rows say what was seen and what was
// derived from the definitions. A source's first line names its row; what
// stands above "Counted from here." is there before. Rows of single operations,
// of openings alone and of numbers from memory have no source.
func TestGeometrography(t *testing.T) {
	t.Parallel()
	rows := map[string]row{}
	for _, r := range table(t, "geometrography") {
		rows[r["item"]] = r
	}
	sources, err := filepath.Glob(published + "geometrography/*.trm")
	if err != nil || len(sources) != 14 {
		t.Fatal(sources, err)
	}
	for _, path := range sources {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		name, rest, _ := strings.Cut(strings.TrimPrefix(string(text), "# "), "\n")
		r, ok := rows[name]
		if !ok {
			t.Fatalf("%s: the table has no row %q", path, name)
		}
		delete(rows, name)
		before, _, ok := strings.Cut(rest, "# Counted from here.\n")
		if !ok {
			t.Fatalf("%s does not say where it is counted from", path)
		}
		got := less(operations(t, path, rest), operations(t, path, before))
		if want := r["R1"] + r["R2"] + r["C1"] + r["C2"] + r["C3"]; fmt.Sprint(got.R1, got.R2, got.C1, got.C2, got.C3) != strings.Join(strings.Split(want, ""), " ") {
			t.Errorf("%s is %s; the table has R1 R2 C1 C2 C3 = %s", name, got, want)
		}
		if s, e := fmt.Sprint(got.Simplicity()), fmt.Sprint(got.Exactitude()); s != r["simplicity"] || e != r["exactitude"] {
			t.Errorf("%s has simplicity %s and exactitude %s; the table has %s and %s", name, s, e, r["simplicity"], r["exactitude"])
		}
	}
}

func operations(t *testing.T, path, text string) program.Operations {
	t.Helper()
	r := lang.Compile(path, []byte(text))
	if r.Figure == nil {
		t.Fatalf("%s: %+v", path, r.Problems)
	}
	return r.Operations()
}

func less(a, b program.Operations) program.Operations {
	return program.Operations{R1: a.R1 - b.R1, R2: a.R2 - b.R2, C1: a.C1 - b.C1, C2: a.C2 - b.C2, C3: a.C3 - b.C3}
}
