package stdlib_test

import (
	"fmt"
	"math"
	"math/rand"
)

// scene is what a construction is called on: one awkward placing of its data.
type scene struct{ name, givens string }

// data is a kind of data that constructions take: its awkward placings, and
// random ones with short fractions for coordinates.
type data struct {
	scenes []scene
	random func(r *rand.Rand) string
}

// pair is two points A and B.
var pair = data{
	[]scene{
		{"level", "given A (0, 0)\ngiven B (6, 0)"},
		{"swapped", "given B (0, 0)\ngiven A (6, 0)"},
		{"upright", "given A (2, -1)\ngiven B (2, 5)"},
		{"slanted", "given A (-1, 4)\ngiven B (5, 1/3)"},
		{"downwards", "given A (2, 5)\ngiven B (2, -1)"},
		{"millimetres", "unit 1 mm\ngiven A (0, 0)\ngiven B (90, 20)"},
		{"small", "given A (0, 0)\ngiven B (0.3, 0.4)"},
		{"far off", "given A (200, -300)\ngiven B (203, -296)"},
		{"surd", "given A (0, 0)\ngiven B (sqrt(2), 3 + sqrt(5))"},
	},
	func(r *rand.Rand) string {
		a := somewhere(r)
		return a.given("A") + away(r, a).given("B")
	},
}

// triangle is three points A, B and C, not on one line, none of the angles right.
var triangle = data{
	[]scene{
		{"level", "given A (0, 0)\ngiven B (7, 0)\ngiven C (3, 4)"},
		{"swapped", "given C (0, 0)\ngiven A (7, 0)\ngiven B (3, 4)"},
		{"other side", "given A (0, 0)\ngiven B (7, 0)\ngiven C (3, -4)"},
		{"upright", "given A (1, 6)\ngiven B (1, 0)\ngiven C (4, 2)"},
		{"slanted", "given A (-2, 1)\ngiven B (4, 3/2)\ngiven C (1/3, 6)"},
		{"obtuse at A", "given A (0, 0)\ngiven B (5, 0)\ngiven C (-2, 3)"},
		{"obtuse at B", "given A (0, 0)\ngiven B (5, 0)\ngiven C (7, 3)"},
		{"obtuse at C", "given A (0, 0)\ngiven B (8, 0)\ngiven C (5, 2)"},
		{"isosceles", "given A (0, 0)\ngiven B (6, 0)\ngiven C (3, 5)"},
		{"equilateral", "given A (0, 0)\ngiven B (6, 0)\ngiven C (3, 3 * sqrt(3))"},
		{"millimetres", "unit 1 mm\ngiven A (0, 0)\ngiven B (90, 10)\ngiven C (30, 60)"},
		{"small", "given A (0, 0)\ngiven B (0.5, 0)\ngiven C (0.2, 0.3)"},
		{"by sides", "given triangle ABC with AB = 13, BC = 14, CA = 15"},
	},
	func(r *rand.Rand) string {
		for {
			a, b, c := somewhere(r), somewhere(r), somewhere(r)
			if apart(a, b, c) && !square(a, b, c) && !square(b, c, a) && !square(c, a, b) {
				return a.given("A") + b.given("B") + c.given("C")
			}
		}
	},
}

// anyTriangle is triangle with the right-angled ones among it.
var anyTriangle = data{
	append([]scene{
		{"right at A", "given A (0, 0)\ngiven B (4, 0)\ngiven C (0, 3)"},
		{"right at B", "given A (4, 0)\ngiven B (0, 0)\ngiven C (0, 3)"},
		{"right at C", "given A (4, 0)\ngiven B (0, 3)\ngiven C (0, 0)"},
	}, triangle.scenes...),
	triangle.random,
}

// rightCorner is three points with a right angle at B.
var rightCorner = data{
	[]scene{
		{"level", "given A (0, 0)\ngiven B (6, 0)\ngiven C (6, 3)"},
		{"other side", "given A (0, 0)\ngiven B (6, 0)\ngiven C (6, -3)"},
		{"upright", "given A (1, 6)\ngiven B (1, 0)\ngiven C (3, 0)"},
		{"slanted", "given A (0, 0)\ngiven B (4, 3)\ngiven C (1, 7)"},
		{"tall", "given A (0, 0)\ngiven B (2, 0)\ngiven C (2, 7)"},
		{"a square", "given A (0, 0)\ngiven B (5, 0)\ngiven C (5, 5)"},
		{"millimetres", "unit 1 mm\ngiven A (0, 0)\ngiven B (80, 0)\ngiven C (80, 30)"},
		{"small", "given A (0, 0)\ngiven B (0.5, 0)\ngiven C (0.5, 0.25)"},
		{"4 by 9", "given rectangle ABCD with AB = 9, BC = 4"},
	},
	func(r *rand.Rand) string {
		a := somewhere(r)
		b := away(r, a)
		t := short(r, 1, 12)
		if r.Intn(2) == 0 {
			t.p = -t.p
		}
		c := point{b.x.minus(t.times(b.y.minus(a.y))), b.y.plus(t.times(b.x.minus(a.x)))}
		return a.given("A") + b.given("B") + c.given("C")
	},
}

// onLine is a line m and a point P of it.
var onLine = data{
	[]scene{
		{"level", "given line m through A (0, 0) and B (9, 0)\ngiven P (4, 0)"},
		{"upright", "given line m through A (0, 0) and B (0, 9)\ngiven P (0, 4)"},
		{"slanted", "given line m through A (0, 0) and B (8, 6)\ngiven P (4, 3)"},
		{"backwards", "given line m through A (8, 6) and B (0, 0)\ngiven P (4, 3)"},
		{"past the end", "given line m through A (0, 0) and B (5, 0)\ngiven P (12, 0)"},
		{"at its point", "given line m through P (0, 0) and B (5, 1)"},
		{"measured", "given line m through A (0, 0) and B (5, 1)\ngiven P on m, 3 from A"},
		{"millimetres", "unit 1 mm\ngiven line m through A (0, 0) and B (90, 0)\ngiven P (40, 0)"},
		{"small", "given line m through A (0, 0) and B (0.5, 0.2)\ngiven P (0.25, 0.1)"},
	},
	func(r *rand.Rand) string {
		a := somewhere(r)
		b := away(r, a)
		return fmt.Sprintf("given line m through A %s and B %s\n", a, b) + between(a, b, short(r, -9, 19)).given("P")
	},
}

// offLine is a line m and a point P off it.
var offLine = data{
	[]scene{
		{"level", "given line m through A (0, 0) and B (9, 0)\ngiven P (4, 3)"},
		{"other side", "given line m through A (0, 0) and B (9, 0)\ngiven P (4, -3)"},
		{"upright", "given line m through A (0, 0) and B (0, 9)\ngiven P (3, 4)"},
		{"slanted", "given line m through A (0, 0) and B (8, 6)\ngiven P (0, 5)"},
		{"backwards", "given line m through A (8, 6) and B (0, 0)\ngiven P (0, 5)"},
		{"past the end", "given line m through A (0, 0) and B (5, 0)\ngiven P (12, 2)"},
		{"over its point", "given line m through A (0, 0) and B (5, 0)\ngiven P (0, 4)"},
		{"close by", "given line m through A (0, 0) and B (8, 0)\ngiven P (3, 1/4)"},
		{"left to chance", "given line m\ngiven P above m"},
		{"millimetres", "unit 1 mm\ngiven line m through A (0, 0) and B (90, 0)\ngiven P (40, 30)"},
		{"small", "given line m through A (0, 0) and B (0.5, 0)\ngiven P (0.2, 0.3)"},
	},
	func(r *rand.Rand) string {
		for {
			a, b, p := somewhere(r), somewhere(r), somewhere(r)
			if apart(a, b, p) {
				return fmt.Sprintf("given line m through A %s and B %s\n", a, b) + p.given("P")
			}
		}
	},
}

// angleAndPair is an angle XYZ and two points A and B.
var angleAndPair = data{
	[]scene{
		{"acute", "given X (9, 0)\ngiven Y (7, 0)\ngiven Z (9, 3)\ngiven A (0, 0)\ngiven B (5, 0)"},
		{"right", "given X (9, 0)\ngiven Y (7, 0)\ngiven Z (7, 3)\ngiven A (0, 0)\ngiven B (5, 0)"},
		{"obtuse", "given X (10, 0)\ngiven Y (8, 0)\ngiven Z (7, 3)\ngiven A (0, 0)\ngiven B (5, 1)"},
		{"swapped arms", "given Z (9, 0)\ngiven Y (7, 0)\ngiven X (9, 3)\ngiven A (0, 0)\ngiven B (5, 0)"},
		{"upright", "given X (9, 0)\ngiven Y (7, 0)\ngiven Z (9, 2)\ngiven A (0, 0)\ngiven B (0, 5)"},
		{"backwards", "given X (9, 0)\ngiven Y (7, 0)\ngiven Z (9, 2)\ngiven A (5, 1)\ngiven B (0, 0)"},
		{"on itself", "given Y (0, 0)\ngiven Z (3, 5)\ngiven A (0, 0)\ngiven B (6, 0)\ngiven X (6, 0)"},
		{"millimetres", "unit 1 mm\ngiven X (90, 0)\ngiven Y (70, 0)\ngiven Z (90, 20)\ngiven A (0, 0)\ngiven B (40, 10)"},
		{"by protractor", "given X (9, 0)\ngiven Y (7, 0)\ngiven Z 3 from Y at 50° to YX\ngiven A (0, 0)\ngiven B (5, 0)"},
	},
	func(r *rand.Rand) string {
		for {
			x, y, z := somewhere(r), somewhere(r), somewhere(r)
			if apart(x, y, z) {
				return x.given("X") + y.given("Y") + z.given("Z") + pair.random(r)
			}
		}
	},
}

// circle is a circle k.
var circle = data{
	[]scene{
		{"plain", "given circle k centre O (0, 0) radius 3"},
		{"off the origin", "given circle k centre O (5, -2) radius 7/3"},
		{"surd radius", "given circle k centre O (1, 1) radius 2*sqrt(2)"},
		{"through a point", "given A (1, 2)\ngiven O (3, 3)\ngiven circle k centre O through A"},
		{"millimetres", "unit 1 mm\ngiven circle k centre O (10, 10) radius 45"},
		{"small", "given circle k centre O (0, 0) radius 0.5"},
		{"left to chance", "given circle k"},
	},
	func(r *rand.Rand) string { return around("k", "O", somewhere(r), short(r, 2, 9)) },
}

// onCircle is a circle k and a point A of it.
var onCircle = data{
	[]scene{
		{"at the right", "given circle k centre O (0, 0) radius 4\ngiven A (4, 0)"},
		{"at the top", "given circle k centre O (0, 0) radius 4\ngiven A (0, 4)"},
		{"at the left", "given circle k centre O (0, 0) radius 4\ngiven A (-4, 0)"},
		{"slanted", "given circle k centre O (0, 0) radius 5\ngiven A (3, -4)"},
		{"surd radius", "given A (1, 2)\ngiven O (3, 3)\ngiven circle k centre O through A"},
		{"by angle", "given circle k centre O (0, 0) radius 3\ngiven A on k at 45°"},
		{"millimetres", "unit 1 mm\ngiven circle k centre O (0, 0) radius 50\ngiven A (30, 40)"},
		{"small", "given circle k centre O (1, 1) radius 0.5\ngiven A (1.3, 1.4)"},
	},
	func(r *rand.Rand) string {
		o := somewhere(r)
		return o.given("O") + away(r, o).given("A") + "given circle k centre O through A\n"
	},
}

// outsideCircle is a circle k and a point P outside.
var outsideCircle = data{
	[]scene{
		{"level", "given circle k centre O (0, 0) radius 3\ngiven P (7, 0)"},
		{"other side", "given circle k centre O (0, 0) radius 3\ngiven P (-7, 0)"},
		{"upright", "given circle k centre O (0, 0) radius 3\ngiven P (0, 6)"},
		{"slanted", "given circle k centre O (0, 0) radius 3\ngiven P (-5, -4)"},
		{"close by", "given circle k centre O (0, 0) radius 3\ngiven P (3, 1)"},
		{"5 and 13", "given circle k centre O (0, 0) radius 5\ngiven P (13, 0)"},
		{"millimetres", "unit 1 mm\ngiven circle k centre O (0, 0) radius 25\ngiven P (60, 20)"},
		{"small", "given circle k centre O (0, 0) radius 0.5\ngiven P (1, 0.5)"},
	},
	func(r *rand.Rand) string {
		for {
			o, p, radius := somewhere(r), somewhere(r), short(r, 1, 6)
			if dist(o, p) > 1.1*radius.float() {
				return around("k", "O", o, radius) + p.given("P")
			}
		}
	},
}

// twoCircles is circles k and l, apart from each other, the first the larger.
var twoCircles = data{
	[]scene{
		{"level", "given circle k centre O (0, 0) radius 3\ngiven circle l centre Q (8, 0) radius 2"},
		{"the larger at the right", "given circle k centre O (8, 0) radius 3\ngiven circle l centre Q (0, 0) radius 2"},
		{"upright", "given circle k centre O (0, 0) radius 3\ngiven circle l centre Q (0, 7) radius 1"},
		{"slanted", "given circle k centre O (1, 1) radius 5/2\ngiven circle l centre Q (-4, 5) radius 1"},
		{"close by", "given circle k centre O (0, 0) radius 3\ngiven circle l centre Q (5, 1) radius 2"},
		{"very unlike", "given circle k centre O (0, 0) radius 4\ngiven circle l centre Q (6, 1) radius 1/4"},
		{"millimetres", "unit 1 mm\ngiven circle k centre O (0, 0) radius 25\ngiven circle l centre Q (60, 20) radius 12"},
		{"small", "given circle k centre O (0, 0) radius 0.5\ngiven circle l centre Q (1, 0.5) radius 0.2"},
	},
	func(r *rand.Rand) string {
		for {
			o, q, big, small := somewhere(r), somewhere(r), short(r, 1, 6), short(r, 1, 6)
			if big.float() > small.float() && dist(o, q) > 1.1*(big.float()+small.float()) {
				return around("k", "O", o, big) + around("l", "Q", q, small)
			}
		}
	},
}

// touchedLine is a line m and two points A and B on one side of it, whose join
// would meet it.
var touchedLine = data{
	[]scene{
		{"level", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, 3)\ngiven B (5, 2)"},
		{"swapped", "given line m through X (0, 0) and Y (9, 0)\ngiven B (3, 3)\ngiven A (5, 2)"},
		{"other side", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, -3)\ngiven B (5, -2)"},
		{"backwards", "given line m through X (9, 0) and Y (0, 0)\ngiven A (3, 3)\ngiven B (5, 2)"},
		{"upright", "given line m through X (0, 0) and Y (0, 9)\ngiven A (3, 3)\ngiven B (2, 6)"},
		{"square to it", "given line m through X (0, 0) and Y (9, 0)\ngiven A (4, 1)\ngiven B (4, 4)"},
		{"slanted", "given line m through X (0, 0) and Y (8, 6)\ngiven A (0, 3)\ngiven B (3, 5)"},
		{"millimetres", "unit 1 mm\ngiven line m through X (0, 0) and Y (90, 0)\ngiven A (30, 30)\ngiven B (50, 15)"},
	},
	func(r *rand.Rand) string {
		for {
			a, b, x, y := somewhere(r), somewhere(r), somewhere(r), somewhere(r)
			s, t := cross(x, y, a), cross(x, y, b)
			if apart(a, x, y) && apart(b, x, y) && s*t > 0 && math.Abs(s-t) > 1 && dist(a, b) > 1 {
				return fmt.Sprintf("given line m through X %s and Y %s\n", x, y) + a.given("A") + b.given("B")
			}
		}
	},
}

// touchedParallel is a line m and two points A and B at one distance from it.
var touchedParallel = data{
	[]scene{
		{"level", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, 3)\ngiven B (5, 3)"},
		{"swapped", "given line m through X (0, 0) and Y (9, 0)\ngiven B (3, 3)\ngiven A (5, 3)"},
		{"below", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, -2)\ngiven B (7, -2)"},
		{"low and wide", "given line m through X (0, 0) and Y (9, 0)\ngiven A (1, 1)\ngiven B (8, 1)"},
		{"upright", "given line m through X (0, 0) and Y (0, 9)\ngiven A (3, 3)\ngiven B (3, 6)"},
		{"slanted", "given line m through X (0, 0) and Y (8, 6)\ngiven A (0, 3)\ngiven B (4, 6)"},
		{"millimetres", "unit 1 mm\ngiven line m through X (0, 0) and Y (90, 0)\ngiven A (30, 30)\ngiven B (50, 30)"},
		{"surd", "given line m through X (0, 0) and Y (1, sqrt(3))\ngiven A (3, 0)\ngiven B (5, 2*sqrt(3))"},
	},
	func(r *rand.Rand) string {
		for {
			a, x, y := somewhere(r), somewhere(r), somewhere(r)
			if k := short(r, 1, 2).over(2); apart(a, x, y) {
				b := point{a.x.plus(k.times(y.x.minus(x.x))), a.y.plus(k.times(y.y.minus(x.y)))}
				return fmt.Sprintf("given line m through X %s and Y %s\n", x, y) + a.given("A") + b.given("B")
			}
		}
	},
}

// touchedAt is a line m, a point A of it and a point B off it.
var touchedAt = data{
	[]scene{
		{"level", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, 0)\ngiven B (5, 2)"},
		{"below", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, 0)\ngiven B (5, -2)"},
		{"upright over it", "given line m through X (0, 0) and Y (9, 0)\ngiven A (3, 0)\ngiven B (3, 4)"},
		{"upright", "given line m through X (0, 0) and Y (0, 9)\ngiven A (0, 5)\ngiven B (-3, 6)"},
		{"slanted", "given line m through X (0, 0) and Y (8, 6)\ngiven A (4, 3)\ngiven B (3, 5)"},
		{"at an end", "given line m through X (0, 0) and A (8, 6)\ngiven B (3, 5)"},
		{"flat", "given line m through X (0, 0) and Y (9, 0)\ngiven A (1, 0)\ngiven B (8, 1)"},
		{"millimetres", "unit 1 mm\ngiven line m through X (0, 0) and Y (90, 0)\ngiven A (30, 0)\ngiven B (50, 20)"},
	},
	func(r *rand.Rand) string {
		for {
			a, b, x := somewhere(r), somewhere(r), somewhere(r)
			if apart(b, a, x) && dist(a, x) > 1 {
				return fmt.Sprintf("given line m through X %s and A %s\n", x, a) + b.given("B")
			}
		}
	},
}

// insideAngle is an angle ABC and a point P inside it.
var insideAngle = data{
	[]scene{
		{"level", "given B (0, 0)\ngiven A (9, 0)\ngiven C (4, 6)\ngiven P (4, 3)"},
		{"swapped", "given B (0, 0)\ngiven C (9, 0)\ngiven A (4, 6)\ngiven P (4, 3)"},
		{"upright", "given B (0, 0)\ngiven A (0, 9)\ngiven C (6, 3)\ngiven P (2, 4)"},
		{"slanted", "given B (1, 1)\ngiven A (8, 2)\ngiven C (4, 7)\ngiven P (5, 4)"},
		{"right", "given B (0, 0)\ngiven A (7, 0)\ngiven C (0, 7)\ngiven P (2, 3)"},
		{"obtuse", "given B (0, 0)\ngiven A (7, 0)\ngiven C (-3, 4)\ngiven P (2, 3)"},
		{"halfway between", "given B (0, 0)\ngiven A (7, 0)\ngiven C (0, 7)\ngiven P (3, 3)"},
		{"far out", "given B (0, 0)\ngiven A (5, 0)\ngiven C (3, 4)\ngiven P (8, 5)"},
		{"millimetres", "unit 1 mm\ngiven B (0, 0)\ngiven A (80, 0)\ngiven C (40, 60)\ngiven P (40, 25)"},
	},
	func(r *rand.Rand) string {
		for {
			a, b, c := somewhere(r), somewhere(r), somewhere(r)
			if apart(a, b, c) {
				p := between(between(b, a, short(r, 2, 11)), between(b, c, short(r, 2, 11)), short(r, 2, 8).over(10))
				return a.given("A") + b.given("B") + c.given("C") + p.given("P")
			}
		}
	},
}

// anyTwoCircles is two circles k and l of any sizes, none inside the other.
var anyTwoCircles = data{
	append([]scene{
		{"equal", "given circle k centre O (0, 0) radius 2\ngiven circle l centre Q (7, 1) radius 2"},
		{"the smaller first", "given circle k centre O (0, 0) radius 1\ngiven circle l centre Q (7, 1) radius 3"},
		{"crossing", "given circle k centre O (0, 0) radius 2\ngiven circle l centre Q (3, 1) radius 3"},
		{"touching", "given circle k centre O (0, 0) radius 2\ngiven circle l centre Q (3, 4) radius 3"},
		{"reaching past the other's centre", "given circle k centre O (0, 0) radius 4\ngiven circle l centre Q (3, 1) radius 2"},
	}, twoCircles.scenes...),
	func(r *rand.Rand) string {
		for {
			o, q, k, l := somewhere(r), somewhere(r), short(r, 1, 6), short(r, 1, 6)
			if dist(o, q) > 1.1*math.Abs(k.float()-l.float())+0.5 {
				return around("k", "O", o, k) + around("l", "Q", q, l)
			}
		}
	},
}

// threeCircles is three circles k, l and m outside each other, their centres
// not on one line.
var threeCircles = data{
	[]scene{
		{"level", "given circle k centre K (0, 0) radius 3\ngiven circle l centre L (8, 0) radius 2\ngiven circle m centre M (4, 6) radius 1"},
		{"swapped", "given circle m centre M (0, 0) radius 3\ngiven circle k centre K (8, 0) radius 2\ngiven circle l centre L (4, 6) radius 1"},
		{"other side", "given circle k centre K (0, 0) radius 3\ngiven circle l centre L (8, 0) radius 2\ngiven circle m centre M (4, -6) radius 1"},
		{"upright", "given circle k centre K (0, 0) radius 2\ngiven circle l centre L (0, 6) radius 2\ngiven circle m centre M (5, 3) radius 1"},
		{"equal", "given circle k centre K (0, 0) radius 2\ngiven circle l centre L (8, 1) radius 2\ngiven circle m centre M (3, 6) radius 2"},
		{"obtuse", "given circle k centre K (0, 0) radius 2\ngiven circle l centre L (9, 0) radius 1\ngiven circle m centre M (5, 2) radius 1"},
		{"millimetres", "unit 1 mm\ngiven circle k centre K (0, 0) radius 25\ngiven circle l centre L (70, 10) radius 15\ngiven circle m centre M (30, 60) radius 10"},
		{"small", "given circle k centre K (0, 0) radius 0.3\ngiven circle l centre L (0.8, 0.1) radius 0.2\ngiven circle m centre M (0.4, 0.6) radius 0.1"},
	},
	func(r *rand.Rand) string {
		for {
			k, l, m := somewhere(r), somewhere(r), somewhere(r)
			a, b, c := short(r, 1, 4), short(r, 1, 4), short(r, 1, 4)
			clear := dist(k, l) > 1.1*(a.float()+b.float()) && dist(l, m) > 1.1*(b.float()+c.float()) && dist(m, k) > 1.1*(c.float()+a.float())
			if apart(k, l, m) && clear {
				return around("k", "K", k, a) + around("l", "L", l, b) + around("m", "M", m, c)
			}
		}
	},
}
