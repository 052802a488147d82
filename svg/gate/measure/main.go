// Measure prints what package gate finds in SVG files, and fails if there are
// faults: go run ./svg/gate/measure examples
package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"trammel/svg/gate"
)

func main() {
	faults, err := measure(os.Args[1:])
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(2)
	}
	if faults > 0 {
		os.Exit(1)
	}
}

// measure prints the table of files, and of those in folders, and counts the faults.
func measure(paths []string) (faults int, err error) {
	var all []*gate.Report
	for _, path := range paths {
		err = errors.Join(err, filepath.WalkDir(path, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || name != path && !strings.HasSuffix(name, ".svg") {
				return err
			}
			r, err := one(name)
			if err == nil {
				all = append(all, r)
				faults += len(r.Faults)
			}
			return err
		}))
	}
	if err == nil && len(all) == 0 {
		err = errors.New("no SVG file is named, as in: go run ./svg/gate/measure examples")
	}
	if err != nil {
		return 0, err
	}
	return faults, gate.Table(os.Stdout, all)
}

func one(name string) (*gate.Report, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return gate.Measure(name, f)
}
