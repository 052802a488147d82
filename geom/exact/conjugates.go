package exact

// Proofs by conjugates: whether a number made from cosines of degrees is 0. The field of
// the cosines of all minutes has degree 2880 over the rationals, which is too much to
// write numbers out in.
//
// Let K be the real field of the n-th roots of unity, and P an integer of it. A prime
// p ≡ 1 (mod n) splits completely in K. There are φ(n)/2 maps of the integers of K to the
// residues modulo p, and p divides P exactly if they all send P to 0 (Washington,
// Introduction to Cyclotomic Fields, ch. 2; from memory). If several such primes
// divide P, their product Π does. Then P/Π is an integer of K; and unless it is 0, some
// conjugate of it is at least 1 in size, since the product of all is a whole number. So
// P is 0 if Π is more than a bound for the conjugates of P. And if one map sends P to
// something else than 0, P is not 0.
//
// Either is a proof: no chance is in it. P is found as the numerator of a number
// (fraction.go), in a formula of sums and products (formula.go) that is run modulo the
// primes (splitprime.go).

import "math"

// proof says what has been proved of a number.
type proof int

const (
	nothingProved proof = iota
	isZero
	isNotZero
)

// One part in conjugatesPart of the budget of a decision may go to the conjugates of a
// number. Once mostTooLong formulas of a field have been too long, none is tried any more.
const (
	conjugatesPart = 4
	mostTooLong    = 4
)

// provedByConjugates seeks a proof that x is 0, or that it is not. With roots beside the
// cosines, the numerator of x is Σ c·y for products y of roots. It is 0 if all c are. But
// where a root hangs on others it may be 0 although some c is not, so that this proves
// nothing.
func (x *Real) provedByConjugates() proof {
	if x.field.tooLong == mostTooLong {
		return nothingProved
	}
	f := x.field.writtenFormula()
	var numerator *expansion
	if x.field.spend(conjugatesPart, func() { numerator = f.fractionOf(x).num }) != nil {
		x.field.tooLong++
		return nothingProved
	}
	zero, tried := f.vanish(numerator.coefficients())
	switch {
	case zero:
		return isZero
	case tried && numerator.level == 0:
		return isNotZero
	}
	return nothingProved
}

// Expect tells that roots may turn out to be these positive numbers, as lengths are in
// a triangle that is given by angles.
func (f *Field) Expect(lengths ...*Real) { f.lengths = append(f.lengths, lengths...) }

// expectedRoot is √x if that is proved to be an expected number, else nil. It is sought
// only where some cosine is none of whole degrees or their halvings.
func (x *Real) expectedRoot() *Real {
	f := x.field
	if !f.fine || f.rough || f.trust > 0 {
		return nil
	}
	for _, z := range f.lengths {
		d := x.Sub(z.Mul(z))
		if _, known := d.bounds.sign(); !known && d.provedByConjugates() == isZero {
			d.settle(0)
		}
		if d.isInt(0) {
			d.Sign() // so that it is counted where there are free values
			return z
		}
	}
	return nil
}

// vanish tells whether some registers are 0, if it is tried: not if it would take too long.
func (f *formula) vanish(registers []int) (zero, tried bool) {
	p := f.program(registers)
	work := p.work()
	if p.order == 0 || work > float64(f.field.most/conjugatesPart) {
		return false, false
	}
	if zero = p.vanishes(f.field); zero {
		f.field.account.worked += int(work)
	}
	return zero, true
}

// program is those lines of a formula that some results hang on.
type program struct {
	registers []register
	results   []int
	order     uint64 // the least n such that all cosines are those of multiples of 360°/n; 0 if that is too large
}

// program leaves out of f what the results do not hang on.
func (f *formula) program(results []int) *program {
	used := make([]bool, len(f.registers))
	for _, i := range results {
		used[i] = true
	}
	for i := len(used) - 1; i >= 0; i-- {
		if r := &f.registers[i]; used[i] && r.hasOperands() {
			used[r.x], used[r.y] = true, true
		}
	}
	p, order, at := &program{}, int64(1), make([]int, len(used))
	for i, r := range f.registers {
		switch {
		case !used[i]:
			continue
		case r.hasOperands():
			r.x, r.y = at[r.x], at[r.y]
		case r.op == written:
			order = leastMultiple(order, r.angle.den)
		}
		at[i] = len(p.registers)
		p.registers = append(p.registers, r)
	}
	for _, i := range results {
		p.results = append(p.results, at[i])
	}
	p.order = uint64(order)
	return p
}

// leastMultiple is the least common multiple; 0 if that is above mostOrder.
func leastMultiple(n, m int64) int64 {
	if n == 0 || m/gcd64(n, m) > mostOrder/n {
		return 0
	}
	return m / gcd64(n, m) * n
}

// mostOrder is the order of quarters of minutes, halved twice more.
const mostOrder = 360 * 60 * 16

func (r *register) hasOperands() bool { return r.op != ratio && r.op != written }

// height is the binary logarithm of a bound for the conjugates of the results. The bit
// that is added is more than all roundings of floats come to.
func (p *program) height() float64 {
	height := 0.0
	for _, i := range p.results {
		height = max(height, p.registers[i].height)
	}
	return height + 1
}

// work is about what it costs to show that the results are 0, in units of the budget.
func (p *program) work() float64 {
	primes := math.Ceil(p.height() / (primeBits - 1))
	return primes * float64(len(p.registers)*len(p.conjugates())) / operationsPerUnit
}

// operationsPerUnit is how many operations modulo a prime cost one unit of the budget.
const operationsPerUnit = 2

// conjugates are the k that stand for the conjugates of the field, in which 2cos(360°/n) goes
// to 2cos(k·360°/n): the numbers up to n/2 that are prime to n.
func (p *program) conjugates() (ks []uint64) {
	for k := uint64(1); k <= max(1, p.order/2); k++ {
		if gcd64(int64(k), int64(p.order)) == 1 {
			ks = append(ks, k)
		}
	}
	return ks
}

// vanishes tells whether all results are 0: they are sent to 0 modulo primes whose product
// is greater than the conjugates of any could be.
func (p *program) vanishes(f *Field) bool {
	shown := 0.0
	for s := range f.splitPrimes(p.order) {
		if shown += math.Log2(float64(s.p)); !p.vanishesModulo(s) {
			return false
		}
		if shown > p.height() {
			break
		}
	}
	return true
}

// vanishesModulo tells whether all maps to residues modulo s send the results to 0.
func (p *program) vanishesModulo(s *splitPrime) bool {
	values := make([]uint64, len(p.registers))
	for i, r := range p.registers {
		if r.op == ratio {
			values[i] = s.residue(r.n)
		}
	}
	for _, k := range p.conjugates() {
		p.run(s, k, values)
		for _, i := range p.results {
			if values[i] != 0 {
				return false
			}
		}
	}
	return true
}

// run works the registers out modulo s, where each cosine goes to its k-th conjugate.
func (p *program) run(s *splitPrime, k uint64, values []uint64) {
	for i := range p.registers {
		switch r := &p.registers[i]; r.op {
		case written:
			values[i] = s.cosines[uint64(r.angle.num)*(p.order/uint64(r.angle.den))%p.order*k%p.order]
		case sum:
			values[i] = s.add(values[r.x], values[r.y])
		case difference:
			values[i] = s.sub(values[r.x], values[r.y])
		case negation:
			values[i] = s.sub(0, values[r.x])
		case product:
			values[i] = s.mul(values[r.x], values[r.y])
		}
	}
}
