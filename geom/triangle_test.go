package geom_test

import (
	"errors"
	"strings"
	"testing"

	"trammel/geom"
)

// data reads "BC 3, CA 4, A 90": sides in the order of their corners' names.
func data(s string) geom.TriangleData {
	d := geom.TriangleData{Names: [3]string{"A", "B", "C"}}
	for _, part := range strings.Split(s, ", ") {
		name, value, _ := strings.Cut(part, " ")
		if i := strings.Index("ABC", name); len(name) == 1 {
			a := degrees(value)
			d.Angle[i] = &a
			continue
		}
		for i, side := range []string{"BC", "CA", "AB"} {
			if name == side {
				d.Side[i] = num(value)
			}
		}
	}
	return d
}

// shifted is the same triangle with its corners named one further.
func shifted(d geom.TriangleData) geom.TriangleData {
	out := geom.TriangleData{Names: d.Names}
	for i := range 3 {
		out.Side[(i+1)%3], out.Angle[(i+1)%3] = d.Side[i], d.Angle[i]
	}
	return out
}

// mirrored is the same triangle with B and C changed.
func mirrored(d geom.TriangleData) geom.TriangleData {
	d.Side[1], d.Side[2] = d.Side[2], d.Side[1]
	d.Angle[1], d.Angle[2] = d.Angle[2], d.Angle[1]
	return d
}

// TestTriangle builds each triangle with its data at every corner, and either
// way round.
func TestTriangle(t *testing.T) {
	tests := []struct{ name, data, sides string }{
		{"three sides", "BC 3, CA 4, AB 5", "3 4 5"},
		{"three sides and an area of 84", "BC 13, CA 14, AB 15", "13 14 15"},
		{"three sides, hardly apart", "BC 1, CA 1, AB 1.999999999999", "1 1 1.999999999999"},
		{"three sides in surds", "BC √2, CA √3, AB √5", "√2 √3 √5"},
		{"two sides and the angle between", "CA 4, AB 3, A 90", "5 4 3"}, // Euclid I.47
		{"an angle of 60° between", "CA 3, AB 8, A 60", "7 3 8"},         // Euclid II.13: 9 + 64 − 24
		{"an angle of 120° between", "CA 3, AB 5, A 120", "7 3 5"},       // Euclid II.12: 9 + 25 + 15
		{"a golden triangle", "CA 1, AB 1, A 36", "√5/2-1/2 1 1"},        // Euclid IV.10
		{"a side and the angles at it", "AB 10, A 30, B 60", "5 5√3 10"}, // half of an equilateral triangle
		{"an equilateral one", "AB 1, A 60, B 60", "1 1 1"},              // Euclid I.5 and I.32
		{"a side and an angle opposite", "BC 5, A 30, B 60", "5 5√3 10"}, //
		{"a square's half", "BC √2, A 90, B 45", "√2 1 1"},               //
		{"two angles and more than a right one", "AB √3, A 30, C 120", "1 1 √3"},
		{"a right angle and the side opposite", "BC 13, AB 5, A 90", "13 12 5"}, // Euclid I.47
		{"an obtuse angle and the side opposite", "BC 7, AB 5, A 120", "7 3 5"},
		{"the opposite side longer than the other", "BC 13, AB 7, A 60", "13 15 7"}, // 49 + 225 − 105
		{"the opposite side as long as the other", "BC 1, AB 1, A 30", "1 √3 1"},
		{"the opposite side just reaches", "BC 5, AB 10, A 30", "5 5√3 10"},
		{"all of it", "BC 3, CA 4, AB 5, C 90", "3 4 5"},
		{"all angles and all sides", "BC 1, CA 1, AB √2, A 45, B 45, C 90", "1 1 √2"},
		{"three angles and a side", "BC 1, A 60, B 60, C 60", "1 1 1"},
	}
	for _, test := range tests {
		sides := strings.Fields(test.sides)
		d, want := data(test.data), [3]geom.Real{num(sides[0]), num(sides[1]), num(sides[2])}
		for range 3 {
			checkTriangle(t, test.name, d, want)
			checkTriangle(t, test.name+", mirrored", mirrored(d), [3]geom.Real{want[0], want[2], want[1]})
			d, want = shifted(d), [3]geom.Real{want[2], want[0], want[1]}
		}
	}
}

func checkTriangle(t *testing.T, name string, d geom.TriangleData, want [3]geom.Real) {
	t.Helper()
	ps, err := geom.Triangle(field, d)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	for i := range 3 {
		if side := geom.Dist(ps[(i+1)%3], ps[(i+2)%3]); !side.Equal(want[i]) {
			t.Errorf("%s: side %d is %s, want %s", name, i, geom.Show(side), geom.Show(want[i]))
		}
	}
	if geom.SignedArea2(ps[:]).Sign() <= 0 {
		t.Errorf("%s: %v is not anticlockwise", name, ps)
	}
}

func TestImpossibleTriangles(t *testing.T) {
	tests := []struct{ data, fact, help string }{
		{"BC 3, CA 1, AB 2", "no triangle has these sides: AC and AB together are 3, not more than BC, which is 3", ""}, // Euclid I.20
		{"BC 1, CA 2, AB 4", "no triangle has these sides: BC and AC together are 3, not more than AB, which is 4", ""},
		{"BC √2, CA √8, AB √2", "no triangle has these sides: AB and BC together are 2√2, not more than AC, which is 2√2", ""},
		{"BC 0, CA 1, AB 1", "BC is 0, and a side must be more than 0", ""},
		{"CA 4, AB 3, A 180", "the angle at A is 180°, and an angle of a triangle lies between 0° and 180°", ""},
		{"CA 4, AB 3, A 0", "the angle at A is 0°, and an angle of a triangle lies between 0° and 180°", ""},
		{"AB 1, A 100, B 80", "the two angles add up to 180°, and in a triangle they stay under 180°", "make one of them smaller"},
		{"AB 1, A 120, B 80", "the two angles add up to 200°, and in a triangle they stay under 180°", "make one of them smaller"},
		{"AB 1, A 60, B 60, C 50", "the angles of a triangle add up to 180°, and these to 170°", "leave one of them out"},
		{"A 60, B 60, C 60", "angles alone do not fix a triangle's size", "give a side too"},
		{"AB 10, BC 4, A 30", "no triangle has these data: BC is 4, and it must be at least 5 to reach from B to the other arm", ""},
		{"CA 10, BC 4, A 30", "no triangle has these data: BC is 4, and it must be at least 5 to reach from C to the other arm", ""},
		{"AB 10, BC 10, A 120", "no triangle has these data: opposite the angle at A, BC must be longer than AB, which is 10", ""},
		{"AB 6, BC 6, A 90", "no triangle has these data: opposite the angle at A, BC must be longer than AB, which is 6", ""},
		{"AB 6, BC 5.999999999999, A 90", "no triangle has these data: BC is ≈ 6, and it must be at least 6 to reach from B to the other arm", ""},
		{"AB 4√2, BC 5, A 45", "two triangles have these data: one with AC = 7, one with AC = 1", "give AC, or one more angle, or the kind: the first is acute, the second obtuse"},
		{"CA 4√2, BC 5, A 45", "two triangles have these data: one with AB = 7, one with AB = 1", "give AB, or one more angle, or the kind: the first is acute, the second obtuse"},
		{"AB 10, BC 6, A 30", "two triangles have these data: one with AC = √11 + 5√3, one with AC = 5√3 − √11", "give AC, or one more angle"},
		{"AB 10, BC 9, A 60", "two triangles have these data: one with AC = 5 + √6, one with AC = 5 − √6", "give AC, or one more angle, or the kind: the first is acute, the second obtuse"},
		{"BC 3, CA 4, AB 5, C 80", "the other data make AB ≈ 4.564, and not 5", "leave one of the data out, or make them agree"}, // 9 + 16 − 24 cos 80°
		{"CA 4, AB 3, A 90, BC 6", "the other data make BC 5, and not 6", "leave one of the data out, or make them agree"},
		{"CA 4, AB 3, A 90, B 60", "the other data make the angle at B ≈ 53.13°, and not 60°", "leave one of the data out, or make them agree"},
		{"AB 1, A 60, B 60, BC 2", "the other data make the angle at A 90°, and not 60°", "leave one of the data out, or make them agree"},                                                  // half of an equilateral triangle
		{"AB 7, BC 6.1, A 60", "two triangles have these data: one with AC ≈ 4.178, one with AC ≈ 2.822", "give AC, or one more angle, or the kind: the first is acute, the second obtuse"}, // 7/2 ± √46/10
	}
	for _, test := range tests {
		_, err := geom.Triangle(field, data(test.data))
		var reason *geom.Impossible
		if !errors.As(err, &reason) || reason.Fact != test.fact || reason.Help != test.help || err.Error() != test.fact {
			t.Errorf("%s: %v (%+v)\nwant %s", test.data, err, reason, test.fact)
		}
	}
}

// The data are the caller's, and stay as they are.
func TestTriangleKeepsData(t *testing.T) {
	d := data("AB 1, A 60, B 60")
	if _, err := geom.Triangle(field, d); err != nil || d.Angle[2] != nil {
		t.Errorf("%v, the third angle is now %v", err, d.Angle[2])
	}
}
