package png

import (
	"math"

	"trammel/svg"
)

// shape is a polygon, closed from its last corner to its first.
type shape []svg.Place

// follow appends a stretch, or what runs so far to its left.
func (s *shape) follow(stretch svg.Stretch, left float64) {
	for _, n := range nodes(stretch) {
		*s = append(*s, n.off(left))
	}
}

// node is a place on a line, and the direction of length 1 to the left of it.
type node struct{ at, left svg.Place }

// off is the place so far to the left.
func (n node) off(v float64) svg.Place {
	return svg.Place{X: n.at.X + float64(n.left.X*v), Y: n.at.Y + float64(n.left.Y*v)}
}

// nodes are the corners of a stretch in chords.
func nodes(s svg.Stretch) []node {
	if len(s.Spokes) == 0 {
		dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
		length := distance(s.From, s.To)
		if length == 0 {
			return nil
		}
		left := svg.Place{X: dy / length, Y: -dx / length}
		return []node{{s.From, left}, {s.To, left}}
	}
	u, v := s.Spokes[0], s.Spokes[1]
	inwards := float64(u.X*v.Y) < float64(u.Y*v.X) // anticlockwise, the centre is to the left
	all := make([]node, len(s.Spokes))
	for i, u := range s.Spokes {
		if inwards {
			u = svg.Place{X: -u.X, Y: -u.Y}
		}
		all[i] = node{s.On(i), u}
	}
	return all
}

func distance(a, b svg.Place) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// stroke is what a pen covers that goes along the stretches, in shapes that all
// turn clockwise: a band for each stretch, or each dash of it, and a disc where
// a round pen turns or ends. Dashes end square.
func stroke(ink svg.Ink, outline []svg.Stretch, closed bool, scale float64) (shapes []shape) {
	half := float64(ink.Width) / 2
	full := len(ink.Dash) == 0
	walk := dashes{lengths: ink.Dash}
	for i, s := range outline {
		turns := i > 0 || closed && len(outline) > 1
		if full && (turns || !closed) || i > 0 && walk.inked() {
			shapes = append(shapes, disc(s.From, half, scale))
		}
		for _, line := range walk.cut(nodes(s)) {
			shapes = append(shapes, band(line, half))
		}
	}
	if full && !closed {
		shapes = append(shapes, disc(outline[len(outline)-1].To, half, scale))
	}
	return shapes
}

// band is a line with the breadth of the pen.
func band(line []node, half float64) shape {
	s := make(shape, 2*len(line))
	for i, n := range line {
		s[i], s[len(s)-1-i] = n.off(half), n.off(-half)
	}
	return s
}

// disc is what the pen covers at one place.
func disc(at svg.Place, half, scale float64) shape {
	round := svg.Disc{Radius: 1}.Stretches()[0]
	round.Centre, round.Radius = at, half
	round = (&canvas{scale: scale}).fine(round)
	var s shape
	for i := range round.Spokes[1:] {
		s = append(s, round.On(i))
	}
	return s
}

// dashes walks along a path with strokes and gaps, the first of which begins
// with the path.
type dashes struct {
	lengths []svg.Micrometre
	number  int     // of the one that is being walked
	done    float64 // of its length
}

// inked tells whether the pen is down.
func (d *dashes) inked() bool { return d.number%2 == 0 }

// cut is what is inked of a line that goes on from the last one.
func (d *dashes) cut(line []node) (inked [][]node) {
	if len(d.lengths) == 0 || len(line) == 0 {
		return [][]node{line}
	}
	current := []node{line[0]}
	for _, to := range line[1:] {
		for from := current[len(current)-1]; ; {
			left, rest := float64(d.lengths[d.number%len(d.lengths)])-d.done, distance(from.at, to.at)
			if rest < left {
				d.done += rest
				break
			}
			t := left / rest
			from = node{between(from.at, to.at, t), between(from.left, to.left, t)}
			if d.inked() {
				inked = append(inked, append(current, from))
			}
			current = []node{from}
			d.number, d.done = d.number+1, 0
		}
		current = append(current, to)
	}
	if d.inked() && len(current) > 1 {
		inked = append(inked, current)
	}
	return inked
}
