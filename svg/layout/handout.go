package layout

import (
	"fmt"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/svg"
)

// Handout is what a pupil gets of a figure: what is given, on the paper that the
// whole construction takes, so that there is room for it. Given is what is drawn before
// the first act of the compasses or the first point that is found, with straights
// through two given points, and what the source calls given later on. In a figure that
// has no other acts, these straights are what is to be drawn. The first hint
// steps of the construction are drawn faintly; not all of it can be a hint. An error is a
// *Refusal.
func Handout(f *figure.Figure, hint int, o Options) (*svg.Doc, error) {
	full, err := laidOut(f)
	if err != nil {
		return nil, err
	}
	full.theme.screen = false
	begin := firstAct(f)
	last, err := full.hintEnd(begin, hint, o.Asked)
	if err != nil {
		return nil, err
	}
	given := givenSteps(f)
	d := full.upTo(part{last: last, also: given})
	for i := range d.strokes {
		if s := &d.strokes[i]; s.step >= begin && !given[s.step] {
			s.pen = d.theme.construction
			s.dashed = true
		}
	}
	doc, err := d.frameOf(full.extent())
	if err != nil {
		return nil, err
	}
	doc.ID, doc.Lang, doc.Title = o.ID, f.Locale().Tag, f.Title
	doc.Desc = describeUntil(f, begin-1)
	return doc, nil
}

// hintEnd is the last step of the first so many parts from a step on.
func (full *drawing) hintEnd(begin, parts int, asked []string) (last int, err error) {
	var ends []int
	for _, p := range partsOf(full.fig) {
		if p.first >= begin && !p.finished && !full.idle(p) {
			ends = append(ends, p.last)
		}
	}
	switch {
	case parts == 0:
		return begin - 1, nil
	case parts >= len(ends):
		return 0, &Refusal{
			Text: fmt.Sprintf("a hint has fewer steps than the construction: %d is not less than %d", parts, len(ends)),
			Help: "show fewer steps, or say in full after the name of a construction, which makes more of them",
		}
	}
	last = ends[parts-1]
	if f := full.fig; onlyJoinsAfter(f, last) && !onlyJoinsAfter(f, begin-1) {
		return 0, &Refusal{
			Text: fmt.Sprintf("a hint of %d draws all that is to be constructed: after it there are joins at most", parts),
			Help: "show fewer steps, or say in full after the name of a construction, which makes more of them",
		}
	}
	if allDrawn(full.fig, asked, last) {
		return 0, &Refusal{Text: fmt.Sprintf("a hint of %d draws all that is to be measured", parts), Help: "show fewer steps"}
	}
	return last, nil
}

// allDrawn tells whether of the named points those that are not given are there
// after a step.
func allDrawn(f *figure.Figure, names []string, last int) bool {
	drawn := false
	for _, p := range f.Points {
		if p.Role != figure.Given && slices.Contains(names, p.Name) {
			if p.Step > last {
				return false
			}
			drawn = true
		}
	}
	return drawn
}

// onlyJoinsAfter tells whether all that is drawn after a step is straights through
// two points that are there by then.
func onlyJoinsAfter(f *figure.Figure, last int) bool {
	there := map[vec]bool{}
	later := false
	note := func(t *figure.Thing, at *geom.Point) {
		switch shown := t.Role == figure.Given || t.Step <= last; {
		case shown && at != nil:
			there[roughly(*at)] = true
		case !shown:
			later = later || at == nil || !there[roughly(*at)]
		}
	}
	for _, p := range f.Points {
		note(&p.Thing, &p.At)
	}
	for _, c := range f.Circles {
		note(&c.Thing, nil)
	}
	return !later && !slices.ContainsFunc(f.Straights, func(s *figure.Straight) bool {
		return s.Role != figure.Given && s.Step > last && throughFewer(s, there)
	})
}

// givenSteps are the steps that lay given things and nothing else.
func givenSteps(f *figure.Figure) map[int]bool {
	given, drawn := map[int]bool{}, map[int]bool{}
	note := func(t *figure.Thing) {
		if t.Role == figure.Given {
			given[t.Step] = true
		} else {
			drawn[t.Step] = true
		}
	}
	for _, p := range f.Points {
		note(&p.Thing)
	}
	for _, c := range f.Circles {
		note(&c.Thing)
	}
	for _, s := range f.Straights {
		note(&s.Thing)
	}
	for step := range drawn {
		delete(given, step)
	}
	return given
}

// firstAct is the first step that draws what is not given.
func firstAct(f *figure.Figure) int {
	given := map[vec]bool{}
	for _, p := range f.Points {
		if p.Role == figure.Given {
			given[roughly(p.At)] = true
		}
	}
	begin := len(f.Steps)
	acts := func(t *figure.Thing, own bool) {
		if t.Role != figure.Given && own {
			begin = min(begin, t.Step)
		}
	}
	for _, p := range f.Points {
		acts(&p.Thing, true)
	}
	for _, c := range f.Circles {
		acts(&c.Thing, true)
	}
	for _, s := range f.Straights {
		acts(&s.Thing, throughFewer(s, given))
	}
	if onlyJoined(f, given) {
		for _, s := range f.Straights {
			acts(&s.Thing, true)
		}
	}
	return begin
}

// onlyJoined tells that straights through given points, and where they meet, are
// all that a figure constructs.
func onlyJoined(f *figure.Figure, given map[vec]bool) bool {
	for _, c := range f.Circles {
		if c.Role != figure.Given {
			return false
		}
	}
	for _, s := range f.Straights {
		if s.Role != figure.Given && throughFewer(s, given) {
			return false
		}
	}
	return true
}

// throughFewer tells whether a straight goes through fewer than two given points.
func throughFewer(s *figure.Straight, given map[vec]bool) bool {
	on := map[vec]bool{}
	for _, p := range s.Used {
		if at := roughly(p); given[at] {
			on[at] = true
		}
	}
	for _, e := range []*geom.Point{s.Start, s.End} {
		if e != nil && given[roughly(*e)] {
			on[roughly(*e)] = true
		}
	}
	return len(on) < 2
}

// roughly is a place by which points are told apart.
func roughly(p geom.Point) vec {
	return vec{p.X.Float(), p.Y.Float()}.times(1e6).snap()
}

// Film is what a marker lays over a pupil's drawing: crosses where the given
// points are and the other givens dashed, the arcs of the construction thinly, and
// the outlines of the bands in which a result may lie. It has no ground, so it can be printed on film.
func Film(f *figure.Figure, bands []figure.Band, o Options) (*svg.Doc, error) {
	full, err := laidOut(f)
	if err != nil {
		return nil, err
	}
	full.theme.screen = false
	d := &drawing{fig: f, theme: full.theme, scale: full.scale, hooks: full.hooks}
	d.inkStraights(slices.DeleteFunc(slices.Clone(full.record.straights), func(r ruled) bool { return r.owner.Role != figure.Given }))
	d.inkCircles(full.record.circles)
	for i := range d.strokes {
		s := &d.strokes[i]
		s.pen = d.theme.construction
		s.dashed = s.owner != nil && s.owner.Role == figure.Given
	}
	for _, p := range f.Points {
		if p.Role == figure.Given && !p.Hidden {
			d.cross(d.place(p.At))
		}
	}
	for _, b := range bands {
		d.outlineBand(b)
	}
	doc, err := d.frameOf(full.extent().union(d.inkExtent()))
	if err != nil {
		return nil, err
	}
	doc.ID, doc.Lang, doc.Title = o.ID, f.Locale().Tag, f.Title
	doc.Desc = fmt.Sprintf("The bands of %d results.", len(bands))
	return doc, nil
}

// cross is two short strokes through a place.
func (d *drawing) cross(at vec) {
	r := d.mm(2)
	for _, way := range []vec{{r, 0}, {0, r}} {
		d.bandStroke(segment{at.sub(way), at.add(way)}, "cross")
	}
}

// outlineBand draws the border of a band.
func (d *drawing) outlineBand(b figure.Band) {
	at := func(p figure.XY) vec { return vec{p.X, -p.Y}.times(d.scale).snap() }
	for i, p := range b.Outline {
		d.bandStroke(segment{at(p), at(b.Outline[(i+1)%len(b.Outline)])}, "band")
	}
	if len(b.Outline) > 0 {
		return
	}
	for _, r := range []float64{b.Inner, b.Outer} {
		if r > 0 {
			d.bandStroke(arc{at(b.Centre), r * d.scale, 0, fullway}, "band")
		}
	}
}

func (d *drawing) bandStroke(c curve, hook string) {
	d.strokes = append(d.strokes, stroke{c, d.theme.given, markLayer, nil, hook, 0})
}
