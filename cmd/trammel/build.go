package main

import (
	"fmt"
	"runtime"
	"strconv"
)

// buildCmd is: trammel build [files or folders] [-o where] [--deps file]
type buildCmd struct {
	pictures
	Deps string `placeholder:"FILE" help:"Write rules for make to FILE: of each picture, the sources that it is drawn from." complete:"files"`
}

// pictures is what to draw, and where to.
type pictures struct {
	Sources []string `arg:"" optional:"" help:"Sources, folders of sources, or - for the standard input; nothing is the current folder." complete:"sources"`
	Out     string   `short:"o" placeholder:"WHERE" help:"A folder for the pictures, a name ending in .svg, .pdf, .png or .html for one picture, or - for the standard output. Unsaid, a picture goes beside its source." complete:"files"`
	style
	Jobs count `short:"j" placeholder:"N" help:"Draw so many figures at a time; unsaid, one for each processor."`
}

// Help is the part of the help that teaches.
func (buildCmd) Help() string {
	return `Draws each source to a picture of the same name. A folder stands for all
sources in it and below. A source with errors leaves its old picture alone, and
the others are drawn.

    trammel build first.trm               draws first.svg
    trammel build examples -o out/        draws examples/a/b.trm as out/a/b.svg
    trammel build - < first.trm           draws to the standard output

A PDF has the figure's true size, with its letters to be searched; a PNG tells
its size to the programs that show it.

    trammel build first.trm -o first.pdf
    trammel build lessons --format png --dpi 600

A page in HTML plays the construction in a browser, act by act; --steps draws
each step by itself, as files or as the pages of a PDF.

    trammel build first.trm -o first.html
    trammel build first.trm --steps               draws first-01.svg, first-02.svg …
    trammel build first.trm --steps -o first.pdf --theme slide

    trammel build lesson.trm --deps lesson.d
    cat lesson.d                          lesson.svg: lesson.trm circles.trm
`
}

// Run draws the figures.
func (c *buildCmd) Run(e *env) error {
	if err := c.settle(); err != nil {
		return err
	}
	if err := c.checkDeps(); err != nil {
		return err
	}
	if c.Steps || c.Format == "html" {
		e.noteWords(string(c.Language))
	}
	list, failed, err := sources(c.Sources)
	if err != nil {
		return err
	}
	t := tally{reporter: newReporter(e), failed: len(failed)}
	t.unread(failed)
	jobs, err := e.plan(list, c.pictures)
	if err != nil {
		return err
	}
	t.single = len(jobs) == 1 && jobs[0].named
	defer tidy()()
	line := e.newProgress(len(jobs))
	var made rules
	work := func(j job) *drawing {
		d := e.draw(j, c.style, nil)
		if c.Deps != "" {
			d.renew()
		}
		return d
	}
	inOrder(jobs, c.Jobs.workers(), work, func(d *drawing) {
		line.step(func() { t.add(d) })
		made.add(d)
	})
	c.writeDeps(e, &made)
	if !t.single {
		fmt.Fprintln(e.stderr, t.summary("built"))
	}
	return nil
}

// count is a number of things, one at least; 0 is unsaid.
type count int

// UnmarshalText reads a count from the command line.
func (c *count) UnmarshalText(text []byte) error {
	n, err := strconv.Atoi(string(text))
	if err != nil || n < 1 {
		return fmt.Errorf("%s is not 1, 2 or so many", text)
	}
	*c = count(n)
	return nil
}

func (c count) workers() int {
	if c == 0 {
		return runtime.GOMAXPROCS(0)
	}
	return int(c)
}

// tally counts what became of sources.
type tally struct {
	*reporter
	single        bool // one source was named, and a picture is expected of it
	drawn, failed int
	sheets        int // worksheets whose papers are made
}

// add reports a drawing and counts it.
func (t *tally) add(d *drawing) {
	t.report(d)
	switch {
	case d.failed():
		t.failed++
	case d.drawn() && d.Worksheet != nil:
		t.sheets++
	case d.drawn():
		t.drawn++
	case t.single:
		t.noFigure(d.name(), &d.Result)
		t.raise(exitSource)
	}
}

// summary is: 12 figures and 1 worksheet built, 1 with errors
func (t *tally) summary(done string) string {
	s := counted(t.drawn, "figure")
	if t.sheets > 0 {
		s += " and " + counted(t.sheets, "worksheet")
	}
	s += " " + done
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
