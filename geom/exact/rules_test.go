package exact

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// someTower has levels of every kind: rational radicands, roots over these,
// two deep ones that hang together, and one over the base.
func (k *kit) someTower() *tower {
	two, five := k.sqrt(2), k.sqrt(5)
	over := k.root(k.int(7).Add(two))
	for _, x := range []*Real{
		k.root(k.int(5).Add(two)), k.root(k.int(5).Sub(two)), k.sqrt(11), over,
		k.root(over.Add(five)), k.root(k.cos(40, 1).Add(k.int(3))),
	} {
		x.form()
	}
	return k.f.tower
}

// someElement is a random element of the ring of a tower.
func (t *tower) someElement(r *rand.Rand, terms int) *element {
	x := constant(integer{k: r.Int64N(19) - 9})
	for range terms {
		term := constant(integer{k: r.Int64N(19) - 9})
		for i := 1; i < len(t.levels); i++ {
			if (i == ninthLevel || i > baseLevels) && r.IntN(3) == 0 {
				term = t.mul(term, t.rootAt(i).num)
			}
		}
		x = x.add(term)
	}
	return x
}

// TestRingMaps holds that ring maps are what they are called, that a cached
// character is that of its map, and that maps differ in the signs of roots.
func TestRingMaps(t *testing.T) {
	tower := newKit().someTower()
	s := tower.all()
	r := rand.New(rand.NewPCG(1, 2))
	characters := make([][3]int, len(tower.levels))
	for n := range 60 {
		m := tower.mapOf(s, n, tableSize)
		if m == nil {
			t.Fatalf("%d ring maps", n)
		}
		x, y := tower.someElement(r, 3), tower.someElement(r, 3)
		if m.apply(tower.mul(x, y)) != m.apply(x)*m.apply(y)%m.p || m.apply(x.add(y)) != (m.apply(x)+m.apply(y))%m.p {
			t.Errorf("map %d modulo %d keeps no sums or no products", n, m.p)
		}
		for i := range s.each {
			if i <= baseLevels {
				continue
			}
			if m.root[i]*m.root[i]%m.p != m.apply(tower.levels[i].radicand) {
				t.Errorf("map %d: the root of level %d is none", n, i)
			}
			for range 2 { // worked out, then remembered
				if got := tower.radicandCharacter(m, i); got != 1 {
					t.Errorf("map %d: the radicand of level %d is no square", n, i)
				}
			}
			characters[i][1+m.character(tower.rootAt(i).num)]++
		}
	}
	for i, count := range characters {
		if i > baseLevels && (count[0] < 10 || count[2] < 10) {
			t.Errorf("the root of level %d goes to %d squares and %d others: its signs are not drawn evenly", i, count[2], count[0])
		}
	}
}

// TestFullRank holds that a system of parities is settled only when every
// unknown is determined.
func TestFullRank(t *testing.T) {
	row := func(odd bool, unknowns ...int) (p parity) {
		p.odd = odd
		for _, i := range unknowns {
			p.unknowns.add(i)
		}
		return p
	}
	system := newParities(3)
	for range 10 * spareMaps {
		for _, r := range []parity{row(true, 0, 1), row(false, 2), row(true, 0, 1, 2)} {
			if !system.add(r) {
				t.Fatal("a contradiction where there is none")
			}
		}
	}
	if system.isSettled() {
		t.Error("settled, though unknowns 0 and 1 only ever came together")
	}
	if !system.add(row(true, 1)) || !system.isSettled() {
		t.Error("not settled by the missing equation")
	}
	if ones := system.solution(); ones != setOf(1) {
		t.Errorf("solution %v", ones)
	}
	if system.add(row(true, 0)) {
		t.Error("a contradiction is not noticed")
	}
}

// TestSquaresAreFound takes roots of squares of random elements in a tower,
// times radicands that make them squares again.
func TestSquaresAreFound(t *testing.T) {
	tower := newKit().someTower()
	r := rand.New(rand.NewPCG(3, 4))
	for n := range 40 {
		x := tower.someElement(r, 2)
		if x.isZero() {
			continue
		}
		square := tower.mul(x, x)
		j := baseLevels + 1 + r.IntN(len(tower.levels)-baseLevels-1)
		for _, y := range []*element{square, tower.mul(square, tower.levels[j].radicand)} {
			root := tower.squareRoot(y, tower.all())
			if root == nil || !root.mul(root).sub(tower.fraction(y, one)).isZero() {
				t.Errorf("%d: no root of a square", n)
			}
			if tower.ramifies(y, tower.all()) {
				t.Errorf("%d: a square is taken to ramify", n)
			}
		}
		if no := square.scale(integer{k: 1009}); tower.squareRoot(no, tower.all()) != nil {
			t.Errorf("%d: a root of 1009 times a square", n)
		}
	}
	if !tower.ramifies(constant(integer{k: 1009}), tower.all()) {
		t.Error("1009 is not seen to ramify")
	}
}

// TestDenestedWhenAdjoined wants no level over another from radicands that
// open into roots of whole numbers (the first five are in every collection).
func TestDenestedWhenAdjoined(t *testing.T) {
	for _, c := range []struct {
		a, b, d int64
		want    string
	}{
		{3, 2, 2, "1 + √2"}, {5, 2, 6, "√3 + √2"}, {7, 4, 3, "2 + √3"}, {9, -4, 5, "√5 − 2"},
		{8, -2, 15, "√5 − √3"}, {6, 2, 5, "1 + √5"}, {11, 6, 2, "3 + √2"}, {49, 20, 6, "5 + 2√6"},
		{10, 2, 21, "√7 + √3"}, {16, -6, 7, "3 − √7"}, {2, 1, 3, "(√6 + √2)/2"},
	} {
		k := newKit()
		x := k.root(k.int(c.a).Add(k.sqrt(c.d).MulInt(c.b)))
		if got, ok := x.Surd(); !ok || got != c.want {
			t.Errorf("√(%d + %d√%d) = %q, want %s", c.a, c.b, c.d, got, c.want)
		}
		for i, l := range k.f.tower.levels {
			if i > baseLevels && !l.closure.isEmpty() {
				t.Errorf("√(%d + %d√%d): level %d stands over others", c.a, c.b, c.d, i)
			}
		}
	}
}

// TestIntervals holds that intervals of floats hold what they should, at the
// ends of the range too: bounds of operations on their ends and middles.
func TestIntervals(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	ends := []float64{0, math.SmallestNonzeroFloat64, 1e-308, 1e-200, 1, 3, 1e200, 1e308, math.MaxFloat64}
	some := func() interval {
		x, y := ends[r.IntN(len(ends))]*float64(1-2*r.IntN(2)), ends[r.IntN(len(ends))]*float64(1-2*r.IntN(2))
		return interval{min(x, y), max(x, y)}
	}
	exact := func(x float64) *big.Float { return new(big.Float).SetPrec(4000).SetFloat64(x) }
	holds := func(z interval, v *big.Float) bool {
		return v.Cmp(new(big.Float).SetFloat64(z.lo)) >= 0 && v.Cmp(new(big.Float).SetFloat64(z.hi)) <= 0
	}
	for range 20000 {
		x, y := some(), some()
		for _, a := range []float64{x.lo, x.hi} {
			for _, b := range []float64{y.lo, y.hi} {
				p, q := exact(a), exact(b)
				good := holds(x.add(y), new(big.Float).Add(p, q)) && holds(x.sub(y), new(big.Float).Sub(p, q)) &&
					holds(x.mul(y), new(big.Float).Mul(p, q)) && holds(x.square(), new(big.Float).Mul(p, p))
				if b != 0 {
					good = good && holds(x.div(y), new(big.Float).Quo(p, q))
				}
				if a >= 0 {
					good = good && holds(x.sqrt(), new(big.Float).Sqrt(p))
				}
				if !good {
					t.Fatalf("intervals %v and %v lose %v and %v", x, y, a, b)
				}
			}
		}
	}
}

// TestLongCoefficients takes signs of numbers that cancel far more digits
// than enclosures begin with: a - b√2 = ±(√2 - 1)^n.
func TestLongCoefficients(t *testing.T) {
	a, b := big.NewInt(1), big.NewInt(0)
	for range 8000 {
		a, b = new(big.Int).Add(a, new(big.Int).Lsh(b, 1)), new(big.Int).Add(a, b)
	}
	k := newKit()
	whole := func(n *big.Int) *Real { return k.f.Rat(new(big.Rat).SetInt(n)) }
	x := whole(a).Sub(whole(b).Mul(k.sqrt(2)))
	x = x.Add(k.sqrt(3)).Sub(k.sqrt(3))
	if s := x.Sign(); s != 1 {
		t.Errorf("the sign of (√2 - 1)^8000 is %d", s)
	}
	if s := x.Neg().Sign(); s != -1 {
		t.Errorf("the sign of -(√2 - 1)^8000 is %d", s)
	}
}

// TestNoDivisionByDoubt refuses to divide by what may be 0.
func TestNoDivisionByDoubt(t *testing.T) {
	k := newKit()
	k.f.Limit(1000)
	doubtful := k.chainGap(9)
	err := Try(func() { k.int(1).Div(doubtful) })
	if _, undecided := err.(*Undecided); !undecided {
		t.Errorf("1 divided by what may be 0: %v", err)
	}
	if err := Try(func() { k.int(1).Add(k.root(doubtful)) }); err == nil {
		t.Error("the root of what may be negative")
	}
}

// TestMinutesShareRoots holds how few roots all minutes of arc together need.
func TestMinutesShareRoots(t *testing.T) {
	k := newKit()
	for n := int64(1); n < 120; n += 7 {
		k.cos(n, 60).form()
	}
	if got := len(k.f.tower.levels) - baseLevels - 1; got > 6 {
		t.Errorf("%d roots, where √2, √3, √5, √(10 + 2√5), √(2 + √2) and √(2 + √(2 + √2)) are enough", got)
	}
}
