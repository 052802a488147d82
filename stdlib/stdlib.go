// Package stdlib holds the constructions that every source can call, written
// in the language itself: one a file, under its own name.
package stdlib

import (
	"embed"
	"io/fs"
	"strings"
)

// Files are the library's sources.
//
//go:embed *.trm
var Files embed.FS

// Names are the constructions, in the order of the alphabet.
func Names() []string {
	entries, err := fs.ReadDir(Files, ".")
	if err != nil {
		panic(err) // embedded: it is there or the program was not built
	}
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".trm"))
	}
	return names
}
