package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"
)

// watchCmd is: trammel watch [files or folders] [-o where] [--film]
type watchCmd struct {
	pictures
	papers
}

// Help is the part of the help that teaches.
func (watchCmd) Help() string {
	return `Builds, and builds again whatever uses a file that has changed: a figure, or a
library of constructions. Of a worksheet it makes the papers, as trammel sheet
does, anew when one of its figures changes. New files and folders are picked up.
Ctrl-C stops it.

    trammel watch first.trm
    trammel watch lessons -o pictures/
    trammel watch week3.trm --film
`
}

// Run watches until it is interrupted; a second interrupt ends it at once.
func (c *watchCmd) Run(e *env) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, func() {
		stop()
		tidy()
	})
	return c.watch(ctx, e)
}

func (c *watchCmd) watch(ctx context.Context, e *env) error {
	if slices.Contains(c.Sources, stdio) || c.Out == stdio {
		return &usageError{`"-" cannot be watched: watch goes from files to files`, ""}
	}
	if err := c.settle(); err != nil {
		return err
	}
	if err := c.inBounds(); err != nil {
		return err
	}
	folders, err := newFolders()
	if err != nil {
		e.fail("", err)
		return nil
	}
	defer folders.close()
	w := &watcher{env: e, cmd: c, folders: folders}
	t, err := w.pass(changes{all: true})
	if err != nil {
		return err
	}
	fmt.Fprintf(e.stderr, "%s; watching\n", t.summary("built"))
	for {
		changed, ok := folders.next(ctx)
		if !ok {
			e.status = exitGood
			return nil
		}
		w.passAgain(changed)
	}
}

// watcher draws, and remembers what each picture was drawn from.
type watcher struct {
	*env
	cmd     *watchCmd
	folders *folders
	last    map[job]*memory
	behind  bool            // the last pass could not do its work
	unable  map[string]bool // what could not be looked into in the last pass
}

// memory is how a source was drawn last.
type memory struct {
	*drawing
	reads   []string // the files that it depends on
	message string
}

// pass looks what there is, draws what has to be drawn and tells about it. It
// fails if the command line cannot be done.
func (w *watcher) pass(c changes) (*tally, error) {
	w.folders.begin()
	defer w.folders.end()
	t := &tally{reporter: newReporter(w.env)}
	jobs, err := w.look(t)
	if err != nil {
		w.behind = true
		w.keep(w.last)
		return nil, err
	}
	c.all = c.all || w.behind
	w.behind = false
	kept, dirty := w.sort(jobs, c)
	w.keep(kept)
	inOrder(dirty, w.cmd.Jobs.workers(), w.settle, func(m *memory) {
		w.tell(t, m, c)
		kept[m.job] = m
	})
	w.last = kept
	return t, nil
}

// passAgain is a pass whose failure is no end.
func (w *watcher) passAgain(c changes) {
	if _, err := w.pass(c); err != nil {
		w.finish(err)
	}
}

// look lists the work and watches the folders where it may change.
func (w *watcher) look(t *tally) ([]job, error) {
	list, failed, err := inputs(w.cmd.Sources, func(folder string) { w.folders.enter(folder) })
	for _, f := range failed {
		w.folders.enter(f.path)
	}
	for _, in := range list {
		w.folders.cover(in.path, whereabouts(in.path))
	}
	t.failed = len(failed)
	unable := map[string]bool{}
	for _, f := range append(failed, w.folders.errs...) {
		text := f.path + ": " + f.err.Error()
		if unable[text] = true; !w.unable[text] {
			t.unread([]failure{f})
		}
	}
	w.unable = unable
	if err != nil {
		return nil, err
	}
	return w.plan(list, w.cmd.pictures)
}

// sort tells what need not be drawn again from what has to be. What failed is
// tried again at every change: what it lacks may have come.
func (w *watcher) sort(jobs []job, c changes) (kept map[job]*memory, dirty []job) {
	kept = map[job]*memory{}
	for _, j := range jobs {
		m := w.last[j]
		if m == nil || m.failed() || c.touch(m.reads) {
			dirty = append(dirty, j)
		} else {
			kept[j] = m
		}
	}
	return kept, dirty
}

// keep goes on watching over what need not be drawn again.
func (w *watcher) keep(all map[job]*memory) {
	for _, m := range all {
		w.folders.cover(m.path, m.reads)
	}
}

// settle draws a source, and draws it again as long as files that it read may
// have changed before they were watched.
func (w *watcher) settle(j job) *memory {
	old := w.last[j]
	for changed := false; ; {
		d := w.draw(j, w.cmd.style, &w.cmd.papers)
		changed = changed || d.changed
		d.changed = changed
		m := &memory{drawing: d, reads: reads(d, old), message: w.message(d)}
		if !w.folders.cover(m.path, m.reads) {
			return m
		}
	}
}

// reads lists the files that a drawing depends on. One that failed may not have
// come to a file that it needs, so it also depends on what it read before.
func reads(d *drawing, old *memory) []string {
	list := whereabouts(d.path)
	for _, name := range d.Files {
		list = append(list, whereabouts(name)...)
	}
	if d.failed() && old != nil {
		list = append(list, old.reads...)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// message is all that there is to say of a drawing.
func (w *watcher) message(d *drawing) string {
	var b strings.Builder
	newReporter(&env{stderr: &b}).report(d)
	return b.String()
}

// tell reports a drawing, unless it was tried again in vain.
func (w *watcher) tell(t *tally, m *memory, c changes) {
	old := w.last[m.job]
	if old != nil && m.failed() && m.message == old.message && !c.touch(m.reads) {
		return
	}
	t.add(m.drawing)
	if w.last == nil || !m.drawn() || c.all && !m.changed {
		return
	}
	same := ""
	if !m.changed {
		same = ", unchanged"
	}
	fmt.Fprintf(w.stderr, "built %s in %d ms%s\n", printable(m.where()), m.took.Milliseconds(), same)
}
