// Package stdlib_test tries every construction of the library: on awkward
// placings of its data, on random ones, and on data that it must refuse.
package stdlib_test

import (
	"bytes"
	"flag"
	"hash/fnv"
	"io/fs"
	"math/rand"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// many is how many random data each construction is tried on.
var many = flag.Int("many", 20, "random figures for each construction")

// compile compiles a source and fails the test with its problems, if any.
func compile(t *testing.T, src string) {
	t.Helper()
	result := lang.Compile("case.trm", []byte(src))
	for _, claim := range result.Claims {
		if !claim.Holds {
			t.Errorf("the claim in line %d does not hold: %s", claim.Line, claim.Text)
		}
	}
	if result.Problems.Failed() || len(result.Claims) == 0 || t.Failed() {
		t.Errorf("%d claims; %s\n%s", len(result.Claims), problems(result.Problems), src)
	}
}

// problems prints a list as the command does.
func problems(list source.List) string {
	var out bytes.Buffer
	if err := list.Print(&out, false); err != nil {
		return err.Error()
	}
	return out.String()
}

// source is a whole source that calls the row's construction on some givens.
func (r row) source(givens string) string {
	src := "figure \"" + r.name + "\"\n" + strings.TrimSpace(givens) + "\n" + r.call + "\n"
	if rest, ok := strings.CutPrefix(givens, "unit 1 mm\n"); ok {
		src = "figure \"" + r.name + "\"\nunit 1 mm\n" + rest + "\n" + r.call + "\n"
	}
	for _, claim := range strings.Split(r.claims, "\n") {
		src += "claim " + claim + "\n"
	}
	return src
}

func TestAwkward(t *testing.T) {
	for _, r := range rows {
		for _, scene := range r.data.scenes {
			t.Run(r.name+"/"+scene.name, func(t *testing.T) {
				t.Parallel()
				compile(t, r.source(scene.givens))
			})
		}
	}
}

// TestViews calls each construction with every inner act as a step of its own,
// and with nothing seen but the result.
func TestViews(t *testing.T) {
	for _, view := range []string{"in full", "unseen"} {
		for _, r := range rows {
			t.Run(r.name+"/"+view, func(t *testing.T) {
				t.Parallel()
				call, rest, _ := strings.Cut(r.call, "\n")
				r.call = call + " " + view + "\n" + rest
				compile(t, r.source(r.data.scenes[0].givens))
			})
		}
	}
}

// TestRandom tries each construction on random data. The same data come every
// time: a row's name is its seed.
func TestRandom(t *testing.T) {
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			t.Parallel()
			seed := fnv.New64a()
			seed.Write([]byte(r.name + r.call))
			chance := rand.New(rand.NewSource(int64(seed.Sum64())))
			for range max(1, *many/max(1, r.heavy)) {
				compile(t, r.source(r.data.random(chance)))
				if t.Failed() {
					return
				}
			}
		})
	}
}

// TestRows holds that every construction is tried, on six placings or more.
func TestRows(t *testing.T) {
	var names []string
	for _, r := range rows {
		names = append(names, r.name)
		if len(r.data.scenes) < 6 {
			t.Errorf("%s is tried on %d placings only", r.name, len(r.data.scenes))
		}
		if r.published == "" {
			t.Errorf("%s names no published counterpart", r.name)
		}
	}
	for _, name := range stdlib.Names() {
		if !slices.Contains(names, name) {
			t.Errorf("%s is not tried", name)
		}
	}
}

// TestFiles holds the form of the library's files: one construction each, of
// the file's name, with its sentence, its claims, and laid out in the usual way.
func TestFiles(t *testing.T) {
	paths, err := fs.Glob(os.DirFS("."), "*.trm")
	if err != nil || len(paths) != len(stdlib.Names()) {
		t.Fatalf("%d files and %d names: %v", len(paths), len(stdlib.Names()), err)
	}
	for _, file := range paths {
		text, err := fs.ReadFile(stdlib.Files, file)
		if err != nil {
			t.Fatal(err)
		}
		var found source.List
		src := source.NewFile(file, string(text))
		if formatted, _ := syntax.Format(src, &found); formatted != string(text) {
			t.Errorf("%s is not laid out in the usual way; it should read\n%s", file, formatted)
		}
		tree := syntax.Parse(src, &found)
		if found.Failed() {
			t.Fatalf("%s", problems(found))
		}
		if len(tree.Statements) != 1 || tree.Statements[0].Construction == nil {
			t.Errorf("%s does not hold just one construction", file)
			continue
		}
		checkConstruction(t, file, tree.Statements[0].Construction)
	}
}

func checkConstruction(t *testing.T, file string, c *syntax.Construction) {
	t.Helper()
	if want := strings.TrimSuffix(path.Base(file), ".trm"); c.Name != want {
		t.Errorf("%s defines %s", file, c.Name)
	}
	sentences, claims := 0, 0
	for _, st := range c.Body {
		if st.Sentence != nil && st.Sentence.Text != "" {
			sentences++
		}
		if st.Claim != nil {
			claims++
		}
	}
	if sentences != 1 || claims == 0 {
		t.Errorf("%s has %d sentences and %d claims", file, sentences, claims)
	}
	if c.Body[0].Sentence == nil {
		t.Errorf("%s does not begin with its sentence", file)
	}
}
