package exact

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

func primesBelow(n int64) (primes []int64) {
	for p := int64(2); p < n; p++ {
		if big.NewInt(p).ProbablyPrime(0) {
			primes = append(primes, p)
		}
	}
	return primes
}

// TestManyRoots needs more levels than a machine word has bits.
func TestManyRoots(t *testing.T) {
	k := newKit()
	up, down := k.int(0), k.int(0)
	primes := primesBelow(600)
	for i := range primes {
		up = up.Add(k.sqrt(primes[i]))
		down = down.Add(k.sqrt(primes[len(primes)-1-i]))
	}
	if len(primes) < 100 || !up.Equal(down) {
		t.Errorf("two orders of %d roots differ", len(primes))
	}
	if product := k.root(k.int(2 * 599)); !product.Equal(k.sqrt(2).Mul(k.sqrt(599))) {
		t.Error("√1198 is not √2·√599")
	}
}

func TestTooManyRoots(t *testing.T) {
	k := newKit()
	up, down := k.int(0), k.int(0)
	primes := primesBelow(2000)
	for i := range primes {
		up = up.Add(k.sqrt(primes[i]))
		down = down.Add(k.sqrt(primes[len(primes)-1-i]))
	}
	err := Try(func() { up.Equal(down) })
	if _, undecided := err.(*Undecided); !undecided || !strings.Contains(err.Error(), "probably equal") {
		t.Errorf("%d roots: %v", len(primes), err)
	}
	if up.Cmp(down.Add(k.frac(1, 1e15))) != -1 {
		t.Error("what an enclosure tells is not decided")
	}
}

// TestCrowdOfNestedRoots adjoins roots of roots until ring maps are too rare
// to find: the square test must neither hang nor lie.
func TestCrowdOfNestedRoots(t *testing.T) {
	k := newKit()
	for _, p := range primesBelow(100)[1:] {
		k.root(k.int(p + 20).Add(k.sqrt(p))).form()
	}
	for _, d := range dependences {
		if !d.left(k).Equal(d.right(k)) {
			t.Errorf("%s: sides differ in a crowd", d.name)
		}
	}
	if k.sqrt(1009).Mul(k.sqrt(1013)).Equal(k.root(k.int(1009*1013 + 1))) {
		t.Error("near roots are equal")
	}
}

// TestSquareOverManyRoots takes the root of a square written out over more
// roots than ring maps can be found for: the dependence shows later.
func TestSquareOverManyRoots(t *testing.T) {
	for _, n := range []int64{20, 50, 72} {
		k := newKit()
		sum, square := k.int(0), k.int(0)
		for _, p := range primesBelow(n) {
			r := k.sqrt(p)
			square = square.Add(sum.Mul(r).MulInt(2)).Add(k.int(p))
			sum = sum.Add(r)
		}
		square.form()
		if !k.root(square).Equal(sum) || k.root(square.Add(k.frac(1, 1e15))).Equal(sum) {
			t.Errorf("primes below %d: the root of the square of a sum", n)
		}
	}
}

// nearMisses are positive numbers below 10^-19.
var nearMisses = []struct {
	name  string
	value func(k *kit) *Real
}{
	{"√(10^40 + 1) - 10^20", func(k *kit) *Real {
		big20 := k.f.Rat(new(big.Rat).SetInt(powerOfTen(20)))
		return k.root(big20.Mul(big20).Add(k.int(1))).Sub(big20)
	}},
	{"sums of two roots", func(k *kit) *Real {
		n := k.f.Rat(new(big.Rat).SetInt(powerOfTen(14)))
		return k.root(n).Add(k.root(n.Add(k.int(3)))).
			Sub(k.root(n.Add(k.int(1))).Add(k.root(n.Add(k.int(2))))).Neg()
	}},
	{"(√2 - 1)^60", func(k *kit) *Real {
		x, p := k.sqrt(2).Sub(k.int(1)), k.int(1)
		for range 60 {
			p = p.Mul(x)
		}
		return p
	}},
	{"a Pell number against (1 + √2)^60", func(k *kit) *Real {
		a, b := big.NewInt(1), big.NewInt(0) // a + b√2 = (1 + √2)^n
		for range 60 {
			a, b = new(big.Int).Add(a, new(big.Int).Lsh(b, 1)), new(big.Int).Add(a, b)
		}
		x, y := k.f.Rat(new(big.Rat).SetInt(a)), k.f.Rat(new(big.Rat).SetInt(b))
		return x.Sub(y.Mul(k.sqrt(2)))
	}},
	{"√(55 - 10√29) off by 10^-30", func(k *kit) *Real {
		x := k.root(k.int(55).Sub(k.sqrt(29).MulInt(10)))
		tiny := k.f.Rat(new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(30)))
		return k.root(x.Mul(x).Add(tiny).Add(k.sqrt(7)).Sub(k.sqrt(7))).Sub(x)
	}},
}

func TestNearMisses(t *testing.T) {
	for _, c := range nearMisses {
		k := newKit()
		x := c.value(k)
		if s := x.Sign(); s != 1 {
			t.Errorf("%s: sign %d", c.name, s)
		}
		if f := x.Float(); f <= 0 || f > 1e-19 {
			t.Errorf("%s: float %g", c.name, f)
		}
		if s := c.value(k).Neg().Sign(); s != -1 {
			t.Errorf("%s, negated: sign %d", c.name, s)
		}
		if y := c.value(k); !y.Sub(x).IsZero() {
			t.Errorf("%s: twice the same is not the same", c.name)
		}
	}
}

func TestUndecided(t *testing.T) {
	k := newKit()
	if k.chain(4) != true {
		t.Error("a chain of 4 does not close")
	}
	err := Try(func() { k.chain(11) })
	if _, undecided := err.(*Undecided); !undecided {
		t.Fatalf("a chain of 11: %v", err)
	}
	if !strings.Contains(err.Error(), "not decided") || !strings.Contains(err.Error(), "probably equal: they agree to 1") {
		t.Errorf("wording: %v", err)
	}
	if !k.sqrt(2).Mul(k.sqrt(3)).Equal(k.sqrt(6)) {
		t.Error("the field is of no use after a spent budget")
	}
}

// TestDeepNodes would overflow the stack if operands were followed all the way.
func TestDeepNodes(t *testing.T) {
	k := newKit()
	x, r, s := k.int(0), k.sqrt(2), k.sqrt(3)
	for range 100_000 {
		x = x.Add(r).Sub(s)
		if x.depth > deepest {
			t.Fatalf("%d operations deep", x.depth)
		}
	}
	if !x.Equal(r.Sub(s).MulInt(100_000)) {
		t.Error("100000 times √2 - √3")
	}
}

// TestExtremeMagnitudes takes numbers beyond what a big.Float can hold, where it
// goes to 0 or to infinity: that must not be taken for their value.
func TestExtremeMagnitudes(t *testing.T) {
	k := newKit()
	squared := func(x *Real, times int) *Real {
		for range times {
			x = x.Mul(x)
		}
		return x
	}
	small, smaller := squared(k.sqrt(3).Sub(k.int(1)), 33), squared(k.sqrt(2).Sub(k.int(1)), 33)
	large, larger := squared(k.sqrt(2).Add(k.int(1)), 33), squared(k.sqrt(3).Add(k.int(1)), 33)
	whole, other := squared(k.int(3), 40), squared(k.int(5), 40)
	for _, c := range []struct {
		name string
		x    *Real
		want int
	}{
		{"2^-10^10 and less, added", small.Add(smaller), 1},
		{"2^-10^10 less what is less", small.Sub(smaller), 1},
		{"2^10^10 and more, subtracted", larger.Sub(large), 1},
		{"inverses", k.int(1).Div(large).Sub(k.int(1).Div(larger)), 1},
		{"whole numbers", other.Sub(whole), 1},
		{"equal ones", squared(k.int(9), 39).Sub(whole), 0},
	} {
		sign := c.want
		err := Try(func() { sign = c.x.Sign() })
		if _, undecided := err.(*Undecided); err != nil && !undecided || sign != c.want {
			t.Errorf("%s: sign %d, %v", c.name, sign, err)
		}
	}
	if small.Sign() != 1 || larger.Neg().Sign() != -1 || small.Float() != 0 {
		t.Error("factors do not tell the sign of their product")
	}
}

// TestLongWholeNumbers ends where the numbers that must be written out are too long.
func TestLongWholeNumbers(t *testing.T) {
	k := newKit()
	x, y := k.int(3), k.int(9)
	for range 26 {
		x, y = x.Mul(x), y.Mul(y)
	}
	err := Try(func() { x.Mul(x).Equal(y) })
	if _, undecided := err.(*Undecided); !undecided || !strings.Contains(err.Error(), "probably equal") {
		t.Errorf("3^(2^27) = 9^(2^26): %v", err)
	}
}

func TestFloats(t *testing.T) {
	k := newKit()
	huge := k.f.Rat(new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(300), nil)))
	for _, c := range []struct {
		name string
		x    *Real
		want float64
	}{
		{"√2", k.sqrt(2), math.Sqrt2},
		{"(√2 + √3)² - 5 - 2√6", k.sqrt(2).Add(k.sqrt(3)).square().Sub(k.int(5)).Sub(k.sqrt(6).MulInt(2)), 0},
		{"√(10^600)", k.root(huge.Mul(huge)), 1e300},
		{"10^600/10^600", huge.Mul(huge).Div(huge.Mul(huge).Add(k.int(1))), 1},
		{"10^-300", k.int(1).Div(huge), 1e-300},
		{"√10^-600", k.root(k.int(1).Div(huge.Mul(huge))), 1e-300},
		{"10^-600", k.int(1).Div(huge.Mul(huge)), 0},
		{"-10^-600", k.int(-1).Div(huge.Mul(huge)), 0},
	} {
		f := c.x.Float()
		if math.Abs(f-c.want) > 4e-16*math.Abs(c.want) || math.Signbit(f) && f == 0 {
			t.Errorf("%s = %g, want %g", c.name, f, c.want)
		}
		lo, hi := c.x.Enclose(200)
		l, _ := lo.Float64()
		h, _ := hi.Float64()
		if slack := 4e-16 * math.Abs(f); l > f+slack || f-slack > h || lo.Cmp(hi) > 0 {
			t.Errorf("%s: %g outside of %g, %g", c.name, f, l, h)
		}
	}
	if lo, hi := k.sqrt(2).Add(k.sqrt(3)).Bounds(); lo > 3.1462643699419723 || hi < 3.1462643699419723 || hi-lo > 1e-14 {
		t.Errorf("bounds of √2 + √3: %v, %v", lo, hi)
	}
}

func TestRational(t *testing.T) {
	k := newKit()
	x := k.sqrt(8).Div(k.sqrt(18)).Add(k.root(k.int(3).Add(k.sqrt(8))).Sub(k.sqrt(2)))
	if r, ok := x.Rational(); !ok || r.Cmp(big.NewRat(5, 3)) != 0 {
		t.Errorf("Rational() = %v, %v, want 5/3", r, ok)
	}
	if r, ok := k.sqrt(2).Rational(); ok {
		t.Errorf("√2 = %v", r)
	}
	third := new(big.Rat).SetFrac(powerOfTen(30), big.NewInt(3))
	if r, ok := k.f.Rat(third).Rational(); !ok || r.Cmp(third) != 0 {
		t.Errorf("Rational() = %v, %v", r, ok)
	}
}

func TestFaults(t *testing.T) {
	k := newKit()
	zero := k.sqrt(2).Mul(k.sqrt(3)).Sub(k.sqrt(6))
	if err := Try(func() { k.int(1).Div(zero) }); err == nil || err.Error() != "division by zero" {
		t.Errorf("1/0: %v", err)
	}
	if err := Try(func() { k.sqrt(2).Sub(k.sqrt(3)).Sqrt() }); err == nil || err.Error() != "square root of a negative number" {
		t.Errorf("√(√2 - √3): %v", err)
	}
	if !zero.Sqrt().IsZero() || !zero.Add(k.int(1)).Equal(k.int(1)) {
		t.Error("√0 is not 0, or 0 + 1 not 1")
	}
	for _, c := range []struct {
		degrees *big.Rat
		want    string
	}{
		{big.NewRat(67, 9), "67/9° cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"},
		{big.NewRat(360, 7), "360/7° cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"},
	} {
		if _, _, err := k.f.CosSin(c.degrees); err == nil || err.Error() != c.want {
			t.Errorf("CosSin(%v): %v, want %s", c.degrees, err, c.want)
		}
	}
}

// TestRoughField keeps what a rough field takes for 0 out of true fields.
func TestRoughField(t *testing.T) {
	tiny := new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(30))
	signs := func(f *Field) (zero, positive, clear int) {
		z := f.Int(2).Sqrt().Mul(f.Int(3).Sqrt()).Sub(f.Int(6).Sqrt())
		return z.Sign(), z.Add(f.Rat(tiny)).Add(z).Sign(), f.Int(3).Sqrt().Cmp(f.Int(2).Sqrt())
	}
	if zero, positive, clear := signs(NewRoughField()); zero != 0 || positive != 1 || clear != 1 {
		t.Errorf("rough: %d, %d, %d", zero, positive, clear)
	}
	if zero, positive, clear := signs(NewField()); zero != 0 || positive != 1 || clear != 1 {
		t.Errorf("true: %d, %d, %d", zero, positive, clear)
	}
	wrong := func(f *Field) int { return f.Int(2).Sqrt().Add(f.Rat(tiny)).Cmp(f.Int(2).Sqrt()) }
	if rough, exact := wrong(NewRoughField()), wrong(NewField()); rough != 0 || exact != 1 {
		t.Errorf("√2 + 10^-30 against √2: rough %d, true %d", rough, exact)
	}
}

// TestFieldsInParallel shares nothing between fields but tables.
func TestFieldsInParallel(t *testing.T) {
	for range 4 {
		t.Run("field", func(t *testing.T) {
			t.Parallel()
			k := newKit()
			if !k.closes(k.step17(), 17) || !k.cos(20, 1).MulInt(2).Equal(k.cos(40, 1).Add(k.cos(80, 1)).MulInt(2)) {
				t.Error("a figure went wrong beside others")
			}
		})
	}
}

// TestTrustLeavesNumbers: what passes for 0 while an enclosure is trusted keeps
// its value, and so do products with it.
func TestTrustLeavesNumbers(t *testing.T) {
	f := NewField()
	two := f.Int(2).Sqrt()
	tiny := two.Add(f.Rat(new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(big.NewInt(1), 600)))).Sub(two)
	x := tiny.Mul(f.Int(3).Sqrt())
	f.Trust(256)
	if x.Sign() != 0 {
		t.Error("2^-600·√3 is told from 0 by 256 bits")
	}
	f.Trust(0)
	if x.Sign() != 1 || tiny.Sign() != 1 {
		t.Errorf("2^-600·√3 has the sign %d after it passed for 0", x.Sign())
	}
}
