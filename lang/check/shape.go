package check

import (
	"fmt"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// element is a side or diagonal between corners a < b of a shape, or with b
// less than 0 the angle at corner a.
type element struct{ a, b int }

func sideOf(i, j int) element { return element{min(i, j), max(i, j)} }
func angleAt(i int) element   { return element{i, -1} }

// class is elements that are given as equal, with their value where there is one.
type class struct {
	elems []element
	value *expr
}

// shape is a given triangle or quadrilateral on its way into the Program.
type shape struct {
	s       *scope
	n       syntax.Node
	kind    string
	slots   []int
	fresh   []bool
	letters []string
	classes []*class
	ties    []tie                        // each both ways
	term    syntax.Node                  // of its data that is being read
	there   int                          // how many slots there were before
	of      *shape                       // what this triangle is part of
	lengths knownLengths                 // before anything was left to chance
	chosen  bool                         // something of it is left to chance
	about   bool                         // a datum of it is only as it happens to be drawn
	written []*class                     // as the source has them, to be held against the result
	sides   [3]string                    // what the sides of a part are called, where that is more than two letters
	is      string                       // acute, right or obtuse, where the source says so
	assumed string                       // what was taken for granted of its kind, and how to say otherwise
	unlike  []unlike                     // what should be equal and is given twice
	rules   []func(*program.State) error // what must hold of its data
}

// unlike are two elements that should be equal, each with its own value.
type unlike struct {
	e, f element
	x, y *expr
}

// givenShape makes the unknown corners of a shape from its data.
func (s *scope) givenShape(g *syntax.GivenShape) {
	sh := &shape{s: s, n: g.Node, kind: g.Kind, there: len(s.c.prog.Slots)}
	ok := sh.corners(g.Points)
	for _, e := range g.Data {
		ok = ok && sh.equation(e)
	}
	conds, ok2 := s.conds(g.Sides)
	if !ok || !ok2 {
		return
	}
	if !sh.someFresh() {
		s.fail(g.Node, "%s is there already, so nothing of it is left to be given", strings.Join(sh.letters, "")).Help = "claim what should hold of it instead"
		return
	}
	sh.knownSides()
	var local func(*program.State) ([]geom.Point, error)
	if sh.kind == "triangle" {
		local, ok = sh.triangle(g.Traits)
	} else {
		local, ok = sh.quad(g.Traits)
	}
	if !ok {
		return
	}
	sh.emit(local, conds, sh.traits(g.Traits))
	sh.outline()
}

// corners finds the known corners and makes the others.
func (sh *shape) corners(r *syntax.Ref) bool {
	want := 4
	if sh.kind == "triangle" {
		want = 3
	}
	if r.Name != "" || len(r.Points) != want {
		sh.s.fail(r.Node, "a %s has %d corners", sh.kind, want)
		return false
	}
	good := true
	for _, p := range r.Points {
		slot, fresh := sh.s.oldOrNew(p)
		good = good && slot >= 0
		name, _ := sh.s.indexed(p.Name, p.Index)
		for _, other := range sh.letters {
			if other == name {
				sh.s.fail(r.Node, "%s stands twice in %s", name, sh.s.span(r.Node).Text())
				return false
			}
		}
		sh.slots = append(sh.slots, slot)
		sh.fresh = append(sh.fresh, fresh)
		sh.letters = append(sh.letters, name)
	}
	return good
}

func (sh *shape) someFresh() bool {
	for _, f := range sh.fresh {
		if f {
			return true
		}
	}
	return false
}

// knownSides adds the distances between corners that are there already.
func (sh *shape) knownSides() {
	for i := range sh.slots {
		for j := i + 1; j < len(sh.slots); j++ {
			e := sideOf(i, j)
			if sh.fresh[i] || sh.fresh[j] || sh.datum(e) != nil {
				continue
			}
			a, b := sh.slots[i], sh.slots[j]
			v := expr{node: sh.n, dim: 1, value: func(st *program.State) (program.Amount, error) {
				if st.Point(a).Equal(st.Point(b)) {
					return nil, sameSpot(st, a, b)
				}
				return pure(geom.Dist(st.Point(a), st.Point(b))), nil
			}}
			sh.set(e, v)
		}
	}
}

// datum is what is given of an element, or nil.
func (sh *shape) datum(e element) *expr { return sh.datumBut(e, nil) }

// datumBut is datum without what follows from some elements.
func (sh *shape) datumBut(e element, seen []element) *expr {
	for _, c := range sh.classes {
		if c.has(e) && c.value != nil {
			return c.value
		}
	}
	return sh.byTies(e, seen)
}

// set gives an element, and those equal to it, a value.
func (sh *shape) set(e element, v expr) {
	for _, c := range sh.classes {
		if c.has(e) {
			c.value = &v
			return
		}
	}
	sh.classes = append(sh.classes, &class{[]element{e}, &v})
}

// chanceAngle leaves an angle to chance, near a number of degrees.
func (sh *shape) chanceAngle(e element, degrees int64) {
	sh.whole().chosen = true
	in := sh.s.input(sh.n, program.Bearing, sh.describe(e), rat(degrees, 1))
	sh.set(e, expr{node: sh.n, angle: true, rat: rat(degrees, 1), size: func(st *program.State) (geom.Angle, error) {
		return geom.Turned(rationalTurn(st, in)), nil
	}})
}

// whole is the shape that a triangle is part of, or the shape itself.
func (sh *shape) whole() *shape {
	for sh.of != nil {
		sh = sh.of
	}
	return sh
}

// fixAngle sets an angle to a number of degrees.
func (sh *shape) fixAngle(e element, degrees int64) {
	sh.set(e, expr{node: sh.n, angle: true, size: func(*program.State) (geom.Angle, error) {
		return geom.Degrees(rat(degrees, 1)), nil
	}})
}

// emit adds the step that places the new corners.
func (sh *shape) emit(local func(*program.State) ([]geom.Point, error), conds []cond, trait func([]geom.Point) (is, help string)) {
	slots, fresh, letters := sh.slots, sh.fresh, sh.letters
	text := sh.kind + " " + strings.Join(letters, "")
	settle := sh.settled()
	sh.s.emit(sh.n, func(st *program.State) error {
		ps, err := sh.made(st, local)
		if err != nil {
			return sh.fault(err)
		}
		if ps, err = settle(st, ps); err != nil {
			return err
		}
		i, j := baseOf(fresh)
		before := st.Field.Noted()
		for _, try := range bothWays(ps, i, j, len(conds) > 0) {
			good := true
			for k, p := range try {
				if fresh[k] && good {
					if good, _, err = holdAll(st, conds, p, nil); err != nil {
						return err
					}
				}
			}
			if !good {
				st.Field.Forget(before)
				continue
			}
			if is, help := trait(try); is != "" {
				return &program.Fault{Text: fmt.Sprintf("the %s is %s", text, is), Help: help, Range: true}
			}
			for k, p := range try {
				if fresh[k] {
					st.Set(slots[k], p)
				}
			}
			return nil
		}
		return &program.Fault{Text: fmt.Sprintf("the %s fits on neither side: its new corners are not %s", text, conds[0].text)}
	})
}

// bothWays is a shape as it is, and turned over if phrases choose its side: in other figures they may
// choose the other one.
func bothWays(ps []geom.Point, i, j int, chosen bool) [][]geom.Point {
	if !chosen {
		return [][]geom.Point{ps}
	}
	ps = geom.OnEitherSide(ps, i, j)
	return [][]geom.Point{ps, geom.Flip(ps, i, j)}
}

// baseOf is the two corners that keep their places when the shape is turned over.
func baseOf(fresh []bool) (i, j int) {
	var known []int
	for k, f := range fresh {
		if !f {
			known = append(known, k)
		}
	}
	switch len(known) {
	case 0:
		return 0, 1
	case 1:
		return known[0], (known[0] + 1) % len(fresh)
	}
	return known[0], known[1]
}

// made gives the corners, if the data agree.
func (sh *shape) made(st *program.State, local corners) ([]geom.Point, error) {
	if err := sh.agree(st); err != nil {
		return nil, err
	}
	ps, err := local(st)
	if err == nil {
		err = sh.hold(st, ps)
	}
	return ps, err
}

// fault is why there is no such shape, with what was taken for granted.
func (sh *shape) fault(err error) error {
	if im, ok := err.(*geom.Impossible); ok {
		err = &program.Fault{Text: im.Fact, Help: im.Help, Range: true}
	}
	if f, ok := err.(*program.Fault); ok && sh.assumed != "" {
		f.Help = strings.TrimPrefix(f.Help+"\n"+sh.assumed, "\n")
	}
	return err
}

// outline draws the sides of a given shape.
func (sh *shape) outline() {
	n := len(sh.slots)
	for i := range sh.slots {
		a, b := sh.slots[i], sh.slots[(i+1)%n]
		if len(sh.s.straights[pairOf(a, b)]) > 0 {
			continue
		}
		slot := sh.s.add(program.Line, sh.n)
		sh.s.draw(slot, figure.Given)
		sh.s.slot(slot).Ink.Label = nil
		sh.s.straight(sh.n, slot, a, b, true, true)
		sh.s.bar(a, b, slot, reachJoin)
	}
}
