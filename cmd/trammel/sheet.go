package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"trammel/lang"
	"trammel/lang/source"
)

// sheetCmd is: trammel sheet worksheet [--variants 30 --seed 7] [--film] [-o folder]
type sheetCmd struct {
	Source   string   `arg:"" help:"The worksheet, or - for the standard input." complete:"sources"`
	Out      string   `short:"o" placeholder:"FOLDER" help:"Where the papers go; unsaid, beside the worksheet." complete:"folders"`
	Variants count    `placeholder:"N" help:"As many papers, each with its own measurements."`
	Seed     uint64   `default:"1" placeholder:"N" help:"Another number deals other measurements; the same one deals the same again."`
	Film     bool     `help:"Make a film for the marker too: the bands in which a result may lie."`
	Slip     float64  `default:"2" placeholder:"MM" help:"The tolerance of the film, in millimetres."`
	Turn     float64  `default:"2" placeholder:"DEGREES" help:"The tolerance of the film, in degrees."`
	Theme    theme    `placeholder:"NAME" help:"The ink: textbook, exam, slide, large-print or tactile, whatever the sources say." complete:"themes"`
	Language language `placeholder:"TAG" help:"The language of the papers, such as de, whatever the sources say." complete:"languages"`
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
	if c.Slip <= 0 || c.Slip > 20 || c.Turn <= 0 || c.Turn > 45 {
		return &usageError{"the tolerance of a film is more than 0, and at most 20 mm and 45°", ""}
	}
	in := input{filepath.Clean(c.Source), filepath.Base(c.Source), true}
	d, _ := e.compileInput(in)
	r := newReporter(e)
	r.report(d)
	switch {
	case d.failed():
		return nil
	case d.Worksheet == nil:
		e.complain(in.name(), "this is no worksheet", `a worksheet begins with: worksheet "title"; trammel build draws a figure`)
		e.raise(exitSource)
		return nil
	}
	s := &paperSet{env: e, cmd: c, sheet: d.Worksheet, name: in, n: max(1, int(c.Variants))}
	if !s.resolve(r) {
		return nil
	}
	var unset *unsetTask
	switch err := guard(s.make); {
	case errors.As(err, &unset):
		s.blame(r, unset.task, unset.text, unset.help)
	case err != nil:
		e.fail(in.name(), err)
	}
	return nil
}

// resolve makes the figures of all tasks in all variants.
func (s *paperSet) resolve(r *reporter) bool {
	good := true
	for i, set := range s.sheet.Tasks {
		t := &task{SetTask: set, number: i + 1}
		s.tasks = append(s.tasks, t)
		good = s.resolveTask(r, t) && good
	}
	return good
}

// resolveTask deals the variants of one task's figure. The seed and the place
// of the task settle what is dealt.
func (s *paperSet) resolveTask(r *reporter, t *task) bool {
	text, err := s.figureText(t.From)
	if err != nil {
		s.blame(r, t, fmt.Sprintf("%s cannot be read: %s", t.From, reason(bare(err))), "a task names a file in the worksheet's own folder, or below it")
		return false
	}
	name := filepath.Join(filepath.Dir(s.name.path), filepath.FromSlash(t.From))
	first := s.deal(t, name, text)
	r.problems(name, first.Problems)
	switch {
	case first.Problems.Failed():
		return false
	case len(t.variants) == 0:
		s.blame(r, t, "there is no figure in "+t.From, "")
		return false
	}
	return s.checkWords(r, t)
}

// deal gives a task its variants; without --variants the figure as it is built.
func (s *paperSet) deal(t *task, name string, text []byte) (first *lang.Result) {
	if s.cmd.Variants > 0 {
		t.variants, _, first = lang.Variants(name, text, s.n, s.cmd.Seed+uint64(len(s.tasks))<<32)
		return first
	}
	if first = lang.Compile(name, text); first.Figure != nil {
		t.variants = []lang.Variant{{Result: first}}
	}
	return first
}

// checkWords reports a task without words, or with places that stand for nothing.
func (s *paperSet) checkWords(r *reporter, t *task) bool {
	text, _ := t.words(0)
	if text == "" {
		s.blame(r, t, "nothing says what is to be done", `write it here, or in the figure: task "Bisect AB." for 2 marks`)
		return false
	}
	if _, unknown := t.variants[0].Worded(t.Text); unknown != "" {
		s.blame(r, t, fmt.Sprintf("{%s} stands for no choice of %s", unknown, t.From), "")
		return false
	}
	return true
}

// blame reports something at a task of the worksheet.
func (s *paperSet) blame(r *reporter, t *task, text, help string) {
	var list source.List
	list.Add(t.Span, text).Help = help
	r.problems(s.name.name(), list)
}

// figureText reads a figure's file, which stands in the worksheet's folder or below it.
func (s *paperSet) figureText(name string) ([]byte, error) {
	folder := "."
	if s.name.path != stdio {
		folder = filepath.Dir(s.name.path)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	info, err := root.Stat(filepath.FromSlash(name))
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for
		return nil, errNotRegular
	}
	f, err := root.Open(filepath.FromSlash(name))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return readAtMost(f)
}

// tolerance is that of the film.
func (c *sheetCmd) tolerance() lang.Tolerance {
	return lang.Tolerance{Millimetres: c.Slip, Degrees: c.Turn}
}

// paper is a file of the set: week3-answers.pdf
func (s *paperSet) paper(what string) string {
	name := strings.TrimSuffix(s.name.within, filepath.Ext(s.name.within))
	if s.name.path == stdio {
		name = "worksheet"
	}
	folder := s.cmd.Out
	if folder == "" {
		folder = filepath.Dir(s.name.path)
	}
	return filepath.Join(folder, name+what)
}
