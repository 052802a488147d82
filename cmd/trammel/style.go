package main

import (
	"fmt"
	"slices"
	"strings"

	"trammel/geom/figure"
	"trammel/geom/figure/locale"
)

// style is how pictures are made, whatever their sources say.
type style struct {
	Theme    theme      `placeholder:"NAME" help:"The ink: textbook, exam, slide, large-print or tactile, whatever the source says." complete:"themes"`
	Language language   `placeholder:"TAG" help:"The language in which the figure speaks and writes numbers, such as de or pt-BR, whatever the source says." complete:"languages"`
	Format   format     `placeholder:"KIND" help:"What a picture is: svg, pdf, png, or html for a page that plays the steps. Unsaid, the ending of -o says it, or else it is svg." complete:"formats"`
	Steps    bool       `help:"Draw the figure as it stands after each step: one file a step, or one PDF with a page a step."`
	Tools    bool       `help:"With --steps: show the compasses and the straightedge at work."`
	DPI      resolution `name:"dpi" placeholder:"N" help:"Pixels to the inch in PNG, 300 unless said."`
	Ground   string     `enum:"white,clear" default:"white" placeholder:"KIND" help:"What PNG has behind the ink: white, the usual, or nothing (clear)."`
	Text     string     `enum:"outline,live" default:"outline" placeholder:"KIND" help:"Letters as shapes that look alike everywhere (outline, the usual), or as text to be searched and edited (live)."`
}

// of is the figure in the style.
func (s style) of(f *figure.Figure) *figure.Figure {
	return f.As(string(s.Theme), string(s.Language))
}

// theme is the name of a theme; "" leaves it to the source.
type theme string

// UnmarshalText reads a theme from the command line.
func (t *theme) UnmarshalText(text []byte) error {
	if !slices.Contains(figure.Themes, string(text)) {
		return fmt.Errorf("there is no theme called %s: there are %s", text, strings.Join(figure.Themes, ", "))
	}
	*t = theme(text)
	return nil
}

// language is the tag of a language; "" leaves it to the source.
type language string

// UnmarshalText reads a language from the command line.
func (l *language) UnmarshalText(text []byte) error {
	known, err := locale.Find(string(text))
	*l = language(known.Tag)
	return err
}
