package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"trammel/lang"
)

// shown is what a terminal shows in the end of what was written to it, when the
// only control sequences are those of the progress line.
func shown(written string) string {
	erased := regexp.MustCompile(`[^\n]*\r\x1b\[K`)
	return erased.ReplaceAllString(written, "")
}

// TestProgress: the line counts up, keeps out of the messages' way, and is gone
// in the end. Who does not look on gets the same messages without it.
func TestProgress(t *testing.T) {
	dir := t.TempDir()
	for i := range 12 {
		text := fmt.Sprintf("figure \"F\"\ngiven A (%d, 0)\n", i)
		if i == 5 {
			text += "joyn AB\n"
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("f%02d.trm", i)), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	build := func(watched bool, args ...string) string {
		var said strings.Builder
		run(&env{stderr: &said, watched: watched, compile: lang.Compile}, append([]string{"build"}, args...))
		return said.String()
	}
	plain, line := build(false, dir), build(true, dir)
	if strings.ContainsAny(plain, "\r\x1b") || !strings.Contains(plain, "f05.trm:3:1: error: ") {
		t.Errorf("unwatched: %q", plain)
	}
	for i := 1; i < 12; i++ {
		if !strings.Contains(line, fmt.Sprintf("%d of 12\r\x1b[K", i)) {
			t.Errorf("the line never says %d of 12", i)
		}
	}
	if got := shown(line); got != plain {
		t.Errorf("left on the terminal: %q, want %q", got, plain)
	}
	if one := build(true, filepath.Join(dir, "f00.trm")); one != "" {
		t.Errorf("a progress of one figure: %q", one)
	}
}
