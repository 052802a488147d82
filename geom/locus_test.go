package geom_test

import (
	"testing"

	"trammel/geom"
)

func TestBisector(t *testing.T) {
	for _, ps := range []string{"0,0 4,0", "1,√2 1,5", "-1,-1 2,3"} {
		a, b := pts(ps)[0], pts(ps)[1]
		l := geom.Bisector(a, b)
		if l.Side(geom.Midpoint(a, b)) != 0 || !geom.Perpendicular(l, geom.Through(a, b)) || l.Side(a) != 1 || l.Side(b) != -1 {
			t.Errorf("%s: the bisector is %v", ps, l)
		}
	}
}

func TestEquidistant(t *testing.T) {
	tests := []struct {
		name, l, m string
		want       []string // two points of each line
	}{
		{"at a right angle", "0,0 1,0", "0,0 0,1", []string{"0,0 1,1", "0,0 -1,1"}},
		{"one turned round", "0,0 1,0", "0,0 0,-1", []string{"0,0 1,-1", "0,0 1,1"}},
		{"at 60°", "0,0 1,0", "0,0 1,√3", []string{"0,0 √3,1", "0,0 -1,√3"}}, // at 30° and 120°
		{"3, 4, 5", "0,0 1,0", "0,0 3,4", []string{"0,0 2,1", "0,0 -1,2"}},   // Euclid VI.3
		{"crossing away from their points", "1,0 2,0", "0,1 0,2", []string{"0,0 1,1", "0,0 -1,1"}},
		{"parallel", "0,0 1,0", "0,3 5,3", []string{"0,3/2 1,3/2"}},
		{"parallel and opposite", "0,0 1,1", "4,0 3,-1", []string{"2,0 3,1"}},
	}
	for _, test := range tests {
		got, err := geom.Equidistant(through(test.l), through(test.m))
		if err != nil || len(got) != len(test.want) {
			t.Errorf("%s: %v, %v", test.name, got, err)
			continue
		}
		for i, l := range got {
			if want := through(test.want[i]); !sameLine(l, want) || l.D.Dot(want.D).Sign() < 0 {
				t.Errorf("%s: line %d is %v, want %s", test.name, i, l, test.want[i])
			}
		}
	}
	if got, err := geom.Equidistant(through("0,0 1,√2"), through("√2,2 0,0")); err == nil || err.Error() != "they are one and the same line" {
		t.Errorf("of one line: %v, %v", got, err)
	}
}

func TestHalfWay(t *testing.T) {
	tests := []struct{ v, w, want string }{
		{"1,0", "0,1", "1,1"},
		{"5,0", "3,4", "2,1"},
		{"1,0", "7,0", "1,0"},
		{"1,0", "-1/2,√3/2", "1/2,√3/2"},
		{"1,1e-12", "1,-1e-12", "1,0"},
	}
	for _, test := range tests {
		got, want := geom.HalfWay(vec(test.v), vec(test.w)), vec(test.want)
		if got.Cross(want).Sign() != 0 || got.Dot(want).Sign() <= 0 {
			t.Errorf("between %s and %s: (%s, %s), want along %s", test.v, test.w, geom.Show(got.X), geom.Show(got.Y), test.want)
		}
	}
}

func TestBeside(t *testing.T) {
	tests := []struct{ line, d, want string }{
		{"0,0 1,0", "2", "0,2 1,2"},
		{"0,0 -1,0", "2", "0,-2 -1,-2"},
		{"0,0 3,4", "5", "-4,3 -1,7"},
		{"0,0 3,4", "-5", "4,-3 7,1"},
		{"0,0 1,1", "1", "-√2/2,√2/2 0,√2"},
	}
	for _, test := range tests {
		got, want := geom.Beside(through(test.line), num(test.d)), through(test.want)
		if !sameLine(got, want) || got.D.Dot(want.D).Sign() < 0 {
			t.Errorf("%s to the left of %s: %v, want %s", test.d, test.line, got, test.want)
		}
	}
}

func TestRim(t *testing.T) {
	join := geom.Join(pt("0,0"), pt("6,8"))
	ray := join
	ray.End = nil
	tests := []struct {
		name       string
		spine      geom.Straight
		sides      [2]string // their ends, as far as they have them
		start, end string    // the ends of the half circles
	}{
		{"about a join", join, [2]string{"-4,3 2,11", "4,-3 10,5"}, "-4,3 4,-3", "10,5 2,11"},
		{"about a ray", ray, [2]string{"-4,3", "4,-3"}, "-4,3 4,-3", ""},
		{"about a line", join.Whole(), [2]string{"", ""}, "", ""},
	}
	for _, test := range tests {
		rim := geom.Rim{Spine: test.spine, R: num("5")}
		for i, side := range rim.Sides() {
			var ends []geom.Point
			for _, p := range []*geom.Point{side.Start, side.End} {
				if p != nil {
					ends = append(ends, *p)
				}
			}
			if !samePoints(ends, pts(test.sides[i])) || !same(side.D, test.spine.D) || side.Side(pt("0,0")) != 2*i-1 {
				t.Errorf("%s: side %d is %v, with the ends %v", test.name, i, side, ends)
			}
		}
		var caps []geom.Point
		for _, c := range rim.Caps() {
			caps = append(caps, c.Ends[0], c.Ends[1])
			if c.Side(c.Ends[0]) != 0 || !geom.Midpoint(c.Ends[0], c.Ends[1]).Equal(c.C) {
				t.Errorf("%s: %v is no half circle", test.name, c)
			}
			// Anticlockwise from its first end, a half circle bulges to the right of the way to its second.
			if out := geom.Along(c.C, c.Ends[1].Sub(c.Ends[0]).Left(), num("-5")); geom.Join(pt("0,0"), pt("6,8")).Contains(out) || !sameLine(geom.Through(c.C, out), test.spine.Line) {
				t.Errorf("%s: the half circle goes through %s", test.name, out)
			}
		}
		if !samePoints(caps, append(pts(test.start), pts(test.end)...)) {
			t.Errorf("%s: the half circles end at %v", test.name, caps)
		}
	}
}
