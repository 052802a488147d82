package check

import (
	"cmp"
	"fmt"
	"math/big"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// spot gives the places that a point may take, best first.
type spot func(*program.State) ([]geom.Point, error)

// places is what the source says of a point's place, sorted by what it is.
type places struct {
	fixed []spot  // a single place, or one and its mirror image
	loci  []locus // a curve that it lies on
	free  []spot  // a region that it lies in, by a point left to chance
	sides []curve // straights that it lies beside
	conds []cond
}

// locus is a curve that a point lies on.
type locus struct {
	on       curve
	centre   int  // for a distance from a point
	distance expr // its length
	isCircle bool // by distance
}

// placed makes the point after given or take.
func (s *scope) placed(p *syntax.PlacedPoint, role figure.Role) {
	var pl places
	good := true
	var at *syntax.Coords
	if p.At != nil {
		at = p.At
	} else {
		for _, place := range p.Places {
			good = s.place(&pl, place) && good
		}
	}
	slot, ok := s.newPoint(p.Point)
	if !ok {
		return
	}
	s.draw(slot, role)
	s.hideTwin(p, slot)
	s.lies(p, slot)
	if role != figure.Given {
		s.chosen(p, slot)
	}
	if at != nil {
		s.coords(at, slot)
		return
	}
	if good {
		s.settle(p.Node, slot, &pl)
	}
}

// hideTwin draws no second dot where a construction takes the centre of a
// circle whose centre is on the paper.
func (s *scope) hideTwin(p *syntax.PlacedPoint, slot int) {
	if s.depth == 0 || len(p.Places) != 1 || p.Places[0].Centre == nil {
		return
	}
	k, ok := s.circle(p.Places[0].Centre)
	if centre := s.centre(k); ok && centre >= 0 && s.slot(centre).Ink != nil && !s.slot(centre).Ink.Hidden {
		ink := s.slot(slot).Ink
		ink.Hidden, ink.Label = true, nil
		s.c.outer[slot] = centre
	}
}

// isTwin tells of a point that is there already, and drawn: see hideTwin.
func (s *scope) isTwin(p *syntax.PlacedPoint) bool {
	letters, ok := s.letters1(p.Point).(program.Letters)
	if !ok || len(letters) != 1 || len(p.Places) != 1 || p.Places[0].Centre == nil {
		return false
	}
	_, twin := s.c.outer[letters[0]]
	return twin
}

// place sorts one phrase of a point's place.
func (s *scope) place(pl *places, p *syntax.Place) bool {
	switch {
	case p.On != nil:
		return s.placeOn(pl, p)
	case p.Inside != nil:
		return s.placeInside(pl, p.Inside, p.Node, -1)
	case p.Outside != nil:
		return s.placeInside(pl, p.Outside, p.Node, 1)
	case p.Cond != nil:
		return s.placeCond(pl, p.Cond)
	case p.Centre != nil:
		k, ok := s.circle(p.Centre)
		pl.fixed = append(pl.fixed, func(st *program.State) ([]geom.Point, error) {
			return []geom.Point{st.Curve(k).Circle.C}, nil
		})
		return ok
	}
	return s.placeDistance(pl, p)
}

// placeOn is on a curve, on a circle maybe at an angle.
func (s *scope) placeOn(pl *places, p *syntax.Place) bool {
	c, ok := s.curve(p.On)
	if !ok {
		return false
	}
	if p.OnAngle == nil {
		pl.loci = append(pl.loci, locus{on: c})
		return true
	}
	if !c.circle {
		s.fail(p.OnAngle.Node, "%s is a line; only on a circle is a place given by an angle", c.text).Help = "say how far from which point: on " + c.text + ", 3 from A"
		return false
	}
	e, ok := s.expr(p.OnAngle, wantAngle) // round a circle one may count on: 306°, 378°
	if !ok {
		return false
	}
	pl.fixed = append(pl.fixed, func(st *program.State) ([]geom.Point, error) {
		size, err := e.size(st)
		if err != nil {
			return nil, err
		}
		cos, sin, err := size.CosSin(st.Field)
		if err != nil {
			return nil, err
		}
		k := st.Curve(c.slot)
		r := k.Circle.R2.Sqrt()
		return []geom.Point{k.Circle.C.Add(geom.Vector{X: cos.Mul(r), Y: sin.Mul(r)})}, nil
	})
	pl.loci = append(pl.loci, locus{on: c})
	return true
}

// bearing is the angle to a run at which a point is placed. One that is written out stays
// within a full turn: more is a slip of the pen, but a loop may well turn on and on.
func (s *scope) bearing(e *syntax.Expr) (expr, bool) {
	v, ok := s.expr(e, wantAngle)
	literal := len(e.Tail) == 0 && len(e.Head.Tail) == 0 && !e.Head.Head.Half && e.Head.Head.Value.Ref == nil
	if full := rat(360, 1); ok && literal && v.rat != nil && new(big.Rat).Abs(v.rat).Cmp(full) > 0 {
		turns := new(big.Rat).Quo(v.rat, full)
		whole := new(big.Rat).SetInt(new(big.Int).Quo(turns.Num(), turns.Denom()))
		rest := new(big.Rat).Sub(v.rat, whole.Mul(whole, full))
		s.fail(e.Node, "this is %s, and a full turn is 360°", geom.Degrees(v.rat)).Help = "write " + geom.Degrees(rest).String() + ", if the same place is meant"
		return v, false
	}
	return v, ok
}

// placeDistance is so far from a point: anywhere so far, or under an angle, or
// towards another point.
func (s *scope) placeDistance(pl *places, p *syntax.Place) bool {
	d, ok1 := s.expr(p.Distance, wantOpening)
	from, ok2 := s.point(p.From)
	if !ok1 || !ok2 {
		return false
	}
	switch {
	case p.Bearing != nil:
		return s.placeBearing(pl, p, d, from)
	case p.Towards != nil:
		to, ok := s.point(p.Towards)
		pl.fixed = append(pl.fixed, func(st *program.State) ([]geom.Point, error) {
			a, b := st.Point(from), st.Point(to)
			if a.Equal(b) {
				return nil, sameSpot(st, from, to)
			}
			r2, err := squareOf(st, d, s)
			if err != nil {
				return nil, err
			}
			return []geom.Point{geom.Along(a, b.Sub(a), r2.Sqrt())}, nil
		})
		return ok
	}
	pl.loci = append(pl.loci, locus{centre: from, distance: d, isCircle: true})
	return true
}

// placeBearing is so far from a point, turned from a run that starts there: to
// the left, unless a side is said.
func (s *scope) placeBearing(pl *places, p *syntax.Place, d expr, from int) bool {
	e, ok1 := s.bearing(p.Bearing)
	run, ok2 := s.distinct(p.To, 2)
	if !ok1 || !ok2 {
		return false
	}
	if run[0] != from && run[1] != from {
		s.fail(p.To.Node, "the angle is at %s, and %s does not start there", s.slot(from).Name, s.span(p.To.Node).Text()).Help = "name the arm from " + s.slot(from).Name
		return false
	}
	to := run[0] + run[1] - from
	pl.fixed = append(pl.fixed, func(st *program.State) ([]geom.Point, error) {
		v, o := st.Point(from), st.Point(to)
		if v.Equal(o) {
			return nil, sameSpot(st, from, to)
		}
		size, err := e.size(st)
		if err != nil {
			return nil, err
		}
		cos, sin, err := size.CosSin(st.Field)
		if err != nil {
			return nil, err
		}
		r2, err := squareOf(st, d, s)
		if err != nil {
			return nil, err
		}
		r, way := r2.Sqrt(), o.Sub(v)
		out := []geom.Point{geom.Along(v, way.Turn(cos, sin), r)}
		if sin.Sign() != 0 {
			out = append(out, geom.Along(v, way.Turn(cos, sin.Neg()), r))
		}
		return out, nil
	})
	return true
}

// placeCond is a side of a line or the like: a condition, and for a point that
// nothing else places a region to choose from.
func (s *scope) placeCond(pl *places, c *syntax.Cond) bool {
	test, ok := s.condTest(c)
	if !ok {
		return false
	}
	span := s.span(c.Node)
	pl.conds = append(pl.conds, cond{span.Text(), span, c.Nearest != nil || c.Farthest != nil, test})
	var line *syntax.Ref
	switch {
	case c.Of != nil:
		line = c.Of
	case c.SideOf != nil:
		line = c.SideOf
	case c.Same != nil:
		line = c.Same
	case c.Other != nil:
		line = c.Other
	case c.Between != nil:
		return s.alongLocus(pl, c.Between, c.And)
	case c.Beyond != nil:
		ps, ok := s.distinct(c.On, 2)
		if ok {
			pl.loci = append(pl.loci, locus{on: curve{slot: -1, from: ps[0], to: ps[1], run: true, text: s.span(c.On.Node).Text()}})
		}
		return ok
	default:
		return true
	}
	l, ok := s.line(line)
	if ok {
		pl.free, pl.sides = append(pl.free, s.besideLine(c.Node, l)), append(pl.sides, l)
	}
	return ok
}

func (s *scope) alongLocus(pl *places, ra, rb *syntax.Ref) bool {
	a, ok1 := s.point(ra)
	b, ok2 := s.point(rb)
	if !ok1 || !ok2 {
		return false
	}
	pl.loci = append(pl.loci, locus{on: curve{slot: -1, from: a, to: b, run: true, text: s.slot(a).Name + s.slot(b).Name}})
	return true
}

// settle emits the step that puts a point where its phrases say.
func (s *scope) settle(n syntax.Node, slot int, pl *places) {
	where, sure := s.spotOf(n, slot, pl)
	if where == nil {
		return
	}
	conds, loci := pl.conds, pl.loci
	for _, l := range loci {
		if !l.isCircle && !l.on.circle && l.on.slot >= 0 {
			s.c.metOn[slot] = append(s.c.metOn[slot], l.on.slot)
		}
	}
	name := s.slot(slot).Name
	tell := append(s.between(loci), s.tellers(curve{}, curve{})...)
	s.emit(n, func(st *program.State) error {
		all, err := where(st)
		if err != nil {
			return err
		}
		p, err := pickSpot(st, name, all, conds, sure, tell)
		if err != nil {
			return err
		}
		for _, l := range loci {
			if err := l.holds(st, name, p); err != nil {
				return err
			}
		}
		st.Set(slot, p)
		for _, l := range loci {
			if !l.isCircle && l.on.slot >= 0 {
				st.Passes(st.Curve(l.on.slot), slot)
			}
		}
		return nil
	})
}

// between is the straight of two points that a place lies at distances from, as what
// tells one such place from the other.
func (s *scope) between(loci []locus) []teller {
	if len(loci) != 2 || !loci[0].isCircle || !loci[1].isCircle {
		return nil
	}
	return s.tellerOf(loci[0].centre, loci[1].centre)
}

// pickSpot is the first place that fits; unless sure, a second one that fits is an error.
func pickSpot(st *program.State, name string, all []geom.Point, conds []cond, sure bool, tell []teller) (geom.Point, error) {
	var fit []geom.Point
	failed := ""
	for _, p := range all {
		ok, phrase, err := holdAll(st, conds, p, all)
		if err != nil {
			return geom.Point{}, err
		}
		if ok {
			fit = append(fit, p)
		} else {
			failed = phrase
		}
	}
	switch {
	case len(fit) == 0:
		return geom.Point{}, &program.Fault{Text: noneFits(name, all, failed), Range: true}
	case len(fit) > 1 && !sure:
		help := cmp.Or(meetingFacts{tell: tell}.offer(st, name, fit), "say on which side of a straight it is, or which end of a line it is nearest")
		return geom.Point{}, &program.Fault{
			Text:    fmt.Sprintf("%s may be at %s, and nothing says which", name, orPlaces(fit)),
			Help:    help,
			Unclear: fmt.Sprintf("%s may be at either of two places, and nothing says which", name),
		}
	}
	return fit[0], nil
}

// noneFits says which phrase keeps a point from every place it could be at.
func noneFits(name string, all []geom.Point, phrase string) string {
	switch len(all) {
	case 1:
		return fmt.Sprintf("%s would be at %s, which is not %s", name, all[0], phrase)
	case 2:
		return fmt.Sprintf("%s would be at %s, and neither is %s", name, orPlaces(all), phrase)
	}
	return fmt.Sprintf("no place for %s is %s", name, phrase)
}

func orPlaces(ps []geom.Point) string {
	if len(ps) == 2 {
		return ps[0].String() + " or " + ps[1].String()
	}
	return placesOf(ps)
}

// spotOf gives the places of a point; sure tells that the first one that fits is meant.
func (s *scope) spotOf(n syntax.Node, slot int, pl *places) (where spot, sure bool) {
	switch {
	case len(pl.fixed) > 1:
		s.fail(n, "%s is fixed twice", s.slot(slot).Name)
		return nil, false
	case len(pl.fixed) == 1:
		return pl.fixed[0], true
	case len(pl.loci) > 1 && !s.sameLine(pl):
		return s.crossLoci(pl.loci[0], pl.loci[1]), false
	case s.picksFree(slot, pl):
		return nil, false
	case len(pl.loci) > 0:
		return s.onLocus(n, slot, pl), true
	case len(pl.free) > 0:
		if len(pl.sides) > 0 {
			s.c.over[pl.sides[0].slot] = slot
		}
		return pl.free[0], true
	}
	s.fail(n, "this does not say where %s is", s.slot(slot).Name).Help = "say on what it lies, or how far from which point"
	return nil, false
}
