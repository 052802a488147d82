package exact

// Cosines and sines of angles in degrees: a fraction of a degree with an odd denominator that
// divides 15, halved any number of times. Multiples of 3° and their halvings are made of
// square roots, by formulas from memory, which TestTrigonometricTable holds against a
// published table. The others stand over the base (base.go), by formulas computed here, which
// TestFractionsOfDegrees tries.
//
// An angle is put together from as few parts as will do, each of them made once, so that
// all angles of a figure stand over the same few roots.

import (
	"fmt"
	"math/big"
	"math/bits"
)

// angle is one of 0° to 45°, in degrees.
type angle struct{ num, den int64 }

// CosSin gives the cosine and sine of an angle in degrees: any whole number
// of them, of minutes or of tenths, and their halves, quarters and so on.
// Multiples of 3° and their halvings need square roots only; the other whole
// degrees stand over Q(2cos 40°), and fractions of degrees over larger bases.
func (f *Field) CosSin(degrees *big.Rat) (cos, sin *Real, err error) {
	if den := degrees.Denom(); den.BitLen() > mostDenominatorBits || 15%oddPart(den.Int64()) != 0 {
		return nil, nil, undecidable(degrees)
	}
	if f.loose != nil {
		cos, sin = f.looseCosSin(degrees)
	} else {
		cos, sin = f.fixedCosSin(degrees)
	}
	return cos, sin, nil
}

// fixedCosSin is the cosine and sine of an angle as it is, though the field may have
// others freed.
func (f *Field) fixedCosSin(degrees *big.Rat) (cos, sin *Real) {
	turn := big.NewRat(360, 1)
	d := new(big.Rat).Quo(degrees, turn)
	cos, sin = f.cosSin(d.Sub(degrees, d.Mul(turn, new(big.Rat).SetInt(wholePart(d)))))
	f.note(cos, degrees)
	f.note(sin, d.Sub(big.NewRat(90, 1), degrees))
	return cos, sin
}

// scaledCosine is a fraction times the cosine of an angle.
type scaledCosine struct {
	factor *Real
	angle  turn
}

// note keeps that x is the cosine of an angle, and so what multiple of it x is without its
// rational factor.
func (f *Field) note(x *Real, degrees *big.Rat) {
	if _, known := f.turns[x]; known || f.rough || x.isRatio() {
		return
	}
	angle := turnOf(degrees)
	f.fine = f.fine || 45%oddPart(angle.den) != 0 // 360°/45 is 8°, so odd parts of 45 are whole degrees and halvings
	f.turns[x] = scaledCosine{f.Int(1), angle}
	if x.unscaled() != x {
		f.turns[x.unscaled()] = scaledCosine{f.Int(1).Div(x.factor()), angle}
	}
}

// mostDenominatorBits lets an angle's numerator fit a machine word.
const mostDenominatorBits = 48

// oddPart is n without factors of 2.
func oddPart(n int64) int64 { return n >> bits.TrailingZeros64(uint64(n)) }

// cosSin is the cosine and sine of an angle from 0° to 360°, reflected into 0° to 45°.
func (f *Field) cosSin(d *big.Rat) (cos, sin *Real) {
	for _, r := range []struct {
		limit, sum int64
		flip       func(cos, sin *Real) (*Real, *Real)
	}{
		{180, 360, func(cos, sin *Real) (*Real, *Real) { return cos, sin.Neg() }},
		{90, 180, func(cos, sin *Real) (*Real, *Real) { return cos.Neg(), sin }},
		{45, 90, func(cos, sin *Real) (*Real, *Real) { return sin, cos }},
	} {
		if d.Cmp(big.NewRat(r.limit, 1)) > 0 {
			return r.flip(f.cosSin(new(big.Rat).Sub(big.NewRat(r.sum, 1), d)))
		}
	}
	return f.smallCosSin(angle{d.Num().Int64(), d.Denom().Int64()})
}

// wholePart is the greatest whole number not above r.
func wholePart(r *big.Rat) *big.Int { return new(big.Int).Div(r.Num(), r.Denom()) }

// Unheld is the error of an angle that no base holds.
type Unheld struct{ Degrees, Tenths, Minutes string } // as it is, and rounded to what is held

// Error says what is held.
func (u *Unheld) Error() string {
	return u.Degrees + " cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"
}

// undecidable is the error of such an angle.
func undecidable(degrees *big.Rat) error {
	text := degrees.RatString() + "°"
	if digits, short := degrees.FloatPrec(); short && digits <= mostDigits {
		text = degrees.FloatString(digits) + "°"
	}
	minutes := new(big.Rat).Mul(degrees, big.NewRat(60, 1))
	if minutes.IsInt() && degrees.Sign() > 0 {
		text = inMinutes(minutes)
	}
	tenths := new(big.Rat).SetInt(nearest(new(big.Rat).Mul(degrees, big.NewRat(10, 1))))
	tenths.Quo(tenths, big.NewRat(10, 1))
	digits, _ := tenths.FloatPrec()
	return &Unheld{text, tenths.FloatString(digits) + "°", inMinutes(new(big.Rat).SetInt(nearest(minutes)))}
}

// mostDigits is how many decimals of an angle are written out.
const mostDigits = 6

// inMinutes writes a whole number of minutes in degrees and minutes.
func inMinutes(minutes *big.Rat) string {
	whole, rest := new(big.Int).QuoRem(minutes.Num(), big.NewInt(60), new(big.Int))
	return fmt.Sprintf("%v°%v'", whole, rest.Abs(rest))
}

// smallCosSin is the cosine and sine of an angle from 0° to 45°, worked out once.
func (f *Field) smallCosSin(a angle) (cos, sin *Real) {
	if known, ok := f.cosines[a]; ok {
		return known[0], known[1]
	}
	switch odd := oddPart(a.den); {
	case a.isHalvedThree() && odd < a.den:
		cos, sin = f.halved(a)
	case odd < a.den:
		cos, sin = f.besideHalvings(a, odd)
	case a.den == 1:
		cos, sin = f.wholeDegrees(a.num)
	default:
		cos, sin = f.fifteenthsOfDegrees(a.num * (15 / a.den))
	}
	f.cosines[a] = [2]*Real{cos, sin}
	return cos, sin
}

// isHalvedThree tells whether a comes from a multiple of 3° by halving.
func (a angle) isHalvedThree() bool { return oddPart(a.den) == 1 && a.num%3 == 0 }

// halved is the cosine and sine of an angle by those of its double.
func (f *Field) halved(a angle) (cos, sin *Real) {
	double, _ := f.cosSin(big.NewRat(a.num, a.den/2))
	half := f.ratio(1, 2)
	return half.Add(half.Mul(double)).Sqrt(), half.Sub(half.Mul(double)).Sqrt()
}

// besideHalvings is the cosine and sine of n/(2^k·odd)°, as the sum of a multiple of
// 45°/2^k, which carries all halvings, and m/odd°. So every angle with the same k stands
// over the same roots.
func (f *Field) besideHalvings(a angle, odd int64) (cos, sin *Real) {
	parts := a.den / odd
	j := new(big.Int).ModInverse(big.NewInt(45*odd), big.NewInt(parts))
	j.Mod(j.Mul(j, big.NewInt(a.num)), big.NewInt(parts))
	step := nearestResidue(j.Int64(), parts)
	cos, sin = f.fixedCosSin(big.NewRat(45*step, parts))
	rest := new(big.Rat).Sub(big.NewRat(a.num, a.den), big.NewRat(45*step, parts))
	c, s := f.fixedCosSin(rest)
	return turned(cos, sin, c, s)
}

// fifteenthsOfDegrees puts n/15° together from a multiple of 40°/3, which is
// 200/15°, one of 14.4°, which is 216/15°, and whole degrees.
func (f *Field) fifteenthsOfDegrees(n int64) (cos, sin *Real) {
	i := nearestResidue(2*n, 3) // n - 200i and n - 216j are multiples of 3 and of 5
	j := nearestResidue(n, 5)
	cos, sin = f.fixedCosSin(big.NewRat((n-200*i-216*j)/15, 1))
	if i != 0 {
		c, s := f.twentySeventh()
		cos, sin = turned(cos, sin, c, signed(s, i))
	}
	if j != 0 {
		c, s := f.twentyFifth()
		if j*j == 4 {
			c, s = turned(c, s, c, s)
		}
		cos, sin = turned(cos, sin, c, signed(s, j))
	}
	return cos, sin
}

// nearestResidue is the number that is n modulo m and nearest to 0.
func nearestResidue(n, m int64) int64 {
	r := (n%m + m) % m
	if 2*r > m {
		r -= m
	}
	return r
}

// signed is x or -x, with the sign of n.
func signed(x *Real, n int64) *Real {
	if n < 0 {
		return x.Neg()
	}
	return x
}

// wholeDegrees puts an angle together from a multiple of 40°, one of 18° and
// one of 15°.
func (f *Field) wholeDegrees(n int64) (cos, sin *Real) {
	ninths := nearestResidue(n, 3) // n - 40·ninths is a multiple of 3
	n -= 40 * ninths
	twelfths := nearestResidue(-n/3, 6) // n - 15·twelfths is one of 18
	n -= 15 * twelfths
	cos, sin = f.ninth(ninths)
	c, s := f.multiple(18, n/18)
	cos, sin = turned(cos, sin, c, s)
	c, s = f.multiple(15, twelfths)
	return turned(cos, sin, c, s)
}

// turned is the cosine and sine of the sum of two angles with these cosines and sines.
func turned(c1, s1, c2, s2 *Real) (cos, sin *Real) {
	return c1.Mul(c2).Sub(s1.Mul(s2)), s1.Mul(c2).Add(c1.Mul(s2))
}

// multiple is the cosine and sine of k times 15° or 18°.
func (f *Field) multiple(step, k int64) (cos, sin *Real) {
	quarter := 90 / step
	k = (k%(4*quarter) + 4*quarter) % (4 * quarter)
	table := f.twelfth
	if step == 18 {
		table = f.tenth
	}
	cos, sin = table(k % quarter)
	for range k / quarter {
		cos, sin = sin.Neg(), cos
	}
	return cos, sin
}

// twelfth is the cosine and sine of k·15°, for k from 0 to 5.
func (f *Field) twelfth(k int64) (cos, sin *Real) {
	two, three := f.wholeRoot(2), f.wholeRoot(3)
	switch k {
	case 0:
		return f.Int(1), f.Int(0)
	case 1:
		fourth := two.Mul(f.ratio(1, 4))
		return fourth.Mul(three.Add(f.Int(1))), fourth.Mul(three.Sub(f.Int(1)))
	case 2:
		return three.Mul(f.ratio(1, 2)), f.ratio(1, 2)
	case 3:
		half := two.Mul(f.ratio(1, 2))
		return half, half
	}
	sin, cos = f.twelfth(6 - k)
	return cos, sin
}

// tenth is the cosine and sine of k·18°, for k from 0 to 4: sin 18° = (√5 - 1)/4,
// cos 18° = √(10 + 2√5)/4, cos 36° = (√5 + 1)/4, sin 36° = 2 sin 18° cos 18°.
func (f *Field) tenth(k int64) (cos, sin *Real) {
	five, fourth := f.wholeRoot(5), f.ratio(1, 4)
	switch k {
	case 0:
		return f.Int(1), f.Int(0)
	case 1, 4:
		cos, sin = f.fifthRoot().Mul(fourth), five.Sub(f.Int(1)).Mul(fourth)
	default:
		cos, sin = five.Add(f.Int(1)).Mul(fourth), f.fifthRoot().Mul(five.Sub(f.Int(1))).Mul(f.ratio(1, 8))
	}
	if k > 2 {
		return sin, cos
	}
	return cos, sin
}

// fifthRoot is √(10 + 2√5), one node for the whole field.
func (f *Field) fifthRoot() *Real {
	if f.golden == nil {
		f.golden = f.Int(10).Add(f.wholeRoot(5).MulInt(2)).Sqrt()
	}
	return f.golden
}

// ninth is the cosine and sine of k·40° for k = -1, 0, 1. With c = 2cos 40°,
// sin 40° = (cos 80° - cos 160°)/√3 = √3(2c² + c - 4)/6.
func (f *Field) ninth(k int64) (cos, sin *Real) {
	if k == 0 {
		return f.Int(1), f.Int(0)
	}
	t := f.tower
	cos = f.written(t.rootAt(ninthLevel).half())
	sin = f.written(t.fraction(polynomial(ninthLevel, -4, 1, 2), integer{k: 6})).Mul(f.wholeRoot(3))
	return cos, signed(sin, k)
}

// twentySeventh is the cosine and sine of φ = 40°/3: since
// 2 sin φ sin 9φ = cos 8φ - cos 10φ, and 9φ = 120°, the sine is
// (cos 8φ - cos 10φ)/√3.
func (f *Field) twentySeventh() (cos, sin *Real) {
	cos = f.written(f.tower.rootAt(twentySeventhLevel).half())
	difference := f.chebyshev(8, cos).Sub(f.chebyshev(10, cos))
	return cos, difference.Mul(f.wholeRoot(3)).Mul(f.ratio(1, 3))
}

// twentyFifth is the cosine and sine of ψ = 14.4°. With θ = 2cos ψ + 2cos 7ψ,
// the difference of these two is √5(-62 - 41θ + 94θ² - 2θ³ - 10θ⁴)/35; and the
// sine is (cos 4ψ - cos 6ψ)/(2 sin 5ψ), where sin 72° = √(10 + 2√5)/4.
func (f *Field) twentyFifth() (cos, sin *Real) {
	t := f.tower
	sum := f.written(t.rootAt(twentyFifthLevel))
	difference := t.fraction(polynomial(twentyFifthLevel, -62, -41, 94, -2, -10), integer{k: 35})
	cos = sum.Add(f.written(difference).Mul(f.wholeRoot(5))).Mul(f.ratio(1, 4))
	sin = f.chebyshev(4, cos).Sub(f.chebyshev(6, cos)).MulInt(2).Div(f.fifthRoot())
	return cos, sin
}

// chebyshev is cos nα for x = cos α.
func (f *Field) chebyshev(n int, x *Real) *Real {
	switch {
	case n == 0:
		return f.Int(1)
	case n == 1:
		return x
	}
	p := f.chebyshev(n/2, x).Mul(f.chebyshev(n-n/2, x)).MulInt(2)
	return p.Sub(f.chebyshev(n%2, x))
}
