package pdf

import (
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"

	"trammel/svg"
)

// structure is what a document says of itself to those who cannot see it: a
// tree of elements, here a figure for each page with the words that describe it
// (ISO 32000-1, 14.7 and 14.8).
type structure struct {
	root, document types.IndirectRef
	figures        types.Array
	parents        types.Array // for each page, which element its marked content belongs to
}

func (d *document) newStructure() structure {
	return structure{root: d.add(types.Dict{}), document: d.add(types.Dict{})}
}

// addFigure describes the drawing of a page, whose contents are marked so often.
func (s *structure) addFigure(d *document, page types.IndirectRef, drawing *svg.Doc, marked int) {
	alt := drawing.Desc
	if alt == "" {
		alt = drawing.Title
	}
	var kids, parents types.Array
	figure := d.add(types.Dict{})
	for n := range marked {
		kids = append(kids, types.Integer(n))
		parents = append(parents, figure)
	}
	d.set(figure, types.Dict{
		"Type": types.Name("StructElem"),
		"S":    types.Name("Figure"),
		"P":    s.document,
		"Pg":   page,
		"K":    kids,
		"Alt":  words(alt),
		"A": types.Dict{
			"O":         types.Name("Layout"),
			"Placement": types.Name("Block"),
			"BBox":      types.Array{types.Integer(0), types.Integer(0), points(drawing.Width), points(drawing.Height)},
		},
	})
	s.parents = append(s.parents, types.Integer(len(s.figures)), parents)
	s.figures = append(s.figures, figure)
}

func (s *structure) finish(d *document) {
	d.set(s.document, types.Dict{"Type": types.Name("StructElem"), "S": types.Name("Document"), "P": s.root, "K": s.figures})
	d.set(s.root, types.Dict{
		"Type":              types.Name("StructTreeRoot"),
		"K":                 types.Array{s.document},
		"ParentTree":        d.add(types.Dict{"Nums": s.parents}),
		"ParentTreeNextKey": types.Integer(len(s.figures)),
	})
}
