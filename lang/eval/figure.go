package eval

import (
	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
)

// Figure is what a run without failures has drawn; tell puts its steps in words.
func Figure(st *program.State, tell figure.Teller) *figure.Figure {
	p := st.Program
	f := &figure.Figure{
		Title: p.Title, Unit: p.Unit, Paper: p.Paper, Theme: p.Theme, Language: p.Language,
		Marks: st.Marks, Claims: st.Claims, Steps: steps(p), Tell: tell,
		Chance: len(p.Inputs) > 0,
	}
	for i, slot := range p.Slots {
		if slot.Ink != nil && st.Values[i] != nil {
			add(f, st, i, slot)
		}
	}
	return f
}

// add puts one slot's value into the figure.
func add(f *figure.Figure, st *program.State, i int, slot *program.Slot) {
	thing := slot.Ink.Thing
	thing.Order = i
	switch v := st.Values[i].(type) {
	case geom.Point:
		f.Points = append(f.Points, &figure.Point{Thing: thing, At: v})
	case program.Amount:
		length := v.Float()
		f.Measures = append(f.Measures, &figure.Measure{Thing: thing, Length: length, Text: st.Texts[i]})
	case geom.Rim:
		addRim(f, thing, v)
	case *program.Curve:
		if v.Straight != nil {
			f.Straights = append(f.Straights, &figure.Straight{
				Thing: thing, Line: v.Line(), Start: v.Straight.Start, End: v.Straight.End, Used: v.Used,
			})
			return
		}
		c := &figure.Circle{Thing: thing, Circle: *v.Circle, Whole: slot.Ink.Whole, Used: v.Used}
		if ends := slot.Ink.Ends; ends != nil {
			c.Part = &[2]geom.Point{st.Point(ends[0]), st.Point(ends[1])}
		}
		f.Circles = append(f.Circles, c)
	}
}

// addRim draws a rim in its parts; the first of them carries the label.
func addRim(f *figure.Figure, thing figure.Thing, rim geom.Rim) {
	for _, side := range rim.Sides() {
		f.Straights = append(f.Straights, &figure.Straight{Thing: thing, Line: side.Line, Start: side.Start, End: side.End})
		thing.Label = nil
	}
	for _, end := range rim.Caps() {
		f.Circles = append(f.Circles, &figure.Circle{Thing: thing, Circle: end.Circle, Part: &end.Ends})
	}
}

// steps are where the acts stand in the source.
func steps(p *program.Program) []figure.Step {
	out := make([]figure.Step, len(p.Acts))
	for i, a := range p.Acts {
		out[i] = figure.Step{Line: a.Line, Given: a.Kind == program.Giving, Reason: a.Kind == program.Marking || a.Kind == program.Stating}
	}
	return out
}
