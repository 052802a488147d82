package geom

import (
	"fmt"
	"math/big"

	"trammel/geom/exact"
)

// TriangleData is what is known of a triangle with corners 0, 1, 2: Side[i]
// lies opposite corner i, Angle[i] is at it.
type TriangleData struct {
	Side  [3]Real
	Angle [3]*Angle
	Kind  string // acute, right or obtuse: tells two triangles apart; or ""

	// Choice takes of two triangles 1 that with the longer third side, 2 the other;
	// with 0 two are Impossible.
	Choice int

	// For messages: the corners' letters, what the sides are called where that is
	// more than two letters, and the kind of shape that the triangle stands for.
	Names [3]string
	Sides [3]string
	Shape string
}

// Impossible says why there is no such triangle, or more than one.
type Impossible struct{ Fact, Help string }

// Error is the fact.
func (e *Impossible) Error() string { return e.Fact }

// disagree is that data more than are needed do not agree.
func disagree(format string, args ...any) error {
	return unless("leave one of the data out, or make them agree", format, args...)
}

// unless is impossible with a way out.
func unless(help, format string, args ...any) error {
	return &Impossible{fmt.Sprintf(format, args...), help}
}

func impossible(format string, args ...any) error {
	return &Impossible{Fact: fmt.Sprintf(format, args...)}
}

// Triangle places a triangle from data that determine it (three sides; two
// sides and an angle; a side and two angles), corners anticlockwise. More data
// than needed must agree.
func Triangle(f *exact.Field, d TriangleData) ([3]Point, error) {
	if err := d.sizes(); err != nil {
		return [3]Point{}, err
	}
	ps, err := d.place(f)
	if err != nil {
		return ps, err
	}
	return ps, f.Demand(func() error { return d.verify(ps) })
}

func (d *TriangleData) sideName(i int) string {
	if d.Sides[i] != "" {
		return d.Sides[i]
	}
	a, b := d.Names[(i+1)%3], d.Names[(i+2)%3]
	if (i+1)%3 > (i+2)%3 {
		a, b = b, a
	}
	return a + b
}

// sizes checks each datum by itself.
func (d *TriangleData) sizes() error {
	for i, s := range d.Side {
		if s == nil {
			continue
		}
		if s.Sign() <= 0 {
			return impossible("%s is %s, and a side must be more than 0", d.sideName(i), Show(s))
		}
		s.Sure()
	}
	for i, a := range d.Angle {
		if a == nil {
			continue
		}
		low, err := a.Cmp(Degrees(new(big.Rat)))
		if err != nil {
			return err
		}
		high, err := a.Cmp(Degrees(big.NewRat(180, 1)))
		if err != nil {
			return err
		}
		if low <= 0 || high >= 0 {
			return impossible("the angle at %s is %s, and an angle of a %s lies between 0° and 180°", d.Names[i], a, d.shape())
		}
	}
	return nil
}

func (d *TriangleData) place(f *exact.Field) ([3]Point, error) {
	for i := range 3 {
		if d.Angle[i] != nil && d.Side[(i+1)%3] != nil && d.Side[(i+2)%3] != nil {
			return d.twoSidesAndAngleBetween(f, i)
		}
	}
	if d.Side[0] != nil && d.Side[1] != nil && d.Side[2] != nil {
		return d.threeSides(f)
	}
	for i := range 3 {
		for _, j := range []int{(i + 1) % 3, (i + 2) % 3} {
			if d.Angle[i] != nil && d.Side[i] != nil && d.Side[j] != nil {
				return d.angleOpposite(f, i, j)
			}
		}
	}
	return d.sideAndAngles(f)
}

// turned names the corners of a triangle built with corner i at the origin, the
// next one to the right and the one after that above.
func turned(i int, x, y, z Point) [3]Point {
	var out [3]Point
	out[i], out[(i+1)%3], out[(i+2)%3] = x, y, z
	return out
}

func origin(f *exact.Field) Point { return Point{f.Int(0), f.Int(0)} }

// twoSidesAndAngleBetween is Euclid I.4's data.
func (d *TriangleData) twoSidesAndAngleBetween(f *exact.Field, i int) ([3]Point, error) {
	cos, sin, err := d.Angle[i].CosSin(f)
	if err != nil {
		return [3]Point{}, err
	}
	right, up := d.Side[(i+2)%3], d.Side[(i+1)%3]
	f.Expect(up)
	return turned(i, origin(f), Point{right, f.Int(0)}, Point{up.Mul(cos), up.Mul(sin)}), nil
}

// threeSides is Euclid I.22: any two together are more than the third.
func (d *TriangleData) threeSides(f *exact.Field) ([3]Point, error) {
	for i := range 3 {
		x, y := d.Side[(i+1)%3], d.Side[(i+2)%3]
		if x.Add(y).Cmp(d.Side[i]) <= 0 {
			return [3]Point{}, impossible("no %s has these sides: %s and %s together are %s, not more than %s, which is %s",
				d.shape(), d.sideName((i+1)%3), d.sideName((i+2)%3), Show(x.Add(y)), d.sideName(i), Show(d.Side[i]))
		}
	}
	a, b, c := d.Side[0], d.Side[1], d.Side[2]
	x := b.Mul(b).Add(c.Mul(c)).Sub(a.Mul(a)).Div(c.MulInt(2))
	y := b.Mul(b).Sub(x.Mul(x)).Sqrt()
	return turned(0, origin(f), Point{c, f.Int(0)}, Point{x, y}), nil
}

// angleOpposite has the angle at i, the side opposite it, and the side opposite
// j: one triangle, two, or none (the ambiguous case of the sine rule).
func (d *TriangleData) angleOpposite(f *exact.Field, i, j int) ([3]Point, error) {
	k := 3 - i - j
	cos, sin, err := d.Angle[i].CosSin(f)
	if err != nil {
		return [3]Point{}, err
	}
	opp, adj := d.Side[i], d.Side[j] // adj joins i and k
	height := adj.Mul(sin)
	rest := opp.Mul(opp).Sub(height.Mul(height))
	third := d.sideName(k)
	if rest.Sign() < 0 {
		return [3]Point{}, impossible("no %s has these data: %s is %s, and it must be at least %s to reach from %s to the other arm",
			d.shape(), d.sideName(i), Show(opp), Show(height), d.Names[k])
	}
	f.Expect(adj, opp)
	near, half := adj.Mul(cos), rest.EitherSqrt()
	long, short := near.Add(half), near.Sub(half)
	if long.Sign() <= 0 {
		return [3]Point{}, impossible("no %s has these data: opposite the angle at %s, %s must be longer than %s, which is %s", d.shape(), d.Names[i], d.sideName(i), d.sideName(j), Show(adj))
	}
	wide := d.onTwoArms(f, i, j, long, adj, cos, sin)
	if short.Sign() <= 0 || rest.Sign() == 0 {
		return wide, nil
	}
	narrow := d.onTwoArms(f, i, j, short, adj, cos, sin)
	first, second := KindOfTriangle(wide), KindOfTriangle(narrow)
	switch {
	case d.Choice == 1:
		return wide, nil
	case d.Choice == 2:
		return narrow, nil
	case first == second:
	case d.Kind == first:
		return wide, nil
	case d.Kind == second:
		return narrow, nil
	}
	if d.Kind != "" && d.Kind != first && d.Kind != second {
		are := fmt.Sprintf("with %s %s or %s it is %s", third, equals(long), equals(short), first)
		if first != second {
			are = fmt.Sprintf("with %s %s it is %s, and with %s %s it is %s", third, equals(long), first, third, equals(short), second)
		}
		return [3]Point{}, impossible("no %s %s has these data: %s", d.Kind, d.shape(), are)
	}
	fact := fmt.Sprintf("two %ss have these data: one with %s %s, one with %s %s", d.shape(), third, equals(long), third, equals(short))
	help := fmt.Sprintf("give %s, or one more angle", third)
	if first != second && d.shape() == "triangle" {
		help += fmt.Sprintf(", or the kind: the first is %s, the second %s", first, second)
	}
	return [3]Point{}, &Impossible{Fact: fact, Help: help}
}

// shape is the kind of shape that the data are of.
func (d *TriangleData) shape() string {
	if d.Shape == "" {
		return "triangle"
	}
	return d.Shape
}

// KindOfTriangle is acute, right or obtuse.
func KindOfTriangle(ps [3]Point) string {
	least := 1 // the sign of the cosine of the largest angle
	for i := range 3 {
		least = min(least, ps[(i+1)%3].Sub(ps[i]).Dot(ps[(i+2)%3].Sub(ps[i])).Sign())
	}
	return map[int]string{1: "acute", 0: "right", -1: "obtuse"}[least]
}

// onTwoArms puts i at the origin, j at x along one arm and the third corner at y
// along the other, anticlockwise.
func (d *TriangleData) onTwoArms(f *exact.Field, i, j int, x, y, cos, sin Real) [3]Point {
	if j == (i+1)%3 {
		return turned(i, origin(f), Point{x, f.Int(0)}, Point{y.Mul(cos), y.Mul(sin)})
	}
	return turned(i, origin(f), Point{y, f.Int(0)}, Point{x.Mul(cos), x.Mul(sin)})
}

// sideAndAngles is Euclid I.26's data: a side and two angles, by the sine rule.
func (d *TriangleData) sideAndAngles(f *exact.Field) ([3]Point, error) {
	if err := d.thirdAngle(); err != nil {
		return [3]Point{}, err
	}
	var sin [3]Real
	var cos [3]Real
	for i := range 3 {
		c, s, err := d.Angle[i].CosSin(f)
		if err != nil {
			return [3]Point{}, err
		}
		cos[i], sin[i] = c, s
	}
	for i := range 3 {
		if d.Side[i] == nil {
			continue
		}
		j, k := (i+1)%3, (i+2)%3
		// Side i joins j and k; the side from j to i is opposite k.
		long := d.Side[i].Mul(sin[k]).Div(sin[i])
		f.Expect(long, d.Side[i].Mul(sin[j]).Div(sin[i]))
		return turned(j, origin(f), Point{d.Side[i], f.Int(0)}, Point{long.Mul(cos[j]), long.Mul(sin[j])}), nil
	}
	return [3]Point{}, unless("give a side too", "angles alone do not fix a triangle's size")
}

// thirdAngle completes the sum of 180°.
func (d *TriangleData) thirdAngle() error {
	straight := Degrees(big.NewRat(180, 1))
	sum, missing := Degrees(new(big.Rat)), -1
	for i, a := range d.Angle {
		if a == nil {
			missing = i
			continue
		}
		sum = sum.Add(*a)
	}
	c, err := sum.Cmp(straight)
	if err != nil {
		return err
	}
	if missing < 0 {
		if c != 0 {
			return unless("leave one of them out", "the angles of a triangle add up to 180°, and these to %s", sum)
		}
		return nil
	}
	if c >= 0 {
		return unless("make one of them smaller", "the two angles add up to %s, and in a triangle they stay under 180°", sum)
	}
	rest := straight.Add(sum.Mul(big.NewRat(-1, 1)))
	d.Angle[missing] = &rest
	return nil
}

// verify holds data beyond what was needed against the triangle.
func (d *TriangleData) verify(ps [3]Point) error {
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		if s := d.Side[i]; s != nil && !Dist2(ps[j], ps[k]).Equal(s.Mul(s)) {
			return disagree("the other data make %s %s, and not %s", d.sideName(i), Show(Dist(ps[j], ps[k])), Show(s))
		}
		if a := d.Angle[i]; a != nil {
			is := Corner(ps[j], ps[i], ps[k], false)
			c, err := is.Cmp(*a)
			if err != nil {
				return err
			}
			if c != 0 {
				return disagree("the other data make the angle at %s %s, and not %s", d.Names[i], is, *a)
			}
		}
	}
	return nil
}
