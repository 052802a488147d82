package trammel_test

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"

	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

var update = flag.Bool("update", false, "write the generated parts of the documents anew")

// TestReference holds LANGUAGE.md against the forms that the parser's messages
// are made of, and those against the grammar.
func TestReference(t *testing.T) {
	old, err := os.ReadFile("LANGUAGE.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(old)
	text = fill(t, text, "forms", formTable(syntax.Forms))
	text = fill(t, text, "phrases", formTable(syntax.Phrases))
	text = fill(t, text, "library", library(t))
	if text == string(old) {
		return
	}
	if !*update {
		t.Fatal("LANGUAGE.md is not what the forms say: run go test . -run Reference -update")
	}
	if err := os.WriteFile("LANGUAGE.md", []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// fill puts content between the marks of a name.
func fill(t *testing.T, text, name, content string) string {
	t.Helper()
	before, rest, ok1 := strings.Cut(text, "<!-- "+name+" -->\n")
	_, after, ok2 := strings.Cut(rest, "<!-- end -->")
	if !ok1 || !ok2 {
		t.Fatalf("LANGUAGE.md has no place for %s", name)
	}
	return before + "<!-- " + name + " -->\n" + content + "<!-- end -->" + after
}

// formTable writes forms by family, a row an example.
func formTable(forms []syntax.Form) string {
	var b strings.Builder
	family := ""
	for _, f := range forms {
		if f.Family != family {
			family = f.Family
			fmt.Fprintf(&b, "\n### %s\n\n| write | it |\n|---|---|\n", strings.ToUpper(family[:1])+family[1:])
		}
		for _, e := range f.Examples {
			fmt.Fprintf(&b, "| `%s` | %s |\n", strings.ReplaceAll(e.Line, "|", `\|`), e.Means)
		}
	}
	return b.String() + "\n"
}

// library lists the constructions with their sentences.
func library(t *testing.T) string {
	var b strings.Builder
	b.WriteString("\n| call | it |\n|---|---|\n")
	for _, name := range stdlib.Names() {
		text, err := fs.ReadFile(stdlib.Files, name+".trm")
		if err != nil {
			t.Fatal(err)
		}
		var problems source.List
		f := syntax.Parse(source.NewFile(name, string(text)), &problems)
		for _, st := range f.Statements {
			if st.Construction != nil {
				fmt.Fprintf(&b, "| `%s` | %s |\n", call(f.Source, st.Construction), sentence(st.Construction))
			}
		}
	}
	return b.String() + "\n"
}

// call is a construction's head as a caller writes it: n by erect(m, P).
func call(f *source.File, c *syntax.Construction) string {
	_, head, _ := strings.Cut(c.Span(f).Text(), "construction ")
	first, gives, _ := strings.Cut(head, " gives ")
	name, params, _ := strings.Cut(strings.TrimSuffix(first, ")"), "(")
	return fmt.Sprintf("%s by %s(%s)", names(gives), name, names(params))
}

// names drops the kinds of a list of parameters.
func names(list string) string {
	var out []string
	for p := range strings.SplitSeq(list, ", ") {
		_, name, _ := strings.Cut(p, " ")
		if base, run, ok := strings.Cut(name, "[i] from "); ok {
			name = base + "[" + run + "]"
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

func sentence(c *syntax.Construction) string {
	for _, st := range c.Body {
		if st.Sentence != nil {
			return strings.NewReplacer("{", "", "}", "").Replace(st.Sentence.Text)
		}
	}
	return ""
}
