package exact

import "testing"

// dependences are equations between roots that an incomplete test for squares
// misses, one side adjoined before the other.
var dependences = []struct {
	name        string
	left, right func(k *kit) *Real
}{
	{"norm after conjugates",
		func(k *kit) *Real {
			return k.root(k.int(5).Add(k.sqrt(2))).Mul(k.root(k.int(5).Sub(k.sqrt(2))))
		},
		func(k *kit) *Real { return k.sqrt(23) }},
	{"biquadratic before its roots",
		func(k *kit) *Real { return k.root(k.int(5).Add(k.sqrt(6).MulInt(2))) },
		func(k *kit) *Real { return k.sqrt(2).Add(k.sqrt(3)) }},
	{"Shanks 1974",
		func(k *kit) *Real { return k.sqrt(5).Add(k.root(k.int(22).Add(k.sqrt(5).MulInt(2)))) },
		func(k *kit) *Real {
			inner := k.root(k.int(55).Sub(k.sqrt(29).MulInt(10))).MulInt(2)
			outer := k.root(k.int(16).Sub(k.sqrt(29).MulInt(2)).Add(inner))
			return k.root(k.int(11).Add(k.sqrt(29).MulInt(2))).Add(outer)
		}},
}

// kit builds numbers of one field briefly.
type kit struct{ f *Field }

func newKit() *kit { return &kit{NewField()} }

func (k *kit) int(n int64) *Real     { return k.f.Int(n) }
func (k *kit) sqrt(n int64) *Real    { return k.f.Int(n).Sqrt() }
func (k *kit) root(x *Real) *Real    { return x.Sqrt() }
func (k *kit) frac(a, b int64) *Real { return k.f.Int(a).Div(k.f.Int(b)) }

// crowd adjoins ten roots that have nothing to do with the rest.
func (k *kit) crowd() {
	for _, p := range []int64{31, 37, 41, 43, 47, 53, 59, 61, 67, 71} {
		k.sqrt(p).form()
	}
}

func TestDependences(t *testing.T) {
	for _, d := range dependences {
		for _, crowded := range []bool{false, true} {
			for _, plain := range []bool{false, true} {
				k := newKit()
				k.f.tower.plain = plain
				if crowded {
					k.crowd()
				}
				left, right := d.left(k), d.right(k)
				left.form()
				right.form()
				if !left.Equal(right) || left.Sub(right).Sign() != 0 {
					t.Errorf("%s (crowded %v, plain test %v): sides differ", d.name, crowded, plain)
				}
				if left.Equal(right.Add(k.frac(1, 1e18))) {
					t.Errorf("%s (crowded %v, plain test %v): equal to another number", d.name, crowded, plain)
				}
			}
		}
	}
}
