package main

import (
	"fmt"
	"runtime"
	"text/tabwriter"
)

// checkCmd is: trammel check [files or folders]
type checkCmd struct {
	Sources []string `arg:"" optional:"" help:"Sources, folders of sources, or - for the standard input; nothing is the current folder."`
}

// Help is the part of the help that teaches.
func (checkCmd) Help() string {
	return `Says of each claim of a figure that it holds, with its line. A claim that does
not hold is an error, which says by how much it fails. Nothing is drawn.

    trammel check first.trm
    first.trm:6  holds  AB = BC
`
}

// Run checks the sources.
func (c *checkCmd) Run(e *env) error {
	list, failed, err := inputs(c.Sources, func(string) {})
	if err != nil {
		return err
	}
	t := tally{reporter: newReporter(e), failed: len(failed)}
	t.unread(failed)
	table := tabwriter.NewWriter(e.stdout, 0, 0, 2, ' ', 0)
	claims := 0
	work := func(in input) *drawing {
		d, _ := e.compileInput(in)
		return d
	}
	inOrder(list, runtime.GOMAXPROCS(0), work, func(d *drawing) {
		t.add(d)
		claims += tabulate(table, d)
	})
	if err := table.Flush(); err != nil {
		e.fail("<stdout>", err)
	}
	if len(list) != 1 || !list[0].named {
		fmt.Fprintln(e.stderr, t.summary("with "+counted(claims, "claim")+" checked"))
	} else if claims == 0 && e.status == exitGood {
		fmt.Fprintf(e.stderr, "%s: nothing is claimed in it\n", printable(list[0].path))
	}
	return nil
}

// tabulate writes the claims of a source, a row each, and counts them.
func tabulate(table *tabwriter.Writer, d *drawing) int {
	for _, c := range d.Claims {
		verdict := "fails"
		switch {
		case c.Holds:
			verdict = "holds"
		case !c.Decided:
			verdict = "not decided"
		}
		fmt.Fprintf(table, "%s:%d\t%s\t%s\n", printable(d.name()), c.Line, verdict, printable(c.Text))
	}
	return len(d.Claims)
}
