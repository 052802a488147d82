package lang

import (
	"math"
	"math/big"
	"slices"
	"strconv"

	"trammel/geom"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/warn"
)

// How far a nudge moves a choice: openings by a part of themselves, places by a part of the
// figure, parts of a way, slopes, degrees.
const (
	nudgedOpening = 0.03
	nudgedPlace   = 0.02
	nudgedPart    = 0.023 // seldom to exactly a half
	nudgedSlope   = 0.04
	nudgedDegrees = 2
)

// nudges are the ways in which each choice is tried.
var nudges = []float64{1, -1, 2, -2}

// mostNudges is how many figures are tried.
const mostNudges = 60

// By which part of itself the first figure may be changed, and where something misleads that is
// not to be helped by that.
const (
	little = 0.08
	more   = 0.2
)

// nudged moves what was chosen by little, one choice after another, as long as less in the
// figure is at fault: what only looks equal, say, is plainly different then, and the picture
// stays as it was otherwise. So a line that is added makes nobody draw another figure.
func nudged(p *program.Program, o outcome, suffers fault) (outcome, fault) {
	if suffers == fine {
		return o, fine
	}
	n := nudger{p: p, was: o.state, inputs: o.Inputs}
	n.size, _ = spread(o.state)
	n.faults = n.look(o.Inputs)
	for n.most = little * n.size; n.faults.any() && n.round(); {
	}
	for n.most = more * n.size; n.faults.misleading > 0 && n.round(); {
	}
	o.Work += n.tried * len(p.Steps)
	better := runOn(p, solve.Choice{Inputs: n.inputs, Hand: o.Hand, Work: o.Work})
	if f := better.fault(); better.stands() && f < suffers && better.excess() <= max(0, o.excess()) {
		return better, f
	}
	return o, suffers
}

// nudger is the state of a search for a figure close by.
type nudger struct {
	p      *program.Program
	was    *program.State // the first figure,
	size   float64        // how large it is,
	most   float64        // and how far its points may go
	inputs []*big.Rat
	faults faults // of the figure with these
	tried  int    // figures
}

// faults are how many things mislead in a figure, and are clumsy.
type faults struct{ misleading, clumsy int }

func (f faults) any() bool { return f != faults{} }

func (f faults) less(g faults) bool {
	return f.misleading < g.misleading || f.misleading == g.misleading && f.clumsy < g.clumsy
}

// round tries to move each choice, the latest first, and tells whether any was moved.
func (n *nudger) round() (moved bool) {
	for _, far := range nudges {
		for in, given := range slices.Backward(n.p.Inputs) {
			if n.tried < mostNudges && n.faults.any() && leftToChance(given) && given.Span.File == n.p.Source {
				moved = n.try(in, far) || moved
			}
		}
	}
	return moved
}

// try moves a choice if the figure is better then.
func (n *nudger) try(in int, far float64) bool {
	inputs := slices.Clone(n.inputs)
	inputs[in] = n.moved(n.p.Inputs[in].Kind, inputs[in], far)
	f := n.look(inputs)
	if !f.less(n.faults) {
		return false
	}
	n.inputs, n.faults = inputs, f
	return true
}

// moved is a value moved so many nudges, in few decimals; one that cannot be moved stays.
func (n *nudger) moved(kind program.InputKind, v *big.Rat, far float64) *big.Rat {
	x, _ := v.Float64()
	way := n.way(kind, x)
	to := x + far*way
	if way <= 0 || kind == program.Bearing && math.Abs(math.Remainder(to, 90)) < 2*nudgedDegrees {
		return v // not to what looks upright or level
	}
	decimals := max(0, int(math.Ceil(-math.Log10(way/3))))
	short, _ := new(big.Rat).SetString(strconv.FormatFloat(to, 'f', decimals, 64))
	return short
}

// way is how far a nudge moves a value.
func (n *nudger) way(kind program.InputKind, x float64) float64 {
	switch kind {
	case program.Opening:
		return nudgedOpening * x
	case program.Slope:
		return nudgedSlope
	case program.Fraction:
		return nudgedPart
	case program.Bearing:
		return nudgedDegrees
	}
	return nudgedPlace * n.size
}

// look counts the faults of the figure with some inputs, on rough numbers.
func (n *nudger) look(inputs []*big.Rat) faults {
	n.tried++
	worst := faults{misleading: math.MaxInt}
	t, err := eval.Try(n.p, inputs, eval.Roughly)
	if err != nil || len(t.Failed) > 0 || n.changed(t.State) > n.most {
		return worst
	}
	eval.Guard(func() error {
		worst.misleading, worst.clumsy = warn.Count(t.State)
		return nil
	})
	return worst
}

// changed is how far any point has moved from where it was in the first figure.
func (n *nudger) changed(st *program.State) (most float64) {
	for i, v := range st.Values {
		p, isPoint := v.(geom.Point)
		if q, was := n.was.Values[i].(geom.Point); isPoint && was && st.Program.Slots[i].Ink != nil {
			most = max(most, math.Hypot(p.X.Float()-q.X.Float(), p.Y.Float()-q.Y.Float()))
		}
	}
	return most
}
