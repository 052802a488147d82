package syntax

import (
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"

	"trammel/lang/source"
)

// known is what a whole file tells of its names. It knows small runs: words
// such as ab that name nothing and stand where AB is meant.
type known struct {
	made    map[string]bool // names of things, and every word on a line that does not parse
	letters map[string]bool // points, in small letters, and the small letters written for some
}

func namesOf(lines []line, statements []*Statement) *known {
	k := &known{map[string]bool{}, map[string]bool{}}
	for i, l := range lines {
		if statements[i] != nil {
			walk(reflect.ValueOf(statements[i]), k.makes)
			continue
		}
		for _, t := range l.tokens {
			k.made[t.Value] = true
		}
	}
	for _, l := range lines {
		for _, t := range l.tokens {
			if t.isPoint() || t.Type == nameKind && !k.made[t.Value] {
				k.letters[strings.ToLower(t.Value)] = true
			}
		}
	}
	return k
}

// makes notes the things that a statement makes.
func (k *known) makes(node any) {
	switch n := node.(type) {
	case *GivenLine:
		k.make(n.Name)
	case *GivenCirc:
		k.make(n.Name)
	case *GivenLen:
		k.make(n.Name)
	case *Arc:
		k.make(n.Name)
	case *Circle:
		k.make(n.Name)
	case *Line:
		k.make(n.Name)
	case *Locus:
		k.make(n.Names...)
	case *Named:
		if n.By != nil {
			k.make(n.Names...)
		}
	case *Choose:
		k.make(n.Name)
	case *Repeat:
		k.make(n.Var)
	case *Construction:
		for _, p := range append(n.Params, n.Gives...) {
			k.make(p.Name)
		}
	}
}

func (k *known) make(refs ...*Ref) {
	for _, r := range refs {
		k.made[r.Name] = true
	}
}

// spells tells that a word is a run in small letters, surely: it names
// nothing, and each letter of it is a point.
func (k *known) spells(word string) bool {
	letters := lettersOf(word)
	for _, l := range letters {
		if !k.letters[l] {
			return false
		}
	}
	return len(letters) > 1 && !k.made[word]
}

// maySpell is spells for a place where points alone can stand.
func (k *known) maySpell(word string) bool {
	n := len(lettersOf(word))
	return (n == 2 || n == 3) && !k.made[word] || k.spells(word)
}

// lettersOf cuts a small run into its points: a, b of ab; p1, p2 of p1p2.
func lettersOf(word string) []string {
	var letters []string
	for _, r := range word {
		if n := len(letters); n > 0 && !unicode.IsLetter(r) {
			letters[n-1] += string(r)
		} else {
			letters = append(letters, string(r))
		}
	}
	return letters
}

// AsRun is the points that a word in small letters may be meant for: A, B for ab.
func AsRun(word string) []string {
	var points []string
	for _, l := range lettersOf(word) {
		points = append(points, strings.ToUpper(l))
	}
	return points
}

// FollowsNumber tells whether a number stands right before a place, so that
// what stands there may be meant for its unit.
func FollowsNumber(f *source.File, at int) bool {
	before := strings.TrimRight(f.Text[:at], " ")
	number := strings.TrimRight(before, "0123456789.")
	r, _ := utf8.DecodeLastRuneInString(number)
	return len(number) < len(before) && !unicode.IsLetter(r) && !isPrime(r)
}
