package exact

// Formulas: straight-line programs, which work numbers out from whole numbers and doubled
// cosines by sums and products alone. Each line is an algebraic integer of the real field of
// some roots of unity, with a bound for its conjugates: |a ± b| ≤ |a| + |b|, |ab| = |a||b|
// and |2cos| ≤ 2 hold of all of them.

import (
	"math"
	"math/big"
)

// formula is a list of lines without repetition, and what numbers have become in it.
type formula struct {
	field     *Field
	registers []register
	known     map[line]int
	constants map[string]int // by their digits
	cosines   map[turn]int
	fractions map[*Real]fraction // the numbers that have been worked out
	roots     []adjoined
}

// line is an operation on two registers.
type line struct {
	op   operation
	x, y int
}

// register is the result of a line, with a bound for it. Those without operands are a ratio,
// which is the whole number n, and a written one, which is 2cos of an angle.
type register struct {
	line
	n       integer
	angle   turn
	height  float64   // the binary logarithm of a bound for the conjugates
	near    enclosure // once asked
	factors []factor  // once asked
}

// turn is a fraction of 360°, from 0 to 1.
type turn struct{ num, den int64 }

// turnOf is an angle in degrees, as a fraction of a turn.
func turnOf(degrees *big.Rat) turn {
	r := new(big.Rat).Quo(degrees, big.NewRat(360, 1))
	r.Sub(r, new(big.Rat).SetInt(wholePart(r)))
	return turn{r.Num().Int64(), r.Denom().Int64()}
}

// mostRegisters is the length at which a formula is given up.
const mostRegisters = 20000

// writtenFormula is the field's formula, begun anew once it has become long.
func (f *Field) writtenFormula() *formula {
	if f.formula == nil || len(f.formula.registers) > mostRegisters/2 {
		f.formula = &formula{
			field:     f,
			known:     map[line]int{},
			constants: map[string]int{},
			cosines:   map[turn]int{},
			fractions: map[*Real]fraction{},
		}
	}
	return f.formula
}

// add is a new register.
func (f *formula) add(r register) int {
	if len(f.registers) > mostRegisters {
		panic(&exhausted{"too long a formula"})
	}
	f.registers = append(f.registers, r)
	return len(f.registers) - 1
}

// constant is the register of a whole number.
func (f *formula) constant(n integer) int {
	digits := n.big().String()
	r, ok := f.constants[digits]
	if !ok {
		height := math.Inf(-1)
		if n.sign() != 0 {
			height = float64(n.abs().sub(one).bitLen())
		}
		r = f.add(register{line: line{op: ratio}, n: n, height: height})
		f.constants[digits] = r
	}
	return r
}

// doubleCosine is 2cos of an angle.
func (f *formula) doubleCosine(angle turn) int {
	r, ok := f.cosines[angle]
	if !ok {
		r = f.add(register{line: line{op: written}, angle: angle, height: 1})
		f.cosines[angle] = r
	}
	return r
}

// isConstant tells whether register x is the whole number n.
func (f *formula) isConstant(x int, n int64) bool {
	r := &f.registers[x]
	return r.op == ratio && r.n.wide == nil && r.n.k == n
}

// operate is the register of an operation, a new one only if there is none.
func (f *formula) operate(op operation, x, y int) int {
	l := line{op, x, y}
	r, ok := f.known[l]
	if !ok {
		r = f.add(register{line: l, height: heightOf(op, f.registers[x].height, f.registers[y].height)})
		f.known[l] = r
	}
	return r
}

// heightOf is the height of a result, from those of the operands.
func heightOf(op operation, x, y float64) float64 {
	switch op {
	case product:
		return x + y
	case negation:
		return x
	}
	return logOfSum(x, y)
}

// logOfSum is log₂(2^a + 2^b).
func logOfSum(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	if math.IsInf(b, -1) {
		return a
	}
	return a + math.Log2(1+math.Exp2(b-a))
}

func (f *formula) sum(x, y int) int {
	switch {
	case f.isConstant(x, 0):
		return y
	case f.isConstant(y, 0):
		return x
	case f.areConstant(x, y):
		return f.constant(f.registers[x].n.add(f.registers[y].n))
	case f.registers[y].op == negation:
		return f.difference(x, f.registers[y].x)
	case f.registers[x].op == negation:
		return f.difference(y, f.registers[x].x)
	}
	return f.operate(sum, min(x, y), max(x, y))
}

func (f *formula) difference(x, y int) int {
	switch {
	case x == y:
		return f.constant(integer{})
	case f.isConstant(y, 0):
		return x
	case f.isConstant(x, 0):
		return f.negative(y)
	case f.areConstant(x, y):
		return f.constant(f.registers[x].n.sub(f.registers[y].n))
	case f.registers[y].op == negation:
		return f.sum(x, f.registers[y].x)
	case f.registers[x].op == negation:
		return f.negative(f.sum(f.registers[x].x, y))
	case x > y:
		return f.negative(f.operate(difference, y, x))
	}
	return f.operate(difference, x, y)
}

func (f *formula) product(x, y int) int {
	switch {
	case f.isConstant(x, 0), f.isConstant(y, 1):
		return x
	case f.isConstant(y, 0), f.isConstant(x, 1):
		return y
	case f.areConstant(x, y):
		return f.constant(f.registers[x].n.mul(f.registers[y].n))
	case f.registers[x].op == negation:
		return f.negative(f.product(f.registers[x].x, y))
	case f.registers[y].op == negation:
		return f.negative(f.product(x, f.registers[y].x))
	}
	return f.operate(product, min(x, y), max(x, y))
}

func (f *formula) negative(x int) int {
	switch r := f.registers[x]; r.op {
	case negation:
		return r.x
	case ratio:
		return f.constant(r.n.neg())
	}
	return f.operate(negation, x, x)
}

func (f *formula) areConstant(x, y int) bool {
	return f.registers[x].op == ratio && f.registers[y].op == ratio
}

// enclose bounds the value of a register.
func (f *formula) enclose(x int) enclosure {
	r := &f.registers[x]
	if r.near.isEverything() {
		r.near = f.workOutEnclosure(*r)
	}
	return r.near
}

// signBits is the precision at which the sign of a divisor must show.
const signBits = 256

// workOutEnclosure is enclose for a register that has not been asked for.
func (f *formula) workOutEnclosure(r register) enclosure {
	switch {
	case r.hasOperands():
		return r.op.enclose(f.enclose(r.x), f.enclose(r.y), signBits)
	case r.op == ratio:
		return encloseInteger(r.n, signBits)
	}
	degrees := new(big.Rat).Mul(big.NewRat(r.angle.num, r.angle.den), big.NewRat(360, 1))
	cos, _ := f.field.fixedCosSin(degrees)
	return cos.enclose(signBits).mul(encloseInteger(integer{k: 2}, signBits), signBits)
}

// sign is that of a register that is not 0.
func (f *formula) sign(x int) int {
	s, ok := f.enclose(x).sign()
	if !ok || s == 0 {
		panic(&exhausted{"the sign of a divisor"})
	}
	return s
}
