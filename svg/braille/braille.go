// Package braille writes labels in Unified English Braille, uncontracted: The
// Rules of Unified English Braille (2nd ed., 2013) and, for roots, fractions and
// levels, the Guidelines for Technical Material (2014), from memory. Tests compare
// it with the tables of liblouis.
package braille

import (
	"strings"
	"unicode"
)

// Cell is one braille cell: bit n-1 is dot n.
type Cell byte

// Has tells whether a dot from 1 to 6 is raised.
func (c Cell) Has(dot int) bool { return c>>(dot-1)&1 == 1 }

// String is the cell as Unicode has it.
func (c Cell) String() string { return string(rune(0x2800 + int(c))) }

// The signs that are not letters in print.
const (
	OpenRoot, CloseRoot     = '\ue000', '\ue001' // about the radicand under a bar
	OpenTop, Over, CloseTop = '\ue002', '\ue003', '\ue004'
	Lower                   = '\ue005' // before a sign, or a number, that stands lower
)

// Write transcribes a line of print. Unknown lists the signs that have no
// braille here; a full cell stands for each.
func Write(text string) (cells []Cell, unknown []rune) {
	w := writer{text: []rune(text)}
	for w.at < len(w.text) {
		w.sign()
	}
	return w.cells, w.unknown
}

type writer struct {
	text    []rune
	at      int
	cells   []Cell
	unknown []rune
	numeric bool // the last sign belonged to a number: a to j would be read as digits
	grade1  bool // since the last space a number stood: signs are no contractions
}

// put appends cells written as Unicode has them.
func (w *writer) put(braille string) {
	for _, r := range braille {
		w.cells = append(w.cells, Cell(r-0x2800))
	}
}

// sign transcribes what stands at w.at and moves past it.
func (w *writer) sign() {
	r := w.text[w.at]
	switch {
	case isDigit(r):
		w.number()
		return
	case unicode.IsSpace(r):
		w.numeric, w.grade1 = false, false
		w.put("⠀")
	case r == OpenTop && w.simpleFraction():
		return
	case technical[r] != "":
		w.technical(r)
	case signs[r] != "":
		w.numeric = false
		w.put(signs[r])
	case unicode.IsUpper(r):
		w.capitals()
		return
	default:
		w.letter(r)
	}
	w.at++
}

// number is the numeric indicator and digits, with a decimal sign and spaces
// between groups as parts of it (Rules 6.1 to 6.6).
func (w *writer) number() {
	w.put("⠼")
	for ; w.at < len(w.text); w.at++ {
		r := w.text[w.at]
		switch inside := w.at+1 < len(w.text) && isDigit(w.text[w.at+1]); {
		case isDigit(r):
			w.put(digits[r-'0'])
		case r == '.' && inside:
			w.put("⠲")
		case r == ',' && inside:
			w.put("⠂")
		case isThin(r) && inside:
			w.put("⠐")
		default:
			w.numeric, w.grade1 = true, true
			return
		}
	}
}

// simpleFraction is one of whole numbers, which needs no brackets; false for
// others (Rules 6.4).
func (w *writer) simpleFraction() bool {
	top, rest, _ := strings.Cut(string(w.text[w.at+1:]), string(Over))
	bottom, _, _ := strings.Cut(rest, string(CloseTop))
	if strings.TrimFunc(top, isDigit) != "" || strings.TrimFunc(bottom, isDigit) != "" {
		return false
	}
	w.put("⠼" + inDigits(top) + "⠌" + inDigits(bottom))
	w.at += len(top) + len(bottom) + 3
	w.numeric, w.grade1 = true, true
	return true
}

func inDigits(number string) string {
	var b strings.Builder
	for _, r := range number {
		b.WriteString(digits[r-'0'])
	}
	return b.String()
}

// capitals are one letter or a whole word after the sign of a capital, which
// is ended where small letters follow (Rules 8.3 to 8.5).
func (w *writer) capitals() {
	end := w.at
	for end < len(w.text) && unicode.IsUpper(w.text[end]) {
		end++
	}
	many := end-w.at > 1
	w.put("⠠")
	if many {
		w.put("⠠")
	}
	w.numeric = false
	for ; w.at < end; w.at++ {
		w.letter(unicode.ToLower(w.text[w.at]))
	}
	if many && end < len(w.text) && unicode.IsLower(w.text[end]) {
		w.put("⠠⠄")
	}
}

// letter is a small letter, with its accent before it.
func (w *writer) letter(r rune) {
	if c, ok := letters[r]; ok {
		if w.numeric && 'a' <= r && r <= 'j' {
			w.put("⠰")
		}
		w.numeric = false
		w.put(c)
		return
	}
	w.unknown = append(w.unknown, r)
	w.put("⠿")
}

// technical is a sign that would be a contraction elsewhere, so that it has the
// grade 1 indicator before it unless a number has set that mode.
func (w *writer) technical(r rune) {
	closes := r == CloseRoot || r == CloseTop || r == Over
	if !w.grade1 && !closes {
		w.put("⠰")
		w.grade1 = r != Lower
	}
	w.numeric = false
	w.put(technical[r])
}

var technical = map[rune]string{
	OpenRoot: "⠩", CloseRoot: "⠬", OpenTop: "⠷", Over: "⠨⠌", CloseTop: "⠾", Lower: "⠢",
}

var digits = [...]string{"⠚", "⠁", "⠃", "⠉", "⠙", "⠑", "⠋", "⠛", "⠓", "⠊"}

var letters = alphabet()

func alphabet() map[rune]string {
	m := map[rune]string{}
	add := func(print, before, cells string) {
		c := []rune(cells)
		for i, r := range []rune(print) {
			m[r] = before + string(c[i])
		}
	}
	add("abcdefghijklmnopqrstuvwxyz", "", "⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚⠅⠇⠍⠝⠕⠏⠟⠗⠎⠞⠥⠧⠺⠭⠽⠵")
	add("αβγδεζηθικλμνξοπρστυφχψω", "⠨", "⠁⠃⠛⠙⠑⠵⠱⠹⠊⠅⠇⠍⠝⠭⠕⠏⠗⠎⠞⠥⠋⠯⠽⠺")
	for before, pair := range map[string][2]string{
		"⠘⠒": {"äëïöüÿ", "⠁⠑⠊⠕⠥⠽"}, "⠘⠌": {"áéíóúý", "⠁⠑⠊⠕⠥⠽"}, "⠘⠡": {"àèìòù", "⠁⠑⠊⠕⠥"},
		"⠘⠩": {"âêîôû", "⠁⠑⠊⠕⠥"}, "⠘⠻": {"ãñõ", "⠁⠝⠕"}, "⠘⠯": {"ç", "⠉"}, "⠘⠫": {"å", "⠁"},
	} {
		add(pair[0], before, pair[1])
	}
	return m
}

// signs are those of one meaning everywhere (Rules, section 3 and 7).
var signs = map[rune]string{
	'°': "⠘⠚", '′': "⠶", '+': "⠐⠖", '−': "⠐⠤", '=': "⠐⠶", '×': "⠐⠦", '÷': "⠐⠌", '/': "⠸⠌",
	'<': "⠈⠣", '>': "⠈⠜", ':': "⠒", ',': "⠂", '.': "⠲", ';': "⠆", '-': "⠤", '(': "⠐⠣", ')': "⠐⠜",
	'?': "⠦", '!': "⠖", '’': "⠄", '²': "⠰⠔⠼⠃", '³': "⠰⠔⠼⠉", '√': "⠐⠩",
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// isThin tells the spaces that part groups of digits.
func isThin(r rune) bool { return strings.ContainsRune("\u202f\u2009", r) }
