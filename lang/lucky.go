package lang

import (
	"math/big"
	"slices"

	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/warn"
)

// mostHands is how many other plain values are tried for what is left to chance.
const mostHands = 5

// outcome is a choice, and the run on it.
type outcome struct {
	solve.Choice
	state    *program.State
	failures []eval.Failure
}

// runOn runs a Program on what was chosen for it.
func runOn(p *program.Program, c solve.Choice) outcome {
	st, failures := eval.Run(p, c.Inputs)
	return outcome{c, st, failures}
}

// choose chooses what is left to chance, and runs the Program on it. A choice by which the
// figure comes out unlucky, with what only looks right or a crossing too flat to draw, is made
// again from other plain values; if none is better, the first stays, and its warnings are told.
func choose(p *program.Program) outcome {
	first := runOn(p, solve.Inputs(p))
	if !slices.ContainsFunc(p.Inputs, leftToChance) || !first.stands() || !first.misleads() {
		return first
	}
	for hand := 1; hand <= mostHands; hand++ {
		o := runOn(p, solve.Inputs(byHand(p, hand)))
		if o.stands() && !o.misleads() {
			return o
		}
	}
	return first
}

// leftToChance tells the inputs that the source gives no value for.
func leftToChance(in *program.Input) bool { return in.Kind != program.Nearby }

// stands tells whether the figure of a choice can be drawn.
func (o outcome) stands() bool { return len(o.Troubles) == 0 && len(o.failures) == 0 }

// misleads tells whether a figure that stands has come out unlucky.
func (o outcome) misleads() (misleads bool) {
	eval.Guard(func() error {
		_, misleads = warn.Unlucky(o.state)
		return nil
	})
	return misleads
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
