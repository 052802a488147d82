// Package solve chooses what a source leaves to chance, as a practised hand
// would: every later meeting exists, curves cross steeply, and no two points
// come out nearly alike. It tries short numbers first, uses no clock and no
// randomness, and gives the same answer every time.
package solve

import (
	"math"
	"math/big"

	"trammel/geom"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// rounds is how often all inputs are gone through.
const rounds = 3

// good is the badness under which a figure is left as it is.
const good = 0.3

// Inputs are the chosen values, one for each input of the Program. Where
// nothing fits they are the best that was found, and running the Program on
// them says what fails.
func Inputs(p *program.Program) []*big.Rat {
	s := &search{p: p}
	s.best = make([]*big.Rat, len(p.Inputs))
	for i, in := range p.Inputs {
		s.best[i] = in.Default
	}
	if len(p.Inputs) == 0 {
		return s.best
	}
	s.scale = s.sizeOfGivens()
	for i, in := range p.Inputs {
		if in.Kind == program.Opening {
			s.best[i] = new(big.Rat).Mul(in.Default, s.scale)
		}
	}
	s.grade = s.try(s.best)
	for range rounds {
		before := s.grade
		for i := range p.Inputs {
			if s.grade.enough() {
				return s.best
			}
			s.improve(i)
		}
		if s.grade == before {
			break
		}
	}
	return s.best
}

// search is the state of one choice.
type search struct {
	p     *program.Program
	best  []*big.Rat
	grade grade
	scale *big.Rat // what 1 is to openings, so that they suit the givens
}

// grade is how good a choice is: first how far the figure gets, then how it looks.
type grade struct {
	done    int
	of      int
	badness float64
}

func (g grade) enough() bool { return g.done == g.of && g.badness <= good }

func (g grade) better(h grade) bool {
	if g.done != h.done {
		return g.done > h.done
	}
	return g.badness < h.badness-1e-9
}

// improve goes through the values of one input and keeps the best.
func (s *search) improve(i int) {
	in := s.p.Inputs[i]
	if in.Step > s.grade.done {
		return // it cannot mend what fails before it is used
	}
	base := append([]*big.Rat{}, s.best...)
	for _, v := range s.values(in, base[i]) {
		next := append([]*big.Rat{}, base...)
		next[i] = v
		if g := s.try(next); g.better(s.grade) {
			s.best, s.grade = next, g
			if g.enough() {
				return
			}
		}
	}
}

func rat(a, b int64) *big.Rat { return big.NewRat(a, b) }

// openings are tried in this order, short decimals and middling sizes first.
var openings = []*big.Rat{
	rat(3, 1), rat(5, 2), rat(7, 2), rat(4, 1), rat(2, 1), rat(9, 2), rat(5, 1), rat(3, 2), rat(11, 2), rat(6, 1),
	rat(14, 5), rat(16, 5), rat(7, 1), rat(8, 1), rat(1, 1), rat(9, 1), rat(10, 1), rat(12, 1), rat(15, 1), rat(20, 1), rat(1, 2), rat(30, 1),
}

// values are what an input may be.
func (s *search) values(in *program.Input, now *big.Rat) []*big.Rat {
	var out []*big.Rat
	switch in.Kind {
	case program.Opening:
		for _, v := range openings {
			out = append(out, new(big.Rat).Mul(v, s.scale))
		}
	case program.Coordinate:
		for _, d := range []int64{2, -2, 4, -4, 7, -7, 12, -12, 20, -20, 30, -30} {
			out = append(out, new(big.Rat).Add(now, new(big.Rat).Mul(rat(d, 4), s.scale)))
		}
		out = append(out, new(big.Rat).Neg(now))
	case program.Fraction:
		for _, v := range []int64{40, 60, 27, 73, 52, 15, 85, 35, 66, 8, 92, 130, -30, 160, 250} {
			out = append(out, rat(v, 100))
		}
	case program.Bearing:
		for _, v := range []int64{50, 35, 68, 110, 130, 155, 200, 235, 290, 320, 20, 80, 12, 168} {
			out = append(out, rat(v, 1))
		}
	}
	return out
}

func (s *search) try(inputs []*big.Rat) grade {
	st, done, err := eval.Sketch(s.p, inputs)
	g := grade{done: done, of: len(s.p.Steps)}
	if err != nil {
		return g
	}
	g.badness = badness(st)
	return g
}

// badness adds up what a typesetter would object to: flat crossings, points
// that nearly coincide, things that are out of all proportion.
func badness(st *program.State) float64 {
	sum := 0.0
	for _, sine := range st.Crossings {
		if sine < 0.7 {
			sum += (0.7 - sine) * (0.7 - sine) * 8
		}
	}
	pts := places(st)
	sum += crowding(pts)
	return sum
}

type place struct{ x, y float64 }

func places(st *program.State) []place {
	var out []place
	for i, v := range st.Values {
		if p, ok := v.(geom.Point); ok && st.Program.Slots[i].Ink != nil {
			out = append(out, place{p.X.Float(), p.Y.Float()})
		}
	}
	return out
}

// crowding counts points that are near each other and not the same, against
// the size of the whole.
func crowding(pts []place) float64 {
	if len(pts) > 60 {
		pts = pts[:60]
	}
	size := spread(pts)
	if size == 0 {
		return 0
	}
	sum := 0.0
	for i, p := range pts {
		for _, q := range pts[i+1:] {
			d := math.Hypot(p.x-q.x, p.y-q.y) / size
			if d > 1e-9 && d < 0.06 {
				sum += (0.06 - d) * 8
			}
		}
	}
	return sum
}

func spread(pts []place) float64 {
	if len(pts) == 0 {
		return 0
	}
	lo, hi := pts[0], pts[0]
	for _, p := range pts {
		lo = place{min(lo.x, p.x), min(lo.y, p.y)}
		hi = place{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return math.Hypot(hi.x-lo.x, hi.y-lo.y)
}

// sizeOfGivens is a power of ten, maybe halved or doubled, that fits openings
// to the figure: 1 for a figure some 8 units across.
func (s *search) sizeOfGivens() *big.Rat {
	st, _, _ := eval.Sketch(s.p, s.best)
	size := spread(places(st))
	if size == 0 {
		return rat(1, 1)
	}
	scale := rat(1, 1)
	for f := size / 8; f >= 2.5; f /= 2 {
		scale.Mul(scale, rat(2, 1))
	}
	for f := size / 8; f <= 0.3; f *= 2 {
		scale.Quo(scale, rat(2, 1))
	}
	return scale
}
