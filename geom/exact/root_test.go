package exact

import "testing"

// TestDenestedWhenAdjoined wants no level over another from radicands that open into roots of
// whole numbers (textbook examples, from memory).
func TestDenestedWhenAdjoined(t *testing.T) {
	for _, c := range []struct {
		a, b, d int64
		want    string
	}{
		{3, 2, 2, "1 + √2"}, {5, 2, 6, "√3 + √2"}, {7, 4, 3, "2 + √3"}, {9, -4, 5, "√5 − 2"},
		{8, -2, 15, "√5 − √3"}, {6, 2, 5, "1 + √5"}, {11, 6, 2, "3 + √2"}, {49, 20, 6, "5 + 2√6"},
		{10, 2, 21, "√7 + √3"}, {16, -6, 7, "3 − √7"}, {2, 1, 3, "(√6 + √2)/2"},
	} {
		k := newKit()
		x := k.root(k.int(c.a).Add(k.sqrt(c.d).MulInt(c.b)))
		if got, ok := x.Surd(); !ok || got != c.want {
			t.Errorf("√(%d + %d√%d) = %q, want %s", c.a, c.b, c.d, got, c.want)
		}
		for i, l := range k.f.tower.levels {
			if i > baseLevels && !l.closure.isEmpty() {
				t.Errorf("√(%d + %d√%d): level %d stands over others", c.a, c.b, c.d, i)
			}
		}
	}
}
