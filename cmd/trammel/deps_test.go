package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"trammel/lang"
)

// TestMakeReads has GNU make read the rules of sources and pictures with names
// that mean something to it: it draws once, and again only if the source is
// newer or gone.
func TestMakeReads(t *testing.T) {
	if _, err := exec.LookPath("make"); err != nil {
		t.Skip(err)
	}
	for _, name := range []string{
		"plain", "a b", " lead", "a#b", "a$b", "a$$b", "a$(b)", "a:b", "a%b", "a*b", "a?b", "a[b]c", "~a", "a&b", "a'b", `a"b`,
		"a(b)", "a{b}", "a,b", "a!b", "-a", "@a", "a+b", "übung", "a@(b)",
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			source, picture := filepath.Join(dir, name+".trm"), filepath.Join(dir, name+".svg")
			write(t, source, "")
			made := func() bool { return makes(t, dir, name) }
			if !made() {
				t.Error("the picture that is not there is not made")
			}
			write(t, picture, "")
			touch(t, source, -1)
			if made() {
				t.Error("the picture is made again though it is new")
			}
			touch(t, source, 1)
			if !made() {
				t.Error("the picture is not made though its source is newer")
			}
			if err := os.Remove(source); err != nil {
				t.Fatal(err)
			}
			if !made() {
				t.Error("the picture is not made when its source is gone")
			}
		})
	}
}

// makes tells whether make would draw the picture of that name.
func makes(t *testing.T, dir, name string) bool {
	var r rules
	r.add(&drawing{job: job{input: input{path: name + ".trm"}, picture: name + ".svg"}, err: os.ErrNotExist})
	if r.err != nil {
		t.Fatal(r.err)
	}
	write(t, filepath.Join(dir, "all.d"), r.String())
	write(t, filepath.Join(dir, "Makefile"), "include all.d\n%.svg:\n\t@echo made\n")
	cmd := exec.Command("make", "-s", "--", name+".svg")
	cmd.Dir = dir
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s%s", err, out, r.String())
	}
	return strings.Contains(string(out), "made")
}

// TestMakeCannot: what make cannot be told is an error that names it.
func TestMakeCannot(t *testing.T) {
	for _, name := range []string{"a=b", "a;b", "a|b", "a\tb", "a\nb", `a\%b`} {
		if word, err := makeWord(name); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%q becomes %q, %v", name, word, err)
		}
	}
}

// TestRulesOf: constructions only have no rule, for they have no picture.
func TestRulesOf(t *testing.T) {
	var r rules
	r.add(&drawing{job: job{input: input{path: "lib.trm"}, picture: "lib.svg"}, Result: lang.Result{Files: []string{"lib.trm"}}})
	if got := r.String(); got != "" {
		t.Errorf("rules: %q", got)
	}
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// touch makes a source newer than its picture by so many hours.
func touch(t *testing.T, path string, hours int) {
	t.Helper()
	info, err := os.Stat(strings.TrimSuffix(path, ".trm") + ".svg")
	if err != nil {
		t.Fatal(err)
	}
	at := info.ModTime().Add(time.Duration(hours) * time.Hour)
	if err := os.Chtimes(path, at, at); err != nil {
		t.Fatal(err)
	}
}
