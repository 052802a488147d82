package main

import (
	"errors"
	"fmt"
	"io"
	"math"

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
// one with a screen's shape.
func stepPages(frames []layout.Frame, theme string) ([]*svg.Doc, error) {
	first := frames[0].Doc
	sheet := page.Format{
		Width: a4Wide, Height: a4Tall, Margin: stepMargin, Text: stepText,
		Sans: theme == "large-print", Lang: first.Lang, Title: first.Title,
		Number: func(page, of int) string { return fmt.Sprintf("%d/%d", page, of) },
	}
	if theme == "large-print" {
		sheet.Text *= 2
	}
	if theme != "slide" && first.Width <= sheet.Wide() {
		if docs, err := below(&sheet, frames); err == nil {
			return docs, nil
		}
	}
	return slides(sheet, frames)
}

// setter sets frames on pages of a format, one each.
type setter func(*page.Format, []layout.Frame) ([]*svg.Doc, error)

// slides sets the words below the drawing or beside it, whichever lets figure and
// words be larger on the screen.
func slides(sheet page.Format, frames []layout.Frame) ([]*svg.Doc, error) {
	docs, cost, err := smallest(sheet, frames, below)
	if facing, less, _ := smallest(sheet, frames, beside); less < cost {
		return facing, nil
	}
	return docs, err
}

// smallest sets frames on the smallest page with a screen's shape that takes them.
// Words on it are a 27th as high as the screen; where they are too many, smaller.
// Small words count as a large page: the cost is the page's width for the words' height.
func smallest(sheet page.Format, frames []layout.Frame, set setter) (docs []*svg.Doc, cost int, err error) {
	first := frames[0].Doc
	least := max(screenWide, first.Width, first.Height*16/9)
	for share := 48; share <= 192; share += 6 {
		for sheet.Width = least; sheet.Width < 2*least; sheet.Width += 10_000 {
			sheet.Height, sheet.Text, sheet.Margin = sheet.Width*9/16, sheet.Width/share, sheet.Width/32
			docs, err = set(&sheet, frames)
			tall, wide := (*page.TooLarge)(nil), (*page.TooWide)(nil)
			if !errors.As(err, &tall) && !errors.As(err, &wide) {
				return docs, sheet.Width * share, err
			}
		}
	}
	return nil, math.MaxInt, err
}

// below sets each frame on a page with the title above and the caption below.
func below(sheet *page.Format, frames []layout.Frame) ([]*svg.Doc, error) {
	sheet.Head = sheet.Heading(sheet.Title)
	return setSteps(sheet, frames, func(name string, f layout.Frame) (page.Block, error) {
		drawing, err := sheet.Drawing(name, f.Doc, sheet.Text)
		return page.Together(drawing, sheet.Paragraph(svg.Lowered(f.Caption), 0)), err
	})
}

// beside sets each frame at the right of its words, which take a third of the page.
func beside(sheet *page.Format, frames []layout.Frame) ([]*svg.Doc, error) {
	return setSteps(sheet, frames, func(name string, f layout.Frame) (page.Block, error) {
		return sheet.Facing(sheet.Wide()/3, func(column *page.Format) page.Block {
			return page.Together(column.Heading(sheet.Title), column.Paragraph(svg.Lowered(f.Caption), 0))
		}, name, f.Doc)
	})
}

// setSteps sets a page for each frame.
func setSteps(sheet *page.Format, frames []layout.Frame, set func(name string, f layout.Frame) (page.Block, error)) ([]*svg.Doc, error) {
	var blocks []page.Block
	for i, f := range frames {
		step, err := set(fmt.Sprintf("step %d", i+1), f)
		if err != nil {
			return nil, err
		}
		step.Break = true
		blocks = append(blocks, step)
	}
	docs, err := sheet.Set(blocks)
	for i := range docs {
		docs[i].Desc = frames[i].Doc.Desc
	}
	return docs, err
}
