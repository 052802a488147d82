package lang

import (
	"fmt"
	"strings"
	"testing"

	"trammel/geom/figure"
)

// TestMarkClasses: equal and parallel are transitive, so a mark that names what is
// marked already goes on with its class and marks nothing twice.
func TestMarkClasses(t *testing.T) {
	const src = `figure "t"
given A (0, 0)
given B (6, 0)
given C (0, 2)
given D (6, 2)
given E (1, 4)
given F (7, 4)
join AB, CD, EF, AC, BD
mark AB parallel to CD
mark CD parallel to EF
mark AB = CD
mark AC = BD
mark EF = AB
mark angle CAB = ABD
mark angle BDC = DBA
`
	r := Compile("t.trm", []byte(src))
	if r.Problems.Failed() {
		t.Fatal(r.Problems)
	}
	var got []string
	for _, m := range r.Figure.Marks {
		switch m := m.(type) {
		case figure.Arrows:
			got = append(got, fmt.Sprint("arrows ", m.Count, " on ", len(m.Segments)))
		case figure.Ticks:
			got = append(got, fmt.Sprint("ticks ", m.Count, " on ", len(m.Segments)))
		case figure.AngleArcs:
			got = append(got, fmt.Sprint("arcs ", m.Count, " on ", len(m.Angles)))
		}
	}
	const want = "arrows 1 on 2, arrows 1 on 1, ticks 1 on 2, ticks 2 on 2, ticks 1 on 1, arcs 1 on 2, arcs 1 on 1"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("%s\nnot %s", s, want)
	}
}
