package oracle

import (
	"fmt"
	"math/big"
	"testing"
)

// periods are C. F. Gauss's sums of p-th roots of unity for a Fermat prime p
// (Disquisitiones Arithmeticae, art. 343–366): period k, j has the (p-1)/2^k terms
// ζ^e with e = 3^(2^k·i + j), and two of them are the roots of a quadratic over those before.
type periods struct {
	p     int
	known map[[2]int]*term
}

func (g *periods) exponents(k, j int) (e []int) {
	power := func(n int) int {
		return int(new(big.Int).Exp(big.NewInt(3), big.NewInt(int64(n)), big.NewInt(int64(g.p))).Int64())
	}
	for i := range (g.p - 1) >> k {
		e = append(e, power(i<<k+j))
	}
	return e
}

// about is a period by floats, which choose the root.
func (g *periods) about(k, j int) (sum float64) {
	for _, e := range g.exponents(k, j) {
		sum += cosine(big.NewRat(int64(360*e), int64(g.p))).about
	}
	return sum
}

func (g *periods) at(k, j int) *term {
	if k == 0 {
		return whole(-1)
	}
	if x := g.known[[2]int{k, j}]; x != nil {
		return x
	}
	half := 1 << (k - 1)
	low := j % half
	sum, product := g.at(k-1, low), g.product(k, low)
	step := sum.square().minus(product.times(whole(4))).root()
	more, less := sum.plus(step).over(whole(2)), sum.minus(step).over(whole(2))
	if g.about(k, low) < g.about(k, low+half) {
		more, less = less, more
	}
	g.known[[2]int{k, low}], g.known[[2]int{k, low + half}] = more, less
	return g.at(k, j)
}

// product is that of the two periods of a quadratic, as a sum of earlier ones.
func (g *periods) product(k, j int) *term {
	count := make([]int64, g.p)
	for _, a := range g.exponents(k, j) {
		for _, b := range g.exponents(k, j+1<<(k-1)) {
			count[(a+b)%g.p]++
		}
	}
	sum := whole(count[0])
	for m := range 1 << (k - 1) {
		if n := count[g.exponents(k-1, m)[0]]; n != 0 {
			sum = sum.plus(g.at(k-1, m).times(whole(n)))
		}
	}
	return sum
}

// gaussStep is a p-th of a turn round the unit circle.
func gaussStep(p int) place {
	g := &periods{p, map[[2]int]*term{}}
	k := 0
	for 2<<k < p-1 {
		k++
	}
	x := g.at(k, 0).over(whole(2))
	return place{x, whole(1).minus(x.square()).root()}
}

// turns multiplies as complex numbers do.
func (p place) turns(q place) place {
	return place{p.x.times(q.x).minus(p.y.times(q.y)), p.x.times(q.y).plus(p.y.times(q.x))}
}

// repeated is n turns of p; backwards for n below 0.
func (p place) repeated(n int) place {
	if n < 0 {
		return place{p.x, whole(0).minus(p.y)}.repeated(-n)
	}
	out := place{whole(1), whole(0)}
	for range n {
		out = out.turns(p)
	}
	return out
}

// TestPolygonsClose goes round the regular polygons of 15, 17, 51, 85 and 257
// sides: all the way and, to be refused, all but one step of it. The steps are
// put together from those of the primes, as Gauss, art. 366, says; F. J. Richelot
// divided the circle into 257 in Crelle's Journal 9 (1832).
func TestPolygonsClose(t *testing.T) {
	t.Parallel()
	third := place{fraction(-1, 2), root(3).over(whole(2))}
	fifth, seventeenth := gaussStep(5), gaussStep(17)
	var questions []question
	for _, c := range []struct {
		n    int
		step place
	}{
		{15, fifth.repeated(2).turns(third.repeated(-1))},
		{17, seventeenth},
		{51, seventeenth.repeated(6).turns(third.repeated(-1))},
		{85, fifth.repeated(3).turns(seventeenth.repeated(-10))},
	} {
		w, name := newWorld(), fmt.Sprintf("%d sides", c.n)
		x := c.step
		questions = append(questions,
			question{name + ", the step", x.x.minus(cosine(big.NewRat(360, int64(c.n)))), "0"})
		for range c.n - 2 {
			x = x.turns(c.step)
		}
		short := w.ask(name+", one step short", x.x, whole(1))
		x = x.turns(c.step)
		around, level := w.ask(name, x.x, whole(1)), w.ask(name+", level", x.y, whole(0))
		questions = append(questions, short, around, level)
		if short.told != "-1" || around.told != "0" || level.told != "0" {
			t.Errorf("%s: signs %s, %s and %s", name, short.told, around.told, level.told)
		}
	}
	t.Log(compare(t, append(questions, richelot(t)...)))
}

// richelot closes the 257-gon: 2^8 = -1 modulo 257, so that eight doublings of
// the angle give the same cosine, and seven do not.
func richelot(t *testing.T) []question {
	w, x := newWorld(), gaussStep(257).x
	doubled := x
	for range 7 {
		doubled = doubled.square().times(whole(2)).minus(whole(1))
	}
	open := w.ask("257 sides, doubled 7 times", doubled, x)
	closed := w.ask("257 sides", doubled.square().times(whole(2)).minus(whole(1)), x)
	if open.told == "0" || closed.told != "0" {
		t.Errorf("257 sides: signs %s and %s", open.told, closed.told)
	}
	return []question{open, closed, {"257 sides, the step", x.minus(cosine(big.NewRat(360, 257))), "0"}}
}
