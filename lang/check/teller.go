package check

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
)

// teller is a line or point that may tell two meetings apart in a message.
type teller struct {
	text  string
	line  curve
	point int
}

// tellers collects, in the order of the source, what a phrase could name: the
// straights and points that the scope knows.
func (s *scope) tellers(first, second curve) []teller {
	var out []teller
	if first.circle && second.circle {
		out = s.tellerOf(s.centre(first.slot), s.centre(second.slot))
	}
	names := make([]string, 0, len(s.names))
	for name := range s.names {
		names = append(names, name)
	}
	sort.Slice(names, func(i, j int) bool { return s.names[names[i]] < s.names[names[j]] })
	for _, name := range names {
		slot := s.names[name]
		switch s.slot(slot).Kind {
		case program.Line:
			out = append(out, teller{text: name, line: curve{slot: slot, text: name}, point: -1})
		case program.Point:
			out = append(out, teller{text: name, point: slot})
		}
	}
	return out
}

// tellerOf is the straight through two points that the scope knows.
func (s *scope) tellerOf(a, b int) []teller {
	if a < 0 || b < 0 || a == b || !s.known(a) || !s.known(b) {
		return nil
	}
	text := s.names2(a, b)
	return []teller{{text: text, line: curve{slot: -1, from: a, to: b, run: true, text: text}, point: -1}}
}

func (s *scope) known(slot int) bool {
	n, ok := s.names[s.slot(slot).Name]
	return ok && n == slot
}

// centre is the slot of a circle's centre, or -1.
func (s *scope) centre(circle int) int {
	if c, ok := s.c.centres[circle]; ok {
		return c
	}
	return -1
}

// offer is the phrases that tell two meetings apart, at most three.
func (f meetingFacts) offer(st *program.State, name string, ps []geom.Point) string {
	if len(ps) != 2 {
		return ""
	}
	var phrases []string
	for _, t := range f.tell {
		if p := t.phrases(st, ps[0], ps[1]); p != "" {
			phrases = append(phrases, p)
		}
		if len(phrases) == 3 {
			break
		}
	}
	if len(phrases) == 0 {
		return ""
	}
	return fmt.Sprintf("say %s: %s", name, strings.Join(phrases, " · "))
}

// phrases is the pair of phrases with which t tells p from q, or "".
func (t teller) phrases(st *program.State, p, q geom.Point) string {
	if t.point >= 0 {
		at, ok := st.Value(t.point).(geom.Point)
		if !ok || at.Equal(p) || at.Equal(q) || geom.Dist2(at, p).Equal(geom.Dist2(at, q)) {
			return ""
		}
		return fmt.Sprintf("nearest %s or farthest from %s", t.text, t.text)
	}
	if t.line.slot >= 0 && st.Value(t.line.slot) == nil {
		return ""
	}
	l, err := t.line.whole(st)
	if err != nil || l.Side(p)*l.Side(q) >= 0 {
		return ""
	}
	switch {
	case l.D.X.Sign() != 0 && math.Abs(l.D.X.Float()) > math.Abs(l.D.Y.Float()):
		return fmt.Sprintf("above %s or below %s", t.text, t.text)
	case t.line.run:
		return fmt.Sprintf("left of %s or right of %s", t.text, t.text)
	}
	return ""
}

// heading is the direction of a curve at a point of it, as floats of length 1.
func heading(c *program.Curve, p geom.Point) (x, y float64) {
	if c.Straight != nil {
		x, y = c.Straight.D.X.Near(), c.Straight.D.Y.Near()
	} else {
		o := c.Circle.C
		x, y = o.Y.Near()-p.Y.Near(), p.X.Near()-o.X.Near()
		if fine := 1e-6; math.Hypot(x, y) < fine*math.Hypot(p.X.Near(), p.Y.Near()) {
			v := p.Sub(o).Left() // too small for the difference of floats
			x, y = v.X.Near(), v.Y.Near()
		}
	}
	n := math.Hypot(x, y)
	return x / n, y / n
}

func abs(x float64) float64 { return math.Abs(x) }
