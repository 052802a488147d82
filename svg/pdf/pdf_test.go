package pdf

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"trammel/svg"
	"trammel/svg/svgtest"
)

func written(t testing.TB, pages ...*svg.Doc) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, pages...); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Two writings are the same, even at one time, and hold no date.
func TestSameBytes(t *testing.T) {
	want := written(t, svgtest.Everything(), svgtest.Ruler())
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			if got := written(t, svgtest.Everything(), svgtest.Ruler()); !bytes.Equal(got, want) {
				t.Error("two writings differ")
			}
		})
	}
	all.Wait()
	if bytes.Contains(want, []byte("Date")) || bytes.Contains(want, []byte("D:20")) {
		t.Error("there is a date in it")
	}
	if bytes.Equal(want, written(t, svgtest.Ruler(), svgtest.Everything())) {
		t.Error("other pages are written alike")
	}
}

// What other programs say of the document as a whole.
func TestDocument(t *testing.T) {
	file := svgtest.Save(t, "two.pdf", written(t, svgtest.Everything(), svgtest.Ruler()))
	svgtest.Run(t, "qpdf", "--check", file)
	plain := svgtest.Run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	for _, want := range []string{"/DisplayDocTitle true", "/PrintScaling /None", "/Marked true", "/Lang (en-GB)"} {
		if !strings.Contains(plain, want) {
			t.Errorf("there is no %s in it", want)
		}
	}
	info := strings.Join(strings.Fields(svgtest.Run(t, "pdfinfo", file)), " ")
	for _, want := range []string{`Title: Arcs (& "lines") < 5′`, "Tagged: yes", "Pages: 2", "Creator: trammel"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, info)
		}
	}
	tree := svgtest.Run(t, "pdfinfo", "-struct-text", file)
	if strings.Count(tree, "Figure") != 2 || !strings.Contains(tree, "VAT") {
		t.Errorf("the tree of elements is\n%s", tree)
	}
	if alt := fmt.Sprintf("/Alt %s", words(svgtest.Everything().Desc).PDFString()); !strings.Contains(strings.ToLower(string(written(t, svgtest.Everything()))), strings.ToLower(strings.ReplaceAll(alt, " ", ""))) {
		t.Errorf("the figure is not described: %s", alt)
	}
}

func TestFontsAreEmbedded(t *testing.T) {
	file := svgtest.Save(t, "fonts.pdf", written(t, svgtest.Everything()))
	rows := strings.Split(strings.TrimSpace(svgtest.Run(t, "pdffonts", file)), "\n")[2:]
	var found []string
	for _, row := range rows {
		fields := strings.Fields(row)
		found = append(found, fields[0][len("ABCDEF+"):])
		if !strings.Contains(row, " yes yes yes ") {
			t.Errorf("not embedded, cut down and searchable: %s", row)
		}
	}
	slices.Sort(found)
	if want := []string{"GoRegular", "STIXTwoMath-Regular", "STIXTwoText-Italic", "STIXTwoText-Regular"}; !slices.Equal(found, want) {
		t.Errorf("the fonts are %q", found)
	}
}

// Labels are found as one would type them.
func TestTextIsSearchable(t *testing.T) {
	file := svgtest.Save(t, "text.pdf", written(t, svgtest.Everything()))
	text := svgtest.Run(t, "pdftotext", file, "-")
	for _, want := range []string{"P1", "A′", "BC = 3/4 AB", "√(10 + 2√5) cm", "∠ABC = 22.5° ⟂ VAT", "Café"} {
		if !strings.Contains(text, want) {
			t.Errorf("there is no %q in\n%s", want, text)
		}
	}
}

// All examples, in one document, pass, and their labels are found on their pages.
func TestExamples(t *testing.T) {
	names, docs := examples(t)
	file := svgtest.Save(t, "all.pdf", written(t, docs...))
	svgtest.Run(t, "qpdf", "--check", file)
	pages := strings.Split(svgtest.Run(t, "pdftotext", file, "-"), "\f")
	if len(docs) < 100 || len(pages) != len(docs)+1 {
		t.Fatalf("%d examples are on %d pages", len(docs), len(pages)-1)
	}
	for i, doc := range docs {
		for _, label := range labels(doc) {
			if !strings.Contains(pages[i], label) {
				t.Errorf("%s: there is no %q in\n%s", names[i], label, pages[i])
			}
		}
	}
}

// Poppler draws the document as librsvg draws the SVG: all ink within a pixel of
// its place, 0.17 mm. Thin lines and the edges of letters fall differently into
// pixels, and that is all.
func TestDrawnAlike(t *testing.T) {
	const meanAtMost = 0.8
	names, docs := examples(t)
	for i := 0; i < len(docs); i += 30 {
		file := svgtest.Save(t, "page.pdf", written(t, docs[i]))
		svgtest.Run(t, "pdftocairo", "-r", "150", "-png", "-singlefile", file, file)
		mean, strays := svgtest.Difference(svgtest.Pixels(t, file+".png"), svgtest.Rendered(t, docs[i], "150"), 1)
		if mean > meanAtMost || strays > 0 {
			t.Errorf("%s: pixels differ by %.3f of 255, and %d are out of place", names[i], mean, strays)
		}
	}
}

// examples are all of them, by name.
func examples(t *testing.T) (names []string, docs []*svg.Doc) {
	all := svgtest.Examples(t, "../../examples")
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		docs = append(docs, all[name])
	}
	return names, docs
}

func labels(d *svg.Doc) (all []string) {
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if text, ok := item.(svg.Text); ok {
				all = append(all, text.String())
			}
		}
	}
	return all
}

func TestRefused(t *testing.T) {
	foreign := svgtest.Ruler()
	foreign.Groups = append(foreign.Groups, svg.Group{Items: []svg.Item{svg.Text{Runs: svg.Label("A中", false), Size: 3500, Fill: "#000000"}}})
	invisible := svgtest.Ruler()
	invisible.Groups[0].Items = append(invisible.Groups[0].Items, svg.Disc{Radius: 5})
	for _, test := range []struct {
		pages []*svg.Doc
		want  string
	}{
		{nil, "there are no pages"},
		{[]*svg.Doc{foreign}, `pdf: the letter 中 of "A中" is in none of the embedded faces`},
		{[]*svg.Doc{svgtest.Ruler(), invisible}, "page 2: svg: an item has no ink"},
		{[]*svg.Doc{{Width: 0, Height: 5}}, "both must be over 0"},
	} {
		var b bytes.Buffer
		if err := Write(&b, test.pages...); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("got %v, want %s", err, test.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: something was written all the same", test.want)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	doc := svgtest.Examples(b, "../../examples")["nine-point-circle"]
	for b.Loop() {
		written(b, doc)
	}
}
