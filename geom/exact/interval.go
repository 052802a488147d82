package exact

// Intervals of floats (interval arithmetic, Moore 1966; from memory): the first layer, which
// tells nearly every sign. Go computes with floats as IEEE 754 has it, each operation and
// square root rounded to the nearest; so the floats next to a result bound it.

import (
	"math"
	"math/big"
)

// interval holds a number between two floats. What overflows or has no meaning becomes
// the whole line: an interval may be of no use, but is never wrong.
type interval struct{ lo, hi float64 }

var (
	everything = interval{math.Inf(-1), math.Inf(1)}
	nothing    = interval{0, 0} // holds 0 alone
)

// down is the float before x; +Inf stands for a value that overflowed.
func down(x float64) float64 {
	switch {
	case x > 0:
		return math.Float64frombits(math.Float64bits(x) - 1)
	case x == 0:
		return -math.SmallestNonzeroFloat64
	case x >= -math.MaxFloat64:
		return math.Float64frombits(math.Float64bits(x) + 1)
	}
	return x // -Inf or no number
}

// up is the float after x.
func up(x float64) float64 { return -down(-x) }

// guarded is [lo, hi], or everything if either end has no meaning.
func guarded(lo, hi float64) interval {
	if lo != lo || hi != hi {
		return everything
	}
	return interval{lo, hi}
}

func (x interval) add(y interval) interval {
	return guarded(down(x.lo+y.lo), up(x.hi+y.hi))
}

func (x interval) sub(y interval) interval {
	return guarded(down(x.lo-y.hi), up(x.hi-y.lo))
}

func (x interval) neg() interval { return interval{-x.hi, -x.lo} }

func (x interval) mul(y interval) interval {
	if x.lo >= 0 && y.lo >= 0 {
		return guarded(down(x.lo*y.lo), up(x.hi*y.hi))
	}
	a, b, c, d := x.lo*y.lo, x.lo*y.hi, x.hi*y.lo, x.hi*y.hi
	return guarded(down(min(a, b, c, d)), up(max(a, b, c, d)))
}

// div needs a y that excludes 0, else it knows nothing.
func (x interval) div(y interval) interval {
	if y.lo <= 0 && y.hi >= 0 {
		return everything
	}
	a, b, c, d := x.lo/y.lo, x.lo/y.hi, x.hi/y.lo, x.hi/y.hi
	return guarded(down(min(a, b, c, d)), up(max(a, b, c, d)))
}

func (x interval) square() interval {
	switch {
	case x.lo >= 0:
		return guarded(max(0, down(x.lo*x.lo)), up(x.hi*x.hi))
	case x.hi <= 0:
		return x.neg().square()
	}
	return guarded(0, up(max(x.lo*x.lo, x.hi*x.hi)))
}

func (x interval) sqrt() interval {
	return guarded(max(0, down(math.Sqrt(max(0, x.lo)))), up(math.Sqrt(max(0, x.hi))))
}

// meet is what two enclosures of one number say together.
func (x interval) meet(y interval) interval {
	return interval{max(x.lo, y.lo), min(x.hi, y.hi)}
}

// sign is that of every number in x; false if x cannot tell.
func (x interval) sign() (int, bool) {
	switch {
	case x.lo > 0:
		return 1, true
	case x.hi < 0:
		return -1, true
	case x.lo == 0 && x.hi == 0:
		return 0, true
	}
	return 0, false
}

// exactFloat is the largest magnitude below which every whole number is a float.
const exactFloat = 1 << 53

// ratioInterval holds num/den, and nothing else if that is a float.
func ratioInterval(num, den int64) interval {
	n, d := float64(num), float64(den)
	q := n / d
	if num > exactFloat || num < -exactFloat || den > exactFloat {
		return interval{down(down(q)), up(up(q))}
	}
	if math.FMA(q, d, -n) == 0 {
		return interval{q, q}
	}
	return interval{down(q), up(q)}
}

// bigInterval holds what lies between two big floats.
func bigInterval(lo, hi *big.Float) interval {
	l, _ := lo.Float64()
	h, _ := hi.Float64()
	return guarded(down(l), up(h))
}

// settled is x as a rough field takes it: an interval that is narrow for its place is
// made narrower still about its middle, so that long computations do not widen it
// without end. One that holds 0, or nearly, stays.
func (x interval) settled() interval {
	mid := x.lo + (x.hi-x.lo)/2
	if size := math.Abs(mid); x.hi-x.lo < 1e-6*size {
		return interval{mid - 0x1p-45*size, mid + 0x1p-45*size}
	}
	return x
}

// cancelled is what a rough field takes a sum or difference x of y and z for. If hardly
// anything is left of y and z, x may be 0, since what these were settled to may be off
// by as much.
func (x interval) cancelled(y, z interval) interval {
	off := 0x1p-39 * (math.Abs(y.lo) + math.Abs(z.lo))
	if x.lo > -off && x.hi < off {
		return interval{-off, off}
	}
	return x
}
