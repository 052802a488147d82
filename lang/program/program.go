// Package program is a construction made flat: names are numbers, library
// calls are expanded, loops unrolled. Running its steps in order, on chosen
// inputs, resolves the figure; the same Program can be run again on others.
package program

import (
	"math/big"
	"regexp"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/source"
)

// Program is finished when handed on and never changed afterwards.
type Program struct {
	Source     *source.File
	Title      string
	Unit       *big.Rat // millimetres of paper for one unit
	Paper      *figure.Paper
	Theme      string
	Language   string // a known tag, or ""
	Slots      []*Slot
	Inputs     []*Input
	Steps      []*Step
	Claims     []Claim     // the file's own, in order
	Answers    []Answer    // that the source names, then those asked for from outside
	Varied     []Varied    // in the order of the source
	Task       *Task       // nil: none
	Acts       []Act       // as the reader counts them
	Operations Operations  // of the tools, inner acts too
	Centres    map[int]int // of circles and arcs, by their slots
}

// How far the figures reach, in units, that plain values are meant for, the least and the most that this
// may be in millimetres, and the margin that it leaves on a named paper.
const (
	PlainReach  = 8
	leastHandMM = 48
	mostHandMM  = 120
	MarginMM    = 15
)

// Hand is how far a plain hand's figure reaches on its paper, in units. It is the same
// for all units and papers with which the figure is neither tiny nor too large.
func (p *Program) Hand() float64 {
	mm, _ := p.Unit.Float64()
	reach := min(max(PlainReach*mm, leastHandMM), mostHandMM)
	if p.Paper != nil {
		w, _ := p.Paper.Width.Float64()
		h, _ := p.Paper.Height.Float64()
		reach = max(min(reach, max(w, h)-2*MarginMM), 20)
	}
	return reach / mm
}

// Kind is what a slot holds.
type Kind uint8

// The kinds, with the Go type of their values.
const (
	Point  Kind = iota // geom.Point
	Line               // *Curve with a Straight
	Circle             // *Curve with a Circle
	Number             // Amount
	Length             // Amount
	Area               // Amount
	Size               // geom.Angle
	Rim                // geom.Rim
)

// String is the kind's word in messages and in the heads of constructions.
func (k Kind) String() string {
	return [...]string{"point", "line", "circle", "number", "length", "area", "angle", "rim"}[k]
}

// Amount is an exact number, length or area in units.
type Amount = *exact.Mixed

// Slot is a place for one value.
type Slot struct {
	Name      string
	Kind      Kind
	Span      source.Span // where it was made
	Ink       *Ink        // how it is drawn; nil when it is not
	Between   *[2]int     // the points that a straight is named after
	Mentioned bool        // a line after the one that made it speaks of it
	Twice     bool        // its name was taken: it never gets a value, and nobody else is blamed
	Top       bool        // made by the file itself, not inside a construction
	As        int         // the slot that shows it: of what a call in full gives or takes, the caller's
	Called    string      // what a reader calls it; "" for a curve without a letter
	Only      bool        // it is the only circle on the paper
	By        []int       // the points that a line without a letter goes by
	Told      bool        // an arc that a caption speaks of
	Aside     bool        // inside a construction that is unseen: no ink reaches out for it
}

// Ink is how a slot's value goes on the paper. It is settled while checking.
type Ink struct {
	figure.Thing
	Whole bool    // a circle, not an arc
	Ends  *[2]int // a part arc's end points
}

// Curve is a straight or a circle with what is known of it. On and Used grow
// while the program runs.
type Curve struct {
	Straight *geom.Straight
	Circle   *geom.Circle
	On       []geom.Point // points known to lie on it
	Used     []geom.Point // points of the figure that it is drawn for
}

// Line is the straight as a whole line.
func (c *Curve) Line() geom.Line { return c.Straight.Line }

// Input is something that the source leaves to chance.
type Input struct {
	Span    source.Span
	Kind    InputKind
	Name    string   // of the thing that depends on it, for messages
	Default *big.Rat // what a plain hand would take first
	Step    int      // how many steps come before the one that uses it
	Round   *Round   // the circle that a bearing is on; nil: none
	Bounds  string   // what the source says of an opening: "over half AB under AB"
	Obtuse  bool     // of a triangle that the source wants to be obtuse
}

// Round is a circle that a point is left to chance on.
type Round struct {
	Text   string // "on k"
	Centre func(*State) geom.Point
	Points int // how many the task asks for on it
}

// InputKind says what values an input likes.
type InputKind uint8

// The kinds of input.
const (
	Opening  InputKind = iota // of the compasses, a length
	Abscissa                  // of a free point, in units
	Ordinate                  // of a free point, in units
	Slope                     // of a free line
	Fraction                  // a part of a way, between 0 and 1
	Bearing                   // a direction, in whole degrees; a part of a degree over them turns by about so much of 57°
	Nearby                    // how far a measurement given with about is from its value: as a part of it, of an angle in radians
)

// Step is one act, claim or mark.
type Step struct {
	Span  source.Span
	Via   []Call // the library calls that led here, outermost first
	Proof bool   // a claim, mark or label: decides something and makes nothing
	Adds  int    // which one it is of the acts that add to what is there, joins and calls; 0: none
	Tools Tools  // what it is done with
	Do    func(*State) error
}

// Answer is an expression to be worked out in a finished run. Problem, when
// set, says why it cannot be; else Value gives the exact text, "" where there
// is none that is short enough, and a decimal.
type Answer struct {
	Expr    string // as written
	Problem string // why it cannot be worked out; else ""
	Angle   bool
	Dim     int // power of length, where it is no angle
	Value   func(*State) (Value, error)
}

// Value is what an expression comes to.
type Value struct {
	Exact   string // "3√2 cm"; "" when no short exact form exists
	Decimal string // "4.242641 cm", rounded
	Rough   float64
	// Measured is what a pupil reads off, of that which is not one number; else "".
	Measured string
}

// Varied is a measurement that each variant has to itself, and its value in this one.
type Varied struct {
	Name   string
	Span   source.Span
	Values []*big.Rat // in units or degrees, more than one, evenly spaced
	Picked int        // index into Values
	Word   string     // after a value as it is written: "°", " cm" or ""
	Per    *big.Rat   // how many of what the word names a unit is; nil: 1
}

// Written is a value in what its word names.
func (v Varied) Written(i int) *big.Rat {
	if v.Per == nil {
		return v.Values[i]
	}
	return new(big.Rat).Mul(v.Values[i], v.Per)
}

// Task is what a figure asks of a pupil.
type Task struct {
	Text  string
	Marks int // 0: unsaid
}

// place is a name in braces: {a}
var place = regexp.MustCompile(`\{([^{}]*)\}`)

// Places are the names that stand in braces in a task's text.
func Places(text string) (names []string) {
	for _, m := range place.FindAllStringSubmatch(text, -1) {
		names = append(names, m[1])
	}
	return names
}

// Doubled is the first place of a text that has a unit of length or ° after it,
// though what goes into it brings its own; "" where there is none.
func Doubled(text string, brings func(name string) bool) string {
	for _, m := range withUnit.FindAllStringSubmatch(text, -1) {
		if brings(m[1]) {
			return m[0]
		}
	}
	return ""
}

var withUnit = regexp.MustCompile(`\{([^{}]*)\} ?(?:mm\b|cm\b|°)`)

// Fill puts values into the places of a text.
func Fill(text string, value func(name string) string) string {
	return place.ReplaceAllStringFunc(text, func(m string) string { return value(m[1 : len(m)-1]) })
}

// Claim is a claim of the source and the step that decides it.
type Claim struct {
	Text string
	Line int
	Step *Step
	Here bool // claimed of this figure only
	// Inequality tells that part of the claim can hold on one side of a border
	// and fail on the other, so that trying it elsewhere proves nothing.
	Inequality bool
}

// Call is where a construction was called from.
type Call struct {
	Span   source.Span
	Name   string
	Unseen bool // none of it is drawn but what it gives
}

// Fault is why a step failed. Span, when set, overrules the step's own place.
type Fault struct {
	Text  string
	Help  string
	False bool // a claim or mark was decided, and does not hold
	// Cascade tells that an earlier mistake may well be the cause.
	Cascade bool
	Range   bool // a choice left to chance was out of its bounds: others may do
	// Unclear is set where nothing says which of several places is meant: Text
	// without the places, which with another choice would be others.
	Unclear string
	Span    *source.Span
	Notes   []source.Note
}

// Error is the fact.
func (f *Fault) Error() string { return f.Text }
