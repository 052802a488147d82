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

// choose chooses what is left to chance. A choice by which the figure comes out
// unlucky, with what only looks right or a crossing too flat to draw, is made again
// from other plain values; if none is better, the first stays, and its warnings are told.
func choose(p *program.Program) solve.Choice {
	first := solve.Inputs(p)
	if len(first.Troubles) > 0 || !slices.ContainsFunc(p.Inputs, leftToChance) {
		return first
	}
	if stands, misleads := looks(p, first); !stands || !misleads {
		return first
	}
	for hand := 1; hand <= mostHands; hand++ {
		c := solve.Inputs(byHand(p, hand))
		if stands, misleads := looks(p, c); stands && !misleads {
			return c
		}
	}
	return first
}

// leftToChance tells the inputs that the source gives no value for.
func leftToChance(in *program.Input) bool { return in.Kind != program.Nearby }

// looks tells whether the figure of a choice stands, and whether it misleads.
func looks(p *program.Program, c solve.Choice) (stands, misleads bool) {
	st, failures := eval.Run(p, c.Inputs)
	if len(c.Troubles) > 0 || len(failures) > 0 {
		return false, false
	}
	eval.Guard(func() error {
		_, misleads = warn.Unlucky(st)
		return nil
	})
	return true, misleads
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
