package lang

import (
	"math/big"
	"slices"

	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/warn"
)

// How many other plain values are tried for what is left to chance, and after how many steps of
// the search no more are.
const (
	mostHands = 5
	mostWork  = 60_000
)

// outcome is a choice, and the run on it.
type outcome struct {
	solve.Choice
	state    *program.State
	failures []eval.Failure
}

// runOn runs a Program on what was chosen for it.
func runOn(p *program.Program, c solve.Choice) outcome {
	st, failures := eval.Run(p, c.Inputs)
	o := outcome{c, st, failures}
	o.proveLong(p)
	return o
}

// choose chooses what is left to chance, and runs the Program on it. A choice by which the
// figure comes out unlucky, with what only looks right or a crossing too flat to draw, or is
// clumsy, is nudged; if that is no help it is made again from other plain values. The best
// stays, and its warnings are told.
func choose(p *program.Program) outcome {
	best := onPaper(p)
	if !best.stands() || !slices.ContainsFunc(p.Inputs, leftToChance) {
		return best
	}
	worst := best.fault()
	if worst == clumsy && !slices.ContainsFunc(p.Inputs, func(in *program.Input) bool { return leftToChance(in) && in.Span.File == p.Source }) {
		return best // only the openings of calls are left to chance, and they move nothing that shows
	}
	if best, worst = nudged(p, best, worst); worst == clumsy && !clumsyBefore(p, best.Inputs, solve.End(p)) {
		return best // by a line at the end, that is not to move all before it
	}
	for hand, work := 1, best.Work; worst > fine && hand <= mostHands && work < mostWork; hand++ {
		o := runOn(p, solve.InputsBy(byHand(p, hand), best.Hand))
		if o.stands() {
			var f fault
			if o, f = nudged(p, o, o.fault()); f < worst {
				best, worst = o, f
			}
		}
		work += o.Work
	}
	return best
}

// onPaper is the choice of the largest hand by which all ink of the figure has room on its paper;
// the solver itself looks at points and whole circles alone. Where no hand's has, it is that of a
// plain one.
func onPaper(p *program.Program) outcome {
	plain := runOn(p, solve.Inputs(p))
	if !plain.stands() || plain.excess() == 0 {
		return plain
	}
	for hand := plain.Hand + 1; hand < len(solve.Hands) && plain.Work < mostWork; hand++ {
		o := runOn(p, solve.InputsBy(p, hand))
		o.Work += plain.Work
		if o.stands() && o.excess() == 0 {
			return o
		}
		plain.Work = o.Work
	}
	return plain
}

// excess is how many millimetres a figure that stands is too wide or too high for its paper.
func (o outcome) excess() (mm float64) {
	eval.Guard(func() error {
		mm = eval.Figure(o.state, nil).Excess()
		return nil
	})
	return mm
}

// leftToChance tells the inputs that the source gives no value for.
func leftToChance(in *program.Input) bool { return in.Kind != program.Nearby }

// stands tells whether the figure of a choice can be drawn.
func (o outcome) stands() bool { return len(o.Troubles) == 0 && len(o.failures) == 0 }

// fault is what a figure that stands suffers from.
type fault uint8

const (
	fine fault = iota
	clumsy
	unlucky
)

func (o outcome) fault() (worst fault) {
	eval.Guard(func() error {
		if _, bad := warn.Unlucky(o.state); bad {
			worst = unlucky
		} else if warn.Clumsy(o.state) {
			worst = clumsy
		}
		return nil
	})
	return worst
}

// clumsyBefore tells whether a figure is clumsy as far as the steps before `end` go.
func clumsyBefore(p *program.Program, inputs []*big.Rat, end int) (is bool) {
	q := *p
	q.Steps, q.Claims = p.Steps[:end], nil
	t, err := eval.Try(&q, inputs, eval.Roughly)
	if err != nil {
		return false
	}
	eval.Guard(func() error {
		is = warn.Clumsy(t.State)
		return nil
	})
	return is
}

// byHand is the program with the plain values of another hand: each a little larger
// or smaller, by turns, so that what came together comes apart.
func byHand(p *program.Program, hand int) *program.Program {
	q := *p
	q.Inputs = make([]*program.Input, len(p.Inputs))
	for i, in := range p.Inputs {
		q.Inputs[i] = in
		if !leftToChance(in) {
			continue
		}
		other := *in
		turn := int64((i*3+hand*2)%5 - 2) // -2 to 2
		if turn == 0 {
			turn = int64(hand%2*2 - 1)
		}
		switch in.Kind {
		case program.Bearing:
			other.Default = new(big.Rat).Add(in.Default, big.NewRat(7*turn, 1))
		default:
			other.Default = shortly(new(big.Rat).Mul(in.Default, big.NewRat(25+2*turn, 25)))
		}
		q.Inputs[i] = &other
	}
	return &q
}

// shortly is a number in two decimals.
func shortly(x *big.Rat) *big.Rat {
	short, _ := new(big.Rat).SetString(x.FloatString(2))
	return short
}
