package trammel_test

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"trammel/lang"
)

// Two tables say how far the examples reach. testdata/published/curricula.tsv
// lists the constructions that boards of examination ask for, each with its
// source; examples/coverage.tsv names, line for line, the examples that draw
// them, or says why there are none. COVERAGE.md is made from both.

// request is one construction that a board asks for, and what answers it.
type request struct {
	board, item, construction, level, source string

	examples []string // below examples, without their ending
	words    []string // each stands in the first comment of one of them
	reason   string   // why there is no example
}

// TestCoverage wants every construction of the curricula to be drawn by
// examples that hold, or to be left out for a reason.
func TestCoverage(t *testing.T) {
	requests := mapped(t)
	heads := map[string]string{}
	for _, r := range requests {
		for _, name := range r.examples {
			if _, done := heads[name]; !done {
				heads[name] = headOf(t, name)
			}
		}
		r.checkWords(t, heads)
	}
	checkOrphans(t, heads)
	checkDocument(t, "COVERAGE.md", coverage(requests, len(heads)))
}

// mapped joins the two tables, which have the same rows in the same order.
func mapped(t *testing.T) (requests []request) {
	t.Helper()
	text, err := os.ReadFile("examples/coverage.tsv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")[1:]
	rows := table(t, "curricula")
	if len(lines) != len(rows) {
		t.Fatalf("coverage.tsv has %d rows, curricula.tsv %d", len(lines), len(rows))
	}
	for i, r := range rows {
		key := strings.Join([]string{r["board"], r["item"], r["construction"]}, "\t")
		answer, ok := strings.CutPrefix(lines[i], key+"\t")
		cells := strings.Split(answer, "\t")
		if !ok || len(cells) != 2 || slices.Contains(cells, "") {
			t.Fatalf("coverage.tsv, row %d: wants the examples, and their words, for %s", i+1, key)
		}
		out := request{board: r["board"], item: r["item"], construction: r["construction"], level: r["level"], source: r["source"]}
		if cells[0] == "-" {
			out.reason = cells[1]
		} else {
			out.examples, out.words = strings.Fields(cells[0]), strings.Split(cells[1], " / ")
		}
		requests = append(requests, out)
	}
	return requests
}

// headOf compiles an example, wants claims that hold, and returns the comment
// at its head as one line.
func headOf(t *testing.T, name string) string {
	t.Helper()
	file := "examples/" + name + ".trm"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	out := lang.Compile(file, text)
	for _, p := range out.Problems {
		t.Errorf("%s: %s", file, p.Text)
	}
	if len(out.Claims) == 0 {
		t.Errorf("%s claims nothing", file)
	}
	for _, c := range out.Claims {
		if !c.Holds {
			t.Errorf("%s:%d: does not hold: %s", file, c.Line, c.Text)
		}
	}
	var head []string
	for line := range strings.Lines(string(text)) {
		comment, ok := strings.CutPrefix(line, "#")
		if !ok {
			break
		}
		head = append(head, strings.TrimSpace(comment))
	}
	return strings.Join(head, " ")
}

// checkWords wants each example to say at its head what it is for, and all that
// is asked for to be said by one of them.
func (r request) checkWords(t *testing.T, heads map[string]string) {
	t.Helper()
	for _, name := range r.examples {
		if !slices.ContainsFunc(r.words, func(w string) bool { return strings.Contains(heads[name], w) }) {
			t.Errorf("%s, %s: the first comment of %s has none of the words %q", r.board, r.construction, name, r.words)
		}
	}
	for _, w := range r.words {
		if !slices.ContainsFunc(r.examples, func(name string) bool { return strings.Contains(heads[name], w) }) {
			t.Errorf("%s, %s: no example says %q in its first comment", r.board, r.construction, w)
		}
	}
}

// checkOrphans wants every example of the curriculum's folder to answer a board.
func checkOrphans(t *testing.T, heads map[string]string) {
	t.Helper()
	files, err := fs.Glob(os.DirFS("examples"), "curriculum/*.trm")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples in examples/curriculum: %v", err)
	}
	for _, file := range files {
		if _, used := heads[strings.TrimSuffix(file, ".trm")]; !used {
			t.Errorf("coverage.tsv does not name examples/%s", file)
		}
	}
}

// checkDocument holds a generated document, or writes it anew.
func checkDocument(t *testing.T, file, text string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if old, err := os.ReadFile(file); err != nil || string(old) != text {
		t.Errorf("%s is not what the tables say: run go test . -run Coverage -update", file)
	}
}

// coverage writes the document: the counts, a table a board, what is left out,
// and the sources, numbered as they come.
func coverage(requests []request, examples int) string {
	var tables, left, sources strings.Builder
	board, boards := "", map[string]bool{}
	numbers := map[string]int{}
	for _, r := range requests {
		boards[r.board] = true
		if _, listed := numbers[r.source]; !listed {
			numbers[r.source] = len(numbers) + 1
			fmt.Fprintf(&sources, "%d. %s\n", len(numbers), r.source)
		}
		if r.reason != "" {
			fmt.Fprintf(&left, "- %s, %s: %s [%d]: %s\n", r.board, r.item, r.construction, numbers[r.source], r.reason)
			continue
		}
		if r.board != board {
			board = r.board
			fmt.Fprintf(&tables, "\n## %s\n\n| asked for | construction | level | drawn by |\n|---|---|---|---|\n", board)
		}
		fmt.Fprintf(&tables, "| %s | %s [%d] | %s | %s |\n", r.item, r.construction, numbers[r.source], r.level, links(r.examples))
	}
	out := strings.Count(left.String(), "\n")
	return fmt.Sprintf(preface, len(requests), len(boards), len(requests)-out, examples, out) +
		tables.String() + "\n## Left out\n\n" + left.String() + "\n## Sources\n\n" + sources.String()
}

const preface = `# Constructions of the curricula

What boards of examination ask for, and what draws it. Every example is compiled by the test that makes this page
(` + "`go test . -run Coverage -update`" + `), and every claim in it is proved; its picture stands beside it. The tables that the
page is made from are [curricula.tsv](testdata/published/curricula.tsv) and [coverage.tsv](examples/coverage.tsv).

**%d** requests of **%d** boards and lists: **%d** are drawn, by **%d** examples; **%d** left out.
`

// links names the examples of a row.
func links(names []string) string {
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = fmt.Sprintf("[%s](examples/%s.trm)", strings.ReplaceAll(path.Base(name), "-", " "), name)
	}
	return strings.Join(out, ", ")
}
