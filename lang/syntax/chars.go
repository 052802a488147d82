package syntax

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A sign is a piece of punctuation as it may be written and as it is read.
// One with a help line is not of the language, but often tried.
type sign struct{ written, canonical, help string }

// signs has the longer ones first.
var signs = []sign{
	{"==", "", "write ="},
	{":=", "", "write ="},
	{"=<", "", "write ≤ or <="},
	{"=>", "", "write ≥ or >="},
	{"<>", "", "write ≠ or !="},
	{"//", "", remark},
	{"<=", "≤", ""},
	{">=", "≥", ""},
	{"!=", "≠", ""},
	{"(", "(", ""}, {")", ")", ""}, {"[", "[", ""}, {"]", "]", ""},
	{",", ",", ""}, {":", ":", ""}, {"∶", ":", ""},
	{"=", "=", ""}, {"<", "<", ""}, {">", ">", ""}, {"≤", "≤", ""}, {"≥", "≥", ""}, {"≠", "≠", ""},
	{"+", "+", ""}, {"-", "-", ""}, {"−", "-", ""}, {"–", "-", ""},
	{"*", "*", ""}, {"×", "*", ""}, {"·", "*", ""}, {"⋅", "*", ""},
	{"/", "/", ""}, {"÷", "/", ""}, {"∕", "/", ""},
	{"²", "²", ""}, {"^", "^", ""},
}

// strayHelp says how the language writes what a sign of mathematics, or of
// another habit, stands for.
var strayHelp = map[rune]string{
	';': "one statement stands on one line", '.': "a statement has no full stop; a decimal begins with a digit: 0.5",
	'“': `a text stands between straight quotes: "…"`, '”': `a text stands between straight quotes: "…"`,
	'„': `a text stands between straight quotes: "…"`, '«': `a text stands between straight quotes: "…"`,
	'\'': "a prime touches its letter; a text stands between double quotes", '`': `a text stands between straight quotes: "…"`,
	'⟂': "write perpendicular to", '⊥': "write perpendicular to", '∥': "write parallel to", '∠': "write angle", '△': "write triangle",
	'∆': "write triangle", '≅': "write congruent to", '∼': "write similar to", '~': "write similar to", '√': "write sqrt(…)",
	'½': "write 1/2", '⅓': "write 1/3", '¼': "write 1/4", '¾': "write 3/4", '³': "only a square is known: AB²",
	'_': "a name is one word, without _", '&': "write and", '!': "write not before the relation", '°': "a degree sign touches its number: 60°",
	'{': "brackets are round: (0, 0)", '}': "brackets are round: (0, 0)",
	'%': "write a fraction", '\\': "a statement goes on in the next line after a comma", '@': "write at", '|': "write AB for a length, parallel to for parallels",
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// isCapital tells the letters that make a point: capitals, and the letters of
// scripts without case.
func isCapital(r rune) bool {
	if r < utf8.RuneSelf {
		return 'A' <= r && r <= 'Z'
	}
	return unicode.In(r, unicode.Lu, unicode.Lt, unicode.Lo) && r != 'º' && r != 'ª'
}

func isMark(r rune) bool { return r >= utf8.RuneSelf && unicode.Is(unicode.M, r) }

func isWordPart(r rune) bool { return unicode.IsLower(r) || isDigit(r) || isMark(r) }

func isSpace(r rune) bool {
	return r == ' ' || r == '\t' || r == '\r' || r >= utf8.RuneSelf && unicode.Is(unicode.Zs, r)
}

func isDegree(r rune) bool { return r == '°' || r == 'º' || r == '˚' }

// primeMarks are the marks that are read as primes, and how many each is.
var primeMarks = map[rune]int{'\'': 1, '′': 1, '’': 1, 'ʹ': 1, '″': 2, '‴': 3}

func isPrime(r rune) bool { return primeMarks[r] > 0 }

// straightPrimes spells every prime with ', so that X′ and X' are one name.
func straightPrimes(name string) string {
	if strings.IndexFunc(name, isPrime) < 0 {
		return name
	}
	var b strings.Builder
	for _, r := range name {
		if n := primeMarks[r]; n > 0 {
			b.WriteString("'''"[:n])
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// clockLength is the length of a leading o'clock, with any apostrophe, or 0.
func clockLength(text string) int {
	rest, ok := strings.CutPrefix(text, "o")
	if !ok {
		return 0
	}
	r, size := utf8.DecodeRuneInString(rest)
	if !isPrime(r) || !strings.HasPrefix(rest[size:], "clock") {
		return 0
	}
	return len("o") + size + len("clock")
}

// forbidden tells what a text cannot hold: controls, bytes that are no text, and
// the marks that make text run another way than it is stored (Unicode Annex 9).
func forbidden(r rune) bool {
	turning := '\u202a' <= r && r <= '\u202e' || '\u2066' <= r && r <= '\u2069'
	return r != '\t' && unicode.IsControl(r) || r == utf8.RuneError || turning
}

// describe names the first character of a text for a message.
func describe(text string) string {
	r, _ := utf8.DecodeRuneInString(text)
	switch {
	case r == utf8.RuneError:
		return "a byte that is not UTF-8"
	case unicode.IsDigit(r):
		return fmt.Sprintf("the digit %c (digits are 0 to 9)", r)
	case unicode.IsGraphic(r) && !isMark(r):
		return quote(string(r))
	}
	return fmt.Sprintf("the invisible character U+%04X", r)
}

// quote puts a piece of source between quotes for a message.
func quote(s string) string {
	if s = clip(s, maxName); strings.Contains(s, `"`) {
		return "'" + s + "'"
	}
	return `"` + strings.Trim(strconv.Quote(s), `"`) + `"`
}

// clip cuts a text to at most n characters.
func clip(s string, n int) string {
	if len(s) <= n {
		return s
	}
	if r := []rune(s); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return s
}
