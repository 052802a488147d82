package check

import (
	"math/big"
	"slices"

	"trammel/lang/syntax"
)

// row is the points that are left to chance on one line or circle. A plain hand that
// reads the whole task puts them in the order of their names: along a line as it runs,
// anticlockwise round a circle.
type row struct {
	ahead   int      // points that the task asks for
	taken   int      // of these, so far
	first   int      // which place in the habit of the hand the first one takes
	ring    int      // how many circles had rows before
	names   []string // of the points, as far as they have no index
	crosses bool     // joins of them to two of another line are to meet,
	back    bool     // and those were taken first: they stand in the opposite order
}

// bearings are those of a plain hand's points on circles, in degrees, one on each.
var bearings = []int64{22, 106, 211, 330, 58, 151, 255, 197}

// rings are those of two points on a circle and more, and on a second circle: they go round
// it anticlockwise. No chord is level or upright or nearly so, none a diameter, no two are
// nearly parallel, at right angles, or equal; three make an acute triangle that is plainly
// scalene, and opposite sides of four meet near by.
var rings = [][][]int64{
	2: {{106, 232}, {18, 132}},
	3: {{106, 232, 326}, {18, 132, 280}},
	4: {{107, 164, 230, 324}, {33, 129, 289, 351}},
	5: {{115, 153, 231, 278, 5}},
	6: {{101, 156, 238, 316, 6, 65}},
	7: {{111, 139, 212, 262, 298, 343, 48}},
	8: {{124, 154, 213, 255, 290, 337, 39, 84}},
}

// parts of a straight, in hundredths: clear of its ends and its middle, and the next one
// from either end elsewhere, so that no join of points on two sides seems parallel to the third.
var parts = []int64{40, 68, 20, 58, 82, 30, 44, 78}

// triples are those of three points on a line without ends: over all of its stretch, two of
// them nearer together, so that joins across to another such line are of plainly different
// lengths.
var triples = [][]int64{{23, 46, 90}, {38, 50, 89}, {14, 60, 85}}

// alone are parts of straights for the only point on each, one after the other: on two from
// one corner, or round a triangle, no join of two of them seems parallel to anything. Those of
// lines without ends keep lines across plainly aslant; those of rays are far out, where there
// is room to build on them.
var (
	alone        = []int64{40, 70, 22, 58, 80, 30, 46}
	aloneOnRay   = []int64{56, 74, 64}
	aloneEndless = []int64{40, 56, 72, 30}
)

// expect counts a point that a task asks for so many times by the curve that it is put on.
func (s *scope) expect(p *syntax.PlacedPoint, times int) {
	s.expectCut(p)
	on := ""
	for _, place := range p.Places {
		switch {
		case place.On != nil && place.OnAngle == nil && on == "":
			on = s.span(place.On.Node).Text()
		case place.Cond == nil || place.Cond.Between != nil || place.Cond.Beyond != nil:
			return // fixed, or on a part only
		}
	}
	if on == "" {
		return
	}
	if s.rows[on] == nil {
		s.rows[on] = &row{}
	}
	s.rows[on].ahead += times
	if name, ok := letterOf(p.Point); ok {
		s.rows[on].names = append(s.rows[on].names, name)
	}
}

// across is which of four points ends the join of the first that is to meet the join of the
// other two; 0 if none is.
func (s *scope) across(names []string) int {
	if len(names) != 4 {
		return 0
	}
	for _, m := range s.meets[names[0]] {
		if len(m[0].Points) != 2 || len(m[1].Points) != 2 {
			continue
		}
		one, other := namesIn(m[0]), namesIn(m[1])
		if !slices.Contains(one, names[0]) {
			one, other = other, one
		}
		at := slices.Index(names, one[1-slices.Index(one, names[0])])
		if at > 0 && !slices.Contains(one, other[0]) && !slices.Contains(one, other[1]) && slices.Contains(names, other[0]) && slices.Contains(names, other[1]) {
			return at
		}
	}
	return 0
}

// crossways are the places round a circle that four points take whose joins are to meet, by
// which of them the first is joined to.
var crossways = [4][]int{{0, 1, 2, 3}, {0, 2, 1, 3}, {0, 1, 2, 3}, {0, 1, 3, 2}}

// nextOf is the row of a curve, and which place in it is next; a new row begins in the habit of
// the hand at k, after what other rows still wait for.
func (s *scope) nextOf(l locus, k int) (r row, i int) {
	known := s.rows[l.on.text]
	if l.isCircle || known == nil {
		return row{ahead: 1, first: k + s.c.waiting}, 0
	}
	if known.taken == 0 {
		known.first = k + s.c.waiting
		known.crosses, known.back = s.crossing(known)
		s.c.waiting += known.ahead
		if l.on.circle && known.ahead > 1 {
			known.ring = s.c.rings
			s.c.rings++
		}
	}
	i = known.taken
	known.taken++
	if i >= known.ahead {
		return *known, i
	}
	s.c.waiting--
	if l.on.circle && known.ahead == 4 {
		i = crossways[s.across(known.names)][i]
	}
	return *known, i
}

// crossing tells whether the joins of a row's two points, in turn, to the two of another line
// are to meet, and whether those were taken first.
func (s *scope) crossing(r *row) (crosses, later bool) {
	if r.ahead != 2 || len(r.names) != 2 {
		return false, false
	}
	for _, m := range s.meets[r.names[0]] {
		for _, other := range s.rows {
			if other.ahead == 2 && len(other.names) == 2 &&
				joins(m[0], r.names[0], other.names[0]) && joins(m[1], r.names[1], other.names[1]) {
				return true, other.taken > 0
			}
		}
	}
	return false, false
}

// joins tells whether a reference is the run between two points, either way.
func joins(r *syntax.Ref, p, q string) bool {
	names := namesIn(r)
	return slices.Equal(names, []string{p, q}) || slices.Equal(names, []string{q, p})
}

// bearing is that of the ith point of a row on a circle.
func (r row) bearing(i int) *big.Rat {
	switch n := r.ahead; {
	case n >= len(rings):
		return rat(int64(105+360*(i%n)/n), 1)
	case n > 1:
		habits := rings[n]
		return rat(habits[r.ring%len(habits)][i%n], 1)
	}
	return rat(bearings[r.first%len(bearings)], 1)
}

// part is that of the ith point of a row on a straight, or on a line without ends.
func (r row) part(i int, endless bool) *big.Rat {
	switch n := r.ahead; {
	case n == 3 && endless:
		return rat(triples[r.first/3%len(triples)][i%n], 100)
	case n > 4:
		k := int64(i % n)
		return rat(100*k+50+24*(k%2)-12*(k%3), int64(100*n))
	case n == 4:
		return rat([]int64{12, 38, 58, 85}[i%n], 100)
	}
	var own []int64
	for k := range max(r.ahead, 1) {
		own = append(own, parts[(r.first+k)%len(parts)])
	}
	slices.Sort(own)
	switch {
	case r.back:
		own = []int64{64, 32}
	case r.crosses:
		own = []int64{22, 68}
	}
	return rat(own[i%len(own)], 100)
}
