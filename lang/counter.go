package lang

import (
	"math"
	"math/big"
	"math/rand/v2"
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
func (r *Result) CounterExamples(seed uint64) (out []CounterExample) {
	if r.program == nil {
		return nil
	}
	best := make([][]*big.Rat, len(r.program.Claims))
	marks := make([]float64, len(best))
	for _, inputs := range r.nearAndFar(rand.New(rand.NewPCG(seed, stream))) {
		t, err := eval.Try(r.program, inputs, eval.Enclosed)
		if err != nil {
			continue
		}
		mark := r.legible(t.State)
		for i, c := range r.program.Claims {
			if isFalse(t.Failed[c.Step]) && (best[i] == nil || mark > marks[i]) {
				best[i], marks[i] = inputs, mark
			}
		}
	}
	for i, c := range r.program.Claims {
		if best[i] != nil {
			out = append(out, r.counterExample(c, best[i]))
		}
	}
	return out
}

// nearAndFar are inputs of the source's own figure and of others, of which some
// may not exist, from moves of a quarter of each input up to any.
func (r *Result) nearAndFar(random *rand.Rand) [][]*big.Rat {
	out := [][]*big.Rat{r.inputs}
	for i := range 3 * farTrials {
		out = append(out, r.moved(random, big.NewRat(int64(i%6+2), 8), 4))
	}
	return append(out, r.others(random)...)
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
	out := CounterExample{Line: c.Line, Claim: c.Text, Figure: eval.Figure(st, func(tag string) []string { return caption.Of(r.program, tag) })}
	for _, f := range failures {
		if f.Step == c.Step {
			out.Why = strings.TrimPrefix(f.Err.Error(), "the claim does not hold: ")
		}
	}
	seen := map[int]bool{}
	for i := range r.program.Inputs {
		for _, w := range r.choicesAt(i, st, seen, plainly) {
			out.Where = append(out.Where, w.Name+" "+w.Value)
		}
	}
	return out
}
