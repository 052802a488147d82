package main

import (
	"strings"
	"unicode/utf8"

	"trammel/svg/layout"
)

// describeCmd is: trammel describe file [--short | --long]
type describeCmd struct {
	Source   string   `arg:"" help:"The source, or - for the standard input." complete:"sources"`
	Short    bool     `xor:"length" help:"Print the short text only, for the alt of an image."`
	Long     bool     `xor:"length" help:"Print the long text only, for the words beside it."`
	Theme    theme    `placeholder:"NAME" help:"The theme of the picture: that of an exam tells what is given, and no answer." complete:"themes"`
	Language language `placeholder:"TAG" help:"The language in which numbers are written, such as de or pt-BR, whatever the source says." complete:"languages"`
}

// Help is the part of the help that teaches.
func (describeCmd) Help() string {
	return `Puts the figure of a source in words, for those who listen, to be pasted where
a picture is: first in short, for the alt of an image, then at length. A picture
holds its long text itself, but a page that shows it as an image keeps that from
its readers.

    trammel describe first.trm            the short text, an empty line, the long one
    trammel describe first.trm --short    the short text only
`
}

// Run prints the words.
func (c *describeCmd) Run(e *env) error {
	in, err := single(c.Source)
	if err != nil {
		return err
	}
	d, _ := e.compileInput(in)
	var title, words string
	if d.drawn() {
		d.err = guard(func() error {
			doc, _, err := layout.Draw(style{Theme: c.Theme, Language: c.Language}.of(d.Figure), layout.Options{})
			if err != nil {
				return &unfit{err}
			}
			title, words = doc.Title, doc.Desc
			return nil
		})
	}
	newReporter(e).report(d)
	switch {
	case d.failed():
	case d.Figure == nil:
		e.noFigure(in.name(), &d.Result)
		e.raise(exitSource)
	default:
		e.print(c.texts(title, words))
	}
	return nil
}

// texts are the short text, the long one, or both.
func (c *describeCmd) texts(title, words string) string {
	short, long := printable(short(title, words))+"\n", printable(sentences(title, words))+"\n"
	switch {
	case c.Short:
		return short
	case c.Long:
		return long
	}
	return short + "\n" + long
}

// shortest is how many letters a short text may have: those who listen cannot
// stop in it (common practice, no source).
const shortest = 150

// short is the title, and what comes first where there is room for it.
func short(title, words string) string {
	first, _, _ := strings.Cut(words, ". ")
	if all := sentences(title, first); utf8.RuneCountInString(all) <= shortest {
		return all
	}
	return sentences(title)
}

// sentences puts texts after each other, each with its full stop.
func sentences(texts ...string) string {
	var all []string
	for _, t := range texts {
		if t = strings.TrimSpace(t); t == "" {
			continue
		}
		if !strings.ContainsAny(t[len(t)-1:], ".!?") {
			t += "."
		}
		all = append(all, t)
	}
	return strings.Join(all, " ")
}
