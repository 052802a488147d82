package main

import (
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"trammel/lang/syntax"
)

//go:embed topics/*.trm
var topicFiles embed.FS

// newCmd is: trammel new [topic] [file]
type newCmd struct {
	Topic string `arg:"" optional:"" help:"What the source is to be about; nothing lists the topics." complete:"topics"`
	File  string `arg:"" optional:"" help:"The source to make, a folder for it, or - for the standard output. Unsaid, it is named after its topic." complete:"sources"`
}

// Help is the part of the help that teaches.
func (newCmd) Help() string {
	return `Makes a source to start from: one that draws a figure, with comments that say
how to go on. A file that is there already is never touched.

    trammel new                           lists the topics
    trammel new perpendicular             makes perpendicular.trm
    trammel new circle lessons/k.trm      makes lessons/k.trm
    trammel new loci - | less             shows one
`
}

// Run makes the source.
func (c *newCmd) Run(e *env) error {
	if c.Topic == "" {
		e.print(topicList())
		return nil
	}
	text, err := topic(c.Topic)
	if err != nil {
		return err
	}
	name, err := c.name()
	switch {
	case err != nil:
		return err
	case name == stdio:
		e.print(text)
		return nil
	}
	err = create(name, text)
	if errors.Is(err, fs.ErrExist) {
		return &usageError{name + " is there already, and stays as it is", "say another name: trammel new " + c.Topic + " NAME.trm"}
	}
	if err != nil {
		e.fail(name, err)
		return nil
	}
	e.print(printable(name) + "\n")
	return nil
}

// name is the name of the source to make.
func (c *newCmd) name() (string, error) {
	own := c.Topic + ".trm"
	info, err := os.Stat(c.File)
	switch {
	case c.File == "":
		return own, nil
	case c.File == stdio:
		return stdio, nil
	case err == nil && info.IsDir(), os.IsPathSeparator(c.File[len(c.File)-1]):
		return filepath.Join(c.File, own), nil
	case !isSource(c.File):
		return "", &usageError{c.File + " is no name for a source: it has to end in .trm", "a folder that does not exist yet needs a slash at its end"}
	}
	return filepath.Clean(c.File), nil
}

// create makes a file that is not there, with the folders on the way.
func create(name, text string) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = io.WriteString(f, text)
	return errors.Join(err, f.Close())
}

// topics are the names of the sources to start from.
func topics() (names []string) {
	files, err := fs.Glob(topicFiles, "topics/*.trm")
	if err != nil {
		panic(err) // the pattern is wrong
	}
	for _, f := range files {
		names = append(names, strings.TrimSuffix(filepath.Base(f), ".trm"))
	}
	return names
}

// topic is the source for a topic.
func topic(name string) (string, error) {
	known := topics()
	if !slices.Contains(known, name) {
		hint := `"trammel new" lists the topics`
		if near := syntax.Nearest(name, known); near != "" {
			hint = fmt.Sprintf("there is %s; %s", near, hint)
		}
		return "", &usageError{fmt.Sprintf("there is no source to start from about %s", name), hint}
	}
	text, err := fs.ReadFile(topicFiles, "topics/"+name+".trm")
	return string(text), err
}

// topicList is a line for each topic, from the first comment of its source.
func topicList() string {
	var b strings.Builder
	for _, name := range topics() {
		text, err := topic(name)
		if err != nil {
			panic(err) // embedded
		}
		first, _, _ := strings.Cut(text, "\n")
		fmt.Fprintf(&b, "%-15s%s\n", name, strings.TrimPrefix(first, "# "))
	}
	return b.String()
}
