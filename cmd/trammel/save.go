package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// save puts data at path all at once, with the folders on the way: it is
// written to a temporary in the same folder, which then takes the name. It
// tells whether anything changed: a file that holds the data already is not
// touched. Links are followed; into a device or a pipe data is just written.
func save(path string, data []byte) (changed bool, err error) {
	return saveAll([]file{{path, data}})
}

// saveAll saves several files, all or none of them: none takes its name before
// all have been written.
func saveAll(files []file) (changed bool, err error) {
	var all []staged
	defer func() {
		for _, s := range all {
			s.drop()
		}
	}()
	for _, f := range files {
		s, err := stage(f.name, f.data)
		if err != nil {
			return false, err
		}
		if s.temp != "" {
			all = append(all, s)
		}
	}
	for _, s := range all {
		if err := os.Rename(s.temp, s.path); err != nil {
			return true, err
		}
	}
	return len(all) > 0, nil
}

// staged is a file that is written and has no place yet; its temporary is ""
// where the place holds the data already.
type staged struct{ temp, path string }

// stage writes data to a temporary beside its place.
func stage(path string, data []byte) (staged, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return staged{}, err
		}
		return temporary(path, data, 0)
	case err != nil:
		return staged{}, err
	case info.IsDir():
		return staged{}, &fs.PathError{Op: "write", Path: path, Err: errors.New("a folder has that name")}
	case !info.Mode().IsRegular():
		return staged{}, writeTo(path, data)
	case info.Size() == int64(len(data)) && holds(path, data):
		return staged{}, nil
	}
	return overwrite(path, data, info.Mode().Perm())
}

// drop removes a temporary that has not taken its place.
func (s staged) drop() {
	temporaries.forget(s.temp)
	os.Remove(s.temp)
}

// holds tells whether the file at path has exactly this content.
func holds(path string, data []byte) bool {
	old, err := os.ReadFile(path)
	return err == nil && bytes.Equal(old, data)
}

// overwrite stages data for a file that is there, unless it may not be written.
func overwrite(path string, data []byte, perm fs.FileMode) (staged, error) {
	path, err := filepath.EvalSymlinks(path)
	if err != nil {
		return staged{}, err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return staged{}, err
	}
	f.Close()
	return temporary(path, data, perm)
}

// temporary writes data beside its place, with the permissions unless they are 0.
func temporary(path string, data []byte, perm fs.FileMode) (staged, error) {
	f, err := temporaries.create(filepath.Dir(path))
	if err != nil {
		return staged{}, err
	}
	s := staged{f.Name(), path}
	_, err = f.Write(data)
	if err == nil && perm != 0 {
		err = f.Chmod(perm)
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		s.drop()
	}
	return s, err
}

func writeTo(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}
