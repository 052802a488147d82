package svg

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Label sets text as a book of mathematics does. A name is italic with its
// digits lowered: P1 is an italic P with a small 1. Other text is upright, but
// for Greek letters and for letters that stand for numbers and points: all of them
// where there are no words, else those that stand alone and are a capital or end a
// phrase. Either way ' is a prime and a radicand goes under a bar, which stands for the
// brackets of √(10 + 2√5).
func Label(text string, name bool) []Run {
	if len(text) > maxOutlined {
		return []Run{{Text: text, Italic: name}}
	}
	signs := signsFor(text)
	l := labeller{name: name, variables: !hasWord(signs)}
	l.line(signs, 0)
	return l.runs
}

// maxRoots is how deep roots nest; deeper ones keep their brackets.
const maxRoots = 8

type labeller struct {
	runs      []Run
	name      bool
	variables bool // a single letter is a quantity
	deep      int  // fractions that this is a term of: none stands in another
}

// line appends the runs of text under over bars.
func (l *labeller) line(text []rune, over int) {
	for i := 0; i < len(text); i++ {
		if used := l.fraction(text, i, over) + l.index(text, i, over); used > 0 {
			i += used - 1
			continue
		}
		l.sign(text, i, over)
		if text[i] != '√' || over == maxRoots {
			continue
		}
		if inside, used := argument(text[i+1:]); used > 0 {
			l.line(inside, over+1)
			i += used
		}
	}
}

// fraction appends the fraction that begins at i, and tells how many signs it
// takes: 0 where none begins. Its terms are products such as 3√2; brackets
// about a whole term go.
func (l *labeller) fraction(text []rune, i, over int) int {
	if l.name || !l.variables || l.deep > 0 || i > 0 && (isFactor(text[i-1]) || isPoint(text, i-1) || text[i-1] == '/') {
		return 0
	}
	top := l.product(text, i)
	slash := i + top
	if top == 0 || slash+1 >= len(text) || text[slash] != '/' {
		return 0
	}
	bottom := l.product(text, slash+1)
	after := slash + 1 + bottom
	if bottom == 0 || after < len(text) && (text[after] == '/' || isFactor(text[after])) {
		return 0
	}
	l.runs = append(l.runs, Run{Top: l.term(text[i:slash]), Bottom: l.term(text[slash+1 : after]), Over: over})
	return after - i
}

// index appends the index that _ begins, as in h_c, and tells how many signs it takes:
// 0 where none does. A single letter is a quantity, more are a word.
func (l *labeller) index(text []rune, i, over int) int {
	end := i + 1
	for end < len(text) && (unicode.IsLetter(text[end]) || unicode.IsDigit(text[end])) {
		end++
	}
	if text[i] != '_' || i == 0 || !unicode.IsLetter(text[i-1]) || end == i+1 {
		return 0
	}
	l.runs = append(l.runs, Run{Text: string(text[i+1 : end]), Sub: true, Italic: end == i+2 && hasCase(text[i+1]), Over: over})
	return end - i
}

// hasIndex tells whether the letter at i has an index.
func hasIndex(text []rune, i int) bool { return i+1 < len(text) && text[i+1] == '_' }

func isFactor(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '√' || r == ')'
}

// product is how many signs the factors from i on take.
func (l *labeller) product(text []rune, i int) int {
	end := i
	for end < len(text) {
		r := text[end]
		_, used := argument(text[end:])
		switch {
		case unicode.IsLetter(r) && !isQuantity(text, end), used == 0 && r != '√':
			return end - i
		case r == '√':
			_, used = argument(text[end+1:])
			used++
		}
		end += used
	}
	return end - i
}

// term sets one term of a fraction.
func (l *labeller) term(text []rune) []Run {
	if text[0] == '(' && closing(text) == len(text)-1 {
		text = text[1 : len(text)-1]
	}
	inner := labeller{variables: true, deep: l.deep + 1}
	inner.line(text, 0)
	return inner.runs
}

// sign appends one sign to the last run, or to a new one in another style.
func (l *labeller) sign(text []rune, i, over int) {
	r := Run{Text: string(text[i]), Over: over}
	switch {
	case l.name:
		r.Sub = unicode.IsDigit(text[i]) && i > 0
		r.Italic = hasCase(text[i])
	case isIndexed(text, i):
		r.Sub, r.Italic = unicode.IsDigit(text[i]), hasCase(text[i])
	case hasCase(text[i]):
		r.Italic = isGreek(text[i]) || (l.variables || hasIndex(text, i)) && isQuantity(text, i) || !l.variables && isMeant(text, i)
	}
	if n := len(l.runs); n > 0 && !strings.HasSuffix(l.runs[n-1].Text, surd) {
		if last := &l.runs[n-1]; last.Top == nil && last.Italic == r.Italic && last.Sub == r.Sub && last.Over == r.Over {
			last.Text += r.Text
			return
		}
	}
	l.runs = append(l.runs, r)
}

// isIndexed tells that the sign at i belongs to the name of a point with its
// number, such as P12, which is set as a name in any text.
func isIndexed(text []rune, i int) bool {
	start := i
	for start > 0 && unicode.IsDigit(text[start]) {
		start--
	}
	if !unicode.IsUpper(text[start]) || start > 0 && unicode.IsLetter(text[start-1]) {
		return false
	}
	return start+1 < len(text) && unicode.IsDigit(text[start+1])
}

// argument is what a √ before the text is taken of, without its brackets, and
// how many signs that uses: a bracket, another root, a numeral or one letter.
func argument(text []rune) (inside []rune, used int) {
	switch {
	case len(text) == 0:
	case text[0] == '(':
		if end := closing(text); end > 1 {
			return text[1:end], end + 1
		}
	case text[0] == '√':
		if _, used = argument(text[1:]); used > 0 {
			return text[:1+used], 1 + used
		}
	case unicode.IsDigit(text[0]):
		for used < len(text) && (unicode.IsDigit(text[used]) || isPoint(text, used)) {
			used++
		}
		return text[:used], used
	case unicode.IsLetter(text[0]):
		return text[:1], 1
	}
	return nil, 0
}

// closing is the index of the bracket that closes the one at the start, or 0.
func closing(text []rune) int {
	depth := 0
	for i, r := range text {
		switch r {
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return 0
}

// isPoint tells whether the sign at i stands within a numeral: the point or comma of a
// decimal fraction, or the space between groups of digits.
func isPoint(text []rune, i int) bool {
	inside := i > 0 && i+1 < len(text) && unicode.IsDigit(text[i-1]) && unicode.IsDigit(text[i+1])
	return inside && (text[i] == '.' || text[i] == ',' || text[i] == thin)
}

// hasWord tells whether the text says something in words; units are none.
func hasWord(text []rune) bool {
	for i := 0; i < len(text); {
		start, end := lettersAt(text, i)
		if isWord(text[start:end]) && !followsNumber(text, start) && (start == 0 || text[start-1] != '_') {
			return true
		}
		i = end + 1
	}
	return false
}

// isQuantity tells whether the letter at i stands for a number or a point, in
// a text without words: it is no part of a word and no unit.
func isQuantity(text []rune, i int) bool {
	start, end := lettersAt(text, i)
	return !isWord(text[start:end]) && !followsNumber(text, start)
}

// isMeant tells whether the letter at i is the name of something, in a text with words:
// it stands alone, and is a capital or where a phrase ends. Short words, such as
// articles, begin one.
func isMeant(text []rune, i int) bool {
	if i > 0 && text[i-1] != ' ' && text[i-1] != '(' || followsNumber(text, i) || beginsShort(text) {
		return false
	}
	after := string(text[i+1:])
	rest := strings.TrimLeft(after, "′.,;:)")
	next, _ := utf8.DecodeRuneInString(strings.TrimLeft(rest, " "))
	ends := i > 0 && (rest != after || !unicode.IsLetter(next))
	return (rest == "" || rest[0] == ' ') && (unicode.IsUpper(text[i]) || ends)
}

// beginsShort tells that a text begins with what may be a word of one letter, as "A side"
// does: then its other letters are not told from such words either.
func beginsShort(text []rune) bool {
	return len(text) > 1 && text[1] == ' ' && strings.ContainsRune("AEIOUYaeiouy", text[0])
}

// lettersAt is the stretch of letters that i is in, or the empty one at i.
func lettersAt(text []rune, i int) (start, end int) {
	start, end = i, i
	for start > 0 && unicode.IsLetter(text[i]) && unicode.IsLetter(text[start-1]) {
		start--
	}
	for end < len(text) && unicode.IsLetter(text[end]) {
		end++
	}
	return start, end
}

// isWord tells a word from single letters and from runs of points, like ABC.
func isWord(letters []rune) bool {
	return len(letters) > 1 && slices.ContainsFunc(letters, unicode.IsLower)
}

// followsNumber tells whether a number and a space stand before i, so that a unit is at i.
func followsNumber(text []rune, i int) bool {
	return i > 1 && (text[i-1] == ' ' || text[i-1] == thin) && (unicode.IsDigit(text[i-2]) || text[i-2] == ')')
}

// hasCase tells the letters of scripts that have capitals, and so italics.
func hasCase(r rune) bool { return unicode.IsUpper(r) || unicode.IsLower(r) }

func isGreek(r rune) bool { return unicode.Is(unicode.Greek, r) && unicode.IsLower(r) }

// signsFor has the printer's signs for what a keyboard offers: primes and
// apostrophes, minus signs, and a space for each control character.
func signsFor(text string) []rune {
	signs := []rune(text)
	at := func(i int) rune {
		if i < 0 || i >= len(signs) {
			return ' '
		}
		return signs[i]
	}
	for i, r := range signs {
		switch {
		case r == '\'' && unicode.IsLetter(at(i+1)):
			signs[i] = '’'
		case r == '\'':
			signs[i] = '′'
		case r == '-' && isMinus(at(i-1), at(i+1)):
			signs[i] = '−'
		case r == ' ' && isUnitSpace(signs, i):
			signs[i] = thin
		case unicode.IsControl(r):
			signs[i] = ' '
		}
	}
	return signs
}

// units are the words that belong to the number before them, as on a ruler.
var units = map[string]bool{"mm": true, "cm": true, "dm": true, "m": true, "km": true, "in": true, "ft": true}

// thin is the narrow space, at which no line breaks, between a number and its unit.
const thin = '\u202f'

// isUnitSpace tells the space at i between a number and its unit, as in 5 cm.
func isUnitSpace(signs []rune, i int) bool {
	if i == 0 || i+1 == len(signs) || !unicode.IsDigit(signs[i-1]) && signs[i-1] != ')' {
		return false
	}
	start, end := lettersAt(signs, i+1)
	return start == i+1 && units[string(signs[start:end])]
}

// isMinus tells a minus sign from a hyphen by its neighbours.
func isMinus(before, after rune) bool {
	free := before == ' ' || before == '('
	return free && (after == ' ' || after == '√' || unicode.IsDigit(after))
}
