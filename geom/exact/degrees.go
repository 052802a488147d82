package exact

import (
	"fmt"
	"math/big"
)

// angle is one of 0° to 45°, in degrees.
type angle struct{ num, den int64 }

// CosSin gives the cosine and sine of an angle in degrees: any whole number
// of them and its halves, quarters and so on. Multiples of 3° and their
// halvings need square roots only; the others stand over Q(2cos 40°).
func (f *Field) CosSin(degrees *big.Rat) (cos, sin *Real, err error) {
	turn := big.NewRat(360, 1)
	d := new(big.Rat).Quo(degrees, turn)
	d.Sub(degrees, d.Mul(turn, new(big.Rat).SetInt(wholePart(d))))
	if d.Cmp(big.NewRat(180, 1)) > 0 {
		cos, sin, err = f.CosSin(d.Sub(turn, d))
		if err != nil {
			return nil, nil, undecidable(degrees)
		}
		return cos, sin.Neg(), nil
	}
	obtuse := d.Cmp(big.NewRat(90, 1)) > 0
	if obtuse {
		d.Sub(big.NewRat(180, 1), d)
	}
	steep := d.Cmp(big.NewRat(45, 1)) > 0
	if steep {
		d.Sub(big.NewRat(90, 1), d)
	}
	if n := d.Denom(); !n.IsInt64() || n.Int64()&(n.Int64()-1) != 0 {
		return nil, nil, undecidable(degrees)
	}
	cos, sin = f.smallCosSin(angle{d.Num().Int64(), d.Denom().Int64()})
	if steep {
		cos, sin = sin, cos
	}
	if obtuse {
		cos = cos.Neg()
	}
	return cos, sin, nil
}

// wholePart is the greatest whole number not above r.
func wholePart(r *big.Rat) *big.Int { return new(big.Int).Div(r.Num(), r.Denom()) }

func undecidable(degrees *big.Rat) error {
	text := degrees.RatString() + "°"
	minutes := new(big.Rat).Mul(degrees, big.NewRat(60, 1))
	if minutes.IsInt() && degrees.Sign() > 0 {
		whole, rest := new(big.Int).QuoRem(minutes.Num(), big.NewInt(60), new(big.Int))
		text = fmt.Sprintf("%v°%v'", whole, rest)
	}
	return fmt.Errorf("%s cannot be decided exactly: whole degrees and their halves and quarters can", text)
}

// smallCosSin is for 0° to 45°, each angle worked out once. A fraction of a
// degree is the half of its double.
func (f *Field) smallCosSin(a angle) (cos, sin *Real) {
	if known, ok := f.cosines[a]; ok {
		return known[0], known[1]
	}
	if a.den == 1 {
		cos, sin = f.wholeDegrees(a.num)
	} else {
		double, _, _ := f.CosSin(big.NewRat(a.num, a.den/2))
		half := f.ratio(1, 2)
		cos = half.Add(half.Mul(double)).Sqrt()
		sin = half.Sub(half.Mul(double)).Sqrt()
	}
	f.cosines[a] = [2]*Real{cos, sin}
	return cos, sin
}

// wholeDegrees puts an angle together from a multiple of 40°, one of 18° and
// one of 15°.
func (f *Field) wholeDegrees(n int64) (cos, sin *Real) {
	ninths := (n%3 + 1) % 3 // 0, 1, 2 for n ≡ 2, 0, 1 (mod 3)
	ninths--                // n - 40·ninths is a multiple of 3
	n -= 40 * ninths
	twelfths := -n / 3 % 6 // n - 15·twelfths is a multiple of 18
	if twelfths > 3 {
		twelfths -= 6
	}
	n -= 15 * twelfths
	cos, sin = f.ninth(ninths)
	c, s := f.multiple(18, n/18)
	cos, sin = turned(cos, sin, c, s)
	c, s = f.multiple(15, twelfths)
	return turned(cos, sin, c, s)
}

// turned is the cosine and sine of the sum of two angles.
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

// twelfth is for k·15°, k from 0 to 5.
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

// tenth is for k·18°, k from 0 to 4: sin 18° = (√5 - 1)/4, cos 18° =
// √(10 + 2√5)/4, cos 36° = (√5 + 1)/4, sin 36° = 2 sin 18° cos 18°.
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
	if k < 0 {
		return cos, sin.Neg()
	}
	return cos, sin
}
