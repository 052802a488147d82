// Package html writes drawings that follow each other as one page for a
// browser, which shows them step by step and draws what each step adds. The
// page is a file that needs nothing else: it asks for nothing, neither from
// the network nor from other files, and printed it is a handout of all steps.
package html

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"

	"trammel/svg"
)

// Step is one drawing with what is said of it. All steps have one frame. Lines
// with the class New are what the step adds, in the order in which they are drawn.
type Step struct {
	Drawing *svg.Doc
	Caption string
	Acts    []Act
	// Marks are the classes of lines that are drawn too, though they lack New:
	// those of them that the step before has not.
	Marks []string
}

// Act is a line as the hand draws it: with the compasses about a centre, or by
// the ruler. Class is what the line's items in the drawing have besides New.
type Act struct {
	Class  string
	Centre *svg.XY // nil for the ruler
}

// New is the class, among others that an item may have, of what a step adds.
const New = "new"

var (
	//go:embed page.html
	pageText string
	//go:embed page.css
	style string
	//go:embed page.js
	script string

	page = template.Must(template.New("page").Parse(pageText))
)

// maxBytes is how large a file may be: 64 MiB.
const maxBytes = 64 << 20

// Write writes the page, wholly or not at all. The title and the language are
// the first drawing's. The bytes depend on nothing but the steps.
func Write(w io.Writer, steps []Step) error {
	if len(steps) == 0 {
		return fmt.Errorf("html: there are no steps")
	}
	first := steps[0].Drawing
	view := view{
		Words:  wordsIn(first.Lang),
		Lang:   first.Lang,
		Title:  first.Title,
		Style:  template.CSS(style),
		Script: template.JS(script),
		Policy: fmt.Sprintf("default-src 'none'; style-src '%s'; script-src '%s'", digest(style), digest(script)),
	}
	if view.Title == "" {
		view.Title = view.Words.Figure
	}
	for i, s := range steps {
		frame, err := newFrame(s, steps[max(i-1, 0)], i+1)
		if err != nil {
			return fmt.Errorf("html: step %d: %w", i+1, err)
		}
		view.Frames = append(view.Frames, frame)
	}
	var b bytes.Buffer
	if err := page.Execute(&b, view); err != nil {
		return fmt.Errorf("html: %w", err)
	}
	if b.Len() > maxBytes {
		return fmt.Errorf("html: the page needs more than the %d MiB that it may have", maxBytes>>20)
	}
	_, err := b.WriteTo(w)
	return err
}

// digest names a text to the browser, which runs no other (CSP, level 2).
func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// view is what the template shows.
type view struct {
	Words               words
	Lang, Title, Policy string
	Style               template.CSS
	Script              template.JS
	Frames              []frame
}

// Last is the number of the last frame.
func (v view) Last() int { return len(v.Frames) }

// frame is a step on the page.
type frame struct {
	Number  int
	Caption string
	Picture template.HTML // SVG, whose ids begin with the frame's own
	Tools   string        // for each new line: "x,y" of the compasses' point, "ruler" or "none", with spaces between
}

func newFrame(s, before Step, number int) (frame, error) {
	drawing := *s.Drawing
	drawing.ID = fmt.Sprintf("step%d", number)
	drawing.Groups = s.marked(before.Drawing)
	s.Drawing = &drawing
	var b bytes.Buffer
	if err := drawing.Write(&b, svg.Options{}); err != nil {
		return frame{}, err
	}
	return frame{number, svg.Unbroken(svg.Lowered(s.Caption)), template.HTML(b.String()), strings.Join(s.tools(), " ")}, nil
}

// marked is the groups of the drawing, with the dots, words and marks that are not
// where they stand in the one before marked as new.
func (s Step) marked(before *svg.Doc) []svg.Group {
	known := map[any]bool{}
	for _, g := range before.Groups {
		for _, item := range g.Items {
			known[place(item)] = true
		}
	}
	var groups []svg.Group
	for _, g := range s.Drawing.Groups {
		items := slices.Clone(g.Items)
		for i, item := range items {
			if !known[place(item)] {
				items[i] = s.added(item)
			}
		}
		groups = append(groups, svg.Group{Class: g.Class, Items: items})
	}
	return groups
}

// place is what tells an item from another, whatever its ink.
func place(item svg.Item) any {
	type disc struct {
		at     svg.XY
		filled bool
	}
	type path struct {
		from svg.XY
		way  string
	}
	type words struct {
		at   svg.XY
		text string
	}
	switch v := item.(type) {
	case svg.Disc:
		return disc{v.Centre, v.Width == 0}
	case svg.Path:
		return path{v.Start, fmt.Sprint(v.Pieces)}
	case svg.Text:
		return words{v.At, v.String()}
	}
	return nil
}

// added is a dot, words or a mark with the class New.
func (s Step) added(item svg.Item) svg.Item {
	switch v := item.(type) {
	case svg.Disc:
		if v.Width == 0 {
			v.Class = asNew(v.Class)
		}
		return v
	case svg.Path:
		if slices.Contains(s.Marks, v.Class) {
			v.Class = asNew(v.Class)
		}
		return v
	case svg.Text:
		v.Class = asNew(v.Class)
		return v
	}
	return item
}

func asNew(class string) string {
	if isNew(class) {
		return class
	}
	return strings.TrimSpace(class + " " + New)
}

// tools are what each new line of the drawing is drawn with.
func (s Step) tools() (all []string) {
	for _, g := range s.Drawing.Groups {
		for _, item := range g.Items {
			switch v := item.(type) {
			case svg.Path:
				if isNew(v.Class) && v.Width > 0 {
					all = append(all, s.tool(v.Class))
				}
			case svg.Disc:
				if isNew(v.Class) && v.Width > 0 {
					all = append(all, s.tool(v.Class))
				}
			}
		}
	}
	return all
}

func isNew(class string) bool { return slices.Contains(strings.Fields(class), New) }

// tool is what draws the lines of a class. What is no act, such as a tick, is
// drawn by hand.
func (s Step) tool(class string) string {
	class = strings.TrimSpace(strings.TrimSuffix(class, New))
	for _, a := range s.Acts {
		switch {
		case a.Class == class && a.Centre != nil:
			return fmt.Sprintf("%.3f,%.3f", float64(a.Centre.X)/1000, float64(a.Centre.Y)/1000)
		case a.Class == class:
			return "ruler"
		}
	}
	return "none"
}
