package exact

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// TestIdentitiesOfMinutes decides identities between cosines of minutes (from memory), and what
// only looks like one.
func TestIdentitiesOfMinutes(t *testing.T) {
	k := newKit()
	cos := func(minutes int64) *Real { return k.cos(minutes, 60) }
	sin := func(minutes int64) *Real { return k.sin(minutes, 60) }
	tan := func(minutes int64) *Real { return sin(minutes).Div(cos(minutes)) }
	const a, b, c = 3769, 2177, 10800 - 3769 - 2177 // a triangle's angles
	for _, q := range []struct {
		name        string
		left, right *Real
		equal       bool
	}{
		{"cos a cos b", cos(a).Mul(cos(b)).MulInt(2), cos(a - b).Add(cos(a + b)), true},
		{"cos a cos b a minute off", cos(a).Mul(cos(b)).MulInt(2), cos(a - b).Add(cos(a + b + 1)), false},
		{"tan a + tan b + tan c in a triangle", tan(a).Add(tan(b)).Add(tan(c)), tan(a).Mul(tan(b)).Mul(tan(c)), true},
		{"sin 3a", sin(3 * a), sin(a).Mul(sin(3600 - a)).Mul(sin(3600 + a)).MulInt(4), true},
		{"cos 5a", cos(5 * a), k.f.chebyshev(5, cos(a)), true},
		{"the sum of three cosines a third of a turn apart", cos(a).Add(cos(a + 7200)).Add(cos(a + 14400)), k.int(0), true},
		{"√2, √3 and √5 as cosines", k.sqrt(2).Mul(k.sqrt(3)).Mul(k.sqrt(5)), cos(45 * 60).Mul(cos(30 * 60)).MulInt(4).Mul(cos(36 * 60).MulInt(4).Sub(k.int(1))), true},
		{"halves of minutes", k.cos(a, 120).square().MulInt(2).Sub(k.int(1)), cos(a), true},
		{"a root that goes out again", k.root(tan(a)).Add(cos(b)).Mul(k.root(tan(a)).Sub(cos(b))), tan(a).Sub(cos(b).square()), true},
		{"and its inverse", k.int(1).Div(k.root(tan(a)).Add(cos(b))), k.root(tan(a)).Sub(cos(b)).Div(tan(a).Sub(cos(b).square())), true},
		{"√7 beside the cosines", k.sqrt(7).Add(cos(a)).square(), cos(a).square().Add(k.int(7)).Add(k.sqrt(28).Mul(cos(a))), true},
		{"10^-400 beside it", cos(a).square().Add(k.tiny()), k.int(1).Sub(sin(a).square()), false},
	} {
		d := q.left.Sub(q.right)
		if p := d.provedByConjugates(); q.equal != (p == isZero) {
			t.Errorf("%s: proof %d", q.name, p)
		}
		if q.left.Equal(q.right) != q.equal {
			t.Errorf("%s: wrong verdict", q.name)
		}
	}
}

// TestTooManyConjugates proves nothing of angles that have been halved too often.
func TestTooManyConjugates(t *testing.T) {
	k := newKit()
	half, whole := k.cos(1, 60<<40), k.cos(1, 60<<39)
	if p := half.square().MulInt(2).Sub(k.int(1)).Sub(whole).provedByConjugates(); p != nothingProved {
		t.Errorf("proof %d", p)
	}
}

// TestConjugatesOfRoots proves nothing where a root hangs on the cosines, and does not
// take it for free.
func TestConjugatesOfRoots(t *testing.T) {
	k := newKit()
	c, s := k.cos(1, 1), k.sin(1, 1)
	hidden := k.root(c.square().Add(s.Mul(k.int(3))).Sub(s.Mul(k.int(2))).Sub(s)) // √cos²1°
	if p := hidden.Add(c).provedByConjugates(); p != nothingProved {
		t.Errorf("2cos 1°: proof %d", p)
	}
	if p := hidden.Sub(c).provedByConjugates(); p == isNotZero {
		t.Error("√cos² 1° is not cos 1°")
	}
	if !hidden.Equal(c) {
		t.Error("√cos² 1° is another than cos 1°")
	}
}

// TestConjugatesAgainstForms holds the proofs against exact forms.
func TestConjugatesAgainstForms(t *testing.T) {
	found := map[proof]int{}
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			var made []*Real
			for _, s := range grown(k, someProgram(t)[:9]) {
				made = append(made, s.x)
			}
			for i := range 3 {
				made = append(made, k.cos(rapid.Int64Range(1, 89).Draw(t, fmt.Sprint("angle", i)), 1))
			}
			draw := func(name string) *Real { return made[rapid.IntRange(4, len(made)-1).Draw(t, name)] }
			x, y, z := draw("x"), draw("y"), draw("z")
			for _, d := range []*Real{
				x.Add(y).Mul(x.Sub(y)).Sub(x.Mul(x)).Add(y.Mul(y)),
				x.Mul(y).Mul(z).Sub(z.Mul(x.Mul(y).Add(x))).Add(x.Mul(z)),
				x.Mul(y).Sub(z),
				x.Mul(x).Sub(y.Add(z)),
			} {
				if d.isRatio() {
					continue
				}
				p := d.provedByConjugates()
				found[p]++
				if zero := d.exactly().isZero(); p == isZero && !zero || p == isNotZero && zero {
					t.Errorf("%s: proof %d", d.Decimal(30), p)
				}
			}
		})
	})
	if found[isZero] == 0 || found[isNotZero] == 0 {
		t.Errorf("too few proofs: %v", found)
	}
}

// TestSplitPrimes holds that they are primes, and that the images of cosines double as these do.
func TestSplitPrimes(t *testing.T) {
	f := NewField()
	for _, n := range []uint64{1, 2, 9, 360, 21600} {
		count, last := 0, uint64(1)<<primeBits
		for s := range f.splitPrimes(n) {
			if !new(big.Int).SetUint64(s.p).ProbablyPrime(20) || s.p%n != 1%n || s.p >= last {
				t.Fatalf("%d after %d is no such prime for %d", s.p, last, n)
			}
			last = s.p
			two := s.residue(integer{k: 2})
			for k, c := range s.cosines {
				if double := s.cosines[2*k%int(n)]; s.sub(s.mul(c, c), two) != double || (c == two) != (k == 0) {
					t.Fatalf("2cos %d/%d is not right modulo %d", k, n, s.p)
				}
			}
			if count++; count == mostSplits+2 {
				break
			}
		}
	}
}

// TestExpected finds the sides of a triangle that is given by angles.
func TestExpected(t *testing.T) {
	k := newKit()
	a, b := k.sin(3769, 60), k.sin(2177, 60)
	side := a.Div(b)
	k.f.Expect(k.int(7), side)
	square := a.square().Div(k.int(1).Sub(k.cos(2177, 60).square()))
	if square.Sqrt() != side {
		t.Error("the root is not the side")
	}
	if square.Add(k.tiny()).Sqrt() == side {
		t.Error("the root of a little more is the side")
	}
}
