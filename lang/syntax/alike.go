package syntax

import (
	"fmt"
	"unicode"

	"trammel/lang/source"
)

// lookalikes watches for letters of two scripts that print alike.
type lookalikes struct {
	letters map[rune]seen   // by Latin twin: the letter first used in a point
	names   map[string]seen // by skeleton: the name first used
	warned  map[string]bool
}

type seen struct {
	word string
	span source.Span
}

func newLookalikes() lookalikes {
	return lookalikes{map[rune]seen{}, map[string]seen{}, map[string]bool{}}
}

// letter notes the letter of the point just emitted.
func (l *lookalikes) letter(s *scanner, r rune) {
	latin, ok := twins[r]
	if !ok {
		latin = r
	}
	first, ok := l.letters[latin]
	if !ok {
		l.letters[latin] = seen{string(r), s.lastSpan()}
		return
	}
	l.warn(s, first, string(r))
}

// name notes the name just emitted.
func (l *lookalikes) name(s *scanner, word string) {
	key := skeleton(word)
	first, ok := l.names[key]
	if !ok {
		l.names[key] = seen{word, s.lastSpan()}
		return
	}
	l.warn(s, first, word)
}

// warn says once that two spellings look the same.
func (l *lookalikes) warn(s *scanner, first seen, word string) {
	if first.word == word || l.warned[first.word+" "+word] {
		return
	}
	l.warned[first.word+" "+word] = true
	a, b := telling(first.word, word)
	p := s.problems.Add(s.lastSpan(), fmt.Sprintf("this %s is %s; another that looks the same is %s", word, scriptOf(b), scriptOf(a)))
	p.Severity = source.Warning
	p.Help = "keep to one script"
	p.Notes = []source.Note{{Span: first.span, Text: "the " + scriptOf(a) + " one is here"}}
}

// telling gives the first letters in which two words of one skeleton differ.
func telling(a, b string) (rune, rune) {
	x, y := []rune(a), []rune(b)
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return x[i], y[i]
		}
	}
	return x[0], y[0]
}

func scriptOf(r rune) string {
	switch {
	case unicode.Is(unicode.Greek, r):
		return "Greek"
	case unicode.Is(unicode.Cyrillic, r):
		return "Cyrillic"
	}
	return "Latin"
}

func (s *scanner) lastSpan() source.Span { return s.tokens[len(s.tokens)-1].span(s.file) }
