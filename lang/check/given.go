package check

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// given expands what is there from the start.
func (s *scope) given(g *syntax.Given) {
	switch {
	case g.Points != nil && s.standsApart(g.Points.Names):
		s.freeBeside(g.Points.Names)
	case g.Points != nil:
		for i, r := range g.Points.Names {
			s.freePoint(r, i, g.Points.Names)
		}
	case g.Line != nil:
		s.givenLine(g.Line)
	case g.Circle != nil:
		s.givenCircle(g.Circle)
	case g.Angle != nil:
		s.givenAngle(g.Angle)
	case g.Length != nil:
		s.givenLength(g.Length)
	case g.Shape != nil:
		s.givenShape(g.Shape)
	case g.Point != nil:
		s.placed(g.Point, figure.Given)
	}
}

// scatter is where a plain hand puts free points one after the other: no two
// distances alike, no right angle, no level pair.
var scatter = [][2]*big.Rat{
	{rat(0, 1), rat(0, 1)}, {rat(7, 1), rat(1, 1)}, {rat(21, 10), rat(46, 10)}, {rat(-21, 10), rat(32, 10)},
	{rat(94, 10), rat(59, 10)}, {rat(37, 10), rat(-31, 10)}, {rat(-3, 1), rat(-14, 10)}, {rat(64, 10), rat(79, 10)},
}

func rat(a, b int64) *big.Rat { return big.NewRat(a, b) }

// fourths are where the last of four points is whose joins are to meet, by the point that the
// first is joined to: across from the third or the first, and not over a middle. Across from
// the second it is anyway.
var fourths = map[int][2]*big.Rat{1: {rat(58, 10), rat(-22, 10)}, 3: {rat(61, 10), rat(58, 10)}}

// freePoint makes the ith of some points that may be anywhere. From five on they go round, so
// that they are the corners of a polygon in their order.
func (s *scope) freePoint(r *syntax.Ref, i int, all []*syntax.Ref) {
	slot, ok := s.newPoint(r)
	if !ok {
		return
	}
	s.draw(slot, figure.Given)
	at := habitOf(i, len(all))
	fourth, crosses := fourths[s.across(namesIn(all...))]
	if crosses = crosses && i == 3; crosses {
		at = fourth
	}
	if len(all) < 5 && !crosses || s.c.scattered+s.c.fixed != i {
		s.freeAt(r.Node, slot)
		return
	}
	s.c.scattered++
	s.freeAbout(r.Node, slot, at[0], at[1])
}

// habitOf is where the ith of n free points stands on an empty sheet.
func habitOf(i, n int) [2]*big.Rat {
	if n < 5 {
		return scatter[i]
	}
	bearing, _ := row{ahead: n}.bearing(i).Float64()
	sin, cos := math.Sincos((bearing + 115) * math.Pi / 180)
	return [2]*big.Rat{rat(int64(math.Round(46+46*cos)), 10), rat(int64(math.Round(36+36*sin)), 10)}
}

// freeAt leaves a point's place to chance.
func (s *scope) freeAt(n syntax.Node, slot int) {
	k := s.c.scattered + s.c.fixed
	for later := s.fixedLater(); k < len(scatter) && slices.ContainsFunc(later, func(p place) bool { return p.on(scatter[k]) }); k++ {
		s.c.scattered++
	}
	d := scatter[k%len(scatter)]
	shift := rat(int64(k/len(scatter)*3), 2)
	s.c.scattered++
	s.freeAbout(n, slot, new(big.Rat).Add(d[0], shift), new(big.Rat).Add(d[1], shift))
}

// freeAbout leaves a point's place to chance, about that of a plain hand.
func (s *scope) freeAbout(n syntax.Node, slot int, right, up *big.Rat) {
	x := s.input(n, program.Abscissa, s.slot(slot).Name, right)
	if s.c.freeLines > 0 {
		up = new(big.Rat).Add(up, rat(26, 10)) // clear of the level one
	}
	y := s.input(n, program.Ordinate, s.slot(slot).Name, up)
	s.emit(n, func(st *program.State) error {
		st.Set(slot, geom.Point{X: st.Input(x), Y: st.Input(y)})
		return nil
	})
}

// on tells whether a free point would stand all but on what is fixed there.
func (p place) on(at [2]*big.Rat) bool {
	x, _ := at[0].Float64()
	y, _ := at[1].Float64()
	away := math.Hypot(p.x-x, p.y-y)
	return away < nearFixed || math.Abs(away-p.r) < nearFixed
}

// nearFixed is how near, in units, what is left to chance may come to a point that is
// fixed later.
const nearFixed = 0.5

// pointOrNew is a known point, or one that is made here, at its coordinates if
// it has some, else left to chance.
func (s *scope) pointOrNew(p *syntax.CoordPoint) (int, bool) { return s.pointOr(p, s.freeAt) }

// pointOr is pointOrNew where some other way leaves a place to chance.
func (s *scope) pointOr(p *syntax.CoordPoint, free func(n syntax.Node, slot int)) (int, bool) {
	if p.At == nil && p.Point.Name == "" && len(p.Point.Points) == 1 {
		name, ok := s.indexed(p.Point.Points[0].Name, p.Point.Points[0].Index)
		if !ok {
			return 0, false
		}
		if _, known := s.names[name]; known {
			return s.point(p.Point)
		}
	}
	slot, ok := s.newPoint(p.Point)
	if !ok {
		return 0, false
	}
	s.draw(slot, figure.Given)
	s.slot(slot).Mentioned = true // by the line or circle that is given with it
	if p.At != nil {
		return slot, s.coords(p.At, slot)
	}
	free(p.Node, slot)
	return slot, true
}

// coords puts a point at its coordinates.
func (s *scope) coords(at *syntax.Coords, slot int) bool {
	s.c.fixed++
	x, ok1 := s.expr(at.X, wantLength)
	y, ok2 := s.expr(at.Y, wantLength)
	if !ok1 || !ok2 {
		return false
	}
	if at.About {
		size := largest(x, y)
		x, y = s.aboutBy(x, size), s.aboutBy(y, size)
	}
	s.emit(at.Node, func(st *program.State) error {
		px, err := real1(st, x)
		if err != nil {
			return err
		}
		py, err := real1(st, y)
		if err != nil {
			return err
		}
		st.Set(slot, geom.Point{X: px, Y: py})
		return nil
	})
	return true
}

// real1 is the value of a length that must be constructible.
func real1(st *program.State, e expr) (geom.Real, error) {
	x, err := e.value(st)
	if err != nil {
		return nil, err
	}
	r, ok := x.Constructible()
	if !ok {
		return nil, &program.Fault{Text: "a length with π in it cannot be constructed"}
	}
	return r, nil
}

// plainRadii are those of a plain hand's given circles, one after the other: the
// later ones look to a figure that has grown.
var plainRadii = []*big.Rat{rat(24, 10), rat(11, 10), rat(8, 10)}

// meetingRadii are those of circles that are to meet each other: of about one size, so
// that they cross steeply.
var meetingRadii = []*big.Rat{rat(45, 10), rat(34, 10), rat(26, 10)}

// roomyRadius is that of a circle on which there are to be many points.
var roomyRadius = rat(28, 10)

// givenCircle makes a circle and, where it is new, its centre.
func (s *scope) givenCircle(g *syntax.GivenCirc) {
	slot, ok := s.newObject(g.Name, program.Circle)
	if ok {
		s.draw(slot, figure.Given)
		s.slot(slot).Ink.Whole = true
	}
	known := len(s.c.prog.Slots)
	centre, ok1 := s.givenCentre(g, slot)
	if !ok1 {
		return
	}
	s.c.centres[slot] = centre
	if centre >= known {
		s.c.circleOf[centre] = slot
	}
	var square func(*program.State) (geom.Real, error)
	ok2 := true
	if g.Any || g.Radius == nil && g.Opening.Through == nil {
		plain := plainRadii
		if s.roundAhead(g.Name.Name) {
			plain = meetingRadii
		}
		radius := plain[s.c.circles%len(plain)]
		if r := s.rows[s.span(g.Name.Node).Text()]; r != nil && r.ahead > 4 {
			radius = roomyRadius
		}
		square, ok2 = s.anyOpening(&g.Opening, g.Node, "circle "+s.span(g.Name.Node).Text(), radius)
		s.c.circles++
	} else {
		square, ok2 = s.opening(&g.Opening, g.Node, centre, "circle "+s.span(g.Name.Node).Text())
	}
	if ok && ok2 {
		s.emit(g.Node, func(st *program.State) error { return setCircle(st, slot, centre, square) })
		s.through(g.Opening.Through, slot)
	}
}

// givenCentre is the circle's centre; one without a name is not drawn. Beside shapes and
// angles a circle stands clear of them, unless it is to meet something.
func (s *scope) givenCentre(g *syntax.GivenCirc, circle int) (int, bool) {
	free := s.freeAt
	if s.c.bodies > 0 && len(s.meets[g.Name.Name]) == 0 {
		free = func(n syntax.Node, slot int) { s.freeClear(n, slot, circle, -3, -3, 3, 3) }
	}
	if g.Centre != nil {
		return s.pointOr(g.Centre, free)
	}
	centre := s.add(program.Point, g.Node)
	free(g.Node, centre)
	return centre, true
}

// plainLengths are what a plain hand gives, one after the other: no two alike.
var plainLengths = []*big.Rat{rat(4, 1), rat(11, 2), rat(3, 1), rat(47, 10), rat(22, 10)}

// givenLength is a length shown as a bar beside the figure.
func (s *scope) givenLength(g *syntax.GivenLen) {
	slot, ok := s.newObject(g.Name, program.Length)
	if ok {
		s.draw(slot, figure.Given)
		s.letter(slot)
	}
	if g.Size == nil {
		if ok {
			in := s.input(g.Node, program.Opening, s.slot(slot).Name, plainLengths[s.c.lengths%len(plainLengths)])
			s.c.lengths++
			s.emit(g.Node, func(st *program.State) error { st.Set(slot, pure(st.Input(in))); return nil })
		}
		return
	}
	e, ok2 := s.expr(g.Size, wantLength)
	if !ok || !ok2 {
		return
	}
	s.emit(g.Node, func(st *program.State) error {
		r, err := real1(st, e)
		if err != nil {
			return err
		}
		if r.Sign() <= 0 {
			span := s.span(e.node)
			return &program.Fault{Text: fmt.Sprintf("the length is %s, and it must be more than 0", geom.Show(r)), Span: &span}
		}
		st.Set(slot, pure(r))
		return nil
	})
}

// givenAngle makes what is missing of BAC so that the angle has its size, and
// draws its arms.
func (s *scope) givenAngle(g *syntax.GivenAngle) {
	e := expr{}
	ok := true
	if g.Size != nil {
		e, ok = s.expr(g.Size, wantAngle)
	}
	conds, ok2 := s.conds(g.Sides)
	if g.Angle.Name != "" || len(g.Angle.Points) != 3 {
		s.fail(g.Angle.Node, "an angle is named by three points, the vertex in the middle").Help = "given angle BAC = 50°"
		return
	}
	there := len(s.c.prog.Slots)
	v, new1 := s.oldOrNew(g.Angle.Points[1])
	first, new2 := s.oldOrNew(g.Angle.Points[0])
	last, new3 := s.oldOrNew(g.Angle.Points[2])
	if v < 0 || first < 0 || last < 0 || !ok || !ok2 {
		return
	}
	s.c.bodies++
	if new1 {
		s.freeClear(g.Node, v, there, 0, 0, 6, 4)
	}
	switch {
	case !new2 && !new3:
		s.fail(g.Node, "%s is there already, so its angle cannot be given", s.span(g.Angle.Node).Text()).Help = "claim it instead, or leave one point of it to be made"
		return
	case new2 && new3:
		s.levelFrom(g.Node, first, v)
		s.arm(g.Node, last, v, first, e, conds, 1)
	case new3:
		s.arm(g.Node, last, v, first, e, conds, 1)
	default:
		s.arm(g.Node, first, v, last, e, conds, -1)
	}
	s.c.arms[v] = pair{first, last}
	for _, end := range []int{first, last} {
		slot := s.add(program.Line, g.Node)
		s.draw(slot, figure.Given)
		s.slot(slot).Ink.Label = nil
		s.straight(g.Node, slot, v, end, true, false)
		s.bar(v, end, slot, reachRay)
	}
}

// freeClear leaves a point's place to chance so that what reaches so far about it, for a
// plain hand, stands clear of all that was there before some slot.
func (s *scope) freeClear(n syntax.Node, slot, there int, left, low, right, high int64) {
	place := s.clear(n, s.slot(slot).Name, there)
	if place.x < 0 {
		s.freeAt(n, slot)
		return
	}
	s.c.scattered++
	s.emit(n, func(st *program.State) error {
		unit := st.Field.Rat(nearRat(st.Program.Hand()/program.PlainReach, 4))
		at := func(x, y int64) geom.Point { return geom.Point{X: unit.MulInt(x), Y: unit.MulInt(y)} }
		st.Set(slot, place.put(st, []geom.Point{at(0, 0), at(left, low), at(right, high)})[0])
		return nil
	})
}

// oldOrNew is a known point's slot, or a new one's, to be placed; -1 on failure.
func (s *scope) oldOrNew(p *syntax.PointName) (slot int, isNew bool) {
	name, ok := s.indexed(p.Name, p.Index)
	if !ok {
		return -1, false
	}
	if _, known := s.names[name]; known {
		slot, ok = s.lookup(name, p.Node, program.Point)
		if !ok {
			return -1, false
		}
		return slot, false
	}
	slot = s.declare(name, program.Point, p.Node)
	s.draw(slot, figure.Given)
	s.slot(slot).Mentioned = true // a corner of a shape that is drawn
	return slot, true
}

// levelFrom puts a point level to the right of another, as far as chance has it.
func (s *scope) levelFrom(n syntax.Node, slot, from int) {
	s.c.level = true
	in := s.input(n, program.Opening, s.names2(from, slot), rat(6, 1))
	s.emit(n, func(st *program.State) error {
		p := st.Point(from)
		st.Set(slot, geom.Point{X: p.X.Add(st.Input(in)), Y: p.Y})
		return nil
	})
}

// arm puts the end of an angle's second arm; turn is 1 for left of the first
// arm, -1 for right. Without a size the angle is left to chance.
func (s *scope) arm(n syntax.Node, slot, vertex, other int, e expr, conds []cond, turn int) {
	length := s.input(n, program.Opening, s.names2(vertex, slot), rat(5, 1))
	chance := -1
	if e.size == nil {
		chance = s.input(n, program.Bearing, s.slot(slot).Name, rat(52, 1))
	}
	s.emit(n, func(st *program.State) error {
		if chance >= 0 {
			d := rationalTurn(st, chance)
			return setBearing(st, slot, vertex, other, st.Input(length), d, conds, turn)
		}
		size, err := e.size(st)
		if err != nil {
			return err
		}
		if err := s.under180(size, e); err != nil {
			return err
		}
		cos, sin, err := size.CosSin(st.Field)
		if err != nil {
			return err
		}
		return setBearing(st, slot, vertex, other, st.Input(length), geom.Vector{X: cos, Y: sin}, conds, turn)
	})
}

// setBearing puts a point at a distance from a vertex, turned from the way to
// another point. Where phrases say a side, they choose it.
func setBearing(st *program.State, slot, vertex, other int, dist geom.Real, by geom.Vector, conds []cond, turn int) error {
	v, o := st.Point(vertex), st.Point(other)
	if v.Equal(o) {
		return sameSpot(st, vertex, other)
	}
	cos, sin := by.X, by.Y
	if turn < 0 {
		sin = sin.Neg()
	}
	way := o.Sub(v)
	if len(conds) > 0 {
		sin = sin.Mul(geom.EitherSign(way.Norm2()))
	}
	both := []geom.Point{geom.Along(v, way.Turn(cos, sin), dist)}
	if len(conds) > 0 && sin.Sign() != 0 {
		both = append(both, geom.Along(v, way.Turn(cos, sin.Neg()), dist))
	}
	for _, p := range both {
		ok, _, err := holdAll(st, conds, p, both)
		if err != nil {
			return err
		}
		if ok {
			st.Set(slot, p)
			return nil
		}
	}
	return &program.Fault{Text: noneFits(st.Program.Slots[slot].Name, both, conds[0].text)}
}

// under180 refuses a size that no angle of a figure has.
func (s *scope) under180(size geom.Angle, e expr) error {
	low, err := size.Cmp(geom.Degrees(new(big.Rat)))
	if err != nil {
		return err
	}
	high, err := size.Cmp(geom.Degrees(rat(180, 1)))
	if err != nil {
		return err
	}
	if low > 0 && high < 0 {
		return nil
	}
	span, help := s.span(e.node), ""
	if high > 0 {
		help = "for an angle over 180° give the rest of the full turn, to the other side: right of AB"
	}
	return &program.Fault{Text: fmt.Sprintf("an angle lies between 0° and 180°, and this is %s", size), Help: help, Span: &span}
}
