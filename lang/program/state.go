package program

import (
	"errors"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
)

// State is one run of a Program.
type State struct {
	Program *Program
	Field   *exact.Field
	Inputs  []*big.Rat
	Values  []any  // by slot; nil when not made, or when what it needs failed
	Trace   *Trace // where to note what a step reads; nil when nobody asks
	Marks   []figure.Mark
	Claims  []figure.Claim
	Undone  []Undone
	Free    map[*Step]bool // the steps that hang on an input
	Texts   map[int]string // by slot: what stands at a measure's bar
	Step    *Step          // the step that is being done
	// Crossings are how well the meetings can be drawn. Floats: for choosing and
	// warning only.
	Crossings []Crossing
	// Touches are where the one point is named in which two curves touch, and no
	// claim says that they do.
	Touches []Touch
	// Bounds are what the source says of the openings that it leaves to chance.
	// Floats: for choosing only.
	Bounds []Bound
	// Unbounded lets openings be what the source says that they are not, to see what would do.
	Unbounded bool

	input map[int]*exact.Real // as it was read first, where formulas are kept
}

// Bound is what an opening has to be over, or else under.
type Bound struct {
	Over  bool
	Limit float64
}

// Crossing is the sine of the angle under which curves meet, at a step.
type Crossing struct {
	Step     *Step
	Sine     float64
	Straight bool // both are straights
}

// Meet notes a meeting's crossing.
func (s *State) Meet(a, b *Curve, sine float64) {
	s.Crossings = append(s.Crossings, Crossing{s.Step, sine, a.Straight != nil && b.Straight != nil})
}

// Touch is a step that names the one point of two curves that touch.
type Touch struct {
	Step *Step
	a, b *Curve
}

// Touch notes that two curves touch, if that is how they meet.
func (s *State) Touch(a, b *Curve, meetings []geom.Point) {
	if len(meetings) == 1 && (a.Circle != nil || b.Circle != nil) {
		s.Touches = append(s.Touches, Touch{s.Step, a, b})
	}
}

// SayTouch notes that the source says of two curves that they touch.
func (s *State) SayTouch(a, b *Curve) {
	s.Touches = slices.DeleteFunc(s.Touches, func(t Touch) bool {
		return t.a.same(a) && t.b.same(b) || t.a.same(b) && t.b.same(a)
	})
}

// same tells whether two curves are one circle, or parts of one line.
func (c *Curve) same(d *Curve) bool {
	if c.Straight == nil || d.Straight == nil {
		return c.Circle == d.Circle
	}
	return geom.Parallel(c.Line(), d.Line()) && c.Straight.Holds(d.Straight.P)
}

// Undone is a step that failed, or that was passed over for want of what it
// needs and then has Poisoned for its error.
type Undone struct {
	Step *Step
	Err  error
}

// Trace is what a step has read and made so far.
type Trace struct{ Reads, Writes, Inputs []int }

// NewState is a run that is about to begin, on the numbers of a field.
func NewState(p *Program, inputs []*big.Rat, f *exact.Field) *State {
	return &State{
		Program: p,
		Field:   f,
		Inputs:  inputs,
		Values:  make([]any, len(p.Slots)),
		Texts:   map[int]string{},
		Free:    map[*Step]bool{},
		input:   map[int]*exact.Real{},
	}
}

// Poisoned ends a step that needs a value which an earlier failure left unmade.
// It is no problem of its own.
var Poisoned = errors.New("poisoned")

// value is what a slot holds; a slot without a value ends the step.
func value[T any](s *State, slot int) T {
	v, ok := s.Value(slot).(T)
	if !ok {
		panic(Poisoned)
	}
	return v
}

// Value is what a slot holds, nil if nothing.
func (s *State) Value(slot int) any {
	if s.Trace != nil {
		s.Trace.Reads = append(s.Trace.Reads, slot)
	}
	return s.Values[slot]
}

// Point is the value of a point's slot.
func (s *State) Point(slot int) geom.Point { return value[geom.Point](s, slot) }

// Amount is the value of a number's or length's slot.
func (s *State) Amount(slot int) Amount { return value[Amount](s, slot) }

// Angle is the value of an angle's slot.
func (s *State) Angle(slot int) geom.Angle { return value[geom.Angle](s, slot) }

// Curve is the value of a line's or circle's slot.
func (s *State) Curve(slot int) *Curve { return value[*Curve](s, slot) }

// Points are the values of points' slots.
func (s *State) Points(slots []int) []geom.Point {
	out := make([]geom.Point, len(slots))
	for i, n := range slots {
		out[i] = s.Point(n)
	}
	return out
}

// Set gives a slot its value.
func (s *State) Set(slot int, value any) {
	if s.Trace != nil {
		s.Trace.Writes = append(s.Trace.Writes, slot)
	}
	if p, ok := value.(geom.Point); ok {
		s.Field.Joint(p.X, p.Y)
	}
	if !s.Program.Slots[slot].Twice {
		s.Values[slot] = value
	}
}

// Knows tells whether a curve goes through p by the way it was drawn.
func (c *Curve) Knows(p geom.Point) bool { return slices.Contains(c.On, p) }

// mostKnown is how many points of a curve are remembered.
const mostKnown = 512

// Passes notes that a curve goes through the point of a slot, and is drawn
// as far as there unless the point is an unseen one.
func (s *State) Passes(c *Curve, slot int) {
	p := s.Point(slot)
	if len(c.On) == mostKnown {
		c.On = append(c.On[:0], c.On[mostKnown/2:]...) // the older half is forgotten: it only saves roots
	}
	c.On = append(c.On, p)
	if !s.Program.Slots[slot].Aside {
		c.Used = append(c.Used, p)
	}
}

// Input is the number chosen for an input.
func (s *State) Input(n int) *exact.Real {
	x, known := s.input[n]
	if v := s.Choice(n); !known {
		x = s.Field.Free(v)
		if s.Field.KeepsFormulas() {
			s.input[n] = x
		}
	}
	if s.Program.Inputs[n].Kind == Opening {
		x.Sure()
	}
	return x
}

// Choice is Input as a fraction.
func (s *State) Choice(n int) *big.Rat {
	if s.Trace != nil {
		s.Trace.Inputs = append(s.Trace.Inputs, n)
	}
	return s.Inputs[n]
}

// Measure writes a value for a message, to three significant digits and with
// its unit; dim is the power of length.
func (s *State) Measure(dim int, x float64) string {
	return geom.Significant(x) + s.Program.UnitWord(dim)
}

// Exactly is Measure of an exact value.
func (s *State) Exactly(dim int, x *exact.Real) string { return s.Measure(dim, x.Float()) }

// UnitWord is the unit of a length or area after a number: " cm", " mm²".
func (p *Program) UnitWord(dim int) string {
	word := " units"
	switch {
	case p.Unit.Cmp(big.NewRat(10, 1)) == 0:
		word = " cm"
	case p.Unit.Cmp(big.NewRat(1, 1)) == 0:
		word = " mm"
	}
	switch dim {
	case 0:
		return ""
	case 1:
		return word
	}
	return word + geom.Superscript(dim)
}
