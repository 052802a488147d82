package lang_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
)

// A file of testdata/errors is a topic; it holds sources, each under a line
//
//	#### what is wrong in it
//
// and each line of a source says in a comment what must be reported there:
//
//	join AC  # ERROR 7 "C is not known" HELP "make it first" MEND join AB
//
// ERROR and WARN may name the column. HELP stands beside its problem, NOTE on
// the line it points to (beside the problem, where that is in another file).
// Each takes several texts. Nothing else may be reported. MEND is the line
// mended, - if it goes; with all of them in place the source has no errors.
// The comments themselves are not compiled.
var (
	heading  = regexp.MustCompile(`(?m)^#### (.*)\n`)
	mending  = regexp.MustCompile(`[ \t]*(?:# )?\bMEND ([^\r\n]*)`)
	expected = regexp.MustCompile(`\b(ERROR|HELP|NOTE|WARN)((?: \d+)?)((?: "(?:[^"\\]|\\.)*")+)`)
	quoted   = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	comment  = regexp.MustCompile(`[ \t]*# (?:ERROR|HELP|NOTE|WARN|MEND)\b[^\r\n]*`)
)

// said is one thing reported, or expected to be.
type said struct {
	line, col int // the column is 0 where nothing is asked of it
	kind      string
	text      string
}

func (s said) String() string { return fmt.Sprintf("%d:%d: %s %q", s.line, s.col, s.kind, s.text) }

// meets tells whether what was reported is what is expected.
func (s said) meets(want said) bool {
	return s.line == want.line && s.kind == want.kind &&
		(want.col == 0 || s.col == want.col) && strings.Contains(s.text, want.text)
}

// TestErrors holds every mistake of the corpus to its message and its mending.
func TestErrors(t *testing.T) {
	files, err := filepath.Glob("testdata/errors/*.trm")
	if err != nil || len(files) == 0 {
		t.Fatal("no sources in testdata/errors", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		heads := heading.FindAllStringSubmatchIndex(string(text), -1)
		if len(heads) == 0 || heads[0][0] != 0 {
			t.Fatalf("%s does not begin with a heading", file)
		}
		for i, at := range heads {
			end := len(text)
			if i+1 < len(heads) {
				end = heads[i+1][0]
			}
			title, body := string(text[at[2]:at[3]]), string(text[at[1]:end])
			t.Run(strings.TrimSuffix(filepath.Base(file), ".trm")+"/"+title, func(t *testing.T) {
				holdMistakes(t, body)
				holdMended(t, body)
			})
		}
	}
}

// holdMistakes compares what is reported of a source with what its comments say.
func holdMistakes(t *testing.T, text string) {
	t.Helper()
	got, want := reported(compileErrors(comment.ReplaceAllString(text, ""))), wanted(t, text)
	for _, w := range want {
		i := slices.IndexFunc(got, func(g said) bool { return g.meets(w) })
		if i < 0 {
			t.Errorf("not reported: %s", w)
			continue
		}
		got = slices.Delete(got, i, i+1)
	}
	for _, g := range got {
		t.Errorf("not expected: %s", g)
	}
}

// holdMended compiles a source with its lines mended.
func holdMended(t *testing.T, text string) {
	t.Helper()
	if !strings.Contains(text, "MEND ") {
		return
	}
	var out strings.Builder
	for line := range strings.Lines(text) {
		switch m := mending.FindStringSubmatch(line); {
		case m == nil:
			out.WriteString(comment.ReplaceAllString(line, ""))
		case m[1] != "-":
			out.WriteString(strings.ReplaceAll(m[1], " | ", "\n") + "\n")
		}
	}
	for _, p := range compileErrors(out.String()) {
		if p.Severity == source.Error {
			line, col := p.Span.File.Position(p.Span.Start)
			t.Errorf("mended, it still says %d:%d: %s\n%s", line, col, p.Text, out.String())
		}
	}
}

// compileErrors compiles a source beside the files of testdata/errors/use.
func compileErrors(text string) source.List {
	return lang.Compile("testdata/errors/use/itself.trm", []byte(text)).Problems
}

// wanted reads the comments of a source.
func wanted(t *testing.T, text string) (all []said) {
	t.Helper()
	n := 0
	for line := range strings.Lines(text) {
		n++
		note := mending.ReplaceAllString(comment.FindString(line), "")
		for _, m := range expected.FindAllStringSubmatch(note, -1) {
			col, _ := strconv.Atoi(strings.TrimSpace(m[2]))
			for _, q := range quoted.FindAllString(m[3], -1) {
				s, err := strconv.Unquote(q)
				if err != nil {
					t.Fatalf("line %d: %s: %v", n, q, err)
				}
				all = append(all, said{n, col, m[1], s})
			}
		}
	}
	return all
}

// reported lists problems as they are expected.
func reported(list source.List) (all []said) {
	for _, p := range list {
		kind := "ERROR"
		if p.Severity == source.Warning {
			kind = "WARN"
		}
		line, col := p.Span.File.Position(p.Span.Start)
		all = append(all, said{line, col, kind, p.Text})
		for help := range strings.SplitSeq(p.Help, "\n") {
			if help != "" {
				all = append(all, said{line, 0, "HELP", help})
			}
		}
		for _, n := range p.Notes {
			at := line
			if n.Span.File == p.Span.File {
				at, _ = n.Span.File.Position(n.Span.Start)
			}
			all = append(all, said{at, 0, "NOTE", n.Text})
		}
	}
	return all
}
