package exact

import "math"

// The field of the cosines of all minutes has degree 2880 over the rationals: too much
// to write numbers out in it. That one is 0 is told from its conjugates modulo primes.
//
// Let K be the real field of the n-th roots of unity, and P an integer of it. A prime
// p ≡ 1 (mod n) splits completely in K: there are φ(n)/2 maps of the integers of K to the
// residues modulo p, and P is divisible by p exactly if they all send P to 0 (Washington,
// Introduction to Cyclotomic Fields, ch. 2). If P is divisible by several such primes, it
// is by their product Π. But unless P is 0, some conjugate of P/Π is at least 1, since
// their product is a whole number. So P is 0 if all its conjugates are below Π.

// proof says what has been proved of a number.
type proof int

const (
	nothingProved proof = iota
	isZero
	isNotZero
)

// conjugatesPart of the budget of a decision, one in so many, may go to its conjugates.
// In a field in which mostTooLong formulas have been too long, there is no further try.
const (
	conjugatesPart = 4
	mostTooLong    = 4
)

// provedByConjugates seeks a proof that x is 0, or that it is not. With roots beside the
// cosines, x is Σ c·y for products y of roots, and is 0 if all c are: but where a root
// hangs on others, x may be 0 and the c may not.
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

// expectedRoot is √x if that is expected and made from cosines of degrees, else nil.
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

// vanish tells whether some registers are 0, if it is tried: it must not take too long.
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

// program is what some registers of a formula are worked out from.
type program struct {
	registers []register
	results   []int
	order     uint64 // the least n such that all cosines are those of multiples of 360°/n, if not 0
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

// leastMultiple is the least common multiple, or 0 if that is too much for conjugates.
func leastMultiple(n, m int64) int64 {
	if n == 0 || m/gcd64(n, m) > mostOrder/n {
		return 0
	}
	return m / gcd64(n, m) * n
}

// mostOrder is the n of quarters of minutes, and of what is halved twice more.
const mostOrder = 360 * 60 * 16

func (r *register) hasOperands() bool { return r.op != ratio && r.op != written }

// height is the binary logarithm of a bound for the conjugates of the results; the
// bit that is added is more than the error of all the roundings.
func (p *program) height() float64 {
	height := 0.0
	for _, i := range p.results {
		height = max(height, p.registers[i].height)
	}
	return height + 1
}

// work is about what it takes to show that the results are 0, in units of the budget,
// in one of which some operations fit.
func (p *program) work() float64 {
	primes := math.Ceil(p.height() / (primeBits - 1))
	return primes * float64(len(p.registers)*len(p.conjugates())) / operationsPerUnit
}

const operationsPerUnit = 2

// conjugates are the numbers up to n/2 that are prime to n: where 2cos(360°/n) goes
// to 2cos(k·360°/n).
func (p *program) conjugates() (ks []uint64) {
	for k := uint64(1); k <= max(1, p.order/2); k++ {
		if gcd64(int64(k), int64(p.order)) == 1 {
			ks = append(ks, k)
		}
	}
	return ks
}

// vanishes tells whether all results are 0.
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

// run works the registers out where each cosine goes to its k-th conjugate.
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
