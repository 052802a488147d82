package main

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"

	"trammel/lang"
)

// watching is a watch under way. Its lines come one by one: a test says what
// the next one must be, so that a rebuild too many fails it too.
type watching struct {
	*testing.T
	dir   string
	lines chan string
}

// Write is the standard error of the watch. Of an error it passes on the first
// line only.
func (w *watching) Write(p []byte) (int, error) {
	for line := range strings.Lines(string(p)) {
		if !strings.HasPrefix(line, " ") && !strings.HasPrefix(line, "help:") {
			w.lines <- strings.ReplaceAll(strings.TrimSuffix(line, "\n"), w.dir+string(filepath.Separator), "")
		}
	}
	return len(p), nil
}

const circle = "figure \"Circle\"\ngiven circle k centre O (0, 0) radius 3\n"

// other is another figure each time.
func other(radius string) string { return strings.Replace(circle, "radius 3", "radius "+radius, 1) }

const (
	library = "construction same(point P) gives point P\nend\n"
	user    = "use \"lib.trm\"\n" + circle
	wrong   = circle + "joyn AB\n"
)

// usualPapers are those that the command line asks for unsaid.
var usualPapers = papers{Seed: 1, Slip: 2, Turn: 2}

// watch starts watching the arguments, which are names in a new folder that
// holds the files, and stops at the end of the test.
func watch(t *testing.T, files map[string]string, args ...string) *watching {
	dir, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	w := &watching{T: t, dir: dir, lines: make(chan string, 1000)}
	for name, text := range files {
		w.write(name, text)
	}
	c := &watchCmd{papers: usualPapers}
	for _, arg := range args {
		c.Sources = append(c.Sources, filepath.Join(dir, arg))
	}
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() {
		defer close(done)
		if err := c.watch(ctx, &env{stderr: w, compile: lang.Compile}); err != nil {
			t.Error(err)
		}
	}()
	t.Cleanup(func() {
		cancel()
		<-done
		w.silent()
		leaks(t)
	})
	return w
}

// leaks fails the test if work goes on after the end of a watch.
func leaks(t *testing.T) {
	var stacks string
	for range 200 {
		buf := make([]byte, 1<<20)
		stacks = string(buf[:runtime.Stack(buf, true)])
		if !strings.Contains(stacks, "fsnotify.") && !strings.Contains(stacks, "main.inOrder") {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("goroutines are left over:\n%s", stacks)
}

func (w *watching) write(name, text string) {
	w.Helper()
	path := filepath.Join(w.dir, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		w.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		w.Fatal(err)
	}
}

func (w *watching) rename(from, to string) {
	w.Helper()
	if err := os.Rename(filepath.Join(w.dir, from), filepath.Join(w.dir, to)); err != nil {
		w.Fatal(err)
	}
}

func (w *watching) remove(name string) {
	w.Helper()
	if err := os.RemoveAll(filepath.Join(w.dir, name)); err != nil {
		w.Fatal(err)
	}
}

// says waits for lines that match the patterns from their beginnings.
func (w *watching) says(patterns ...string) {
	w.Helper()
	for _, pattern := range patterns {
		select {
		case line := <-w.lines:
			if !regexp.MustCompile("^" + pattern).MatchString(line) {
				w.Fatalf("watch says %q, want %q", line, pattern)
			}
		case <-time.After(20 * time.Second):
			w.Fatalf("watch says nothing, want %q", pattern)
		}
	}
}

// silent fails the test if the watch has said more than was waited for.
func (w *watching) silent() {
	w.Helper()
	select {
	case line := <-w.lines:
		w.Errorf("watch says %q, want nothing", line)
	default:
	}
}

const (
	built = `built a.svg in \d+ ms$`
	again = `built a.svg in \d+ ms, unchanged$`
)

func TestWatchSaves(t *testing.T) {
	w := watch(t, map[string]string{"a.trm": circle, "b.trm": circle}, "")
	w.says("2 figures built; watching")

	w.write("a.trm", other("4"))
	w.says(built)

	// As editors save: a new file takes the place of the old one.
	for _, radius := range []string{"5", "6"} {
		w.write(".a.trm.new", other(radius))
		w.rename(".a.trm.new", "a.trm")
		w.says(built)
	}
	w.rename("a.trm", "a.trm~")
	w.write("a.trm", other("7"))
	w.says(built)

	// The same text again is drawn, and the picture is left alone.
	w.write("a.trm", other("7"))
	w.says(again)
}

func TestWatchIgnores(t *testing.T) {
	w := watch(t, map[string]string{"a.trm": circle, "b.trm": circle, "notes.txt": ""}, "")
	w.says("2 figures built; watching")

	if err := os.Chmod(filepath.Join(w.dir, "b.trm"), 0o600); err != nil {
		t.Fatal(err)
	}
	w.write("notes.txt", "more")
	w.write(".b.trm.swp", "an editor's own")
	w.remove("b.svg")
	w.write("a.trm", other("4"))
	w.says(built)
}

func TestWatchLibrary(t *testing.T) {
	w := watch(t, map[string]string{"a.trm": user, "b.trm": circle, "lib.trm": library}, "")
	w.says("2 figures built; watching")

	w.write("lib.trm", "# better\n"+library)
	w.says(again)

	w.write("lib.trm", "joyn\n"+library)
	w.says("lib.trm:1:1: error")

	w.write("lib.trm", library)
	w.says(again)

	w.remove("lib.trm")
	w.says("a.trm:1:.*lib.trm")

	w.write("lib.trm", library)
	w.says(again)
}

func TestWatchLibraryElsewhere(t *testing.T) {
	text := strings.Replace(user, "lib.trm", "libs/all/lib.trm", 1)
	w := watch(t, map[string]string{"a.trm": text, "libs/all/lib.trm": library}, "a.trm")
	w.says("1 figure built; watching")

	w.write("libs/all/lib.trm", "joyn\n")
	w.says("libs/all/lib.trm:1:1: error")
	w.write("libs/all/lib.trm", library)
	w.says(again)

	// The folder goes, and comes back.
	w.rename("libs", "old")
	w.says("a.trm:1:.*lib.trm")
	w.rename("old", "libs")
	w.says(again)
	w.remove("libs")
	w.says("a.trm:1:.*lib.trm")
	w.write("libs/all/lib.trm", library)
	w.says(again)
	w.write("libs/all/lib.trm", "joyn\n")
	w.says("libs/all/lib.trm:1:1: error")
}

// TestWatchWorksheet: the papers of a worksheet are made anew when it is saved, or
// a figure that it sets, or a library that such a figure uses.
func TestWatchWorksheet(t *testing.T) {
	const (
		sheet = "worksheet \"t\"\ntask \"Draw k.\" from \"figures/a.trm\"\n"
		made  = `built sheet.pdf, sheet-answers.pdf, sheet-answers.csv in \d+ ms$`
		same  = `built sheet.pdf, sheet-answers.pdf, sheet-answers.csv in \d+ ms, unchanged$`
	)
	within := func(text string) string { return strings.Replace(text, "lib.trm", "lib/lib.trm", 1) }
	w := watch(t, map[string]string{"sheet.trm": sheet, "figures/a.trm": within(user), "figures/lib/lib.trm": library}, "sheet.trm")
	w.says("0 figures and 1 worksheet built; watching")

	w.write("sheet.trm", strings.Replace(sheet, "Draw k.", "Draw the circle k.", 1))
	w.says(made)
	w.write("figures/a.trm", within("use \"lib.trm\"\n"+other("4")))
	w.says(made)
	w.write("figures/lib/lib.trm", "# better\n"+library)
	w.says(same)

	w.write("figures/a.trm", wrong)
	w.says("figures/a.trm:3:1: error")
	w.write("figures/a.trm", circle)
	w.says(made)
	w.remove("figures/a.trm")
	w.says("sheet.trm:2:1: error: figures/a.trm cannot be read")
	w.write("figures/a.trm", circle)
	w.says(same)
}

// TestWatchWorksheetInFolder: a worksheet is made with the figures of its folder.
func TestWatchWorksheetInFolder(t *testing.T) {
	sheet := "worksheet \"t\"\ntask \"Draw k.\" from \"a.trm\"\n"
	w := watch(t, map[string]string{"week/sheet.trm": sheet, "week/a.trm": circle}, "")
	w.says("1 figure and 1 worksheet built; watching")
	w.write("week/a.trm", other("4"))
	w.says(`built week/a.svg in`, `built week/sheet.pdf, week/sheet-answers.pdf, week/sheet-answers.csv in`)
}

func TestWatchErrors(t *testing.T) {
	w := watch(t, map[string]string{"a.trm": wrong, "b.trm": circle}, "")
	w.says("a.trm:3:1: error", "1 figure built, 1 with errors; watching")

	// A change elsewhere does not repeat the message, a change here does.
	w.write("b.trm", other("4"))
	w.says(`built b.svg in \d+ ms$`)
	w.write("a.trm", wrong+"\n")
	w.says("a.trm:3:1: error")

	w.write("a.trm", circle)
	w.says(built)
	w.write("a.trm", wrong)
	w.says("a.trm:3:1: error")
	w.write("a.trm", circle)
	w.says(again)
}

func TestWatchComing(t *testing.T) {
	w := watch(t, map[string]string{"a.trm": circle}, "")
	w.says("1 figure built; watching")

	w.write("new.trm", circle)
	w.says("built new.svg in")

	w.write("sub/deep/c.trm", circle)
	w.says("built sub/deep/c.svg in")
	w.write("sub/deep/c.trm", other("4"))
	w.says("built sub/deep/c.svg in")

	// A whole folder at once, and one that goes and comes as another.
	w.write(".ready/d.trm", circle)
	w.rename(".ready", "folder")
	w.says("built folder/d.svg in")
	w.write(".ready/d.trm", other("4"))
	w.remove("folder")
	w.rename(".ready", "folder")
	w.says("built folder/d.svg in")
	w.write("folder/d.trm", other("5"))
	w.says("built folder/d.svg in")

	w.remove("sub")
	w.write("a.trm", other("4"))
	w.says(built)
}

func TestWatchGoing(t *testing.T) {
	w := watch(t, map[string]string{"lessons/a.trm": circle, "b.trm": circle}, "lessons", "b.trm")
	w.says("2 figures built; watching")

	w.remove("b.trm")
	w.says("b.trm: error: no such file or folder")
	w.write("b.trm", other("4"))
	w.says(`built b.svg in`)

	w.remove("lessons")
	w.says("lessons: error: no such file or folder")
	w.write("b.trm", other("5"))
	w.says("built b.svg in")
	w.write("lessons/a.trm", circle)
	w.says("built lessons/a.svg in")
	w.write("lessons/a.trm", other("4"))
	w.says("built lessons/a.svg in")
}

func TestWatchLink(t *testing.T) {
	w := watch(t, map[string]string{"real/x.trm": circle, "b.trm": circle}, "linked")
	w.says("linked: error: no such file or folder", "0 figures built, 1 with errors; watching")

	if err := os.MkdirAll(filepath.Join(w.dir, ".new"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("../real/x.trm", filepath.Join(w.dir, ".new", "a.trm")); err != nil {
		t.Skip(err)
	}
	w.rename(".new", "linked")
	w.says("built linked/a.svg in")
	w.write("real/x.trm", other("4"))
	w.says("built linked/a.svg in")
}

func TestInterrupt(t *testing.T) {
	dir := t.TempDir()
	w := &watching{T: t, dir: dir, lines: make(chan string, 10)}
	w.write("a.trm", circle)
	c := &watchCmd{pictures{Sources: []string{dir}}, usualPapers}
	e := &env{stderr: w, compile: lang.Compile}
	done := make(chan error, 1)
	go func() { done <- c.Run(e) }()
	w.says("1 figure built; watching")
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := self.Signal(os.Interrupt); err != nil {
		t.Skip(err)
	}
	if err := <-done; err != nil || e.status != exitGood {
		t.Errorf("after an interrupt: %v, exit code %d", err, e.status)
	}
	leaks(t)
}
