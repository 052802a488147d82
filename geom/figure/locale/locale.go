// Package locale knows how languages write the numbers and signs of a figure.
package locale

import (
	"fmt"
	"strings"
)

// Locale is how one language writes.
type Locale struct {
	Tag       string // of BCP 47
	Decimal   string // the sign before the decimals
	Congruent string // the sign between congruent figures
}

// English is what a figure speaks that says nothing.
var English = rows[0]

// rows are the languages, by their tags. The decimal signs are those of CLDR;
// a test compares them with a library that carries its data. The signs of
// congruence are the common practice of schoolbooks, without a source.
var rows = []Locale{
	{"en", ".", "≅"},
	{"en-GB", ".", "≡"},
	{"en-US", ".", "≅"},
	{"cs", ",", "≅"},
	{"da", ",", "≅"},
	{"de", ",", "≅"},
	{"de-CH", ".", "≅"},
	{"es", ",", "≅"},
	{"es-MX", ".", "≅"},
	{"fi", ",", "≅"},
	{"fr", ",", "≅"},
	{"hu", ",", "≅"},
	{"it", ",", "≅"},
	{"nb", ",", "≅"},
	{"nl", ",", "≅"},
	{"pl", ",", "≡"},
	{"pt", ",", "≅"},
	{"pt-BR", ",", "≡"},
	{"ro", ",", "≡"},
	{"sk", ",", "≅"},
	{"sl", ",", "≅"},
	{"sv", ",", "≅"},
	{"tr", ",", "≅"},
}

// Find is the locale of a tag. A language that is known serves for all its
// regions: "de-AT" is written as "de", and keeps its tag. Case does not matter.
func Find(tag string) (Locale, error) {
	if tag == "" {
		return English, nil
	}
	for part := tag; part != ""; part = parent(part) {
		for _, l := range rows {
			if strings.EqualFold(l.Tag, part) {
				l.Tag += tag[len(part):]
				return l, nil
			}
		}
	}
	return Locale{}, fmt.Errorf("the language %s is not known here: there are %s", tag, strings.Join(Tags(), ", "))
}

// parent is a tag without its last part (the lookup of RFC 4647).
func parent(tag string) string { return tag[:max(0, strings.LastIndex(tag, "-"))] }

// Tags are the languages that are known.
func Tags() []string {
	tags := make([]string, len(rows))
	for i, l := range rows {
		tags[i] = l.Tag
	}
	return tags
}

// thin is the space that parts groups of digits.
const thin = "\u202f"

// Numbers writes the numbers of a text, which has them with a point and
// ungrouped, as the language does. Digits stand in groups of three from the decimal
// sign, thin spaces between them (ISO 80000-1, 7.3.1); four are left together.
func (l Locale) Numbers(text string) string {
	var b strings.Builder
	for text != "" {
		start := strings.IndexFunc(text, isDigit)
		if start < 0 {
			break
		}
		b.WriteString(text[:start])
		text = text[start:]
		whole := digits(text)
		b.WriteString(grouped(whole, true))
		text = text[len(whole):]
		if after, ok := strings.CutPrefix(text, "."); ok && digits(after) != "" {
			part := digits(after)
			b.WriteString(l.Decimal + grouped(part, false))
			text = after[len(part):]
		}
	}
	return b.String() + text
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// digits are those that a text begins with.
func digits(text string) string {
	return text[:len(text)-len(strings.TrimLeftFunc(text, isDigit))]
}

// grouped parts digits from the right or from the left.
func grouped(digits string, fromRight bool) string {
	const group, together = 3, 4
	if len(digits) <= together {
		return digits
	}
	first := group
	if fromRight {
		first = (len(digits)-1)%group + 1
	}
	groups := []string{digits[:first]}
	for rest := digits[first:]; rest != ""; rest = rest[min(group, len(rest)):] {
		groups = append(groups, rest[:min(group, len(rest))])
	}
	return strings.Join(groups, thin)
}
