// Package pdf writes drawings as a PDF document, a page each, in their true
// size: one unit of a drawing's page is a millimetre of paper. Letters are set
// in the embedded faces at the very places where an SVG has their outlines, so
// that they can be searched and copied. The library pdfcpu does the objects
// and the cross references, tdewolff/font cuts the faces down to what is used.
package pdf

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"

	"github.com/pdfcpu/pdfcpu/pkg/filter"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"

	"trammel/svg"
)

// maxBytes is how large a file may be: 16 MiB for each page's content.
const maxBytes = 16 << 20

// Write writes the drawings as one document, wholly or not at all. Its title
// and language are the first one's. The bytes depend on nothing but the
// drawings: there are no dates in them. A letter that no embedded face has is
// an error, for whoever opens the document could not be shown it.
func Write(w io.Writer, pages ...*svg.Doc) error {
	if len(pages) == 0 {
		return fmt.Errorf("pdf: there are no pages")
	}
	d := newDocument(pages[0])
	for i, p := range pages {
		if err := d.addPage(p); err != nil && len(pages) > 1 {
			return fmt.Errorf("pdf: page %d: %w", i+1, err)
		} else if err != nil {
			return fmt.Errorf("pdf: %w", err)
		}
	}
	if err := d.finish(); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return d.writeTo(w)
}

// document is a PDF while it is being made. Object 1 is its catalog.
type document struct {
	table   *model.XRefTable
	catalog types.Dict
	fonts   []*font // in the order of their first use
	kids    types.Array
	pages   types.IndirectRef // the page tree
	tags    structure
	err     error // the first
}

func newDocument(first *svg.Doc) *document {
	table, err := pdfcpu.CreateXRefTableWithRootDict()
	d := &document{table: table, err: err}
	if err != nil {
		return d
	}
	d.catalog, d.err = table.Catalog()
	d.pages = d.add(types.Dict{})
	d.tags = d.newStructure()
	title := first.Title
	if title == "" {
		title = "Figure"
	}
	info := d.add(types.Dict{"Title": words(title), "Creator": words("trammel"), "Producer": words("trammel, by pdfcpu")})
	table.Info = &info
	for name, value := range (types.Dict{
		"Lang":              types.StringLiteral(first.Lang),
		"MarkInfo":          types.Dict{"Marked": types.Boolean(true)},
		"Pages":             d.pages,
		"StructTreeRoot":    d.tags.root,
		"ViewerPreferences": types.Dict{"DisplayDocTitle": types.Boolean(true), "PrintScaling": types.Name("None")},
	}) {
		d.catalog[name] = value
	}
	return d
}

// add gives an object its number.
func (d *document) add(o types.Object) types.IndirectRef {
	if d.err != nil {
		return types.IndirectRef{}
	}
	ref, err := d.table.IndRefForNewObject(o)
	if err != nil {
		d.err = err
		return types.IndirectRef{}
	}
	return *ref
}

// set puts an object in the place of one that was added to be known early.
func (d *document) set(at types.IndirectRef, o types.Object) {
	if d.err == nil {
		d.table.Table[at.ObjectNumber.Value()].Object = o
	}
}

// addStream adds data, deflated.
func (d *document) addStream(data []byte, about types.Dict) types.IndirectRef {
	s := types.StreamDict{Dict: about, Content: data, FilterPipeline: []types.PDFFilter{{Name: filter.Flate}}}
	s.Dict["Filter"] = types.Name(filter.Flate)
	if err := s.Encode(); err != nil && d.err == nil {
		d.err = err
	}
	return d.add(s)
}

// addPage draws a page. Its box is the drawing's size, to a millionth of a point.
func (d *document) addPage(p *svg.Doc) error {
	if err := p.Check(); err != nil {
		return err
	}
	c := content{document: d, height: p.Height}
	if err := c.draw(p); err != nil {
		return err
	}
	page := d.add(types.Dict{})
	d.kids = append(d.kids, page)
	d.set(page, types.Dict{
		"Type":          types.Name("Page"),
		"Parent":        d.pages,
		"MediaBox":      types.Array{types.Integer(0), types.Integer(0), points(p.Width), points(p.Height)},
		"Contents":      d.addStream(c.Bytes(), types.Dict{}),
		"Resources":     c.resources(),
		"StructParents": types.Integer(len(d.kids) - 1),
		"Tabs":          types.Name("S"),
	})
	d.tags.addFigure(d, page, p, c.marked)
	return d.err
}

// points are 1/72 inch, PDF's own unit.
func points(v svg.Micrometre) types.Float { return types.Float(float64(v) * 72 / 25_400) }

// words are text as PDF keeps it, outside of contents.
func words(s string) types.HexLiteral { return types.NewHexLiteral([]byte(types.EncodeUTF16String(s))) }

// finish adds what is only known when all pages are drawn.
func (d *document) finish() error {
	d.set(d.pages, types.Dict{"Type": types.Name("Pages"), "Kids": d.kids, "Count": types.Integer(len(d.kids))})
	d.tags.finish(d)
	for _, f := range d.fonts {
		if err := f.finish(d); err != nil {
			return err
		}
	}
	return d.err
}

// writeTo writes the objects in the order of their numbers. The library's way
// to do so is to write an increment, here to nothing; its writer of whole
// documents would put the objects in another order every time, and the time.
func (d *document) writeTo(w io.Writer) error {
	const header = "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"
	conf := &model.Configuration{Eol: types.EolLF}
	ctx := pdfcpu.CreateContext(d.table, conf)
	var b bytes.Buffer
	b.WriteString(header)
	out := bufio.NewWriter(&b)
	ctx.Write.Writer = out
	ctx.Write.Offset = int64(len(header))
	for number := 1; number < *d.table.Size; number++ {
		ctx.Write.ObjNrs = append(ctx.Write.ObjNrs, number)
	}
	id := d.id()
	d.table.ID = types.Array{id, id}
	if err := pdfcpu.WriteIncrement(ctx); err != nil {
		return err
	}
	if err := out.Flush(); err != nil {
		return err
	}
	_, err := b.WriteTo(w)
	return err
}

// id tells documents with other contents apart.
func (d *document) id() types.HexLiteral {
	h := sha256.New()
	for number := 1; number < *d.table.Size; number++ {
		o := d.table.Table[number].Object
		fmt.Fprintln(h, o.PDFString())
		if s, ok := o.(types.StreamDict); ok {
			h.Write(s.Raw)
		}
	}
	return types.NewHexLiteral(h.Sum(nil)[:16])
}
