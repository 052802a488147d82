package layout

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
)

// sketch builds figures by hand, by names and coordinates.
type sketch struct {
	figure.Figure
	field *exact.Field
	at    map[string]geom.Point
}

func newSketch(title string) *sketch {
	return &sketch{
		Figure: figure.Figure{Title: title, Unit: big.NewRat(10, 1), Steps: []figure.Step{{Line: 1}}},
		field:  exact.NewField(),
		at:     map[string]geom.Point{},
	}
}

func (s *sketch) real(x float64) geom.Real { return s.field.Rat(new(big.Rat).SetFloat64(x)) }

func (s *sketch) pt(x, y float64) geom.Point { return geom.Point{X: s.real(x), Y: s.real(y)} }

// point makes a named and labelled point.
func (s *sketch) point(name string, x, y float64, role figure.Role) *figure.Point {
	s.at[name] = s.pt(x, y)
	p := &figure.Point{Thing: thing(name, role), At: s.at[name]}
	p.Label = &figure.Label{Text: name, Name: true}
	s.Points = append(s.Points, p)
	return p
}

func thing(name string, role figure.Role) figure.Thing {
	return figure.Thing{Name: name, Role: role}
}

// xy is a named point in floats.
func (s *sketch) xy(name string) (x, y float64) {
	p := s.at[name]
	return p.X.Float(), p.Y.Float()
}

// points are the named ones; names are single letters.
func (s *sketch) points(names string) []geom.Point {
	var list []geom.Point
	for _, n := range names {
		list = append(list, s.at[string(n)])
	}
	return list
}

func (s *sketch) through(a, b string) geom.Line {
	ax, ay := s.xy(a)
	bx, by := s.xy(b)
	return geom.Line{P: s.at[a], D: geom.Vector{X: s.real(bx - ax), Y: s.real(by - ay)}}
}

// join draws the segments of a run of letters.
func (s *sketch) join(run string, role figure.Role) []*figure.Straight {
	letters := []rune(run)
	for i := range letters[1:] {
		a, b := string(letters[i]), string(letters[i+1])
		from, to := s.at[a], s.at[b]
		s.Straights = append(s.Straights, &figure.Straight{Thing: thing("", role), Line: s.through(a, b), Start: &from, End: &to})
	}
	return s.Straights[len(s.Straights)-len(letters)+1:]
}

// line draws a whole line through two points; used names the points on it.
func (s *sketch) line(name, a, b, used string, role figure.Role) *figure.Straight {
	l := &figure.Straight{Thing: thing(name, role), Line: s.through(a, b), Used: s.points(used)}
	if name != "" {
		l.Label = &figure.Label{Text: name, Name: true}
	}
	s.Straights = append(s.Straights, l)
	return l
}

// arc draws about its used meetings.
func (s *sketch) arc(centre string, r float64, used string, role figure.Role) *figure.Circle {
	c := &figure.Circle{Thing: thing("", role), Circle: geom.Circle{C: s.at[centre], R2: s.real(r * r)}, Used: s.points(used)}
	s.Circles = append(s.Circles, c)
	return c
}

func (s *sketch) circle(name, centre string, r float64, role figure.Role) *figure.Circle {
	c := s.arc(centre, r, "", role)
	c.Name, c.Whole = name, true
	if name != "" {
		c.Label = &figure.Label{Text: name, Name: true}
	}
	return c
}

func (s *sketch) seg(ab string) figure.Segment {
	p := s.points(ab)
	return figure.Segment{A: p[0], B: p[1]}
}

func (s *sketch) angle(abc string) figure.Angle {
	p := s.points(abc)
	return figure.Angle{A: p[0], Vertex: p[1], B: p[2]}
}

func (s *sketch) ticks(count int, segments ...string) {
	m := figure.Ticks{Count: count}
	for _, ab := range segments {
		m.Segments = append(m.Segments, s.seg(ab))
	}
	s.Marks = append(s.Marks, m)
}

func (s *sketch) arcs(count int, angles ...string) {
	m := figure.AngleArcs{Count: count}
	for _, abc := range angles {
		m.Angles = append(m.Angles, s.angle(abc))
	}
	s.Marks = append(s.Marks, m)
}

func (s *sketch) arrows(count int, segments ...string) {
	m := figure.Arrows{Count: count}
	for _, ab := range segments {
		m.Segments = append(m.Segments, s.seg(ab))
	}
	s.Marks = append(s.Marks, m)
}

func (s *sketch) right(abc string) {
	s.Marks = append(s.Marks, figure.RightAngle{Angle: s.angle(abc)})
}

func (s *sketch) length(ab, text string) {
	s.Marks = append(s.Marks, figure.LengthLabel{Segment: s.seg(ab), Label: figure.Label{Text: text}})
}

func (s *sketch) size(abc, text string) {
	s.Marks = append(s.Marks, figure.AngleLabel{Angle: s.angle(abc), Label: figure.Label{Text: text}})
}

func (s *sketch) dist(a, b string) float64 {
	ax, ay := s.xy(a)
	bx, by := s.xy(b)
	return math.Hypot(bx-ax, by-ay)
}

// foot makes the foot of the perpendicular from p to ab.
func (s *sketch) foot(name, p, a, b string, role figure.Role) {
	px, py := s.xy(p)
	ax, ay := s.xy(a)
	bx, by := s.xy(b)
	dx, dy := bx-ax, by-ay
	t := ((px-ax)*dx + (py-ay)*dy) / (dx*dx + dy*dy)
	s.point(name, ax+t*dx, ay+t*dy, role)
}

// meet makes the meeting of the lines ab and cd.
func (s *sketch) meet(name, a, b, c, d string, role figure.Role) {
	ax, ay := s.xy(a)
	bx, by := s.xy(b)
	cx, cy := s.xy(c)
	dx, dy := s.xy(d)
	den := (bx-ax)*(dy-cy) - (by-ay)*(dx-cx)
	t := ((cx-ax)*(dy-cy) - (cy-ay)*(dx-cx)) / den
	s.point(name, ax+t*(bx-ax), ay+t*(by-ay), role)
}

func (s *sketch) mid(name, a, b string, role figure.Role) {
	ax, ay := s.xy(a)
	bx, by := s.xy(b)
	s.point(name, (ax+bx)/2, (ay+by)/2, role)
}
