package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// refute draws the counter-examples to the claims of a source, each to a file
// of its own, and tells what they show.
func (c *checkCmd) refute(e *env, table io.Writer, d *drawing) {
	for _, x := range d.Result.CounterExamples() {
		name := c.counterName(d, x.Line)
		err := guard(func() error { return drawAlone(x, name) })
		if err != nil {
			e.fail(name, err)
			continue
		}
		fmt.Fprintf(table, "%s:%d\t%s\t%s\n", printable(d.name()), x.Line, "fails in", printable(name+": "+shows(x)))
	}
}

// counterName is where a counter-example goes: beside its source, or where -o says.
func (c *checkCmd) counterName(d *drawing, line int) string {
	name := lang.Base(d.path)
	if d.path == stdio {
		name = "figure"
	}
	name = fmt.Sprintf("%s-line-%d.svg", name, line)
	switch {
	case c.Out != "":
		return filepath.Join(c.Out, filepath.Dir(d.within), name)
	case d.path == stdio:
		return name
	}
	return filepath.Join(filepath.Dir(d.path), name)
}

// drawAlone draws one counter-example and writes it whole.
func drawAlone(x lang.CounterExample, name string) error {
	doc, _, err := layout.Draw(x.Figure, layout.Options{ID: lang.Base(name)})
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := doc.Write(&b, svg.Options{}); err != nil {
		return err
	}
	_, err = save(name, b.Bytes())
	return err
}

// shows is: PA − PB is 1.2 cm (C at (3, 4), arc c opening 2.5)
func shows(x lang.CounterExample) string {
	if len(x.Where) == 0 {
		return x.Why
	}
	return x.Why + " (" + strings.Join(x.Where, ", ") + ")"
}
