package lang_test

import (
	"slices"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
)

// TestRoundedSizes keeps the zero of a size that is rounded, and writes a whole one
// without.
func TestRoundedSizes(t *testing.T) {
	r := lang.Compile("sizes.trm", []byte(`figure "Sizes"
given triangle ABC with AB = 8, BC = 7, CA = 6
join ABCA
H by halve(B, A, C) unseen
ray AH
given D 4 from A at 29° to AB
join AD
label angle BAH size
label angle BAD size
`))
	if r.Figure == nil {
		t.Fatalf("%+v", r.Problems)
	}
	var sizes []string
	for _, m := range r.Figure.Marks {
		if m, ok := m.(figure.AngleLabel); ok {
			sizes = append(sizes, m.Text)
		}
	}
	if want := []string{"29.0°", "29°"}; !slices.Equal(sizes, want) {
		t.Errorf("the sizes are %q, not %q", sizes, want)
	}
}
