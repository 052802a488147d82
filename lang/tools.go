package lang

import (
	"trammel/lang/check"
	"trammel/lang/program"
	"trammel/lang/source"
)

// ToolUse is a tool and where it is used.
type ToolUse struct {
	Tool  string // "straightedge", "compasses", "ruler", "protractor", or "outright" where none is used
	Lines []int  // of the source, ascending; a call stands for the acts in it
}

// ToolUses tells which tools a figure is made with after its givens. A figure
// of straightedge and compasses has no others.
func (r *Result) ToolUses() (uses []ToolUse) {
	if r.program == nil {
		return nil
	}
	lines := map[program.Tools][]int{}
	all := program.Tools(0)
	for _, step := range r.program.Steps {
		at := step.Span
		if len(step.Via) > 0 {
			at = step.Via[0].Span
		}
		line, _ := at.File.Position(at.Start)
		for _, tool := range step.Tools.Each() {
			if n := len(lines[tool]); n == 0 || lines[tool][n-1] < line {
				lines[tool] = append(lines[tool], line)
			}
		}
		all |= step.Tools
	}
	for _, tool := range all.Each() {
		uses = append(uses, ToolUse{tool.String(), lines[tool]})
	}
	return uses
}

// Misuse is an act that is done with a tool which may not be used.
type Misuse struct {
	Span source.Span // in the source itself; a call stands for the acts in it
	Text string      // what is done, with which tool
	Help string
}

// Beyond lists the acts of a figure that take a tool besides the allowed ones, a
// line of the source once; none where no tools are said.
func (r *Result) Beyond(allowed program.Tools) (all []Misuse) {
	if r.program == nil || allowed == 0 {
		return nil
	}
	seen := map[source.Span]bool{}
	for _, step := range r.program.Steps {
		over := allowed.Beyond(step.Tools)
		at := step.Span
		if len(step.Via) > 0 {
			at = step.Via[0].Span
		}
		if over == 0 || seen[at] {
			continue
		}
		seen[at] = true
		text, help := check.Forbidden(over)
		all = append(all, Misuse{at, text, help})
	}
	return all
}
