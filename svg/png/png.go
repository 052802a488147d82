// Package png draws drawings as pictures of pixels, with their true size in
// them. The library golang.org/x/image/vector fills the shapes; it works alike
// on every processor, and so does what is here.
package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/draw"
	stdpng "image/png"
	"io"

	"trammel/svg"
)

// Options says how a picture is made.
type Options struct {
	DPI         int  // pixels to the inch; 0 is 300
	Transparent bool // leave the ground clear, not white
}

// The resolution: that of office printers unless another is asked for.
const (
	DefaultDPI          = 300
	MinDPI, MaxDPI      = 30, 2400
	maxPixels           = 100_000_000
	inch                = 25_400 // micrometres
	pixelsPerMetre      = 1_000_000
	metre          byte = 1 // the unit of the chunk pHYs
)

// Write writes the drawing, wholly or not at all. The bytes depend on nothing
// but the drawing and the options. A letter that no embedded face has is an error.
func Write(w io.Writer, d *svg.Doc, o Options) error {
	if o.DPI == 0 {
		o.DPI = DefaultDPI
	}
	if o.DPI < MinDPI || o.DPI > MaxDPI {
		return fmt.Errorf("png: %d dpi is not from %d to %d", o.DPI, MinDPI, MaxDPI)
	}
	if err := d.Check(); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	width, height := pixels(d.Width, o.DPI), pixels(d.Height, o.DPI)
	if width*height > maxPixels {
		return fmt.Errorf("png: %d × %d pixels are more than the %d million that a picture may have: ask for fewer dpi", width, height, maxPixels/1_000_000)
	}
	c := newCanvas(width, height, o)
	if err := c.draw(d); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	var b bytes.Buffer
	if err := stdpng.Encode(&b, c.picture()); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	_, err := w.Write(describe(b.Bytes(), d, o.DPI))
	return err
}

// pixels is a length in pixels, up to a whole one.
func pixels(v svg.Micrometre, dpi int) int { return (v*dpi + inch - 1) / inch }

// picture is the canvas, without its colours where it has none: then the file
// is a third as large.
func (c *canvas) picture() image.Image {
	if !c.Opaque() {
		return c.RGBA
	}
	for i := 0; i < len(c.Pix); i += 4 {
		if c.Pix[i] != c.Pix[i+1] || c.Pix[i] != c.Pix[i+2] {
			return c.RGBA
		}
	}
	grey := image.NewGray(c.Rect)
	draw.Draw(grey, grey.Rect, c.RGBA, image.Point{}, draw.Src)
	return grey
}

// describe puts the physical size and the title into a file (PNG, third
// edition, 11.3.3.3 and 11.3.4.3), after the header, which ends at byte 33.
func describe(file []byte, d *svg.Doc, dpi int) []byte {
	const header = 33
	var b bytes.Buffer
	b.Write(file[:header])
	perMetre := uint32((dpi*pixelsPerMetre + inch/2) / inch)
	size := binary.BigEndian.AppendUint32(nil, perMetre)
	size = binary.BigEndian.AppendUint32(size, perMetre)
	chunk(&b, "pHYs", append(size, metre))
	for _, e := range []struct{ keyword, text string }{{"Title", d.Title}, {"Description", d.Desc}} {
		if e.text != "" {
			chunk(&b, "iTXt", []byte(e.keyword+"\x00\x00\x00"+d.Lang+"\x00\x00"+e.text))
		}
	}
	b.Write(file[header:])
	return b.Bytes()
}

// chunk writes a chunk: length, name, data, check sum.
func chunk(b *bytes.Buffer, name string, data []byte) {
	b.Write(binary.BigEndian.AppendUint32(nil, uint32(len(data))))
	body := append([]byte(name), data...)
	b.Write(body)
	b.Write(binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(body)))
}
