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
	maths
)

// parsed is a font with what is asked of it at every glyph, in font units.
type parsed struct {
	*sfnt.Font
	em      fixed.Int26_6
	capital int
}

var faces = [...]func() *parsed{
	Roman:  sync.OnceValue(func() *parsed { return parse(stix2textregular.TTF) }),
	Italic: sync.OnceValue(func() *parsed { return parse(stix2textitalic.TTF) }),
	Sans:   sync.OnceValue(func() *parsed { return parse(goregular.TTF) }),
	maths:  sync.OnceValue(func() *parsed { return parse(stix2mathregular.TTF) }),
}

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
