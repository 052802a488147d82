package check

import (
	"fmt"

	"trammel/geom"
	"trammel/lang/program"
)

// trapezium has AB parallel to DC, and AB longer. What is left to chance of it is first
// the parallel sides, then AD and the angle at A.
func (sh *shape) trapezium(isosceles bool) corners {
	if isosceles {
		sh.alike([2]element{sideOf(0, 3), sideOf(1, 2)}, [2]element{sideOf(0, 2), sideOf(1, 3)},
			[2]element{angleAt(0), angleAt(1)}, [2]element{angleAt(2), angleAt(3)})
	}
	sh.addUp(0, 3)
	sh.addUp(1, 2)
	sh.narrows()
	return newSurvey(sh, sideOf(0, 1), sideOf(2, 3), sideOf(0, 3), angleAt(0), angleAt(1), sideOf(1, 2)).plan()
}

// narrows adds that the angles at A and B, as far as the data give them, make CD the
// shorter of the parallel sides.
func (sh *shape) narrows() {
	base := func(here, across int) func(*program.State) (geom.Angle, error) {
		if v := sh.datum(angleAt(here)); v != nil {
			return v.size
		}
		v := sh.datum(angleAt(across))
		if v == nil {
			return nil
		}
		return func(st *program.State) (geom.Angle, error) {
			a, err := v.size(st)
			return geom.Degrees(rat(180, 1)).Add(a.Mul(rat(-1, 1))), err
		}
	}
	at, too := base(0, 3), base(1, 2)
	if at == nil || too == nil {
		return
	}
	sh.rules = append(sh.rules, func(st *program.State) error {
		a, err := at(st)
		if err != nil {
			return err
		}
		b, err := too(st)
		if err != nil {
			return err
		}
		two := a.Add(b)
		if sign, err := two.Cmp(geom.Degrees(rat(180, 1))); err != nil || sign < 0 {
			return err
		}
		return &program.Fault{
			Text:  fmt.Sprintf("the angles at %s and %s add up to %s, so that %s would not be longer than %s", sh.letters[0], sh.letters[1], two, sh.describe(sideOf(0, 1)), sh.describe(sideOf(2, 3))),
			Help:  "begin with the longer side's letters, or make the angles smaller",
			Range: true,
		}
	})
}
