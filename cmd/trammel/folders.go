package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"
)

// folders are what is watched: folders and not files, for a file that an editor
// replaces by renaming falls silent. A pass begins, enters every folder that
// matters, and ends; what it did not enter is let go.
type folders struct {
	notifier *fsnotify.Watcher

	mu      sync.Mutex
	entered map[string]bool // in this pass; false for those that do not exist
	before  map[string]bool // in the pass before
	reads   map[string]bool // files that matter whatever their name
	errs    []failure
}

func newFolders() (*folders, error) {
	n, err := fsnotify.NewWatcher()
	return &folders{notifier: n, entered: map[string]bool{}}, err
}

func (f *folders) close() { f.notifier.Close() }

// begin starts a pass.
func (f *folders) begin() {
	f.before = f.entered
	f.entered = map[string]bool{}
	f.reads = map[string]bool{}
	f.errs = nil
}

// end stops watching the folders that the pass did not enter.
func (f *folders) end() {
	for _, folder := range f.notifier.WatchList() {
		if !f.entered[folder] {
			f.notifier.Remove(folder)
		}
	}
}

// enter watches a folder from now on and tells whether it is new.
func (f *folders) enter(folder string) bool {
	folder = resolve(folder)
	f.mu.Lock()
	defer f.mu.Unlock()
	if _, done := f.entered[folder]; done {
		return false
	}
	if err := f.add(folder); err != nil && !errors.Is(err, fs.ErrPermission) {
		if errors.Is(err, syscall.ENOSPC) { // what inotify says then
			err = errors.New("the system lets no more folders be watched")
		}
		f.errs = append(f.errs, failure{folder, fmt.Errorf("cannot watch it: %w", bare(err))})
	}
	return !f.before[folder]
}

// add watches a folder, or while there is none the nearest one above it, from
// where its coming will be seen.
func (f *folders) add(folder string) error {
	for {
		err := f.notifier.Add(folder)
		f.entered[folder] = err == nil
		if !isMissing(err) || filepath.Dir(folder) == folder {
			return err
		}
		if err := f.add(filepath.Dir(folder)); err != nil {
			return err
		}
		if _, err := os.Stat(folder); err != nil {
			return nil
		}
	}
}

func isMissing(err error) bool {
	return errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR)
}

// cover watches over what a source reads, with the folders on the way to it. It
// tells whether any of them is new: then a file may have changed unseen since
// it was read.
func (f *folders) cover(source string, reads []string) (fresh bool) {
	home := resolve(filepath.Dir(source))
	for _, name := range reads {
		folder := filepath.Dir(name)
		fresh = f.enter(folder) || fresh
		for isBelow(folder, home) {
			folder = filepath.Dir(folder)
			fresh = f.enter(folder) || fresh
		}
		f.mu.Lock()
		f.reads[name] = true
		f.mu.Unlock()
	}
	return fresh
}

func isBelow(folder, home string) bool {
	rel, err := filepath.Rel(home, folder)
	return err == nil && filepath.IsLocal(rel) && rel != "."
}

// changes are what happened to files and folders between two passes.
type changes struct {
	all   bool // and more than is known
	paths map[string]bool
}

// touch tells whether any of the files may have changed.
func (c changes) touch(files []string) bool {
	if c.all {
		return true
	}
	for _, name := range files {
		for p := name; ; p = filepath.Dir(p) {
			if c.paths[p] {
				return true
			}
			if p == filepath.Dir(p) {
				break
			}
		}
	}
	return false
}

const (
	quiet   = 60 * time.Millisecond // editors save in several steps within less
	longest = time.Second           // a file that is written all the time is drawn so often
)

// next waits for changes that matter, and for the quiet after them. It returns
// false when the context is done.
func (f *folders) next(ctx context.Context) (changes, bool) {
	c := changes{paths: map[string]bool{}}
	var settled <-chan time.Time
	var latest time.Time
	stir := func() {
		if settled == nil {
			latest = time.Now().Add(longest)
		}
		settled = time.After(min(quiet, time.Until(latest)))
	}
	for {
		select {
		case <-ctx.Done():
			return c, false
		case <-settled:
			return c, true
		case e := <-f.notifier.Events:
			if f.matters(e) {
				c.paths[e.Name] = true
				stir()
			}
		case <-f.notifier.Errors: // events were lost
			c.all = true
			stir()
		}
	}
}

// matters tells whether an event can change a picture.
func (f *folders) matters(e fsnotify.Event) bool {
	base := filepath.Base(e.Name)
	switch {
	case e.Op&^fsnotify.Chmod == 0:
		return false
	case f.reads[e.Name]:
		return true
	case f.watches(e.Name):
		return e.Has(fsnotify.Create | fsnotify.Remove | fsnotify.Rename)
	case isHidden(base):
		return false
	case isSource(base):
		return true
	}
	info, err := os.Stat(e.Name)
	return e.Has(fsnotify.Create) && err == nil && info.IsDir()
}

// watches tells whether a path is that of a folder which is watched or wanted.
func (f *folders) watches(path string) bool {
	_, ok := f.entered[path]
	return ok
}

// resolve is the absolute name of a path without links, as far as it exists.
func resolve(path string) string {
	path = absolute(path)
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if dir := filepath.Dir(path); dir != path {
		return filepath.Join(resolve(dir), filepath.Base(path))
	}
	return path
}

// whereabouts lists the places where a change of a file would show: its own,
// and that of the file which it is a link to.
func whereabouts(name string) []string {
	name = absolute(name)
	own := filepath.Join(resolve(filepath.Dir(name)), filepath.Base(name))
	if real := resolve(name); real != own {
		return []string{own, real}
	}
	return []string{own}
}
