package layout

import (
	"fmt"
	"math"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/svg"
)

// describe puts a figure in plain words: what is given, what is drawn on the
// way and in the end, what is marked, and what holds.
func describe(f *figure.Figure) string {
	w := words{f}
	var parts []string
	add := func(head string, list []string) {
		if len(list) > 0 {
			parts = append(parts, head+" "+join(list)+".")
		}
	}
	add("Given:", append(w.things(figure.Given), w.measures()...))
	add("Drawn on the way:", w.things(figure.Construction))
	add("Result:", w.things(figure.Result))
	parts = append(parts, w.marks()...)
	add("It holds that", each(f.Claims, func(c figure.Claim) string { return c.Text }))
	return strings.Join(parts, " ")
}

// words names what stands in a figure.
type words struct{ *figure.Figure }

// tally is the things of one kind: their names, and how many have none.
type tally struct {
	kind     string
	names    []string
	nameless int
}

func (t *tally) add(name string) {
	if name == "" {
		t.nameless++
	} else {
		t.names = append(t.names, name)
	}
}

// say is such as "point A", "lines m and n", "arcs c, d and 2 more".
func (t *tally) say() string {
	names := t.names
	switch {
	case t.nameless == 1 && len(names) == 0:
		return "1 " + t.kind
	case len(names) == 0:
		return fmt.Sprintf("%d %ss", t.nameless, t.kind)
	case t.nameless > 0:
		names = append(names[:len(names):len(names)], fmt.Sprintf("%d more", t.nameless))
	}
	if len(names) == 1 {
		return t.kind + " " + names[0]
	}
	return t.kind + "s " + join(names)
}

// things tells what shows of one role, kind by kind.
func (w words) things(role figure.Role) []string {
	kinds := []*tally{{kind: "point"}, {kind: "segment"}, {kind: "ray"}, {kind: "line"}, {kind: "arc"}, {kind: "circle"}}
	for _, p := range w.Points {
		if p.Name != "" && shows(&p.Thing, role) {
			kinds[0].add(p.Name)
		}
	}
	for _, s := range w.Straights {
		if shows(&s.Thing, role) {
			kinds[1+ends(s)].add(w.straight(s))
		}
	}
	for _, c := range w.Circles {
		switch {
		case !shows(&c.Thing, role):
		case c.Whole:
			kinds[5].add(c.Name)
		default:
			kinds[4].add(c.Name)
		}
	}
	var list []string
	for _, t := range kinds {
		if len(t.names)+t.nameless > 0 {
			list = append(list, t.say())
		}
	}
	return list
}

func shows(x *figure.Thing, role figure.Role) bool { return !x.Hidden && x.Role == role }

// ends counts the ends at which a straight runs on.
func ends(s *figure.Straight) int {
	n := 0
	for _, end := range []*geom.Point{s.Start, s.End} {
		if end == nil {
			n++
		}
	}
	return n
}

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

// measures tells the given lengths: "length a = 4 cm".
func (w words) measures() []string {
	var list []string
	for _, m := range w.Measures {
		if !m.Hidden {
			list = append(list, strings.TrimSpace("length "+svg.Text{Runs: measureText(w.Figure, m)}.String()))
		}
	}
	return list
}

// point is the name of the point at p. Points that a mark refers to are those
// of the figure, so that a float comparison finds the right one.
func (w words) point(p geom.Point) string {
	for _, q := range w.Points {
		if q.Name != "" && near(q.At.X, p.X) && near(q.At.Y, p.Y) {
			return q.Name
		}
	}
	return ""
}

func near(x, y geom.Real) bool { return x == y || math.Abs(x.Float()-y.Float()) < 1e-9 }

func (w words) segment(s figure.Segment) string { return w.point(s.A) + w.point(s.B) }

func (w words) angle(a figure.Angle) string {
	name := w.point(a.A) + w.point(a.Vertex) + w.point(a.B)
	if a.Reflex {
		return "reflex " + name
	}
	return name
}

// marks are a sentence for each mark.
func (w words) marks() []string {
	var list []string
	for _, m := range w.Marks {
		if s := w.mark(m); s != "" {
			list = append(list, s+".")
		}
	}
	return list
}

func (w words) mark(m figure.Mark) string {
	switch m := m.(type) {
	case figure.Ticks:
		return "Marked equal: " + join(each(m.Segments, w.segment))
	case figure.AngleArcs:
		return "Marked as equal angles: " + join(each(m.Angles, w.angle))
	case figure.RightAngle:
		return "Marked as a right angle: " + w.angle(m.Angle)
	case figure.Arrows:
		return "Marked parallel: " + join(each(m.Segments, w.segment))
	case figure.LengthLabel:
		return fmt.Sprintf("%s is labelled %s", w.segment(m.Segment), w.Words(m.Label))
	case figure.AngleLabel:
		return fmt.Sprintf("The angle %s is labelled %s", w.angle(m.Angle), w.Words(m.Label))
	case figure.Note:
		return "Note: " + strings.TrimSuffix(m.Text, ".")
	case figure.Shade:
		return w.shade(m)
	case figure.Hatch:
		return "Hatched is every place " + m.Where
	}
	return ""
}

func (w words) shade(s figure.Shade) string {
	outline := strings.Join(each(s.Outline, w.point), "")
	switch {
	case s.Circle != nil:
		return "The disc about " + w.point(s.Circle.C) + " is shaded"
	case s.Centre != nil:
		return "The sector " + w.point(*s.Centre) + outline + " is shaded"
	}
	return outline + " is shaded"
}

func each[T any](list []T, say func(T) string) []string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = say(x)
	}
	return out
}

// join is "A, B and C".
func join(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]
}
