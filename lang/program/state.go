package program

import (
	"math/big"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
)

// State is one run of a Program.
type State struct {
	Program *Program
	Field   *exact.Field
	Inputs  []*big.Rat
	Values  []any // by slot; nil when not made, or when what it needs failed
	Marks   []figure.Mark
	Claims  []figure.Claim
	// Crossings are the sines of the angles under which curves meet, in the
	// order of meeting: how well the figure can be drawn. Floats: for choosing only.
	Crossings []float64
}

// NewState is a run that is about to begin.
func NewState(p *Program, inputs []*big.Rat) *State {
	return &State{
		Program: p,
		Field:   exact.NewField(),
		Inputs:  inputs,
		Values:  make([]any, len(p.Slots)),
	}
}

// Point is the value of a point's slot.
func (s *State) Point(slot int) geom.Point { return s.Values[slot].(geom.Point) }

// Points are the values of points' slots.
func (s *State) Points(slots []int) []geom.Point {
	out := make([]geom.Point, len(slots))
	for i, n := range slots {
		out[i] = s.Point(n)
	}
	return out
}

// Curve is the value of a line's or circle's slot.
func (s *State) Curve(slot int) *Curve { return s.Values[slot].(*Curve) }

// Set gives a slot its value.
func (s *State) Set(slot int, value any) { s.Values[slot] = value }

// Input is the number chosen for an input.
func (s *State) Input(n int) *exact.Real { return s.Field.Rat(s.Inputs[n]) }
