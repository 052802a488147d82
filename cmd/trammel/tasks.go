package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"trammel/lang"
	"trammel/lang/source"
)

// task is a task of the worksheet with its figures, one for each paper.
type task struct {
	lang.SetTask
	number   int // from 1
	variants []lang.Variant
}

// words are what is to be done, and for how many marks, in a variant.
func (t *task) words(variant int) (text string, marks int) {
	v := t.variants[variant]
	text, marks = v.Task()
	if t.Text != "" {
		text, _ = v.Worded(t.Text)
	}
	if t.Marks > 0 {
		marks = t.Marks
	}
	return text, marks
}

// pointName is the name of a point in an expression.
var pointName = regexp.MustCompile(`\p{Lu}[0-9]*['′]*`)

// asked are the points by which the answers are measured.
func (t *task) asked(variant int) (names []string) {
	for _, a := range t.variants[variant].Answers() {
		names = append(names, pointName.FindAllString(a.Expr, -1)...)
	}
	return names
}

// name is what messages call the task.
func (t *task) name() string { return fmt.Sprintf("task %d", t.number) }

// dealt is, before a message: with a = 4.5 cm, b = 6 cm: . It is "" for a figure
// without choices.
func (t *task) dealt(variant int) string {
	var all []string
	for _, v := range t.variants[variant].Varied() {
		all = append(all, v.Name+" = "+v.Value)
	}
	if len(all) == 0 {
		return ""
	}
	return "with " + strings.Join(all, ", ") + ": "
}

// resolve makes the figures of all tasks in all variants.
func (s *paperSet) resolve() bool {
	good := true
	for i, set := range s.Worksheet.Tasks {
		t := &task{SetTask: set, number: i + 1}
		s.tasks = append(s.tasks, t)
		good = s.resolveTask(t) && good
	}
	return good
}

// resolveTask deals the variants of one task's figure. The seed and the place
// of the task settle what is dealt.
func (s *paperSet) resolveTask(t *task) bool {
	first := s.figureOf(t)
	if first == nil || first.Problems.Failed() {
		return false
	}
	if first.Figure == nil {
		s.blame(t, "there is no figure in "+t.From, "")
		return false
	}
	if s.Variants == 0 {
		t.variants = []lang.Variant{{Result: first}}
		return s.checkTools(t) && s.checkWords(t)
	}
	var problems source.List
	var passed []lang.PassedOver
	t.variants, passed, problems = first.Variants(s.n, s.Seed+uint64(t.number)<<32)
	s.Problems = append(s.Problems, problems...)
	s.warnOfRepeats(t, passed)
	return !problems.Failed() && s.checkTools(t) && s.checkWords(t)
}

// warnOfRepeats tells that there are fewer sets of values than papers, and which
// were left out.
func (s *paperSet) warnOfRepeats(t *task, passed []lang.PassedOver) {
	different := map[string]bool{}
	for _, v := range t.variants {
		different[fmt.Sprint(v.Values)] = true
	}
	if n := len(different); n == 0 || n == len(t.variants) || len(t.variants[0].Values) == 0 {
		return
	}
	help := "choose from more values"
	for _, p := range passed[:min(len(passed), mostLeftOut)] {
		help += "; left out: " + p.String()
	}
	s.Problems.Warn(t.Span, fmt.Sprintf("%s repeats: %s of values for %d papers", t.name(), counted(len(different), "set"), len(t.variants)), help)
}

// mostLeftOut is how many sets of values that are not dealt are named.
const mostLeftOut = 3

// figureOf resolves the figure that a task sets, as it is built; tasks that set
// the same one share it. It is nil if the file cannot be read.
func (s *paperSet) figureOf(t *task) *lang.Result {
	name := filepath.Join(filepath.Dir(s.path), filepath.FromSlash(t.From))
	if first, ok := s.figures[name]; ok {
		return first
	}
	s.Files = append(s.Files, name)
	text, err := s.figureText(t.From)
	if err != nil {
		s.blame(t, fmt.Sprintf("%s cannot be read: %s", t.From, reason(bare(err))), "a task names a file in the worksheet's own folder, or below it")
		return nil
	}
	first := lang.Compile(name, text)
	s.figures[name] = first
	s.Files = append(s.Files, first.Files...)
	s.Problems = append(s.Problems, first.Problems...)
	return first
}

// checkWords reports a task without words, or with places that stand for nothing.
func (s *paperSet) checkWords(t *task) bool {
	text, _ := t.words(0)
	if text == "" {
		s.blame(t, "nothing says what is to be done", `write it here, or in the figure: task "Bisect AB." for 2 marks`)
		return false
	}
	if _, unknown := t.variants[0].Worded(t.Text); unknown != "" {
		s.blame(t, fmt.Sprintf("{%s} stands for no choice of %s", unknown, t.From), "")
		return false
	}
	if twice := t.variants[0].Doubled(t.Text); twice != "" {
		s.blame(t, fmt.Sprintf("%s has its unit twice: it is chosen with one, which goes into its place", twice), "leave the unit out of the text")
		return false
	}
	return true
}

// checkTools reports the acts of a task's figure that take a tool which the
// worksheet forbids.
func (s *paperSet) checkTools(t *task) bool {
	misused := t.variants[0].Beyond(s.Worksheet.Using)
	for _, m := range misused {
		p := s.blame(t, fmt.Sprintf("%s: %s, and this worksheet is done using %s only", t.name(), m.Text, s.Worksheet.Using), m.Help)
		p.Notes = append(p.Notes, source.Note{Span: m.Span, Text: "here"})
	}
	return len(misused) == 0
}

// blame reports something at a task of the worksheet.
func (s *paperSet) blame(t *task, text, help string) *source.Problem {
	p := s.Problems.Add(t.Span, text)
	p.Help = help
	return p
}

// figureText reads a figure's file, which stands in the worksheet's folder or below it.
func (s *paperSet) figureText(name string) ([]byte, error) {
	folder := "."
	if s.path != stdio {
		folder = filepath.Dir(s.path)
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
