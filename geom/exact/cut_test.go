package exact

import (
	"testing"

	"pgregory.net/rapid"
)

// deepJoint is a joint over more nested roots than a tower can hold.
func (k *kit) deepJoint(seed int64) *Real {
	x := k.int(seed)
	for i := range int64(12) {
		x = x.Mul(x).Add(k.sqrt(seed + i)).Add(k.int(i)).Sqrt().Add(k.frac(1, seed+i+1))
	}
	k.f.Joint(x)
	return x
}

// rootOf is √x in a form in which the square that x may be is not seen.
func (k *kit) rootOf(x *Real) *Real { return k.root(x.Add(k.sqrt(7)).Sub(k.sqrt(7))) }

// TestIdentities decides numbers that stand over joints too deep for the
// tower: what is 0 whatever the joints are, and what only looks like it.
func TestIdentities(t *testing.T) {
	for _, c := range []struct {
		name  string
		value func(k *kit, p, q *Real) *Real
		sign  int
	}{
		{"a square multiplied out", func(k *kit, p, q *Real) *Real {
			return p.Add(q).square().Sub(p.square()).Sub(q.square()).Sub(p.Mul(q).MulInt(2))
		}, 0},
		{"the root of a square, on its own side", func(k *kit, p, q *Real) *Real {
			return k.rootOf(p.square().Add(q.square()).Add(p.Mul(q).MulInt(2))).Sub(p.Add(q))
		}, 0},
		{"the root of a square, on the other side", func(k *kit, p, q *Real) *Real {
			p, q = p.Neg(), q.Neg()
			return k.rootOf(p.square().Add(q.square()).Add(p.Mul(q).MulInt(2))).Add(p).Add(q)
		}, 0},
		{"√p²q² for p of any sign", func(k *kit, p, q *Real) *Real {
			return k.rootOf(p.Mul(q).square()).Sub(p.Mul(q))
		}, 0},
		{"a nested root that opens", func(k *kit, p, q *Real) *Real {
			pq := p.Mul(q).Sqrt()
			return k.rootOf(p.Add(q).Add(pq.MulInt(2))).Sub(k.rootOf(p)).Sub(k.rootOf(q))
		}, 0},
		{"a quotient", func(k *kit, p, q *Real) *Real {
			return p.square().Sub(q.square()).Div(p.Add(q)).Sub(p).Add(q)
		}, 0},
		{"with cos 40°", func(k *kit, p, q *Real) *Real {
			x := k.cos(40, 1).Mul(p)
			return x.square().Mul(x).MulInt(8).Add(p.square().Mul(p)).Sub(x.Mul(p.square()).MulInt(6))
		}, 0},
		{"10^-400 beside the joints", func(k *kit, p, q *Real) *Real {
			return p.Add(q).Add(k.tiny()).square().Sub(p.Add(q).square())
		}, 1},
		{"10^-400 times a joint", func(k *kit, p, q *Real) *Real {
			return p.Add(k.tiny().Mul(p)).Add(q).Sub(p).Sub(q)
		}, 1},
		{"a joint that is known to be less", func(k *kit, p, q *Real) *Real {
			return k.rootOf(p.square().Sub(k.tiny())).Sub(p)
		}, -1},
	} {
		k := newKit()
		k.f.spent = true // so that the tower is not asked first
		p, q := k.deepJoint(2), k.deepJoint(5)
		if sign := c.value(k, p, q).Sign(); sign != c.sign {
			t.Errorf("%s: sign %d, want %d", c.name, sign, c.sign)
		}
	}
}

// TestNoIdentity holds that what is 0 here only, by how the joints came to be,
// is no identity between them, but one further down.
func TestNoIdentity(t *testing.T) {
	k := newKit()
	r, s := k.deepJoint(2), k.deepJoint(3)
	p := r.Add(s)
	k.f.Joint(p)
	q := r.Sub(s)
	k.f.Joint(q)
	x := p.square().Sub(q.square()).Sub(r.Mul(s).MulInt(4))
	section := newSection(x, false)
	if identity, _ := section.vanishes(); identity {
		t.Errorf("an identity between %d joints that hang together", len(section.free))
	}
	if !x.isIdentity() {
		t.Error("no identity found further down")
	}
	if x.Add(k.tiny()).isIdentity() {
		t.Error("10^-400 is 0")
	}
}

// TestIdentitiesAgainstForms holds the one thing that must be so: an identity
// is never found for a number that is not 0.
func TestIdentitiesAgainstForms(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			var made []*Real
			for _, s := range grown(k, someProgram(t)) {
				if made = append(made, s.x); rapid.Bool().Draw(t, "joint") {
					k.f.Joint(s.x)
				}
			}
			draw := func(name string) *Real { return made[rapid.IntRange(0, len(made)-1).Draw(t, name)] }
			x, y, z := draw("x"), draw("y"), draw("z")
			for _, zero := range []*Real{
				x.Add(y).Mul(x.Sub(y)).Sub(x.Mul(x)).Add(y.Mul(y)),
				k.rootOf(x.Mul(x).Mul(y).Mul(y)).Sub(x.Mul(y).Abs()),
				x.Mul(y).Sub(z),
				x.Mul(x).Sub(y),
			} {
				if identity := !zero.isRatio() && zero.isIdentity(); identity {
					if found++; !zero.exactly().isZero() {
						t.Errorf("%s is 0 by an identity", zero.Decimal(30))
					}
				}
			}
		})
	})
	if found == 0 {
		t.Error("no identity was found at all")
	}
}

// TestLongChains decides a distance in chains of points too long for the tower.
func TestLongChains(t *testing.T) {
	for _, n := range []int{3, 9, 12, 40} {
		if !newKit().jointed().chain(n) {
			t.Errorf("a chain of %d does not close", n)
		}
	}
}

func BenchmarkChain12Cut(b *testing.B) { benchmarkChainCut(b, 12) }
func BenchmarkChain40Cut(b *testing.B) { benchmarkChainCut(b, 40) }

func benchmarkChainCut(b *testing.B, n int) {
	for b.Loop() {
		if !newKit().jointed().chain(n) {
			b.Fatal("wrong distance")
		}
	}
}

// TestPappus decides Pappus' theorem where each of its data is a root of its
// own, the tower of which would have 2^11 terms in every number.
func TestPappus(t *testing.T) {
	for _, joints := range []bool{true, false} {
		k := newKit()
		primes := primesBelow(40)
		next := func() *Real {
			x := k.sqrt(primes[0])
			if primes = primes[1:]; joints {
				k.f.Joint(x)
			}
			return x
		}
		a, d, b, e := point{next(), next()}, point{next(), k.int(1)}, point{next(), next()}, point{k.int(1), next()}
		along := func(p, v point, s *Real) point { return point{p.x.Add(v.x.Mul(s)), p.y.Add(v.y.Mul(s))} }
		var p, q [3]point
		for i := range p {
			p[i], q[i] = along(a, d, next()), along(b, e, k.int(int64(i+2)))
		}
		// Homogeneous coordinates: joins and meetings are cross products.
		type triple [3]*Real
		cross := func(u, v triple) (w triple) {
			for i := range w {
				j, l := (i+1)%3, (i+2)%3
				w[i] = u[j].Mul(v[l]).Sub(u[l].Mul(v[j]))
			}
			return w
		}
		lift := func(p point) triple { return triple{p.x, p.y, k.int(1)} }
		meet := func(i, j int) triple {
			return cross(cross(lift(p[i]), lift(q[j])), cross(lift(p[j]), lift(q[i])))
		}
		x, y, z := meet(0, 1), meet(1, 2), meet(2, 0)
		w := cross(x, y)
		err := Try(func() {
			if s := w[0].Mul(z[0]).Add(w[1].Mul(z[1])).Add(w[2].Mul(z[2])).Sign(); s != 0 {
				t.Errorf("with joints %v: sign %d", joints, s)
			}
		})
		if joints && err != nil {
			t.Error(err)
		}
	}
}
