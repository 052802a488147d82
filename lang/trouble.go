package lang

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/source"
)

// trouble is a choice that could not be made.
type trouble struct{ solve.Trouble }

func troubleAt(list []solve.Trouble, step int) *trouble {
	for _, t := range list {
		if t.Step == step && len(t.Fails) > 0 {
			return &trouble{t}
		}
	}
	return nil
}

// report blames the line that leaves the choice open, and notes what stood in
// the way of the values tried.
func (t *trouble) report(p *program.Program, inputs []*big.Rat, problems *source.List) {
	in := p.Inputs[t.Input]
	if len(t.Fails) == 1 {
		t.reportAlone(p, inputs, problems)
		return
	}
	lo, hi := t.Tried[0], t.Tried[0]
	for _, v := range t.Tried {
		if v.Cmp(lo) < 0 {
			lo = v
		}
		if v.Cmp(hi) > 0 {
			hi = v
		}
	}
	prob := problems.Add(in.Span, fmt.Sprintf("no choice fits here: %s from %s to %s was tried", word(in), short(lo), short(hi)))
	for i, f := range t.Fails {
		if i == mostNotes {
			break
		}
		err := t.truly(p, inputs, f)
		at := p.Steps[f.Step].Span
		prob.Notes = append(prob.Notes, source.Note{Span: at, Text: fmt.Sprintf("with %s: %s", short(f.Value), err)})
		var fault *program.Fault
		if errors.As(err, &fault) && prob.Help == "" {
			prob.Help = fault.Help
		}
	}
}

// reportAlone tells of the one step that fails for every value that was tried.
func (t *trouble) reportAlone(p *program.Program, inputs []*big.Rat, problems *source.List) {
	f := t.Fails[0]
	before := len(*problems)
	eval.Failure{Index: f.Step, Step: p.Steps[f.Step], Err: t.truly(p, inputs, f)}.Report(problems)
	in := p.Inputs[t.Input].Span
	if len(*problems) > before && in != p.Steps[f.Step].Span {
		prob := (*problems)[len(*problems)-1]
		prob.Notes = append(prob.Notes, source.Note{Span: in, Text: "whatever is chosen here"})
	}
}

// mostNotes is how many obstacles are told.
const mostNotes = 4

// truly is the failure in exact numbers: solve knows it only roughly.
func (t *trouble) truly(p *program.Program, inputs []*big.Rat, f solve.Fail) error {
	tried := slices.Clone(inputs)
	tried[t.Input] = f.Value
	_, failures := eval.Run(p, tried)
	for _, g := range failures {
		if g.Index == f.Step {
			return g.Err
		}
	}
	return f.Err
}

func word(in *program.Input) string {
	return map[program.InputKind]string{
		program.Opening: "an opening", program.Coordinate: "a coordinate",
		program.Fraction: "a part of the way", program.Bearing: "a direction in degrees",
	}[in.Kind]
}
