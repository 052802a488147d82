package syntax

import "unicode/utf8"

// Nearest is the name of the list that a misspelt one was probably meant to
// be, or "". The first of the list wins among equals.
func Nearest(name string, list []string) string { return nearest(name, list) }

// NamesPoint tells whether a name is a point's, by its first letter.
func NamesPoint(name string) bool {
	r, _ := utf8.DecodeRuneInString(name)
	return isCapital(r)
}
