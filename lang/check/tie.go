package check

import (
	"fmt"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// tie says that an element of a shape is so many times another: AB = 3/2 BC.
type tie struct {
	e, f element
	k    *big.Rat
}

// multiple reads a multiple of an element: 2 BC · 3/2 * BC · half BC · angle A/2.
func (sh *shape) multiple(e *syntax.Expr) (of element, k *big.Rat, ok bool) {
	if e.Neg || len(e.Tail) > 0 {
		return of, nil, false
	}
	k = big.NewRat(1, 1)
	found := false
	take := func(f *syntax.Factor, divide bool) bool {
		x := big.NewRat(1, 1)
		own, is := sh.elementOf(f.Value)
		switch {
		case f.Square || is && (found || divide):
			return false
		case is:
			of, found = own, true
		case f.Value.Number == "" || f.Value.Unit != "":
			return false
		default:
			if _, ok := x.SetString(f.Value.Number); !ok || x.Sign() == 0 {
				return false
			}
		}
		if divide {
			x.Inv(x)
		}
		if f.Half {
			x.Mul(x, big.NewRat(1, 2))
		}
		k.Mul(k, x)
		return true
	}
	ok = take(e.Head.Head, false)
	for _, t := range e.Head.Tail {
		ok = ok && take(t.Factor, t.Op == "/")
	}
	return of, k, ok && found
}

// whole turns an equation of multiples about: 2 BC = 3 CA = 12 says that BC is 6, and
// 3/2 CA.
func (t tie) whole(c *class, others []tie) (*class, []tie) {
	part := new(big.Rat).Inv(t.k)
	out := &class{elems: []element{t.f}}
	if c.value != nil {
		v := scale(*c.value, part)
		out.value = &v
	}
	var rest []tie
	for _, o := range others {
		rest = append(rest, tie{f: o.f, k: new(big.Rat).Mul(o.k, part)})
	}
	return out, rest
}

// byTies is what an element is by those that it is a multiple of; seen are the
// elements that ask for it.
func (sh *shape) byTies(e element, seen []element) *expr {
	for _, t := range sh.ties {
		if t.e != e && !sh.same(t.e, e) || slices.Contains(seen, t.f) {
			continue
		}
		if v := sh.datumBut(t.f, append(seen, e, t.e)); v != nil {
			times := scale(*v, t.k)
			return &times
		}
	}
	return nil
}

// holdTies proves that the corners have the multiples that the source gives.
func (sh *shape) holdTies(ps []geom.Point) error {
	for i := 0; i < len(sh.ties); i += 2 { // each stands there both ways
		t := sh.ties[i]
		if t.e.b < 0 {
			is, want := sh.corner(ps, t.e.a), sh.corner(ps, t.f.a).Mul(t.k)
			sign, err := is.Cmp(want)
			if err != nil {
				return err
			}
			if sign != 0 {
				return sh.disagree(t.e, is.String(), want.String())
			}
			continue
		}
		is, want := geom.Dist(ps[t.e.a], ps[t.e.b]), geom.Dist(ps[t.f.a], ps[t.f.b]).Mul(ps[0].X.Field().Rat(t.k))
		if !is.Equal(want) {
			return sh.disagree(t.e, geom.Show(is), geom.Show(want))
		}
	}
	return nil
}

// chooseTied leaves to chance what a multiple is of, where nothing gives it: the
// greater side is as long as plain ones are, and two angles leave room for a third.
func (sh *shape) chooseTied() {
	for _, t := range sh.ties {
		switch {
		case sh.datum(t.f) != nil || t.k.Cmp(big.NewRat(1, 1)) < 0:
		case t.f.b >= 0:
			sh.chanceSide(t.f, new(big.Rat).Quo(rat(7, 1), t.k))
		case sh.kind == "triangle" && sh.datum(sh.thirdOf(t)) != nil:
			sh.split(t, *sh.datum(sh.thirdOf(t)))
		default:
			part, _ := new(big.Rat).Quo(rat(125, 1), new(big.Rat).Add(t.k, rat(1, 1))).Float64()
			sh.chanceAngle(t.f, max(1, int64(part)))
		}
	}
}

// thirdOf is the angle of a triangle that a tie of the others leaves.
func (sh *shape) thirdOf(t tie) element { return angleAt(3 - t.e.a - t.f.a) }

// split works out an angle of a triangle of which another is a multiple, from the third.
func (sh *shape) split(t tie, third expr) {
	part := new(big.Rat).Inv(new(big.Rat).Add(rat(1, 1), t.k))
	sh.set(t.f, expr{node: sh.n, angle: true, size: func(st *program.State) (geom.Angle, error) {
		a, err := third.size(st)
		return geom.Degrees(rat(180, 1)).Add(a.Mul(rat(-1, 1))).Mul(part), err
	}})
}

// makes tells whether a shape makes that slot.
func (sh *shape) makes(slot int) bool {
	if sh == nil {
		return false
	}
	at := slices.Index(sh.slots, slot)
	return at >= 0 && sh.fresh[at]
}

// unmade refuses a value that is said with corners that the same line makes, unless it
// is a multiple of one side or angle.
func (sh *shape) unmade() {
	text := sh.s.span(sh.term).Text()
	sh.s.fail(sh.term, "%s speaks of corners of the %s that this line makes", text, sh.kind).Help = fmt.Sprintf(
		"only a multiple of one of its own sides or angles may stand here, as in %s%s = 3/2 %s%s", sh.letters[0], sh.letters[1], sh.letters[1], sh.letters[2])
}
