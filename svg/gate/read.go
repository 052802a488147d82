package gate

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// reader takes a drawing in, element by element.
type reader struct {
	sheet
	layers []string // of the open groups
	err    error
}

func read(file io.Reader) (*sheet, error) {
	d, r := xml.NewDecoder(file), &reader{}
	for r.err == nil {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		switch v := token.(type) {
		case xml.StartElement:
			r.start(d, v)
		case xml.EndElement:
			if v.Name.Local == "g" {
				r.layers = r.layers[:len(r.layers)-1]
			}
		}
	}
	if r.err == nil && r.width == 0 {
		r.err = errors.New("this is no drawing: there is no svg element with a size")
	}
	return &r.sheet, r.err
}

func (r *reader) start(d *xml.Decoder, e xml.StartElement) {
	a := attributes{}
	for _, x := range e.Attr {
		a[x.Name.Local] = x.Value
	}
	switch e.Name.Local {
	case "svg":
		r.root(a)
	case "g":
		r.layers = append(r.layers, a["class"])
	case "title", "desc":
		r.keep(d.Skip())
	case "line":
		r.path(a, fmt.Sprintf("M%s %s L%s %s", a["x1"], a["y1"], a["x2"], a["y2"]))
	case "circle":
		r.circle(a)
	case "path":
		r.path(a, a["d"])
	case "text":
		r.text(d, e, a)
	default:
		r.keep(fmt.Errorf("the element %s is none that trammel writes", e.Name.Local))
	}
}

type attributes map[string]string

func (r *reader) keep(err error) {
	if r.err == nil {
		r.err = err
	}
}

// number reads a number; an attribute that is not there is 0.
func (r *reader) number(s string) float64 {
	if s == "" {
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	r.keep(err)
	return v
}

// root wants millimetres for units, so that what is measured is paper.
func (r *reader) root(a attributes) {
	size := strings.Fields(a["viewBox"])
	if len(size) != 4 || a["width"] != size[2]+"mm" || a["height"] != size[3]+"mm" {
		r.keep(fmt.Errorf("one unit is not 1 mm: width %q, height %q, viewBox %q", a["width"], a["height"], a["viewBox"]))
		return
	}
	r.width, r.height = r.number(size[2]), r.number(size[3])
}

// layer is that of the innermost group with a class.
func (r *reader) layer() string {
	for i := len(r.layers) - 1; i >= 0; i-- {
		if r.layers[i] != "" {
			return r.layers[i]
		}
	}
	return ""
}

// item makes an item of what every element says.
func (r *reader) item(a attributes) *item {
	i := &item{layer: r.layer(), words: a["aria-label"]}
	i.what, i.owners = sort(a["class"])
	i.filled = a["fill"] != "" && a["fill"] != "none"
	if a["stroke"] != "" {
		i.half = r.number(a["stroke-width"]) / 2
	}
	return i
}

func (r *reader) circle(a attributes) {
	i := r.item(a)
	c, radius := xy{r.number(a["cx"]), r.number(a["cy"])}, r.number(a["r"])
	i.round = &arc{c, radius, 0, 2 * math.Pi}
	if i.filled && i.layer == dots {
		i.lines, i.half = [][]xy{{c}}, radius+i.half
	} else {
		i.lines = [][]xy{i.round.flat()}
	}
	r.add(i)
}

// path reads path data. Curves come apart into one item a piece.
func (r *reader) path(a attributes, data string) {
	p := pathReader{reader: r, words: strings.Fields(spaced.Replace(data))}
	p.run()
	if r.err != nil || len(p.pieces) == 0 {
		r.keep(fmt.Errorf("the path %.40q goes nowhere", data))
		return
	}
	whole := r.item(a)
	if l := whole.layer; l == labels || l == shade || l == marks {
		r.add(p.whole(whole))
		return
	}
	owners := whole.owners
	for k, piece := range p.pieces {
		i := *whole
		i.lines, i.corners, i.round = [][]xy{piece.line}, []xy{piece.line[0], piece.line[len(piece.line)-1]}, piece.round
		if len(owners) == len(p.pieces) {
			i.owners = owners[k : k+1]
		}
		r.add(&i)
	}
}

// text keeps words that are letters yet. Those beside an outline are said already.
func (r *reader) text(d *xml.Decoder, e xml.StartElement, a attributes) {
	var t struct {
		Spans []string `xml:"tspan"`
	}
	r.keep(d.DecodeElement(&t, &e))
	r.live = append(r.live, strings.Join(t.Spans, ""))
}
