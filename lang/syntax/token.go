package syntax

import (
	"io"

	"github.com/alecthomas/participle/v2/lexer"

	"trammel/lang/source"
)

// The kinds of tokens.
const (
	pointKind   lexer.TokenType = iota + 1 // a capital with digits and primes, first of its run
	gluedKind                              // a further point of a run: it touches a point or a ]
	nameKind                               // a lower-case word that is no keyword
	keywordKind                            // a word of the language
	numberKind                             // 12 · 3.25
	angleKind                              // 60° · 22°30'
	textKind                               // "…", quotes included
	signKind                               // punctuation
	lineEndKind                            // the end of a line
	commentKind                            // # to the end of the line
	badKind                                // already reported
)

var symbols = map[string]lexer.TokenType{
	"EOF": lexer.EOF, "Point": pointKind, "Glued": gluedKind, "Name": nameKind, "Keyword": keywordKind,
	"Number": numberKind, "Angle": angleKind, "Text": textKind, "Sign": signKind,
	"EOL": lineEndKind, "Comment": commentKind, "Bad": badKind,
}

// token is a participle token that knows where it ends. Its Value is
// canonical (≤ for <=, ' for ′); the file has it as written.
type token struct {
	lexer.Token
	End int
}

func (t token) is(word string) bool {
	return t.Value == word && (t.Type == keywordKind || t.Type == signKind)
}

func (t token) start() int { return t.Pos.Offset }

// isPoint tells a point, alone or within a run.
func (t token) isPoint() bool { return t.Type == pointKind || t.Type == gluedKind }

// span is the stretch of f that the token covers.
func (t token) span(f *source.File) source.Span {
	return source.Span{File: f, Start: t.start(), End: t.End}
}

// definition is the language's lexer as participle knows it. It hands out the
// tokens that carry meaning: line ends and comments are left out.
type definition struct{}

// Symbols are the kinds of tokens, as the grammar names them.
func (definition) Symbols() map[string]lexer.TokenType { return symbols }

// Lex is not used by the grammar, which gets its tokens cut up already; it reads a whole source.
func (definition) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	var problems source.List
	return &stream{tokens: meaningful(scan(source.NewFile(name, string(text)), &problems))}, nil
}

// meaningful drops line ends and comments.
func meaningful(tokens []token) []token {
	var kept []token
	for _, t := range tokens {
		if t.Type != lineEndKind && t.Type != commentKind {
			kept = append(kept, t)
		}
	}
	return kept
}

// stream hands finished tokens to participle; its end of file is where the
// last of them ends.
type stream struct {
	tokens []token
	next   int
}

// Next is the next token, at the end always the end.
func (s *stream) Next() (lexer.Token, error) {
	if s.next < len(s.tokens) {
		s.next++
		return s.tokens[s.next-1].Token, nil
	}
	var end lexer.Position
	if n := len(s.tokens); n > 0 {
		last := s.tokens[n-1]
		end = last.Pos
		end.Advance(last.Value)
		end.Offset = last.End
	}
	return lexer.EOFToken(end), nil
}
