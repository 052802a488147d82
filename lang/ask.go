package lang

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/check"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/slip"
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
