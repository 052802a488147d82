package main

import (
	"fmt"
	"strings"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/svg/layout"
)

// mostTrials bounds the units that are tried for a figure that is refused.
const mostTrials = 12

// help is what would mend a refusal. Where it names a unit and something is left to
// chance, the figure is made with that unit: advice is given that has been followed.
func (d *drawing) help(r *layout.Refusal, text []byte, s style) string {
	if len(r.Units) == 0 {
		return r.Help
	}
	trials := r.Units[:min(len(r.Units), mostTrials)]
	for _, unit := range trials {
		again := lang.Compile(d.name(), inUnit(d.name(), text, unit))
		if again.Figure == nil || again.Problems.Failed() {
			continue
		}
		if _, _, err := s.lay(s.of(again.Figure), lang.Base(d.within)); err == nil {
			return fmt.Sprintf("unit %d mm would do", unit)
		}
	}
	return fmt.Sprintf("leave something out: of %d units that were tried none would do", len(trials))
}

// inUnit is a source with another unit.
func inUnit(name string, text []byte, unit int) []byte {
	file := source.NewFile(name, string(text))
	words, at := fmt.Sprintf("unit %d mm", unit), blamed(file, "unit")
	switch said := at.Text(); {
	case at.File == nil:
		return []byte(words + "\n" + file.Text)
	case !strings.HasPrefix(said, "unit"):
		words = said + "\n" + words
	}
	return []byte(file.Text[:at.Start] + words + file.Text[at.End:])
}
