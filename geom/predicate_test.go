package geom_test

import (
	"slices"
	"testing"

	"trammel/geom"
)

func TestLineSide(t *testing.T) {
	up := through("1,1 3,5")
	tests := []struct {
		p    string
		want int
	}{
		{"2,3", 0}, {"-9,-19", 0}, {"1,1", 0}, {"0,0", 1}, {"2,2", -1}, {"2,3.000000000001", 1}, {"2,2.999999999999", -1}, {"√2,2√2-1", 0}, {"√2,√3", -1},
	}
	for _, test := range tests {
		if got := up.Side(pt(test.p)); got != test.want {
			t.Errorf("%s lies on the side %d, want %d", test.p, got, test.want)
		}
		if got := through("3,5 1,1").Side(pt(test.p)); got != -test.want {
			t.Errorf("%s lies on the side %d of the line that runs back, want %d", test.p, got, -test.want)
		}
	}
}

func TestContains(t *testing.T) {
	join := geom.Join(pt("1,1"), pt("4,5"))
	ray := join
	ray.End = nil
	tests := []struct {
		p                string
		join, ray, whole bool
	}{
		{"1,1", true, true, true},
		{"4,5", true, true, true},
		{"5/2,3", true, true, true},
		{"7,9", false, true, true},
		{"-2,-3", false, false, true},
		{"1,1.000000000001", false, false, false},
		{"4.000000000003,5.000000000004", false, true, true},
		{"0.999999999997,0.999999999996", false, false, true},
		{"2,5", false, false, false},
	}
	for _, test := range tests {
		for _, s := range []struct {
			name string
			geom.Straight
			want bool
		}{{"join", join, test.join}, {"ray", ray, test.ray}, {"line", join.Whole(), test.whole}} {
			p := pt(test.p)
			if got := s.Contains(p); got != s.want {
				t.Errorf("the %s contains %s: %v", s.name, test.p, got)
			}
			if on := s.Side(p) == 0; on && s.Reaches(p) != s.want {
				t.Errorf("the %s reaches %s: %v", s.name, test.p, !s.want)
			}
		}
	}
}

func TestCircleSide(t *testing.T) {
	five := circle("1,1", "5")
	tests := []struct {
		p    string
		want int
	}{
		{"1,1", -1}, {"4,5", 0}, {"6,1", 0}, {"4,5.000000000001", 1}, {"4,4.999999999999", -1}, {"1+5√2/2,1+5√2/2", 0}, {"9,9", 1},
	}
	for _, test := range tests {
		if got := five.Side(pt(test.p)); got != test.want {
			t.Errorf("%s: %d, want %d", test.p, got, test.want)
		}
	}
}

func TestDirections(t *testing.T) {
	tests := []struct {
		l, m                 string
		parallel, one, sharp bool
	}{
		{"0,0 1,0", "0,1 1,1", true, false, false},
		{"0,0 1,0", "5,0 2,0", true, true, false},
		{"0,0 1,√2", "0,0 √2,2", true, true, false},
		{"0,0 1,√2", "0,1 √2,3", true, false, false},
		{"0,0 1,√2", "0,0 -√2,1", false, false, true},
		{"0,0 1,0", "0,0 1,1e-30", false, false, false},
		{"0,0 1,0", "0,0 1e-30,1", false, false, false},
		{"0,0 3,4", "7,7 3,10", false, false, true}, // similar triangles, Euclid VI.8
	}
	for _, test := range tests {
		l, m := through(test.l), through(test.m)
		got := []bool{geom.Parallel(l, m), sameLine(l, m), geom.Perpendicular(l, m)}
		back := []bool{geom.Parallel(m, l), sameLine(m, l), geom.Perpendicular(m, l)}
		if want := []bool{test.parallel, test.one, test.sharp}; !slices.Equal(got, want) || !slices.Equal(back, want) {
			t.Errorf("%s and %s: parallel, one line, at right angles are %v, want %v", test.l, test.m, got, want)
		}
	}
}

func TestCollinear(t *testing.T) {
	tests := []struct {
		ps   string
		want bool
	}{
		{"1,2", true},
		{"1,2 1,2", true},
		{"1,2 5,√7", true},
		{"1,2 1,2 1,2 1,2", true},
		{"0,0 0,0 1,√2 √2,2", true},
		{"0,0 1,√2 0,0 √2,2 1,√2", true},
		{"0,0 0,0 1,1 1,1 2,3", false},
		{"0,0 1,1 0,0 2,2 2,2.000000000001", false},
		{"0,0 1,1 2,2 3,3 -1,-1.000000000001", false},
		{"0,0 2,1 4,2 1/2,1/4", true},
	}
	for _, test := range tests {
		ps := pts(test.ps)
		if got := geom.Collinear(ps...); got != test.want {
			t.Errorf("%s: %v", test.ps, got)
		}
		slices.Reverse(ps)
		if got := geom.Collinear(ps...); got != test.want {
			t.Errorf("%s, in the other order: %v", test.ps, got)
		}
	}
}

func TestConcyclic(t *testing.T) {
	tests := []struct {
		name, ps string
		want     bool
	}{
		{"three points", "0,0 1,0 0,1", true},
		{"a square", "0,0 1,0 1,1 0,1", true},
		{"a square's corners, some of them twice", "0,0 0,0 1,0 0,0 1,1 0,1 1,0", true},
		{"a rhombus", "0,0 5,0 8,4 3,4", false},
		{"an equilateral triangle and its centre's mirror image", "-1/2,0 1/2,0 0,√3/2 0,-√3/6", true}, // the angles at it are 120° and 60°: Euclid III.22
		{"hardly not", "0,0 1,0 1,1 0,1.000000000001", false},
		{"on a line", "0,0 1,1 2,2 3,3", false},
		{"three on a line", "0,0 1,1 2,2 3,0", false},
		{"two places", "0,0 1,1 0,0 1,1", false},
		{"one place", "0,0 0,0 0,0 0,0", false},
	}
	for _, test := range tests {
		ps := pts(test.ps)
		for range ps {
			if got := geom.Concyclic(ps...); got != test.want {
				t.Errorf("%s, begun at %s: %v", test.name, ps[0], got)
			}
			ps = append(ps[1:], ps[0])
		}
	}
}

// Feuerbach, 1822: the mid-points of the sides of a triangle and the feet of
// its heights lie on one circle, and so do the mid-points between the corners
// and the meeting of the heights.
func TestNinePoints(t *testing.T) {
	for _, corners := range []string{"0,0 14,0 5,12", "0,0 4,0 0,3", "0,0 1,0 1/2,√3/2", "0,0 5,0 -1,√7"} {
		ps := pts(corners)
		var nine []geom.Point
		for i, p := range ps {
			q, r := ps[(i+1)%3], ps[(i+2)%3]
			nine = append(nine, geom.Midpoint(p, q), geom.Through(q, r).Foot(p))
		}
		height := func(i int) geom.Line {
			return geom.Line{P: ps[i], D: ps[(i+2)%3].Sub(ps[(i+1)%3]).Left()}
		}
		h, err := geom.MeetLines(height(0), height(1))
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range ps {
			nine = append(nine, geom.Midpoint(p, h))
		}
		if !geom.Concyclic(nine...) {
			t.Errorf("%s: not on one circle", corners)
		}
		nine[8] = nine[8].Add(vec("1e-12,0"))
		if geom.Concyclic(nine...) {
			t.Errorf("%s: on one circle although one point was moved", corners)
		}
	}
}

func TestCircumcircle(t *testing.T) {
	tests := []struct{ ps, centre, radius string }{
		{"0,0 4,0 0,3", "2,3/2", "5/2"},          // Euclid III.31: the centre halves the longest side
		{"0,0 14,0 5,12", "7,33/8", "65/8"},      // 13 · 14 · 15 / (4 · 84), the area from Heron, Metrica I.5
		{"0,0 1,0 1/2,√3/2", "1/2,√3/6", "√3/3"}, // Euclid XIII.12: the side is √3 radii
		{"-1,0 1,0 0,1e-6", "0,-499999.9999995", "500000.0000005"},
		{"0,0 1,1 2,2", "", ""},
		{"0,0 0,0 2,2", "", ""},
		{"1,1 1,1 1,1", "", ""},
		{"0,0 1,√2 √2,2", "", ""},
	}
	for _, test := range tests {
		ps := pts(test.ps)
		for _, order := range [][3]int{{0, 1, 2}, {1, 2, 0}, {2, 0, 1}, {1, 0, 2}, {0, 2, 1}, {2, 1, 0}} {
			c, ok := geom.Circumcircle(ps[order[0]], ps[order[1]], ps[order[2]])
			if ok != (test.centre != "") {
				t.Errorf("%s: %v", test.ps, ok)
			} else if ok && (!c.C.Equal(pt(test.centre)) || !c.R2.Sqrt().Equal(num(test.radius))) {
				t.Errorf("%s: centre %s, radius %s; want %s and %s", test.ps, c.C, geom.Show(c.R2.Sqrt()), test.centre, test.radius)
			}
		}
	}
}

func TestCircleThrough(t *testing.T) {
	c, ok := geom.CircleThrough(pts("0,0 0,0 4,0 0,0 4,0 0,3 9,9"))
	if !ok || !c.C.Equal(pt("2,3/2")) {
		t.Errorf("through the first three places: %v, %v", c, ok)
	}
	for _, few := range []string{"", "0,0", "0,0 1,1 0,0", "0,0 1,1 2,2 0,1"} {
		if c, ok := geom.CircleThrough(pts(few)); ok {
			t.Errorf("%q: %v", few, c)
		}
	}
}

func TestBetweenAndBeyond(t *testing.T) {
	tests := []struct {
		p, a, b         string
		between, beyond bool
	}{
		{"1,1", "0,0", "3,3", true, false},
		{"√2,√2", "0,0", "3,3", true, false},
		{"0,0", "0,0", "3,3", false, false},
		{"3,3", "0,0", "3,3", false, false},
		{"4,4", "0,0", "3,3", false, true},
		{"-1,-1", "0,0", "3,3", false, false},
		{"1,1.000000000001", "0,0", "3,3", false, false},
		{"4,4.000000000001", "0,0", "3,3", false, false},
		{"3.000000000001,3.000000000001", "0,0", "3,3", false, true},
		{"2.999999999999,2.999999999999", "0,0", "3,3", true, false},
		{"0,0", "3,3", "3,3", false, false},
		{"3,3", "3,3", "3,3", false, false},
	}
	for _, test := range tests {
		p, a, b := pt(test.p), pt(test.a), pt(test.b)
		if got := geom.Between(p, a, b); got != test.between || got != geom.Between(p, b, a) {
			t.Errorf("%s is between %s and %s: %v", test.p, test.a, test.b, got)
		}
		if got := geom.Beyond(p, a, b); got != test.beyond {
			t.Errorf("%s is past %s from %s: %v", test.p, test.b, test.a, got)
		}
	}
}

func TestSignedArea(t *testing.T) {
	tests := []struct{ ps, want string }{
		{"0,0 14,0 5,12", "168"}, // Heron, Metrica I.5: 84
		{"5,12 14,0 0,0", "-168"},
		{"0,0 1,0 1/2,√3/2", "√3/2"},
		{"0,0 1,1 2,2", "0"},
		{"0,0 4,0 4,4 2,1 0,4", "20"}, // a notch of 6 in a square of 16
		{"0,0 1,1 1,0 0,1", "0"},      // a bow tie: its halves cancel
		{"3,3", "0"},
		{"3,3 4,4", "0"},
	}
	for _, test := range tests {
		if got := geom.SignedArea2(pts(test.ps)); !got.Equal(num(test.want)) {
			t.Errorf("%s: %s, want %s", test.ps, geom.Show(got), test.want)
		}
	}
}

func TestPlace(t *testing.T) {
	const notched = "0,0 4,0 4,4 2,1 0,4"
	tests := []struct {
		ps, p string
		want  int
	}{
		{notched, "2,1/2", -1},
		{notched, "2,1", 0},
		{notched, "2,2", 1},
		{notched, "1/2,1", -1}, // level with the notch's corner
		{notched, "7/2,1", -1},
		{notched, "-1,1", 1},
		{notched, "-1,0", 1}, // level with an edge
		{notched, "5,0", 1},
		{notched, "2,0", 0},
		{notched, "0,4", 0},
		{notched, "-1,4", 1}, // level with two corners
		{notched, "2,4", 1},
		{notched, "1,5/2", 0},
		{notched, "1,2.500000000001", 1},
		{notched, "1,2.499999999999", -1},
		{"0,0 0,0 4,0 4,4 4,4", "3,1", -1},
		{"0,0 √2,0 0,√2", "√2/2,√2/2", 0},
		{"0,0 √2,0 0,√2", "√2/2,0.7071067811866", 1},
		{"0,0 √2,0 0,√2", "√2/2,0.7071067811865", -1},
	}
	for _, test := range tests {
		ps := pts(test.ps)
		for range ps {
			if got := geom.Place(pt(test.p), ps); got != test.want {
				t.Errorf("%s in %v: %d, want %d", test.p, ps, got, test.want)
			}
			ps = append(ps[1:], ps[0])
		}
		slices.Reverse(ps)
		if got := geom.Place(pt(test.p), ps); got != test.want {
			t.Errorf("%s in %v: %d, want %d", test.p, ps, got, test.want)
		}
	}
}

func TestSimple(t *testing.T) {
	tests := []struct {
		name, ps string
		want     bool
	}{
		{"a triangle", "0,0 4,0 0,3", true},
		{"a square", "0,0 1,0 1,1 0,1", true},
		{"a notched square", "0,0 4,0 4,4 2,1 0,4", true},
		{"a corner of 180°", "0,0 2,0 4,0 0,3", true},
		{"a bow tie", "0,0 1,1 1,0 0,1", false},
		{"three points on a line", "0,0 1,0 2,0", false},
		{"a corner twice", "0,0 0,0 1,0 1,1", false},
		{"a corner twice, apart", "0,0 1,0 1,1 0,0 -1,-1 -1,0", false},
		{"an edge that runs back", "0,0 2,0 1,0 1,1", false},
		{"a corner on an edge", "0,0 4,0 4,4 2,0 0,4", false},
		{"a corner hardly over an edge", "0,0 4,0 4,4 2,1e-12 0,4", true},
		{"a corner hardly under an edge", "0,0 4,0 4,4 2,-1e-12 0,4", false},
		{"edges in one line, apart", "0,0 1,0 1,1 2,1 2,0 3,0 3,2 0,2", true},
		{"edges in one line, together", "0,0 2,0 2,1 3,1 3,0 1,0 1,-1 0,-1", false},
		{"a pentagram", "0,0 4,3 -1,3 3,0 3/2,5", false},
		{"two points", "0,0 1,1", false},
	}
	for _, test := range tests {
		ps := pts(test.ps)
		for range ps {
			if got := geom.Simple(ps); got != test.want {
				t.Errorf("%s, begun at %s: %v", test.name, ps[0], got)
			}
			ps = append(ps[1:], ps[0])
		}
	}
}
