package main

import (
	"runtime"

	"trammel/lang/source"
	"trammel/lang/syntax"
)

// formatCmd is: trammel fmt [files or folders] [--check]
type formatCmd struct {
	Sources []string `arg:"" optional:"" help:"Sources, folders of sources, or - to read the standard input and write the standard output; nothing is the current folder." complete:"sources"`
	Check   bool     `help:"Change nothing: name the sources that are not laid out in the usual way, and fail if there are any."`
}

// Help is the part of the help that teaches.
func (formatCmd) Help() string {
	return `Lays sources out in the usual way and names those that it changed. A source
with errors of grammar is left as it is.

    trammel fmt                      all sources in this folder and below
    trammel fmt --check examples     only say which would change
    trammel fmt - < old.trm          to the standard output
`
}

// Run lays the sources out.
func (c *formatCmd) Run(e *env) error {
	list, failed, err := sources(c.Sources)
	if err != nil {
		return err
	}
	r := newReporter(e)
	r.unread(failed)
	work := func(in input) *laidOut { return e.layOut(in, c.Check) }
	defer tidy()()
	inOrder(list, runtime.GOMAXPROCS(0), work, func(l *laidOut) { c.report(r, l) })
	return nil
}

// laidOut is what became of one source.
type laidOut struct {
	input
	text     string // as it should be
	changed  bool
	problems source.List
	err      error
}

// layOut formats a source, wholly or not at all. It never panics.
func (e *env) layOut(in input, check bool) *laidOut {
	l := &laidOut{input: in}
	text, err := e.read(in)
	if err != nil {
		l.err = err
		return l
	}
	l.err = guard(func() error {
		var ok bool
		l.text, ok = syntax.Format(source.NewFile(in.name(), string(text)), &l.problems)
		l.changed = ok && l.text != string(text)
		if check || !l.changed || in.path == stdio {
			return nil
		}
		_, err := save(in.path, []byte(l.text))
		return err
	})
	return l
}

// report shows errors and names the source if it changed, or should.
func (c *formatCmd) report(r *reporter, l *laidOut) {
	r.problems(l.name(), l.problems)
	switch {
	case l.err != nil:
		r.fail(l.name(), l.err)
	case l.problems.Failed():
	case l.path == stdio && !c.Check:
		r.print(l.text)
	case l.changed:
		r.print(printable(l.name()) + "\n")
	}
	if l.changed && c.Check {
		r.raise(exitSource)
	}
}
