// Package library holds an example of each construction of the library, under
// its name: a source that calls it and claims what it makes.
package library

import "embed"

// Files are the examples.
//
//go:embed *.trm
var Files embed.FS
