package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestSave(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder", "x.svg")
	for _, step := range []struct {
		data    string
		changed bool
	}{{"one", true}, {"one", false}, {"two", true}, {"longer", true}, {"", true}, {"", false}} {
		changed, err := save(path, []byte(step.data))
		if err != nil || changed != step.changed {
			t.Errorf("save %q: %v, %v; want %v", step.data, changed, err, step.changed)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != step.data {
			t.Errorf("after save %q the file holds %q (%v)", step.data, got, err)
		}
	}
}

// TestSaveFails has the renaming fail, for a folder is in the way.
func TestSaveFails(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "x.svg")
	if err := os.MkdirAll(filepath.Join(path, "full"), 0o777); err != nil {
		t.Fatal(err)
	}
	if _, err := save(path, []byte("data")); err == nil {
		t.Error("save over a folder: no error")
	}
	if _, err := saveAll([]file{{filepath.Join(dir, "y.svg"), []byte("data")}, {path, []byte("data")}}); err == nil {
		t.Error("one of two files is a folder: no error")
	}
	left, err := os.ReadDir(dir)
	if err != nil || len(left) != 1 {
		t.Errorf("left over: %v, %v", left, err)
	}
}

// TestSaveMode keeps the permissions of a picture, as they were set.
func TestSaveMode(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.svg")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := save(path, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v; want 0600", info.Mode(), err)
	}
}
