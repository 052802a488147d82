package layout

import (
	"fmt"
	"slices"
	"strings"

	"trammel/geom/figure"
	"trammel/svg"
)

// Frame is the drawing as it stands after a step.
type Frame struct {
	Doc     *svg.Doc
	Caption string
	Line    int      // of the source, where the step begins
	Strokes []Stroke // what the step has drawn, in the order of drawing; in the last frame marks only
}

// FrameOptions are what the frames need beyond the figure.
type FrameOptions struct {
	Options
	Tools bool // show the compasses and the straightedge at work
}

// Frames draws f step by step, all on one paper at one scale. What is new in a
// frame is black and heavy, and has the word "new" in its class; what went before
// recedes; every label keeps its place. The last frame is the finished drawing, just
// as Draw has it but for the room that tools take; its caption is the reasons that
// end the figure, or else that it is finished. An error is a *Refusal.
func Frames(f *figure.Figure, o FrameOptions) ([]Frame, []Warning, error) {
	finished, warnings, err := Draw(f, o.Options)
	if err != nil {
		return nil, nil, err
	}
	full, err := laidOut(f)
	if err != nil {
		return nil, nil, err
	}
	full.theme.screen = full.theme.screen && !o.Tight
	parts := full.parts()
	size := full.extent()
	sheets := make([]*drawing, len(parts))
	for i, p := range parts {
		if sheets[i] = full; p.finished {
			continue
		}
		sheets[i] = full.after(p)
		if o.Tools {
			sheets[i].addTools(p, size)
		}
		if f.Paper == nil {
			size = size.union(extentOf(sheets[i].tools))
		}
	}
	frames := make([]Frame, len(parts))
	for i, p := range parts {
		doc, err := sheets[i].frameOf(size)
		if err != nil {
			return nil, nil, err
		}
		frames[i] = Frame{Doc: doc, Caption: p.caption, Line: p.line, Strokes: sheets[i].drawnIn(p, shiftTo(size, float64(doc.Width), float64(doc.Height)))}
		doc.ID, doc.Lang, doc.Title, doc.Desc = o.ID, finished.Lang, finished.Title, finished.Desc
		if !p.finished {
			doc.ID, doc.Desc = fmt.Sprintf("%s-%02d", o.ID, i+1), describeUntil(f, p.last)
		}
	}
	return frames, warnings, nil
}

// describeUntil is the captions up to a step.
func describeUntil(f *figure.Figure, last int) string {
	var parts []string
	for _, c := range f.Captions()[:last+1] {
		parts = appendSentence(parts, c)
	}
	return strings.Join(parts, " ")
}

// part is the steps of one frame.
type part struct {
	first, last int // steps
	caption     string
	line        int
	finished    bool
	also        map[int]bool // later steps whose ink is there too
}

// parts are the steps of the frames. An act that adds no ink, such as a join of
// what is joined already, makes none.
func (full *drawing) parts() []part {
	var kept []part
	for _, p := range partsOf(full.fig) {
		if n := len(kept); n > 0 && full.idle(p) {
			kept[n-1].last = p.last
			continue
		}
		kept = append(kept, p)
	}
	return kept
}

// idle tells whether a part is acts that leave the paper as it was.
func (full *drawing) idle(p part) bool {
	if s := full.fig.Steps; p.finished || s[p.first].Given || s[p.first].Reason {
		return false
	}
	d, r := full.upTo(p), &full.record
	in := func(step int) bool { return p.first <= step && step <= p.last }
	dots := map[vec]bool{}
	for _, o := range d.dots {
		dots[o.c.snap()] = dots[o.c.snap()] || !in(o.owner.Step)
	}
	return !slices.ContainsFunc(d.strokes, func(s stroke) bool { return in(s.step) }) &&
		!slices.ContainsFunc(d.dots, func(o dot) bool { return in(o.owner.Step) && !dots[o.c.snap()] }) &&
		!slices.ContainsFunc(d.labels, func(l *label) bool { return in(l.step) }) &&
		!slices.ContainsFunc(r.shades, in) &&
		!slices.ContainsFunc(r.hatchings, func(h hatching) bool { return in(h.step) }) &&
		!slices.ContainsFunc(r.bars, func(b bar) bool { return in(b.owner.Step) })
}

// partsOf gathers the steps that are told together. Last comes the finished
// drawing: with the reasons that end the figure, or by itself.
func partsOf(f *figure.Figure) []part {
	var parts []part
	captions := f.Captions()
	for i, s := range f.Steps {
		if n := len(parts); n > 0 && captions[i] == "" {
			parts[n-1].last = i
			continue
		}
		parts = append(parts, part{first: i, last: i, caption: captions[i], line: s.Line})
	}
	n := len(parts)
	if n > 0 && f.Steps[parts[n-1].first].Reason {
		parts[n-1].finished = true
		return parts
	}
	end := part{caption: f.Finished(), finished: true}
	if n > 0 {
		end.first, end.last, end.line = parts[n-1].last+1, parts[n-1].last, parts[n-1].line
	}
	return append(parts, end)
}

// record is what has been laid out, each with its step, before it is covered
// by other ink and cut at words: what an earlier frame shows is taken from it.
type record struct {
	straights []ruled
	circles   []rounded
	marks     []stroke
	shades    []int // the steps of the shades
	hatchings []hatching
	bars      []bar
}

// after is the drawing as far as a part has brought it, with what is new set off.
func (full *drawing) after(p part) *drawing {
	d := full.upTo(p)
	d.setOff(p)
	return d
}

// upTo is the drawing as far as a part has brought it, in its own ink.
func (full *drawing) upTo(p part) *drawing {
	r := &full.record
	d := &drawing{fig: full.fig, theme: full.theme, scale: full.scale, hooks: full.hooks}
	d.inkStraights(until(r.straights, p, func(x ruled) int { return x.owner.Step }))
	d.inkCircles(until(r.circles, p, func(x rounded) int { return x.owner.Step }))
	d.strokes = append(d.strokes, until(r.marks, p, func(x stroke) int { return x.step })...)
	d.dots = until(full.dots, p, func(x dot) int { return x.owner.Step })
	d.labels = until(full.labels, p, func(x *label) int { return x.step })
	for i, step := range r.shades {
		if step <= p.last {
			d.shades = append(d.shades, full.shades[i])
		}
	}
	for _, h := range until(r.hatchings, p, func(x hatching) int { return x.step }) {
		d.hatches = append(d.hatches, h.strokes...)
	}
	d.cutAtLabels()
	d.clearHatches()
	for _, l := range d.labels {
		d.texts = append(d.texts, l.text)
	}
	for _, b := range until(r.bars, p, func(x bar) int { return x.owner.Step }) {
		d.addBar(b)
	}
	return d
}

// until keeps what has been made up to the end of a part, and what it has besides.
func until[T any](all []T, p part, step func(T) int) []T {
	var kept []T
	for _, x := range all {
		if step(x) <= p.last || p.also[step(x)] {
			kept = append(kept, x)
		}
	}
	return kept
}

// fresh is the class of what a frame's step has drawn.
const fresh = "new"

// newDot is how much larger a new dot is.
const newDot = 1.4

// setOff makes what a part has drawn heavy and black, and lets the rest recede
// into the ink of the construction.
func (d *drawing) setOff(p part) {
	for i := range d.dots {
		if o := &d.dots[i]; o.owner.Step >= p.first {
			o.r *= newDot
		}
	}
	for i := range d.strokes {
		s := &d.strokes[i]
		if s.step < p.first {
			s.colour = d.theme.construction.colour
			s.width = min(s.width, d.theme.given.width)
			continue
		}
		s.colour = d.theme.result.colour
		if s.owner != nil {
			s.width = max(s.width, d.theme.result.width)
		}
		s.hook = strings.TrimSpace(s.hook + " " + fresh)
	}
}
