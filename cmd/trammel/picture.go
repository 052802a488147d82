package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"trammel/svg"
	"trammel/svg/pdf"
	"trammel/svg/png"
)

// formats are those that pictures can have, by the endings of their names; the
// first is the usual one.
var formats = []string{"svg", "pdf", "png"}

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
	case p.Format != "svg" && p.Text == "live":
		return &usageError{"--text live is for SVG; a PDF's text can always be searched", ""}
	}
	return nil
}

// write writes a drawing in the format.
func (s style) write(w io.Writer, d *svg.Doc) error {
	switch s.Format {
	case "pdf":
		return pdf.Write(w, d)
	case "png":
		return png.Write(w, d, png.Options{DPI: int(s.DPI), Transparent: s.Ground == "clear"})
	}
	return d.Write(w, svg.Options{LiveText: s.Text == "live"})
}
