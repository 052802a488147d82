package lang_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/lang/slip"
)

func bandsOf(t *testing.T, source string, tolerance slip.Tolerance) map[string]figure.Band {
	t.Helper()
	r := lang.Compile("t.trm", []byte(source))
	if r.Figure == nil {
		t.Fatal(r.Problems[0].Text)
	}
	all := map[string]figure.Band{}
	for _, b := range r.Bands(tolerance) {
		all[b.Of] = b
	}
	return all
}

// Two arcs that cross under t, each out by e, fix a point to e/sin t (elementary;
// in tables of surveying for intersections). The arcs about A and B with radius r
// cross under 2 asin(AB/2r).
func TestBandOfAMeeting(t *testing.T) {
	for _, r := range []float64{4.2, 5, 6, 8} {
		source := `figure "t"
given A (0, 0)
given B (8, 0)
arc c centre A radius ` + geomText(r) + `
arc d centre B radius ` + geomText(r) + `
c meets d at X above AB
join AX
`
		b := bandsOf(t, source, slip.Tolerance{Millimetres: 0.2, Degrees: 0})["X"]
		farthest := 0.
		for _, p := range b.Outline {
			farthest = math.Max(farthest, math.Hypot(p.X-4, p.Y-math.Sqrt(r*r-16)))
		}
		want := 0.02 / math.Sin(2*math.Asin(4/r))
		if math.Abs(farthest-want) > 0.03*want {
			t.Errorf("radius %g: X moves by %.4f, want %.4f", r, farthest, want)
		}
	}
}

// A line through a given point and one met with arcs swings about the given
// point: its band is narrow there and wide at the other end.
func TestBandOfALine(t *testing.T) {
	source := `figure "t"
given A (0, 0)
given B (8, 0)
arc c centre A radius 6
arc d centre B radius 6
c meets d at X above AB
c meets d at Y below AB
line n through X and Y
claim n perpendicular to AB
`
	b := bandsOf(t, source, slip.Tolerance{Millimetres: 2, Degrees: 2})["n"]
	width := map[bool]float64{}
	for _, p := range b.Outline {
		high := math.Abs(p.Y) > 3
		width[high] = math.Max(width[high], math.Abs(p.X-4))
	}
	if !(width[true] > width[false] && width[false] >= 0.2-1e-6 && width[true] < 0.6) {
		t.Errorf("half widths: at the ends %.3f, in the middle %.3f", width[true], width[false])
	}
}

// What is given does not slip; a circle's band is a ring.
func TestBandsOfGivensAndCircles(t *testing.T) {
	all := bandsOf(t, `figure "t"
given triangle ABC with AB = 8, BC = 7, CA = 6
join ABCA
k, O by circumcircle(A, B, C)
bold k
`, slip.Usual)
	if _, ok := all["AB"]; ok {
		t.Error("a join of given points has a band")
	}
	k := all["k"]
	if len(k.Outline) > 0 || !(k.Inner < k.Outer) || k.Outer-k.Inner < 0.39 || k.Outer-k.Inner > 2 {
		t.Errorf("the ring of the circumcircle: %+v", k)
	}
}

func geomText(x float64) string { return map[float64]string{4.2: "4.2", 5: "5", 6: "6", 8: "8"}[x] }

func BenchmarkBands(b *testing.B) {
	r := lang.Compile("t.trm", []byte(readme))
	for b.Loop() {
		r.Bands(slip.Usual)
	}
}

// readme is the first figure of the README's kind.
const readme = `figure "A perpendicular from a point of a line"
given line m through A (0, 0) and B (9, 0)
given P on m, 4 from A
arc c centre P radius any cuts m at L and R
arc d centre L radius any over PL
arc e centre R radius d
d meets e at X above m
line n through P and X
claim n perpendicular to m
`

// TestBandsOfResults: there is a band for each thing that a marker looks at, and for
// nothing that is on the pupil's paper, is used up on the way, or may lie elsewhere
// on another's paper.
func TestBandsOfResults(t *testing.T) {
	const givens = "figure \"t\"\ngiven A (0, 0)\ngiven B 8 from A\njoin AB\n"
	for _, c := range []struct{ acts, want string }{
		{"P[1 to 2] by divide(A, B, 3)", "P1 P2"},
		{"M, n by bisect(A, B)", "M n"},
		{"given P (3, 4)\ngiven line m through A and B\nn by parallel(m, P)", "n"},
		{"M, n by bisect(A, B)\ncircle k centre M through A cuts n at C above AB\njoin AC", " C"},
		{"arc c centre A radius any over half AB\narc d centre B radius c\nc meets d at X above AB and Y below AB\nline n through X and Y cuts AB at M", "M n"},
	} {
		var got []string
		// "" is of a straight that goes by its ends
		for name := range bandsOf(t, givens+c.acts+"\n", slip.Usual) {
			got = append(got, name)
		}
		slices.Sort(got)
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("bands of %s, want %s:\n%s", s, c.want, c.acts)
		}
	}
}
