package glyph

import (
	"sync"

	"codeberg.org/go-fonts/stix/stix2mathregular"
	"codeberg.org/go-fonts/stix/stix2textitalic"
	"codeberg.org/go-fonts/stix/stix2textregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the embedded faces.
type Face uint8

// The faces. The mathematical one steps in for the others.
const (
	Roman Face = iota
	Italic
	Sans
	Maths
)

// parsed is a font with what is asked of it at every glyph, in font units.
type parsed struct {
	*sfnt.Font
	em      fixed.Int26_6
	capital int
}

// files are the fonts as they are embedded.
var files = [...][]byte{
	Roman:  stix2textregular.TTF,
	Italic: stix2textitalic.TTF,
	Sans:   goregular.TTF,
	Maths:  stix2mathregular.TTF,
}

var faces = [...]func() *parsed{
	Roman:  sync.OnceValue(func() *parsed { return parse(files[Roman]) }),
	Italic: sync.OnceValue(func() *parsed { return parse(files[Italic]) }),
	Sans:   sync.OnceValue(func() *parsed { return parse(files[Sans]) }),
	Maths:  sync.OnceValue(func() *parsed { return parse(files[Maths]) }),
}

// Data is the font file of the face: OpenType, with cubic outlines but for Sans.
func (f Face) Data() []byte { return files[f] }

// load parses a face when it is first wanted.
func load(f Face) *parsed { return faces[f]() }

// parse reads an embedded font. With as many pixels to the em as the em has
// units, the font library's numbers are font units.
func parse(data []byte) *parsed {
	f, err := sfnt.Parse(data)
	if err != nil {
		panic("glyph: an embedded font does not parse: " + err.Error())
	}
	em := fixed.Int26_6(f.UnitsPerEm())
	metrics, err := f.Metrics(nil, em, font.HintingNone)
	if err != nil || metrics.CapHeight <= 0 {
		panic("glyph: an embedded font does not say how high a capital is")
	}
	return &parsed{f, em, int(metrics.CapHeight)}
}
