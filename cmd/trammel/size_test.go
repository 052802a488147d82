package main

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"trammel/svg/svgtest"
)

// paperPage is what the content of a page says to those who know PDF's operators
// only, in millimetres of paper.
type paperPage struct {
	width, height float64
	straights     []float64      // their lengths
	paths         [][][2]float64 // their corners, and the ends of their curves
	stack         []float64
	scale         float64 // millimetres to the unit of the content
}

var (
	boxOf     = regexp.MustCompile(`/MediaBox \[\s+0\s+0\s+([0-9.]+)\s+([0-9.]+)\s+\]`)
	contentOf = regexp.MustCompile(`(?s)stream\n(.*?)\nendstream`)
)

// pagesOf reads a PDF in qpdf's plain form. The contents are the streams with
// an operator cm, of which each has one.
func pagesOf(t *testing.T, file string) (pages []*paperPage) {
	t.Helper()
	const millimetre = 25.4 / 72
	plain := svgtest.Run(t, "qpdf", "--qdf", "--object-streams=disable", "--no-original-object-ids", file, "-")
	for _, box := range boxOf.FindAllStringSubmatch(plain, -1) {
		w, _ := strconv.ParseFloat(box[1], 64)
		h, _ := strconv.ParseFloat(box[2], 64)
		pages = append(pages, &paperPage{width: w * millimetre, height: h * millimetre})
	}
	n := 0
	for _, stream := range contentOf.FindAllStringSubmatch(plain, -1) {
		if !strings.Contains(stream[1], " cm ") {
			continue
		}
		if n == len(pages) {
			t.Fatalf("%s has more contents than its %d pages", file, n)
		}
		for _, word := range strings.Fields(stream[1]) {
			pages[n].word(word)
		}
		n++
	}
	if n == 0 || n != len(pages) {
		t.Fatalf("%s has %d pages and %d contents", file, len(pages), n)
	}
	return pages
}

func (p *paperPage) word(word string) {
	if v, err := strconv.ParseFloat(word, 64); err == nil {
		p.stack = append(p.stack, v)
		return
	}
	n := p.stack
	end := func() [2]float64 { return [2]float64{n[len(n)-2] * p.scale, n[len(n)-1] * p.scale} }
	switch word {
	case "cm":
		p.scale = n[0] * 25.4 / 72
	case "m":
		p.paths = append(p.paths, [][2]float64{end()})
	case "l":
		from := p.goOn(end())
		p.straights = append(p.straights, math.Hypot(end()[0]-from[0], end()[1]-from[1]))
	case "c":
		p.goOn(end())
	}
	p.stack = nil
}

// goOn adds a place to the path and tells where it was before.
func (p *paperPage) goOn(to [2]float64) (from [2]float64) {
	path := &p.paths[len(p.paths)-1]
	from = (*path)[len(*path)-1]
	*path = append(*path, to)
	return from
}

// count is how many straights are as long, to 0.02 mm.
func (p *paperPage) count(length float64) (n int) {
	for _, s := range p.straights {
		if math.Abs(s-length) <= 0.02 {
			n++
		}
	}
	return n
}

// TestPrintSize: what is given on a paper has its true size, to 0.02 mm, and so
// has the bar by which a print is checked, on every page of it.
func TestPrintSize(t *testing.T) {
	svgtest.Tool(t, "qpdf")
	folder := t.TempDir()
	for name, text := range map[string]string{
		"a.trm": "figure \"t\"\nchoose a from 6.1 to 7.9 by 1/10\ngiven A (0, 0)\ngiven B a from A\njoin AB\nM, n by bisect(A, B)\ntask \"Bisect AB.\"\nanswer AM\n",
		"b.trm": "figure \"t\"\nunit 8 mm\ngiven square ABCD with AB = 5.35\njoin AC\n",
		"c.trm": "figure \"t\"\ngiven circle k centre O radius 3.3\ngiven P 7 from O\nS, T, s, t by tangents(k, P)\n",
		"sheet.trm": "worksheet \"t\"\ntask from \"a.trm\", room 20 mm\ntask \"Draw the diagonal.\" from \"b.trm\", room 20 mm\n" +
			"task \"Draw the tangents.\" from \"c.trm\"\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	made, said, status := sheets(t, filepath.Join(folder, "sheet.trm"), "--variants", "3", "--seed", "5")
	if status != exitGood {
		t.Fatal(said)
	}
	dealt := regexp.MustCompile(`(?m)^(\d),1,a.trm,,a,([0-9.]+)`).FindAllStringSubmatch(readFile(t, filepath.Join(made, "sheet-answers.csv")), -1)
	pages := pagesOf(t, filepath.Join(made, "sheet.pdf"))
	if len(dealt) != 3 || len(pages) != 6 {
		t.Fatalf("%d variants on %d pages: %v", len(dealt), len(pages), dealt)
	}
	for i, p := range pages {
		if math.Abs(p.width-210) > 0.001 || math.Abs(p.height-297) > 0.001 {
			t.Errorf("page %d is %.3f mm by %.3f mm", i+1, p.width, p.height)
		}
		if n := p.count(50); n != 1 {
			t.Errorf("page %d has %d bars of 50 mm", i+1, n)
		}
	}
	for i, d := range dealt {
		first, second := pages[2*i], pages[2*i+1]
		a, _ := strconv.ParseFloat(d[2], 64)
		if first.count(10*a) != 1 {
			t.Errorf("variant %s: AB is to be %g mm, and there are straights of %.3f mm", d[1], 10*a, first.straights)
		}
		if first.count(5.35*8) != 4 {
			t.Errorf("variant %s: the square's sides are to be 42.8 mm, and there are straights of %.3f mm", d[1], first.straights)
		}
		if across := second.across(); math.Abs(across-66) > 0.02 {
			t.Errorf("variant %s: the circle is %.3f mm across, not 66", d[1], across)
		}
	}
}

// across is how wide the widest path of the page is: here the given circle.
func (p *paperPage) across() (most float64) {
	for _, path := range p.paths {
		for _, a := range path {
			for _, b := range path {
				most = max(most, math.Abs(a[0]-b[0]))
			}
		}
	}
	return most
}

func readFile(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
