package layout

import (
	"fmt"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
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
	add("Given:", w.things(figure.Given))
	add("Drawn with compass and straightedge:", w.things(figure.Construction))
	add("Result:", w.things(figure.Result))
	parts = append(parts, w.marks()...)
	var claims []string
	for _, c := range f.Claims {
		claims = append(claims, c.Text)
	}
	add("It holds that", claims)
	return strings.Join(parts, " ")
}

// words names what stands in a figure.
type words struct{ *figure.Figure }

// things lists what shows of one role, in the order points, straights, circles.
func (w words) things(role figure.Role) []string {
	var points, list []string
	for _, p := range w.Points {
		if !p.Hidden && p.Role == role && p.Name != "" {
			points = append(points, p.Name)
		}
	}
	list = counted(list, "point", points)
	var lines, arcs, circles []string
	nameless := [3]int{}
	for _, s := range w.Straights {
		if s.Hidden || s.Role != role {
			continue
		}
		if name := w.straight(s); name != "" {
			lines = append(lines, name)
		} else {
			nameless[0]++
		}
	}
	for _, c := range w.Circles {
		switch {
		case c.Hidden || c.Role != role:
		case c.Name == "" && c.Whole:
			nameless[2]++
		case c.Name == "":
			nameless[1]++
		case c.Whole:
			circles = append(circles, c.Name)
		default:
			arcs = append(arcs, c.Name)
		}
	}
	list = counted(list, "line", lines)
	list = more(list, "line", nameless[0], len(lines))
	list = counted(list, "arc", arcs)
	list = more(list, "arc", nameless[1], len(arcs))
	list = counted(list, "circle", circles)
	return more(list, "circle", nameless[2], len(circles))
}

// straight is the name of a straight, from its ends where it has none.
func (w words) straight(s *figure.Straight) string {
	if s.Name != "" || s.Start == nil || s.End == nil {
		return s.Name
	}
	a, b := w.point(*s.Start), w.point(*s.End)
	if a == "" || b == "" {
		return ""
	}
	return a + b
}

// point is the name of the point at p.
func (w words) point(p geom.Point) string {
	for _, q := range w.Points {
		if q.Name != "" && q.At.X.Equal(p.X) && q.At.Y.Equal(p.Y) {
			return q.Name
		}
	}
	return ""
}

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
		return fmt.Sprintf("%s is labelled %s", w.segment(m.Segment), m.Text)
	case figure.AngleLabel:
		return fmt.Sprintf("The angle %s is labelled %s", w.angle(m.Angle), m.Text)
	case figure.Note:
		return "Note: " + strings.TrimSuffix(m.Text, ".")
	case figure.Shade:
		return w.shade(m)
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

// counted adds "point A" or "points A, B and C".
func counted(list []string, kind string, names []string) []string {
	switch len(names) {
	case 0:
		return list
	case 1:
		return append(list, kind+" "+names[0])
	}
	return append(list, kind+"s "+join(names))
}

// more adds those without a name: "2 lines", "3 more arcs".
func more(list []string, kind string, n, named int) []string {
	if n == 0 {
		return list
	}
	further := ""
	if named > 0 {
		further = "more "
	}
	if n > 1 {
		kind += "s"
	}
	return append(list, fmt.Sprintf("%d %s%s", n, further, kind))
}

// join is "A, B and C".
func join(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]
}
