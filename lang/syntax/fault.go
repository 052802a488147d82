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
var models = sync.OnceValue(func() []model {
	var all []model
	for i := range Forms {
		for _, e := range Forms[i].Examples {
			var none source.List
			tokens := scan(source.NewFile("", e.Line), &none)
			all = append(all, model{&Forms[i], e.Line, chunks(tokens)})
		}
	}
	return all
})

func newFault(f *source.File, tokens []token, at int) *fault {
	x := &fault{file: f, tokens: tokens, at: at}
	keyword := ""
	if tokens[0].Type == keywordKind {
		keyword = tokens[0].Value
	}
	prefix, best := chunks(tokens[:at]), 0
	for _, m := range models() {
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
	return x
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

// wantedList words what is wanted: "centre" or a point. It is empty if that
// would be more than four things.
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
	if len(list) == 0 || len(list) > 4 {
		return ""
	}
	return orList(list)
}

// orList joins with commas and a last or.
func orList(list []string) string {
	last := len(list) - 1
	if last == 0 {
		return list[0]
	}
	return strings.Join(list[:last], ", ") + " or " + list[last]
}
