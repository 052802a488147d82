package exact

// Identities: numbers that are 0 whatever the numbers are that they are built on. The graph
// of a number is cut at some of its joints, which are points, say; above the cut it is a
// function of these. If that function is 0 everywhere near the values that the joints have,
// the number is 0.
//
// Let a box about those values be such that in it no divisor is 0 and every radicand is
// positive, as intervals prove (box.go). There the function is analytic. If it is not 0
// everywhere in the box, it is 0 at a random point of a grid of 2^gridBits steps each way
// with a chance of at most 2^(degreeBits-gridBits), where 2^degreeBits bounds the degree of
// its zeros (height.go). It is found to be exactly 0 at so many points that the chance of
// that is below 2^-certainBits. Fewer than 2^16 cuts are tried for one number: so an identity
// is wrong with a chance below 2^-80. (The points are drawn by a generator with a fixed
// seed.) That no identity is found proves nothing.

import (
	"cmp"
	"math/big"
	"math/rand/v2"
	"slices"
)

// Joint tells that other numbers are built on these, as on the coordinates of a point, so that
// the graph of numbers may be cut there.
func (f *Field) Joint(xs ...*Real) {
	f.joints++
	for _, x := range xs {
		if x = x.jointed(); x.joint == 0 && !x.isRatio() {
			x.joint = f.joints
			f.surds = f.surds || x.op == root
		}
	}
}

// jointed is what operations on x reach through x: x without sign, rational factor and root. The
// root of a ratio is left.
func (x *Real) jointed() *Real {
	for {
		switch {
		case x.op == negation || x.op == root && !x.x.isRatio():
			x = x.x
		case x.unscaled() != x:
			x = x.unscaled()
		default:
			return x
		}
	}
}

// A number with rootsWorthCutting roots may be too much for the tower. A part above a cut with
// more than mostRootsOfSection surely is.
const (
	rootsWorthCutting  = 7
	mostRootsOfSection = 14
)

// isIdentity tells whether x is 0 by an identity between joints below it; false proves nothing.
// The roots of fractions among the joints are first left as they are, then free as others.
//
// (Images of the whole graph modulo many primes would decide nothing more. That one of them
// is not 0 tells what an enclosure tells as well; and that all are 0 proves x to be 0 only when
// the primes outgrow its norm, whose length doubles with each root.)
func (x *Real) isIdentity() bool {
	if _, ok := x.enclose(seemingBits).sign(); ok {
		return false
	}
	return newSection(x, false).isIdentity() || x.field.surds && newSection(x, true).isIdentity()
}

// isIdentity cuts at the latest joints first, where the least is left above the cut, and goes
// down joint by joint.
func (s *section) isIdentity() bool {
	for looked := 0; len(s.free) > 0 && s.roots <= mostRootsOfSection && looked < mostLooked; looked += len(s.above) {
		if identity, tooLong := s.vanishes(); identity || tooLong {
			return identity
		}
		s.deepen()
	}
	return false
}

// mostLooked bounds the search: how many numbers are looked at above all cuts, and so how many
// cuts there are.
const mostLooked = 12000

// seemingBits is the precision at which a number must look like 0 before an identity is sought.
const seemingBits = 1024

// hasRoots tells whether there are that many roots below x.
func (x *Real) hasRoots(n int) bool {
	seen := map[*Real]bool{}
	var count func(x *Real)
	count = func(x *Real) {
		if x == nil || x.isRatio() || n <= 0 || seen[x] {
			return
		}
		seen[x] = true
		if x.op == root {
			n--
		}
		count(x.x)
		count(x.y)
	}
	count(x)
	return n <= 0
}

// section is the part of a number's graph that lies above a cut.
type section struct {
	x     *Real
	above map[*Real]bool
	free  []*Real // the joints at the cut, in the order in which they were reached
	roots int     // above the cut
	surds bool    // may be free
}

// newSection is what lies above the latest joints.
func newSection(x *Real, surds bool) *section {
	s := &section{x: x, above: map[*Real]bool{}, surds: surds}
	s.open(x)
	return s
}

// open takes x and what is below it into the section, down to joints.
func (s *section) open(x *Real) {
	s.above[x] = true
	if x.op == root {
		s.roots++
	}
	for _, y := range []*Real{x.x, x.y} {
		switch {
		case y == nil || y.isRatio() || s.above[y]:
		case y.joint == 0, !s.surds && y.op == root:
			s.open(y)
		case !slices.Contains(s.free, y):
			s.free = append(s.free, y)
		}
	}
}

// deepen moves the cut below the joints that were made last.
func (s *section) deepen() {
	last := slices.MaxFunc(s.free, func(x, y *Real) int { return cmp.Compare(x.joint, y.joint) }).joint
	latest := s.free
	s.free = nil
	for _, x := range latest {
		if x.joint < last {
			s.free = append(s.free, x)
		}
	}
	for _, x := range latest {
		if x.joint == last && !s.above[x] {
			s.open(x)
		}
	}
}

// vanishes tells whether x is 0 for all values of the free joints near their own. If tooLong,
// deeper cuts need not be tried.
func (s *section) vanishes() (identity, tooLong bool) {
	box, ok := s.box()
	if !ok {
		return false, false
	}
	random := rand.New(rand.NewPCG(uint64(len(s.above)), uint64(s.x.field.joints)))
	for certain := 0.0; certain < certainBits; {
		zero, degreeBits, err := s.isZeroAt(box.point(random, s.free))
		if !zero || degreeBits > gridBits-fewestBits {
			return false, zero || err != nil
		}
		certain += gridBits - degreeBits
	}
	return true, false
}

// The chance of a wrong identity is below 2^-certainBits for each cut.
const (
	certainBits = 96
	gridBits    = 72
	fewestBits  = 8 // that one point must add
)

// isZeroAt tells whether x is exactly 0 where the free joints have other
// values, and bounds the degree of its zeros.
func (s *section) isZeroAt(values []*big.Rat) (zero bool, degreeBits float64, err error) {
	f := NewField()
	f.Limit(workOfSection)
	c := copier{to: f, made: map[*Real]*Real{}, portable: true}
	for i, x := range s.free {
		c.made[x] = f.Free(values[i])
	}
	err = Try(func() {
		y := c.copy(s.x)
		zero = c.portable && y.IsZero()
	})
	return zero, f.Vanished(), err
}

// workOfSection is what an exact decision above a cut may cost.
const workOfSection = 40_000_000

// copier builds numbers anew in another field. A number that has no operands and stands over
// roots of its tower is not portable.
type copier struct {
	to       *Field
	made     map[*Real]*Real
	portable bool
}

func (c *copier) copy(x *Real) *Real {
	if x.isRatio() {
		return c.to.ratio(x.num, x.den)
	}
	y, ok := c.made[x]
	if !ok {
		y = c.build(x)
		c.made[x] = y
	}
	return y
}

func (c *copier) build(x *Real) *Real {
	switch x.op {
	case sum:
		return c.copy(x.x).Add(c.copy(x.y))
	case difference:
		return c.copy(x.x).Sub(c.copy(x.y))
	case product:
		return c.copy(x.x).Mul(c.copy(x.y))
	case quotient:
		return c.copy(x.x).Div(c.copy(x.y))
	case negation:
		return c.copy(x.x).Neg()
	case root:
		return c.copy(x.x).Sqrt()
	}
	if x.exact.num.level > baseLevels {
		c.portable = false
		return c.to.Int(0)
	}
	return c.to.written(c.to.tower.fraction(x.exact.num, x.exact.den))
}
