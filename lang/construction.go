package lang

import (
	"trammel/lang/caption"
	"trammel/lang/check"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// ToldNumber is what a number parameter is told with.
const ToldNumber = 3

// Construction is what the hand does in a construction.
type Construction struct {
	Captions   []string // in words, the parameters by their own names, a number being ToldNumber
	Operations program.Operations
}

// Tell tells the last construction of a text; nil where there is none without fault.
func Tell(path string, text []byte, tag string) *Construction {
	var problems source.List
	tree := syntax.Parse(source.NewFile(path, string(text)), &problems)
	p := check.Rehearse(tree, newLoader(path, &problems), ToldNumber)
	if p == nil || problems.Failed() {
		return nil
	}
	c := &Construction{Operations: p.Operations}
	for _, text := range caption.Of(p, tag) {
		if text != "" {
			c.Captions = append(c.Captions, text)
		}
	}
	return c
}
