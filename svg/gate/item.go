package gate

import (
	"fmt"
	"math"
	"strings"
)

// item is one thing on the paper: a curve, a dot, a mark or a label. A path of
// several things is several items.
type item struct {
	what    string   // the kind of a mark or of words: "tick", "length"; "" for others
	owners  []string // classes of the things it is of: "p3"
	layer   string
	words   string  // of a label
	lines   [][]xy  // flattened: centre lines of strokes, outlines of what is filled
	half    float64 // of the stroke's width, or the radius of a dot
	filled  bool
	corners []xy // of a path, as written
	round   *arc // set for a circle or an arc
	extent  box
}

// bounds is the paper that the item takes.
func (i *item) bounds() box {
	if i.extent == (box{}) {
		b := nowhere
		for _, line := range i.lines {
			for _, p := range line {
				b = b.with(p)
			}
		}
		i.extent = b.grow(i.half)
	}
	return i.extent
}

// gap is the distance between the ink of two items, 0 where they touch, and
// where that is. Gaps that are not under within are not measured: it is +Inf then.
func (i *item) gap(o *item, within float64) (float64, xy) {
	least, at := math.Inf(1), xy{}
	if i.bounds().gap(o.bounds()) >= within {
		return least, at
	}
	halves := i.half + o.half
	reach := within + halves
	i.stretches(o.bounds().grow(reach), func(s stretch) {
		near := s.bounds()
		o.stretches(near.grow(min(reach, least)), func(t stretch) {
			if g, p := s.gap(t); g < least {
				least, at = g, p
			}
		})
	})
	if p, q := i.lines[0][0], o.lines[0][0]; i.covers(q) || o.covers(p) {
		least, at = 0, p.mid(q)
	}
	if least = max(0, least-halves); least >= within {
		return math.Inf(1), at
	}
	return least, at
}

// stretches visits the straight pieces that come into a box.
func (i *item) stretches(in box, visit func(stretch)) {
	for _, line := range i.lines {
		if len(line) == 1 {
			visit(stretch{line[0], line[0]})
		}
		for k := 1; k < len(line); k++ {
			if s := (stretch{line[k-1], line[k]}); s.bounds().gap(in) == 0 {
				visit(s)
			}
		}
	}
}

// covers tells whether p lies in the filled inside, by how often the outlines
// turn round it.
func (i *item) covers(p xy) bool {
	if !i.filled {
		return false
	}
	turns := 0
	for _, line := range i.lines {
		for k := 1; k < len(line); k++ {
			a, b := line[k-1], line[k]
			if (a.y <= p.y) == (b.y <= p.y) {
				continue
			}
			if side := b.sub(a).cross(p.sub(a)); (side > 0) == (b.y > a.y) {
				if b.y > a.y {
					turns++
				} else {
					turns--
				}
			}
		}
	}
	return turns != 0
}

// How exactly what belongs to a mark meets it: millimetres, and the sine of an angle.
const (
	meets  = 0.05
	square = 0.03
)

// belongs tells whether a curve belongs to the mark, by the rules of the package.
func (i *item) belongs(o *item) bool {
	if o.layer == dots {
		return false
	}
	switch p := i.corners; i.what {
	case "tick":
		way := p[1].sub(p[0])
		return o.straight() && o.passes(p[0].mid(p[1])) && o.way().parallel(xy{way.y, -way.x}) < square
	case "arrow":
		return o.straight() && o.passes(p[1]) && o.way().parallel(p[1].sub(p[0].mid(p[2]))) < square
	case "square":
		return o.passes(i.vertex())
	case "arc":
		return o.passes(i.round.c)
	}
	return false
}

// vertex is the corner of the angle that a square marks.
func (i *item) vertex() xy { return i.corners[0].add(i.corners[2]).sub(i.corners[1]) }

// beside tells whether both are squares of one vertex.
func (i *item) beside(o *item) bool {
	return i.what == "square" && o.what == "square" && i.vertex().dist(o.vertex()) < meets
}

// flattest is the rise in millimetres of an arc over its chord under which a
// tick on the chord cannot but cross the arc.
const flattest = 1.2

// flat tells whether a circle has so flat a chord among the curves that a tick
// on that chord must cross it.
func (i *item) flat(o *item, curves []*item) bool {
	if i.what != "tick" || o.round == nil {
		return false
	}
	for _, c := range curves {
		if c.straight() && i.belongs(c) && o.passes(c.corners[0]) && o.passes(c.corners[1]) {
			half := c.way().len() / 2
			return o.round.r-math.Sqrt(max(0, o.round.r*o.round.r-half*half)) < flattest
		}
	}
	return false
}

func (i *item) straight() bool { return i.round == nil }
func (i *item) way() xy        { return i.corners[1].sub(i.corners[0]) }

// passes tells whether the whole line or circle that the curve is part of goes
// through p. It need not be inked there: it may be broken for a label.
func (i *item) passes(p xy) bool {
	if i.round != nil {
		return math.Abs(i.round.c.dist(p)-i.round.r) < meets
	}
	return math.Abs(i.way().cross(p.sub(i.corners[0]))) < meets*i.way().len()
}

// along tells whether two curves are parts of one line or circle.
func (i *item) along(o *item) bool {
	if i.round != nil || o.round != nil {
		return i.round != nil && o.round != nil && i.round.c.dist(o.round.c) < meets && math.Abs(i.round.r-o.round.r) < meets
	}
	return i.passes(o.corners[0]) && i.passes(o.corners[1])
}

// name is what a reader finds the item by.
func (i *item) name() string {
	owners := strings.Join(i.owners, " ")
	switch {
	case i.words != "":
		return strings.TrimSpace(fmt.Sprintf("the label %q %s", i.words, owners))
	case i.layer == dots:
		return "the dot " + owners
	case i.what != "":
		return strings.TrimSpace("the " + i.what + " " + owners)
	case i.round != nil:
		return strings.TrimSpace("the round " + owners)
	}
	return strings.TrimSpace("the straight " + owners)
}
