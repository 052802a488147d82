package check

import (
	"fmt"

	"trammel/geom"
	"trammel/lang/program"
)

// quadrilateral is any one, found by triangles. What is left to chance of it is first two
// sides and the angle between, then the triangle beyond.
func (sh *shape) quadrilateral() corners {
	sh.closes()
	sh.turnsOnce()
	return newSurvey(sh, sideOf(0, 1), sideOf(1, 2), angleAt(1), angleAt(0), sideOf(0, 3), angleAt(2), sideOf(2, 3), angleAt(3)).plan()
}

// closes adds that of four sides any three together are longer than the fourth.
func (sh *shape) closes() {
	var sides [4]*expr
	for i := range 4 {
		if sides[i] = sh.datum(sideOf(i, nextCorner(i, 1))); sides[i] == nil {
			return
		}
	}
	sh.rules = append(sh.rules, func(st *program.State) error {
		var long [4]geom.Real
		for i, side := range sides {
			var err error
			if long[i], err = positive(st, side); err != nil {
				return err
			}
		}
		for i := range 4 {
			j, k, l := nextCorner(i, 1), nextCorner(i, 2), nextCorner(i, 3)
			if sum := long[j].Add(long[k]).Add(long[l]); sum.Cmp(long[i]) <= 0 {
				name := func(i int) string { return sh.describe(sideOf(i, nextCorner(i, 1))) }
				return &program.Fault{Text: fmt.Sprintf("no quadrilateral has these sides: %s, %s and %s together are %s, not more than %s, which is %s",
					name(j), name(k), name(l), geom.Show(sum), name(i), geom.Show(long[i])), Range: true}
			}
		}
		return nil
	})
}

// turnsOnce adds that four angles make a full turn.
func (sh *shape) turnsOnce() {
	var angles [4]*expr
	for i := range 4 {
		if angles[i] = sh.datum(angleAt(i)); angles[i] == nil {
			return
		}
	}
	sh.rules = append(sh.rules, func(st *program.State) error {
		sum := geom.Degrees(rat(0, 1))
		for _, v := range angles {
			a, err := v.size(st)
			if err != nil {
				return err
			}
			sum = sum.Add(a)
		}
		sign, err := sum.Cmp(geom.Degrees(rat(360, 1)))
		if err == nil && sign != 0 {
			err = &program.Fault{Text: "the angles of a quadrilateral add up to 360°, and these to " + sum.String(), Help: "leave one of them out"}
		}
		return err
	})
}

// nextCorner is the corner so many after another one.
func nextCorner(p, by int) int { return (p + by) % 4 }

// plainly objects to a quadrilateral, or kite, that its data do not settle and that is not
// convex: with a notch it would be a dart, in this figure or in others.
func (sh *shape) plainly(ps []geom.Point) error {
	if !sh.chosen && !sh.about || convex(ps) {
		return nil
	}
	return &program.Fault{
		Text:  "the " + sh.kind + " is not convex",
		Help:  "one with a notch needs data that settle it, none of them about",
		Range: true,
	}
}

// convex tells whether corners that run anticlockwise turn left at each.
func convex(ps []geom.Point) bool {
	n := len(ps)
	var turns []geom.Real
	for i := range ps {
		turn := ps[(i+1)%n].Sub(ps[i]).Cross(ps[(i+2)%n].Sub(ps[(i+1)%n]))
		if turn.Sign() <= 0 {
			return false
		}
		turns = append(turns, turn)
	}
	for _, turn := range turns {
		turn.Sure()
	}
	return true
}
