package syntax

import (
	"fmt"

	"trammel/lang/source"
)

// blocks puts statements into the bodies of the blocks that hold them.
type blocks struct {
	file     *source.File
	problems *source.List
	already  int  // problems there before the parse
	full     bool // the file has more mistakes than are reported
	top      []*Statement
	lost     []source.Span // blocks whose first line was wrong
	open     []*block
	tooDeep  int // blocks opened beyond the cap and not yet closed
}

// block is one that waits for its end. The statement is nil if its first line
// was wrong: its body is read all the same.
type block struct {
	opener    token
	statement *Statement
	body      []*Statement
}

// add takes the next line and its statement, which is nil if it was wrong.
func (b *blocks) add(l line, s *Statement) {
	switch {
	case l.isEnd():
		b.close(l)
	case l.opens():
		b.begin(l, s)
	case s != nil:
		b.checkPlace(l, s)
		b.append(s)
	}
}

// tooMany tells, at the next line, that the file is not worth reading on.
func (b *blocks) tooMany(l line) bool {
	if !b.full && len(*b.problems)-b.already > maxMistake {
		b.full = true
		b.problems.Add(l.span(b.file), fmt.Sprintf("more than %d mistakes: the rest of the file is not read", maxMistake))
	}
	return b.full
}

func (b *blocks) append(s *Statement) {
	if n := len(b.open); n > 0 {
		b.open[n-1].body = append(b.open[n-1].body, s)
		return
	}
	b.top = append(b.top, s)
}

func (b *blocks) begin(l line, s *Statement) {
	if len(b.open) == maxDepth {
		if b.tooDeep == 0 {
			b.problems.Add(l.tokens[0].span(b.file), fmt.Sprintf("blocks nest deeper than %d", maxDepth))
		}
		b.tooDeep++
		return
	}
	if l.tokens[0].is("construction") && len(b.open) > 0 {
		p := b.problems.Add(l.tokens[0].span(b.file), "a construction stands at the top level, in no other block")
		p.Notes = []source.Note{b.openNote("the block that it stands in")}
	}
	b.open = append(b.open, &block{opener: l.tokens[0], statement: s})
}

// close ends the innermost block at the line l, or at the end of the file.
func (b *blocks) close(l line) {
	end := len(b.file.Text)
	if len(l.tokens) > 0 {
		end = l.tokens[0].start()
	}
	if b.tooDeep > 0 {
		b.tooDeep--
		return
	}
	n := len(b.open)
	if n == 0 {
		p := b.problems.Add(l.tokens[0].span(b.file), "this end closes nothing")
		p.Help = "end closes a step, a repeat or a construction; take it out"
		return
	}
	inner := b.open[n-1]
	b.open = b.open[:n-1]
	switch {
	case inner.statement == nil && inner.opener.is("step"):
		for _, s := range inner.body { // a step hides nothing
			b.append(s)
		}
	case inner.statement == nil:
		span := inner.opener.span(b.file)
		span.End = max(span.End, end)
		b.lost = append(b.lost, span)
	case inner.statement.Construction != nil:
		inner.statement.setBody(inner.body)
		b.top = append(b.top, inner.statement)
	default:
		inner.statement.setBody(inner.body)
		b.append(inner.statement)
	}
}

// finish reports the blocks still open, and gives the statements of the file.
func (b *blocks) finish() []*Statement {
	for len(b.open) > 0 {
		inner := b.open[len(b.open)-1]
		p := b.problems.Add(inner.opener.span(b.file), "this "+inner.opener.Value+" has no end")
		p.Help = "close it with a line that says end"
		b.tooDeep = 0
		b.close(line{})
	}
	return b.top
}

// checkPlace reports a sentence that is not the first line of a construction.
func (b *blocks) checkPlace(l line, s *Statement) {
	if s.Sentence == nil {
		return
	}
	if n := len(b.open); n > 0 && b.open[n-1].opener.is("construction") && len(b.open[n-1].body) == 0 {
		return
	}
	p := b.problems.Add(l.span(b.file), "a text alone stands only as the first line of a construction")
	p.Help = `a remark on the figure is a note: note "…" near X`
}

func (b *blocks) openNote(text string) source.Note {
	return source.Note{Span: b.open[len(b.open)-1].opener.span(b.file), Text: text}
}

func (s *Statement) setBody(body []*Statement) {
	switch {
	case s.Step != nil:
		s.Step.Body = body
	case s.Repeat != nil:
		s.Repeat.Body = body
	case s.Construction != nil:
		s.Construction.Body = body
	}
}
