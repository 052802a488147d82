// Package layout lays a resolved figure out on paper: which stretch of each
// line and arc is inked and how heavily, the marks, and a place for every
// label. It is the only place that rounds: positions become whole micrometres
// before anything is decided about them.
package layout

import (
	"fmt"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/svg"
)

// Options are what the drawing needs beyond the figure.
type Options struct {
	ID    string   // prefix of every id in the file
	Asked []string // for a handout, the names of the points that are asked for
	Tight bool     // no wider for a screen's shape, since it goes on a page
}

// Warning is a blemish that the layout could not avoid.
type Warning struct {
	Line int // of the source, 0 when none is to blame
	Text string
	Help string // what would mend it; may be empty
}

// Refusal is why no honest drawing exists: the theme is unknown, or the figure
// does not fit its paper, or fingers could not read it.
type Refusal struct {
	Text string
	Help string // what would mend it; may be empty
	// Units are worth a trial, in millimetres, the likeliest first: what is left to
	// chance is chosen anew for each, and only then is it known whether it would do.
	Units []int
}

// Error is the fact.
func (r *Refusal) Error() string { return r.Text }

// Draw lays f out. An error is a *Refusal.
func Draw(f *figure.Figure, o Options) (*svg.Doc, []Warning, error) {
	d, err := laidOut(f)
	if err != nil {
		return nil, nil, err
	}
	if err := d.refuseTouch(); err != nil {
		return nil, nil, err
	}
	d.theme.screen = d.theme.screen && !o.Tight
	doc, err := d.frame()
	if err != nil {
		return nil, nil, err
	}
	d.warnSmall()
	doc.ID, doc.Lang, doc.Title, doc.Desc = o.ID, f.Locale().Tag, f.Title, describe(f)
	return doc, d.warnings, nil
}

// laidOut is a drawing with everything on the sheet, in the largest type of its
// theme in which nothing is amiss.
func laidOut(f *figure.Figure) (*drawing, error) {
	best, err := newDrawing(f)
	if err != nil {
		return nil, err
	}
	best.laid()
	for t := best.theme.smaller; t != nil && best.amiss() > 0; t = t.smaller {
		d, _ := newDrawing(f)
		d.theme = *t
		if d.laid().amiss() < best.amiss() {
			best = d
		}
	}
	return best, nil
}

// amiss counts the labels without a place clear of all lines where none is asked for, the marks on foreign ink and
// the paper that is too small.
func (d *drawing) amiss() int {
	n := d.fouled
	if d.fig.Paper != nil && !d.fits(d.extent()) {
		n++
	}
	for i, l := range d.labels {
		if !l.pinned && (!l.spots[l.at].clear() || l.unclear()) || d.overlapped(i) != nil {
			n++
		}
	}
	return n
}

// laid has everything on the sheet, which has no edges yet.
func (d *drawing) laid() *drawing {
	d.drawShades()
	d.drawStraights()
	d.drawCircles()
	d.drawDots()
	d.lay()
	d.drawMarks()
	d.drawHatches()
	d.requestLabels()
	d.hatchCosts()
	d.placeLabels()
	d.cutInk()
	d.clearHatches()
	d.drawMeasures()
	return d
}

// drawing is the sheet while it is being worked on.
type drawing struct {
	fig      *figure.Figure
	theme    theme
	scale    float64 // micrometres of paper for one unit
	strokes  []stroke
	dots     []dot
	shades   []svg.Path
	hatches  []segment
	bands    []band
	squares  map[segment]vec // strokes of the squares of right angles, by their vertices
	gaps     []gapAt         // that marks ask for
	labels   []*label
	texts    []svg.Text // placed words
	warnings []Warning

	hooks      map[*figure.Thing]string
	record     record
	marking    int // the step whose mark is being drawn
	tools      []svg.Path
	corners    []corner                // the angles that are marked or labelled
	ruled      map[*figure.Thing]ruled // straights as drawn
	open       box                     // where regions that run on are hatched
	joins      []segment               // those with both their ends
	struck     map[vec][]int           // arcs by the meetings that they are used at, in order
	centres    []vec                   // of the circles
	ground     *grid                   // what is inked so far
	dimensions map[segment]segment     // lines beside segments, for the lengths and ticks of these
	angleText  svg.Micrometre          // height of the labels of angles
	effort     int                     // spent on placing labels
	dodging    int                     // spent on placing marks
	fouled     int                     // foreign ink that marks touch
}

// stroke is a curve with its ink. Owner is nil for a mark.
type stroke struct {
	curve
	pen
	layer layer
	owner *figure.Thing
	hook  string // its class
	step  int    // that drew it
}

// dot is a point as drawn.
type dot struct {
	disc
	owner *figure.Thing
}

func newDrawing(f *figure.Figure) (*drawing, error) {
	name := f.Theme
	if name == "" {
		name = figure.Themes[0]
	}
	t, ok := themes[name]
	if !ok {
		return nil, &Refusal{Text: fmt.Sprintf("no theme is called %q", name), Help: "the themes are " + strings.Join(figure.Themes, ", ")}
	}
	unit := 10.0
	if f.Unit != nil {
		unit, _ = f.Unit.Float64()
	}
	return &drawing{fig: f, theme: t, scale: unit * mm, hooks: hooks(f)}, nil
}

// place is a point of the plane on the paper, in whole micrometres.
func (d *drawing) place(p geom.Point) vec {
	return vec{p.X.Float(), -p.Y.Float()}.times(d.scale).snap()
}

// warn adds a warning about what the step drew.
func (d *drawing) warn(step int, text, help string) {
	line := 0
	if 0 <= step && step < len(d.fig.Steps) {
		line = d.fig.Steps[step].Line
	}
	d.warnings = append(d.warnings, Warning{line, text, help})
}

// warnOf adds a warning about a label.
func (d *drawing) warnOf(l *label, text, help string) {
	if l.line == 0 {
		d.warn(l.step, l.what+text, help)
		return
	}
	d.warnings = append(d.warnings, Warning{l.line, l.what + text, help})
}

// ink adds a stroke of a thing.
func (d *drawing) ink(c curve, x *figure.Thing) {
	p, l := d.theme.ink(x)
	d.strokes = append(d.strokes, stroke{c, p, l, x, d.hooks[x], x.Step})
}

// mark adds a stroke of a mark of that kind.
func (d *drawing) mark(kind string, c curve) {
	s := stroke{c, d.theme.mark, markLayer, nil, kind, d.marking}
	d.strokes, d.record.marks = append(d.strokes, s), append(d.record.marks, s)
	d.ground.add(d.obstacle(len(d.strokes) - 1))
}

// mm is a distance or a size of a mark in this theme.
func (d *drawing) mm(n float64) float64 { return float64(n * mm * d.theme.mag) }

// drawDots puts a dot on every point that shows.
func (d *drawing) drawDots() {
	for _, p := range d.fig.Points {
		if !p.Hidden {
			d.dots = append(d.dots, dot{disc{d.place(p.At), d.theme.dot}, &p.Thing})
		}
	}
}
