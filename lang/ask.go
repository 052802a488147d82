package lang

import (
	"fmt"
	"math"
	"math/big"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/check"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/slip"
	"trammel/lang/solve"
)

// Answer is what an expression comes to in a figure.
type Answer struct {
	Expr    string
	Exact   string // "3√2 cm"; "" when no short exact form exists
	Decimal string // "4.242641 cm", rounded
	// Measured is "42 mm", "37°": to the nearest millimetre of paper, or degree.
	Measured string
	Problem  string // why there is no answer; else ""
}

// Ask works out expressions of the figure that a source makes: lengths, ratios,
// angles, areas. Without a figure there are no answers, and the Result says why.
func Ask(path string, text []byte, exprs []string) ([]Answer, *Result) {
	out := compile(path, text, check.Options{Asks: exprs})
	if out.Figure == nil {
		return nil, out
	}
	all := out.Answers()
	return all[len(all)-len(exprs):], out
}

// Answers are what the source names for its answer sheet.
func (r *Result) Answers() []Answer {
	if r.Figure == nil {
		return nil
	}
	var out []Answer
	for _, a := range r.program.Answers {
		out = append(out, r.answer(a))
	}
	return out
}

func (r *Result) answer(a program.Answer) Answer {
	out := Answer{Expr: a.Expr, Problem: a.Problem}
	if a.Problem != "" {
		return out
	}
	err := eval.Guard(func() error {
		v, err := a.Value(r.state)
		if err != nil {
			return err
		}
		out.Exact, out.Decimal, out.Measured = v.Exact, v.Decimal, v.Measured
		if out.Measured == "" {
			out.Measured = r.measured(a, v.Rough)
		}
		return nil
	})
	if err != nil {
		out.Problem = err.Error()
	}
	return out
}

// measured is a value as a pupil reads it off: lengths to the nearest
// millimetre of paper, angles to the nearest degree, halves up as at school; the
// rest to three digits.
func (r *Result) measured(a program.Answer, x float64) string {
	switch {
	case a.Angle:
		return nearest(x) + "°"
	case a.Dim == 1:
		mm, _ := r.program.Unit.Float64()
		return nearest(x*mm) + " mm"
	}
	return geom.TrimZeros(geom.Significant(x)) + r.program.UnitWord(a.Dim)
}

// nearest is a whole number. What is computed as a hair under a half is one.
func nearest(x float64) string {
	const hair = 1e-9
	return fmt.Sprintf("%.0f", math.Floor(x+0.5+hair))
}

// Choice is something that the source leaves to chance, and what it became.
type Choice struct {
	Line  int
	Name  string // "arc c", "P"
	Value string // "opening 3.5", "at (3, 1.5)"
	Range string // "0.5 to 30": what else would have done; "" where that is not one number
}

// Choices tells what was chosen, in the order of the source.
func (r *Result) Choices() []Choice {
	if r.Figure == nil {
		return nil
	}
	var out []Choice
	seen := map[int]bool{}
	for i, in := range r.program.Inputs {
		if in.Kind == program.Nearby {
			continue
		}
		list := r.choicesAt(i, r.state, seen, geom.Point.String)
		if in.Kind == program.Opening && len(list) > 0 {
			if lo, hi := solve.Range(r.program, r.inputs, i); lo.Cmp(hi) != 0 {
				list[0].Range = fmt.Sprintf("%s to %s", short(lo), short(hi))
			}
		}
		out = append(out, list...)
	}
	return out
}

// choicesAt tells what an input of the file itself has become in a run: an
// opening, or where the points of its line stand, once for each line seen.
func (r *Result) choicesAt(input int, st *program.State, seen map[int]bool, place func(geom.Point) string) []Choice {
	in := r.program.Inputs[input]
	if in.Span.File != r.program.Source {
		return nil
	}
	line, _ := in.Span.File.Position(in.Span.Start)
	switch {
	case in.Kind == program.Opening:
		return []Choice{{Line: line, Name: in.Name, Value: "opening " + short(st.Inputs[input])}}
	case seen[line]:
		return nil
	}
	seen[line] = true
	return r.pointsOf(line, st, place)
}

// plainly writes a place to two decimals.
func plainly(p geom.Point) string {
	text := fmt.Sprintf("(%.2f, %.2f)", p.X.Float(), p.Y.Float())
	return strings.NewReplacer("-0.00", "0", "-", "−", ".00", "").Replace(text)
}

// pointsOf tells where the points stand in a run that a line of the source leaves to chance.
func (r *Result) pointsOf(line int, st *program.State, place func(geom.Point) string) []Choice {
	var out []Choice
	for i, slot := range r.program.Slots {
		at, _ := slot.Span.File.Position(slot.Span.Start)
		p, isPoint := st.Values[i].(geom.Point)
		if slot.Top && slot.Name != "" && at == line && isPoint && slot.Span.File == r.program.Source {
			out = append(out, Choice{Line: line, Name: slot.Name, Value: "at " + place(p)})
		}
	}
	return out
}

func short(r *big.Rat) string {
	if r.IsInt() {
		return r.Num().String()
	}
	f, _ := r.Float64()
	return fmt.Sprintf("%.4g", f)
}

// Tolerance is how far an act of the pupil may be beside its place.
type Tolerance = slip.Tolerance

// Bands are where the results of the figure may lie when the drawing slips by a
// tolerance: what a marker accepts.
func (r *Result) Bands(t Tolerance) []figure.Band {
	if r.Figure == nil {
		return nil
	}
	return slip.Bands(r.state, t)
}
