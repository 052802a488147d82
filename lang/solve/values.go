package solve

import (
	"math"
	"math/big"

	"trammel/lang/program"
)

// ladder is the values that an input may take: the plain one, and others
// further and further from it, up (0) and down (1). They keep their distance in
// proportion to the figure, so that they grow with it.
type ladder struct {
	plain *big.Rat
	rungs [2][]*big.Rat
	last  []*big.Rat // where no rung will do
	fine  func(float64) *big.Rat
	scale float64   // a way that is dear; 0 for openings, which go by factors
	jolts []float64 // moves to other values that are nothing special
}

// How far apart the rungs are: openings by a factor, parts of a way and slopes
// by themselves, degrees, and coordinates in eighths of the figure's scale.
var (
	wideFactors   = []float64{1.08, 1.2, 1.44, 1.7, 2.1, 2.5, 3, 3.7, 4.6}
	narrowFactors = []float64{1.08, 1.2, 1.44, 1.7, 2.1, 2.5, 3, 3.7}
	partSteps     = []float64{0.07, 0.14, 0.21, 0.28, 0.35, 0.43, 0.51}
	degreeSteps   = []float64{8, 16, 25, 35, 47, 61, 78, 97, 118, 141, 165}
	placeSteps    = []float64{0.6, 1.2, 1.9, 2.7, 3.7, 5, 6.6, 9}
	slopeSteps    = []float64{0.25, 0.5, 0.8, 1.2, 1.7, 2.4, 3.4}
	lastParts     = []float64{1.3, -0.3, 1.6, 2.5}
	lastOpenings  = []float64{8, 1. / 8, 16, 1. / 16}
	nearestToEnds = 0.06 // of a way
)

// dear is the badness for which an opening goes e times as far from the plain
// one, and other values as far as their fifth rung.
const dear = 0.3

// ladder is of an input, about its plain value.
func (s *search) ladder(in int) ladder {
	plain, _ := s.plain[in].Float64()
	l := ladder{plain: s.plain[in]}
	switch s.p.Inputs[in].Kind {
	case program.Opening:
		l.openings(plain)
		l.last = append(l.last, s.otherOpenings(in)...)
	case program.Abscissa, program.Ordinate:
		l.steps(plain, placeSteps, s.scale[in], finely(s.scale[in]))
	case program.Slope:
		l.steps(plain, slopeSteps, 1, hundredths)
	case program.Bearing:
		l.steps(plain, degreeSteps, 1, degrees)
		l.jolts = []float64{5, -5}
	case program.Fraction:
		l.parts(plain)
	}
	return l
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

func (l *ladder) openings(plain float64) {
	l.fine = func(x float64) *big.Rat { return decimal(x, x/30) }
	l.jolts = []float64{plain * 0.0137, -plain * 0.0137}
	for _, k := range wideFactors {
		l.rungs[0] = append(l.rungs[0], decimal(plain*k, plain*k/30))
	}
	for _, k := range narrowFactors {
		l.rungs[1] = append(l.rungs[1], decimal(plain/k, plain/k/30))
	}
	for _, k := range lastOpenings {
		l.last = append(l.last, decimal(plain*k, plain*k/16))
	}
}

// steps puts rungs so many scales away from the plain value.
func (l *ladder) steps(plain float64, steps []float64, scale float64, fine func(float64) *big.Rat) {
	l.fine = fine
	l.scale = steps[4] * scale
	l.jolts = []float64{0.0137 * scale, -0.0137 * scale}
	for _, d := range steps {
		l.rungs[0] = append(l.rungs[0], fine(plain+d*scale))
		l.rungs[1] = append(l.rungs[1], fine(plain-d*scale))
	}
}

// parts are of a way: between its ends if the plain one is, and last past them.
func (l *ladder) parts(plain float64) {
	l.steps(plain, partSteps, 1, hundredths)
	if plain > 0 && plain < 1 {
		for way, list := range l.rungs {
			for k, v := range list {
				if f, _ := v.Float64(); f < nearestToEnds || f > 1-nearestToEnds {
					l.rungs[way] = list[:k]
					break
				}
			}
		}
	}
	for _, v := range lastParts {
		l.last = append(l.last, hundredths(v))
	}
}

// far is what it costs to go to a value from the plain one.
func (l *ladder) far(v *big.Rat) float64 {
	x, _ := v.Float64()
	p, _ := l.plain.Float64()
	if l.scale == 0 {
		return dear * math.Abs(math.Log(x/p))
	}
	return dear * math.Abs(x-p) / l.scale
}

// rung is the nth one on a side; the plain value before the first, nil after the last.
func (l *ladder) rung(way, n int) *big.Rat {
	switch {
	case n < 0:
		return l.plain
	case n < len(l.rungs[way]):
		return l.rungs[way][n]
	}
	return nil
}

// between is a short number in the middle of two; nil where there is none.
func (l *ladder) between(a, b *big.Rat) *big.Rat {
	if a == nil || b == nil {
		return nil
	}
	x, _ := a.Float64()
	y, _ := b.Float64()
	mid := l.fine((x + y) / 2)
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
func degrees(x float64) *big.Rat    { return big.NewRat(int64(math.Round(x)), 1) }

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
	n := new(big.Rat).SetInt64(int64(math.Round(x/(m*unit)) * m))
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(math.Abs(power))), nil)
	if power < 0 {
		return n.Quo(n, new(big.Rat).SetInt(ten))
	}
	return n.Mul(n, new(big.Rat).SetInt(ten))
}
