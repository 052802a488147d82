package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// Every example's steps go on pages: each page has its step's words, and the
// drawing in its true size; slides have the shape of a screen.
func TestStepPages(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.trm")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	for i, file := range files {
		if i%5 > 0 && filepath.Base(file) != "pythagoras.trm" { // they are alike
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, theme := range []string{"", "slide"} {
			figure := lang.Compile(file, text).Figure.As(theme, "")
			frames, _, err := layout.Frames(figure, layout.FrameOptions{})
			if err != nil {
				t.Fatal(err)
			}
			pages, err := stepPages(frames, theme)
			if err != nil {
				t.Errorf("%s, theme %q: %v", file, theme, err)
				continue
			}
			if len(pages) != len(frames) {
				t.Errorf("%s: %d steps are on %d pages", file, len(frames), len(pages))
			}
			for k, p := range pages {
				if p.Desc != frames[k].Doc.Desc {
					t.Errorf("%s: page %d does not describe its step", file, k+1)
				}
				if shape := float64(p.Width) / float64(p.Height); theme == "slide" && math.Abs(shape-16.0/9) > 0.001 {
					t.Errorf("%s: a slide is %d by %d", file, p.Width, p.Height)
				}
				if size := smallestWords(p); theme == "slide" && size < p.Height/60 {
					t.Errorf("%s: words on slide %d are %d µm high on a screen of %d", file, k+1, size, p.Height)
				}
			}
		}
	}
}

// smallestWords is the size of the smallest sentence of a page.
func smallestWords(d *svg.Doc) int {
	least := d.Height
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if t, ok := item.(svg.Text); ok && strings.Contains(t.String(), " ") {
				least = min(least, t.Size)
			}
		}
	}
	return least
}

func TestWhere(t *testing.T) {
	d := &drawing{job: job{picture: "a.svg"}}
	if got := d.where(); got != "a.svg" {
		t.Errorf("one picture is in %s", got)
	}
	d.written = []string{"a-01.svg", "a-02.svg", "a-03.svg"}
	if got := d.where(); got != "a-01.svg to a-03.svg" {
		t.Errorf("three are in %s", got)
	}
}

// TestIdleActs: what is given or joined already makes no step of its own, and the
// last of a figure without reasons says that it is finished.
func TestIdleActs(t *testing.T) {
	for text, want := range map[string][]string{
		"given circle k centre O radius 2\ngiven P 7 from O\nS, T, s, t by tangents(k, P) in full\n": {"Given", "Draw the line through O and P.", "Find the midpoint", "With centre M", "Draw the line", "Draw the line", "The figure is finished."},
		"given A (0, 0)\ngiven B 6 from A\njoin AB\njoin BA\nclaim AB = 6\n":                         {"Given", "Join A to B.", "Then AB = 6 cm."},
		"given A (0, 0)\ngiven B 6 from A\njoin AB\nbold AB\nlabel AB length\n":                      {"Given", "Join A to B.", "The figure is finished."},
	} {
		f := lang.Compile("t.trm", []byte("figure \"t\"\n"+text)).Figure
		frames, _, err := layout.Frames(f, layout.FrameOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for i, frame := range frames {
			if i >= len(want) || !strings.HasPrefix(frame.Caption, want[i]) {
				t.Errorf("%s: step %d is %q, want %q", text, i+1, frame.Caption, want)
			}
		}
	}
}
