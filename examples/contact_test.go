package examples_test

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"trammel/svg"
)

// contactSheet shows every example, small.
const contactSheet = "../testdata/contact-sheet.svg"

var sheet = flag.Bool("sheet", false, "draw the contact sheet anew")

// TestContactSheet holds the sheet to the pictures, where everything is held
// together: a picture may change without it from one commit to the next.
func TestContactSheet(t *testing.T) {
	made := drawSheet(t)
	if *sheet {
		if err := os.WriteFile(contactSheet, made, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if stale := !bytes.Equal(read(t, contactSheet), made); stale && os.Getenv("CI") == "true" {
		t.Errorf("%s does not show the pictures as they are: go test ./examples -run ContactSheet -sheet", contactSheet)
	}
}

// The sheet in millimetres: all cells are alike, a picture is never shown
// larger than half its size, and its title stands under it.
const (
	columns   = 7
	cell      = 42.0 // wide
	pictured  = 36.0 // of it, the largest picture
	cellTall  = 49.0
	heading   = 12.0
	halfSize  = 0.5
	letters   = 2.6 // height of the titles' letters, from line to line 3.1
	between   = 3.1
	longTitle = 36.0 // wide
)

// drawSheet puts the pictures of each folder under its heading.
func drawSheet(t *testing.T) []byte {
	t.Helper()
	folders := map[string][]string{}
	for _, path := range find(t, ".svg") {
		folder := filepath.Dir(path)
		folders[folder] = append(folders[folder], path)
	}
	var b bytes.Buffer
	y := 0.0
	for _, folder := range []string{".", "curriculum", "paper", "library"} {
		fmt.Fprintf(&b, "<text x=\"3\" y=\"%g\" font-size=\"5\" font-style=\"italic\">%s</text>\n", y+8, filepath.ToSlash(filepath.Join("examples", folder)))
		y += heading
		for i, path := range folders[folder] {
			if i > 0 && i%columns == 0 {
				y += cellTall
			}
			b.WriteString(thumbnail(t, path, float64(i%columns)*cell, y))
		}
		y += cellTall
		delete(folders, folder)
	}
	if len(folders) > 0 {
		t.Fatalf("no heading for %v", folders)
	}
	head := fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%gmm\" height=\"%gmm\" viewBox=\"0 0 %[1]g %[2]g\" font-family=\"STIX Two Text, Times New Roman, Times, serif\">\n", columns*cell, y)
	return []byte(head + "<title>All examples</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n" + b.String() + "</svg>\n")
}

// thumbnail is a picture in the middle of its cell, with its title.
func thumbnail(t *testing.T, path string, x, y float64) string {
	t.Helper()
	var p struct {
		ViewBox string `xml:"viewBox,attr"`
		Title   string `xml:"title"`
		Groups  []struct {
			Inner string `xml:",innerxml"`
		} `xml:"g"`
	}
	if err := xml.Unmarshal(read(t, path), &p); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	var w, h float64
	if _, err := fmt.Sscanf(p.ViewBox, "0 0 %g %g", &w, &h); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	scale := min(halfSize, pictured/w, pictured/h)
	var b strings.Builder
	fmt.Fprintf(&b, "<svg x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" viewBox=\"%s\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n",
		two(x+(cell-w*scale)/2), two(y+(pictured-h*scale)/2), two(w*scale), two(h*scale), p.ViewBox)
	for _, g := range p.Groups {
		b.WriteString(small(g.Inner))
	}
	b.WriteString("</svg>\n")
	for i, line := range broken(p.Title) {
		fmt.Fprintf(&b, "<text x=\"%s\" y=\"%s\" font-size=\"%g\" text-anchor=\"middle\">", two(x+cell/2), two(y+pictured+4+float64(i)*between), letters)
		if err := xml.EscapeText(&b, []byte(line)); err != nil {
			t.Fatal(err)
		}
		b.WriteString("</text>\n")
	}
	return b.String()
}

var (
	needless = regexp.MustCompile(` (class|role|aria-label|aria-hidden)="[^"]*"`)
	decimals = regexp.MustCompile(`\d+\.\d{3}`)
)

// small is what is drawn without what only a picture of its own needs, in
// hundredths of a millimetre.
func small(drawn string) string {
	drawn = needless.ReplaceAllString(drawn, "")
	drawn = decimals.ReplaceAllStringFunc(drawn, func(number string) string {
		v, _ := strconv.ParseFloat(number, 64)
		return two(v)
	})
	return strings.ReplaceAll(strings.TrimLeft(drawn, "\n"), " />", "/>")
}

// two is a number with two decimals at most.
func two(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

// broken sets a title in lines that fit its cell.
func broken(title string) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(title) {
		if longer := strings.TrimSpace(line + " " + word); line == "" || wide(longer) < longTitle {
			line = longer
			continue
		}
		lines, line = append(lines, line), word
	}
	return append(lines, line)
}

// wide is how wide a line of a title is in the face that trammel knows.
func wide(line string) float64 {
	const capital = 1706 // micrometres: 0.656 of the em
	text := svg.Text{Runs: []svg.Run{{Text: line}}, Size: capital}
	return float64(svg.Measure(text).Advance) / 1000
}
