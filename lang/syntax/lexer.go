package syntax

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"trammel/lang/source"
)

// The longest number and the longest name, in characters.
const (
	maxNumber = 40
	maxName   = 40
)

// scanner cuts a text into tokens. Lexing never stops: a fault is reported and
// becomes one Bad token.
type scanner struct {
	file      *source.File
	text      string
	pos       int            // where the next character stands
	here      lexer.Position // of the token being read
	line, col int
	tokens    []token
	problems  *source.List
	notUTF8   bool   // said once a file
	first     int    // index of the line's first token
	strayed   string // the last help for a stray character, said once a line
	alike     lookalikes
}

// scan cuts the whole file into tokens, line ends and comments included.
func scan(f *source.File, problems *source.List) []token {
	s := &scanner{file: f, text: f.Text, line: 1, col: 1, problems: problems, alike: newLookalikes()}
	already := len(*problems)
	for s.skipSpace(); s.pos < len(s.text) && len(*problems)-already <= maxMistake; s.skipSpace() {
		s.here = lexer.Position{Filename: f.Name, Offset: s.pos, Line: s.line, Column: s.col}
		s.one()
	}
	return s.tokens
}

// one reads the token that begins here.
func (s *scanner) one() {
	switch r := s.peek(); {
	case r == '\n':
		s.advance()
		s.emit(lineEndKind, "\n")
		s.line, s.col = s.line+1, 1
		s.first, s.strayed = len(s.tokens), ""
	case r == '#':
		s.comment()
	case r == '"':
		s.quoted()
	case isDigit(r):
		s.number()
	case isCapital(r):
		s.point()
	case unicode.IsLower(r):
		s.word()
	default:
		s.sign()
	}
}

// peek is the next character; an invalid byte and the end are utf8.RuneError.
func (s *scanner) peek() rune {
	if s.pos < len(s.text) && s.text[s.pos] < utf8.RuneSelf {
		return rune(s.text[s.pos])
	}
	r, _ := utf8.DecodeRuneInString(s.text[s.pos:])
	return r
}

func (s *scanner) advance() {
	_, size := utf8.DecodeRuneInString(s.text[s.pos:])
	s.pos += size
	s.col++
}

// takeWhile moves past the characters for which ok holds.
func (s *scanner) takeWhile(ok func(rune) bool) string {
	start := s.pos
	for s.pos < len(s.text) && ok(s.peek()) {
		s.advance()
	}
	return s.text[start:s.pos]
}

func (s *scanner) read() string { return s.text[s.here.Offset:s.pos] }

func (s *scanner) emit(kind lexer.TokenType, value string) {
	s.tokens = append(s.tokens, token{lexer.Token{Type: kind, Value: value, Pos: s.here}, s.pos})
}

// bad reports what has been read since the token's start and emits it as Bad.
func (s *scanner) bad(text, help string) {
	p := s.problems.Add(source.Span{File: s.file, Start: s.here.Offset, End: s.pos}, text)
	p.Help = help
	s.emit(badKind, s.read())
}

func (s *scanner) skipSpace() { s.takeWhile(isSpace) }

func (s *scanner) comment() {
	text := s.takeWhile(func(r rune) bool { return r != '\n' })
	s.emit(commentKind, strings.TrimRight(text, " \t\r"))
}

// quoted reads a text: it ends at the next quote, on the same line.
func (s *scanner) quoted() {
	s.advance()
	s.takeWhile(func(r rune) bool { return r != '"' && r != '\n' })
	if s.peek() != '"' || s.pos == len(s.text) {
		s.bad("the text is not closed", `end it with " on the same line`)
		return
	}
	s.advance()
	text := s.read()
	if i := strings.IndexFunc(text, forbidden); i >= 0 {
		s.bad("a text cannot hold "+describe(text[i:]), "")
		return
	}
	s.emit(textKind, text)
}

// point reads a capital with its digits and primes.
func (s *scanner) point() {
	first := s.peek()
	s.advance()
	s.takeWhile(isMark)
	s.takeWhile(isDigit)
	s.takeWhile(isPrime)
	if unicode.IsLower(s.peek()) {
		s.badCapital()
		return
	}
	if s.tooLong() {
		return
	}
	kind := lexer.TokenType(pointKind)
	if n := len(s.tokens); n > 0 && s.tokens[n-1].End == s.here.Offset && (s.tokens[n-1].isPoint() || s.tokens[n-1].is("]")) {
		kind = gluedKind
	}
	s.emit(kind, straightPrimes(s.read()))
	s.alike.letter(s, first)
}

// badCapital is a capital with small letters after it: a keyword written like
// the start of a sentence, or a run that changes case.
func (s *scanner) badCapital() {
	s.takeWhile(isWordPart)
	word := s.read()
	if low := strings.ToLower(word); keywords[low] {
		s.bad("the words of the language are lower-case: "+word, "write "+low)
		return
	}
	if n := len(s.tokens); n > 0 && textWords[s.tokens[n-1].Value] {
		s.takeWhile(func(r rune) bool { return r != '\n' && r != '#' })
		s.bad("the text has no quotes", "write "+s.tokens[n-1].Value+` "`+strings.TrimSpace(s.read())+`"`)
		return
	}
	s.bad(word+" is neither a point nor a word", "points are single capitals, as in AB; other names are lower-case")
}

// word reads a lower-case word: a keyword, or the name of an object.
func (s *scanner) word() {
	if n := clockLength(s.text[s.pos:]); n > 0 {
		for end := s.pos + n; s.pos < end; {
			s.advance()
		}
		s.emit(keywordKind, "o'clock")
		return
	}
	s.takeWhile(isWordPart)
	if !keywords[s.read()] {
		s.takeWhile(isPrime)
	}
	if isCapital(s.peek()) && s.pos < len(s.text) {
		s.touching()
		return
	}
	word := straightPrimes(s.read())
	switch {
	case keywords[word]:
		s.emit(keywordKind, word)
	case keywords[skeleton(word)]:
		s.bad(word+" only looks like "+skeleton(word)+": it has letters of another script", "type "+skeleton(word)+" anew")
	case !s.tooLong():
		s.emit(nameKind, word)
		s.alike.name(s, word)
	}
}

// touching is a word with a point against it: joinAB.
func (s *scanner) touching() {
	word := s.read()
	rest := s.takeWhile(func(r rune) bool { return isCapital(r) || isDigit(r) || isPrime(r) })
	s.bad("a space is missing between "+word+" and "+rest, "write "+word+" "+rest)
}

func (s *scanner) tooLong() bool {
	if utf8.RuneCountInString(s.read()) <= maxName {
		return false
	}
	s.bad("a name holds at most 40 characters", "")
	return true
}

// sign reads punctuation, in its canonical form; anything else is a fault.
func (s *scanner) sign() {
	for _, p := range signs {
		if strings.HasPrefix(s.text[s.pos:], p.written) {
			s.pos += len(p.written)
			s.col += utf8.RuneCountInString(p.written)
			if p.help != "" {
				s.bad(quote(p.written)+" is no sign of the language", p.help)
				return
			}
			s.emit(signKind, p.canonical)
			return
		}
	}
	s.stray()
}

// stray is a character that has no place in a source. Neighbours are one fault.
func (s *scanner) stray() {
	r := s.peek()
	if _, size := utf8.DecodeRuneInString(s.text[s.pos:]); r == utf8.RuneError && size == 1 {
		s.notText()
		return
	}
	what, help := describe(s.text[s.pos:]), s.strayHelp(r)
	s.advance()
	s.takeWhile(func(next rune) bool { return next == r })
	switch line := s.tokens[s.first:]; {
	case r == '.' && len(line) > 1 && line[0].is("use") && line[1].Type == nameKind:
		s.takeWhile(func(r rune) bool { return r != '\n' && r != '#' })
		s.here = line[1].Pos
		s.bad("the text has no quotes", `write use "`+strings.TrimSpace(s.read())+`"`)
	case help != "" && s.strayed == help:
		s.emit(badKind, s.read())
	default:
		s.strayed = help
		s.bad(what+" has no meaning here", help)
	}
}

// parts are letters that, with a corner or a side below, stand for other lengths of a triangle.
var parts = []string{"h", "m", "s", "t", "w", "l"}

// strayHelp is what to write for a stray character where it stands.
func (s *scanner) strayHelp(r rune) string {
	n := len(s.tokens)
	switch {
	case r == ';' && n-s.first > 1 && s.tokens[n-1].Type == numberKind && s.tokens[n-2].is("("):
		return "write a comma: (5, 0)"
	case r == '%' && n == s.first:
		return remark
	case r == '_' && n > s.first && s.tokens[s.first].is("given") && slices.Contains(parts, s.tokens[n-1].Value):
		return "sides and angles are the data of a shape; a height, median or bisector is drawn by acts of its own"
	}
	return strayHelp[r]
}

func (s *scanner) notText() {
	s.takeWhile(func(r rune) bool { return r == utf8.RuneError })
	if s.notUTF8 {
		s.emit(badKind, s.read())
		return
	}
	s.notUTF8 = true
	s.bad("this is not UTF-8 text", "save the file as UTF-8")
}
