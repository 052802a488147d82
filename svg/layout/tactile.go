package layout

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"trammel/svg"
)

// fingersApart is the least distance in millimetres between separate things
// that a finger tells apart: 1/8 inch (Braille Authority of North America,
// Guidelines and Standards for Tactile Graphics, 2010; from memory).
const fingersApart = 3.0

// tactile has lines of three widths, each twice the one before, that swell
// paper raises; points of 5 mm; marks and distances large enough that their
// parts are 3 mm apart. Nothing is grey, and words are braille.
func tactile() theme {
	t := enlarged(themed(500, 1000, 2000, 2000, black), 4, 3500, 3500)
	t.dot = 2500
	t.mark.width = 700
	t.gap, t.dash = fingersApart*mm, 6*mm
	t.braille = true
	return t
}

// tooClose is two things nearer to each other than the theme allows.
type tooClose struct {
	a, b string
	gap  float64 // between their edges
}

// refuseTouch is an error that lists what fingers could not tell apart, and the
// unit with which they could.
func (d *drawing) refuseTouch() error {
	if d.theme.gap == 0 {
		return nil
	}
	unfit := d.unfit()
	if len(unfit) == 0 {
		return nil
	}
	const shown = 8
	more := ""
	if len(unfit) > shown {
		more = fmt.Sprintf("; and %d more", len(unfit)-shown)
		unfit = unfit[:shown]
	}
	r := &Refusal{Text: "fingers cannot read this: " + strings.Join(unfit, "; ") + more}
	r.Help, r.Units = d.touchable()
	return r
}

// unfit says in words what is wrong with the drawing for fingers.
func (d *drawing) unfit() []string {
	var list []string
	for _, l := range d.labels {
		if unknown := svg.Unbrailled(l.text.Runs); len(unknown) > 0 {
			list = append(list, fmt.Sprintf("%s has no braille for %s", l.what, string(unknown)))
		}
		if l.spots[l.at].lost {
			list = append(list, l.what+" has no room beside its own, and stands nearer to something else")
		}
	}
	if d.fouled > 0 {
		list = append(list, "marks touch what they do not belong to")
	}
	for _, h := range d.record.hatchings {
		if len(d.textured(h.strokes)) == 0 {
			list = append(list, fmt.Sprintf("a shaded area has no room for strokes %.1f mm apart", d.theme.gap/mm))
		}
	}
	for _, c := range d.crowded() {
		list = append(list, fmt.Sprintf("%s and %s are %.1f mm apart, and need %.1f mm", c.a, c.b, max(0, c.gap)/mm, d.theme.gap/mm))
	}
	return list
}

// The largest sheet that is raised, in micrometres: A3 of ISO 216.
const (
	sheetShort = 297 * mm
	sheetLong  = 420 * mm
)

// touchable names the least whole unit, up to eight times this one, with which
// nothing is too close, if a sheet has room for that; and where something is left to
// chance, the units that are worth a trial.
func (d *drawing) touchable() (help string, trials []int) {
	from := math.Floor(d.scale / mm)
	var others []int
	for step, unit := 1.0, from+1; unit <= 8*from+8; unit += step {
		step = max(1, math.Floor(unit/10))
		e := d.enlarged(unit)
		size := withMargin(e.extent())
		switch {
		case min(size.x, size.y) > sheetShort || max(size.x, size.y) > sheetLong:
			unit = math.Inf(1)
		case len(e.unfit()) > 0:
			others = append(others, int(unit))
		case !d.fig.Chance:
			return fmt.Sprintf("unit %.0f mm would do", unit), nil
		default:
			trials = append(trials, int(unit))
		}
	}
	const none = "leave something out: no unit would do on a sheet of A3"
	if !d.fig.Chance {
		return none, nil
	}
	for unit := from - 1; unit > from/2; unit-- {
		others = append(others, int(unit))
	}
	if len(trials) == 0 {
		return none, others
	}
	return fmt.Sprintf("try unit %d mm, which would do if nothing that is left to chance moves", trials[0]), append(trials, others...)
}

// enlarged is the drawing when a unit is that many millimetres.
func (d *drawing) enlarged(unit float64) *drawing {
	larger := *d.fig
	larger.Unit = new(big.Rat).SetFloat64(unit)
	e := &drawing{fig: &larger, theme: d.theme, scale: unit * mm, hooks: d.hooks}
	return e.laid()
}

// felt is something on the paper and what it is called.
type felt struct {
	shape
	half  float64
	curve curve // nil for a dot and for words
	name  string
	whole string // parts of one thing share it
	at    *vec   // the vertex of an angle that it marks
}

// crowded lists the pairs that are too close, nearest first. What touches is
// meant to: lines cross, and points lie on them.
func (d *drawing) crowded() []tooClose {
	all := d.allFelt()
	met := map[[2]string]bool{}
	for i, a := range all {
		for _, b := range all[:i] {
			if (a.at != nil || b.at != nil || a.near(b, 0)) && a.meets(b) {
				met[[2]string{a.whole, b.whole}], met[[2]string{b.whole, a.whole}] = true, true
			}
		}
	}
	var list []tooClose
	seen := map[[2]string]bool{}
	for i, a := range all {
		for _, b := range all[:i] {
			pair := [2]string{b.name, a.name}
			if a.whole == b.whole || met[[2]string{a.whole, b.whole}] || seen[pair] || !a.near(b, d.theme.gap) {
				continue
			}
			if gap := a.gap(b); gap < d.theme.gap-1 {
				seen[pair] = true
				list = append(list, tooClose{b.name, a.name, gap})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b tooClose) int { return int(a.gap - b.gap) })
	return list
}

// near tells by their boxes that two things may be closer than the gap.
func (f felt) near(o felt, gap float64) bool {
	return f.bounds().grow(f.half + o.half + gap).overlaps(o.bounds())
}

// meets tells that two inked things touch, which nothing written may; what
// runs through the vertex of an angle may pass its mark closely.
func (f felt) meets(o felt) bool {
	if f.at != nil && off(o.shape, *f.at) < touching || o.at != nil && off(f.shape, *o.at) < touching {
		return true
	}
	words := strings.HasPrefix(f.whole, "label") || strings.HasPrefix(o.whole, "label")
	return !words && f.gap(o) < touching
}

// gap is the distance between the edges of two things.
func (f felt) gap(o felt) float64 {
	if f.curve == nil {
		f, o = o, f
	}
	least := math.Inf(1)
	if f.curve == nil { // neither is a curve: dots and words
		for _, p := range corners(f.bounds()) {
			least = min(least, o.bounds().near(p))
		}
		for _, p := range corners(o.bounds()) {
			least = min(least, f.bounds().near(p))
		}
		if f.bounds().overlaps(o.bounds()) {
			return 0
		}
		return least
	}
	for _, p := range f.curve.samples(0.5 * mm) {
		if least = min(least, off(o.shape, p)); least == 0 {
			break
		}
	}
	return least - f.half - o.half
}

func corners(b box) [4]vec {
	return [4]vec{b.lo, b.hi, {b.lo.x, b.hi.y}, {b.hi.x, b.lo.y}}
}

// allFelt is all ink and all words.
func (d *drawing) allFelt() []felt {
	var all []felt
	for _, s := range d.strokes {
		all = append(all, felt{s.curve, s.half(), s.curve, d.called(s), "stroke " + s.hook, d.vertexOf(s)})
	}
	for i, o := range d.dots {
		name := "a point"
		if o.owner.Name != "" {
			name = "the point " + o.owner.Name
		}
		all = append(all, felt{o.disc, 0, nil, name, fmt.Sprintf("dot %d", i), nil})
	}
	for i, l := range d.labels {
		all = append(all, felt{l.spots[l.at].box, 0, nil, l.what, fmt.Sprintf("label %d", i), nil})
	}
	return all
}

// vertexOf is the vertex of the angle that a stroke marks, if it does.
func (d *drawing) vertexOf(s stroke) *vec {
	if s.owner != nil {
		return nil
	}
	for _, c := range d.corners {
		if strings.HasSuffix(s.hook, " "+d.cornerHook(c)) {
			return &c.at
		}
	}
	return nil
}

// called is what a stroke is called in messages.
func (d *drawing) called(s stroke) string {
	if s.owner == nil {
		kind, _, _ := strings.Cut(s.hook, " ")
		return markNames[kind]
	}
	for _, t := range d.fig.Straights {
		if &t.Thing == s.owner {
			if name := (words{d.fig}).straight(t); name != "" {
				return "the straight " + name
			}
			return "a straight"
		}
	}
	for _, m := range d.fig.Measures {
		if &m.Thing == s.owner {
			return "the bar of " + m.Name
		}
	}
	for _, c := range d.fig.Circles {
		if &c.Thing == s.owner && c.Whole {
			return strings.TrimSpace("the circle " + c.Name)
		}
	}
	return strings.TrimSpace("the arc " + s.owner.Name)
}

var markNames = map[string]string{
	tickHook: "a tick", arrowHook: "an arrow", squareHook: "the square of a right angle", arcHook: "the arc of an angle",
	dimensionHook: "the line of a length",
}
