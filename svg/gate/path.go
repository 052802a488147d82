package gate

import (
	"fmt"
	"strings"
)

// spaced sets the letters of path data apart from its numbers.
var spaced = strings.NewReplacer("M", " M ", "L", " L ", "A", " A ", "C", " C ", "Z", " Z ")

// piece is a path from one corner to the next.
type piece struct {
	line  []xy
	round *arc
	jump  bool // another contour starts here
}

type pathReader struct {
	*reader
	words     []string
	start, at xy
	moved     bool
	pieces    []piece
}

func (p *pathReader) run() {
	for len(p.words) > 0 && p.err == nil {
		letter := p.words[0]
		p.words = p.words[1:]
		switch letter {
		case "M":
			p.at = p.point()
			p.start, p.moved = p.at, true
		case "L":
			p.reach([]xy{p.at, p.point()}, nil)
		case "C":
			b, c, d := p.point(), p.point(), p.point()
			p.reach(append([]xy{p.at}, cubic(p.at, b, c, d)...), nil)
		case "A":
			p.arc()
		case "Z":
			if p.at != p.start {
				p.reach([]xy{p.at, p.start}, nil)
			}
		default:
			p.keep(fmt.Errorf("a path has %q where a letter of M L A C Z should be", letter))
		}
	}
}

func (p *pathReader) reach(line []xy, round *arc) {
	p.pieces = append(p.pieces, piece{line, round, p.moved})
	p.at, p.moved = line[len(line)-1], false
}

func (p *pathReader) arc() {
	radius := p.next()
	if same := p.next(); same != radius {
		p.keep(fmt.Errorf("a path has an ellipse of %g and %g", radius, same))
	}
	p.next()
	large, clockwise := p.next() == 1, p.next() == 1
	if to := p.point(); to != p.at && radius > 0 {
		a := chordArc(p.at, to, radius, large, clockwise)
		line := a.flat()
		line[0], line[len(line)-1] = p.at, to
		p.reach(line, &a)
	}
}

func (p *pathReader) point() xy {
	x := p.next()
	return xy{x, p.next()}
}

func (p *pathReader) next() float64 {
	if len(p.words) == 0 {
		p.keep(fmt.Errorf("a path ends within a piece"))
		return 0
	}
	v := p.number(p.words[0])
	p.words = p.words[1:]
	return v
}

// whole puts all the pieces into one item.
func (p *pathReader) whole(i *item) *item {
	for _, q := range p.pieces {
		if q.jump {
			i.lines = append(i.lines, q.line[:1:1])
			i.corners = append(i.corners, q.line[0])
		}
		last := len(i.lines) - 1
		i.lines[last] = append(i.lines[last], q.line[1:]...)
		i.corners = append(i.corners, q.line[len(q.line)-1])
		i.round = q.round
	}
	return i
}
