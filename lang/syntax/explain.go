package syntax

import "trammel/lang/source"

var starts = wordSet("figure")

func explain(f *source.File, l line, at int, problems *source.List) {
	sp := l.span(f)
	if at < len(l.tokens) {
		sp = l.tokens[at].span(f)
	}
	problems.Add(sp, "not understood here")
}

func sound(f *source.File, l line, s *Statement, problems *source.List) bool { return true }
