package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"figures/α′ 1.trm": "figures/α′ 1.trm",
		"a\x1b[31mb":       `a\u001B[31mb`,
		"a\nb\tc":          `a\u000Ab\u0009c`,
		"\u202egnp":        `\u202Egnp`,
		"\xff\xfe":         `\xFF\xFE`,
		"\ufffd":           "\ufffd",
		"\x7f\u0085":       `\u007F\u0085`,
		"":                 "",
	} {
		if got := printable(text); got != want {
			t.Errorf("printable(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestComplain(t *testing.T) {
	for _, test := range []struct {
		colour bool
		want   string
	}{
		{false, "x.trm: error: no such file\nhelp: make one\n"},
		{true, "\x1b[1mx.trm: \x1b[0m\x1b[1;31merror:\x1b[0m \x1b[1mno such file\x1b[0m\n\x1b[1;34mhelp:\x1b[0m make one\n"},
	} {
		var b strings.Builder
		(&env{stderr: &b, colour: test.colour}).complain("x.trm", "no such file", "make one")
		if b.String() != test.want {
			t.Errorf("colour %v: %q, want %q", test.colour, b.String(), test.want)
		}
	}
}

func TestExplain(t *testing.T) {
	denied := &fs.PathError{Op: "open", Path: "x.svg", Err: errors.New("permission denied")}
	missing := &fs.PathError{Op: "open", Path: "x.trm", Err: fs.ErrNotExist}
	for _, test := range []struct {
		err    error
		want   string
		status int
	}{
		{denied, "cannot open x.svg: permission denied", exitFault},
		{missing, "no such file or folder", exitFault},
		{errTooLarge, "larger than 1 MiB, the most that a source may be", exitSource},
		{&unfit{errors.New("the figure does not fit")}, "the figure does not fit", exitSource},
		{&fault{"nil map", "trammel/geom.Meet, meet.go:31"}, "this is a fault in trammel, not in the source: nil map (trammel/geom.Meet, meet.go:31)", exitFault},
	} {
		if text, _, status := explain("x.trm", test.err); text != test.want || status != test.status {
			t.Errorf("explain(%v) = %q, %d; want %q, %d", test.err, text, status, test.want, test.status)
		}
	}
}

// TestNoColour: a file is no terminal, and NO_COLOR counts for terminals too.
func TestNoColour(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "stderr"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "xterm")
	if wantsColour(f) {
		t.Error("a file gets colours")
	}
	tty, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Skip("no terminal to be had:", err)
	}
	defer tty.Close()
	if !wantsColour(tty) {
		t.Error("a terminal gets no colours")
	}
	t.Setenv("TERM", "dumb")
	if wantsColour(tty) {
		t.Error("a dumb terminal gets colours")
	}
	t.Setenv("TERM", "xterm")
	t.Setenv("NO_COLOR", "1")
	if wantsColour(tty) {
		t.Error("NO_COLOR is not honoured")
	}
}
