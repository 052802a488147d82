package check

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// givenLine makes a line: through points, parallel to another, or free.
func (s *scope) givenLine(g *syntax.GivenLine) {
	slot, ok := s.newObject(g.Name, program.Line)
	if ok {
		s.draw(slot, figure.Given)
	}
	switch {
	case len(g.Through) > 0:
		s.givenThrough(g, slot, ok)
	case g.Parallel != nil:
		s.givenParallel(g, slot, ok)
	case ok:
		s.freeLine(g, slot)
	}
}

func (s *scope) givenThrough(g *syntax.GivenLine, slot int, ok bool) {
	a, ok1 := s.pointOrNew(g.Through[0])
	if len(g.Through) == 1 {
		if ok && ok1 {
			s.lineAtSlope(g.Node, slot, func(st *program.State) geom.Point { return st.Point(a) })
		}
		return
	}
	b, ok2 := s.pointOrNew(g.Through[1])
	if !ok || !ok1 || !ok2 {
		return
	}
	if a == b {
		s.fail(g.Through[1].Node, "a line goes through two points, and %s is named twice", s.slot(a).Name)
		return
	}
	s.straight(g.Node, slot, a, b, false, false)
	s.bar(a, b, slot, reachLine)
}

func (s *scope) givenParallel(g *syntax.GivenLine, slot int, ok bool) {
	l, ok1 := s.line(g.Parallel)
	via, ok2 := -1, true
	if g.Via != nil {
		via, ok2 = s.pointOrNew(g.Via)
	}
	if !ok || !ok1 || !ok2 {
		return
	}
	in, side := -1, 1
	if via < 0 {
		in, side = s.aloof(g.Node, slot)
	}
	s.emit(g.Node, func(st *program.State) error {
		m, err := l.whole(st)
		if err != nil {
			return err
		}
		var p geom.Point
		if via >= 0 {
			p = st.Point(via)
		} else {
			p = geom.Along(m.P, m.D.Left(), st.Input(in).MulInt(int64(side)))
		}
		c := &program.Curve{Straight: &geom.Straight{Line: geom.Line{P: p, D: m.D}}}
		if via >= 0 {
			st.Passes(c, via)
		}
		st.Set(slot, c)
		return nil
	})
}

// distances are those of a plain hand's parallels, one after the other: no two lines
// of these fall together, and no two gaps are alike.
var distances = []struct {
	way  *big.Rat
	side int // 1 is left of the first line
}{{rat(3, 1), 1}, {rat(48, 10), 1}, {rat(62, 10), 1}, {rat(23, 10), -1}}

// aloof leaves to chance how far a parallel is from its line, and says on which side.
func (s *scope) aloof(n syntax.Node, slot int) (in, side int) {
	d := distances[s.c.parallels%len(distances)]
	s.c.parallels++
	return s.input(n, program.Opening, s.slot(slot).Name, d.way), d.side
}

// crossings are where a plain hand's further lines cross the first one.
var crossings = []*big.Rat{rat(0, 1), rat(-1, 1), rat(8, 1), rat(4, 1)}

// freeLine is a line left to chance. The first one is level: on an empty sheet that is
// how the sheet lies, and no choice. Further ones go aslant across it.
func (s *scope) freeLine(g *syntax.GivenLine, slot int) {
	n, k := g.Node, s.c.freeLines
	s.c.freeLines++
	sides := s.sidesAhead(g.Name.Name)
	switch {
	case len(sides) > 1:
		s.lineAcross(n, slot, sides[0], sides[1])
	case k > 0:
		x := s.input(n, program.Abscissa, s.slot(slot).Name, crossings[k%len(crossings)])
		s.lineAtSlope(n, slot, func(st *program.State) geom.Point {
			return geom.Point{X: st.Input(x), Y: st.Field.Int(0)}
		})
	case s.c.scattered+s.c.fixed == 0 && !slices.ContainsFunc(s.fixedLater(), func(p place) bool { return math.Abs(p.y)-p.r < nearFixed }):
		s.emit(n, func(st *program.State) error {
			zero, one := st.Field.Int(0), st.Field.Int(1)
			setLine(st, slot, geom.Line{P: geom.Point{X: zero, Y: zero}, D: geom.Vector{X: one, Y: zero}})
			return nil
		})
	default:
		s.lineBelow(n, slot)
	}
}

// lineAcross is a line that cuts two straights between points.
func (s *scope) lineAcross(n syntax.Node, slot int, first, second pair) {
	name := s.slot(slot).Name
	at := [2]int{s.input(n, program.Fraction, name, rat(37, 100)), s.input(n, program.Fraction, name, rat(58, 100))}
	s.emit(n, func(st *program.State) error {
		var on [2]geom.Point
		for k, side := range [2]pair{first, second} {
			p := st.Point(side[0])
			on[k] = p.Add(st.Point(side[1]).Sub(p).Scale(st.Input(at[k])))
		}
		if on[0].Equal(on[1]) {
			return &program.Fault{Text: "the line is to cut two straights at one place", Range: true}
		}
		setLine(st, slot, geom.Line{P: on[0], D: on[1].Sub(on[0])})
		return nil
	})
}

// lineBelow is a line below what is there: level, but aslant where something else is
// level, which it would look parallel to.
func (s *scope) lineBelow(n syntax.Node, slot int) {
	slope := rat(0, 1)
	if s.c.level {
		slope = rat(1, 4)
	}
	y := s.input(n, program.Ordinate, s.slot(slot).Name, rat(-4, 1))
	in := s.input(n, program.Slope, s.slot(slot).Name, slope)
	s.emit(n, func(st *program.State) error {
		zero, one := st.Field.Int(0), st.Field.Int(1)
		setLine(st, slot, geom.Line{P: geom.Point{X: zero, Y: st.Input(y)}, D: geom.Vector{X: one, Y: st.Input(in)}})
		return nil
	})
}

// setLine gives a slot a whole line.
func setLine(st *program.State, slot int, l geom.Line) {
	st.Set(slot, &program.Curve{Straight: &geom.Straight{Line: l}})
}

// slopes are those of a plain hand's lines, one after the other.
var slopes = []*big.Rat{rat(3, 4), rat(-3, 5), rat(7, 4), rat(-9, 5)}

// halvedSlope is that of a line whose angle with another is to be halved: steep, so that
// four straights are plainly apart.
var halvedSlope = rat(9, 5)

// transversalSlope is that of the first line across parallels: at about 58°, so that the
// two sizes of angles are told apart at a glance.
var transversalSlope = rat(8, 5)

// lineAtSlope is a line through a point in a direction left to chance.
func (s *scope) lineAtSlope(n syntax.Node, slot int, at func(*program.State) geom.Point) {
	slope := slopes[s.c.slopes%len(slopes)]
	switch {
	case s.halved[s.slot(slot).Name]:
		slope = halvedSlope
	case s.c.parallels > 0 && s.c.slopes == 0:
		slope = transversalSlope
	}
	in := s.input(n, program.Slope, s.slot(slot).Name, slope)
	s.c.slopes++
	s.emit(n, func(st *program.State) error {
		d := geom.Vector{X: st.Field.Int(1), Y: st.Input(in)}
		setLine(st, slot, geom.Line{P: at(st), D: d})
		return nil
	})
}
