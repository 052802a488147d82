// Package page sets text and finished drawings on the pages of a sheet, at
// their true size. What belongs together is a block, and no block is split.
package page

import (
	"fmt"

	"trammel/svg"
)

// mm is a millimetre of paper.
const mm = 1000

// Format is a sheet and how it is filled. Lengths are micrometres.
type Format struct {
	Width, Height int
	Margin        int
	Sans          bool // as large print asks
	Text          int  // height of a capital of the text
	Lang          string
	Title         string // of the document, for readers of its properties

	Head, Foot Block // on every page, at its upper and its lower margin
	// Number words the number of a page, at the right of its foot; nil for none.
	Number func(page, of int) string
}

// Block is a part of a page, with its origin at its upper left corner.
type Block struct {
	Height int
	Items  []svg.Item
	Gap    int    // clear paper before the next block
	Break  bool   // it begins a page
	Name   string // what a message calls it
}

// Lacks is the first letter of a block that no embedded face has, or 0.
func (b Block) Lacks() rune {
	for _, item := range b.Items {
		if t, ok := item.(svg.Text); ok && t.Set().Lacks != 0 {
			return t.Set().Lacks
		}
	}
	return 0
}

// Wide is how wide a block may be.
func (f *Format) Wide() int { return f.Width - 2*f.Margin }

// Tall is how high a block may be.
func (f *Format) Tall() int { return f.Height - 2*f.Margin - f.headRoom() - f.footRoom() }

// footLine is how far below the top of the foot its words stand.
func (f *Format) footLine() int {
	for _, item := range f.Foot.Items {
		if t, ok := item.(svg.Text); ok {
			return t.At.Y
		}
	}
	return f.Foot.Height
}

func (f *Format) headRoom() int {
	if f.Head.Height == 0 {
		return 0
	}
	return f.Head.Height + 4*mm
}

func (f *Format) footRoom() int {
	if f.Foot.Height == 0 && f.Number == nil {
		return 0
	}
	return max(f.Foot.Height, f.Text) + 4*mm
}

// TooLarge is a block that fits on no page.
type TooLarge struct {
	Name       string
	Need, Have int // height
}

// Error says by how much.
func (e *TooLarge) Error() string {
	return fmt.Sprintf("%s takes %.1f mm of paper from top to bottom, and a page has %.1f mm", e.Name, float64(e.Need)/mm, float64(e.Have)/mm)
}

// Fits is a *TooLarge for a block that no page takes.
func (f *Format) Fits(b Block) error {
	if b.Height > f.Tall() {
		return &TooLarge{b.Name, b.Height, f.Tall()}
	}
	return nil
}

// Set sets the blocks on pages, one below the other, and begins a new page where
// the next block does not fit. The error is a *TooLarge.
func (f *Format) Set(blocks []Block) ([]*svg.Doc, error) {
	var pages [][]svg.Item
	at := f.Tall() + 1 // no page has begun
	for _, b := range blocks {
		if err := f.Fits(b); err != nil {
			return nil, err
		}
		if b.Break || at+b.Height > f.Tall() {
			pages, at = append(pages, nil), 0
		}
		last := &pages[len(pages)-1]
		*last = append(*last, svg.Moved(b.Items, svg.XY{X: f.Margin, Y: f.Margin + f.headRoom() + at})...)
		at += b.Height + b.Gap
	}
	var docs []*svg.Doc
	for i, items := range pages {
		docs = append(docs, f.finish(items, i+1, len(pages)))
	}
	return docs, nil
}

// finish gives a page its head, its foot and its number.
func (f *Format) finish(items []svg.Item, page, of int) *svg.Doc {
	bottom := f.Height - f.Margin
	items = append(items, svg.Moved(f.Head.Items, svg.XY{X: f.Margin, Y: f.Margin})...)
	items = append(items, svg.Moved(f.Foot.Items, svg.XY{X: f.Margin, Y: bottom - f.Foot.Height})...)
	if f.Number != nil {
		t := f.line(f.Number(page, of), f.Text*4/5)
		t.At = svg.XY{X: f.Width - f.Margin - svg.Measure(t).Advance, Y: bottom - f.Foot.Height + f.footLine()}
		items = append(items, t)
	}
	return &svg.Doc{Width: f.Width, Height: f.Height, Lang: f.Lang, Title: f.Title, Groups: []svg.Group{{Class: "page", Items: items}}}
}

// Drawing is a block with a drawing of true size at its left edge, in so far as
// it is not too wide. Room is clear paper below it.
func (f *Format) Drawing(name string, d *svg.Doc, room int) (Block, error) {
	if d.Width > f.Wide() {
		return Block{}, &TooWide{name, d.Width, f.Wide()}
	}
	b := Block{Name: name, Height: d.Height + room}
	by := svg.XY{X: (f.Wide() - d.Width) / 2}
	for _, g := range d.Groups {
		b.Items = append(b.Items, svg.Moved(g.Items, by)...)
	}
	return b, nil
}

// Facing sets words in a column at the left edge, and a drawing in the middle of
// the rest of the page.
func (f *Format) Facing(column int, words func(*Format) Block, name string, d *svg.Doc) (Block, error) {
	left, right := *f, *f
	left.Width = column + 2*f.Margin
	right.Width = f.Width - column - f.Margin
	drawing, err := right.Drawing(name, d, 0)
	if err != nil {
		return Block{}, err
	}
	b := words(&left)
	by := svg.XY{X: column + f.Margin, Y: max(0, f.Tall()-drawing.Height) / 2}
	b.Items = append(b.Items, svg.Moved(drawing.Items, by)...)
	b.Height, b.Name = max(b.Height, by.Y+drawing.Height), name
	return b, nil
}

// TooWide is a drawing that is wider than a page.
type TooWide struct {
	Name       string
	Need, Have int
}

// Error says by how much.
func (e *TooWide) Error() string {
	return fmt.Sprintf("%s is %.1f mm wide, and a page has %.1f mm between its margins", e.Name, float64(e.Need)/mm, float64(e.Have)/mm)
}

// Together makes one block of several, which then stay on one page.
func Together(blocks ...Block) Block {
	var all Block
	gap := 0
	for i, b := range blocks {
		all.Items = append(all.Items, svg.Moved(b.Items, svg.XY{Y: all.Height + gap})...)
		all.Height += gap + b.Height
		gap, all.Gap = b.Gap, b.Gap
		all.Break = all.Break || i == 0 && b.Break
		if all.Name == "" {
			all.Name = b.Name
		}
	}
	return all
}
