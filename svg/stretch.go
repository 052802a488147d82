package svg

import "math"

// Place is a point of the paper between whole micrometres.
type Place struct{ X, Y float64 }

// Stretch is one piece of a path for writers that draw no circular arcs of
// their own. An arc is told by its centre and by spokes: directions of length 1
// from the centre, evenly turned, from its start to its end. A straight piece
// has no spokes. Only sums, products, quotients and square roots go into it,
// so that it is the same on every processor.
type Stretch struct {
	From, To Place
	Centre   Place
	Radius   float64
	Spokes   []Place
}

// maxTurn is the most that two neighbouring spokes are apart, as a number of
// halvings of a right angle. A cubic curve over 22.5° strays from its circle by
// 7e-8 of the radius at most: by 0.1 µm where the radius is 1.5 m.
const maxTurn = 2

// Stretches are the pieces of the path, with the one that closes it.
func (p Path) Stretches() []Stretch {
	var all []Stretch
	at := p.Start
	for _, piece := range p.Pieces {
		all = append(all, piece.stretch(at))
		at = piece.To
	}
	if p.Closed && at != p.Start {
		all = append(all, Stretch{From: at.place(), To: p.Start.place()})
	}
	return all
}

// Stretches are the whole circle, clockwise from its right.
func (d Disc) Stretches() []Stretch {
	right := Place{1, 0}
	s := Stretch{Centre: d.Centre.place(), Radius: float64(d.Radius)}
	s.turn(right, right, false)
	s.From = s.On(0)
	s.To = s.From
	return []Stretch{s}
}

func (p XY) place() Place { return Place{float64(p.X), float64(p.Y)} }

// On is where a spoke meets the circle.
func (s Stretch) On(spoke int) Place { return s.Out(spoke, 0) }

// Out is the place on a spoke that is so far beyond the circle.
func (s Stretch) Out(spoke int, beyond float64) Place {
	u, r := s.Spokes[spoke], s.Radius+beyond
	return Place{s.Centre.X + float64(u.X*r), s.Centre.Y + float64(u.Y*r)}
}

// stretch is the piece from a point on. As in SVG, a radius too small to reach
// is taken as half the distance.
func (p Piece) stretch(at XY) Stretch {
	s := Stretch{From: at.place(), To: p.To.place(), Radius: float64(p.Radius)}
	dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
	chord := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if p.Radius == 0 || chord == 0 {
		return s
	}
	s.Radius = max(s.Radius, chord/2)
	height := math.Sqrt(max(0, float64(s.Radius*s.Radius)-float64(chord*chord)/4))
	if p.Large == p.Clockwise { // then the centre is on the left of the chord, as one goes along it on the paper
		height = -height
	}
	s.Centre = Place{(s.From.X+s.To.X)/2 - float64(dy/chord*height), (s.From.Y+s.To.Y)/2 + float64(dx/chord*height)}
	s.turn(s.spoke(s.From), s.spoke(s.To), !p.Clockwise)
	return s
}

// spoke is the direction from the centre to a place.
func (s Stretch) spoke(p Place) Place { return unit(Place{p.X - s.Centre.X, p.Y - s.Centre.Y}) }

// turn sets the spokes from one direction to another: by right angles as far
// as they go, and then halved. From a direction to itself is once round.
func (s *Stretch) turn(from, to Place, anticlockwise bool) {
	quarter := func(u Place) Place { return Place{-u.Y, u.X} }
	if anticlockwise {
		quarter = func(u Place) Place { return Place{u.Y, -u.X} }
	}
	round := from == to
	s.Spokes = []Place{from}
	for i := range 4 {
		next := quarter(from)
		if within(from, next, to) && !(round && i == 0) {
			s.halve(to, maxTurn)
			return
		}
		s.halve(next, maxTurn)
		from = next
	}
}

// within tells whether to lies in the right angle that opens from one direction
// to the next. The slack is for rounding: an arc as long as a micrometre turns
// farther, with any radius.
func within(from, next, to Place) bool {
	const slack = 1e-9
	return dot(from, to) > -slack && dot(next, to) > -slack
}

// halve appends the spokes from the last one to another, halved so many times.
func (s *Stretch) halve(to Place, times int) {
	if times == 0 {
		s.Spokes = append(s.Spokes, to)
		return
	}
	from := s.Spokes[len(s.Spokes)-1]
	s.halve(unit(Place{from.X + to.X, from.Y + to.Y}), times-1)
	s.halve(to, times-1)
}

func dot(a, b Place) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) }

func unit(p Place) Place {
	length := math.Sqrt(dot(p, p))
	return Place{p.X / length, p.Y / length}
}

// Finer is the same arc with a spoke more between every two.
func (s Stretch) Finer() Stretch {
	if len(s.Spokes) == 0 {
		return s
	}
	coarse := s.Spokes
	s.Spokes = coarse[:1:1]
	for _, to := range coarse[1:] {
		s.halve(to, 1)
	}
	return s
}
