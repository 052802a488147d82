package svg

import "strings"

// Unbroken is a sentence with its units tied to their numbers, so that no line
// ends between them.
func Unbroken(sentence string) string { return ties.Replace(sentence) }

var ties = strings.NewReplacer(" cm", "\u00a0cm", " mm", "\u00a0mm")
