package exact

import "testing"

// closes goes n steps around the unit circle.
func (k *kit) closes(step point, n int) bool {
	p := step
	for range n - 1 {
		p = p.turn(step)
	}
	return p.equal(point{k.int(1), k.int(0)})
}

// step17 is a 17th of a turn, by Gauss's formula.
func (k *kit) step17() point {
	s := k.sqrt(17)
	a := k.root(k.int(34).Sub(s.MulInt(2)))
	b := k.root(k.int(34).Add(s.MulInt(2)))
	c := k.root(k.int(17).Add(s.MulInt(3)).Sub(a).Sub(b.MulInt(2)))
	cos := s.Sub(k.int(1)).Add(a).Add(c.MulInt(2)).Div(k.int(16))
	return point{cos, k.root(k.int(1).Sub(cos.Mul(cos)))}
}

func (k *kit) step5() point { return point{k.cos(72, 1), k.sin(72, 1)} }

func power2(p point, n int) point {
	q := p
	for range n - 1 {
		q = q.turn(p)
	}
	return q
}

// TestPolygonsClose closes the pentagon and the 17-gon after as many steps, and not before.
func TestPolygonsClose(t *testing.T) {
	k := newKit()
	if !k.closes(k.step5(), 5) || k.closes(k.step5(), 4) {
		t.Error("the pentagon does not close")
	}
	if !k.closes(k.step17(), 17) || k.closes(k.step17(), 16) {
		t.Error("the 17-gon does not close")
	}
}

func BenchmarkPentagonCloses(b *testing.B) {
	for b.Loop() {
		k := newKit()
		r := k.sqrt(5)
		cos := r.Sub(k.int(1)).Div(k.int(4))
		if !k.closes(point{cos, k.root(k.int(1).Sub(cos.Mul(cos)))}, 5) {
			b.Fatal("open")
		}
	}
}

func Benchmark17StepsClose(b *testing.B) {
	for b.Loop() {
		k := newKit()
		if !k.closes(k.step17(), 17) {
			b.Fatal("open")
		}
	}
}

func Benchmark85StepsClose(b *testing.B) {
	for b.Loop() {
		k := newKit()
		back := k.step17()
		back.y = back.y.Neg()
		step := power2(k.step5(), 3).turn(power2(back, 10))
		if !k.closes(step, 85) {
			b.Fatal("open")
		}
	}
}

func BenchmarkTwentyRootsSquared(b *testing.B) {
	primes := []int64{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71}
	for b.Loop() {
		k := newKit()
		up, down := k.int(0), k.int(0)
		for i := range primes {
			up = up.Add(k.sqrt(primes[i]))
			down = down.Add(k.sqrt(primes[len(primes)-1-i]))
		}
		if !up.Mul(up).Equal(down.Mul(down)) {
			b.Fatal("differ")
		}
	}
}

// chain tells whether the last distance of a chain of n points comes out.
func (k *kit) chain(n int) bool { return k.chainGap(n).IsZero() }

// chainGap draws n points, each at √3, √4, … from the last and at √4, √5, …
// from the third last, and gives by how much the square of the last distance
// is too long.
func (k *kit) chainGap(n int) *Real {
	points := []point{{k.int(0), k.int(0)}, {k.int(1), k.int(0)}, {k.int(1), k.int(1)}}
	for i := range n {
		ra, rb := k.int(int64(3+i)), k.int(int64(4+i))
		a, b := points[len(points)-1], points[len(points)-3]
		ab := b.sub(a)
		d := ab.dot(ab)
		along := d.Add(ra).Sub(rb)
		across := k.root(d.Mul(ra).MulInt(4).Sub(along.Mul(along)))
		twice := d.MulInt(2)
		points = append(points, point{
			a.x.Add(along.Mul(ab.x).Sub(across.Mul(ab.y)).Div(twice)),
			a.y.Add(along.Mul(ab.y).Add(across.Mul(ab.x)).Div(twice)),
		})
		if k.joints {
			k.f.Joint(points[len(points)-1].x, points[len(points)-1].y)
		}
	}
	last, third := points[len(points)-1], points[len(points)-4]
	gap := last.sub(third)
	return gap.dot(gap).Sub(k.int(int64(n + 3)))
}

func benchmarkChain(b *testing.B, n int) {
	for b.Loop() {
		if !newKit().chain(n) {
			b.Fatal("wrong distance")
		}
	}
}

func BenchmarkChain4(b *testing.B) { benchmarkChain(b, 4) }
func BenchmarkChain6(b *testing.B) { benchmarkChain(b, 6) }
func BenchmarkChain8(b *testing.B) { benchmarkChain(b, 8) }

// apexIs tells whether the third angle of a triangle with the angles a and b in
// degrees on a side of 1 is c, by cross·cos c = dot·sin c.
func (k *kit) apexIs(a, b, c int64) bool {
	x := k.sin(b, 1).Mul(k.cos(a, 1)).Div(k.sin(c, 1))
	apex := point{x, x.Mul(k.sin(a, 1)).Div(k.cos(a, 1))}
	left, right := point{k.int(0), k.int(0)}.sub(apex), point{k.int(1), k.int(0)}.sub(apex)
	cross, dot := left.cross(right), left.dot(right)
	return cross.Sign() > 0 && cross.Mul(k.cos(c, 1)).Equal(dot.Mul(k.sin(c, 1)))
}

// TestApexIs tells the third angle of triangles that are given by two.
func TestApexIs(t *testing.T) {
	for _, c := range []struct {
		a, b, c int64
		want    bool
	}{{70, 70, 40, true}, {70, 35, 75, true}, {70, 70, 41, false}, {70, 36, 75, false}} {
		if got := newKit().apexIs(c.a, c.b, c.c); got != c.want {
			t.Errorf("%d° and %d° leave %d°: %v", c.a, c.b, c.c, got)
		}
	}
}

func benchmarkApex(b *testing.B, p, q, r int64) {
	for b.Loop() {
		if !newKit().apexIs(p, q, r) {
			b.Fatal("another angle")
		}
	}
}

func BenchmarkTriangle407070(b *testing.B) { benchmarkApex(b, 70, 70, 40) }
func BenchmarkTriangle367272(b *testing.B) { benchmarkApex(b, 72, 72, 36) }
func BenchmarkTriangle703575(b *testing.B) { benchmarkApex(b, 70, 35, 75) }

// feuerbach tells whether the nine-point circle of a triangle touches its
// incircle: whether their centres are R/2 - r apart.
func (k *kit) feuerbach(a, b, c point) bool {
	ab, ac, bc := b.sub(a), c.sub(a), c.sub(b)
	area2 := ab.cross(ac).Abs()
	u, v, w := k.root(bc.dot(bc)), k.root(ac.dot(ac)), k.root(ab.dot(ab))
	sum := u.Add(v).Add(w)
	weighted := func(p, q, r *Real) *Real { return u.Mul(p).Add(v.Mul(q)).Add(w.Mul(r)).Div(sum) }
	in := point{weighted(a.x, b.x, c.x), weighted(a.y, b.y, c.y)}
	// The circumcentre less a solves 2(o·ab) = ab², 2(o·ac) = ac².
	d := ab.cross(ac).MulInt(2)
	o := point{
		ab.dot(ab).Mul(ac.y).Sub(ac.dot(ac).Mul(ab.y)).Div(d).Add(a.x),
		ac.dot(ac).Mul(ab.x).Sub(ab.dot(ab).Mul(ac.x)).Div(d).Add(a.y),
	}
	half := k.frac(1, 2)
	nine := point{
		a.x.Add(b.x).Add(c.x).Sub(o.x).Mul(half),
		a.y.Add(b.y).Add(c.y).Sub(o.y).Mul(half),
	}
	radius := o.sub(a)
	gap := nine.sub(in)
	want := k.root(radius.dot(radius)).Mul(half).Sub(area2.Div(sum))
	return gap.dot(gap).Equal(want.Mul(want))
}

func BenchmarkFeuerbach6913(b *testing.B) {
	for b.Loop() {
		k := newKit()
		x := k.frac(81+36-169, 18) // the apex over a side of 9
		apex := point{x, k.root(k.int(36).Sub(x.Mul(x)))}
		if !k.feuerbach(point{k.int(0), k.int(0)}, point{k.int(9), k.int(0)}, apex) {
			b.Fatal("apart")
		}
	}
}

func BenchmarkFeuerbachRadical(b *testing.B) {
	for b.Loop() {
		k := newKit()
		if !k.feuerbach(point{k.sqrt(2), k.int(0)}, point{k.int(5), k.sqrt(3)}, point{k.int(1), k.sqrt(11)}) {
			b.Fatal("apart")
		}
	}
}

func BenchmarkFilteredOperation(b *testing.B) {
	k := newKit()
	x, y := k.sqrt(2), k.sqrt(3)
	b.ReportAllocs()
	for b.Loop() {
		if x.Mul(y).Sub(x).Add(y).Sign() != 1 {
			b.Fatal("sign")
		}
	}
}
