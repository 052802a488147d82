package svg

import (
	"regexp"
	"strings"
)

// Unbroken is a sentence with its units tied to their numbers, so that no line
// ends between them.
func Unbroken(sentence string) string { return ties.Replace(sentence) }

var ties = strings.NewReplacer(" cm", "\u00a0cm", " mm", "\u00a0mm")

// Lowered is a sentence with the digits of names such as P1 as subscripts, as they
// stand in the figure.
func Lowered(sentence string) string {
	return indexed.ReplaceAllStringFunc(sentence, func(name string) string {
		return name[:1] + strings.Map(func(r rune) rune {
			if '0' <= r && r <= '9' {
				return r - '0' + zeroBelow
			}
			return r
		}, name[1:])
	})
}

// indexed is a letter with digits, as names have them: P1, AP1P2.
var indexed = regexp.MustCompile(`[A-Za-z][0-9]+`)

// zeroBelow is the first of the subscript digits.
const zeroBelow = '₀'

// Sentence is the runs of a sentence: subscript digits are set as in labels.
func Sentence(text string) (runs []Run) {
	for text != "" {
		end := strings.IndexFunc(text, isBelow)
		if end < 0 {
			return append(runs, Run{Text: text})
		}
		if end > 0 {
			runs = append(runs, Run{Text: text[:end]})
		}
		digits := text[end:]
		rest := strings.TrimLeftFunc(digits, isBelow)
		digits = strings.TrimSuffix(digits, rest)
		runs = append(runs, Run{Sub: true, Text: strings.Map(func(r rune) rune { return r - zeroBelow + '0' }, digits)})
		text = rest
	}
	return runs
}

func isBelow(r rune) bool { return zeroBelow <= r && r <= zeroBelow+9 }
