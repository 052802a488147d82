package geom_test

import (
	"testing"

	"trammel/geom"
)

func TestSimilar(t *testing.T) {
	ps := pts("0,0 4,0 4,3")
	tests := []struct {
		name string
		got  []geom.Point
		want string
	}{
		{"as it is", geom.Similar(ps, 0, 1, pt("0,0"), pt("4,0")), "0,0 4,0 4,3"},
		{"moved", geom.Similar(ps, 0, 1, pt("1,1"), pt("5,1")), "1,1 5,1 5,4"},
		{"doubled and turned", geom.Similar(ps, 0, 1, pt("0,0"), pt("0,8")), "0,0 0,8 -6,8"},
		{"turned half round", geom.Similar(ps, 0, 1, pt("0,0"), pt("-4,0")), "0,0 -4,0 -4,-3"},
		{"by other corners", geom.Similar(ps, 2, 0, pt("0,0"), pt("5,0")), "5,0 9/5,12/5 0,0"}, // Euclid VI.8
		{"by a diagonal", geom.Similar(ps, 0, 2, pt("0,0"), pt("5,0")), "0,0 16/5,-12/5 5,0"},
		{"in surds", geom.Similar(pts("0,0 1,0 1,1"), 0, 2, pt("0,0"), pt("√2,0")), "0,0 √2/2,-√2/2 √2,0"},
		{"onto one place", geom.Similar(ps, 0, 1, pt("2,2"), pt("2,2")), "2,2 2,2 2,2"},
		{"shifted", geom.Shift(ps, 1, pt("0,√2")), "-4,√2 0,√2 0,3+√2"},
		{"shifted to where it is", geom.Shift(ps, 2, pt("4,3")), "0,0 4,0 4,3"},
		{"flipped", geom.Flip(ps, 0, 1), "0,0 4,0 4,-3"},
		{"flipped in the longest side", geom.Flip(ps, 0, 2), "0,0 28/25,96/25 4,3"},
		{"flipped twice", geom.Flip(geom.Flip(ps, 1, 2), 1, 2), "0,0 4,0 4,3"},
		{"a point on the line stays", geom.Flip(pts("0,0 1,1 2,2 3,0"), 0, 1), "0,0 1,1 2,2 0,3"},
	}
	for _, test := range tests {
		if !samePoints(test.got, pts(test.want)) {
			t.Errorf("%s: %v, want %s", test.name, test.got, test.want)
		}
	}
	if !samePoints(ps, pts("0,0 4,0 4,3")) {
		t.Errorf("the points that were moved are now %v", ps)
	}
}
