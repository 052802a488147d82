package check

import (
	"fmt"
	"math/big"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
)

// applyTraits adds the data that words such as right and isosceles stand for.
func (sh *shape) applyTraits(traits []string) bool {
	good := true
	for _, t := range traits {
		switch t {
		case "equilateral":
			sh.equilateral()
		case "isosceles":
			good = sh.twoEqual() && good
		default:
			sh.is = t
			if t == "right" {
				good = sh.rightAngle() && good
			}
		}
	}
	return good
}

func (sh *shape) equilateral() {
	sh.allAngles(60)
	sh.equal(opposite(0), opposite(1))
	sh.equal(opposite(1), opposite(2))
	if sh.count(false) == 0 {
		sh.fixAngle(angleAt(0), 60)
		sh.fixAngle(angleAt(1), 60)
	}
}

// allAngles holds each angle that is given with a value to the one size that all of
// them have in such a shape.
func (sh *shape) allAngles(degrees int64) {
	name := sh.kind
	if name == "triangle" {
		name = "equilateral " + name
	}
	sh.holdAngles(func(angle string, a geom.Angle) error {
		if sign, err := a.Cmp(geom.Degrees(rat(degrees, 1))); err != nil || sign == 0 {
			return err
		}
		return &program.Fault{
			Text: fmt.Sprintf("%s is %s, and each angle of %s %s is %d°", angle, a, article(name), name, degrees),
			Help: "leave it out, or take another shape",
		}
	})
}

// holdAngles adds a rule for each angle that is given with a value.
func (sh *shape) holdAngles(rule func(angle string, a geom.Angle) error) {
	for _, c := range sh.written {
		if c.elems[0].b >= 0 || c.value == nil {
			continue
		}
		e, v := c.elems[0], c.value
		sh.rules = append(sh.rules, func(st *program.State) error {
			a, err := v.size(st)
			if err != nil {
				return err
			}
			return rule(sh.describe(e), a)
		})
	}
}

// article goes before the name of a shape.
func article(name string) string {
	if strings.ContainsAny(name[:1], "aeiou") {
		return "an"
	}
	return "a"
}

// rightAngle sets the right angle of a triangle whose data leave it open: at the
// last corner, unless another angle is given there.
func (sh *shape) rightAngle() bool {
	sides, angles := sh.count(true), sh.count(false)
	switch {
	case angles > 1, angles == 1 && sides > 1, sides == 3:
		return true
	case angles == 0:
		sh.fixAngle(angleAt(2), 90)
		sh.assume("the right angle is taken to be at %s", 2, "angle %s = 90°")
		return true
	}
	known := sh.known(angleAt)
	if v := sh.datum(angleAt(known)); v.rat != nil && v.rat.Cmp(big.NewRat(90, 1)) == 0 {
		return true
	} else if v.rat != nil && v.rat.Cmp(big.NewRat(90, 1)) > 0 {
		sh.s.fail(v.node, "%s is %s, and in a right triangle the other angles are under 90°", sh.describe(angleAt(known)), geom.Degrees(v.rat)).Help = "make it smaller, or leave out the word right"
		return false
	}
	if known == 2 {
		sh.s.fail(sh.n, "this does not say where the right angle is").Help = fmt.Sprintf("say so: angle %s = 90°", sh.letters[0])
		return false
	}
	sh.fixAngle(angleAt(2), 90)
	sh.assume("the right angle is taken to be at %s", 2, "angle %s = 90°")
	return true
}

// assume keeps what is taken for granted, for when the data do not bear it; how
// says it of the first corner instead.
func (sh *shape) assume(what string, corner int, how string) {
	sh.assumed = fmt.Sprintf(what+"; say where else: "+how, sh.letters[corner], sh.letters[0])
}

// known is the one side or angle of a triangle that is given.
func (sh *shape) known(of func(int) element) int {
	for i := range 3 {
		if sh.datum(of(i)) != nil {
			return i
		}
	}
	return -1
}

// twoEqual makes two sides of an isosceles triangle equal, where the data leave
// open which: those at the last corner, unless that cannot be.
func (sh *shape) twoEqual() bool {
	sides, angles := sh.count(true), sh.count(false)
	switch {
	case sh.hasEquals(), sides == 3, angles > 1, sides == 2 && angles == 1:
		return true
	case sides == 2:
		return sh.equalToOne()
	}
	apex := 2
	if i := sh.known(angleAt); i >= 0 {
		if v := sh.datum(angleAt(i)); v.rat != nil && v.rat.Cmp(big.NewRat(90, 1)) >= 0 {
			apex = i // a triangle has but one such angle
		}
	}
	sh.meetAt(apex)
	return true
}

// meetAt makes the sides equal that meet at a corner.
func (sh *shape) meetAt(apex int) {
	e, f := opposite((apex+2)%3), opposite((apex+1)%3)
	sh.equal(e, f)
	sh.assumed = fmt.Sprintf("the equal sides are taken to be %s and %s; say which else: with %s = %s",
		sh.describe(e), sh.describe(f), sh.describe(opposite((apex+1)%3)), sh.describe(opposite(apex)))
}

// equalToOne has two sides: they are equal, or the third is equal to that one of
// them with which it makes a triangle. If it is so with either, the equal sides are
// those at the last corner, unless these two are unequal themselves.
func (sh *shape) equalToOne() bool {
	open := sh.missingSide()
	j, k := (open+1)%3, (open+2)%3
	a, b := sh.datum(opposite(j)).rat, sh.datum(opposite(k)).rat
	two := big.NewRat(2, 1)
	switch {
	case a == nil || b == nil:
	case a.Cmp(b) == 0:
		return true
	case a.Cmp(new(big.Rat).Mul(two, b)) >= 0:
		sh.equal(opposite(open), opposite(j))
		return true
	case b.Cmp(new(big.Rat).Mul(two, a)) >= 0:
		sh.equal(opposite(open), opposite(k))
		return true
	}
	if open < 2 {
		sh.meetAt(2)
		return true
	}
	sh.s.fail(sh.n, "this does not say which two sides are equal").Help = fmt.Sprintf("say so: with %s = %s", sh.describe(opposite(open)), sh.describe(opposite(j)))
	return false
}

// hasEquals tells whether two sides or angles are given as equal.
func (sh *shape) hasEquals() bool {
	for _, c := range sh.classes {
		if len(c.elems) > 1 {
			return true
		}
	}
	return false
}

// agree holds the data against each other.
func (sh *shape) agree(st *program.State) error {
	for _, rule := range sh.rules {
		if err := rule(st); err != nil {
			return err
		}
	}
	for _, u := range sh.unlike {
		if err := sh.alikeIn(st, u); err != nil {
			return err
		}
	}
	return nil
}

func (sh *shape) alikeIn(st *program.State, u unlike) error {
	x, y := "", ""
	if u.e.b < 0 {
		a, err := u.x.size(st)
		if err != nil {
			return err
		}
		b, err := u.y.size(st)
		if err != nil {
			return err
		}
		if sign, err := a.Cmp(b); err != nil || sign == 0 {
			return err
		}
		x, y = a.String(), b.String()
	} else {
		a, err := real1(st, *u.x)
		if err != nil {
			return err
		}
		b, err := real1(st, *u.y)
		if err != nil {
			return err
		}
		if a.Equal(b) {
			return nil
		}
		x, y = geom.Show(a), geom.Show(b)
	}
	return &program.Fault{
		Text: fmt.Sprintf("%s is %s and %s is %s, and in this %s they are equal", sh.describe(u.e), x, sh.describe(u.f), y, sh.kind),
		Help: "leave one of the two out",
	}
}

// traits tells what a triangle is where it is not what it should be, and what would mend that.
func (sh *shape) traits(list []string) func([]geom.Point) (is, help string) {
	return func(ps []geom.Point) (is, help string) {
		if len(ps) != 3 {
			return "", ""
		}
		is = geom.KindOfTriangle([3]geom.Point(ps))
		for _, t := range list {
			if t == "isosceles" && !isosceles(ps) {
				return "not isosceles", "leave out isosceles, or make two sides equal"
			}
			if (t == "acute" || t == "right" || t == "obtuse") && t != is {
				wanted := map[string]string{"acute": "less than 90°", "right": "90°", "obtuse": "more than 90°"}[t]
				return is + ", not " + t, fmt.Sprintf("leave out %s, or make angle %s %s", t, sh.letters[widest(ps)], wanted)
			}
		}
		return "", ""
	}
}

// widest is the corner of a triangle with the greatest angle.
func widest(ps []geom.Point) (corner int) {
	most := 0.0
	for i := range ps {
		if side := geom.Dist2(ps[(i+1)%3], ps[(i+2)%3]).Float(); side > most {
			corner, most = i, side
		}
	}
	return corner
}

// isosceles tells whether two sides of a triangle are equal.
func isosceles(ps []geom.Point) bool {
	a, b, c := geom.Dist2(ps[1], ps[2]), geom.Dist2(ps[2], ps[0]), geom.Dist2(ps[0], ps[1])
	return a.Equal(b) || b.Equal(c) || c.Equal(a)
}
