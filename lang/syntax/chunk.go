package syntax

// chunk is a piece of a statement as its forms are written: a word of the
// language, or something in a word's place.
type chunk struct {
	kind chunkKind
	word string // of a wordChunk
	from int    // index of its first token
}

type chunkKind uint8

const (
	wordChunk  chunkKind = iota // centre, radius, =, (
	nameChunk                   // m
	pointChunk                  // A
	runChunk                    // AB
	valueChunk                  // 3 · 60° · 2 AB
	textChunk                   // "…"
	endChunk                    // the end of the line
)

// fills tells that got may stand where a form has want.
func (want chunk) fills(got chunk) bool {
	switch want.kind {
	case wordChunk, endChunk, textChunk:
		return want.kind == got.kind && want.word == got.word
	}
	return got.kind != wordChunk && got.kind != textChunk && got.kind != endChunk
}

// chunks reads tokens as a form would: A [i] is one piece, so are 2 AB and
// AB / 2, but B 6 is two.
func chunks(tokens []token) []chunk {
	var all []chunk
	for i := 0; i < len(tokens); {
		if tokens[i].is("about") { // it may stand before any measurement, and no form needs it
			i++
			continue
		}
		c := chunkAt(tokens, i)
		next := i + 1
		if c.kind != wordChunk {
			next = i + operand(tokens[i:])
		}
		for next < len(tokens) && c.kind >= nameChunk && c.kind <= valueChunk && continues(tokens, next) {
			if tokens[next].Type == signKind {
				next++
			}
			c.kind = valueChunk
			next += operand(tokens[next:])
		}
		all = append(all, c)
		i = next
	}
	return unlisted(all)
}

// unlisted shortens lists: of "A, B, C" only "A, C" is left, of "= CD = EF"
// only "= EF", so that a list of any length has one form.
func unlisted(all []chunk) []chunk {
	var kept []chunk
	for i := 0; i < len(all); i++ {
		if i+2 < len(all) && all[i].separates() && all[i+1].kind != wordChunk && all[i].word == all[i+2].word && all[i+2].kind == wordChunk {
			i++
			continue
		}
		kept = append(kept, all[i])
	}
	return kept
}

func (c chunk) separates() bool {
	return c.kind == wordChunk && (c.word == "," || c.word == "=" || c.word == ":")
}

func chunkAt(tokens []token, i int) chunk {
	c := chunk{from: i}
	switch t := tokens[i]; t.Type {
	case nameKind:
		c.kind = nameChunk
	case pointKind, gluedKind:
		c.kind = pointChunk
		if n := operand(tokens[i:]); tokens[i+n-1].isPoint() && n > 1 {
			c.kind = runChunk
		}
	case numberKind, angleKind:
		c.kind = valueChunk
	case textKind:
		c.kind = textChunk
	default:
		c.kind, c.word = wordChunk, t.Value
	}
	return c
}

// continues tells that the operand before tokens[i] goes on there: with a sign
// of arithmetic, or from a number to what it multiplies.
func continues(tokens []token, i int) bool {
	t, before := tokens[i], tokens[i-1]
	if t.Type == signKind {
		return t.is("+") || t.is("-") || t.is("*") || t.is("/") || t.is("²") || t.is("^")
	}
	return before.Type == numberKind && (t.isPoint() || t.Type == nameKind || units[t.Value] || t.is("("))
}

// operand is the number of tokens of the run, name, number or bracket that
// tokens begin with: at least 1 if there are any.
func operand(tokens []token) int {
	if len(tokens) == 0 {
		return 0
	}
	switch first := tokens[0]; {
	case first.is("("):
		return max(1, closing(tokens, 0)+1)
	case first.isPoint() || first.Type == nameKind:
		n := 1
		for n < len(tokens) {
			width := runPart(tokens, n)
			if width == 0 {
				break
			}
			n += width
		}
		return n
	}
	return 1
}

// runPart is the number of tokens of the index or the further point at n.
func runPart(tokens []token, n int) int {
	if tokens[n].Type == gluedKind {
		return 1
	}
	if tokens[n].is("[") {
		return max(0, closing(tokens, n)+1-n)
	}
	return 0
}

// closing is the index of the bracket that closes the one at i, or -1.
func closing(tokens []token, i int) int {
	depth := 0
	for ; i < len(tokens); i++ {
		switch t := tokens[i]; {
		case t.is("("), t.is("["):
			depth++
		case t.is(")"), t.is("]"):
			depth--
		}
		if depth == 0 {
			return i
		}
	}
	return -1
}
