package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"trammel/geom/figure"
	"trammel/svg"
	"trammel/svg/html"
	"trammel/svg/layout"
	"trammel/svg/png"
)

// formats are those that pictures can have, by the endings of their names; the
// first is the usual one.
var formats = []string{"svg", "pdf", "png", "html"}

// format is what kind of file a picture is; "" leaves it to the name that -o gives.
type format string

// UnmarshalText reads a format from the command line.
func (f *format) UnmarshalText(text []byte) error {
	if !slices.Contains(formats, string(text)) {
		return fmt.Errorf("there is no format called %s: there are %s", text, strings.Join(formats, ", "))
	}
	*f = format(text)
	return nil
}

// formatOf tells a picture by the ending of its name.
func formatOf(name string) (f format, ok bool) {
	ending := strings.ToLower(strings.TrimPrefix(filepath.Ext(name), "."))
	return format(ending), slices.Contains(formats, ending)
}

// resolution is in pixels to the inch.
type resolution int

// UnmarshalText reads a resolution from the command line.
func (r *resolution) UnmarshalText(text []byte) error {
	n, err := strconv.Atoi(string(text))
	if err != nil || n < png.MinDPI || n > png.MaxDPI {
		return fmt.Errorf("%s is no number from %d to %d", text, png.MinDPI, png.MaxDPI)
	}
	*r = resolution(n)
	return nil
}

// settle decides on the format: as asked for, or else by the name of the
// picture. What belongs to another format is an error.
func (p *pictures) settle() error {
	named, ok := formatOf(p.Out)
	switch {
	case p.Format == "" && ok:
		p.Format = named
	case p.Format == "":
		p.Format = format(formats[0])
	case ok && named != p.Format:
		return &usageError{fmt.Sprintf("-o %s does not go with --format %s", p.Out, p.Format), "leave one of them out"}
	}
	switch {
	case p.Format != "png" && (p.DPI != 0 || p.Ground == "clear"):
		return &usageError{fmt.Sprintf("--dpi and --ground are for PNG, and this is %s", strings.ToUpper(string(p.Format))), "say --format png, or name a picture that ends in .png"}
	case p.Tools && (!p.Steps || p.Format == "html"):
		return &usageError{"--tools shows the tools in the pictures that --steps makes", "a page in HTML has them always"}
	case p.Steps && p.Out == stdio && p.Format != "pdf" && p.Format != "html":
		return &usageError{"--steps makes many files, and the standard output is one", "say --format pdf for one file of many pages"}
	case p.Format != "svg" && p.Text == "live":
		return &usageError{"--text live is for SVG; a PDF's text can always be searched", ""}
	}
	return nil
}

// lay draws a figure: once, or as it stands after each of its steps.
func (s style) lay(f *figure.Figure, id string) ([]layout.Frame, []layout.Warning, error) {
	o := layout.Options{ID: id}
	if s.Steps || s.Format == "html" {
		o.Tight = s.Format == "pdf" // its pages have the shape
		return layout.Frames(f, layout.FrameOptions{Options: o, Tools: s.Tools && s.Format != "html"})
	}
	doc, warnings, err := layout.Draw(f, o)
	return []layout.Frame{{Doc: doc}}, warnings, err
}

// file is what is to be written where.
type file struct {
	name string
	data []byte
}

// files are the picture, or one file a step where a file holds one drawing.
func (s style) files(picture string, frames []layout.Frame, theme string) (all []file, err error) {
	var b bytes.Buffer
	switch {
	case s.Format == "html":
		err = html.Write(&b, steps(frames))
	case s.Format == "pdf":
		err = s.pages(&b, frames, theme)
	case s.Steps:
		return s.filesOfSteps(picture, frames)
	default:
		err = s.write(&b, frames[0].Doc)
	}
	return []file{{picture, b.Bytes()}}, err
}

// filesOfSteps are named after the picture and numbered: lesson-01.svg
func (s style) filesOfSteps(picture string, frames []layout.Frame) (all []file, err error) {
	for i, f := range frames {
		var b bytes.Buffer
		if err := s.write(&b, f.Doc); err != nil {
			return nil, err
		}
		all = append(all, file{stepName(picture, i+1), b.Bytes()})
	}
	return all, nil
}

// write writes one drawing to a file of its own.
func (s style) write(w io.Writer, d *svg.Doc) error {
	if s.Format == "png" {
		return png.Write(w, d, png.Options{DPI: int(s.DPI), Transparent: s.Ground == "clear"})
	}
	return d.Write(w, svg.Options{LiveText: s.Text == "live"})
}

// steps are the frames for a browser.
func steps(frames []layout.Frame) []html.Step {
	var all []html.Step
	for _, f := range frames {
		step := html.Step{Drawing: f.Doc, Caption: f.Caption}
		for _, stroke := range f.Strokes {
			if stroke.Mark {
				step.Marks = append(step.Marks, stroke.Class)
			} else {
				step.Acts = append(step.Acts, html.Act{Class: stroke.Class, Centre: stroke.Centre})
			}
		}
		all = append(all, step)
	}
	return all
}
