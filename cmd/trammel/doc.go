package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"trammel/lang"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// docCmd is: trammel doc [constructions] [-o folder]
type docCmd struct {
	Names []string `arg:"" optional:"" name:"construction" help:"Constructions of the library; nothing is all of them." complete:"constructions"`
	Out   string   `short:"o" placeholder:"FOLDER" help:"Write a page for a browser, library.html, with a picture of each construction." complete:"folders"`
}

// Help is the part of the help that teaches.
func (docCmd) Help() string {
	return `Lists the constructions that every source can call, or tells all of some: what
each needs and claims, its source, an example of its use.

    trammel doc                           lists them, with a sentence each
    trammel doc erect drop                tells all of two
    trammel doc -o pages/                 draws them all in pages/library.html
`
}

// Run tells of the library.
func (c *docCmd) Run(e *env) error {
	entries, err := entriesOf(c.Names)
	if err != nil {
		return err
	}
	switch {
	case c.Out != "":
		return c.write(e, entries)
	case len(c.Names) == 0:
		e.print(list(entries))
	default:
		e.print(tell(entries))
	}
	return nil
}

// entriesOf finds constructions by their names; no names are all.
func entriesOf(names []string) (entries []entry, err error) {
	known := stdlib.Names()
	if len(names) == 0 {
		names = known
	}
	for _, name := range names {
		if !slices.Contains(known, name) {
			return nil, &usageError{fmt.Sprintf("the library has no construction %s", name), offer(name, known)}
		}
		entries = append(entries, newEntry(name))
	}
	return entries, nil
}

// mostOffered is how many constructions are offered for a word.
const mostOffered = 12

// offer names the constructions that a word may mean: one of nearly that name, and
// those whose names or words begin with it.
func offer(word string, known []string) string {
	var about []string
	if near := syntax.Nearest(word, known); near != "" {
		about = append(about, near)
	}
	for _, name := range known {
		said := strings.ToLower(" " + name + " " + newReader(name, embedded(stdlib.Files, name)).said())
		if len([]rune(word)) > 2 && strings.Contains(said, " "+strings.ToLower(word)) && !slices.Contains(about, name) && len(about) < mostOffered {
			about = append(about, name)
		}
	}
	hint := `"trammel doc" lists the constructions`
	if len(about) > 0 {
		hint = fmt.Sprintf("there is %s; %s", strings.Join(about, ", "), hint)
	}
	return hint
}

// list writes what each entry is for beside its call, or under a long one.
func list(entries []entry) string {
	const column = 36
	var b strings.Builder
	for _, x := range entries {
		call := x.Call
		if len(call) > column {
			fmt.Fprintln(&b, call)
			call = ""
		}
		fmt.Fprintf(&b, "%-*s  %s\n", column, call, x.Sentence)
	}
	return b.String()
}

// tell writes all that there is to say of each entry.
func tell(entries []entry) string {
	var b strings.Builder
	for i, x := range entries {
		if i > 0 {
			b.WriteString("\n\n")
		}
		fmt.Fprintf(&b, "%s\n\n    %s\n\n", x.Sentence, x.Call)
		facts(&b, x)
		numbered(&b, x)
		fmt.Fprintf(&b, "\nIn the library:\n\n%s\nAn example:\n\n%s", indented(x.Source), indented(x.Example))
	}
	return b.String()
}

// facts writes what a construction takes, gives, needs and claims.
func facts(b *strings.Builder, x entry) {
	for _, f := range x.facts() {
		for i, line := range f.Lines {
			word := f.Word
			if i > 0 {
				word = ""
			}
			fmt.Fprintf(b, "%-8s%s\n", word, line)
		}
	}
}

// fact is a row of what is known of a construction.
type fact struct {
	Word  string
	Lines []string
}

func (x entry) facts() []fact {
	return []fact{
		{"Takes", []string{strings.Join(x.Takes, ", ")}},
		{"Gives", []string{strings.Join(x.Gives, ", ")}},
		{"Needs", x.Needs},
		{"Claims", x.Claims},
		{"Counts", []string{counts(x.Count)}},
	}
}

func numbered(b *strings.Builder, x entry) {
	fmt.Fprintf(b, "\n%s:\n\n", x.InWords())
	for i, s := range x.Steps {
		fmt.Fprintf(b, "%6d  %s\n", i+1, s)
	}
}

// InWords stands over the steps; they are of one number where one is taken.
func (x entry) InWords() string {
	for _, p := range x.Takes {
		if name, ok := strings.CutPrefix(p, "number "); ok {
			return fmt.Sprintf("In words, and counted, for %s = %d", name, lang.ToldNumber)
		}
	}
	return "In words"
}

// indented is a text four columns in.
func indented(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" {
			b.WriteString("    ")
		}
		b.WriteString(line)
	}
	return b.String()
}

// write makes the page in the folder.
func (c *docCmd) write(e *env, entries []entry) error {
	if c.Out == stdio {
		return &usageError{"a page goes into a folder, and - is none", "name one: trammel doc -o pages/"}
	}
	name := filepath.Join(c.Out, "library.html")
	var page []byte
	err := guard(func() (err error) {
		page, err = newPage(entries)
		return err
	})
	if err == nil {
		_, err = save(name, page)
	}
	if err != nil {
		e.fail(name, err)
		return nil
	}
	e.print(printable(name) + "\n")
	return nil
}
