package syntax

import (
	"strings"

	"trammel/lang/source"
)

// Format rewrites a source in its one canonical form: blocks indented by two,
// one space between words, one sign for each meaning, at most one blank line
// in a row. Comments and line breaks stay where they stand, numbers as they
// are written. A source with an error is not touched: the errors are added to
// problems and ok is false.
func Format(f *source.File, problems *source.List) (text string, ok bool) {
	var found source.List
	Parse(f, &found)
	*problems = append(*problems, found...)
	if found.Failed() {
		return "", false
	}
	var out layout
	var none source.List
	tokens := scan(f, &none)
	for len(tokens) > 0 {
		n := lineLength(tokens)
		out.line(tokens[:n])
		tokens = tokens[min(n+1, len(tokens)):]
	}
	return out.String(), true
}

// lineLength is the number of tokens before the next line end.
func lineLength(tokens []token) int {
	for i, t := range tokens {
		if t.Type == lineEndKind {
			return i
		}
	}
	return len(tokens)
}

// layout is a text being formatted, line by line.
type layout struct {
	strings.Builder
	depth   int  // of blocks
	goesOn  bool // the last line ended with a comma
	blank   bool // blank lines came since
	opening bool // the statement being written opens a block
}

// line writes the tokens of one line.
func (o *layout) line(tokens []token) {
	if len(tokens) == 0 {
		o.blank = true
		return
	}
	if o.blank && o.Len() > 0 {
		o.WriteByte('\n')
	}
	o.blank = false
	words := meaningful(tokens)
	if len(words) > 0 && !o.goesOn {
		o.begin(line{tokens: words})
	}
	o.WriteString(strings.Repeat("  ", o.indent()))
	o.words(words)
	if len(words) < len(tokens) {
		if len(words) > 0 {
			o.WriteString("  ")
		}
		o.WriteString(tokens[len(tokens)-1].Value)
	}
	o.WriteByte('\n')
	if len(words) > 0 {
		o.finish(words[len(words)-1].is(","))
	}
}

// begin notes what a new statement does to the depth.
func (o *layout) begin(l line) {
	if l.isEnd() && o.depth > 0 {
		o.depth--
	}
	o.opening = l.opens()
}

// finish notes how the line just written goes on.
func (o *layout) finish(comma bool) {
	o.goesOn = comma
	if !comma && o.opening {
		o.depth++
		o.opening = false
	}
}

// indent is the number of steps by which the line stands in: two more for one
// that goes on after a comma.
func (o *layout) indent() int {
	if o.goesOn {
		return o.depth + 2
	}
	return o.depth
}

// words writes the tokens of a line with their canonical spaces.
func (o *layout) words(words []token) {
	index := 0 // depth of index brackets
	for i := 0; i < len(words); i++ {
		if i > 0 && spaced(words, i, index > 0) {
			o.WriteByte(' ')
		}
		switch t := words[i]; {
		case t.is("^"):
			o.WriteString("²")
			i++ // its 2
		default:
			o.WriteString(t.Value)
		}
		if words[i].is("[") {
			index++
		} else if words[i].is("]") {
			index--
		}
	}
}

// spaced tells that a space stands before words[i]; inside an index the signs
// of arithmetic have none.
func spaced(words []token, i int, index bool) bool {
	before, t := words[i-1], words[i]
	switch {
	case t.Type == gluedKind,
		t.is(","), t.is(")"), t.is("["), t.is("]"), t.is("²"), t.is("^"), t.is("/"),
		before.is("("), before.is("["), before.is("/"),
		t.is("(") && calls(words, i-1),
		index && (isArithmetic(t) || isArithmetic(before)),
		before.is("-") && isUnary(words, i-1),
		(words[0].is("theme") || words[0].is("language")) && (t.is("-") || before.is("-")):
		return false
	}
	return true
}

func isArithmetic(t token) bool { return t.is("+") || t.is("-") || t.is("*") }

// calls tells that words[i] is a name whose bracket touches it: erect(m, P)
// and sqrt(2), but not A (0, 0).
func calls(words []token, i int) bool {
	return words[i].is("sqrt") || i > 0 && (words[i-1].is("by") || words[i-1].is("construction")) && words[i].Type != numberKind
}

// isUnary tells that the minus at words[i] has no value before it.
func isUnary(words []token, i int) bool {
	if i == 0 {
		return true
	}
	switch before := words[i-1]; before.Type {
	case signKind:
		return !before.is(")") && !before.is("]") && !before.is("²")
	case keywordKind:
		return !units[before.Value]
	}
	return false
}
