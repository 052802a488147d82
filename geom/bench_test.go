package geom

import (
	"testing"

	"trammel/geom/exact"
)

// radical is (√a, √b) and such: a point whose coordinates are single roots.
func radical(f *exact.Field, a, b int64) Point {
	return Point{f.Int(a).Sqrt(), f.Int(b).Sqrt()}
}

// step17 is the 17th part of a turn round the unit circle, by Gauss's formula
// (Disquisitiones Arithmeticae, art. 365).
func step17(f *exact.Field) Point {
	s := f.Int(17).Sqrt()
	a := f.Int(34).Sub(s.MulInt(2)).Sqrt()
	b := f.Int(34).Add(s.MulInt(2)).Sqrt()
	c := f.Int(17).Add(s.MulInt(3)).Sub(a).Sub(b.MulInt(2)).Sqrt()
	cos := s.Sub(f.Int(1)).Add(a).Add(c.MulInt(2)).Div(f.Int(16))
	return Point{cos, f.Int(1).Sub(cos.Mul(cos)).Sqrt()}
}

// stepRound goes n - 1 more steps round the circle k with the compasses, each
// arc struck about the last point through the one before, and tells whether
// the way closes.
func stepRound(b *testing.B, k Circle, first, second Point, n int) bool {
	last, now := first, second
	for range n - 1 {
		next, err := MeetCircles(k, Circle{now, Dist2(now, last)}, Known{Common: &last})
		if err != nil || len(next) != 2 {
			b.Fatal("the arc does not cut the circle twice")
		}
		last, now = now, next[0] // left of the way out from the centre
	}
	return now.Equal(first)
}

func Benchmark17CompassActsClose(b *testing.B) {
	for b.Loop() {
		f := exact.NewField()
		k := Circle{origin(f), f.Int(1)}
		if !stepRound(b, k, Point{f.Int(1), f.Int(0)}, step17(f), 17) {
			b.Fatal("open")
		}
	}
}

// meetOf is the meeting of the lines AB and CD.
func meetOf(tb testing.TB, a, b, c, d Point) Point {
	p, err := MeetLines(Through(a, b), Through(c, d))
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

// onCircle is the point of the unit circle at slope t from (-1, 0).
func onCircle(f *exact.Field, t Real) Point {
	one := f.Int(1)
	t2 := t.Mul(t)
	d := one.Add(t2)
	return Point{one.Sub(t2).Div(d), t.MulInt(2).Div(d)}
}

func BenchmarkPascal(b *testing.B) {
	for b.Loop() {
		f := exact.NewField()
		var p [6]Point
		for i, n := range []int64{2, 3, 5, 7, 11, 13} {
			p[i] = onCircle(f, f.Int(n).Sqrt())
		}
		if !Collinear(
			meetOf(b, p[0], p[1], p[3], p[4]), meetOf(b, p[1], p[2], p[4], p[5]), meetOf(b, p[2], p[3], p[5], p[0])) {
			b.Fatal("not on a line")
		}
	}
}

func BenchmarkPappus(b *testing.B) {
	for b.Loop() {
		f := exact.NewField()
		on := func(p, q Point, n int64) Point { return p.Add(q.Sub(p).Scale(f.Int(n).Sqrt())) }
		o, u, v := origin(f), Point{f.Int(3), f.Int(1)}, Point{f.Int(1), f.Int(4)}
		p := [3]Point{on(o, u, 2), on(o, u, 3), on(o, u, 5)}
		q := [3]Point{on(o, v, 7), on(o, v, 11), on(o, v, 13)}
		if !Collinear(
			meetOf(b, p[0], q[1], p[1], q[0]), meetOf(b, p[0], q[2], p[2], q[0]), meetOf(b, p[1], q[2], p[2], q[1])) {
			b.Fatal("not on a line")
		}
	}
}

func BenchmarkDesargues(b *testing.B) {
	for b.Loop() {
		f := exact.NewField()
		o := Point{f.Int(7), f.Int(-1)}
		p := [3]Point{radical(f, 2, 3), radical(f, 5, 7), radical(f, 11, 13)}
		var q [3]Point
		for i := range p {
			q[i] = o.Add(p[i].Sub(o).Scale(f.Int([]int64{17, 19, 23}[i]).Sqrt()))
		}
		if !Collinear(
			meetOf(b, p[0], p[1], q[0], q[1]), meetOf(b, p[1], p[2], q[1], q[2]), meetOf(b, p[2], p[0], q[2], q[0])) {
			b.Fatal("not on a line")
		}
	}
}

// BenchmarkThirtyRadicalPoints proves in one field, for ten triangles with 30
// different points, that the medians of each meet in one point.
func BenchmarkThirtyRadicalPoints(b *testing.B) {
	for b.Loop() {
		f := exact.NewField()
		var p []Point
		for n := int64(2); len(p) < 30; n++ {
			p = append(p, Point{f.Int(n).Sqrt(), f.Int(n*n + 1).Sqrt()})
		}
		for i := 0; i < 30; i += 3 {
			x, y, z := p[i], p[(i+7)%30], p[(i+17)%30]
			meet := meetOf(b, x, Midpoint(y, z), y, Midpoint(z, x))
			if !Collinear(z, meet, Midpoint(x, y)) {
				b.Fatal("the medians do not meet")
			}
		}
	}
}
