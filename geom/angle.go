package geom

import (
	"fmt"
	"math"
	"math/big"

	"trammel/geom/exact"
)

// Angle is a sum of corner angles, each times a fraction, and of degrees. It is
// a size, not a direction: 370° is more than 10°.
type Angle struct {
	degrees *big.Rat
	turns   []turn
	approx  float64 // radians, to within a few units of the last place
}

// turn is k times the angle from the x axis anticlockwise to dir, up to 360°.
type turn struct {
	k     *big.Rat
	dir   Vector
	whole bool // it may be over 180°
}

// Degrees is an angle of that many degrees.
func Degrees(d *big.Rat) Angle {
	f, _ := d.Float64()
	return Angle{degrees: d, approx: f * math.Pi / 180}
}

// Corner is the angle at v between the ways to a and to b, from 0° to 180°, or
// when reflex the rest of the full turn. a and b must differ from v.
func Corner(a, v, b Point, reflex bool) Angle {
	u, w := a.Sub(v), b.Sub(v)
	if u.X.Field().KeepsFormulas() {
		u.Norm2().Sure()
		w.Norm2().Sure()
	}
	dir := Vector{u.Dot(w), u.Cross(w).Abs()}
	if reflex {
		dir.Y = dir.Y.Neg()
	}
	size := math.Atan2(dir.Y.Float(), dir.X.Float())
	if size < 0 || reflex && size == 0 {
		size += 2 * math.Pi
	}
	return Angle{new(big.Rat), []turn{{big.NewRat(1, 1), dir, reflex}}, size}
}

// Add is the sum of two angles.
func (a Angle) Add(b Angle) Angle {
	turns := append(append([]turn{}, a.turns...), b.turns...)
	return Angle{new(big.Rat).Add(a.degrees, b.degrees), turns, a.approx + b.approx}
}

// Mul is k times a.
func (a Angle) Mul(k *big.Rat) Angle {
	f, _ := k.Float64()
	out := Angle{degrees: new(big.Rat).Mul(a.degrees, k), approx: a.approx * f}
	for _, t := range a.turns {
		out.turns = append(out.turns, turn{new(big.Rat).Mul(t.k, k), t.dir, t.whole})
	}
	return out
}

// Float is the size in degrees; it decides nothing.
func (a Angle) Float() float64 { return a.approx * 180 / math.Pi }

// Gap is a - b in degrees, as a float even where that is very little; it decides nothing.
func (a Angle) Gap(b Angle) float64 {
	d := a.Add(b.Mul(big.NewRat(-1, 1)))
	if math.Abs(d.approx) <= d.slip() {
		if s, radians := d.enclosed(); s != 0 {
			d.approx = radians
		}
	}
	return d.Float()
}

// Cmp is the sign of a - b, exactly. The error says why equal angles cannot be shown to be so.
func (a Angle) Cmp(b Angle) (int, error) {
	whole := a.Add(b.Mul(big.NewRat(-1, 1))).merged().whole().loosened()
	if math.Abs(whole.approx) > whole.slip() {
		return sign(whole.approx), nil
	}
	if len(whole.turns) == 0 {
		return whole.degrees.Sign(), nil
	}
	if whole.count() <= mostTurns {
		if dir, err := whole.direction(); err == nil {
			whole.note(*dir)
			return dir.Y.Sign(), nil // so near to zero the direction tells the size's sign
		}
	}
	if s, _ := whole.enclosed(); s != 0 {
		return s, nil
	}
	if whole.count() > mostTurns {
		return 0, fmt.Errorf("not decided: more than %d turns of angles would have to be added up", mostTurns)
	}
	return 0, fmt.Errorf("not decided: the two angles are the same to 1200 decimals of a degree, and one of them has no exact cosine here (whole degrees, tenths, minutes and their halvings have)")
}

// note tells a field that keeps formulas on what it hangs that an angle is 0 and no
// other number of full turns: that its direction is not opposite, and that it
// cannot be a full turn or more, or less than nothing. If it may be just a full turn, it is
// one only where all of the angles that it is made of are straight or nothing.
func (a Angle) note(dir Vector) {
	f := dir.X.Field()
	if !f.KeepsFormulas() {
		return
	}
	dir.X.Ahead()
	least, most := new(big.Rat).Set(a.degrees), new(big.Rat).Set(a.degrees)
	bent := f.Int(0)
	for _, t := range a.turns {
		way := new(big.Rat).Mul(t.k, big.NewRat(180, 1))
		if t.whole {
			way.Add(way, way)
		}
		if t.k.Sign() > 0 {
			most.Add(most, way)
		} else {
			least.Add(least, way)
		}
		bent = bent.Add(t.dir.Y.Mul(t.dir.Y))
	}
	down, up := least.Cmp(big.NewRat(-360, 1)), most.Cmp(big.NewRat(360, 1))
	switch {
	case down < 0 || up > 0:
		f.Unsure()
	case down == 0 || up == 0:
		bent.Bends()
	}
}

// enclosed is the sign of a and its size in radians, where enclosures can tell it
// from 0; else both are 0.
func (a Angle) enclosed() (sign int, radians float64) {
	if len(a.turns) == 0 {
		return a.degrees.Sign(), a.approx
	}
	var turns []exact.Turn
	for _, t := range a.turns {
		turns = append(turns, exact.Turn{Times: t.k, X: t.dir.X, Y: t.dir.Y})
	}
	return a.turns[0].dir.X.Field().SumOfTurns(turns, a.degrees)
}

// loosened is a with the degrees as they are in a field that has made them free.
func (a Angle) loosened() Angle {
	if len(a.turns) > 0 {
		a.approx += a.turns[0].dir.X.Field().Loosened(a.degrees)
	}
	return a
}

// slip bounds the error of approx, very generously: each turn is known to a few
// units in the last place of 2π.
func (a Angle) slip() float64 {
	sum := 1.0
	for _, t := range a.turns {
		k, _ := t.k.Float64()
		sum += math.Abs(k)
	}
	deg, _ := a.degrees.Float64()
	unit := 1e-12
	if len(a.turns) > 0 && a.turns[0].dir.X.Field().KeepsFormulas() {
		unit = 1e-7 // its numbers are rough, and what it takes for 0 is tried
	}
	return unit * (sum + math.Abs(deg))
}

func sign[T int | float64](x T) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// mostTurns is how many angles an exact comparison adds up.
const mostTurns = 1000

// count is how many times an angle's whole turns are taken, all together.
func (a Angle) count() int64 {
	sum := new(big.Int)
	for _, t := range a.turns {
		sum.Add(sum, new(big.Int).Abs(t.k.Num()))
	}
	if !sum.IsInt64() {
		return math.MaxInt64
	}
	return sum.Int64()
}

// merged is a with the multiples of equal turns added up.
func (a Angle) merged() Angle {
	var turns []turn
	for _, t := range a.turns {
		found := false
		for i, u := range turns {
			if !found && near(t.dir, u.dir) && t.dir.Cross(u.dir).Sign() == 0 && t.dir.Dot(u.dir).Ahead() {
				turns[i].k = new(big.Rat).Add(u.k, t.k)
				found = true
			}
		}
		if !found {
			turns = append(turns, t)
		}
	}
	out := Angle{degrees: a.degrees, approx: a.approx}
	for _, t := range turns {
		if t.k.Sign() != 0 {
			out.turns = append(out.turns, t)
		}
	}
	return out
}

// near tells by floats whether two directions may be the same.
func near(u, v Vector) bool {
	a, b := math.Atan2(u.Y.Float(), u.X.Float()), math.Atan2(v.Y.Float(), v.X.Float())
	return math.Abs(math.Remainder(a-b, 2*math.Pi)) < 1e-6
}

// whole is a positive multiple of a whose turns are whole: its sign is a's. Its
// degrees have an exact cosine if there need not be too many turns for that; where
// there are anyway, a factor common to all turns is taken out.
func (a Angle) whole() Angle {
	den := big.NewInt(1)
	for _, t := range a.turns {
		den.Mul(den, new(big.Int).Quo(t.k.Denom(), gcd(den, t.k.Denom())))
	}
	out := a.Mul(new(big.Rat).SetInt(den))
	if more := out.Mul(new(big.Rat).SetInt(withoutCosine(out.degrees))); more.count() <= mostTurns {
		return more
	}
	if out.count() <= mostTurns {
		return out
	}
	common := new(big.Int)
	for _, t := range out.turns {
		common = gcd(common, new(big.Int).Abs(t.k.Num()))
	}
	return out.Mul(new(big.Rat).SetFrac(big.NewInt(1), common))
}

// withoutCosine is the least number of times so many degrees that are a multiple of
// minutes or their halvings.
func withoutCosine(degrees *big.Rat) *big.Int {
	odd := new(big.Int).Rsh(degrees.Denom(), degrees.Denom().TrailingZeroBits())
	return odd.Quo(odd, gcd(odd, big.NewInt(15)))
}

func gcd(a, b *big.Int) *big.Int { return new(big.Int).GCD(nil, nil, a, b) }

// direction is a vector at the angle a, which has turns, whole ones.
func (a Angle) direction() (*Vector, error) {
	f := a.turns[0].dir.X.Field()
	out := Vector{f.Int(1), f.Int(0)}
	for _, t := range a.turns {
		dir := t.dir
		if t.k.Sign() < 0 {
			dir.Y = dir.Y.Neg()
		}
		for range new(big.Int).Abs(t.k.Num()).Int64() {
			out = out.Turn(dir.X, dir.Y)
		}
	}
	if a.degrees.Sign() != 0 {
		cos, sin, err := f.CosSin(a.degrees)
		if err != nil {
			return nil, err
		}
		out = out.Turn(cos, sin)
	}
	return &out, nil
}

// Exact gives the size in degrees when it is a whole number of quarters of a
// minute, and so in minutes, in tenths and in sixteenths of a degree.
func (a Angle) Exact() (*big.Rat, bool) {
	if len(a.turns) == 0 {
		return a.degrees, true
	}
	const parts = 240
	near := big.NewRat(int64(math.Round(a.Float()*parts)), parts)
	if f, _ := near.Float64(); math.Abs(f-a.Float()) > 1e-8 {
		return nil, false
	}
	c, err := a.Cmp(Degrees(near))
	return near, err == nil && c == 0
}

// Text is the exact size, in decimals where four places are enough, else in
// minutes: 22.5°, 12°20′; false where it is neither.
func (a Angle) Text() (string, bool) {
	r, ok := a.Exact()
	if !ok {
		return "", false
	}
	if text, ok := FiniteDecimal(r, 4); ok {
		return text + "°", true
	}
	minutes := new(big.Rat).Mul(r, big.NewRat(60, 1))
	if !minutes.IsInt() {
		return "", false
	}
	whole, rest := new(big.Int).QuoRem(new(big.Int).Abs(minutes.Num()), big.NewInt(60), new(big.Int))
	text := fmt.Sprintf("%v°%v′", whole, rest)
	if r.Sign() < 0 {
		text = "−" + text
	}
	return text, true
}

// CosSin gives the cosine and sine of a.
func (a Angle) CosSin(f interface {
	CosSin(*big.Rat) (cos, sin Real, err error)
}) (cos, sin Real, err error) {
	if len(a.turns) == 0 {
		return f.CosSin(a.degrees)
	}
	cos, sin, err = f.CosSin(a.degrees)
	if err != nil {
		return nil, nil, err
	}
	dir := Vector{cos, sin}
	for _, t := range a.turns {
		if dir, err = dir.turnBy(t); err != nil {
			return nil, nil, err
		}
	}
	return dir.X, dir.Y, nil
}

// turnBy turns v by t. A fraction of a corner is reached by halving, the only
// division of an angle that compasses can do in general.
func (v Vector) turnBy(t turn) (Vector, error) {
	half := t.dir.unit()
	for den := t.k.Denom().Int64(); den > 1; den /= 2 {
		if den%2 != 0 {
			return Vector{}, fmt.Errorf("an angle can be halved exactly, not divided by %s", t.k.Denom())
		}
		half = half.halfTurn()
	}
	if t.k.Sign() < 0 {
		half.Y = half.Y.Neg()
	}
	for range new(big.Int).Abs(t.k.Num()).Int64() {
		v = v.Turn(half.X, half.Y)
	}
	return v, nil
}

// unit is v at length 1.
func (v Vector) unit() Vector {
	n := v.Norm2().Sqrt()
	return Vector{v.X.Div(n), v.Y.Div(n)}
}

// halfTurn is the unit vector at half the angle, up to 360°, of the unit vector v.
func (v Vector) halfTurn() Vector {
	one := v.X.Field().Int(1)
	cos := one.Add(v.X).Div(one.MulInt(2)).Sqrt()
	if v.Y.Choice() < 0 {
		cos = cos.Neg()
	}
	return Vector{cos, one.Sub(v.X).Div(one.MulInt(2)).Sqrt()}
}

// Turned is the angle from the x axis anticlockwise to v.
func Turned(v Vector) Angle {
	size := math.Atan2(v.Y.Float(), v.X.Float())
	if size < 0 {
		size += 2 * math.Pi
	}
	return Angle{new(big.Rat), []turn{{big.NewRat(1, 1), v, true}}, size}
}

// String is the size in degrees: exact where Text is.
func (a Angle) String() string {
	if text, ok := a.Text(); ok {
		return text
	}
	return fmt.Sprintf("≈ %s°", TrimZeros(fmt.Sprintf("%.2f", a.Float())))
}
