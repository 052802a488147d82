package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// checkDeps tells whether the file for make can be written at all.
func (c *buildCmd) checkDeps() error {
	_, picture := formatOf(c.Deps)
	switch {
	case c.Deps == "":
		return nil
	case slices.Contains(c.Sources, stdio) || c.Out == stdio || c.Deps == stdio:
		return &usageError{`--deps tells make of files, and "-" is none`, ""}
	case isSource(c.Deps) || picture:
		return &usageError{fmt.Sprintf("--deps %s would overwrite a source or a picture", c.Deps), "its name may end in .d, as make's do"}
	}
	return nil
}

// writeDeps writes the file for make, if one is wanted.
func (c *buildCmd) writeDeps(e *env, r *rules) {
	if c.Deps == "" {
		return
	}
	err := r.err
	if err == nil {
		_, err = save(c.Deps, []byte(r.String()))
	}
	if err != nil {
		e.fail(c.Deps, err)
	}
}

// renew gives pictures that came out as they were the time of now: make would
// draw them at every run, were they older than their sources.
func (d *drawing) renew() {
	now := time.Now()
	for _, name := range d.written {
		info, err := os.Stat(name)
		if err == nil && info.Mode().IsRegular() {
			err = os.Chtimes(name, now, now)
		}
		if err != nil && d.err == nil {
			d.err = err
		}
	}
}

// rules are what make has to know: of each picture, the files that it is drawn
// from. Each of these also gets a rule of its own, without any, so that make
// goes on when one is gone.
type rules struct {
	text    strings.Builder
	sources []string // as make reads them
	err     error    // the first
}

// add adds the rule of a drawing. One with errors has a rule too, for it will
// have a picture when they are mended; constructions only have none.
func (r *rules) add(d *drawing) {
	if !d.failed() && d.Figure == nil {
		return
	}
	pictures := d.written
	if len(pictures) == 0 {
		pictures = []string{d.picture}
	}
	targets := strings.Join(r.words(pictures), " ")
	sources := r.words(append([]string{d.path}, d.Files...))
	slices.Sort(sources)
	sources = slices.Compact(sources)
	r.sources = append(r.sources, sources...)
	fmt.Fprintf(&r.text, "%s: %s\n", asTarget(targets), strings.Join(sources, " "))
}

// words are names as make reads them.
func (r *rules) words(names []string) (all []string) {
	for _, name := range names {
		word, err := makeWord(name)
		if err != nil && r.err == nil {
			r.err = err
		}
		all = append(all, word)
	}
	return all
}

// String is all rules, as a file for make.
func (r *rules) String() string {
	var b strings.Builder
	b.WriteString(r.text.String())
	slices.Sort(r.sources)
	for _, s := range slices.Compact(r.sources) {
		fmt.Fprintf(&b, "\n%s:\n", asTarget(s))
	}
	return b.String()
}

// asTarget is a word as make reads it before the colon, where % makes patterns.
func asTarget(word string) string { return strings.ReplaceAll(word, "%", `\%`) }

// makeWord is a file name as GNU make reads it in a rule (its manual, "Rule
// Syntax" and "Using Wildcard Characters in File Names"). Some names it cannot
// be told.
func makeWord(name string) (string, error) {
	name = filepath.ToSlash(filepath.Clean(name))
	if strings.ContainsAny(name, "\t\n\r;=|") || strings.Contains(name, `\%`) {
		return "", fmt.Errorf("make has no way to name %s", name)
	}
	if strings.HasPrefix(name, "~") { // no one's home
		name = "./" + name
	}
	var b strings.Builder
	backslashes := 0
	for _, r := range name {
		switch {
		case r == '$':
			b.WriteByte('$')
		case strings.ContainsRune(" #:", r):
			b.WriteString(strings.Repeat(`\`, backslashes+1))
		case strings.ContainsRune("*?[", r):
			b.WriteByte('\\')
		}
		b.WriteRune(r)
		backslashes++
		if r != '\\' {
			backslashes = 0
		}
	}
	return b.String(), nil
}
