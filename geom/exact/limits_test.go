package exact

import (
	"strings"
	"testing"
)

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

// TestTooManyRoots wants "not decided" of what needs more levels than a tower has, and a verdict
// all the same where an enclosure tells.
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

// TestUndecided holds that a spent budget is said to be that, with what is probable, and that
// the field goes on.
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
	if _, undecided := err.(*Undecided); !undecided || !strings.Contains(err.Error(), "digits") {
		t.Errorf("3^(2^27) = 9^(2^26): %v", err)
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
