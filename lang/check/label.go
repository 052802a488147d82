package check

import (
	"fmt"
	"math"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// label names, measures or renames a thing of the figure.
func (s *scope) label(l *syntax.Label) {
	pin, ok := s.pin(l)
	if !ok {
		return
	}
	switch {
	case l.Angle != nil:
		s.labelAngle(l, pin)
	case l.What.Name == "" && len(l.What.Points) == 2:
		s.labelJoin(l, pin)
	case l.What.Name == "" && len(l.What.Points) != 1:
		s.fail(l.What.Node, "a label belongs to a point, a straight, a circle or an angle").Help = "for an angle write: label angle " + s.span(l.What.Node).Text() + " size"
	default:
		s.labelThing(l, pin)
	}
}

// pin is where the source wants the label.
func (s *scope) pin(l *syntax.Label) (figure.Pin, bool) {
	hours := map[string]float64{"above": 12, "right": 3, "below": 6, "left": 9}
	if l.Pin != "" {
		return figure.Pin{Set: true, Clock: hours[l.Pin]}, true
	}
	if l.Clock == nil {
		return figure.Pin{}, true
	}
	r, ok := s.constant(l.Clock)
	if !ok {
		return figure.Pin{}, false
	}
	h, _ := r.Float64()
	if h < 0 || h > 12 {
		s.fail(l.Clock.Node, "the clock has hours from 1 to 12")
		return figure.Pin{}, false
	}
	return figure.Pin{Set: true, Clock: math.Mod(h, 12)}, true
}

// labelThing is a point's, line's or circle's label: its name, or other text.
func (s *scope) labelThing(l *syntax.Label, pin figure.Pin) {
	slot, ok := s.thing(l.What)
	if !ok {
		return
	}
	if l.Size {
		s.fail(l.Node, "only an angle has a size").Help = "label angle ABC size"
		return
	}
	sl := s.slot(slot)
	if l.Length {
		if sl.Kind != program.Length {
			s.fail(l.Node, "only a join of two points has a length").Help = "label AB length"
			return
		}
		s.labelMeasure(l, slot)
		return
	}
	if sl.Ink == nil || s.view != shown {
		return
	}
	if sl.Ink.Label == nil {
		s.countLabel(s.span(l.Node))
		sl.Ink.Label = &figure.Label{Text: sl.Name, Name: true}
	}
	if l.Text != nil {
		sl.Ink.Label.Text, sl.Ink.Label.Name = *l.Text, false
	}
	sl.Ink.Label.Line = s.sourceLine(l.Node)
	if !pin.Set {
		return
	}
	if sl.Ink.Label.Pin.Set {
		s.fail(l.Node, "%s has a place for its label already", s.span(l.What.Node).Text()).Help = "keep one of the two"
	}
	sl.Ink.Label.Pin = pin
}

// labelMeasure writes a given length's size at its bar.
func (s *scope) labelMeasure(l *syntax.Label, slot int) {
	sl := s.slot(slot)
	s.prove(l.Node, func(st *program.State) error {
		if sl.Ink != nil && sl.Ink.Label != nil {
			r, _ := st.Amount(slot).Constructible()
			st.Texts[slot], _ = lengthText(st, r)
		}
		return nil
	})
}

// thing is a named point, line, circle, length or rim.
func (s *scope) thing(r *syntax.Ref) (int, bool) {
	if r.Name == "" {
		return s.point(r)
	}
	name, ok := s.indexed(r.Name, r.Index)
	if !ok {
		return 0, false
	}
	return s.lookup(name, r.Node, program.Line, program.Circle, program.Length, program.Rim)
}

// labelJoin is text along the stretch between two points.
func (s *scope) labelJoin(l *syntax.Label, pin figure.Pin) {
	ps, ok := s.distinct(l.What, 2)
	if !ok {
		return
	}
	if l.Size {
		s.fail(l.Node, "a join has a length, and only an angle a size").Help = "label " + s.span(l.What.Node).Text() + " length"
		return
	}
	if !l.Length && l.Text == nil {
		s.fail(l.Node, "this does not say what the label is").Help = fmt.Sprintf("label %[1]s length, or label %[1]s \"5 cm\"", s.span(l.What.Node).Text())
		return
	}
	drawn := s.drawn(l.What.Node, ps[0], ps[1])
	s.countLabel(s.span(l.Node))
	line := s.sourceLine(l.Node)
	put := s.put(func(step int, st *program.State) figure.Mark {
		seg := figure.Segment{A: st.Point(ps[0]), B: st.Point(ps[1])}
		text, exact := "", true
		if l.Text != nil {
			text = *l.Text
		} else {
			text, exact = lengthText(st, geom.Dist(seg.A, seg.B))
		}
		return figure.LengthLabel{Segment: seg, Label: figure.Label{Text: text, Measured: l.Text == nil, Rounded: !exact, Pin: pin, Line: line}, Of: calledAll(st, ps), Step: step}
	})
	s.prove(l.Node, func(st *program.State) error {
		if st.Point(ps[0]).Equal(st.Point(ps[1])) {
			return sameSpot(st, ps[0], ps[1])
		}
		if err := drawn(st); err != nil {
			return err
		}
		put(st)
		return nil
	})
}

// lengthText is a length with its unit: exact when that is simple, else to two
// places, whose zeros tell that it is rounded.
func lengthText(st *program.State, r geom.Real) (text string, exact bool) {
	text, exact = geom.PrintedSurd(r)
	if !exact {
		text = r.Decimal(2)
	}
	if unit := st.Program.UnitWord(1); unit != " units" {
		text += unit
	}
	return text, exact
}

// labelAngle is text in an angle: its size or what the source says.
func (s *scope) labelAngle(l *syntax.Label, pin figure.Pin) {
	ps, ok := s.angleRun(l.Angle)
	if !ok {
		return
	}
	if l.Length {
		s.fail(l.Node, "an angle has a size, not a length").Help = "label angle " + s.span(l.Angle.Node).Text() + " size"
		return
	}
	if !l.Size && l.Text == nil {
		s.fail(l.Node, "this does not say what the label is").Help = fmt.Sprintf("label angle %s size, or with a text such as \"α\"", s.span(l.Angle.Node).Text())
		return
	}
	arms := s.armsDrawn(l.Angle, ps)
	s.countLabel(s.span(l.Node))
	line := s.sourceLine(l.Node)
	put := s.put(func(step int, st *program.State) figure.Mark {
		a := angleOf(st, ps, l.Reflex)
		text, exact := "", true
		if l.Text != nil {
			text = *l.Text
		} else {
			text, exact = sizeText(geom.Corner(a.A, a.Vertex, a.B, l.Reflex))
		}
		return figure.AngleLabel{Angle: a, Label: figure.Label{Text: text, Measured: l.Text == nil, Rounded: !exact, Pin: pin, Line: line}, Of: calledAll(st, ps), Step: step}
	})
	s.prove(l.Node, func(st *program.State) error {
		if _, err := cornerOf(st, ps, false); err != nil {
			return err
		}
		if err := arms(st); err != nil {
			return err
		}
		put(st)
		return nil
	})
}

// sizeText is an angle for a label: exact in few decimals or minutes, else to one place.
func sizeText(a geom.Angle) (text string, exact bool) {
	if text, ok := a.Text(); ok {
		return text, true
	}
	return fmt.Sprintf("%.1f°", a.Float()), false
}

// note is a line of words near a thing.
func (s *scope) note(n *syntax.Note) {
	slot, ok := s.thing(n.Near)
	if !ok {
		return
	}
	s.countLabel(s.span(n.Node))
	line := s.sourceLine(n.Node)
	put := s.put(func(step int, st *program.State) figure.Mark {
		return figure.Note{Near: placeOf(st, slot), Of: calledAll(st, []int{slot}), Text: n.Text, Step: step, Line: line}
	})
	s.prove(n.Node, func(st *program.State) error {
		if st.Value(slot) == nil {
			return program.Poisoned
		}
		put(st)
		return nil
	})
}

// calledAll is what readers call things: their letters, in a row.
func calledAll(st *program.State, slots []int) string {
	var b strings.Builder
	for _, slot := range slots {
		sl := st.Program.Slots[slot]
		b.WriteString(st.Program.Slots[sl.As].Called)
	}
	return b.String()
}

// placeOf is a point that stands for a thing: itself, or somewhere on a curve.
func placeOf(st *program.State, slot int) geom.Point {
	switch v := st.Value(slot).(type) {
	case geom.Point:
		return v
	case *program.Curve:
		if len(v.Used) > 0 {
			return v.Used[0]
		}
		if v.Circle != nil {
			return v.Circle.C.Add(geom.Vector{X: v.Circle.R2.Sqrt(), Y: st.Field.Int(0)})
		}
		return v.Straight.P
	}
	zero := st.Field.Int(0)
	return geom.Point{X: zero, Y: zero}
}

// shade fills a polygon, a sector or a disc.
func (s *scope) shade(h *syntax.Shade) {
	if len(h.Where) > 0 {
		s.shadeWhere(h)
		return
	}
	if h.What.Name != "" {
		slot, ok := s.circle(h.What)
		if !ok {
			return
		}
		put := s.put(func(step int, st *program.State) figure.Mark {
			return figure.Shade{Circle: st.Curve(slot).Circle, Step: step}
		})
		s.prove(h.Node, func(st *program.State) error { put(st); return nil })
		return
	}
	if h.Sector {
		s.shadeSector(h)
		return
	}
	ps, ok := s.polygon(h.What)
	if !ok {
		return
	}
	put := s.put(func(step int, st *program.State) figure.Mark {
		return figure.Shade{Outline: st.Points(ps), Step: step}
	})
	s.prove(h.Node, func(st *program.State) error {
		if !geom.Simple(st.Points(ps)) {
			return &program.Fault{Text: "the outline " + s.letters(ps) + " crosses itself", Help: "name the corners in their order round the figure"}
		}
		put(st)
		return nil
	})
}

// shadeSector is the part of a disc from its first radius anticlockwise to its second.
func (s *scope) shadeSector(h *syntax.Shade) {
	ps, ok := s.distinct(h.What, 3)
	if !ok {
		return
	}
	put := s.put(func(step int, st *program.State) figure.Mark {
		c := st.Point(ps[0])
		return figure.Shade{Centre: &c, Outline: st.Points(ps[1:]), Step: step}
	})
	s.prove(h.Node, func(st *program.State) error {
		if _, err := partArc(st, ps[0], ps[1], ps[2]); err != nil {
			return err
		}
		put(st)
		return nil
	})
}

// sizeDecimal is an angle to four places.
func sizeDecimal(a geom.Angle) string {
	return geom.TrimZeros(fmt.Sprintf("%.4f", a.Float())) + "°"
}
