package main

import (
	"errors"
	"fmt"
	"io"

	"trammel/svg"
	"trammel/svg/layout"
	"trammel/svg/page"
	"trammel/svg/pdf"
)

// pages writes a PDF: the drawing by itself, or a page for each step with the
// title above and the caption below.
func (s style) pages(w io.Writer, frames []layout.Frame, theme string) error {
	if !s.Steps {
		return pdf.Write(w, frames[0].Doc)
	}
	docs, err := stepPages(frames, theme)
	if err != nil {
		return err
	}
	return pdf.Write(w, docs...)
}

// Sheets for steps, in micrometres: A4, and a screen's shape, 16 to 9.
const (
	a4Wide, a4Tall       = 210_000, 297_000
	screenWide           = 150_000 // at the least
	stepMargin, stepText = 15_000, 3500
)

// stepPages sets each frame on a page: for slides, and where A4 has no room, on
// one with a screen's shape, no larger than it has to be, so that the figure
// fills the screen; there the words are so high for its width.
func stepPages(frames []layout.Frame, theme string) ([]*svg.Doc, error) {
	first := frames[0].Doc
	sheet := &page.Format{
		Width: a4Wide, Height: a4Tall, Margin: stepMargin, Text: stepText,
		Sans: theme == "large-print", Lang: first.Lang, Title: first.Title,
		Number: func(page, of int) string { return fmt.Sprintf("%d/%d", page, of) },
	}
	if theme == "large-print" {
		sheet.Text *= 2
	}
	if theme != "slide" && first.Width <= sheet.Wide() {
		if docs, err := stepsOn(sheet, frames); err == nil {
			return docs, nil
		}
	}
	for sheet.Width = max(screenWide, first.Width*9/8); ; sheet.Width += 10_000 {
		sheet.Height, sheet.Text, sheet.Margin = sheet.Width*9/16, sheet.Width/64, sheet.Width/32
		docs, err := stepsOn(sheet, frames)
		if tall := (*page.TooLarge)(nil); !errors.As(err, &tall) {
			return docs, err
		}
	}
}

// stepsOn sets the frames on pages of a format.
func stepsOn(sheet *page.Format, frames []layout.Frame) ([]*svg.Doc, error) {
	sheet.Head = sheet.Heading(sheet.Title)
	var blocks []page.Block
	for i, f := range frames {
		drawing, err := sheet.Drawing(fmt.Sprintf("step %d", i+1), f.Doc, sheet.Text)
		if err != nil {
			return nil, err
		}
		step := page.Together(drawing, sheet.Paragraph(f.Caption, 0))
		step.Break = true
		blocks = append(blocks, step)
	}
	docs, err := sheet.Set(blocks)
	for i := range docs {
		docs[i].Desc = frames[i].Doc.Desc
	}
	return docs, err
}
