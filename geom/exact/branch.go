package exact

import (
	"math/rand/v2"
	"slices"
)

// Question is what a claim of equations was decided by, and what the making of its figure was.
type Question struct{ Figure, Claim *Notes }

// HoldEverywhere tells of claims that hold in one figure of a source whether they hold in
// all, wherever what is free lies; false where that is not found out. A question without a
// claim is none. It spends some of the work that is left, in lines of formulas worked out.
//
// All figures of a source have the same formulas, |x| being √(x²), so that with the values of what
// is free they are points of one variety: the roots satisfy r² = a, with a from the
// field of what is before it. The variety falls into branches. A root of which the radicand is no square in that
// field doubles nothing, as an automorphism takes either root to the other. Any other is
// ±s, with s from the field, and cuts the variety in two. A root is positive in each figure, and so is what the
// source says, and lengths: so a root is +s in all figures if, up to squares, s is a product of such numbers.
// The roots of which that is not found are doubtful: each choice of their signs is a world of its own.
// In each world either the claim's equations hold and its angles turn the same way, or no figure lies there:
// then some product of positive numbers, or a sum of them, is minus a square.
//
// What is a square, and which products are, is seen from quadratic characters at points
// modulo primes (Chebotarev's density theorem: what is none is told by each point with a
// chance of 1/2 but for O(p^-1/2), by Lang and Weil 1954); s itself from logarithms, see
// sheet.learn. A claim is called true only if it holds at fewPoints or more points of each world that is
// left, each modulo another prime of 30 bits; one that fails in the world fails at each of these but with a chance
// of degree/p (Schwartz 1980, Zippel 1979). Signs that had to be guessed at each point anew are so at
// that many more points that a claim that hangs on them fails at one but with a chance of 2^-60.
func HoldEverywhere(questions []Question, left *int) []bool {
	out := make([]bool, len(questions))
	b := &branches{left: left, random: rand.New(rand.NewPCG(uint64(len(questions)), 1))}
	if !b.write(questions) || !b.learnAll() || !b.relate() || !b.findConstants() {
		return out
	}
	for i, q := range questions {
		if q.isAsked() {
			out[i] = b.judge(b.claimOf(q))
		}
	}
	return out
}

// branches is the state of such a search.
type branches struct {
	*sheet
	questions []Question
	random    *rand.Rand
	left      *int    // lines that may be worked out
	surds     []int64 // of which roots are wanted as constants
	sure      []int32 // lines that are positive in every figure, or negative in every one
	signs     []int8  // of these
	told      []bool  // which of these are not 0 either, as the source says; lengths may be
	points    []*place
	constant  []bool           // by line: it does not hang on what is free, on the branch of the figure at hand
	clear     []bool           // by line: it hangs on no doubtful root
	none      []map[int32]bool // by roots, whether they are negative: there are no such figures
	done      []signs          // what of a claim's worlds has been told
}

// samples is how many points tell what is so with a chance of 1/2 each; spare is how many more of these there
// are than of numbers that a relation is sought among, so that one of a thousand numbers is wrongly related
// with a chance of 2^-60, and others may join them.
const (
	samples = 64
	spare   = samples + 10
)

func (q Question) isAsked() bool { return q.Claim != nil && !q.Claim.Loose && !q.Figure.Loose }

// asked are the questions that are.
func (b *branches) asked(run func(q Question)) {
	for _, q := range b.questions {
		if q.isAsked() {
			run(q)
		}
	}
}

// write puts down what the claims hang on, and what tells signs; false where nothing is asked. Numbers that are not
// 0, or 0, in every figure are put down if that takes no other root.
func (b *branches) write(questions []Question) bool {
	b.questions = questions
	g := gathering{block: map[*Real]int{}}
	var numbers []*Real
	put := func(xs ...[]*Real) {
		for _, x := range slices.Concat(xs...) {
			g.add(x)
			numbers = append(numbers, x)
		}
	}
	b.asked(func(q Question) {
		put(q.Figure.Zero, q.Figure.Ways, q.Figure.Bent, q.Figure.Sure)
		put(q.Claim.Zero, q.Claim.Ways, q.Claim.Bent, q.Claim.Sides, q.Claim.Sure)
	})
	if len(numbers) == 0 {
		return false
	}
	b.asked(func(q Question) {
		for _, x := range slices.Concat(q.Figure.Moved, q.Figure.Must) {
			if g.hasRootsOf(x) {
				put([]*Real{x})
			}
		}
	})
	f := numbers[0].field
	for _, p := range littlePrimes {
		put([]*Real{f.Int(p)})
	}
	for _, n := range b.surds {
		put([]*Real{f.Int(n).Sqrt()})
	}
	b.sheet = newSheet(numbers)
	b.findSure()
	return true
}

// littlePrimes are positive as well: ratios of what is sure often are made of these.
var littlePrimes = []int64{2, 3, 5, 7, 11, 13}

// learnAll learns what the roots are, with those constants in the sheet that they turn out to take.
func (b *branches) learnAll() bool {
	for round := 0; ; round++ {
		surds, ok := b.learn(b.random, b.left)
		if !ok {
			return false
		}
		before := len(b.surds)
		for _, n := range surds {
			if !slices.Contains(b.surds, n) {
				b.surds = append(b.surds, n)
			}
		}
		if len(b.surds) == before || round == mostRounds {
			return true
		}
		b.write(b.questions)
	}
}

const mostRounds = 2

// findSure finds numbers that have one sign in every figure: what the source says, roots,
// what hangs on nothing free, and sums of squares and of such.
func (b *branches) findSure() {
	told := map[*Real]bool{}
	b.asked(func(q Question) {
		for _, x := range slices.Concat(q.Figure.Sure, q.Claim.Sure) {
			told[x] = true
		}
	})
	var sure, sums []int32
	free := make([]bool, len(b.lines))
	for i := range b.lines {
		l := &b.lines[i]
		x := l.x
		free[i] = x.op == variable && !x.settled || x.x != nil && free[l.a] || x.y != nil && free[l.b]
		s, _ := x.bounds.sign()
		switch {
		case s == 0:
		case !free[i] || told[x] || x.op == root && !x.either:
			sure = append(sure, int32(i))
		case x.op == sum && x.isPositive(formDepth):
			sums = append(sums, int32(i))
		}
	}
	sure = append(sure, sums...)
	b.sure, b.signs, b.told = sure[:min(len(sure), mostSure)], nil, nil
	slices.Sort(b.sure)
	for _, i := range b.sure {
		s, _ := b.lines[i].x.bounds.sign()
		b.signs = append(b.signs, int8(s))
		b.told = append(b.told, told[b.lines[i].x] || !free[i])
	}
}

const mostSure = 192

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

// relate finds relations of numbers that are sure, on the branch of the figure at hand. That
// a number is always a square says nothing more than that its root is there, but of a root:
// of the two, it is the one that is a square.
func (b *branches) relate() bool {
	b.points = nil
	for len(b.points) < len(b.sure)+spare+samples/2 {
		pt, _, _ := b.draw(0)
		if pt == nil {
			return false
		}
		b.points = append(b.points, pt)
	}
	span, at := &characterSpan{}, b.charactersAt(b.points)
	for k, i := range b.sure {
		row := at.signed(i, b.signs[k])
		if row == nil {
			continue
		}
		if made, depends := span.add(row, k, len(b.sure)); depends && i >= b.ends[0] {
			if r := b.relation(k, made); r.odd || len(r.others) > 0 || b.lines[i].x.op == root {
				b.lines[i].rule.relation = r
			}
		}
	}
	return true
}

// relation is that of the k-th sure number and those before it that are in a set.
func (b *branches) relation(k int, made bitRow) *relation {
	r := &relation{odd: b.signs[k] < 0}
	for j, other := range b.sure[:k] {
		if made.has(j) {
			r.others = append(r.others, other)
			r.odd = r.odd != (b.signs[j] < 0)
		}
	}
	return r
}

// findConstants finds the numbers that do not hang on what is free, though their formulas do: they are the
// same at points that differ in nothing else. A root of these is fixed, and not doubtful.
func (b *branches) findConstants() bool {
	b.constant = slices.Repeat([]bool{true}, len(b.lines))
	pairs := 0
	for tries := 0; pairs < mostPairs && tries < samples; tries++ {
		pt, _, _ := b.draw(0)
		if pt == nil {
			return false
		}
		other := b.newPlace(pt.constants)
		copy(other.value, pt.value[:b.ends[b.settled]])
		if _, ok := b.fill(other, b.settled+1, b.random, 0, b.left); ok {
			pairs++
			for i := range b.lines {
				b.constant[i] = b.constant[i] && pt.value[i] == other.value[i]
			}
		}
	}
	if pairs < mostPairs {
		clear(b.constant)
	}
	b.findClear()
	return true
}

// mostPairs is how many pairs of points show that a number is constant: a pair shows of one that is not
// that it is not, but with a chance of degree/p.
const mostPairs = 4

func (b *branches) findClear() {
	b.clear = make([]bool, len(b.lines))
	for i := range b.lines {
		l := &b.lines[i]
		b.clear[i] = (l.x.x == nil || b.clear[l.a]) && (l.x.y == nil || b.clear[l.b])
		if l.x.op != root || i < int(b.ends[0]) {
			continue
		}
		if k := l.rule.known; k != nil && b.constant[i] && b.clear[i] && !l.x.either {
			l.rule.fixed = !slices.ContainsFunc(k.factors, func(f linePower) bool { return !b.clear[f.line] })
		}
		b.clear[i] = b.clear[i] && !l.isDoubtful()
		if r := l.rule.relation; r != nil {
			b.clear[i] = b.clear[i] && !slices.ContainsFunc(r.others, func(k int32) bool { return !b.clear[k] })
		}
	}
}

// isDoubtful tells whether the line is a root that may be either root in figures.
func (l *entry) isDoubtful() bool {
	return l.x.op == root && !l.rule.flips && l.rule.relation == nil && !l.rule.fixed
}

// draw is a point of a world, modulo a prime that is drawn too. There is none where some
// line, stuck, fails modulo each of many primes: then, surely, the world has no
// figure; or where it takes too long.
func (b *branches) draw(world uint) (pt *place, stuck int32, sure bool) {
	return b.drawPatiently(world, samples)
}

// drawPatiently is draw that ends when a line has failed so many times; if these are
// fewer than samples, that is not sure.
func (b *branches) drawPatiently(world uint, patience int) (pt *place, stuck int32, ended bool) {
	primes := mapPrimes()
	last, times := int32(-1), 0
	for *b.left >= 0 {
		c := b.constantsModulo(primes[b.random.IntN(len(primes))], b.random)
		if *b.left -= int(b.ends[0]) / 4; c == nil {
			continue
		}
		pt := b.newPlace(c)
		stuck, ok := b.fill(pt, 1, b.random, world, b.left)
		if ok {
			return pt, 0, true
		}
		if stuck > last {
			last, times = stuck, 0
		}
		if stuck < last {
			continue
		}
		if times++; times < patience {
			continue
		}
		if patience < samples {
			return nil, last, true
		}
		if chances := b.chances(b.cone([]int32{last})); chances <= mostChances && times >= b.wanted(chances) {
			return nil, last, true
		}
	}
	return nil, 0, false
}

// chances is of how many of some roots the sign is left to chance and matters, as far as the
// points so far tell: those that have existed at all of them, for the others are flipped by
// an automorphism; and those that hang on such a one, as where they fail it may be for its
// sign.
func (b *branches) chances(lines []bool) (n int) {
	hangs := make([]bool, len(b.lines))
	for i := range b.lines {
		l := &b.lines[i]
		hangs[i] = l.x.x != nil && hangs[l.a] || l.x.y != nil && hangs[l.b]
		if b.guessed[i] && i >= int(b.ends[0]) && (!b.failed[i] || hangs[i]) {
			hangs[i] = true
			if lines[i] {
				n++
			}
		}
	}
	return n
}

// wanted is how many points show what is so for some of the signs that are left to chance:
// each choice of these is met at three times samples of them or so, and at a quarter of
// that if it asks besides that two constants be squares modulo the prime; that it is met at
// none has a chance of 2^-69 or less then.
func (b *branches) wanted(chances int) int {
	if chances == 0 {
		return samples
	}
	return 3 * samples << chances
}

// mostChances is more signs than are left to chance.
const mostChances = 4
