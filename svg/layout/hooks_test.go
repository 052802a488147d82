package layout

import (
	"slices"
	"testing"

	"trammel/svg"
)

// TestHooks draws one thing of each kind: its ink and its words carry the same
// class, a run of joins says piece by piece what it is of, and the kind of a
// mark is told.
func TestHooks(t *testing.T) {
	s := newSketch("hooks")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 2, 4, giv)
	s.join("ABCA", giv)
	s.circle("k", "A", 2, res).Label = nil
	s.length("AB", "6 cm")
	s.size("BAC", "63°")
	doc, _, err := Draw(&s.Figure, Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string][]string{
		"given": {"s1 s2 s3"}, "result": {"c1"}, "marks": {"arc a1"}, "points": {"p1", "p2", "p3"},
		"labels": {"p1", "p2", "p3", "length s1", "angle a1"},
	}
	for _, g := range doc.Groups {
		var found []string
		for _, i := range g.Items {
			switch i := i.(type) {
			case svg.Path:
				found = append(found, i.Class)
			case svg.Disc:
				found = append(found, i.Class)
			case svg.Text:
				found = append(found, i.Class)
			}
		}
		if !slices.Equal(found, want[g.Class]) {
			t.Errorf("the %s have the classes %q, want %q", g.Class, found, want[g.Class])
		}
		delete(want, g.Class)
	}
	if len(want) > 0 {
		t.Errorf("there is no ink of %v", want)
	}
}
