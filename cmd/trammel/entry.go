package main

import (
	"fmt"
	"io/fs"
	"strings"

	examples "trammel/examples/library"
	"trammel/lang"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// entry is what there is to tell of a construction of the library.
type entry struct {
	Name     string
	Call     string // n by erect(m, P)
	Sentence string // Erect the perpendicular to m at P.
	Takes    []string
	Gives    []string
	Needs    []string
	Claims   []string
	Steps    []string // in words
	Count    program.Operations
	Source   string
	Example  string // a source that calls it
}

// newEntry reads the library's file and the example of a construction.
func newEntry(name string) entry {
	text := embedded(stdlib.Files, name)
	r := newReader(name, text)
	c := r.construction
	told := lang.Tell(name+".trm", []byte(text), "") // a test holds that it can be told
	return entry{
		Name:     name,
		Call:     r.call(),
		Sentence: r.said(),
		Takes:    r.params(c.Params),
		Gives:    r.params(c.Gives),
		Needs:    r.needs(),
		Claims:   r.claims(c.Body),
		Steps:    told.Captions,
		Count:    told.Operations,
		Source:   text,
		Example:  embedded(examples.Files, name),
	}
}

// embedded is the text of a source that the program carries.
func embedded(files fs.FS, name string) string {
	text, err := fs.ReadFile(files, name+".trm")
	if err != nil {
		panic(err) // a test holds that it is there
	}
	return string(text)
}

// reader reads a construction with the words of its file.
type reader struct {
	file         *source.File
	construction *syntax.Construction
}

func newReader(name, text string) *reader {
	var problems source.List
	f := source.NewFile(name+".trm", text)
	for _, s := range syntax.Parse(f, &problems).Statements {
		if s.Construction != nil {
			return &reader{f, s.Construction}
		}
	}
	panic(name + " defines nothing") // a test holds that it does
}

func (r *reader) text(n syntax.Node) string { return n.Span(r.file).Text() }

// params are as in the head: line m, point P
func (r *reader) params(list []*syntax.Param) (words []string) {
	for _, p := range list {
		words = append(words, r.text(p.Node))
	}
	return words
}

// call is the head as a caller writes it: n by erect(m, P)
func (r *reader) call() string {
	list := func(params []*syntax.Param) string {
		var names []string
		for _, p := range params {
			names = append(names, r.name(p))
		}
		return strings.Join(names, ", ")
	}
	c := r.construction
	return fmt.Sprintf("%s by %s(%s)", list(c.Gives), c.Name, list(c.Params))
}

// name is a parameter as a caller writes it: P, or P[1 to n - 1]
func (r *reader) name(p *syntax.Param) string {
	name := r.text(p.Name.Node)
	if p.From == nil {
		return name
	}
	base, _, _ := strings.Cut(name, "[")
	return fmt.Sprintf("%s[%s to %s]", base, r.text(p.From.Node), r.text(p.To.Node))
}

func (r *reader) needs() (all []string) {
	for _, s := range r.construction.Body {
		if s.Needs != nil {
			all = append(all, r.text(s.Needs.Relation.Node))
		}
	}
	return all
}

// claims are those of a body and of the blocks in it.
func (r *reader) claims(body []*syntax.Statement) (all []string) {
	for _, s := range body {
		switch {
		case s.Claim != nil:
			all = append(all, r.text(s.Claim.Relation.Node))
		case s.Step != nil:
			all = append(all, r.claims(s.Step.Body)...)
		case s.Repeat != nil:
			all = append(all, r.claims(s.Repeat.Body)...)
		}
	}
	return all
}

// said is the construction's sentence with its parameters.
func (r *reader) said() string {
	for _, s := range r.construction.Body {
		if s.Sentence != nil {
			return strings.NewReplacer("{", "", "}", "").Replace(s.Sentence.Text)
		}
	}
	return ""
}
