package source

import "strings"

// intention begins the comment that says why what looks wrong is meant.
const intention = "# intended"

// Warn adds a warning about a span, unless its line says that it is intended.
// The help suggests what would mend it.
func (l *List) Warn(at Span, text, help string) {
	if at.Intended() {
		return
	}
	p := l.Add(at, text)
	p.Severity = Warning
	p.Help = help
	if at.File == nil {
		return
	}
	if given, _ := at.intention(); given {
		p.Help += "\nor give the reason, which this line's comment lacks: " + intention + ": why"
	} else {
		p.Help += "\nor say at the end of the line that it is meant: " + intention + ": why"
	}
}

// Intended tells whether the line of a span says why what looks wrong there is meant.
func (s Span) Intended() bool {
	_, why := s.intention()
	return why != ""
}

// intention tells whether the line of a span ends in such a comment, and the
// reason that it gives, "" if none.
func (s Span) intention() (given bool, why string) {
	if s.File == nil {
		return false, ""
	}
	line, _ := s.File.Position(s.Start)
	_, comment, given := strings.Cut(s.File.Line(line), intention)
	why, reasoned := strings.CutPrefix(strings.TrimSpace(comment), ":")
	if !reasoned {
		return given, ""
	}
	return given, strings.TrimSpace(why)
}
