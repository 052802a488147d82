package lang_test

import (
	"math"
	"testing"
)

// cornersOf are the points of some letters, in order.
func cornersOf(at map[string][2]float64, letters string) (ps [][2]float64) {
	for _, letter := range letters {
		ps = append(ps, at[string(letter)])
	}
	return ps
}

// turns are the angles inside at the corners, in degrees; over 180 where one is hollow.
func turns(ps [][2]float64) (out []float64) {
	n := len(ps)
	for i, p := range ps {
		a, b := ps[(i+1)%n], ps[(i+n-1)%n]
		angle := math.Atan2(b[1]-p[1], b[0]-p[0]) - math.Atan2(a[1]-p[1], a[0]-p[0])
		out = append(out, math.Mod(angle*180/math.Pi+720, 360))
	}
	return out
}

// TestPartialQuadrilaterals: of a quadrilateral with few data the rest is chosen in
// proportion to these: convex, no corner nearly flat, no side stunted.
func TestPartialQuadrilaterals(t *testing.T) {
	for _, data := range []string{
		"quadrilateral ABCD with CD = 4", "quadrilateral ABCD with DA = 3", "quadrilateral ABCD with AC = 6",
		"quadrilateral ABCD with BD = 7", "quadrilateral ABCD with AC = 6, angle C = 80°", "quadrilateral ABCD with AC = 6, BD = 7",
		"isosceles trapezium ABCD with AC = 6", "isosceles trapezium ABCD with BD = 6",
		"isosceles trapezium ABCD with angle C = 100°", "isosceles trapezium ABCD with CD = 4, AC = 7",
		"isosceles trapezium ABCD with AB = 3, BD = 3", "isosceles trapezium ABCD with angle A = 50°",
		"trapezium ABCD with DA = 4", "trapezium ABCD with BC = 4", "trapezium ABCD with CD = 4", "trapezium ABCD",
		"kite ABCD with AC = 6", "kite ABCD with AC = 6.86", "kite ABCD with AC = 7", "kite ABCD with BD = 5",
		"rectangle ABCD with AB = 10", "parallelogram ABCD with BC = 2",
	} {
		ps := cornersOf(spots(chosen(t, titled("given "+data))), "ABCD")
		long, least := 0.0, math.Inf(1)
		for i, p := range ps {
			side := far(p, ps[(i+1)%4])
			long, least = max(long, side), min(least, side)
		}
		if long > 11 || least < 0.25*long {
			t.Errorf("%s: the sides are from %.2f to %.2f long", data, least, long)
		}
		for i, angle := range turns(ps) {
			if angle < 30 || angle > 160 {
				t.Errorf("%s: the angle at %c is %.0f°", data, "ABCD"[i], angle)
			}
		}
	}
}

// TestPlainTrapezia: no diagonal looks as if it stood upright on a leg, and the legs of one
// that is not isosceles differ plainly.
func TestPlainTrapezia(t *testing.T) {
	for _, data := range []string{"trapezium ABCD", "isosceles trapezium ABCD", "trapezium ABCD with CD = 4", "trapezium ABCD with AB = 6"} {
		ps := cornersOf(spots(chosen(t, titled("given "+data+"\njoin AC, BD"))), "ABCD")
		a, b, c, d := ps[0], ps[1], ps[2], ps[3]
		for _, angle := range []float64{turns([][2]float64{a, b, c})[2], turns([][2]float64{a, b, d})[2], turns(ps)[0], turns(ps)[1]} {
			if math.Abs(angle-90) < 5 {
				t.Errorf("%s: an angle of %.1f° looks right", data, angle)
			}
		}
		if legs := far(a, d) / far(b, c); data[0] == 't' && legs > 0.92 && legs < 1.09 {
			t.Errorf("%s: the legs are as %.2f", data, legs)
		}
	}
}

// TestPartialTriangles: what is said to be obtuse is plainly so, what is not said to be
// right does not look it, and no side is far longer than the one that is given.
func TestPartialTriangles(t *testing.T) {
	for _, data := range []string{
		"obtuse triangle ABC", "obtuse triangle ABC with angle A = 40°", "obtuse triangle ABC with AB = 6, BC = 5",
		"obtuse triangle ABC with AB = 6, angle C = 50°", "obtuse triangle ABC with BC = 5, angle B = 60°",
		"obtuse triangle ABC with AB = 6, angle A = 40°", "obtuse triangle ABC with AB = 7, angle B = 80°",
		"triangle ABC with angle A = 20°", "triangle ABC with angle B = 25°", "acute triangle ABC with angle C = 20°",
		"isosceles triangle ABC with angle A = 100°", "obtuse triangle ABC with angle A = 120°", "isosceles obtuse triangle ABC",
	} {
		ps := cornersOf(spots(chosen(t, titled("given "+data))), "ABC")
		for i, p := range ps {
			if side := far(p, ps[(i+1)%3]); side > 11 {
				t.Errorf("%s: a side is %.2f long", data, side)
			}
		}
		widest := 0.0
		for _, angle := range turns(ps) {
			widest = max(widest, angle)
			if data[0] != 'a' && math.Abs(angle-90) < 3.5 { // an acute one may have little room
				t.Errorf("%s: an angle of %.1f° looks right", data, angle)
			}
		}
		if data[0] == 'o' && widest < 94 {
			t.Errorf("%s: the widest angle is %.1f°", data, widest)
		}
	}
}

// TestFourthOfTrapezium: three known corners leave the fourth free on the parallel.
func TestFourthOfTrapezium(t *testing.T) {
	known := map[string]string{"A": "given A (0, 0)\n", "B": "given B (8, 2)\n", "C": "given C (7, 5)\n", "D": "given D (3, 4)\n"}
	for missing := range known {
		lines := ""
		for _, letter := range []string{"A", "B", "C", "D"} {
			if letter != missing {
				lines += known[letter]
			}
		}
		ps := cornersOf(spots(chosen(t, titled(lines+"given trapezium ABCD\nclaim trapezium ABCD"))), "ABCD")
		for i, angle := range turns(ps) {
			if angle >= 180 || angle < 15 {
				t.Errorf("without %s: the angle at %c is %.0f°", missing, "ABCD"[i], angle)
			}
		}
	}
}
