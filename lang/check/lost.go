package check

import (
	"regexp"
	"strings"

	"trammel/lang/source"
	"trammel/lang/syntax"
)

// lost is what the lines that could not be read may have made. That it is
// missing is not a new mistake.
type lost struct {
	names         map[string]bool
	families      map[string]bool // P of P[i]
	constructions map[string]bool
	files         bool // of constructions
}

var (
	nameShape   = regexp.MustCompile(`\p{L}\p{Nd}*['′]*`)
	familyShape = regexp.MustCompile(`(\p{L}\pL*)\[`)
	headShape   = regexp.MustCompile(`^\s*construction\s+(\pL+)`)
	quoted      = regexp.MustCompile(`"[^"]*"?`)
)

// lostIn collects what may be a name on the lines with problems, and in the
// blocks that were left out.
func lostIn(f *syntax.File, problems source.List) lost {
	l := lost{names: map[string]bool{}, families: map[string]bool{}, constructions: map[string]bool{}}
	for _, p := range problems {
		if p.Span.File == f.Source && p.Severity == source.Error {
			l.line(f.Source, p.Span.Start)
		}
	}
	for _, block := range f.Lost {
		first, _ := f.Source.Position(block.Start)
		last, _ := f.Source.Position(block.End)
		for n := first; n <= last; n++ {
			l.text(f.Source.Line(n))
		}
	}
	return l
}

func (l lost) line(f *source.File, at int) {
	n, _ := f.Position(at)
	l.text(f.Line(n))
}

func (l lost) text(line string) {
	line, _, _ = strings.Cut(quoted.ReplaceAllString(line, ""), "#")
	words := strings.Fields(line)
	if len(words) == 0 || makesNothing[words[0]] {
		return
	}
	for _, name := range nameShape.FindAllString(line, -1) {
		l.names[name] = true
	}
	for _, word := range words {
		l.names[strings.Trim(word, ",")] = true
	}
	for _, m := range familyShape.FindAllStringSubmatch(line, -1) {
		l.families[m[1]] = true
	}
	if m := headShape.FindStringSubmatch(line); m != nil {
		l.constructions[m[1]] = true
	}
}

// has tells whether a name may be one of those.
func (l lost) has(name string) bool {
	return l.names[name] || l.families[strings.TrimRight(name, "0123456789")]
}

// makesNothing are the words of lines that give nothing a name.
var makesNothing = map[string]bool{
	"label": true, "mark": true, "claim": true, "note": true, "shade": true,
	"hide": true, "faint": true, "bold": true, "dashed": true, "join": true,
}
