package syntax

import (
	"slices"
	"strings"
	"sync"

	"trammel/lang/source"
)

// fault is a statement that does not parse, seen at the token where it fails.
type fault struct {
	file   *source.File
	tokens []token
	at     int     // index of the failing token; len(tokens) if the line ends too early
	fits   []model // the examples that begin as the statement does; if none, the nearest
	wanted []chunk // what they go on with; none if no example fits
}

// model is an example of a form, cut up for comparison.
type model struct {
	form   *Form
	line   string
	chunks []chunk
}

// models are the examples of all forms, made when the first mistake is met.
var models = sync.OnceValue(func() []model { return modelsOf(Forms) })

func newFault(f *source.File, tokens []token, at int) *fault {
	x := &fault{file: f, tokens: tokens, at: at}
	keyword := ""
	if tokens[0].Type == keywordKind {
		keyword = tokens[0].Value
	}
	x.compare(models(), keyword, chunks(tokens[:at]))
	if len(x.wanted) == 0 {
		x.comparePhrase()
	}
	if before := x.token(at - 1); before.Type == signKind && wantsValue[before.Value] {
		x.wanted = []chunk{{kind: valueChunk}}
	}
	return x
}

// wantsValue holds the signs that a value must follow.
var wantsValue = wordSet("+ - * / = < > ≤ ≥ ≠ : [")

// compare finds the models with that first word that agree best with the
// chunks of a statement, and what they go on with.
func (x *fault) compare(all []model, keyword string, prefix []chunk) {
	best := 0
	for _, m := range all {
		if m.form.Keyword != keyword {
			continue
		}
		n := m.agrees(prefix)
		if n > best {
			best, x.fits, x.wanted = n, nil, nil
		}
		if n == best {
			x.fits = append(x.fits, m)
			x.want(m, n, len(prefix))
		}
	}
}

// comparePhrase looks for a phrase that breaks off at the failing token.
func (x *fault) comparePhrase() {
	for from := x.at - 1; from > 0 && from > x.at-8; from-- {
		if x.tokens[from].Type != keywordKind {
			continue
		}
		phrase := &fault{tokens: x.tokens}
		phrase.compare(phraseModels(), x.tokens[from].Value, chunks(x.tokens[from:x.at]))
		if len(phrase.wanted) > 0 && !phrase.wants(endChunk) {
			x.fits, x.wanted = phrase.fits, phrase.wanted
			return
		}
	}
}

// agrees is the number of leading chunks in which the example and the
// statement are alike.
func (m model) agrees(prefix []chunk) int {
	n := 0
	for n < len(prefix) && n < len(m.chunks) && m.chunks[n].fills(prefix[n]) {
		n++
	}
	return n
}

// want notes what an example has after n chunks, if it fits the whole prefix.
func (x *fault) want(m model, n, whole int) {
	if n < whole {
		return
	}
	next := chunk{kind: endChunk}
	if n < len(m.chunks) {
		next = m.chunks[n]
		next.from = 0
	}
	if !slices.Contains(x.wanted, next) {
		x.wanted = append(x.wanted, next)
	}
}

// words are the words of the language among what is wanted.
func (x *fault) words() []string {
	var list []string
	for _, c := range x.wanted {
		if c.kind == wordChunk {
			list = append(list, c.word)
		}
	}
	return list
}

func (x *fault) wants(kind chunkKind) bool {
	return slices.ContainsFunc(x.wanted, func(c chunk) bool { return c.kind == kind })
}

// token is the i-th token; beyond the line it is of no kind.
func (x *fault) token(i int) token {
	if i < 0 || i >= len(x.tokens) {
		return token{}
	}
	return x.tokens[i]
}

// text is the source from token i up to token j, on one line.
func (x *fault) text(i, j int) string {
	if i >= j {
		return ""
	}
	written := x.file.Text[x.tokens[i].start():x.tokens[j-1].End]
	return clip(strings.Join(strings.Fields(written), " "), 2*maxName)
}

// reads is the help line that shows how the statement is written: at most
// three examples.
func (x *fault) reads() string {
	if len(x.fits) == 0 {
		return ""
	}
	var lines []string
	for _, m := range x.fits {
		if len(lines) < 3 && m.form == x.fits[0].form {
			lines = append(lines, m.line)
		}
	}
	return x.fits[0].form.Called + " reads: " + strings.Join(lines, " · ")
}

// kindWords is what a message calls the things that may be wanted.
var kindWords = map[chunkKind]string{
	nameChunk: "a name", pointChunk: "a point", runChunk: "a run such as AB", valueChunk: "a value", textChunk: `a text in quotes`,
}

// wantedList words what is wanted: "centre" or a point. It is empty if nothing
// is known of it.
func (x *fault) wantedList() string {
	var list []string
	for _, c := range x.wanted {
		word := quote(c.word)
		if c.kind != wordChunk {
			word = kindWords[c.kind]
		}
		// A name, a point and a run are values too.
		if general := x.wants(valueChunk) && c.kind >= nameChunk && c.kind < valueChunk; general || slices.Contains(list, word) {
			continue
		}
		list = append(list, word)
	}
	switch {
	case len(list) == 0:
		return ""
	case len(list) > 4:
		return x.crowd()
	}
	return orList(list)
}

// crowd words in one what is wanted where very many words may stand.
func (x *fault) crowd() string {
	switch first := x.tokens[0]; {
	case first.is("given") && x.at == 1:
		return "a point or a thing"
	case first.is("given"), first.is("take"):
		return "the place of the point"
	case first.is("label"):
		return "a point, a run such as AB or angle ABC"
	case x.at == 1:
		return "a thing or a relation"
	}
	return `a relation such as "=" or "on"`
}

// orList joins with commas and a last or.
func orList(list []string) string {
	last := len(list) - 1
	if last == 0 {
		return list[0]
	}
	return strings.Join(list[:last], ", ") + " or " + list[last]
}
