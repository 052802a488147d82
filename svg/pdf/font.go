package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
	sfnt "github.com/tdewolff/font"

	"trammel/svg/glyph"
)

// font is an embedded face with only the signs that are used. A code in the
// text is a sign's place in the order of first use; 0 stands for none.
type font struct {
	face    glyph.Face
	name    string
	ref     types.IndirectRef
	source  *sfnt.SFNT
	numbers []uint16 // of the signs in the face, by code
	signs   []rune   // by code
	codes   map[rune]int
	widths  []int // by code, in thousandths of the size
}

// names are those that the fonts go by in contents, and their own.
var names = map[glyph.Face][2]string{
	glyph.Roman:  {"Roman", "STIXTwoText-Regular"},
	glyph.Italic: {"Italic", "STIXTwoText-Italic"},
	glyph.Sans:   {"Sans", "GoRegular"},
	glyph.Maths:  {"Maths", "STIXTwoMath-Regular"},
}

// font is the document's font of a face.
func (d *document) font(face glyph.Face) *font {
	for _, f := range d.fonts {
		if f.face == face {
			return f
		}
	}
	f := &font{face: face, name: names[face][0], ref: d.add(types.Dict{}), source: parse(face), codes: map[rune]int{}}
	f.code(0, 0)
	d.fonts = append(d.fonts, f)
	return f
}

// parse reads a face. It is read anew for each document, from bytes of its own,
// for cutting a font down changes it.
func parse(face glyph.Face) *sfnt.SFNT {
	f, err := sfnt.ParseSFNT(bytes.Clone(face.Data()), 0)
	if err != nil {
		panic("pdf: an embedded font does not parse: " + err.Error())
	}
	if f.IsCFF {
		f.CFF.SetGlyphNames(nil) // codes are all that a document needs
	}
	return f
}

// code is what stands for a sign in contents. Signs that share a shape have
// codes of their own, for they are copied as different letters.
func (f *font) code(number uint16, sign rune) int {
	code, known := f.codes[sign]
	if !known {
		code = len(f.numbers)
		f.codes[sign] = code
		f.numbers = append(f.numbers, number)
		f.signs = append(f.signs, sign)
		f.widths = append(f.widths, f.scale(int(f.source.GlyphAdvance(number))))
	}
	return code
}

// scale turns font units into thousandths, to the nearest.
func (f *font) scale(v int) int {
	em := int(f.source.Head.UnitsPerEm)
	if v < 0 {
		return -f.scale(-v)
	}
	return (v*1000 + em/2) / em
}

// finish embeds the font: a composite font whose codes are glyph numbers
// (ISO 32000-1, 9.7).
func (f *font) finish(d *document) error {
	program, about, key, err := f.program()
	if err != nil {
		return err
	}
	kind := "CIDFontType0"
	if f.source.IsTrueType {
		kind = "CIDFontType2"
	}
	name := types.Name(f.tag() + "+" + names[f.face][1])
	descendant := types.Dict{
		"Type":           types.Name("Font"),
		"Subtype":        types.Name(kind),
		"BaseFont":       name,
		"CIDSystemInfo":  types.Dict{"Registry": types.StringLiteral("Adobe"), "Ordering": types.StringLiteral("Identity"), "Supplement": types.Integer(0)},
		"W":              types.Array{types.Integer(0), integers(f.widths...)},
		"FontDescriptor": d.add(f.descriptor(name, key, d.addStream(program, about))),
	}
	if f.source.IsTrueType {
		descendant["CIDToGIDMap"] = types.Name("Identity")
	}
	d.set(f.ref, types.Dict{
		"Type":            types.Name("Font"),
		"Subtype":         types.Name("Type0"),
		"BaseFont":        name,
		"Encoding":        types.Name("Identity-H"),
		"DescendantFonts": types.Array{d.add(descendant)},
		"ToUnicode":       d.addStream([]byte(f.toUnicode()), types.Dict{}),
	})
	return nil
}

// program is the font cut down to its signs, with what PDF has to say of it.
func (f *font) program() (data []byte, about types.Dict, key string, err error) {
	subset, err := f.source.Subset(f.numbers, sfnt.SubsetOptions{Tables: sfnt.KeepPDFTables})
	if err != nil {
		return nil, nil, "", fmt.Errorf("the face %s: %w", names[f.face][1], err)
	}
	if f.source.IsCFF {
		return subset.Tables["CFF "], types.Dict{"Subtype": types.Name("CIDFontType0C")}, "FontFile3", nil
	}
	data = undated(subset.Write())
	return data, types.Dict{"Length1": types.Integer(len(data))}, "FontFile2", nil
}

// undated sets the time of a font's last change, which the library has put in,
// to that of its making, with the check sums that go with it (OpenType, table head).
func undated(program []byte) []byte {
	sum := func(table []byte) (sum uint32) {
		for ; len(table) >= 4; table = table[4:] {
			sum += binary.BigEndian.Uint32(table)
		}
		return sum
	}
	for record := program[12:]; len(record) >= 16; record = record[16:] {
		if string(record[:4]) != "head" {
			continue
		}
		head := program[binary.BigEndian.Uint32(record[8:]):]
		copy(head[28:36], head[20:28])
		clear(head[8:12])
		binary.BigEndian.PutUint32(record[4:], sum(head[:56])) // 54 bytes and two of padding
		binary.BigEndian.PutUint32(head[8:], 0xB1B0AFBA-sum(program))
		break
	}
	return program
}

// descriptor describes the face as a whole.
func (f *font) descriptor(name types.Name, key string, program types.IndirectRef) types.Dict {
	s := f.source
	italic := int(s.Post.ItalicAngle)
	flags := 1 << 2 // not in Adobe's Latin set
	if italic != 0 {
		flags |= 1 << 6
	}
	return types.Dict{
		"Type":        types.Name("FontDescriptor"),
		"FontName":    name,
		"Flags":       types.Integer(flags),
		"FontBBox":    integers(f.scale(int(s.Head.XMin)), f.scale(int(s.Head.YMin)), f.scale(int(s.Head.XMax)), f.scale(int(s.Head.YMax))),
		"ItalicAngle": types.Integer(italic),
		"Ascent":      types.Integer(f.scale(int(s.Hhea.Ascender))),
		"Descent":     types.Integer(f.scale(int(s.Hhea.Descender))),
		"CapHeight":   types.Integer(1_000_000 / f.face.Em(1000)),
		"StemV":       types.Integer(80), // as regular text faces have; it is only used where the program is missing
		key:           program,
	}
}

func integers(all ...int) types.Array {
	var a types.Array
	for _, v := range all {
		a = append(a, types.Integer(v))
	}
	return a
}

// tag is the six letters that tell subsets of a face apart.
func (f *font) tag() string {
	h := sha256.New()
	fmt.Fprint(h, f.numbers)
	var b strings.Builder
	for _, v := range h.Sum(nil)[:6] {
		b.WriteByte('A' + v%26)
	}
	return b.String()
}

// toUnicode tells which letters the codes stand for (ISO 32000-1, 9.10.3).
func (f *font) toUnicode() string {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	const most = 100 // entries in one list
	for code := 1; code < len(f.signs); code++ {
		if code%most == 1 {
			fmt.Fprintf(&b, "%d beginbfchar\n", min(most, len(f.signs)-code))
		}
		fmt.Fprintf(&b, "<%04X> <", code)
		sign := f.signs[code]
		if unicode.IsSpace(sign) { // thin ones too are typed as spaces
			sign = ' '
		}
		for _, unit := range utf16.Encode([]rune{sign}) {
			fmt.Fprintf(&b, "%04X", unit)
		}
		b.WriteString(">\n")
		if code%most == 0 || code == len(f.signs)-1 {
			b.WriteString("endbfchar\n")
		}
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.String()
}
