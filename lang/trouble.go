package lang

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/source"
)

// trouble is a choice that could not be made.
type trouble struct{ solve.Trouble }

// troubleAt is the trouble with a step, or nil; last tells whether it is the
// last one with that choice, which tells of all that stands in its way.
func troubleAt(list []solve.Trouble, step int) (found *trouble, last bool) {
	for _, t := range list {
		switch {
		case t.Step == step && len(t.Fails) > 0:
			found, last = &trouble{t}, true
		case found != nil && t.Input == found.Input:
			last = false
		}
	}
	return found, last
}

// report blames the line that leaves the choice open, and notes what stood in
// the way of the values tried.
func (t *trouble) report(p *program.Program, inputs []*big.Rat, problems *source.List) {
	in := p.Inputs[t.Input]
	if f, alone := t.stubborn(); alone {
		t.reportAlone(f, p, inputs, problems)
		return
	}
	lo, hi := t.Tried[0], t.Tried[len(t.Tried)-1]
	prob := problems.Add(in.Span, fmt.Sprintf("no choice fits here: %s from %s to %s was tried", word(in), short(lo), short(hi)))
	for i, f := range t.Fails {
		if i == mostNotes {
			break
		}
		err := t.truly(p, inputs, f)
		text := fmt.Sprintf("with %s: %s", short(f.Value), err)
		var fault *program.Fault
		if wants := t.wants(p, inputs, f); in.Kind == program.Opening && wants != "" {
			text = "this wants an opening " + wants
			prob.Help = "no opening does for all of these: change one of them, or what it meets"
		} else if errors.As(err, &fault) && prob.Help == "" {
			prob.Help = fault.Help
		}
		prob.Notes = append(prob.Notes, source.Note{Span: p.Steps[f.Step].Span, Text: text})
	}
}

// stubborn is the first step that fails for every value, or the only one that fails: it is no
// matter of choosing.
func (t *trouble) stubborn() (first solve.Fail, found bool) {
	if len(t.Fails) == 1 {
		return t.Fails[0], true
	}
	for _, f := range t.Fails {
		if !f.Fits && (!found || f.Step < first.Step) {
			first, found = f, true
		}
	}
	return first, found
}

// beyond is how far past a bound a value is tried exactly, as a part of it.
var beyond = big.NewRat(1, 100)

// wants tells for which values a step goes well, "" where exact numbers do not
// bear out what was found roughly: that it does so at the bounds, and fails a
// little beyond them.
func (t *trouble) wants(p *program.Program, inputs []*big.Rat, f solve.Fail) string {
	past := func(v, part *big.Rat) *big.Rat {
		return new(big.Rat).Mul(v, new(big.Rat).Add(big.NewRat(1, 1), part))
	}
	if f.Lo != nil && (!t.fits(p, inputs, f, past(f.Lo, beyond)) || t.fits(p, inputs, f, past(f.Lo, new(big.Rat).Neg(beyond)))) ||
		f.Hi != nil && (!t.fits(p, inputs, f, past(f.Hi, new(big.Rat).Neg(beyond))) || t.fits(p, inputs, f, past(f.Hi, beyond))) {
		return ""
	}
	switch {
	case !f.Fits:
		return ""
	case f.Lo != nil && f.Hi != nil:
		return fmt.Sprintf("from %s to %s", short(f.Lo), short(f.Hi))
	case f.Lo != nil:
		return "over " + short(f.Lo)
	case f.Hi != nil:
		return "under " + short(f.Hi)
	}
	return ""
}

// fits tells whether a step goes well for a value, in exact numbers.
func (t *trouble) fits(p *program.Program, inputs []*big.Rat, f solve.Fail, v *big.Rat) bool {
	tried := slices.Clone(inputs)
	tried[t.Input] = v
	st := program.NewState(p, tried, exact.NewField())
	st.Unbounded = f.Unbounded
	return doneUpTo(st, f.Step) == nil
}

// reportAlone tells of the one step that fails for every value that was tried.
func (t *trouble) reportAlone(f solve.Fail, p *program.Program, inputs []*big.Rat, problems *source.List) {
	if f.Inputs != nil && reportUnclear(p, f.Step, doneUpTo(program.NewState(p, f.Inputs, exact.NewField()), f.Step), problems) {
		return
	}
	before, err := len(*problems), t.truly(p, inputs, f)
	if reportUnclear(p, f.Step, err, problems) {
		return
	}
	eval.Failure{Index: f.Step, Step: p.Steps[f.Step], Err: err}.Report(problems)
	if len(*problems) == before {
		return
	}
	in, prob := p.Inputs[t.Input], (*problems)[len(*problems)-1]
	note := source.Note{Span: in.Span, Text: "whatever is chosen here"}
	if forbidden := t.forbidden(p, inputs, f); forbidden != "" {
		note.Text = forbidden
		prob.Help = fmt.Sprintf("change %s, or what %s meets", in.Bounds, in.Name)
	} else if in.Span == p.Steps[f.Step].Span {
		return
	}
	prob.Notes = append(prob.Notes, note)
}

// forbidden tells for which openings a step would go well that the bounds of the source
// forbid, and which ones they leave; "" where no others would do.
func (t *trouble) forbidden(p *program.Program, inputs []*big.Rat, f solve.Fail) string {
	if f.Past == nil {
		return ""
	}
	in, wants := p.Inputs[t.Input], t.wants(p, inputs, *f.Past)
	at := slices.IndexFunc(t.Fails, func(g solve.Fail) bool { return g.Step == in.Step })
	if wants == "" || at < 0 {
		return ""
	}
	leaves := t.wants(p, inputs, t.Fails[at])
	if leaves == "" {
		return ""
	}
	lo, hi := t.Tried[0], t.Tried[len(t.Tried)-1]
	return fmt.Sprintf("%s would have to be open %s, and %s leaves what is %s; openings from %s to %s were tried", in.Name, wants, in.Bounds, leaves, short(lo), short(hi))
}

// once is a list in which nothing is told twice of one place: an act may stand in the way of
// more choices than one, and fail besides.
func once(list source.List) source.List {
	said := map[source.Span]string{}
	return slices.DeleteFunc(list, func(p *source.Problem) bool {
		again := said[p.Span] == p.Text
		said[p.Span] = p.Text
		return again
	})
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
		program.Opening: "an opening", program.Abscissa: "a coordinate", program.Ordinate: "a coordinate", program.Slope: "a slope",
		program.Fraction: "a part of the way", program.Bearing: "a direction in degrees",
	}[in.Kind]
}
