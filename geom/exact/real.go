package exact

// Numbers as nodes of a graph: an operation, its operands, and what has been found
// out about the value. Making a node costs one operation on intervals of floats;
// everything else about it is worked out when it is asked for, and kept.
//
// A node is made simpler where that takes no decision: ratios of machine words
// are worked out, rational factors are gathered in front (3·(2·y) = 6·y), and
// what cancels by its form alone goes (x - x, √a·√a).

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

// Real is an exact number of a Field; its value never changes.
type Real struct {
	field    *Field
	op       operation
	sign     int8  // 0 while unknown
	depth    int16 // operations on the longest way down to a number without operands
	joint    int32 // when it was made a joint (see Joint); 0: it is none
	x, y     *Real // the operands; nil where there is none
	num, den int64 // of a ratio, in lowest terms, den > 0
	bounds   interval
	height   float64 // a bound for its height over the free values (see Free)
	origin   *origin // of roots that its operands do not show
	visit    int     // the last one that counted its roots
	either   bool    // a root of which the other sign is meant in other figures
	settled  bool    // a variable that has one value in all figures, that of an angle in degrees

	// What has been found out about the value so far.
	near  enclosure
	exact *number
}

// Field is where x lives.
func (x *Real) Field() *Field { return x.field }

// Add is x + y.
func (x *Real) Add(y *Real) *Real { return x.plus(y).from(x, y) }

// Sub is x - y.
func (x *Real) Sub(y *Real) *Real { return x.minus(y).from(x, y) }

// Mul is x·y.
func (x *Real) Mul(y *Real) *Real { return x.times(y).from(x, y) }

// Div is x/y. It panics with *DivisionByZero if y is 0.
func (x *Real) Div(y *Real) *Real { return x.over(y).from(x, y) }

// Neg is -x.
func (x *Real) Neg() *Real { return x.negated().from(x, nil) }

// Sqrt is the root that is not negative. It panics with *NegativeRoot if x is
// negative.
func (x *Real) Sqrt() *Real {
	z := x.rooted()
	if x.height == 0 {
		return z
	}
	z.height = max(z.height, x.height/2)
	if z.op != root || z.x != x {
		z.trace(origin{x: x, root: true})
	}
	return z
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

// deepest bounds the depth of a node. A deeper one is written out at once (which may be
// Undecided) and keeps no operands, since whatever follows operands down calls itself.
const deepest = 10000

// node is a new node. In a rough field its interval is made narrow again.
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

// isRatio tells whether x is a fraction of machine words.
func (x *Real) isRatio() bool { return x.op == ratio }

// isInt tells whether x is the whole number n.
func (x *Real) isInt(n int64) bool {
	return x.op == ratio && x.num == n && x.den == 1
}

// plus is x + y, maybe a simpler node.
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

// minus is x - y, maybe a simpler node.
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

// unscaled is x without its rational factor.
func (x *Real) unscaled() *Real {
	if x.op == product && x.x.isRatio() {
		return x.y
	}
	return x
}

// factor is the rational factor of x.
func (x *Real) factor() *Real {
	if x.op == product && x.x.isRatio() {
		return x.x
	}
	return x.field.Int(1)
}

// times is x·y, maybe a simpler node; a rational factor comes first.
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

// square is x², maybe a simpler node.
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

// over is x/y, maybe a simpler node.
func (x *Real) over(y *Real) *Real {
	if y.IsZero() {
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

// negated is -x, maybe a simpler node. A joint keeps its form.
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

// rooted is √x, maybe a simpler node.
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
