package lang

import (
	"math"
	"math/big"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/caption"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// CounterExample is a figure of the source in which a claim fails. Marks that
// do not hold there are left out of it.
type CounterExample struct {
	Line   int
	Claim  string
	Figure *figure.Figure
	Why    string   // "angle ACB − 90° is 5.30°"
	Where  []string // what was left to chance, as it is in this figure: "C at (2.5, 3.14)", "arc c opening 3"
}

// CounterExamples draws for each claim that fails in some figure of the source the
// most legible of those that were found: about as large as the source's own, its points
// apart. A claim that is false as it stands fails in that very figure.
func (r *Result) CounterExamples() (out []CounterExample) {
	if r.program == nil {
		return nil
	}
	own, err := eval.Try(r.program, r.inputs, eval.Enclosed)
	for i, c := range r.program.Claims {
		if err == nil && isFalse(own.Failed[c.Step]) {
			out = append(out, r.counterExample(c, r.inputs))
		} else if r.far().isRefuted(i) {
			out = append(out, r.counterExample(c, r.mostLegible(i)))
		}
	}
	return out
}

// mostLegible are the inputs of the most legible figure far off in which a claim fails.
func (r *Result) mostLegible(claim int) (best []*big.Rat) {
	most := math.Inf(-1)
	for _, inputs := range r.far().refuted[claim] {
		t, err := eval.Try(r.program, inputs, eval.Roughly)
		if err != nil {
			continue
		}
		if mark := r.legible(t.State); mark > most {
			best, most = inputs, mark
		}
	}
	return best
}

// legible marks a figure of the source by how well it can be read: the least
// distance of its named points as a part of its size, less by how much the size is another
// than that of the source's own. That one has the best mark there is.
func (r *Result) legible(st *program.State) float64 {
	own, _ := spread(r.state)
	size, least := spread(st)
	if size == 0 || own == 0 {
		return 0
	}
	moved := false
	for i := range st.Inputs {
		moved = moved || st.Inputs[i].Cmp(r.inputs[i]) != 0
	}
	if !moved {
		return 1
	}
	return min(least/size, 0.15) - 0.1*math.Abs(math.Log2(size/own))
}

// spread is the greatest and the least distance of the named points of a run,
// of those that are apart.
func spread(st *program.State) (greatest, least float64) {
	var ps []geom.Point
	for i, slot := range st.Program.Slots {
		if p, ok := st.Values[i].(geom.Point); ok && slot.Top && slot.Name != "" {
			ps = append(ps, p)
		}
	}
	least = math.Inf(1)
	for i, p := range ps {
		for _, q := range ps[i+1:] {
			d := math.Hypot(p.X.Float()-q.X.Float(), p.Y.Float()-q.Y.Float())
			greatest = max(greatest, d)
			if d > 1e-9 {
				least = min(least, d)
			}
		}
	}
	return greatest, least
}

// counterExample is the figure of some inputs, in which a claim fails.
func (r *Result) counterExample(c program.Claim, inputs []*big.Rat) CounterExample {
	st, failures := eval.Run(r.program, inputs)
	out := CounterExample{Line: c.Line, Claim: c.Text, Figure: eval.Figure(st, caption.Teller{Program: r.program})}
	for _, f := range failures {
		if f.Step == c.Step {
			out.Why = strings.TrimPrefix(f.Err.Error(), "the claim does not hold: ")
		}
	}
	seen := map[int]bool{}
	for i := range r.program.Inputs {
		for _, w := range r.choicesAt(i, st, seen) {
			out.Where = append(out.Where, w.Name+" "+w.Value)
		}
	}
	return out
}
