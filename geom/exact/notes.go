package exact

import "math/big"

// NewFormulaField is a rough field in which numbers that are made from free values keep
// their formulas, and which notes what it is asked of them. There are no magnitudes in
// it: |x| is √(x²), so that which sign is taken is a matter of roots alone. Angles in degrees
// are loose, at their own places but for some 10^-9.
func NewFormulaField() *Field {
	f := NewRoughField()
	f.notes = &Notes{}
	f.Loosen(func(near *big.Rat) *big.Rat { return near })
	return f
}

// Notes are what a field that keeps formulas has been asked since they were taken last.
type Notes struct {
	Zero  []*Real // decided to be 0
	Moved []*Real // decided not to be 0, where that is all that was asked
	Sides []*Real // decided to be positive; what is negative is noted by its opposite
	Ways  []*Real // decided to be positive: how angles turn
	Roots []*Real // taken
	Bent  []*Real // on which it hangs that they are not 0 but at special positions
	Sure  []*Real // positive in every figure of the source
	Must  []*Real // 0 in every figure of the source
	Loose bool    // something was decided by more than these tell
}

// Add adds other notes.
func (n *Notes) Add(m *Notes) {
	n.Zero = append(n.Zero, m.Zero...)
	n.Moved = append(n.Moved, m.Moved...)
	n.Sides = append(n.Sides, m.Sides...)
	n.Ways = append(n.Ways, m.Ways...)
	n.Bent = append(n.Bent, m.Bent...)
	n.Roots = append(n.Roots, m.Roots...)
	n.Sure = append(n.Sure, m.Sure...)
	n.Must = append(n.Must, m.Must...)
	n.Loose = n.Loose || m.Loose
}

// Take is the notes since the last time; nil where the field keeps no formulas.
func (f *Field) Take() *Notes {
	if f.notes == nil {
		return nil
	}
	n := *f.notes
	*f.notes = Notes{}
	return &n
}

// KeepsFormulas tells whether the field does.
func (f *Field) KeepsFormulas() bool { return f.notes != nil }

// Sure tells a field that keeps formulas that x is positive in every figure of the
// source, and not just here.
func (x *Real) Sure() {
	if n := x.field.notes; n != nil {
		n.Sure = append(n.Sure, x)
	}
}

// Demand runs what must hold in every figure of the source, of which a field that keeps
// formulas notes that it does.
func (f *Field) Demand(run func() error) error {
	if f.notes == nil {
		return run()
	}
	kept := *f.notes
	*f.notes = Notes{}
	err := run()
	n := *f.notes
	n.Sure, n.Must = append(append(n.Sure, n.Sides...), n.Ways...), append(n.Must, n.Zero...)
	n.Sides, n.Ways, n.Zero, n.Loose = nil, nil, nil, false
	*f.notes = kept
	f.notes.Add(&n)
	return err
}

// Noted is what has been noted since the last time, and Forget goes back to that: what was
// asked of a place that is not taken then says nothing of any figure.
func (f *Field) Noted() Notes {
	if f.notes == nil {
		return Notes{}
	}
	return *f.notes
}

// Forget takes back what has been noted since.
func (f *Field) Forget(since Notes) {
	if f.notes != nil {
		*f.notes = since
	}
}

// Ahead tells whether x, the cosine of an angle times something positive, is positive.
func (x *Real) Ahead() bool {
	n := x.field.notes
	if n == nil {
		return x.Sign() > 0
	}
	s := x.seemingSign()
	if s > 0 && !x.isRatio() {
		n.Ways = append(n.Ways, x)
	}
	return s > 0
}

// Choice is the sign of x where what is made hangs on it by more than a root.
func (x *Real) Choice() int {
	n := x.field.notes
	if n == nil {
		return x.Sign()
	}
	return n.decide(x, &n.Ways)
}

// Bends tells a field that keeps formulas that what is decided hangs on x not being 0, but at special
// positions.
func (x *Real) Bends() {
	if n := x.field.notes; n != nil {
		n.Bent = append(n.Bent, x)
	}
}

// Unsure tells a field that keeps formulas that more was decided than it can note.
func (f *Field) Unsure() {
	if f.notes != nil {
		f.notes.Loose = true
	}
}

// EitherSqrt is the root of x for places of which other figures of the source may have the
// one with its opposite.
func (x *Real) EitherSqrt() *Real {
	z := x.Sqrt()
	if x.field.notes != nil {
		z.unscaled().either = true
	}
	return z
}

// Signed is x, or what x is the size of, as a float: it changes its sign where x, taken as it is now,
// would.
func (x *Real) Signed() float64 {
	if x.op == root && x.x.op == product && x.x.x == x.x.y {
		x = x.x.x
	}
	return x.bounds.float()
}

func (f *Field) variable(r *big.Rat) *Real {
	v := f.Rat(r)
	return &Real{field: f, op: variable, bounds: v.bounds, exact: v.exactly()}
}

// sign notes the sign of x.
func (n *Notes) sign(x *Real) int { return n.decide(x, &n.Sides) }

// decide notes the sign of x, among others or as a 0.
func (n *Notes) decide(x *Real, among *[]*Real) int {
	s := x.seemingSign()
	switch {
	case x.isRatio():
	case s == 0:
		n.Zero = append(n.Zero, x)
	case s > 0:
		*among = append(*among, x)
	default:
		*among = append(*among, x.Neg())
	}
	return s
}

// isZero notes whether x is 0.
func (n *Notes) isZero(x *Real) bool {
	if x.seemingSign() != 0 && !x.isRatio() {
		n.Moved = append(n.Moved, x)
		return false
	}
	return n.sign(x) == 0
}

// seemingSign is the sign of x, 0 where its terms nearly cancel: what is taken for 0 is
// a formula that is tried.
func (x *Real) seemingSign() int {
	s, _ := x.bounds.sign()
	if x.op == sum || x.op == difference {
		if size := x.x.bounds.size() + x.y.bounds.size(); x.bounds.size() < 1e-9*size {
			return 0
		}
	}
	return s
}

func (x interval) size() float64 { return max(-x.lo, x.hi, 0) }

// float is a float of x, about in its middle.
func (x interval) float() float64 { return x.lo + (x.hi-x.lo)/2 }
