package exact

import (
	"math/rand/v2"
	"slices"
)

// Sides is on which sides of what a figure may lie on equations hold.
type Sides uint8

// The findings.
const (
	Unknown Sides = iota // nothing was found out
	All                  // wherever the figure lies
	Hangs                // on one side of something, and nothing tells that no figure lies on the other
)

// HoldingSides tells on which sides equations hold that hold in one figure; figure is what
// the making of the figure was decided by, claim what the equations were. It spends some of the
// work that is left.
//
// Another figure of the source has the same formulas, but for the signs of roots, |x|
// being √(x²). A root that is no square in the field of what is before it can be flipped by
// an automorphism of the field, which keeps equations: such flips do not matter. Any
// other is equal to something that has another sign elsewhere: for each set of such
// flips, either the equations hold as well, and angles turn the same way, or there is no
// figure with it. There is none if a product of numbers that are positive in each
// figure, such as lengths, sums of squares and what the source says, is -1 times a square.
//
// All of this is seen modulo primes, at random values of what is free and with random
// signs of roots. What is 0 in all of samples is 0 always: each sample shows a number that
// is not with a chance near to 1 for values, and of 2^-n for signs, n being how many
// signs it hangs on at once, which seldom are more than three.
func HoldingSides(figure, claim *Notes, left *int) Sides {
	if claim.Loose || figure.Loose {
		return Unknown
	}
	b := &branches{figure: figure, claim: claim, left: min(*left, mostOfClaim), random: rand.New(rand.NewPCG(uint64(len(claim.Zero)), 1))}
	all := b.left
	defer func() { *left -= all - b.left }()
	b.write(nil)
	switch free, ok := b.areFree(); {
	case !ok:
		return Unknown
	case free && len(b.sides)+len(b.ways) == 0:
		return All
	}
	flips := b.sensitive()
	if len(flips) > mostFlips {
		return Unknown
	}
	b.write(flips)
	return b.judge()
}

// branches is the state of a search for signs on which equations hang.
type branches struct {
	*sheet
	figure, claim *Notes
	random        *rand.Rand
	flips         []*Real // roots whose signs are set
	cut           int     // the first line that hangs on one of them
	zeros         []int32 // must be 0
	ways          []int32 // must be positive: how angles turn
	sides         []int32 // must be positive too
	moved         []int32 // are not 0 in any figure
	must          []int32 // are 0 in every figure
	sure          []int32 // are positive in every figure, or negative in every one
	negative      []bool  // which of sure are
	left          int     // lines that may be worked out
	drawn         int
	isLoose       bool // angles in degrees are among what it hangs on
}

const (
	samples     = 96
	mostOfClaim = 200_000 // lines
	mostFlips   = 6
)

// write puts down what the claim hangs on, at first what does not hang on some roots.
func (b *branches) write(flips []*Real) {
	b.sheet, b.flips = newSheet(), flips
	b.zeros, b.sides, b.moved, b.sure, b.negative = nil, nil, nil, nil, nil
	var g gathering
	for _, x := range slices.Concat(b.figure.Zero, b.claim.Zero, b.claim.Ways, b.claim.Sides) {
		g.add(x)
	}
	b.addDecisions(&g)
	hangs := map[*Real]bool{}
	for _, x := range g.list {
		hangs[x] = slices.Contains(flips, x) || hangs[x.x] || hangs[x.y]
		if !hangs[x] {
			b.put(x)
		}
	}
	b.cut = len(b.lines)
	for _, x := range g.list {
		b.put(x)
	}
	b.zeros = b.linesOf(slices.Concat(b.figure.Zero, b.claim.Zero))
	b.ways = b.linesOf(b.claim.Ways)
	b.sides = b.linesOf(b.claim.Sides)
	b.moved = b.linesOf(slices.Concat(b.figure.Moved, b.figure.Sides))
	b.must = b.linesOf(b.figure.Must)
	b.findSure()
}

// addDecisions adds what else the figure was decided by, if that takes no other root, or
// only few to tell of a flip that there is no figure with it.
func (b *branches) addDecisions(g *gathering) {
	for k, x := range slices.Concat(b.figure.Sure, b.claim.Sure, b.figure.Moved, b.figure.Sides, b.figure.Must) {
		more := gathering{known: g.seen}
		more.add(x)
		roots := 0
		for _, y := range more.list {
			if y.op == root || y.op == written && y.exact.num.level > 0 {
				roots++
			}
		}
		if roots == 0 || roots <= rootsOfSure && k < len(b.figure.Sure) && b.hangs(x) {
			for _, y := range more.list {
				g.add(y)
			}
		}
	}
}

const rootsOfSure = 2

// hangs tells whether x hangs on a root that is flipped.
func (b *branches) hangs(x *Real) bool {
	if len(b.flips) == 0 {
		return false
	}
	var all gathering
	all.add(x)
	return slices.ContainsFunc(all.list, func(y *Real) bool { return slices.Contains(b.flips, y) })
}

// linesOf are the lines of those numbers that are written down.
func (b *branches) linesOf(xs []*Real) (out []int32) {
	for _, x := range xs {
		if i, ok := b.at[x]; ok {
			out = append(out, i)
		}
	}
	return out
}

// gathering is numbers with what they are made of, operands first.
type gathering struct {
	list  []*Real
	seen  map[*Real]bool
	known map[*Real]bool // not to be gathered
}

func (g *gathering) add(x *Real) {
	if x == nil || g.seen[x] || g.known[x] {
		return
	}
	if g.seen == nil {
		g.seen = map[*Real]bool{}
	}
	g.seen[x] = true
	g.add(x.x)
	g.add(x.y)
	g.list = append(g.list, x)
}

// sample draws until there are values, of a figure that may be; false where that takes too long.
func (b *branches) sample() bool {
	primes := mapPrimes()
	for b.left > 0 {
		b.drawn++
		ok := b.draw(primes[b.drawn*7%len(primes)], b.random)
		b.left -= b.reached + 20
		if ok {
			return true
		}
	}
	return false
}

// isNone tells whether the values are of no figure: what must be apart in each is not.
func (b *branches) isNone() bool {
	return slices.ContainsFunc(b.moved, func(i int32) bool { return b.value[i] == 0 }) ||
		slices.ContainsFunc(b.must, func(i int32) bool { return b.value[i] != 0 })
}

func (b *branches) hold() bool {
	return !slices.ContainsFunc(b.zeros, func(i int32) bool { return b.value[i] != 0 })
}

// areFree tells whether the equations hold whatever the signs of roots are.
func (b *branches) areFree() (free, ok bool) {
	free = true
	for range samples {
		if !b.sample() {
			return false, false
		}
		free = free && (b.hold() || b.isNone())
	}
	return free, true
}

// sensitive are the roots that are squares of what is before them, as no sample has told
// otherwise, and of which it matters to the equations which sign they have.
func (b *branches) sensitive() (out []*Real) {
	for _, i := range b.roots {
		if x := b.lines[i].x; !b.failed[i] && b.tried[i] > 0 && b.matters(x) {
			out = append(out, x)
		}
	}
	return out
}

// matters tells whether the sign of a root makes a difference to the equations.
func (b *branches) matters(x *Real) bool {
	c := &branches{figure: b.figure, claim: b.claim, random: b.random, left: b.left}
	defer func() { b.left = c.left }()
	c.write([]*Real{x})
	for range flipSamples {
		if !c.sample() {
			return true
		}
		before := c.hold() || c.isNone()
		if !c.set(1) || before != (c.hold() || c.isNone()) {
			return true
		}
	}
	return false
}

const flipSamples = 32

// judge tells whether for each set of flips the equations hold, and the sides with
// them, or there is no figure. The flips are counted from signs with which the equations
// hold.
func (b *branches) judge() Sides {
	worlds := make([]world, 1<<len(b.flips))
	for n := 0; n < len(b.sure)+len(littlePrimes)+samples; n++ {
		if !b.sample() {
			return Unknown
		}
		from, ok := b.good()
		if !ok && b.isNone() {
			n--
			continue
		}
		if !ok {
			return Unknown
		}
		for flips := range worlds {
			if b.set(uint(flips) ^ from) {
				worlds[flips].loose = b.isLoose
				worlds[flips].add(b)
			}
		}
	}
	all := All
	for i := range worlds {
		if w := &worlds[i]; w.held > 0 && w.failed > 0 {
			return Unknown // they are several: some root was not told from one that can be flipped
		}
	}
	for i := range worlds {
		if k := worlds[i].judge(); k == Hangs || all == All {
			all = k
		}
	}
	return all
}

// good are signs with which the equations hold.
func (b *branches) good() (signs uint, ok bool) {
	for signs := range uint(1) << len(b.flips) {
		if b.set(signs) && b.hold() && !b.isNone() {
			return signs, true
		}
	}
	return 0, false
}

// set works the lines out that hang on roots whose signs are set.
func (b *branches) set(signs uint) bool {
	told := map[*Real]bool{}
	for k, x := range b.flips {
		told[x] = signs>>k&1 == 1
	}
	b.chose = slices.DeleteFunc(b.chose, func(r rooted) bool { return int(r.line) >= b.cut })
	b.left -= len(b.lines) - b.cut
	return b.work(b.cut, len(b.lines), b.random, told)
}

// world is what has been seen with a set of flips.
type world struct {
	held, failed, none int
	sure, ways, sides  [][]bool // which are no squares, by number and sample
	loose              bool     // the sign of some factor may be that of an angle in degrees
}

func (w *world) add(b *branches) {
	switch {
	case b.isNone():
		w.none++
	case b.hold():
		w.held++
	default:
		w.failed++
	}
	sure, ways, sides, ok := b.row()
	if ok {
		push(&w.sure, sure)
		push(&w.ways, ways)
		push(&w.sides, sides)
	}
}

// push adds a sample to numbers.
func push(numbers *[][]bool, sample []bool) {
	if *numbers == nil {
		*numbers = make([][]bool, len(sample))
	}
	for i, v := range sample {
		(*numbers)[i] = append((*numbers)[i], v)
	}
}

// judge tells of all figures with these flips whether the equations hold in them, or
// whether there are none: if -1 is a product of numbers that are sure and of squares. Else
// the sides must be such products. That is found from which are squares modulo primes, by
// elimination over the field of two elements: what looks like one in n samples more than
// there are numbers is none with a chance of about 2^-n.
func (w *world) judge() Sides {
	switch {
	case w.none > 0 && w.held+w.failed == 0:
		return All
	case len(w.sure) == 0 || len(w.sure[0]) < len(w.sure)+samples/2:
		return Unknown
	case w.failed == 0 && spans(w.sure, w.ways) && spans(w.sure, w.sides):
		return All
	case spans(w.sure, [][]bool{slices.Repeat([]bool{true}, len(w.sure[0]))}):
		return All
	case w.none == 0 && !w.loose && (w.held == 0 || !spans(w.sure, w.ways)):
		return Hangs
	}
	return Unknown
}

func spans(sure, wanted [][]bool) bool {
	var basis [][]bool // each with a first true that none after it has
	for _, v := range sure {
		if v = reduced(v, basis); slices.Contains(v, true) {
			basis = append(basis, v)
		}
	}
	return !slices.ContainsFunc(wanted, func(v []bool) bool { return slices.Contains(reduced(v, basis), true) })
}

// findSure finds numbers that have one sign in every figure: what the source says, sums of
// squares, lengths, and what hangs on nothing free.
func (b *branches) findSure() {
	free := make([]bool, len(b.lines))
	for i := range b.lines {
		l := &b.lines[i]
		x := l.x
		switch x.op {
		case ratio, written:
		case variable:
			free[i] = !x.settled
			b.isLoose = b.isLoose || x.settled
		default:
			free[i] = free[l.a] || free[l.b]
		}
		s, _ := x.bounds.sign()
		known := !free[i] && s != 0 || x.op != product && x.isPositive(formDepth) || slices.Contains(b.figure.Sure, x) || slices.Contains(b.claim.Sure, x)
		if known && len(b.sure) < mostSure {
			b.sure, b.negative = append(b.sure, int32(i)), append(b.negative, s < 0)
		}
	}
}

const mostSure = 160

// formDepth is how deep a form is looked into.
const formDepth = 8

// isPositive tells whether x is so by its form.
func (x *Real) isPositive(depth int) bool {
	switch {
	case depth == 0:
		return false
	case x.op == ratio:
		return x.num > 0
	case x.op == root:
		return !x.either
	case x.op == sum:
		return x.x.isNoLess(depth-1) && x.y.isNoLess(depth-1)
	case x.op == product || x.op == quotient:
		return x.x.isPositive(depth-1) && x.y.isPositive(depth-1)
	}
	return false
}

// isNoLess tells whether x is a square by its form, or positive.
func (x *Real) isNoLess(depth int) bool {
	return x.op == product && x.x == x.y || x.isPositive(depth)
}

// littlePrimes are positive as well: ratios of what is sure often are made of these.
var littlePrimes = []uint64{2, 3, 5, 7, 11, 13}

// row is which of the numbers are no squares modulo the prime: those that are sure, and the
// sides. Where one is 0 there is none.
func (b *branches) row() (sure, ways, sides []bool, ok bool) {
	p := b.base.p
	ok = true
	isNone := func(v uint64) bool {
		c := jacobi(v, p)
		ok = ok && c != 0
		return c < 0
	}
	for k, i := range b.sure {
		sure = append(sure, isNone(b.value[i]) != b.negative[k])
	}
	for _, q := range littlePrimes {
		sure = append(sure, isNone(q))
	}
	for _, i := range b.ways {
		ways = append(ways, isNone(b.value[i]))
	}
	for _, i := range b.sides {
		sides = append(sides, isNone(b.value[i]))
	}
	return sure, ways, sides, ok
}

func reduced(v []bool, basis [][]bool) []bool {
	v = slices.Clone(v)
	for _, b := range basis {
		if !v[slices.Index(b, true)] {
			continue
		}
		for i := range v {
			v[i] = v[i] != b[i]
		}
	}
	return v
}
