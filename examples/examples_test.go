// Package examples_test holds the examples to what they promise: that they
// compile, read well, prove what they say, and look as committed.
package examples_test

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/svg"
	"trammel/svg/layout"
)

var update = flag.Bool("update", false, "write the pictures anew")

// warned names the examples that may warn, each with its warnings in order.
var warned = map[string][]string{}

// shared is the folder of constructions that several examples use.
const shared = "shared/"

// TestExamples holds every example to its picture and its claims.
func TestExamples(t *testing.T) {
	for _, path := range find(t, ".trm") {
		t.Run(path, func(t *testing.T) {
			text := read(t, path)
			r := lang.Compile(path, text)
			if r.Worksheet != nil {
				checkWarnings(t, path, r)
				return
			}
			checkForm(t, path, text)
			if strings.HasPrefix(path, shared) {
				checkShared(t, r)
				return
			}
			checkClaims(t, r)
			if r.Figure != nil {
				checkPicture(t, path, r)
			}
			checkWarnings(t, path, r)
		})
	}
}

// checkForm wants the usual layout of a source, and a comment at its head that
// says what it teaches and why it works.
func checkForm(t *testing.T, path string, text []byte) {
	t.Helper()
	var problems source.List
	usual, ok := syntax.Format(source.NewFile(path, string(text)), &problems)
	if !ok {
		t.Fatalf("not formed: %+v", problems)
	}
	if usual != string(text) {
		t.Errorf("not laid out in the usual way: run trammel fmt %s", path)
	}
	head := string(text[:max(0, bytes.Index(text, []byte("\nfigure ")))])
	if !strings.HasPrefix(path, shared) && !(strings.HasPrefix(head, "# ") && strings.Contains(head, "\n# Why it works: ")) {
		t.Error(`the comment at the head does not say "Why it works: …"`)
	}
}

// checkShared wants a file of constructions to be without a figure and faults.
func checkShared(t *testing.T, r *lang.Result) {
	t.Helper()
	if r.Figure != nil || len(r.Problems) > 0 {
		t.Errorf("figure %v, problems %+v", r.Figure, r.Problems)
	}
}

// checkClaims wants a figure of which something is claimed and marked, and
// every claim to hold.
func checkClaims(t *testing.T, r *lang.Result) {
	t.Helper()
	for _, c := range r.Claims {
		if !c.Holds {
			t.Errorf("line %d does not hold: %s", c.Line, c.Text)
		}
	}
	switch {
	case r.Figure == nil:
		t.Error("there is no figure")
	case len(r.Claims)+len(r.Figure.Marks) == 0:
		t.Error("nothing is claimed or marked")
	}
}

// checkPicture draws the figure and compares it with the picture beside the
// source. What layout warns of is added to the problems of the source.
func checkPicture(t *testing.T, path string, r *lang.Result) {
	t.Helper()
	doc, warnings, err := layout.Draw(r.Figure, layout.Options{ID: lang.Base(path)})
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range warnings {
		r.Problems.Add(source.Span{}, w.Text).Severity = source.Warning
	}
	var b bytes.Buffer
	if err := doc.Write(&b, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	picture := strings.TrimSuffix(path, ".trm") + ".svg"
	if *update {
		if err := os.WriteFile(picture, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(read(t, picture), b.Bytes()) {
		t.Errorf("%s is not what is drawn now: look at it, then run the test with -update", picture)
	}
}

// checkWarnings wants no error, and only the warnings that are foreseen.
func checkWarnings(t *testing.T, path string, r *lang.Result) {
	t.Helper()
	var found []string
	for _, p := range r.Problems {
		if p.Severity != source.Warning {
			t.Errorf("error: %s", p.Text)
			continue
		}
		found = append(found, p.Text)
	}
	if want := warned[path]; !slices.Equal(found, want) {
		t.Errorf("warnings %q, want %q", found, want)
	}
}

// TestPictures wants no picture without a source.
func TestPictures(t *testing.T) {
	for _, path := range find(t, ".svg") {
		if _, err := os.Stat(strings.TrimSuffix(path, ".svg") + ".trm"); err != nil {
			t.Errorf("%s has no source", path)
		}
	}
}

// find lists the files with an ending, here and below, in the order of the
// alphabet; there must be some.
func find(t *testing.T, ending string) []string {
	t.Helper()
	var found []string
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && strings.HasSuffix(path, ending) {
			found = append(found, filepath.ToSlash(path))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(found) == 0 {
		t.Fatalf("there is no %s", ending)
	}
	return found
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}
