package page

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"trammel/svg"
)

func a4() *Format { return &Format{Width: 210 * mm, Height: 297 * mm, Margin: 15 * mm, Text: 2500} }

func solid(height int) Block {
	return Block{Name: "a block", Height: height, Items: []svg.Item{svg.Disc{Centre: svg.XY{X: 1000, Y: height}, Radius: 500}}}
}

// TestSet: blocks stay whole, in their order, and between the margins.
func TestSet(t *testing.T) {
	f := a4()
	var blocks []Block
	for _, h := range []int{100, 100, 100, 60, 200, 10} {
		b := solid(h * mm)
		b.Gap = 5 * mm
		blocks = append(blocks, b)
	}
	blocks[5].Break = true
	pages, err := f.Set(blocks)
	if err != nil {
		t.Fatal(err)
	}
	var got []int
	for _, p := range pages {
		got = append(got, len(p.Groups[0].Items))
		for _, item := range p.Groups[0].Items {
			if y := item.(svg.Disc).Centre.Y; y < f.Margin || y > f.Height-f.Margin {
				t.Errorf("a block ends at %d µm", y)
			}
		}
	}
	if len(got) != 4 || got[0] != 2 || got[1] != 2 || got[2] != 1 || got[3] != 1 {
		t.Errorf("blocks by pages: %v", got)
	}
}

func TestTooLarge(t *testing.T) {
	f := a4()
	_, err := f.Set([]Block{solid(268 * mm)})
	var large *TooLarge
	if !errors.As(err, &large) || err.Error() != "a block takes 268.0 mm of paper from top to bottom, and a page has 267.0 mm" {
		t.Error(err)
	}
	if _, err := f.Drawing("the figure", &svg.Doc{Width: 181 * mm}, 0); err == nil || !strings.Contains(err.Error(), "181.0 mm wide") {
		t.Error(err)
	}
}

// TestParagraph: no line is longer than the page is wide, and no word is lost.
func TestParagraph(t *testing.T) {
	f := a4()
	text := strings.Repeat("Construct the perpendicular from P to the line m, and leave every arc. ", 9) + strings.Repeat("x", 300)
	b := f.Paragraph(text, 8*mm)
	var said []string
	for _, item := range b.Items {
		line := item.(svg.Text)
		said = append(said, line.String())
		if end := line.At.X + svg.Measure(line).Advance; end > f.Wide() {
			t.Errorf("%q ends at %d µm of %d", line, end, f.Wide())
		}
	}
	if got := strings.Join(said, ""); strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(text, " ", "") {
		t.Errorf("said %q", got)
	}
	if len(b.Items) < 5 {
		t.Errorf("%d lines", len(b.Items))
	}
}

// TestBar: the check bar is as long as it says, and pages are drawings like any other.
func TestBar(t *testing.T) {
	f := a4()
	f.Foot = f.Bar(50*mm, "This bar measures 50 mm on a print at 100 %.")
	f.Number = func(page, of int) string { return "1 of 1" }
	f.Title = "t"
	pages, err := f.Set([]Block{Together(f.Heading("Bisectors"), f.Blanks("Name", "Date")), f.Beside("1", "3 marks")})
	if err != nil {
		t.Fatal(err)
	}
	bar := f.Foot.Items[0].(svg.Path)
	if bar.Pieces[0].To.X-bar.Start.X != 50*mm {
		t.Error("the bar is not 50 mm long")
	}
	var out bytes.Buffer
	if err := pages[0].Write(&out, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{"Bisectors", "Name", "3 marks", "1 of 1", "100 %"} {
		if !strings.Contains(out.String(), words) {
			t.Errorf("%s is not on the page", words)
		}
	}
}

// TestNarrowBar: the words of the bar stay on the page and clear of its number.
func TestNarrowBar(t *testing.T) {
	for _, wide := range []int{105, 148, 210} {
		f := &Format{Width: wide * mm, Height: 210 * mm, Margin: 15 * mm, Text: 4500, Sans: true}
		f.Number = func(page, of int) string { return "Page 1 of 1" }
		f.Foot = f.Bar(50*mm, "This bar measures 50 mm on a print at 100 %.")
		from := f.Wide() - f.width("Page 1 of 1", f.Text*4/5)
		for _, item := range f.Foot.Items {
			if words, ok := item.(svg.Text); ok && words.At.X+svg.Measure(words).Advance > from {
				t.Errorf("%d mm: %q runs into the number", wide, words)
			}
		}
	}
}

// TestFacing: words keep to their column, the drawing to the rest of the page,
// in the middle of its height.
func TestFacing(t *testing.T) {
	f := a4()
	d := &svg.Doc{Width: 60 * mm, Height: 40 * mm, Groups: []svg.Group{{Items: []svg.Item{rule(svg.XY{}, svg.XY{X: 60 * mm, Y: 40 * mm})}}}}
	words := func(column *Format) Block { return column.Paragraph(strings.Repeat("Draw an arc. ", 30), 0) }
	b, err := f.Facing(50*mm, words, "step 1", d)
	if err != nil {
		t.Fatal(err)
	}
	for _, item := range b.Items {
		switch v := item.(type) {
		case svg.Text:
			if end := v.At.X + svg.Measure(v).Advance; end > 50*mm {
				t.Errorf("%q ends at %d µm", v, end)
			}
		case svg.Path:
			if left, right := v.Start.X, f.Wide()-v.Pieces[0].To.X; left < 50*mm || right < 0 {
				t.Errorf("the drawing is %d µm from the left and %d from the right", left, right)
			}
			if above, below := v.Start.Y, f.Tall()-v.Pieces[0].To.Y; above-below > 1 || below-above > 1 {
				t.Errorf("the drawing is %d µm from above and %d from below", above, below)
			}
		}
	}
	d.Width = 130 * mm
	if _, err := f.Facing(50*mm, words, "step 1", d); err == nil {
		t.Error("a drawing of 130 mm stands beside 50 mm of words on 180 mm")
	}
}
