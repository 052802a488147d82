package exact

import (
	"math/rand/v2"
	"testing"
)

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
