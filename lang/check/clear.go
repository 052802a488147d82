package check

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// clearing is where a plain hand puts what it gives by itself: beside all that stands
// on the sheet, and on one level with it. By how much it is moved from there is left
// to chance.
type clearing struct {
	neighbours []int // the slots of what is there
	x, y       int   // inputs: how far it is moved, as parts of what there is; -1 on an empty sheet
	turn       int   // input: how it is turned; -1: it lies level
	below      bool  // it may stand below, too
	over       []int // what it is put over, that it may meet it
	circle     int   // what it is put round, that its sides may meet it; -1: nothing
	sides      [][2]int
	later      []place // what is fixed later
}

// clear is a place for what is given by itself, before whose own slots there were so many.
func (s *scope) clear(n syntax.Node, name string, there int) clearing {
	c := s.clearOf(there)
	if len(c.neighbours) > 0 {
		c.x = s.input(n, program.Fraction, name, rat(0, 1))
		c.y = s.input(n, program.Fraction, name, rat(0, 1))
	}
	return c
}

// mostHeeded is how many of the latest things a plain hand keeps clear of.
const mostHeeded = 150

// clearOf is a clearing that keeps to its place, of what was drawn before some slot, but for some.
func (s *scope) clearOf(there int, but ...int) clearing {
	c := clearing{x: -1, y: -1, turn: -1, circle: -1, later: s.fixedLater()}
	for i, slot := range s.c.prog.Slots[max(0, there-mostHeeded):there] {
		i += max(0, there-mostHeeded)
		ink := slot.Ink
		if ink == nil || slices.Contains(but, i) {
			continue
		}
		if slot.Kind == program.Point || slot.Kind == program.Line || slot.Kind == program.Circle && ink.Whole {
			c.neighbours = append(c.neighbours, i)
		}
	}
	return c
}

// turned is a clearing for what is turned as well: aslant where a line lies level.
func (s *scope) turned(n syntax.Node, name string, there int) clearing {
	c := s.clear(n, name, there)
	if s.c.freeLines > 0 && len(c.neighbours) > 0 {
		c.turn = s.input(n, program.Bearing, name, rat(17, 1))
	}
	return c
}

// put moves corners to the clearing.
func (c clearing) put(st *program.State, ps []geom.Point) []geom.Point {
	if c.turn >= 0 {
		d := rationalTurn(st, c.turn)
		ps = geom.Similar(ps, 0, 1, ps[0], ps[0].Add(ps[1].Sub(ps[0]).Turn(d.X, d.Y)))
	}
	if c.x >= 0 {
		by, size := c.beside(st, extentOf(ps))
		if c.circle >= 0 {
			by = c.round(st, ps)
		}
		unit := st.Field.Rat(size)
		by.X = by.X.Add(unit.Mul(st.Input(c.x)))
		by.Y = by.Y.Add(unit.Mul(st.Input(c.y)))
		ps = geom.Shift(ps, 0, ps[0].Add(by))
	}
	if slices.ContainsFunc(c.later, func(p place) bool { return p.touches(ps) }) {
		by, _ := c.beside(st, extentOf(ps), c.later...)
		ps = geom.Shift(ps, 0, ps[0].Add(by))
	}
	return ps
}

func extentOf(ps []geom.Point) extent {
	own := nowhere()
	for _, p := range ps {
		own.add(p.X.Float(), p.Y.Float())
	}
	return own
}

// nearSide is how near, in units, what is fixed later may come to the sides of a shape.
const nearSide = 0.15

// touches tells whether what is fixed stands all but on the sides of a shape, or at a corner.
func (at place) touches(ps []geom.Point) bool {
	for i, p := range ps {
		q := ps[(i+1)%len(ps)]
		x, y := at.x-p.X.Float(), at.y-p.Y.Float()
		u, v := q.X.Sub(p.X).Float(), q.Y.Sub(p.Y).Float()
		t := math.Max(0, math.Min(1, (x*u+y*v)/(u*u+v*v)))
		if math.Hypot(x-t*u, y-t*v)-at.r < nearSide {
			return true
		}
	}
	return false
}

// sagitta is how far a chord is from the centre, as a part of the radius, with which a side
// cuts a circle.
const sagitta = 0.45

// round is the way by which corners come round the circle: so that the side that it is to
// meet is a chord, or the middle of them all is its centre where several are.
func (c clearing) round(st *program.State, ps []geom.Point) geom.Vector {
	k := st.Curve(c.circle).Circle
	middle := func(of ...geom.Point) (x, y float64) {
		for _, p := range of {
			x, y = x+p.X.Float()/float64(len(of)), y+p.Y.Float()/float64(len(of))
		}
		return x, y
	}
	x, y := middle(ps...)
	if len(c.sides) == 1 {
		u, v := middle(ps[c.sides[0][0]], ps[c.sides[0][1]])
		way := sagitta * math.Sqrt(k.R2.Float()) / math.Hypot(x-u, y-v)
		x, y = u+(x-u)*way, v+(y-v)*way
	}
	den := int64(math.Ceil(fineness / st.Program.Hand()))
	return geom.Vector{X: st.Field.Rat(nearRat(k.C.X.Float()-x, den)), Y: st.Field.Rat(nearRat(k.C.Y.Float()-y, den))}
}

// beside is the way from where something lies to its clearing, and the size of the two
// together that it is moved by parts of; beside further places, too, if some are said.
func (c clearing) beside(st *program.State, own extent, further ...place) (geom.Vector, *big.Rat) {
	hand := st.Program.Hand()
	gap := hand / gapPart
	all, lines := c.taken(st)
	for _, p := range further {
		all.add(p.x-p.r, p.y-p.r)
		all.add(p.x+p.r, p.y+p.r)
	}
	x, y := own.next(all, gap, c.below)
	if !all.empty() && math.Max(all.right, own.right+x)-math.Min(all.left, own.left+x) > mostWide*hand {
		x, y = all.left-own.left, all.high+gap-own.low
	}
	for _, l := range lines {
		dx, dy := l.push(own.shifted(x, y), gap)
		x, y = x+dx, y+dy
	}
	size := math.Max(all.size(), own.size())
	den := int64(math.Ceil(fineness / hand))
	return geom.Vector{X: st.Field.Rat(nearRat(x, den)), Y: st.Field.Rat(nearRat(y, den))}, nearRat(size, den)
}

// next is the way from where something lies to beside all that is there, on one level
// with it; below, where it may stand there and that keeps the whole together; and to the middle of an empty
// sheet. Beside what is low, a point say, it stands about the level of its middle.
func (e extent) next(all extent, gap float64, mayBelow bool) (x, y float64) {
	if all.empty() {
		return -(e.left + e.right) / 2, gap - e.low
	}
	high, there := e.high-e.low, all.high-all.low
	beside := math.Hypot(all.width()+gap+e.width(), math.Max(there, high))
	if below := math.Hypot(math.Max(all.width(), e.width()), there+gap+high); mayBelow && beside > together*below {
		return all.left - e.left, all.low - gap - e.high
	}
	x, y = all.right+gap-e.left, all.low-e.low
	if there < high/3 {
		y -= 0.4 * high
	}
	return x, y
}

// together is how much wider a figure may be drawn that its parts lie on one level.
const together = 1.3

// How far a plain hand keeps apart what it gives by itself, as a part of how far it
// reaches; how wide the sheet is to it; and how finely it places.
const (
	gapPart  = 5
	mostWide = 2.02
	fineness = 160
)

// taken is what stands on the sheet: its extent, and the whole lines.
func (c clearing) taken(st *program.State) (all extent, lines []pushing) {
	all = nowhere()
	for _, slot := range c.neighbours {
		switch v := st.Value(slot).(type) {
		case geom.Point:
			all.add(v.X.Float(), v.Y.Float())
		case *program.Curve:
			if v.Circle != nil {
				x, y, r := v.Circle.C.X.Float(), v.Circle.C.Y.Float(), math.Sqrt(v.Circle.R2.Float())
				all.add(x-r, y-r)
				all.add(x+r, y+r)
			} else if v.Straight.Start == nil && v.Straight.End == nil {
				l := pushingOf(v.Line())
				l.over = slices.Contains(c.over, slot)
				lines = append(lines, l)
			}
		}
	}
	return all, lines
}

// pushing is a line a x + b y = c of a unit normal that points up, or right if it is steep.
type pushing struct {
	a, b, c float64
	over    bool // things are put over it, and not beside
}

func pushingOf(l geom.Line) pushing {
	a, b := -l.D.Y.Float(), l.D.X.Float()
	n := math.Hypot(a, b)
	if steep := math.Abs(a) > math.Abs(b); steep && a < 0 || !steep && b < 0 {
		n = -n
	}
	a, b = a/n, b/n
	return pushing{a: a, b: b, c: a*l.P.X.Float() + b*l.P.Y.Float()}
}

// push is how far up, or right, something is moved so that it is clear of the line.
func (l pushing) push(e extent, gap float64) (dx, dy float64) {
	near := math.Min(l.a*e.left, l.a*e.right) + math.Min(l.b*e.low, l.b*e.high) - l.c
	far := math.Max(l.a*e.left, l.a*e.right) + math.Max(l.b*e.low, l.b*e.high) - l.c
	if l.over {
		gap = -(far - near) * 0.45
		far = math.Inf(1)
	}
	switch {
	case near >= gap && !l.over || far <= -gap:
		return 0, 0
	case math.Abs(l.a) > math.Abs(l.b):
		return (gap - near) / l.a, 0
	}
	return 0, (gap - near) / l.b
}

// extent is how far something reaches, in floats.
type extent struct{ left, right, low, high float64 }

func nowhere() extent { return extent{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)} }

func (e *extent) add(x, y float64) {
	e.left, e.right = math.Min(e.left, x), math.Max(e.right, x)
	e.low, e.high = math.Min(e.low, y), math.Max(e.high, y)
}

func (e extent) empty() bool    { return e.left > e.right }
func (e extent) width() float64 { return e.right - e.left }

// size is the diagonal, 0 of nothing.
func (e extent) size() float64 {
	if e.empty() {
		return 0
	}
	return math.Hypot(e.width(), e.high-e.low)
}

// middle is where the middle of it is.
func (e extent) middle() (x, y float64) { return (e.left + e.right) / 2, (e.low + e.high) / 2 }

func (e extent) shifted(x, y float64) extent {
	return extent{e.left + x, e.right + x, e.low + y, e.high + y}
}
