package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"html/template"
	"strings"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

//go:embed page.html
var pageText string

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// pictured is an entry with its example as a picture.
type pictured struct {
	entry
	Facts   []fact
	Picture template.HTML // SVG, whose ids begin with the construction's name
}

// newPage is a page that shows the entries and needs nothing from elsewhere.
func newPage(entries []entry) ([]byte, error) {
	var all []pictured
	for _, x := range entries {
		picture, err := drawExample(x)
		if err != nil {
			return nil, fmt.Errorf("the example of %s: %w", x.Name, err)
		}
		all = append(all, pictured{x, x.facts(), picture})
	}
	var b bytes.Buffer
	err := pageTemplate.Execute(&b, all)
	return b.Bytes(), err
}

// drawExample draws an entry's example.
func drawExample(x entry) (template.HTML, error) {
	r := lang.Compile(x.Name+".trm", []byte(x.Example))
	if r.Figure == nil {
		var said strings.Builder
		r.Problems.Print(&said, false)
		return "", errors.New(said.String())
	}
	doc, _, err := layout.Draw(r.Figure, layout.Options{ID: x.Name})
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	err = doc.Write(&b, svg.Options{})
	return template.HTML(b.String()), err
}
