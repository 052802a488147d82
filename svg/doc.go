// Package svg is a plain drawing and its writing: Doc holds paths, discs and
// text in whole micrometres of paper, and Write turns it into the small, safe
// part of SVG that every program reads alike. It knows no geometry.
package svg

// Micrometre is the unit of every length in a Doc: 1000 are a millimetre.
type Micrometre = int

// Doc is one drawing. The origin is the upper left corner, Y runs down.
type Doc struct {
	Width, Height Micrometre
	ID            string // prefix of every id in the file
	Lang          string // BCP 47, such as "en"
	Title         string
	Desc          string
	Groups        []Group // painted in order
}

// Group is items that belong together. The Class of a group and of an item is
// words by which the user's own tools find it.
type Group struct {
	Class string
	Items []Item
}

// Item is a Path, a Disc or a Text.
type Item interface{ item() }

// Ink is how a path is stroked and filled. A zero Width strokes nothing. Full
// lines end and turn as a round pen does; dashes are cut square, to their length.
type Ink struct {
	Stroke string // "#rrggbb"
	Width  Micrometre
	Dash   []Micrometre // strokes and gaps, empty for a full line
	Fill   string       // "#rrggbb" or "" for none
}

// XY is a place on the paper.
type XY struct{ X, Y Micrometre }

// Path is a run of straight and circular pieces.
type Path struct {
	Ink
	Class  string
	Start  XY
	Pieces []Piece
	Closed bool
}

// Piece goes on to To: straight when Radius is 0, else along a circle of that
// radius. Large and Clockwise (as seen on the paper) choose among the arcs as in SVG.
type Piece struct {
	To        XY
	Radius    Micrometre
	Large     bool
	Clockwise bool
}

// Disc is a circle: a dot when filled.
type Disc struct {
	Ink
	Class  string
	Centre XY
	Radius Micrometre
}

// Text is one line of words with its left end on the baseline At.
type Text struct {
	At    XY
	Class string
	Runs  []Run
	Size  Micrometre // figure height (the height of a capital), as ISO 3098 counts
	Fill  string     // "#rrggbb"
	Sans  bool       // without serifs and upright throughout, as large print asks
	// Braille sets the words in raised dots of one size, whatever Size says.
	Braille bool
}

// Run is a stretch of text in one face.
type Run struct {
	Text   string
	Italic bool
	Sub    bool // lowered and smaller
	// Top and Bottom, when set, are a fraction that stands in place of Text.
	Top, Bottom []Run
	Over        int // how many root bars run over it: 1 in the radicand of the √ before it, 2 in a root inside that one
}

func (Path) item() {}
func (Disc) item() {}
func (Text) item() {}
