package layout

import (
	"math"
	"strings"
	"testing"
)

// marksOf are the strokes of one kind of mark.
func (d *drawing) marksOf(kind string) []segment {
	var list []segment
	for _, s := range d.strokes {
		if g, ok := s.curve.(segment); ok && s.layer == markLayer && strings.HasPrefix(s.hook, kind) {
			list = append(list, g)
		}
	}
	return list
}

// clearOf is the least distance from marks to a curve, between edges.
func (d *drawing) clearOf(marks []segment, c curve, width float64) float64 {
	least := math.Inf(1)
	for _, m := range marks {
		for _, p := range m.samples(50) {
			least = min(least, off(c, p)-width/2-d.theme.mark.half())
		}
	}
	return least
}

// cross is two straights through O at right angles.
func cross() *sketch {
	s := newSketch("cross")
	s.point("O", 0, 0, giv)
	for name, at := range map[string][2]float64{"E": {5, 0}, "N": {0, 5}, "W": {-5, 0}, "S": {0, -5}} {
		s.at[name] = s.pt(at[0], at[1])
	}
	s.join("EW", giv)
	s.join("NS", giv)
	return s
}

// TestSquareTurns moves the square of a right angle out of a quadrant that is
// crossed into one that is free; where the arms end at the vertex, it shrinks.
func TestSquareTurns(t *testing.T) {
	s := cross()
	s.at["A"], s.at["B"] = s.pt(0.35, -1), s.pt(0.1, 2)
	s.join("AB", giv)
	s.right("EON")
	d := drawn(t, s)
	a, b := d.place(s.at["A"]), d.place(s.at["B"])
	square := d.marksOf(squareHook)
	if gap := d.clearOf(square, segment{a, b}, 350); gap < markClear*mm-50 {
		t.Errorf("the square is %.0f µm from the straight that crosses its angle", gap)
	}
	if len(square) != 2 || math.Abs(square[0].length()-3*mm) > 1 {
		t.Errorf("the square is %v: it should turn, not shrink", square)
	}

	s = newSketch("corner")
	s.point("O", 0, 0, giv)
	s.point("E", 5, 0, giv)
	s.point("N", 0, 5, giv)
	s.join("OE", giv)
	s.join("ON", giv)
	s.at["C"] = s.pt(3.6, 3.6)
	s.circle("", "C", math.Hypot(3.6, 3.6)-0.38, giv)
	s.right("EON")
	d = drawn(t, s)
	for _, k := range d.strokes {
		if c, ok := k.curve.(arc); ok {
			square = d.marksOf(squareHook)
			if gap := d.clearOf(square, c, 350); gap < markClear*mm-50 || square[0].length() >= 3*mm {
				t.Errorf("a square with sides of %.0f µm is %.0f µm from a circle", square[0].length(), gap)
			}
		}
	}
}

// TestArcDodges gives an angle's arc a radius at which no other arc passes.
func TestArcDodges(t *testing.T) {
	s := newSketch("arcs")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 3, 5, giv)
	s.join("BAC", giv)
	s.circle("", "A", arcRadius/10, con)
	s.arcs(1, "BAC")
	d := drawn(t, s)
	for _, k := range d.strokes {
		if a, ok := k.curve.(arc); ok && k.layer == markLayer && math.Abs(a.r-arcRadius*mm) < 2*d.mm(markClear) {
			t.Errorf("the angle's arc has the radius %.0f µm, the circle %.0f", a.r, arcRadius*mm)
		}
	}
}

// TestTicksShrink draws all ticks of a class alike, short enough for the flat
// arcs over the sides of a 12-gon.
func TestTicksShrink(t *testing.T) {
	s := newSketch("12-gon")
	s.point("O", 0, 0, giv)
	names := polygon(s, 12, 4.4, 33, res)
	s.join(strings.Join(names, "")+names[0], res)
	s.circle("k", "O", 4.4, giv)
	s.ticks(1, "AB", "BC", "CD")
	d := drawn(t, s)
	ticks := d.marksOf(tickHook)
	for _, k := range d.strokes {
		if c, ok := k.curve.(arc); ok && d.clearOf(ticks, c, 350) < 0 {
			t.Errorf("a tick touches the circle: %v", ticks)
		}
	}
	for _, m := range ticks {
		if math.Abs(m.length()-ticks[0].length()) > 2 {
			t.Errorf("ticks of one class are %.0f and %.0f µm long", m.length(), ticks[0].length())
		}
	}
	if len(ticks) != 3 {
		t.Errorf("%d ticks", len(ticks))
	}
}

// TestTickBesideArrow keeps the marks of two kinds on one join well apart, and
// arrows of parallels pointing one way whichever way their segments run.
func TestTickBesideArrow(t *testing.T) {
	s := newSketch("both")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 7, 3, giv)
	s.point("D", 1, 3, giv)
	s.join("ABCDA", giv)
	s.ticks(2, "AB", "CD")
	s.arrows(1, "AB", "CD")
	d := drawn(t, s)
	for _, tick := range d.marksOf(tickHook) {
		if gap := d.clearOf(d.marksOf(arrowHook), tick, 350); gap < 2.5*mm {
			t.Errorf("a tick and an arrow are %.0f µm apart", gap)
		}
	}
	if wings := d.marksOf(arrowHook); (wings[0].b.x < 30*mm) != (wings[2].b.x < 40*mm) {
		t.Errorf("the arrows slid to different ends: %v", wings)
	}
	for i, g := range d.marksOf(arrowHook) {
		if ahead := g.b.sub(g.a).x > 0; ahead != (i%2 == 0) {
			t.Errorf("wing %d runs from %v to %v: an arrow points left", i, g.a, g.b)
		}
	}
}

// TestSquaresAlike gives the squares round one vertex one size, the one that suits
// the shortest arm.
func TestSquaresAlike(t *testing.T) {
	s := cross()
	s.at["F"] = s.pt(2, 0)
	for _, corner := range []string{"FON", "NOW", "WOS", "SOF"} {
		s.right(corner)
	}
	square := drawn(t, s).marksOf(squareHook)
	if len(square) != 8 {
		t.Fatalf("%d strokes of squares", len(square))
	}
	for _, g := range square {
		if math.Abs(g.length()-square[0].length()) > 2 {
			t.Errorf("the sides of squares are %.0f and %.0f µm", g.length(), square[0].length())
		}
	}
}

// TestTicksOfWhole sets the ticks of a whole whose parts are ticked on a line beside
// it, and those of the parts on the whole.
func TestTicksOfWhole(t *testing.T) {
	s := newSketch("whole")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("M", 3, 0, giv)
	s.point("C", 3, 5.2, giv)
	s.join("ABCA", giv)
	s.ticks(1, "AM", "MB")
	s.ticks(2, "AB", "BC", "CA")
	beside, on := 0, 0
	for _, tick := range drawn(t, s).marksOf(tickHook) {
		switch y := tick.a.mid(tick.b).y; {
		case math.Abs(y) < 10:
			on++
		case y > 5*mm:
			beside++
		}
	}
	if on != 2 || beside != 2 {
		t.Errorf("%d ticks stand on AB and %d beside it, not 2 and 2", on, beside)
	}
}

// TestArrowsMatch sets the arrows of two parallels at one place, out of the angles'
// marks at the crossings with a third line.
func TestArrowsMatch(t *testing.T) {
	s := newSketch("crossed")
	for name, at := range map[string][2]float64{"A": {0, 0}, "B": {9, 0}, "C": {0, 3}, "D": {9, 3}, "E": {2, -2}, "F": {6, 6}, "P": {3, 0}, "Q": {4.5, 3}} {
		s.at[name] = s.pt(at[0], at[1])
	}
	s.join("AB", giv)
	s.join("CD", giv)
	s.join("EF", giv)
	s.arcs(1, "BPQ", "DQF", "CQP")
	s.arrows(1, "AB", "CD")
	d := drawn(t, s)
	wings := d.marksOf(arrowHook)
	if wings[0].b.x != wings[2].b.x {
		t.Errorf("the arrows' tips are at %v and %v", wings[0].b, wings[2].b)
	}
	for _, v := range []string{"P", "Q"} {
		if gap := wings[0].b.x - d.place(s.at[v]).x; math.Abs(gap) < 6*mm {
			t.Errorf("an arrow is %.0f µm from %s, within an angle's mark", gap, v)
		}
	}
}

// TestTickOffCrossing moves ticks so far off a crossing that the line through
// it is not read as one more.
func TestTickOffCrossing(t *testing.T) {
	s := cross()
	s.ticks(3, "WE")
	d := drawn(t, s)
	line := segment{d.place(s.at["N"]), d.place(s.at["S"])}
	if gap := d.clearOf(d.marksOf(tickHook), line, 350); gap < markBetter*mm-60 {
		t.Errorf("the ticks are %.0f µm from the straight that crosses", gap)
	}
}
