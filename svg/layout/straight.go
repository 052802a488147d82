package layout

import (
	"math"

	"trammel/geom"
	"trammel/geom/figure"
)

// ruled is a straight on the paper: from at along its unit way, the span of it
// that is drawn.
type ruled struct {
	owner   *figure.Thing
	at, way vec
	span
	tips  [2]vec  // the ends of the span
	loose [2]bool // no point is at the low or the high end
	pen
}

// drawStraights inks every straight once: where two cover the same stretch,
// the heavier pen has it, the earlier one among equals.
func (d *drawing) drawStraights() {
	d.record.straights = d.ruleAll()
	d.inkStraights(d.record.straights)
}

func (d *drawing) inkStraights(all []ruled) {
	d.ruled = map[*figure.Thing]ruled{}
	for i := range all {
		r := &all[i]
		var covers []span
		for j := range all {
			s := &all[j]
			if i != j && (s.outranks(r.pen) || j < i && !r.outranks(s.pen)) && r.along(s) {
				covers = append(covers, r.cover(s))
			}
		}
		for _, s := range r.uncovered(covers) {
			d.ink(segment{r.point(s.lo), r.point(s.hi)}, r.owner)
		}
		d.ruled[r.owner] = *r
		if !r.loose[0] && !r.loose[1] {
			d.joins = append(d.joins, segment{r.point(r.lo), r.point(r.hi)})
		}
	}
}

func (d *drawing) ruleAll() []ruled {
	var all []ruled
	for _, s := range d.fig.Straights {
		if s.Hidden {
			continue
		}
		r := d.rule(s)
		if r.hi > r.lo {
			r.tips = [2]vec{r.point(r.lo), r.point(r.hi)}
			all = append(all, r)
		}
	}
	prolong(all)
	d.prolongExits(all)
	d.open = d.openExtent(all)
	d.prolongBorders(all)
	return all
}

// prolong draws the loose ends of lines and rays as far as fainter ones on the
// same line go on, so that none ends in paler ink.
func prolong(all []ruled) {
	for i := range all {
		r := &all[i]
		for j := range all {
			s := &all[j]
			if !r.loose[0] && !r.loose[1] || !r.outranks(s.pen) || s.dashed || !r.along(s) {
				continue
			}
			c := r.cover(s)
			if c.lo > r.hi || c.hi < r.lo || c.lo >= r.lo && c.hi <= r.hi {
				continue
			}
			if r.loose[0] {
				r.lo = min(r.lo, c.lo)
			}
			if r.loose[1] {
				r.hi = max(r.hi, c.hi)
			}
			r.tips = [2]vec{r.point(r.lo), r.point(r.hi)}
		}
	}
}

func (r ruled) point(t float64) vec { return r.at.add(r.way.times(t)).snap() }

// along tells whether s lies on the same line as r, to within the rounding.
func (r *ruled) along(s *ruled) bool {
	return math.Abs(r.way.cross(s.tips[0].sub(r.at))) < touching &&
		math.Abs(r.way.cross(s.tips[1].sub(r.at))) < touching
}

// cover is the span of r that s covers.
func (r *ruled) cover(s *ruled) span {
	a, b := r.way.dot(s.tips[0].sub(r.at)), r.way.dot(s.tips[1].sub(r.at))
	return span{min(a, b), max(a, b)}
}

// rule finds the stretch of s to draw. An end without a point runs on a little
// past the last point used, and far enough to look like a line where fewer
// than two are used.
func (d *drawing) rule(s *figure.Straight) ruled {
	r := ruled{owner: &s.Thing, at: d.place(s.Line.P), way: d.way(s.Line)}
	r.pen, _ = d.theme.ink(&s.Thing)
	if s.Start != nil && s.End != nil {
		r.at = d.place(*s.Start)
		r.way, r.hi = r.at.to(d.place(*s.End)), r.at.dist(d.place(*s.End))
		return r
	}
	r.loose = [2]bool{s.Start == nil, s.End == nil}
	used, n := d.usedSpan(s, r)
	over := d.mm(figure.PastLast)
	if n < 2 {
		over = d.length() / 2
	}
	r.span = span{used.lo - over, used.hi + over}
	if s.Start != nil {
		r.lo = r.way.dot(d.place(*s.Start).sub(r.at))
	}
	if s.End != nil {
		r.hi = r.way.dot(d.place(*s.End).sub(r.at))
	}
	return r
}

// usedSpan is the stretch of r between the outermost points that s uses, and
// how many different ones there are (2 stands for more).
func (d *drawing) usedSpan(s *figure.Straight, r ruled) (span, int) {
	used := append(s.Used[:len(s.Used):len(s.Used)], d.passed(s, r)...)
	for _, end := range []*geom.Point{s.Start, s.End} {
		if end != nil {
			used = append(used, *end)
		}
	}
	if len(used) == 0 {
		t := r.way.dot(d.middle().sub(r.at))
		return span{t, t}, 0
	}
	around := span{math.Inf(1), math.Inf(-1)}
	for _, p := range used {
		t := r.way.dot(d.place(p).sub(r.at))
		around = span{min(around.lo, t), max(around.hi, t)}
	}
	if around.hi-around.lo < touching {
		return around, 1
	}
	return around, 2
}

// longPass is how many millimetres a ray, or a line without a letter, is drawn on at most to a
// point that it passes through and that it was not drawn for.
const longPass = 8

// passed are the points that show and that a line or a ray passes through, beside those
// that it uses: stopping short of one it would seem to miss it.
func (d *drawing) passed(s *figure.Straight, r ruled) []geom.Point {
	reach := math.Inf(1)
	if s.Label == nil || s.Start != nil || s.End != nil {
		reach = longPass * mm
	}
	around := nowhere
	for _, p := range s.Used {
		around = around.union(box{d.place(p), d.place(p)})
	}
	var list []geom.Point
	for _, p := range d.fig.Points {
		at := d.place(p.At)
		off := at.sub(r.at)
		ahead := s.Start == nil || r.way.dot(at.sub(d.place(*s.Start))) > 0
		behind := s.End == nil || r.way.dot(at.sub(d.place(*s.End))) < 0
		if !p.Hidden && ahead && behind && math.Abs(r.way.cross(off)) < touching && (around.empty() || around.near(at) < reach) {
			list = append(list, p.At)
		}
	}
	return list
}

// way is the direction of a line on the paper.
func (d *drawing) way(l geom.Line) vec { return vec{l.D.X.Float(), -l.D.Y.Float()}.unit() }

// middle is that of the points that show, where a line that nothing depends on is drawn.
func (d *drawing) middle() vec {
	b := nowhere
	for _, p := range d.fig.Points {
		if !p.Hidden {
			b = b.union(box{d.place(p.At), d.place(p.At)})
		}
	}
	if b.empty() {
		return vec{}
	}
	return b.centre()
}

// length is a fair length for a line that little depends on: about half the
// figure, within reason.
func (d *drawing) length() float64 {
	b := nowhere
	for _, p := range d.fig.Points {
		at := d.place(p.At)
		b = b.union(box{at, at})
	}
	if b.empty() {
		return 60 * mm
	}
	return clamp(b.size().len()*0.6, 40*mm, 90*mm)
}
