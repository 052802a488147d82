package lang

import (
	"testing"

	"trammel/geom/figure"
)

// TestPurpose: what a call is made for is inked plainly, and what it gives on the way
// to something else stays faint.
func TestPurpose(t *testing.T) {
	const circles = "given circle k centre O (0, 0) radius 3\ngiven circle l centre P (8, 0) radius 1\n"
	const triangle = "given triangle ABC with AB = 7, BC = 6, CA = 5\n"
	for _, test := range []struct {
		source string
		plain  map[string]bool
	}{
		{circles + "A, B, C, D, s, t by outers(k, l)\n", map[string]bool{"s": true, "t": true}},
		{circles + "A, B, C, D, s, t by outers(k, l) in full\njoin OA\n", map[string]bool{"s": true, "t": true}},
		{circles + "A, B, C, D, s, t by outers(k, l)\nfaint s\n", map[string]bool{"s": false, "t": true}},
		{circles + "M, n by bisect(O, P)\n", map[string]bool{"n": true}},
		{circles + "M, n by bisect(O, P)\ncircle c centre M through O\n", map[string]bool{"n": false}},
		{triangle + "w, O by circumcircle(A, B, C)\ntake X on w\n", map[string]bool{"w": true}},
		{triangle + "n, F by drop(AB, C)\n", map[string]bool{"n": true}},
		{triangle + "n, F by drop(AB, C)\nn meets BC at X\n", map[string]bool{"n": false}},
		{triangle + "repeat i from 1 to 2\n  n[i], F[i] by drop(AB, C)\nend\njoin CF1\n", map[string]bool{"n1": true}},
	} {
		r := Compile("t.trm", []byte("figure \"t\"\n"+test.source))
		if r.Figure == nil {
			t.Fatalf("%s%v", test.source, r.Problems[0])
		}
		found := 0
		for _, s := range r.Figure.Straights {
			found += purpose(t, test.source, test.plain, s.Thing)
		}
		for _, c := range r.Figure.Circles {
			found += purpose(t, test.source, test.plain, c.Thing)
		}
		if found != len(test.plain) {
			t.Errorf("%sfound %d of %d", test.source, found, len(test.plain))
		}
	}
}

// purpose holds a thing to the ink that is wanted, and tells whether it is looked at.
func purpose(t *testing.T, source string, plain map[string]bool, x figure.Thing) int {
	want, ok := plain[x.Name]
	if !ok || x.Hidden {
		return 0
	}
	if is := x.Weight == figure.Plain; is != want {
		t.Errorf("%s%s: plain is %t", source, x.Name, is)
	}
	return 1
}
