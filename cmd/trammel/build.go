package main

import (
	"fmt"
	"runtime"
)

// buildCmd is: trammel build [files or folders] [-o where]
type buildCmd struct {
	Sources []string `arg:"" optional:"" help:"Sources, folders of sources, or - for the standard input; nothing is the current folder."`
	Out     string   `short:"o" placeholder:"WHERE" help:"A folder for the pictures, a name ending in .svg for one picture, or - for the standard output. Unsaid, a picture goes beside its source."`
	style
	Jobs int `short:"j" placeholder:"N" help:"Draw so many figures at a time; unsaid, one for each processor."`
}

// style is how pictures are made.
type style struct {
	Text string `enum:"outline,live" default:"outline" help:"Text as outlines, alike everywhere, or live: found by a search and set in the reader's fonts. (outline, live)"`
}

// Help is the part of the help that teaches.
func (buildCmd) Help() string {
	return `Draws each source to a picture of the same name. A folder stands for all
sources in it and below. A source with errors leaves its old picture alone, and
the others are drawn.

    trammel build first.trm               draws first.svg
    trammel build examples -o out/        draws examples/a/b.trm as out/a/b.svg
    trammel build first.trm -o - | lpr    draws to the standard output
`
}

// Run draws the figures.
func (c *buildCmd) Run(e *env) error {
	workers, err := c.workers()
	if err != nil {
		return err
	}
	list, failed, err := inputs(c.Sources, func(string) {})
	if err != nil {
		return err
	}
	jobs, err := e.plan(list, c.Out)
	if err != nil {
		return err
	}
	t := tally{reporter: newReporter(e), single: len(jobs) == 1 && jobs[0].named}
	t.unread(failed)
	t.failed = len(failed)
	inOrder(jobs, workers, func(j job) *drawing { return e.draw(j, c.style) }, t.add)
	if !t.single {
		fmt.Fprintln(e.stderr, t.summary("built"))
	}
	return nil
}

func (c *buildCmd) workers() (int, error) {
	switch {
	case c.Jobs < 0:
		return 0, &usageError{fmt.Sprintf("--jobs %d: there must be one at least", c.Jobs), ""}
	case c.Jobs == 0:
		return runtime.GOMAXPROCS(0), nil
	}
	return c.Jobs, nil
}

// tally counts what became of sources.
type tally struct {
	*reporter
	single        bool // one source was named, and a picture is expected of it
	drawn, failed int
}

// add reports a drawing and counts it.
func (t *tally) add(d *drawing) {
	t.report(d)
	switch {
	case d.failed():
		t.failed++
	case d.drawn():
		t.drawn++
	case t.single:
		t.complain(d.name(), "there is no figure in it, only constructions", "")
		t.raise(exitSource)
	}
}

// summary is: 12 figures built, 1 with errors
func (t *tally) summary(done string) string {
	s := counted(t.drawn, "figure") + " " + done
	if t.failed > 0 {
		s += fmt.Sprintf(", %d with errors", t.failed)
	}
	return s
}

// counted is: 1 figure, 2 figures
func counted(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprintf("%d %s", n, what)
}
