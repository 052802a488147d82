package program

// Act is an act as the reader counts them, and what is to be said of it, in no
// language yet.
type Act struct {
	Line int // of the source, from 1
	Kind ActKind
	Said Saying // nil: it goes on under what was said of the act before
}

// ActKind tells what givens and reasons are told together from what the hand does.
type ActKind uint8

// The kinds of act.
const (
	Doing   ActKind = iota // with the compasses, the straightedge or the pencil: a sentence
	Giving                 // what is there from the start: a noun with its article
	Marking                // what a mark says: a clause
	Stating                // what a claim says: a clause
)

// Saying is something to be said: a Phrase, Words, Letters, a CurveName, a
// CurveNames, a Numeral, a Text or a List.
type Saying interface{ saying() }

// Phrase is a message of the catalogue, with what goes into its places.
type Phrase struct {
	Key  string
	With With
}

// With is what goes into the places of a message, by their names.
type With map[string]Saying

// Words are a sentence of a source, with places in braces. Where the catalogue
// has a message under Key, that is said instead: so the library speaks every
// language. Key is "" for what the user wrote.
type Words struct {
	Key, Text string
	With      With
}

// Letters are the names of slots, written together: AB.
type Letters []int

// CurveName is a line or circle by its name; an arc without one goes by its centre.
type CurveName int

// CurveNames are two that meet: arcs without names are told together.
type CurveNames [2]Saying

// Numeral is a number as the source has it, with a decimal point.
type Numeral string

// Text is said as it stands in every language.
type Text string

// List is told as A, B and C.
type List []Saying

func (Phrase) saying()     {}
func (Words) saying()      {}
func (Letters) saying()    {}
func (CurveName) saying()  {}
func (CurveNames) saying() {}
func (Numeral) saying()    {}
func (Text) saying()       {}
func (List) saying()       {}
