package exact

import (
	"math/big"
	"testing"
)

// sides makes a figure of free numbers, claims an equation of it, and tells on which sides
// that holds.
func sides(figure func(f *Field, x []*Real) []*Real, claim func(made []*Real)) Sides {
	f := NewFormulaField()
	var x []*Real
	for i := range int64(6) {
		x = append(x, f.Free(big.NewRat(20+7*i+i*i*i, 3+i)))
	}
	made := figure(f, x)
	notes := f.Take()
	claim(made)
	left := 10 * mostOfClaim
	return HoldingSides(notes, f.Take(), &left)
}

// TestHoldingSides: x and y are free. |x| is √(x²), so that of three points on a line the
// distances add up on one side only; unless the source says on which they are.
func TestHoldingSides(t *testing.T) {
	line := func(sure bool) func(*Field, []*Real) []*Real {
		return func(_ *Field, x []*Real) []*Real {
			if sure {
				x[0].Sure()
				x[1].Sure()
			}
			return x
		}
	}
	addUp := func(x []*Real) {
		if !x[0].Abs().Add(x[1].Abs()).Equal(x[0].Add(x[1]).Abs()) {
			t.Error("|x| + |y| = |x + y| fails")
		}
	}
	tests := []struct {
		name   string
		figure func(*Field, []*Real) []*Real
		claim  func([]*Real)
		want   Sides
	}{
		{"lengths on a line", line(false), addUp, Hangs},
		{"lengths on a line, with the same signs", line(true), addUp, All},
		{"a product of lengths", line(false), func(x []*Real) { x[0].Abs().Mul(x[1].Abs()).Equal(x[0].Mul(x[1]).Abs()) }, All},
		{"an identity", line(false), func(x []*Real) {
			x[0].Add(x[1]).Mul(x[0].Sub(x[1])).Equal(x[0].Mul(x[0]).Sub(x[1].Mul(x[1])))
		}, All},
		{"a root that can be flipped", func(_ *Field, x []*Real) []*Real {
			r := x[0].Mul(x[0]).Add(x[1].Mul(x[1])).Add(x[2]).EitherSqrt()
			return append(x, x[3].Add(r), x[3].Sub(r))
		}, func(x []*Real) {
			x[6].Add(x[7]).Equal(x[3].MulInt(2))
		}, All},
		{"which of two roots it is", func(_ *Field, x []*Real) []*Real {
			return append(x, x[0].Mul(x[0]).EitherSqrt())
		}, func(x []*Real) { x[6].Equal(x[0]) }, Hangs},
		{"what is no equation everywhere", line(false), func(x []*Real) { x[0].Sub(x[0].Add(x[1].Mul(x[2].field.ratio(1, 1<<40)))).IsZero() }, Unknown},
	}
	for _, test := range tests {
		if got := sides(test.figure, test.claim); got != test.want {
			t.Errorf("%s: %d, want %d", test.name, got, test.want)
		}
	}
}
