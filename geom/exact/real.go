// Package exact does arithmetic in the constructible numbers without error,
// and in those that the cosines of degrees and minutes generate with them.
//
// A number is a lazy node: an operation and its operands, with an interval of
// floats that holds the value. Most signs are read off the interval; only when
// it cannot tell is the number written out in a tower of square roots, where
// being 0 is a matter of form; or, if it is made from cosines of degrees, its conjugates
// are divided by primes. Where that would be too long, it is tried whether
// the number is 0 whatever the numbers are that it is built on (see Joint). No
// verdict is ever a guess: a number is 0 only if its exact form is or its conjugates
// prove it, or by such an identity, which is wrong with a chance below 2^-80; it is
// positive or negative only if an enclosure says so; and a decision that would cost too
// much panics with *Undecided. (Only a rough field, which its maker has asked for, takes
// floats at their word.)
package exact

import (
	"math/big"
)

// Field is the world of one figure's numbers. Not safe for concurrent use;
// different fields are independent.
type Field struct {
	tower   *tower
	roots   map[int64]*Real          // of square-free whole numbers, each once
	cosines map[angle][2]*Real       // by angle, each once
	turns   map[*Real]scaledCosine   // what is known to be a multiple of a cosine
	fine    bool                     // some cosine is none of whole degrees or their halves
	formula *formula                 // of numbers made from these
	tooLong int                      // such formulas
	splits  map[uint64][]*splitPrime // by n
	lengths []*Real                  // see Expect
	golden  *Real                    // √(10 + 2√5), once needed
	pi      enclosure
	account account
	most    int  // that one decision may cost
	spent   bool // some decision would have cost the tower too much
	luck    int  // identities found, less those sought in vain
	joints  int32
	surds   bool   // roots of fractions are among the joints
	trust   uint   // bits of an enclosure that are taken at their word; 0: none are
	free    degree // what has vanished, of numbers made from free values
	loose   *looseAngles
	rough   bool // takes what floats cannot tell from 0 for 0
	notes   *Notes
}

// NewField is an empty field: the rationals, growing as roots are taken.
func NewField() *Field {
	return &Field{tower: newTower(), roots: map[int64]*Real{}, cosines: map[angle][2]*Real{}, turns: map[*Real]scaledCosine{}, splits: map[uint64][]*splitPrime{}, most: mostWork}
}

// NewRoughField is an empty field that takes a number for 0 when its interval
// of floats cannot tell it from 0. It serves to compare choices quickly before one of
// them is worked out in a true field; nothing that it says may be told to a user.
func NewRoughField() *Field {
	f := NewField()
	f.rough = true
	return f
}

// Trust makes the field take a number for 0 when an enclosure of that many bits
// cannot tell it from 0, until Trust(0) makes it exact again. It is for random
// positions, where a number that is not 0 is so small by a chance of the order
// of 2^-bits only; numbers keep their exact meaning.
func (f *Field) Trust(bits uint) { f.trust = bits }

// Limit lowers what a decision of the field may cost, in products of two
// machine words: some 10 ns each. What costs more is Undecided, and so is
// what a figure or a claim comes to in the end, by a multiple of that (see account).
func (f *Field) Limit(work int) { f.most = min(work, mostWork) }

// operation says how a node got its value from its operands.
type operation uint8

const (
	ratio      operation = iota // num/den
	written                     // no operands: the exact form is all there is
	sum                         // x + y
	difference                  // x - y
	product                     // x · y
	quotient                    // x / y, where y ≠ 0
	negation                    // -x
	root                        // √x, where x > 0
	variable                    // no operands: a free value of a field that keeps formulas
)

// Real is an exact number of a Field; it never changes.
type Real struct {
	field    *Field
	op       operation
	sign     int8  // 0 while unknown
	depth    int16 // operations on the longest way down to a ratio
	joint    int32 // when it was made a joint; 0: it is none
	x, y     *Real
	num, den int64 // of a ratio, in lowest terms, den > 0
	bounds   interval
	height   float64 // at least its height over the free values, see Free
	origin   *origin // where the operands do not tell
	visit    int     // the last one that counted its roots
	either   bool    // a root of which the other sign is meant in other figures
	settled  bool    // a variable that has one value in all figures, that of an angle in degrees

	// What has been found out about the value so far.
	near  enclosure
	exact *number
}

// Int is a whole number.
func (f *Field) Int(n int64) *Real { return f.ratio(n, 1) }

// Rat is a fraction.
func (f *Field) Rat(r *big.Rat) *Real {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		return f.ratio(r.Num().Int64(), r.Denom().Int64())
	}
	num := constant(whole(new(big.Int).Set(r.Num())))
	return f.written(f.tower.fraction(num, whole(new(big.Int).Set(r.Denom()))))
}

// ratio is num/den, which must be in lowest terms.
func (f *Field) ratio(num, den int64) *Real {
	return &Real{field: f, num: num, den: den, bounds: ratioInterval(num, den)}
}

// reduced is num/den for den ≠ 0; nil if lowest terms with a positive
// denominator do not fit.
func (f *Field) reduced(num, den int64) *Real {
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd64(num, den)
	if g <= 0 || den < 0 || num == -num && num != 0 {
		return nil
	}
	return f.ratio(num/g, den/g)
}

// written is a node for a number of the tower.
func (f *Field) written(n *number) *Real {
	x := &Real{field: f, op: written, exact: n, bounds: everything}
	x.near = n.enclose(64)
	x.bounds = x.near.interval()
	if n.isZero() {
		return f.Int(0)
	}
	return x
}

// deepest is how many operations may hang below a node before its exact form
// is worked out at once: what follows the operands down calls itself.
const deepest = 10000

func (f *Field) node(op operation, x, y *Real, bounds interval) *Real {
	if f.rough {
		if op == sum || op == difference {
			bounds = bounds.cancelled(x.bounds, y.bounds)
		}
		return &Real{field: f, op: op, x: x, y: y, bounds: bounds.settled(), depth: 1}
	}
	z := &Real{field: f, op: op, x: x, y: y, bounds: bounds, depth: x.depth + 1}
	if y != nil && y.depth >= z.depth {
		z.depth = y.depth + 1
	}
	if z.depth > deepest {
		return f.written(z.form())
	}
	return z
}

// Field is where x lives.
func (x *Real) Field() *Field { return x.field }

func (x *Real) isRatio() bool { return x.op == ratio }
func (x *Real) isInt(n int64) bool {
	return x.op == ratio && x.num == n && x.den == 1
}

func (x *Real) plus(y *Real) *Real {
	switch {
	case x.isInt(0):
		return y
	case y.isInt(0):
		return x
	case x.isRatio() && y.isRatio():
		if z := x.addRatio(y); z != nil {
			return z
		}
	case y.op == negation:
		return x.Sub(y.x)
	case x.unscaled() == y.unscaled():
		return x.factor().Add(y.factor()).Mul(x.unscaled())
	}
	return x.field.node(sum, x, y, x.bounds.add(y.bounds))
}

// addRatio is x + y for ratios; nil if that does not fit.
func (x *Real) addRatio(y *Real) *Real {
	a, ok1 := mul64(x.num, y.den)
	b, ok2 := mul64(y.num, x.den)
	den, ok3 := mul64(x.den, y.den)
	if num := a + b; ok1 && ok2 && ok3 && (num > a) == (b > 0) {
		return x.field.reduced(num, den)
	}
	return nil
}

func (x *Real) minus(y *Real) *Real {
	switch {
	case x == y:
		return x.field.Int(0)
	case y.isInt(0):
		return x
	case x.isInt(0):
		return y.Neg()
	case x.isRatio() && y.isRatio():
		if z := x.addRatio(y.Neg()); z != nil {
			return z
		}
	case y.op == negation:
		return x.Add(y.x)
	case x.unscaled() == y.unscaled():
		return x.factor().Sub(y.factor()).Mul(x.unscaled())
	}
	return x.field.node(difference, x, y, x.bounds.sub(y.bounds))
}

// unscaled is x without a factor that is a ratio; factor is that factor.
func (x *Real) unscaled() *Real {
	if x.op == product && x.x.isRatio() {
		return x.y
	}
	return x
}

func (x *Real) factor() *Real {
	if x.op == product && x.x.isRatio() {
		return x.x
	}
	return x.field.Int(1)
}

func (x *Real) times(y *Real) *Real {
	if y.isRatio() {
		x, y = y, x
	}
	switch {
	case x.isInt(0):
		return x
	case x.isInt(1):
		return y
	case x.isInt(-1):
		return y.Neg()
	case x.isRatio() && y.isRatio():
		if z := x.mulRatio(y.num, y.den); z != nil {
			return z
		}
	case x.isRatio() && y.op == product && y.x.isRatio():
		if z := x.mulRatio(y.x.num, y.x.den); z != nil {
			return z.from(x, y.x).Mul(y.y)
		}
	case x == y:
		return x.square()
	case x.op == root && y.op == root && x.x == y.x:
		return x.x
	}
	return x.field.node(product, x, y, x.bounds.mul(y.bounds))
}

// mulRatio is x·num/den for a ratio x; nil if that does not fit.
func (x *Real) mulRatio(num, den int64) *Real {
	n, ok1 := mul64(x.num, num)
	d, ok2 := mul64(x.den, den)
	if ok1 && ok2 {
		return x.field.reduced(n, d)
	}
	return nil
}

func (x *Real) square() *Real {
	switch {
	case x.op == root:
		return x.x
	case x.op == product && x.x.isRatio():
		return x.x.Mul(x.x).Mul(x.y.Mul(x.y))
	case x.op == negation:
		return x.x.square()
	}
	return x.field.node(product, x, x, x.bounds.square())
}

func (x *Real) over(y *Real) *Real {
	if y.Sign() == 0 {
		panic(&DivisionByZero{})
	}
	switch {
	case x.isInt(0):
		return x
	case x == y:
		return x.field.Int(1)
	case y.isRatio():
		if inverse := x.field.reduced(y.den, y.num); inverse != nil {
			return inverse.Mul(x)
		}
	case x.op == root && y.op == root && x.x == y.x:
		return x.field.Int(1)
	}
	return x.field.node(quotient, x, y, x.bounds.div(y.bounds))
}

func (x *Real) negated() *Real {
	switch {
	case x.isRatio() && x.num != -x.num || x.isInt(0):
		return x.field.ratio(-x.num, x.den)
	case x.op == negation:
		return x.x
	case x.op == product && x.x.isRatio():
		return x.x.Neg().Mul(x.y)
	case x.op == difference && x.joint == 0:
		return x.field.node(difference, x.y, x.x, x.bounds.neg())
	}
	return x.field.node(negation, x, nil, x.bounds.neg())
}

// Abs is x or -x, whichever is not negative.
func (x *Real) Abs() *Real {
	if n := x.field.notes; n != nil {
		if n.isZero(x) {
			return x.field.Int(0)
		}
		return x.Mul(x).Sqrt()
	}
	if x.Sign() < 0 {
		return x.Neg()
	}
	return x
}

// MulInt is n times x.
func (x *Real) MulInt(n int64) *Real { return x.field.Int(n).Mul(x) }

func (x *Real) rooted() *Real {
	switch x.Sign() {
	case -1:
		panic(&NegativeRoot{})
	case 0:
		return x.field.Int(0)
	}
	switch {
	case x.isRatio():
		if z := x.ratioRoot(); z != nil {
			return z
		}
	case x.op == product && x.x == x.y && x.field.notes == nil:
		return x.x.Abs()
	case x.op == product && x.x.isRatio():
		if r := x.x.ratioSquareRoot(); r != nil {
			return r.Mul(x.y.Sqrt())
		}
	}
	if n := x.field.notes; n != nil {
		z := x.field.node(root, x, nil, x.bounds.sqrt())
		n.Roots = append(n.Roots, z)
		return z
	}
	if z := x.expectedRoot(); z != nil {
		return z
	}
	return x.field.node(root, x, nil, x.bounds.sqrt())
}

// ratioSquareRoot is the root of a ratio if that is a ratio, else nil.
func (x *Real) ratioSquareRoot() *Real {
	n, ok1 := integer{k: x.num}.sqrt()
	d, ok2 := integer{k: x.den}.sqrt()
	if ok1 && ok2 {
		return x.field.ratio(n.k, d.k)
	}
	return nil
}

// ratioRoot is √(num/den) = s√m/den with num·den = s²m; nil if that does not
// fit.
func (x *Real) ratioRoot() *Real {
	n, ok := mul64(x.num, x.den)
	if !ok {
		return nil
	}
	s, m := integer{k: n}.squarePart()
	factor := x.field.reduced(s.k, x.den)
	if factor == nil {
		return nil
	}
	return factor.Mul(x.field.wholeRoot(m.k))
}

// wholeRoot is √m, one node for each m.
func (f *Field) wholeRoot(m int64) *Real {
	if m == 1 {
		return f.Int(1)
	}
	z := f.roots[m]
	if z == nil {
		x := f.Int(m)
		z = f.node(root, x, nil, x.bounds.sqrt())
		f.roots[m] = z
	}
	return z
}
