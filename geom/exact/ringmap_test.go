package exact

import (
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
