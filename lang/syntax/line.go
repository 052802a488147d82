package syntax

import "trammel/lang/source"

// line is one statement's tokens: a line of the source, or several when all
// but the last end with a comma.
type line struct {
	tokens []token
	stray  bool // its final comma was reported and dropped
}

func (l line) span(f *source.File) source.Span {
	return l.tokens[0].span(f).To(l.tokens[len(l.tokens)-1].span(f))
}

// broken tells that a token of the line has been reported already.
func (l line) broken() bool {
	for _, t := range l.tokens {
		if t.Type == badKind {
			return true
		}
	}
	return false
}

// noteComma adds to the problems after the first already ones where they stand
// after a comma that carried the statement to another line.
func (l line) noteComma(f *source.File, problems *source.List, already int) {
	for _, p := range (*problems)[already:] {
		for i := 1; i < len(l.tokens); i++ {
			comma, t := l.tokens[i-1], l.tokens[i]
			if t.start() == p.Span.Start && comma.is(",") && comma.Pos.Line < t.Pos.Line {
				p.Notes = append(p.Notes, source.Note{Span: comma.span(f), Text: "the comma here carries the statement on"})
			}
		}
	}
}

func (l line) isEnd() bool { return l.tokens[0].is("end") && len(l.tokens) == 1 }

// opens tells that the line, right or wrong, begins a block.
func (l line) opens() bool {
	first := l.tokens[0]
	if first.is("step") {
		return len(l.tokens) < 2 || !l.tokens[1].is("off")
	}
	return first.is("repeat") || first.is("construction")
}

// cut puts the tokens of a file together to statements.
func cut(f *source.File, tokens []token, problems *source.List) []line {
	var lines []line
	var now []token
	end := func(stray bool) {
		if stray {
			reportComma(f, now[len(now)-1], problems)
			now = now[:len(now)-1]
		}
		if len(now) > 0 {
			lines = append(lines, line{now, stray})
		}
		now = nil
	}
	already := len(*problems)
	for i, t := range tokens {
		switch {
		case len(*problems)-already > maxMistake:
			return lines
		case t.Type == commentKind:
		case t.Type != lineEndKind:
			now = append(now, t)
		case len(now) == 0 || !now[len(now)-1].is(","):
			end(false)
		case strayComma(now, tokens[i+1:]):
			end(true)
		}
	}
	end(len(now) > 0 && now[len(now)-1].is(","))
	return lines
}

// strayComma tells that a line cannot go on after its final comma: what
// follows is a blank line, the start of another statement, or nothing.
func strayComma(now, rest []token) bool {
	for len(rest) > 1 && rest[0].Type == commentKind {
		rest = rest[2:] // with its line end
	}
	if len(rest) == 0 || rest[0].Type == lineEndKind {
		return true
	}
	if now[0].is("construction") && (rest[0].is("line") || rest[0].is("circle")) {
		return false
	}
	return rest[0].Type == keywordKind && starts[rest[0].Value]
}

func reportComma(f *source.File, comma token, problems *source.List) {
	p := problems.Add(comma.span(f), "stray comma")
	p.Help = "a line goes on after a comma; leave it out if the statement is complete"
}
