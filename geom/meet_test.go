package geom_test

import (
	"errors"
	"testing"

	"trammel/geom"
)

// some is any reason for which there is no meeting.
const some = "some reason"

// checkMeetings compares points, or a reason and its help.
func checkMeetings(t *testing.T, name string, got []geom.Point, err error, want, fact, help string) {
	t.Helper()
	var none *geom.NoMeeting
	switch {
	case err == nil && (fact != "" || !samePoints(got, pts(want))):
		t.Errorf("%s: %v, want %s%s", name, got, want, fact)
	case err != nil && fact == some:
	case err != nil && (!errors.As(err, &none) || none.Fact != fact || none.Help != help || err.Error() != fact):
		t.Errorf("%s: %q, %+v\nwant %q (%s)", name, err, none, fact, help)
	}
}

func TestMeetLines(t *testing.T) {
	const parallel, one = "the lines are parallel", "they are one and the same line"
	tests := []struct{ name, l, m, want, fact string }{
		{"at a right angle", "0,0 1,0", "3,-1 3,5", "3,0", ""},
		{"the diagonals of a square", "0,0 1,1", "1,0 0,1", "1/2,1/2", ""},
		{"past the points that name them", "0,0 1,2", "10,0 9,1", "10/3,20/3", ""},
		{"at a point of both", "2,3 5,7", "2,3 1,1", "2,3", ""},
		{"in surds", "0,0 1,√2", "0,1 1,0", "√2-1,2-√2", ""},
		{"hardly crossing", "0,0 1,0", "0,1 1000000000000,0", "1000000000000,0", ""},
		{"parallel", "0,0 1,0", "0,1 1,1", "", parallel},
		{"parallel and opposite", "0,0 1,√3", "5,√3 4,0", "", parallel},
		{"hardly apart", "0,0 1,0", "0,1e-30 1,1e-30", "", parallel},
		{"one line", "0,0 2,3", "4,6 6,9", "", one},
		{"one line and opposite", "0,0 √2,√6", "1,√3 0,0", "", one},
	}
	for _, test := range tests {
		for _, names := range [][2]string{{test.l, test.m}, {test.m, test.l}} {
			p, err := geom.MeetLines(through(names[0]), through(names[1]))
			checkMeetings(t, test.name, []geom.Point{p}, err, test.want, test.fact, "")
		}
	}
}

// A radius of 5 meets whole coordinates by the triangle 3, 4, 5.
func TestMeetLineCircle(t *testing.T) {
	five := circle("0,0", "5")
	tests := []struct {
		name             string
		line             string
		circle           geom.Circle
		want, fact, help string
	}{
		{"a chord", "-9,3 9,3", five, "-4,3 4,3", "", ""},
		{"a chord, the other way", "9,3 -9,3", five, "4,3 -4,3", "", ""},
		{"upright", "3,0 3,1", five, "3,-4 3,4", "", ""},
		{"slanting", "0,7 7,0", five, "3,4 4,3", "", ""},
		{"a diameter", "-3,-4 0,0", five, "-3,-4 3,4", "", ""},
		{"a diameter in surds", "0,0 1,1", circle("0,0", "2"), "-√2,-√2 √2,√2", "", ""},
		{"away from the origin", "0,1 1,1", circle("2,1", "√3"), "2-√3,1 2+√3,1", "", ""},
		{"a tangent", "0,5 1,5", five, "0,5", "", ""},          // Euclid III.16
		{"a slanting tangent", "3,4 7,1", five, "3,4", "", ""}, // at a right angle to the radius
		{"a tangent far off", "103,-71 107,-74", five, "3,4", "", ""},
		{"hardly a chord", "0,0.999999999999 1,0.999999999999", circle("0,0", "1"), "-√1999999999999/1000000000000,0.999999999999 √1999999999999/1000000000000,0.999999999999", "", ""},
		{"hardly a miss", "0,1.000000000001 1,1.000000000001", circle("0,0", "1"), "", some, ""},
		{"a miss", "0,6 1,6", five, "", "the centre is 6 from the line and the radius is only 5", "open the compasses to more than 6"},
		{"a miss in surds", "6,0 0,6", circle("0,0", "4"), "", "the centre is 3√2 from the line and the radius is only 4", "open the compasses to more than 3√2"},
	}
	for _, test := range tests {
		l := through(test.line)
		got, err := geom.MeetLineCircle(l, test.circle, nil)
		checkMeetings(t, test.name, got, err, test.want, test.fact, test.help)
		for _, p := range got {
			again, err := geom.MeetLineCircle(l, test.circle, &p)
			checkMeetings(t, test.name+", one known", again, err, test.want, test.fact, test.help)
			if l.Side(p) != 0 || test.circle.Side(p) != 0 {
				t.Errorf("%s: %s lies not on both", test.name, p)
			}
		}
	}
}

func TestMeetCircles(t *testing.T) {
	tests := []struct {
		name             string
		c, d             geom.Circle
		want, fact, help string
	}{
		{"the triangle 3, 4, 5", circle("0,0", "3"), circle("5,0", "4"), "9/5,12/5 9/5,-12/5", "", ""}, // Euclid VI.8
		{"the triangle 13, 14, 15", circle("0,0", "13"), circle("14,0", "15"), "5,12 5,-12", "", ""},   // Heron, Metrica I.5
		{"from the other centre", circle("14,0", "15"), circle("0,0", "13"), "5,-12 5,12", "", ""},
		{"an equilateral triangle", circle("0,0", "1"), circle("1,0", "1"), "1/2,√3/2 1/2,-√3/2", "", ""}, // Euclid I.1
		{"upwards", circle("0,0", "1"), circle("0,1", "1"), "-√3/2,1/2 √3/2,1/2", "", ""},
		{"a centre on the other circle", circle("0,0", "2"), circle("2,0", "1"), "7/4,√15/4 7/4,-√15/4", "", ""},
		{"the wider circle's far side", circle("0,0", "5"), circle("6,0", "√13"), "4,3 4,-3", "", ""},
		{"both centres on one side", circle("0,0", "5"), circle("1,0", "√20"), "3,4 3,-4", "", ""},
		{"touching from outside", circle("0,0", "3"), circle("7,0", "4"), "3,0", "", ""}, // Euclid III.12
		{"touching from inside", circle("0,0", "4"), circle("1,0", "3"), "4,0", "", ""},  // Euclid III.11
		{"touching from inside, the narrow one first", circle("1,0", "3"), circle("0,0", "4"), "4,0", "", ""},
		{"touching on a diagonal", circle("0,0", "√2"), circle("3,3", "2√2"), "1,1", "", ""},
		{"apart", circle("0,0", "3"), circle("8,0", "4"), "", "the centres are 8 apart and the radii add up to 7", "open one arc by more than 1"},
		{"apart in surds", circle("0,0", "1"), circle("2,2", "1"), "", "the centres are 2√2 apart and the radii add up to 2", "open one arc by more than 2√2 − 2"},
		{"hardly apart", circle("0,0", "1"), circle("2.000000000001,0", "1"), "", some, ""},
		{"one inside the other", circle("0,0", "5"), circle("1,0", "2"), "", "one circle lies inside the other: the centres are 1 apart and the radii differ by 3", "close the wider one by more than 2, or open the narrower one"},
		{"the narrow one first", circle("1,0", "2"), circle("0,0", "5"), "", "one circle lies inside the other: the centres are 1 apart and the radii differ by 3", "close the wider one by more than 2, or open the narrower one"},
		{"one circle", circle("1,√2", "2"), circle("1,√2", "2"), "", "they are one and the same circle", ""},
		{"one centre", circle("1,√2", "2"), circle("1,√2", "2.000000000001"), "", "they have one centre and different radii", ""},
	}
	for _, test := range tests {
		got, err := geom.MeetCircles(test.c, test.d, geom.Known{})
		checkMeetings(t, test.name, got, err, test.want, test.fact, test.help)
		for i, p := range got {
			again, err := geom.MeetCircles(test.c, test.d, geom.Known{Common: &p})
			checkMeetings(t, test.name+", one known", again, err, test.want, test.fact, test.help)
			if side := geom.Through(test.c.C, test.d.C).Side(p); len(got) == 2 && side != 1-2*i {
				t.Errorf("%s: meeting %d lies on the side %d of the way between the centres", test.name, i, side)
			}
		}
	}
}

func TestLineTouches(t *testing.T) {
	unit := circle("0,0", "1")
	tests := []struct {
		line string
		want bool
	}{
		{"0,1 5,1", true},
		{"0,-1 -5,-1", true},
		{"√2,0 0,√2", true},
		{"0,0 1,1", false},
		{"0,1.000000000001 1,1.000000000001", false},
		{"0,0.999999999999 1,0.999999999999", false},
		{"0,1 1,1.000000000001", false},
	}
	for _, test := range tests {
		if got := geom.LineTouches(through(test.line), unit); got != test.want {
			t.Errorf("the line through %s touches: %v", test.line, got)
		}
	}
}

func TestCirclesTouch(t *testing.T) {
	tests := []struct {
		name string
		c, d geom.Circle
		want int
	}{
		{"from outside", circle("0,0", "3"), circle("7,0", "4"), 1},
		{"equal ones from outside", circle("0,0", "√2/2"), circle("1,1", "√2/2"), 1},
		{"from inside", circle("0,0", "4"), circle("1,0", "3"), -1},
		{"crossing", circle("0,0", "3"), circle("5,0", "4"), 0},
		{"apart", circle("0,0", "3"), circle("8,0", "4"), 0},
		{"one inside the other", circle("0,0", "5"), circle("1,0", "2"), 0},
		{"hardly apart", circle("0,0", "1"), circle("2.000000000001,0", "1"), 0},
		{"hardly crossing", circle("0,0", "1"), circle("1.999999999999,0", "1"), 0},
		{"one centre", circle("0,0", "1"), circle("0,0", "2"), 0},
		{"one circle", circle("0,0", "1"), circle("0,0", "1"), 0},
	}
	for _, test := range tests {
		for _, pair := range [][2]geom.Circle{{test.c, test.d}, {test.d, test.c}} {
			if got := geom.CirclesTouch(pair[0], pair[1]); got != test.want {
				t.Errorf("%s: %d, want %d", test.name, got, test.want)
			}
		}
	}
}
