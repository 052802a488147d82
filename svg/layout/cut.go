package layout

// cutInk breaks the lines that still run under a label, so that the label can
// be read. Faint lines bear that without a word; where a label stands on
// heavier ink, or nearer to another thing than to its own, there is a warning.
// Marks and dots are never cut.
func (d *drawing) cutInk() {
	for _, l := range d.labels {
		if l.unclear() {
			d.warnOf(l, " finds no clear place", l.help())
		}
	}
	d.cutAtMarks()
	d.cutAtLabels()
	d.warnOverlaps()
}

// help is what would clear the place of a label.
func (l *label) help() string {
	const enlarge = "enlarge the unit"
	switch {
	case l.pinned:
		return "leave out where it is to stand, or say another place"
	case l.pointed && l.owner != nil:
		return enlarge + " or say where, as in: label " + l.owner.Name + " at 10 o'clock"
	case l.pointed:
		return enlarge + ", or write less"
	}
	return enlarge
}

// unclear tells that the label stands on ink that cannot give way, or nearer to
// another thing than to its own.
func (l *label) unclear() bool {
	s := &l.spots[l.at]
	return s.hits > 0 || s.lost || s.across || l.parted
}

// gapAt is a gap in one stroke, for a mark.
type gapAt struct {
	stroke int
	box
}

// breakFor asks for gaps in the faint strokes that a mark cannot but touch, and
// counts what does not give way.
func (d *drawing) breakFor(mark []curve, own func(o *obstacle) bool) {
	clear := d.theme.mark.half() + d.mm(clearInk)
	for _, c := range mark {
		d.ground.near(c.bounds().grow(clear), func(o *obstacle) bool {
			switch {
			case o.stroke < 0 || own(o):
			case o.thin:
				d.breakOff(c, o, clear)
			case d.meets(c, o):
				d.fouled++
			}
			return true
		})
	}
}

func (d *drawing) breakOff(c curve, o *obstacle, clear float64) {
	b := nowhere
	for _, p := range c.samples(d.mm(0.2)) {
		if off(o.shape, p) < d.theme.mark.half()+o.half+contact {
			b = b.union(around(p, clear, clear))
		}
	}
	if !b.empty() {
		d.gaps = append(d.gaps, gapAt{o.stroke, b})
	}
}

// meets tells whether a stroke of a mark touches an obstacle.
func (d *drawing) meets(c curve, o *obstacle) bool {
	reach := d.theme.mark.half() + o.half + contact
	return nearest(c.samples(d.mm(0.2)), o, reach) < reach
}

func (d *drawing) cutAtMarks() {
	var rest []stroke
	for i, s := range d.strokes {
		pieces := []stroke{s}
		for _, g := range d.gaps {
			if g.stroke == i {
				pieces = d.cutAll(pieces, g.box)
			}
		}
		rest = append(rest, pieces...)
	}
	d.strokes = rest
}

func (d *drawing) cutAtLabels() {
	for _, l := range d.labels {
		if s := l.spots[l.at]; s.hits+s.thin > 0 || s.broken {
			d.cut(s.grow(d.mm(clearInk)))
		}
	}
}

// crumb is the length in millimetres under which what a cut leaves of a stroke
// would look like a blot.
const crumb = 0.8

// cut takes away the ink of things, not of marks, within b.
func (d *drawing) cut(b box) { d.strokes = d.cutAll(d.strokes, b) }

func (d *drawing) cutAll(strokes []stroke, b box) []stroke {
	var rest []stroke
	for _, s := range strokes {
		if s.layer == markLayer || !s.touches(b.grow(s.half())) {
			rest = append(rest, s)
			continue
		}
		for _, c := range s.without(b.grow(s.half())) {
			if c.length() >= d.mm(crumb) {
				piece := s
				piece.curve = c
				rest = append(rest, piece)
			}
		}
	}
	return rest
}

// warnOverlaps names, once for each label, another that it runs into.
func (d *drawing) warnOverlaps() {
	for i, l := range d.labels {
		if o := d.overlapped(i); o != nil {
			d.warnOf(l, " runs into "+o.what, "leave one of them out, or enlarge the unit")
		}
	}
}

// overlapped is an earlier label that the ith runs into, or nil.
func (d *drawing) overlapped(i int) *label {
	l := d.labels[i]
	for _, o := range d.labels[:i] {
		if l.spots[l.at].overlaps(o.spots[o.at].box) {
			return o
		}
	}
	return nil
}
