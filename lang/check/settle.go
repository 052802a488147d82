package check

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/lang/program"
)

// settled is how a shape comes from where its data make it to its place: to its known
// corners; with one known corner, level and away from what is there; with none, level
// and beside it.
func (sh *shape) settled() func(*program.State, []geom.Point) ([]geom.Point, error) {
	sh.s.c.bodies++
	i, j := baseOf(sh.fresh)
	s, name := sh.s, sh.letters[i]
	if sh.fresh[i] {
		place := s.turned(sh.n, name, sh.there)
		place.below, place.over = true, s.linesAhead(sh.letters)
		place.circle, place.sides = s.chordsAhead(sh.letters)
		s.c.scattered++
		s.c.level = s.c.level || place.turn < 0
		return func(st *program.State, ps []geom.Point) ([]geom.Point, error) {
			return place.put(st, level(ps)), nil
		}
	}
	if sh.fresh[j] {
		return sh.onCorner(i)
	}
	return func(st *program.State, ps []geom.Point) ([]geom.Point, error) { return sh.onBase(st, ps, i, j) }
}

// level turns a shape so that its first side goes level to the right from the origin.
func level(ps []geom.Point) []geom.Point {
	zero := ps[0].X.Field().Int(0)
	return geom.Similar(ps, 0, 1, geom.Point{X: zero, Y: zero}, geom.Point{X: geom.Dist(ps[0], ps[1]), Y: zero})
}

// onCorner puts a shape on its one known corner. What else is there it turns away from,
// by quarters of a turn and as far as chance has it.
func (sh *shape) onCorner(i int) func(*program.State, []geom.Point) ([]geom.Point, error) {
	s, corner := sh.s, sh.slots[i]
	there := s.clearOf(sh.there, corner)
	turn := -1
	if len(there.neighbours) > 0 {
		plain := int64(0)
		if s.c.level {
			plain = 17
		}
		turn = s.input(sh.n, program.Bearing, sh.letters[(i+1)%len(sh.letters)], rat(plain, 1))
	}
	s.c.scattered++
	return func(st *program.State, ps []geom.Point) ([]geom.Point, error) {
		p := st.Point(corner)
		ps = geom.Shift(level(ps), i, p)
		if turn < 0 {
			return ps, nil
		}
		d := rationalTurn(st, turn)
		for range there.quarters(st, p, ps) {
			d = d.Left()
		}
		q := ps[(i+1)%len(ps)]
		return geom.Similar(ps, i, (i+1)%len(ps), p, p.Add(q.Sub(p).Turn(d.X, d.Y))), nil
	}
}

// quarters is how many quarters of a turn about p bring a shape's middle farthest away
// from the middle of what is there.
func (c clearing) quarters(st *program.State, p geom.Point, ps []geom.Point) int {
	all, _ := c.taken(st)
	if all.empty() {
		return 0
	}
	own := nowhere()
	for _, q := range ps {
		own.add(q.X.Float(), q.Y.Float())
	}
	x, y := own.middle()
	u, v := all.middle()
	px, py := p.X.Float(), p.Y.Float()
	angle := math.Atan2(py-v, px-u) - math.Atan2(y-py, x-px)
	return int(math.Round(angle/(math.Pi/2))+4) % 4
}

// onBase puts a shape on two known corners, and holds the other ones to it.
func (sh *shape) onBase(st *program.State, ps []geom.Point, i, j int) ([]geom.Point, error) {
	slots, letters := sh.slots, sh.letters
	p, q := st.Point(slots[i]), st.Point(slots[j])
	if p.Equal(q) {
		return nil, sameSpot(st, slots[i], slots[j])
	}
	if is, want := geom.Dist(p, q), geom.Dist(ps[i], ps[j]); !is.Equal(want) {
		return nil, &program.Fault{
			Text: fmt.Sprintf("%s and %s are there already, %s apart, and the data make %s%s %s", letters[i], letters[j], geom.Show(is), letters[i], letters[j], geom.Show(want)),
			Help: "leave that length out of the data, or place the points anew",
		}
	}
	out := geom.Similar(ps, i, j, p, q)
	for k := range out {
		if !sh.fresh[k] && !out[k].Equal(st.Point(slots[k])) {
			return nil, &program.Fault{Text: fmt.Sprintf("%s would have to be at %s, and it is at %s", letters[k], out[k], st.Point(slots[k]))}
		}
	}
	return out, nil
}
