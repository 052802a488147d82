package main

import (
	"bytes"
	"errors"
	"fmt"
	"math/big"
	"path/filepath"
	"strconv"
	"strings"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/lang/caption"
	"trammel/svg"
	"trammel/svg/layout"
	"trammel/svg/page"
	"trammel/svg/pdf"
)

// mm is a millimetre of paper.
const mm = 1000

// The measures of a worksheet, in micrometres.
const (
	sheetMargin = 15 * mm
	checkBar    = 50 * mm // long
	hang        = 8 * mm  // how far the words of a task stand in from its number
)

// paperSet is everything that a worksheet makes.
type paperSet struct {
	*drawing // of the worksheet, which gets the problems of its tasks
	papers
	style   style
	n       int // how many papers, each a variant
	tasks   []*task
	figures map[string]*lang.Result // as they are built, by their files
	said    caption.Speaker
}

// putPapers makes the papers of a worksheet and puts them in their places, all
// or none.
func (e *env) putPapers(d *drawing, p papers, look style) error {
	files, err := papersOf(d, p, look)
	if err != nil || d.Problems.Failed() {
		return err
	}
	return e.deliver(d, files)
}

// papersOf makes the papers of a worksheet. What is wrong with its tasks is added
// to its problems.
func papersOf(d *drawing, p papers, look style) ([]file, error) {
	s := &paperSet{drawing: d, papers: p, style: look, n: max(1, int(p.Variants)), figures: map[string]*lang.Result{}}
	s.said = caption.In(s.tag())
	if !s.resolve() {
		return nil, nil
	}
	files, err := s.files()
	var unset *unsetTask
	if errors.As(err, &unset) {
		s.blame(unset.task, unset.text, unset.help)
		return nil, nil
	}
	return files, err
}

// figure is the figure of a variant in the worksheet's ink and language.
func (s *paperSet) figure(t *task, variant int) *figure.Figure {
	f := t.variants[variant].Figure.As(s.Worksheet.Theme, s.Worksheet.Language)
	f = f.As(string(s.style.Theme), s.tag())
	loose := *f
	loose.Paper = nil // the worksheet's is what counts
	return &loose
}

// tag is the language of the papers: English unless the worksheet says another,
// whatever its figures say.
func (s *paperSet) tag() string {
	switch {
	case s.style.Language != "":
		return string(s.style.Language)
	case s.Worksheet.Language != "":
		return s.Worksheet.Language
	}
	return "en"
}

// paperKind is a file of the set, and what it has for a variant.
type paperKind struct {
	what   string
	blocks func(variant int) ([]page.Block, error)
}

// files are the papers, and the table of answers.
func (s *paperSet) files() (all []file, err error) {
	kinds := []paperKind{{"", s.tasksOf}, {"-answers", s.answersOf}}
	if s.Film {
		kinds = append(kinds, paperKind{"-film", s.filmOf})
	}
	for _, k := range kinds {
		pages, err := s.pages(k)
		if err != nil {
			return nil, err
		}
		var b bytes.Buffer
		if err := pdf.Write(&b, pages...); err != nil {
			return nil, &unfit{err}
		}
		all = append(all, file{s.paper(k.what + ".pdf"), b.Bytes()})
	}
	return append(all, file{s.paper("-answers.csv"), s.table()}), nil
}

// paper is a file of the set: week3-answers.pdf
func (s *paperSet) paper(what string) string {
	return strings.TrimSuffix(s.picture, filepath.Ext(s.picture)) + what
}

// pages sets what a kind of paper has, for all variants one after the other. A
// block has the same room in all of them, so that they have the same pages.
func (s *paperSet) pages(k paperKind) ([]*svg.Doc, error) {
	sets := make([][]page.Block, s.n)
	for variant := range sets {
		blocks, err := k.blocks(variant)
		if err != nil {
			return nil, err
		}
		sets[variant] = blocks
	}
	evenRoom(sets)
	var all []*svg.Doc
	for variant, blocks := range sets {
		f := s.format(variant)
		if k.what == "-film" {
			f.Head = f.Beside(s.Worksheet.Title, s.variantWords(variant))
		}
		pages, err := f.Set(blocks)
		if err != nil {
			return nil, err
		}
		all = append(all, pages...)
	}
	return all, nil
}

// evenRoom gives every block the height of the highest in its place.
func evenRoom(sets [][]page.Block) {
	for i := range sets[0] {
		most := 0
		for _, blocks := range sets {
			most = max(most, blocks[i].Height)
		}
		for _, blocks := range sets {
			blocks[i].Height = most
		}
	}
}

// unsetTask is a task that no page can take.
type unsetTask struct {
	*task
	text, help string
}

// Error is the fact.
func (u *unsetTask) Error() string { return u.text }

// unset blames a task for what the layout or the page refuses in a variant.
func unset(t *task, variant int, err error) error {
	var refused *layout.Refusal
	if errors.As(err, &refused) {
		return &unsetTask{t, t.dealt(variant) + t.From + ": " + refused.Text, refused.Help}
	}
	return &unsetTask{t, t.dealt(variant) + err.Error(), "give the worksheet larger paper, the task less room, or the figure smaller measurements; with a smaller unit its centimetres are no longer those of the paper"}
}

// format is the sheet of a paper.
func (s *paperSet) format(variant int) *page.Format {
	w, h := 210*mm, 297*mm
	if p := s.Worksheet.Paper; p != nil {
		w, h = micrometres(p.Width), micrometres(p.Height)
	}
	f := &page.Format{
		Width: w, Height: h, Margin: sheetMargin, Text: 2500,
		Sans: s.theme() == "large-print", Lang: s.said.Tag(), Title: s.Worksheet.Title,
	}
	if f.Sans {
		f.Text = 4500 // 18 pt
	}
	if s.n > 1 {
		f.Head = f.Beside("", s.variantWords(variant))
	}
	f.Number = func(page, of int) string {
		return s.said.Say("sheet.page", caption.Texts{"page": strconv.Itoa(page), "of": strconv.Itoa(of)})
	}
	f.Foot = f.Bar(checkBar, s.said.Say("sheet.bar", caption.Texts{"length": "50 mm"})) // clear of the number
	return f
}

// variantWords is: Variant 3. It is "" where there is one paper only.
func (s *paperSet) variantWords(variant int) string {
	if s.n == 1 {
		return ""
	}
	return s.said.Say("sheet.variant", caption.Texts{"n": strconv.Itoa(variant + 1)})
}

func (s *paperSet) theme() string {
	if s.style.Theme != "" {
		return string(s.style.Theme)
	}
	return s.Worksheet.Theme
}

// tasksOf is the paper that a pupil gets.
func (s *paperSet) tasksOf(variant int) ([]page.Block, error) {
	f := s.format(variant)
	blocks := []page.Block{
		f.Heading(s.Worksheet.Title),
		f.Blanks(s.said.Say("sheet.name", nil), s.said.Say("sheet.date", nil)),
	}
	for _, text := range s.Worksheet.Instructions {
		blocks = append(blocks, f.Paragraph(text, 0))
	}
	blocks[len(blocks)-1] = s.spaced(blocks[len(blocks)-1])
	for _, t := range s.tasks {
		fig := s.figure(t, variant)
		doc, err := layout.Handout(fig, t.Hint, layout.Options{Asked: t.asked(variant)})
		if err != nil {
			return nil, unset(t, variant, err)
		}
		room := 0
		if t.Room != nil {
			room = micrometres(t.Room)
		}
		drawing, err := f.Drawing(t.name(), doc, room)
		if err != nil {
			return nil, unset(t, variant, err)
		}
		if blocks, err = s.with(blocks, f, t, variant, page.Together(s.question(f, t, variant), drawing)); err != nil {
			return nil, err
		}
	}
	return blocks, nil
}

// question is a task's number, its words and its marks.
func (s *paperSet) question(f *page.Format, t *task, variant int) page.Block {
	text, marks := t.words(variant)
	if marks > 0 {
		key := "sheet.marks"
		if marks == 1 {
			key = "sheet.mark"
		}
		text += " " + s.said.Say(key, caption.Texts{"n": strconv.Itoa(marks)})
	}
	return f.Numbered(strconv.Itoa(t.number)+".", svg.Lowered(text), hang)
}

// title is: Task 3
func (s *paperSet) title(t *task) string {
	return s.said.Say("sheet.task", caption.Texts{"n": strconv.Itoa(t.number)})
}

// with adds a task's block, which has to fit on a page and have letters for its words.
func (s *paperSet) with(blocks []page.Block, f *page.Format, t *task, variant int, b page.Block) ([]page.Block, error) {
	b.Name = t.name()
	if letter := b.Lacks(); letter != 0 {
		return nil, &unsetTask{t, fmt.Sprintf("the letter %c is in none of the faces inside trammel", letter), "write it in other letters"}
	}
	if err := f.Fits(b); err != nil {
		return nil, unset(t, variant, err)
	}
	return append(blocks, s.spaced(b)), nil
}

func (s *paperSet) spaced(b page.Block) page.Block {
	b.Gap = 6 * mm
	return b
}

// answersOf is the answer sheet: the whole constructions, and what is to be measured.
func (s *paperSet) answersOf(variant int) ([]page.Block, error) {
	f := s.format(variant)
	blocks := []page.Block{f.Heading(s.said.Say("sheet.answers", caption.Texts{"title": s.Worksheet.Title}))}
	for _, t := range s.tasks {
		doc, _, err := layout.Draw(s.figure(t, variant), layout.Options{Tight: true})
		if err != nil {
			return nil, unset(t, variant, err)
		}
		drawing, err := f.Drawing(t.name(), doc, 0)
		if err != nil {
			return nil, unset(t, variant, err)
		}
		parts := []page.Block{s.question(f, t, variant), drawing}
		for _, a := range t.variants[variant].Answers() {
			parts = append(parts, f.Paragraph(svg.Lowered(s.answerLine(t, variant, a)), hang))
		}
		if line := s.workLine(t, variant); line != "" {
			small := *f
			small.Text = f.Text * 4 / 5
			parts = append(parts, small.Paragraph(line, hang))
		}
		if blocks, err = s.with(blocks, f, t, variant, page.Together(parts...)); err != nil {
			return nil, err
		}
	}
	return blocks, nil
}

// answerLine is: AX = 3√2 cm ≈ 4.242641 cm, measured 42 mm
func (s *paperSet) answerLine(t *task, variant int, a lang.Answer) string {
	numbers := s.figure(t, variant).Locale().Numbers
	a.Expr = s.said.Spoken(strings.ReplaceAll(a.Expr, " * ", " · "))
	if a.Problem != "" {
		return a.Expr + ": " + a.Problem
	}
	return s.said.Say("sheet.answer", caption.Texts{"answer": numbers(sentence(a)), "measured": numbers(a.Measured)})
}

// workLine is with which tools a task's figure is made, and, where those are
// straightedge and compasses, how many operations that takes.
func (s *paperSet) workLine(t *task, variant int) string {
	r := t.variants[variant]
	var tools []string
	for _, use := range r.ToolUses() {
		if use.Tool != "outright" {
			tools = append(tools, s.said.Say("sheet."+use.Tool, nil))
		}
	}
	if len(tools) == 0 {
		return ""
	}
	line := s.said.Say("sheet.tools", caption.Texts{"tools": strings.Join(tools, ", ")})
	if o := r.Operations(); o.Beyond == 0 && o.Simplicity() > 0 {
		line += " " + s.said.Say("sheet.counts", caption.Texts{
			"symbol": o.String(), "simplicity": strconv.Itoa(o.Simplicity()), "exactitude": strconv.Itoa(o.Exactitude()),
		})
	}
	return line
}

// filmOf is what a marker lays over the pupil's work: a page for each task.
func (s *paperSet) filmOf(variant int) ([]page.Block, error) {
	f := s.format(variant)
	var blocks []page.Block
	for _, t := range s.tasks {
		doc, err := layout.Film(s.figure(t, variant), t.variants[variant].Bands(s.tolerance()), layout.Options{})
		if err != nil {
			return nil, unset(t, variant, err)
		}
		drawing, err := f.Drawing(t.name(), doc, 0)
		if err != nil {
			return nil, unset(t, variant, err)
		}
		numbers := s.figure(t, variant).Locale().Numbers
		words := s.said.Say("sheet.film", caption.Texts{
			"task": s.title(t), "slip": numbers(strconv.FormatFloat(s.Slip, 'f', -1, 64)), "turn": numbers(strconv.FormatFloat(s.Turn, 'f', -1, 64)),
		})
		b := page.Together(f.Paragraph(words, 0), drawing)
		b.Break = true
		if blocks, err = s.with(blocks, f, t, variant, b); err != nil {
			return nil, err
		}
	}
	return blocks, nil
}

func micrometres(millimetres *big.Rat) int {
	f, _ := millimetres.Float64()
	return int(f * mm)
}
