package exact

// Boxes about the values of joints, and what numbers above a cut can be over them.

import (
	"math/big"
	"math/rand/v2"
)

// box is an interval for each free joint, 2^(1-size) wide and with the value of the joint well
// inside, and the enclosures above the cut that follow from these.
type box struct {
	size   uint
	corner map[*Real]*big.Rat // the lowest values
	over   map[*Real]enclosure
	sound  bool // no radicand or divisor can be 0 so far
}

// box is the largest of some boxes that is sound; false if none is.
func (s *section) box() (*box, bool) {
	for _, size := range []uint{10, 25, 60, 150} {
		b := &box{size: size, corner: map[*Real]*big.Rat{}, over: map[*Real]enclosure{}, sound: true}
		for _, x := range s.free {
			if !b.surround(x) {
				return nil, false
			}
		}
		if b.of(s.x); b.sound {
			return b, true
		}
	}
	return nil, false
}

// surround puts the value of a joint well within its interval.
func (b *box) surround(x *Real) bool {
	prec := b.size + 64
	here := x.enclose(prec)
	if here.isEverything() {
		return false
	}
	low, high := nearestShifted(here.lo, b.size+2), nearestShifted(here.hi, b.size+2)
	scale := new(big.Int).Lsh(big.NewInt(1), b.size+2)
	if new(big.Int).Sub(high, low).Cmp(big.NewInt(1)) > 0 {
		return false
	}
	corner := new(big.Rat).SetFrac(low.Sub(low, big.NewInt(4)), scale)
	b.corner[x] = corner
	far := new(big.Rat).Add(corner, new(big.Rat).SetFrac(big.NewInt(8), scale))
	b.over[x] = enclosure{floor(prec).SetRat(corner), ceil(prec).SetRat(far), prec}
	return true
}

// nearestShifted is the whole number nearest to x·2^shift.
func nearestShifted(x *big.Float, shift uint) *big.Int {
	n, _ := new(big.Float).SetMantExp(x, int(shift)+1).Int(nil)
	return n.Rsh(n.Add(n, big.NewInt(1)), 1)
}

// of bounds what x can be over the box.
func (b *box) of(x *Real) enclosure {
	if x.isRatio() || x.op == written {
		return x.enclose(b.size + 128)
	}
	z, ok := b.over[x]
	if !ok {
		z = b.workOut(x)
		b.over[x] = z
	}
	return z
}

// workOut is of, from the operands; it demands what makes x analytic over the box.
func (b *box) workOut(x *Real) enclosure {
	switch x.op {
	case quotient:
		b.demand(x.y, -1, 1)
	case root:
		b.demand(x.x, 1)
	}
	var y enclosure
	if x.y != nil {
		y = b.of(x.y)
	}
	return x.op.enclose(b.of(x.x), y, b.size+128)
}

// demand spoils the box unless the sign of x is certain over it, and one of those.
func (b *box) demand(x *Real, signs ...int) {
	sign, ok := b.of(x).sign()
	for _, s := range signs {
		if ok && sign == s {
			return
		}
	}
	b.sound = false
}

// point is a random point of the box, on the grid.
func (b *box) point(random *rand.Rand, free []*Real) []*big.Rat {
	scale := new(big.Int).Lsh(big.NewInt(1), b.size-1+gridBits)
	values := make([]*big.Rat, len(free))
	for i, x := range free {
		steps := new(big.Int).SetUint64(random.Uint64() >> (128 - gridBits))
		steps.Lsh(steps, 64).Add(steps, new(big.Int).SetUint64(random.Uint64()))
		values[i] = new(big.Rat).Add(b.corner[x], new(big.Rat).SetFrac(steps, scale))
	}
	return values
}
