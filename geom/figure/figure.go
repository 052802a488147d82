// Package figure is a resolved construction without ink: what is drawn and
// where, exactly, and what is marked, labelled and claimed. Lengths and
// coordinates are in units of the source; Unit says how long one is on paper.
package figure

import (
	"math/big"

	"trammel/geom"
	"trammel/geom/figure/locale"
)

// Figure is finished when handed on and never changed afterwards.
type Figure struct {
	Title string
	Unit  *big.Rat // millimetres of paper for one unit
	Paper *Paper   // nil: cropped to the figure
	Theme string   // one of Themes; "" is the textbook's
	// Language is the tag of a known locale; "" is English.
	Language string
	// Chance tells that places were left to chance, which may fall otherwise with
	// another unit.
	Chance bool

	// Everything drawn, in the order of drawing.
	Points    []*Point
	Straights []*Straight
	Circles   []*Circle
	Marks     []Mark
	Steps     []Step
	Claims    []Claim
	Measures  []*Measure

	Tell Teller // nil when nobody can
}

// Teller puts a figure in words, in the language of a tag.
type Teller interface {
	// Steps are the captions. A step without words goes on under those of the step before.
	Steps(tag string) []string
	// Written says what is written at a part of the figure, "" of other marks.
	Written(tag string, m Mark) string
	// Finished says that the figure is.
	Finished(tag string) string
}

// Finished says in the figure's language that it is finished.
func (f *Figure) Finished() string {
	if f.Tell == nil {
		return f.Title
	}
	return f.Tell.Finished(f.Language)
}

// Captions are the steps in words, in the figure's language.
func (f *Figure) Captions() []string {
	if f.Tell == nil {
		return make([]string, len(f.Steps))
	}
	return f.Tell.Steps(f.Language)
}

// Written says in the figure's language what is written at its parts, one after the other.
func (f *Figure) Written() (all []string) {
	if f.Tell == nil {
		return nil
	}
	for _, m := range f.Marks {
		if text := f.Tell.Written(f.Language, m); text != "" {
			all = append(all, text)
		}
	}
	return all
}

// Themes are the ways of inking a figure: for a book, an exam paper that is
// copied, a slide, weak eyes, and fingers. None changes the geometry.
var Themes = []string{"textbook", "exam", "slide", "large-print", "tactile"}

// As is the figure in another theme and language; "" keeps its own.
func (f *Figure) As(theme, language string) *Figure {
	g := *f
	if theme != "" {
		g.Theme = theme
	}
	if language != "" {
		g.Language = language
	}
	return &g
}

// Locale is how the figure writes numbers and signs.
func (f *Figure) Locale() locale.Locale {
	l, err := locale.Find(f.Language)
	if err != nil {
		return locale.English
	}
	return l
}

// Words are the text of a label in the figure's language: numbers that the
// compiler has written have the language's decimal sign, the source's own words stand.
func (f *Figure) Words(l Label) string {
	if l.Measured {
		return f.Locale().Numbers(l.Text)
	}
	return l.Text
}

// Paper is a fixed sheet in millimetres.
type Paper struct{ Width, Height *big.Rat }

// Role is why a thing is on the paper; the ink follows from it.
type Role uint8

// The roles, in order of weight.
const (
	Construction Role = iota // drawn on the way: faint, but left in
	Given                    // there from the start: plain
	Result                   // joined, or claimed: what the figure is for
)

// Weight overrules the role: a wish of the source, or Plain of what a construction
// is called for, which is inked as what is given.
type Weight uint8

// The weights.
const (
	Usual Weight = iota
	Faint
	Plain
	Bold
)

// Thing is what everything drawn has in common.
type Thing struct {
	Name   string // as the source has it: "A", "P1", "m"; "" when it has none
	Step   int    // index into Figure.Steps of the act that drew it
	Order  int    // things are drawn from the least to the greatest
	Role   Role
	Weight Weight
	Dashed bool
	Hidden bool   // there, but not drawn (a label or mark may still refer to it)
	Label  *Label // nil: no label
}

// Point is a named point: a given, a meeting or a choice.
type Point struct {
	Thing
	At geom.Point
}

// Straight is a join, a ray or a line. Line has a direction; Start and End are
// its ends along that direction, nil where it runs on.
type Straight struct {
	Thing
	Line       geom.Line
	Start, End *geom.Point
	Used       []geom.Point // points of the figure on it, in no order; ends included
}

// Circle is a circle or an arc.
type Circle struct {
	Thing
	Circle geom.Circle
	Whole  bool // drawn all round, being a circle and not an arc
	// Part, when set, is an arc from Part[0] anticlockwise to Part[1];
	// otherwise an arc is drawn about its Used meetings only.
	Part *[2]geom.Point
	Used []geom.Point // the meetings that the construction uses, in no order
}

// Measure is a given length shown as a separate bar.
type Measure struct {
	Thing
	Length float64 // in units
	Text   string  // "4.5 cm", as Words writes a measure; "" shows the name alone
}

// Label is text that belongs to a thing. Text may hold digits, primes, Greek,
// degree sign and surds; layout sets letters of names in italics.
type Label struct {
	Text     string
	Name     bool // the text is a name (italic), not a measure or words (upright)
	Measured bool // the text is a measure with a decimal point that Words writes as the language does
	Rounded  bool // a measure that is not exact
	Pin      Pin
	Line     int // of the source, where the label is asked for; 0 if a thing has it unasked
}

// Pin is where the source wants a label.
type Pin struct {
	Set   bool
	Clock float64 // direction as on a clock face: 12 is up, 3 is right
}

// Step is an act, or a mark or claim. Things and marks name it by index.
type Step struct {
	Line   int // of the source, from 1
	Given  bool
	Reason bool // a mark or a claim
}

// Claim is what the source claims and how it was decided: the figure exists
// only if every claim holds.
type Claim struct {
	Text string // as written, without the word "claim"
	Line int
	Here bool // claimed of this figure only
}
