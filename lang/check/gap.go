package check

import (
	"fmt"
	"math"

	"trammel/lang/program"
)

// gap is how two values lie to each other. Its measures are worked out where a
// message wants them.
type gap struct {
	sign     int // of the first less the second
	first    func() float64
	off      func() float64 // the first less the second
	fromZero bool           // the second is the number 0
	measure  func(float64) string
}

// gapOf compares two values of one kind.
func gapOf(st *program.State, a, b expr) (gap, error) {
	g := gap{fromZero: b.rat != nil && b.rat.Sign() == 0}
	if a.angle {
		x, err := a.size(st)
		if err != nil {
			return g, err
		}
		y, err := b.size(st)
		if err != nil {
			return g, err
		}
		g.sign, err = x.Cmp(y)
		g.first, g.off = x.Float, func() float64 { return x.Gap(y) }
		g.measure = func(x float64) string { return sig(x) + "°" }
		return g, err
	}
	x, err := a.value(st)
	if err != nil {
		return g, err
	}
	y, err := b.value(st)
	if err != nil {
		return g, err
	}
	g.sign, g.first, g.off = x.Cmp(y), x.Float, func() float64 { return x.Sub(y).Float() }
	g.measure = func(x float64) string { return st.Measure(a.dim, x) }
	return g, nil
}

// difference tells it of a claim: AB − 3 is −1.00 cm.
func (g gap) difference(a, b string) string {
	switch {
	case g.sign == 0:
		return fmt.Sprintf("%s and %s are equal", a, b)
	case g.fromZero:
		return fmt.Sprintf("%s is %s", a, g.measure(g.first()))
	}
	return fmt.Sprintf("%s − %s is %s", a, b, g.measure(g.off()))
}

// lack tells it of a need: AB is 1.00 cm less than 3.
func (g gap) lack(a, b string) string {
	word := "more"
	if g.sign < 0 {
		word = "less"
	}
	if g.sign == 0 || g.fromZero {
		return g.difference(a, b)
	}
	return fmt.Sprintf("%s is %s %s than %s", a, g.measure(math.Abs(g.off())), word, b)
}
