package layout

import (
	"math"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
)

// describe puts a figure in plain words: the captions of its steps, one after
// the other, and then what is written at its parts. Of an exam paper it tells
// what is given only, for the rest is the answer.
func describe(f *figure.Figure) string {
	var parts []string
	for i, c := range f.Captions() {
		if f.Theme != "exam" || f.Steps[i].Given {
			parts = appendSentence(parts, c)
		}
	}
	if f.Theme == "exam" {
		return strings.Join(parts, " ")
	}
	for _, text := range f.Written() {
		parts = appendSentence(parts, text)
	}
	return strings.Join(parts, " ")
}

// appendSentence adds a text that is not empty, with a full stop at its end.
func appendSentence(all []string, text string) []string {
	if text == "" {
		return all
	}
	if !strings.ContainsAny(text[len(text)-1:], ".!?:") {
		text += "."
	}
	return append(all, text)
}

// words names what stands in a figure.
type words struct{ *figure.Figure }

// point is the name of the point at p, as far as it shows. Points of a straight are
// those of the figure, so that a float comparison finds the right one.
func (w words) point(p geom.Point) string {
	for _, q := range w.Points {
		if q.Name != "" && !q.Hidden && near(q.At.X, p.X) && near(q.At.Y, p.Y) {
			return q.Name
		}
	}
	return ""
}

func near(x, y geom.Real) bool { return x == y || math.Abs(x.Float()-y.Float()) < 1e-9 }

// straight is the name of a straight, or else two points on it, an end first.
func (w words) straight(s *figure.Straight) string {
	if s.Name != "" {
		return s.Name
	}
	var on []geom.Point
	if s.Start != nil {
		on = append(on, *s.Start)
	}
	if s.End != nil {
		on = append(on, *s.End)
	}
	run := ""
	for _, p := range append(on, s.Used...) {
		if name := w.point(p); name != "" && name != run {
			if run += name; run != name {
				return run
			}
		}
	}
	return ""
}
