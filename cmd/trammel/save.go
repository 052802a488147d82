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
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return false, err
		}
		return true, replace(path, data, 0)
	case err != nil:
		return false, err
	case info.IsDir():
		return false, &fs.PathError{Op: "write", Path: path, Err: errors.New("a folder has that name")}
	case !info.Mode().IsRegular():
		return true, writeTo(path, data)
	case info.Size() == int64(len(data)) && holds(path, data):
		return false, nil
	}
	return true, overwrite(path, data, info.Mode().Perm())
}

// holds tells whether the file at path has exactly this content.
func holds(path string, data []byte) bool {
	old, err := os.ReadFile(path)
	return err == nil && bytes.Equal(old, data)
}

// overwrite replaces a file that is there, unless it may not be written.
func overwrite(path string, data []byte, perm fs.FileMode) error {
	path, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	f.Close()
	return replace(path, data, perm)
}

// replace gives path the data, and the permissions unless they are 0.
func replace(path string, data []byte, perm fs.FileMode) error {
	f, err := temporaries.create(filepath.Dir(path))
	if err != nil {
		return err
	}
	temp := f.Name()
	defer temporaries.forget(temp)
	_, err = f.Write(data)
	if err == nil && perm != 0 {
		err = f.Chmod(perm)
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(temp, path)
	}
	if err != nil {
		os.Remove(temp)
	}
	return err
}

func writeTo(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}
