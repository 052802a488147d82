package exact

// Angles in degrees as free values, for figures at random positions. A theorem about a
// triangle with an angle of 58°15' usually holds of all angles near that; then it is shown on
// fractions, instead of over a field of degree 720. That an equation fails there says
// nothing of the angles as they are.
//
// An angle that is a sum of multiples of others, and of multiples of 15° or 18°, remains
// so: a triangle's angles still add up to 180°.

import (
	"math"
	"math/big"
)

// Loosen makes the angles in degrees of an empty field free, but for multiples of 15° and
// 18°: shift moves the tangent of a quarter of each from a fraction near its own.
func (f *Field) Loosen(shift func(near *big.Rat) *big.Rat) { f.loose = &looseAngles{shift: shift} }

// IsLoose tells whether an angle has been loosened.
func (f *Field) IsLoose() bool { return f.loose != nil && len(f.loose.free) > 0 }

// Loosened is by how many radians an angle in degrees is another in this field.
func (f *Field) Loosened(degrees *big.Rat) (shift float64) {
	if f.loose == nil {
		return 0
	}
	for i, k := range f.sumOf(degrees).times {
		shift += float64(k) * f.loose.free[i].shift
	}
	return shift
}

// looseAngles are the angles of a field that have been made free.
type looseAngles struct {
	shift func(near *big.Rat) *big.Rat
	free  []looseAngle
	sums  map[string]angleSum // by degrees
}

// looseAngle is half of an angle that was asked for, so that the angle and its half stand
// over the same value. (Its other parts are seldom wanted.)
type looseAngle struct {
	degrees  *big.Rat
	cos, sin *Real
	shift    float64 // in radians, to where it is now
}

// angleSum is a fixed angle and whole multiples of loose ones.
type angleSum struct {
	fixed *big.Rat
	times []int // by loose angle; those that came later are not in it
}

// fixedSteps are angles of which multiples stay as they are, in the order in which a sum
// is looked for.
var fixedSteps = []int64{90, 30, 15, 18}

// mostTimes bounds the multiples of loose angles in a sum, taken together.
const mostTimes = 8

// sumOf writes an angle as a sum, with a new loose angle if the others do not do.
func (f *Field) sumOf(degrees *big.Rat) angleSum {
	l, key := f.loose, degrees.RatString()
	sum, known := l.sums[key]
	if !known {
		sum = f.find(degrees)
		if l.sums == nil {
			l.sums = map[string]angleSum{}
		}
		l.sums[key] = sum
	}
	return sum
}

// find is sumOf for an angle that has not been asked for before.
func (f *Field) find(degrees *big.Rat) angleSum {
	l := f.loose
	for _, bounds := range [][2]int{{0, 0}, {1, mostTimes}} { // what is fixed stays so
		for _, step := range fixedSteps {
			for most := bounds[0]; most <= bounds[1]; most++ {
				if times, ok := l.search(degrees, step, len(l.free), most); ok {
					return angleSum{l.rest(degrees, times), times}
				}
			}
		}
	}
	f.loosen(degrees)
	times := make([]int, len(l.free))
	times[len(l.free)-1] = 2
	return angleSum{l.rest(degrees, times), times}
}

// search finds multiples of the first n loose angles, most of them together, that leave a
// multiple of a step.
func (l *looseAngles) search(degrees *big.Rat, step int64, n, most int) ([]int, bool) {
	parts, scale, ok := l.scaled(degrees, n)
	if !ok {
		return nil, false
	}
	return searchSum(parts[:n], parts[n], step*scale, most)
}

// mostScale keeps a sum of scaled angles within a machine word.
const mostScale = 1 << 36

// scaled is the first n loose angles, and then degrees, as whole multiples of one part of a
// degree in scale; false if these are too long.
func (l *looseAngles) scaled(degrees *big.Rat, n int) (parts []int64, scale int64, ok bool) {
	all := make([]*big.Rat, 0, n+1)
	for _, a := range l.free[:n] {
		all = append(all, a.degrees)
	}
	all = append(all, degrees)
	scale = 1
	for _, d := range all {
		den := d.Denom().Int64()
		if !d.Denom().IsInt64() || den/gcd64(scale, den) > mostScale/scale {
			return nil, 0, false
		}
		scale *= den / gcd64(scale, den)
	}
	for _, d := range all {
		whole := new(big.Int).Mul(d.Num(), big.NewInt(scale))
		parts = append(parts, whole.Div(whole, d.Denom()).Int64())
	}
	return parts, scale, true
}

// searchSum is search in whole numbers, which is quick: such sums are sought in every
// figure that is tried.
func searchSum(parts []int64, rest, step int64, most int) ([]int, bool) {
	n := len(parts)
	if n == 0 {
		return nil, most == 0 && rest%step == 0
	}
	for k := -most; k <= most; k++ {
		if times, ok := searchSum(parts[:n-1], rest-int64(k)*parts[n-1], step, most-max(k, -k)); ok {
			return append(times, k), true
		}
	}
	return nil, false
}

// rest is what the loose angles leave of so many degrees.
func (l *looseAngles) rest(degrees *big.Rat, times []int) *big.Rat {
	rest := new(big.Rat).Set(degrees)
	for i, k := range times {
		part := new(big.Rat).Mul(l.free[i].degrees, big.NewRat(int64(k), 1))
		rest.Sub(rest, part)
	}
	return rest
}

// nearness is the denominator of the fraction that shift is given.
const nearness = 1 << 30

// loosen frees half of an angle, taken from -90° to 90°. By the tangent t of half of that,
// its cosine is (1 - t²)/(1 + t²) and its sine 2t/(1 + t²) (Diophantus).
func (f *Field) loosen(degrees *big.Rat) {
	turns := new(big.Rat).Quo(degrees, big.NewRat(360, 1))
	turns.Add(turns, big.NewRat(1, 2))
	half := new(big.Rat).Sub(degrees, new(big.Rat).Mul(big.NewRat(360, 1), new(big.Rat).SetInt(wholePart(turns))))
	half.Quo(half, big.NewRat(2, 1))
	size, _ := half.Float64()
	size *= math.Pi / 180
	value := f.loose.shift(big.NewRat(int64(math.Round(math.Tan(size/2)*nearness)), nearness))
	t, one := f.Free(value), f.Int(1)
	t.settled = true
	n := one.Add(t.Mul(t))
	now, _ := value.Float64()
	f.loose.free = append(f.loose.free, looseAngle{
		degrees: half,
		cos:     one.Sub(t.Mul(t)).Div(n),
		sin:     t.MulInt(2).Div(n),
		shift:   2*math.Atan(now) - size,
	})
}

// looseCosSin is the cosine and sine of an angle as it is now.
func (f *Field) looseCosSin(degrees *big.Rat) (cos, sin *Real) {
	sum := f.sumOf(degrees)
	cos, sin = f.fixedCosSin(sum.fixed)
	for i, k := range sum.times {
		for range max(k, -k) {
			cos, sin = turned(cos, sin, f.loose.free[i].cos, signed(f.loose.free[i].sin, int64(k)))
		}
	}
	return cos, sin
}
