package layout

import (
	"strconv"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
)

// The classes of items, by which the user's own tools find them. A thing's ink
// and its label have one word in common: p3 is the third point of the figure,
// s2 its second straight, c1 its first circle or arc, b1 the first bar of a
// given length. An angle's mark and its size share a1. A mark says its kind too,
// and so do words that are no name.
const (
	tickHook      = "tick"
	arrowHook     = "arrow"
	squareHook    = "square"
	arcHook       = "arc"
	lengthHook    = "length"
	angleHook     = "angle"
	noteHook      = "note"
	dimensionHook = "dimension"
)

// hooks numbers the things of a figure, kind by kind.
func hooks(f *figure.Figure) map[*figure.Thing]string {
	m := map[*figure.Thing]string{}
	for i, p := range f.Points {
		m[&p.Thing] = "p" + strconv.Itoa(i+1)
	}
	for i, s := range f.Straights {
		m[&s.Thing] = "s" + strconv.Itoa(i+1)
	}
	for i, c := range f.Circles {
		m[&c.Thing] = "c" + strconv.Itoa(i+1)
	}
	for i, b := range f.Measures {
		m[&b.Thing] = "b" + strconv.Itoa(i+1)
	}
	return m
}

// cornerHook numbers an angle.
func (d *drawing) cornerHook(c corner) string {
	for i, o := range d.corners {
		if o.same(c) {
			return "a" + strconv.Itoa(i+1)
		}
	}
	d.corners = append(d.corners, c)
	return "a" + strconv.Itoa(len(d.corners))
}

// pointHook is the class of the point at p.
func (d *drawing) pointHook(p geom.Point) string {
	for _, q := range d.fig.Points {
		if d.place(q.At) == d.place(p) {
			return d.hooks[&q.Thing]
		}
	}
	return ""
}

// lineHooks are the classes of all straights drawn along g, one of which has
// inked each stretch of it.
func (d *drawing) lineHooks(g segment) string {
	var along []string
	for _, s := range d.fig.Straights {
		if r, ok := d.ruled[&s.Thing]; ok && g.along(r.ends()) {
			along = append(along, d.hooks[&s.Thing])
		}
	}
	return strings.Join(along, " ")
}

// circleHooks are the classes of all circles and arcs drawn round as c is.
func (d *drawing) circleHooks(c *figure.Circle) string {
	var same []string
	for _, k := range d.fig.Circles {
		if !k.Hidden && near(k.Circle.C.X, c.Circle.C.X) && near(k.Circle.C.Y, c.Circle.C.Y) && near(k.Circle.R2, c.Circle.R2) {
			same = append(same, d.hooks[&k.Thing])
		}
	}
	return strings.Join(same, " ")
}

// ends is the stretch that is drawn.
func (r ruled) ends() segment { return segment{r.point(r.lo), r.point(r.hi)} }
