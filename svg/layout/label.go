package layout

import (
	"math"
	"strings"

	"trammel/geom/figure"
	"trammel/svg"
)

// label is words that want a place.
type label struct {
	text    svg.Text
	ink     box           // of the words, from the left end of the baseline
	hull    hull          // of the words
	owner   *figure.Thing // whose label it is; nil for that of a mark
	home    vec           // the point it belongs to, when it is a point's
	pointed bool          // home is set
	base    *segment      // the stretch it belongs to, when it is a straight's
	middle  bool          // base is the middle of a segment, where a length stands
	whole   segment       // that segment
	parted  bool          // it measures a whole, and will be read as the length of a part
	pinned  bool          // the source says where it stands
	arc     *arc          // the mark of its angle, when it is an angle's
	faint   bool          // base is in the ink of the construction, like its rivals
	round   bool          // it belongs to a circle, and its spots know how far that is
	spots   []spot        // where it may stand
	at      int           // the spot chosen
	rivals  []*label      // those whose spots reach its own
	what    string        // for warnings
	step    int
	line    int // of the source, where it is asked for; 0 if it is not
}

// spot is a place for a label, and what standing there costs whatever the
// other labels do.
type spot struct {
	box
	cost   int
	hits   int     // heavy strokes, marks and dots under it
	thin   int     // strokes of the construction under it
	broken bool    // it is in a gap of its own segment
	lost   bool    // another thing is nearer than its own
	across bool    // a heavy straight is between it and its point
	own    float64 // distance from what is labelled
	line   float64 // distance that another label keeps on the same line
	reach  float64 // distance within which another label matters
	from   vec     // the place of what is labelled
}

// note tells that the label is words about a place.
func (l *label) note() bool { return l.pointed && l.owner == nil }

// text is words in the type of the theme.
func (d *drawing) text(runs []svg.Run, height svg.Micrometre) svg.Text {
	return svg.Text{Runs: runs, Size: height, Fill: black, Sans: d.theme.sans, Braille: d.theme.braille}
}

// inkOf is what the words fill, from the left end of the baseline.
func inkOf(t svg.Text) box {
	m := svg.Measure(t)
	return box{vec{float64(m.Left), float64(m.Top)}, vec{float64(m.Right), float64(m.Bottom)}}
}

// request makes a label without spots; false for one without ink.
func (d *drawing) request(s string, name bool, height svg.Micrometre, what string, step int) (*label, bool) {
	t := d.text(svg.Label(s, name), height)
	ink := inkOf(t)
	size := ink.size()
	return &label{text: t, ink: ink, hull: hullOf(t), what: what, step: step}, size.x > 0 && size.y > 0
}

// requestLabels lists what wants words, in the order of the source, with all
// the spots where they may stand.
func (d *drawing) requestLabels() {
	for _, p := range d.fig.Points {
		if l, ok := d.named(&p.Thing, "the label of the point "); ok {
			l.home, l.pointed, l.pinned = d.place(p.At), true, p.Label.Pin.Set
			l.spots = d.pointSpots(l, p.Label.Pin)
			d.labels = append(d.labels, l)
		}
	}
	for _, s := range d.fig.Straights {
		if l, ok := d.named(&s.Thing, "the label of the line "); ok {
			l.text.Class = d.lineHooks(d.rule(s).ends())
			d.addPinned(l, d.straightSpots(l, s), s.Label.Pin)
		}
	}
	for _, c := range d.fig.Circles {
		if l, ok := d.named(&c.Thing, "the label of the circle "); ok {
			l.text.Class = d.circleHooks(c)
			d.addPinned(l, d.circleSpots(l, c), c.Label.Pin)
		}
	}
	for _, m := range d.fig.Marks {
		d.requestMark(m)
	}
}

// named requests the label of a thing that shows.
func (d *drawing) named(x *figure.Thing, what string) (*label, bool) {
	if x.Hidden || x.Label == nil {
		return nil, false
	}
	called := x.Name
	if called == "" {
		called = x.Label.Text
	}
	l, ok := d.request(x.Label.Text, x.Label.Name, d.theme.label, what+called, x.Step)
	l.owner, l.text.Class, l.line = x, d.hooks[x], x.Label.Line
	return l, ok
}

func (d *drawing) requestMark(m figure.Mark) {
	switch m := m.(type) {
	case figure.LengthLabel:
		if l, ok := d.request(d.fig.Words(m.Label), m.Name, d.theme.label, called("length", m.Label, "", m.Of), m.Step); ok {
			l.line = m.Line
			l.text.Class = strings.TrimSpace(lengthHook + " " + d.lineHooks(segment{d.place(m.A), d.place(m.B)}))
			d.addPinned(l, d.lengthSpots(l, m), m.Pin)
		}
	case figure.AngleLabel:
		if l, ok := d.request(d.fig.Words(m.Label), m.Name, d.angleText, called("size", m.Label, "angle ", m.Of), m.Step); ok {
			l.line = m.Line
			l.text.Class = angleHook + " " + d.cornerHook(d.corner(m.Angle))
			d.addPinned(l, d.angleSpots(l, d.corner(m.Angle)), m.Pin)
		}
	case figure.Note:
		if l, ok := d.request(m.Text, false, d.theme.small, "the note “"+m.Text+"”", m.Step); ok {
			l.line = m.Line
			l.text.Class = strings.TrimSpace(noteHook + " " + d.pointHook(m.Near))
			l.home, l.pointed = d.place(m.Near), true
			d.addPinned(l, d.noteSpots(l, l.home), figure.Pin{})
		}
	}
}

// called tells in a warning which label is meant: what it is, of what.
func called(measure string, l figure.Label, kind, letters string) string {
	if !l.Measured {
		measure = "label"
	}
	what := "the " + measure + " " + l.Text
	if letters != "" {
		what += " of " + kind + letters
	}
	return what
}

// addPinned keeps the spots that lie where the source wants the label: those
// nearest to the direction of the pin.
func (d *drawing) addPinned(l *label, spots []spot, pin figure.Pin) {
	if pin.Set {
		nearest := math.Inf(1)
		for i := range spots {
			nearest = min(nearest, apart(spots[i].way(), clock(pin)))
		}
		kept := spots[:0]
		for _, s := range spots {
			if apart(s.way(), clock(pin)) < nearest+0.1 {
				kept = append(kept, s)
			}
		}
		spots = kept
	}
	l.spots, l.pinned = spots, pin.Set
	d.labels = append(d.labels, l)
}

// clock is the direction of a pin: 12 is up, 3 is right.
func clock(p figure.Pin) float64 { return turn(math.Pi/2 - float64(p.Clock*math.Pi/6)) }

// spotAt centres a label's ink on c, in whole micrometres.
func (l *label) spotAt(c vec, cost int, from vec) spot {
	lo := c.sub(l.ink.size().times(0.5)).snap()
	return spot{box: box{lo, lo.add(l.ink.size())}, cost: cost, from: from}
}

// way is the direction of the spot from what is labelled.
func (s *spot) way() float64 { return s.centre().sub(s.from).angle() }

// reach is how far the label's centre is from its edge across the way u: a
// label so far and a gap off a straight clears it by the gap.
func (l *label) reach(u vec) float64 {
	s := l.ink.size()
	return float64(math.Abs(u.x)*s.x/2) + float64(math.Abs(u.y)*s.y/2)
}

// beyond is how far from a point, on the way u, the label's centre must lie
// for its box to be the gap away from the point.
func (l *label) beyond(u vec, gap float64) float64 {
	w, h := l.ink.size().x/2, l.ink.size().y/2
	x, y := math.Abs(u.x), math.Abs(u.y)
	b := float64(x*w) + float64(y*h)
	if root := float64(b*b) - float64(w*w) - float64(h*h) + float64(gap*gap); root >= 0 {
		if t := b + math.Sqrt(root); x*t >= w && y*t >= h {
			return t
		}
	}
	t := math.Inf(1)
	if x > 0 {
		t = (w + gap) / x
	}
	if y > 0 {
		t = min(t, (h+gap)/y)
	}
	return t
}

// narrow angles, or those divided into narrow ones, have no room for large
// figures; then all angles have small ones, so that the figure keeps one size.
const narrow = 35 * math.Pi / 180

func (d *drawing) angleHeight() svg.Micrometre {
	for _, m := range d.fig.Marks {
		m, ok := m.(figure.AngleLabel)
		if !ok {
			continue
		}
		widest, ways := 0.0, d.ways(d.corner(m.Angle))
		for i, to := range ways[1:] {
			widest = max(widest, to-ways[i])
		}
		if widest < narrow {
			return d.theme.small
		}
	}
	return d.theme.label
}
