package warn

import (
	"slices"
	"strings"
	"unicode"
)

// unusedChoices are values that vary without anything to show for it.
func (f *finder) unusedChoices() {
	for _, v := range f.st.Program.Varied {
		if !slices.Contains(words(v.Span.File.Text[v.Span.End:]), v.Name) {
			f.warn(v.Span, "leave it out, or use it", "nothing uses %s, so no variant differs by it", v.Name)
		}
	}
}

// words are the names and words of a source, but for comments. A number before a
// name is none of it.
func words(text string) (all []string) {
	for line := range strings.Lines(text) {
		code, _, _ := strings.Cut(line, "#")
		for _, w := range strings.FieldsFunc(code, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' }) {
			all = append(all, strings.TrimLeftFunc(w, unicode.IsDigit))
		}
	}
	return all
}
