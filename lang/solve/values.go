package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/lang/program"
)

// ladder is the values that an input may take: the plain one, and others
// further and further from it, up (0) and down (1). They keep their distance in
// proportion to the figure, so that they grow with it.
type ladder struct {
	plain *big.Rat
	at    float64       // where that is
	rungs [2][]*big.Rat // those that were asked for; the others are nil
	store [22]*big.Rat
	make  func(way, n int) *big.Rat // a rung, once it is asked for
	last  func() []*big.Rat         // where no rung will do
	fine  func(float64) *big.Rat
	scale float64   // a way that is dear; 0 for openings, which go by factors
	dear  float64   // what that costs
	jolts []float64 // moves to other values that are nothing special
}

// How far apart the rungs are: openings by a factor, parts of a way and slopes
// by themselves, degrees, and coordinates in eighths of the figure's scale.
var (
	wideFactors   = []float64{1.04, 1.08, 1.2, 1.44, 1.7, 2.1, 2.5, 3, 3.7, 4.6}
	narrowFactors = []float64{1.04, 1.08, 1.2, 1.44, 1.7, 2.1, 2.5, 3, 3.7}
	partSteps     = []float64{0.07, 0.14, 0.21, 0.28, 0.35, 0.43, 0.51}
	degreeSteps   = []float64{8, 16, 25, 35, 47, 61, 78, 97, 118, 141, 165}
	placeSteps    = []float64{0.6, 1.2, 1.9, 2.7, 3.7, 5, 6.6, 9}
	slopeSteps    = []float64{0.22, 0.47, 0.8, 1.2, 1.7, 2.4, 3.4}
	lastParts     = []float64{1.3, -0.3, 1.6, 2.5}
	lastOpenings  = []float64{8, 1. / 8, 16, 1. / 16}
	lastReaches   = []float64{0.6, 1.3} // of the figure
	nearestToEnds = 0.06                // of a way
)

// dear is the badness for which an opening goes e times as far from the plain
// one, and other values as far as their fifth rung.
const dear = 0.3

// ladder is of an input, about its plain value.
func (s *search) ladder(in int) *ladder { return s.ladderAt(in, s.plain[in]) }

// ladderAt is of an input, about any value.
func (s *search) ladderAt(in int, plain *big.Rat) *ladder {
	l := &ladder{plain: plain, dear: dear, last: func() []*big.Rat { return nil }}
	l.at = float(l.plain)
	switch s.p.Inputs[in].Kind {
	case program.Opening:
		l.openings(s.strikesArc(in))
		l.last = func() []*big.Rat { return slices.Concat(l.otherFactors(), s.otherOpenings(in), s.wholeOpenings()) }
	case program.Abscissa, program.Ordinate:
		l.steps(placeSteps, s.scale[in], finely(s.scale[in]))
	case program.Slope:
		l.steps(slopeSteps, 1, hundredths)
	case program.Bearing:
		l.steps(degreeSteps, 1, degrees)
		l.jolts = []float64{5, -5}
	case program.Fraction:
		l.parts()
	}
	return l
}

// wholeOpenings are as wide as the figure, which may have grown far beyond a plain one.
func (s *search) wholeOpenings() (all []*big.Rat) {
	for _, k := range lastReaches {
		x := k * s.size()
		all = append(all, decimal(x, x/16))
	}
	return all
}

// otherOpenings are those that the compasses may have kept.
func (s *search) otherOpenings(in int) (all []*big.Rat) {
	for k, other := range s.p.Inputs[:in] {
		if other.Kind == program.Opening {
			all = append(all, s.st.Inputs[k])
		}
	}
	return all[max(0, len(all)-mostKept):]
}

// mostKept is how many of them are tried.
const mostKept = 4

// strikesArc tells whether an opening is the compasses', and no side of a shape, which makes
// nothing but points. While it comes to nothing it may be either.
func (s *search) strikesArc(in int) bool {
	made := s.writes[s.p.Inputs[in].Step]
	return len(made) == 0 || slices.ContainsFunc(made, func(slot int) bool { return s.p.Slots[slot].Kind == program.Circle })
}

// openings go by factors; those of arcs begin with a small one, which takes a tick off another.
func (l *ladder) openings(arc bool) {
	wide, narrow := wideFactors, narrowFactors
	if !arc {
		wide, narrow = wide[1:], narrow[1:]
	}
	l.fine = func(x float64) *big.Rat { return decimal(x, x/30) }
	l.jolts = []float64{l.at * 0.0137, -l.at * 0.0137}
	l.ways(len(wide), len(narrow), func(way, n int) *big.Rat {
		if way == 0 {
			return l.fine(l.at * wide[n])
		}
		return l.fine(l.at / narrow[n])
	})
}

// otherFactors are openings much wider or narrower than the plain one.
func (l *ladder) otherFactors() (all []*big.Rat) {
	for _, k := range lastOpenings {
		all = append(all, decimal(l.at*k, l.at*k/16))
	}
	return all
}

// ways sets how many rungs there are upwards and downwards, and how they are made.
func (l *ladder) ways(up, down int, make func(way, n int) *big.Rat) {
	l.rungs, l.make = [2][]*big.Rat{l.store[:up], l.store[up : up+down]}, make
}

// steps puts rungs so many scales away from the plain value.
func (l *ladder) steps(steps []float64, scale float64, fine func(float64) *big.Rat) {
	l.fine = fine
	l.scale = steps[4] * scale
	l.jolts = []float64{0.0137 * scale, -0.0137 * scale}
	l.ways(len(steps), len(steps), func(way, n int) *big.Rat {
		if way == 0 {
			return fine(l.at + steps[n]*scale)
		}
		return fine(l.at - steps[n]*scale)
	})
}

// parts are of a way: between its ends if the plain one is, and last past them.
func (l *ladder) parts() {
	l.steps(partSteps, 1, hundredths)
	if l.at > 0 && l.at < 1 {
		l.rungs[0] = l.rungs[0][:l.inside(1)]
		l.rungs[1] = l.rungs[1][:l.inside(-1)]
	}
	l.last = func() (all []*big.Rat) {
		for _, v := range lastParts {
			all = append(all, hundredths(v))
		}
		return all
	}
}

// inside is how many rungs on a side stay clear of the ends of a way.
func (l *ladder) inside(sign float64) int {
	for n, d := range partSteps {
		if f := math.Round((l.at+sign*d)*100) / 100; f < nearestToEnds || f > 1-nearestToEnds {
			return n
		}
	}
	return len(partSteps)
}

// far is what it costs to go to a value from the plain one.
func (l *ladder) far(v *big.Rat) float64 {
	x := float(v)
	if l.scale == 0 {
		return l.dear * math.Abs(math.Log(x/l.at))
	}
	return l.dear * math.Abs(x-l.at) / l.scale
}

// rung is the nth one on a side; the plain value before the first, nil after the last.
func (l *ladder) rung(way, n int) *big.Rat {
	switch {
	case n < 0:
		return l.plain
	case n >= len(l.rungs[way]):
		return nil
	case l.rungs[way][n] == nil:
		l.rungs[way][n] = l.make(way, n)
	}
	return l.rungs[way][n]
}

// between is a short number in the middle of two; nil where there is none.
func (l *ladder) between(a, b *big.Rat) *big.Rat {
	if a == nil || b == nil {
		return nil
	}
	mid := l.fine((float(a) + float(b)) / 2)
	if mid.Cmp(a) == 0 || mid.Cmp(b) == 0 {
		return nil
	}
	return mid
}

// beside are values close to one, and nothing special.
func (l *ladder) beside(v *big.Rat) (all []*big.Rat) {
	for _, d := range l.jolts {
		all = append(all, new(big.Rat).Add(v, new(big.Rat).SetFloat64(d)))
	}
	return all
}

func hundredths(x float64) *big.Rat { return big.NewRat(int64(math.Round(x*100)), 100) }

// degrees are whole ones, clear of the upright, the level and other directions that
// look as if they were given.
func degrees(x float64) *big.Rat {
	at := math.Round(x)
	for _, part := range []float64{30, 45} {
		special := part * math.Round(at/part)
		switch off := at - special; {
		case off >= 0 && off < aslant:
			at = special + aslant
		case off < 0 && -off < aslant:
			at = special - aslant
		}
	}
	return big.NewRat(int64(at), 1)
}

// aslant is by how many degrees. Fewer would be lost where turns are rounded.
const aslant = 6

// finely rounds places in a figure of that scale.
func finely(scale float64) func(float64) *big.Rat {
	return func(x float64) *big.Rat { return decimal(x, scale/5) }
}

// decimal is the number nearest to x that is a multiple of 1, 2 or 5 in the
// last decimal that the grain leaves.
func decimal(x, grain float64) *big.Rat {
	if !(grain > 1e-12) || grain > 1e12 {
		return new(big.Rat).SetFloat64(x)
	}
	power := math.Floor(math.Log10(grain))
	unit, m := math.Pow(10, power), 1.0
	switch {
	case grain >= 5*unit:
		m = 5
	case grain >= 2*unit:
		m = 2
	}
	n := int64(math.Round(x/(m*unit)) * m)
	if power < 0 {
		return big.NewRat(n, tens[int(-power)])
	}
	return new(big.Rat).SetInt(new(big.Int).Mul(big.NewInt(n), big.NewInt(tens[int(power)])))
}

// tens are the powers of ten.
var tens = func() (all [14]int64) {
	all[0] = 1
	for i := range all[1:] {
		all[i+1] = 10 * all[i]
	}
	return all
}()

// float is Float64, quickly for numbers that are short.
func float(v *big.Rat) float64 {
	const most = 1 << 53
	if n := v.Num(); n.IsInt64() {
		switch a := n.Int64(); {
		case a > most || a < -most:
		case v.IsInt():
			return float64(a)
		default:
			if d := v.Denom(); d.IsInt64() && d.Int64() <= most {
				return float64(a) / float64(d.Int64())
			}
		}
	}
	f, _ := v.Float64()
	return f
}
