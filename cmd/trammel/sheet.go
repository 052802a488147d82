package main

import (
	"cmp"
	"errors"
	"os"
	"path/filepath"

	"trammel/lang"
)

// sheetCmd is: trammel sheet worksheet [--variants 30 --seed 7] [--film] [-o folder]
type sheetCmd struct {
	Source string `arg:"" help:"The worksheet, or - for the standard input." complete:"sources"`
	Out    string `short:"o" placeholder:"FOLDER" help:"Where the papers go; unsaid, beside the worksheet." complete:"folders"`
	papers
	Theme    theme    `placeholder:"NAME" help:"The ink: textbook, exam, slide, large-print or tactile, whatever the sources say." complete:"themes"`
	Language language `placeholder:"TAG" help:"The language of the papers, such as de, whatever the sources say." complete:"languages"`
}

// papers is which papers are made of a worksheet.
type papers struct {
	Variants count   `placeholder:"N" help:"As many papers of a worksheet, each with its own measurements."`
	Seed     uint64  `default:"1" placeholder:"N" help:"Another number deals other measurements; the same one deals the same again."`
	Film     bool    `help:"Make a film for the marker of a worksheet too: the bands in which a result may lie."`
	Slip     float64 `default:"2" placeholder:"MM" help:"The tolerance of the film, in millimetres."`
	Turn     float64 `default:"2" placeholder:"DEGREES" help:"The tolerance of the film, in degrees."`
}

// Help is the part of the help that teaches.
func (sheetCmd) Help() string {
	return `Makes the papers of a worksheet as PDF, true to scale: the tasks with what is
given and room to work, and the answers with the whole constructions. A worksheet is
a source that names figures:

    worksheet "Perpendiculars"
    instructions "Use ruler and compasses only. Leave every arc."
    task from "erect.trm" for 3 marks
    task "Drop the perpendicular from P to m." from "drop.trm", hint 2 steps

    trammel sheet week3.trm                           week3.pdf, week3-answers.pdf
    trammel sheet week3.trm --film                    week3-film.pdf too
    trammel sheet week3.trm --variants 30 --seed 7    30 papers, and the answers as a
                                                      table too: week3-answers.csv

In variants, what a figure says with choose is dealt anew; nothing else differs.
The table is for spreadsheets: UTF-8, cells parted by commas, numbers with a decimal
point and their units beside them; a row for each task with its marks, and one for
each value that was dealt or is asked for.
`
}

// Run makes the papers.
func (c *sheetCmd) Run(e *env) error {
	if c.Source != stdio && !isSource(c.Source) {
		return &usageError{c.Source + " is no source: the name of a source ends in .trm", `"-" reads any text from the standard input`}
	}
	if c.Source == stdio && c.Out == "" {
		return &usageError{"papers from the standard input have no folder to go to", "say one: -o papers/"}
	}
	if err := errors.Join(c.inBounds(), c.papers.used(), c.placed()); err != nil {
		return err
	}
	in := input{filepath.Clean(c.Source), filepath.Base(c.Source), true}
	d := e.draw(job{in, c.place(in)}, style{Theme: c.Theme, Language: c.Language}, &c.papers)
	newReporter(e).report(d)
	if !d.failed() && d.Worksheet == nil {
		e.complain(in.name(), "this is no worksheet", `a worksheet begins with: worksheet "title"; trammel build draws a figure`)
		e.raise(exitSource)
	}
	if d.Worksheet != nil {
		e.noteWords(cmp.Or(string(c.Language), d.Worksheet.Language))
	}
	for _, name := range d.written {
		e.print(printable(name) + "\n")
	}
	return nil
}

// placed refuses what is no folder.
func (c *sheetCmd) placed() error {
	info, err := os.Stat(c.Out)
	switch {
	case c.Out == stdio:
		return &usageError{"papers are several files, and the standard output is one", "name a folder: -o papers/"}
	case err == nil && !info.IsDir():
		return &usageError{c.Out + " is a file, and the papers go to a folder", "name a folder: -o papers/"}
	}
	return nil
}

// place is where the pupils' paper goes.
func (c *sheetCmd) place(in input) string {
	if in.path == stdio {
		return filepath.Join(c.Out, "worksheet.pdf")
	}
	return pictures{Out: c.Out, style: style{Format: "pdf"}}.pictureOf(in)
}

// allPapers are all kinds, for a look at whether they can be made.
var allPapers = papers{Seed: 1, Film: true, Slip: 2, Turn: 2}

// inBounds refuses a tolerance that makes no film.
func (p papers) inBounds() error {
	if p.Slip <= 0 || p.Slip > 20 || p.Turn <= 0 || p.Turn > 45 {
		return &usageError{"the tolerance of a film is more than 0, and at most 20 mm and 45°", ""}
	}
	return nil
}

// used refuses what has no effect on the papers that are made.
func (p papers) used() error {
	switch {
	case !p.Film && (p.Slip != allPapers.Slip || p.Turn != allPapers.Turn):
		return &usageError{"--slip and --turn are for the film, and none is made", "say --film too"}
	case p.Variants == 0 && p.Seed != allPapers.Seed:
		return &usageError{"--seed is for variants, and none are made", "say how many: --variants 30"}
	}
	return nil
}

// tolerance is that of the film.
func (p papers) tolerance() lang.Tolerance {
	return lang.Tolerance{Millimetres: p.Slip, Degrees: p.Turn}
}
