// Package syntax reads a source: it cuts the text into tokens, parses each
// statement by itself, and puts the statements together into blocks, so that
// one mistake hides no other. Format writes a source in its canonical form;
// Forms describes the whole language.
package syntax

import (
	"fmt"
	"strings"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"trammel/lang/source"
)

// The largest source in bytes, the deepest nesting, the longest statement, and
// the most mistakes that one file is worth.
const (
	maxSource  = 1 << 20
	maxDepth   = 200
	maxWords   = 10000
	maxMistake = 1000
)

// File is the tree of one source. Statements with a mistake are left out; the
// mistakes are in the list that Parse filled.
type File struct {
	Source     *source.File
	Statements []*Statement
	Lost       []source.Span // repeats and constructions left out for their first line
}

// Parse reads a source and adds everything that is wrong with it to problems.
// The tree is never nil, but complete only if no error was added.
func Parse(f *source.File, problems *source.List) *File {
	if len(f.Text) > maxSource {
		p := problems.Add(source.Span{File: f}, "the source is longer than 1 MiB")
		p.Help = "split it: constructions can stand in a file of their own, taken in with use"
		return &File{Source: f}
	}
	b := &blocks{file: f, problems: problems, already: len(*problems)}
	lines := cut(f, scan(f, problems), problems)
	statements := make([]*Statement, len(lines))
	for i, l := range lines {
		if !b.tooMany(l) {
			statements[i] = parseLine(f, l, problems)
		}
	}
	c := &sounding{file: f, problems: problems, known: namesOf(lines, statements), said: map[*Ref]bool{}}
	for i, l := range lines {
		if !b.tooMany(l) {
			b.add(l, c.sound(l, statements[i]))
		}
	}
	tree := &File{Source: f, Statements: b.finish(), Lost: b.lost}
	problems.Sort()
	return tree
}

// Span is the stretch of f from the node's first token to its last.
func (n Node) Span(f *source.File) source.Span {
	start, end := n.Pos.Offset, n.EndPos.Offset
	end = max(start, min(end, len(f.Text)))
	return source.Span{File: f, Start: start, End: start + len(strings.TrimRightFunc(f.Text[start:end], isBlank))}
}

func isBlank(r rune) bool { return r == '\n' || isSpace(r) }

// grammar is built once, when the first source is parsed.
var grammar = sync.OnceValue(buildGrammar)

func buildGrammar() *participle.Parser[Statement] {
	return participle.MustBuild[Statement](participle.Lexer(definition{}), participle.UseLookahead(0))
}

// parseLine parses one statement, or reports what is wrong with it and gives nil.
func parseLine(f *source.File, l line, problems *source.List) *Statement {
	if l.broken() || l.isEnd() {
		return nil
	}
	defer l.noteComma(f, problems, len(*problems))
	if len(l.tokens) > maxWords {
		problems.Add(l.tokens[0].span(f), fmt.Sprintf("a statement of more than %d words", maxWords)).Help = "write several"
		return nil
	}
	if i := tooDeep(l.tokens); i >= 0 {
		problems.Add(l.tokens[i].span(f), fmt.Sprintf("brackets nest deeper than %d", maxDepth))
		return nil
	}
	peeker, err := lexer.Upgrade(&stream{tokens: l.tokens})
	if err != nil {
		panic(err) // a stream never fails
	}
	s, err := grammar().ParseFromLexer(peeker)
	if err != nil {
		if at := failure(l, err); at < len(l.tokens) || !l.stray {
			explain(f, l, at, problems)
		}
		return nil
	}
	s.unquote()
	return s
}

// failure is the index of the token at which a parse failed; the number of
// tokens when the statement ended too early.
func failure(l line, err error) int {
	at := len(l.tokens)
	if e, ok := err.(participle.Error); ok {
		for i, t := range l.tokens {
			if t.start() >= e.Position().Offset {
				at = i
				break
			}
		}
	}
	return at
}

// tooDeep is the index of the bracket that exceeds the nesting, or -1.
func tooDeep(tokens []token) int {
	depth := 0
	for i, t := range tokens {
		switch {
		case t.is("("), t.is("["):
			depth++
		case t.is(")"), t.is("]"):
			depth--
		}
		if depth > maxDepth {
			return i
		}
	}
	return -1
}

// unquote strips the quotes, which the tokens of texts keep so that no text
// can pass for a keyword.
func (s *Statement) unquote() {
	strip := func(t *string) { *t = strings.Trim(*t, `"`) }
	switch {
	case s.Figure != nil:
		strip(&s.Figure.Title)
	case s.Use != nil:
		strip(&s.Use.Path)
	case s.Label != nil && s.Label.Text != nil:
		strip(s.Label.Text)
	case s.Note != nil:
		strip(&s.Note.Text)
	case s.Task != nil:
		strip(&s.Task.Text)
		strip(&s.Task.From)
	case s.Worksheet != nil:
		strip(&s.Worksheet.Title)
	case s.Instructions != nil:
		strip(&s.Instructions.Text)
	case s.Sentence != nil:
		strip(&s.Sentence.Text)
	case s.Needs != nil:
		strip(&s.Needs.Words)
		strip(&s.Needs.Else)
	case s.Step != nil:
		strip(&s.Step.Caption)
	}
}
