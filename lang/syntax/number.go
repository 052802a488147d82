package syntax

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// number reads 12, 3.25, 60° or 22°30'. There are no exponents, no signs, and
// no bare points; at most 40 characters. The word after it must be a unit.
func (s *scanner) number() {
	s.takeWhile(isDigit)
	if s.peek() == '.' {
		s.advance()
		if s.takeWhile(isDigit) == "" {
			s.bad(s.read()+" has no digit after its point", "write "+strings.TrimSuffix(s.read(), "."))
			return
		}
	}
	switch r := s.peek(); {
	case len(s.read()) > maxNumber:
		s.takeWhile(func(r rune) bool { return isDigit(r) || r == '.' })
		s.bad("a number has at most 40 characters", "")
	case r == '.':
		s.takeWhile(func(r rune) bool { return isDigit(r) || r == '.' })
		s.bad(s.read()+" has two points", "")
	case isDegree(r):
		s.degrees()
	case s.spelledDegrees():
	case unicode.IsLower(r):
		s.unit()
	default:
		s.emit(numberKind, s.read())
	}
}

// degrees reads the degree sign, and the minutes that may touch it.
func (s *scanner) degrees() {
	value := s.read() + "°"
	s.advance()
	if minutes := s.takeWhile(isDigit); minutes != "" {
		if !isPrime(s.peek()) {
			s.bad(s.read()+" lacks the sign of minutes", "write "+value+minutes+"'")
			return
		}
		s.advance()
		s.emit(angleKind, value+minutes+"'")
		return
	}
	s.emit(angleKind, value)
}

// spelledDegrees reads 22.5 deg, which is 22.5°.
func (s *scanner) spelledDegrees() bool {
	rest := strings.TrimLeft(s.text[s.pos:], " \t")
	after, ok := strings.CutPrefix(rest, "deg")
	if next, _ := utf8.DecodeRuneInString(after); !ok || after != "" && (isWordPart(next) || isPrime(next) || isCapital(next)) {
		return false
	}
	value := s.read() + "°"
	for end := len(s.text) - len(after); s.pos < end; {
		s.advance()
	}
	s.emit(angleKind, value)
	return true
}

// unit looks at the word against a number. A unit is left for the next token;
// anything else makes one fault of number and word.
func (s *scanner) unit() {
	rest := s.text[s.pos:]
	end := strings.IndexFunc(rest, func(r rune) bool { return !isWordPart(r) && !isPrime(r) })
	if end < 0 {
		end = len(rest)
	}
	number, word := s.read(), rest[:end]
	if units[word] {
		s.emit(numberKind, number)
		return
	}
	for end += s.pos; s.pos < end; {
		s.advance()
	}
	help := "write " + number + " " + word + "; the units are mm, cm and deg"
	switch {
	case keywords[word]:
		help = "put a space between them: " + number + " " + word
	case isExponent(word):
		help = "numbers have no exponents: write the zeros"
	}
	s.bad(word+" touches the number "+number+" and is no unit", help)
}

// isExponent tells e5 and e, the tails of 3e5 and 3e-5.
func isExponent(word string) bool {
	return word[0] == 'e' && strings.Trim(word[1:], "0123456789") == "" && utf8.RuneCountInString(word) < maxNumber
}
