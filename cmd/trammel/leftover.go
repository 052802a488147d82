package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// stepName is lesson-03.svg, for the third step of lesson.svg.
func stepName(picture string, n int) string {
	ending := filepath.Ext(picture)
	return fmt.Sprintf("%s-%02d%s", strings.TrimSuffix(picture, ending), n, ending)
}

// clearSteps removes the steps that an earlier build with more of them has left
// after the last. Only what bears the mark of this figure's steps is removed; of
// what does not, it is told that it was left.
func (e *env) clearSteps(picture string, files []file) error {
	last := len(files)
	if files[last-1].name != stepName(picture, last) {
		return nil // all are in one file
	}
	for n, mark := last+1, markOf(files[0].data); ; n++ {
		name := stepName(picture, n)
		data, err := os.ReadFile(name)
		switch {
		case err != nil:
			return nil // there are no more
		case mark != "" && bytes.Contains(data, []byte(mark)):
			if err := os.Remove(name); err != nil {
				return err
			}
		default:
			fmt.Fprintf(e.stderr, "%s: left as it is, though there are %d steps now\n", printable(name), last)
		}
	}
}

// markOf is how the roots of a figure's steps in SVG begin to name their words:
// aria-labelledby="lesson- ; "" for other formats.
func markOf(first []byte) string {
	const attribute = `aria-labelledby="`
	_, after, _ := bytes.Cut(first, []byte(attribute))
	id, _, ok := bytes.Cut(after, []byte("01-title"))
	if !ok {
		return ""
	}
	return attribute + string(id)
}
