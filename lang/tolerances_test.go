package lang_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"trammel/lang/slip"
)

// TestPublishedTolerances: under the tolerance of a published marking scheme, what
// the scheme accepts lies in the band, and what is three times as far out does not.
func TestPublishedTolerances(t *testing.T) {
	text, err := os.ReadFile("../testdata/published/exam_tolerances.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		mm, errMM := strconv.ParseFloat(cells[3], 64)
		degrees, errDegrees := strconv.ParseFloat(cells[4], 64)
		if len(cells) != 6 || errMM != nil || errDegrees != nil {
			t.Fatalf("a row that is none: %q", line)
		}
		rows++
		name, tolerance := cells[0]+", "+cells[2], slip.Tolerance{Millimetres: mm, Degrees: degrees}
		if cells[2] == "perpendicular bisector" {
			bisectorBand(t, name, tolerance)
		} else {
			lengthBand(t, name, tolerance)
		}
	}
	if rows != 5 {
		t.Errorf("%d rows", rows)
	}
}

// bisectorBand looks at the bisector of a join of 8 cm, which is upright at x = 4.
func bisectorBand(t *testing.T, name string, allowed slip.Tolerance) {
	t.Helper()
	b := bandsOf(t, "figure \"t\"\ngiven A (0, 0)\ngiven B (8, 0)\nM, n by bisect(A, B)\n", allowed)["n"]
	at := func(y float64) (left, right float64) { // how wide the outline is at a height
		for i, p := range b.Outline {
			q := b.Outline[(i+1)%len(b.Outline)]
			if (p.Y-y)*(q.Y-y) > 0 || p.Y == q.Y {
				continue
			}
			x := p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y) - 4
			left, right = math.Min(left, x), math.Max(right, x)
		}
		return -left * 10, right * 10
	}
	for _, y := range []float64{-1.5, 0, 1.5} {
		turned := math.Abs(y) * 10 * math.Tan(allowed.Degrees*math.Pi/180)
		left, right := at(y)
		if need := math.Max(allowed.Millimetres, turned); left < need-0.01 || right < need-0.01 {
			t.Errorf("%s: at %g cm the band reaches %.2f mm and %.2f mm, and %.2f mm are accepted", name, y, left, right, need)
		}
		if most := 3 * allowed.Millimetres; left > most || right > most {
			t.Errorf("%s: at %g cm the band reaches %.2f mm and %.2f mm, over %.2f mm", name, y, left, right, most)
		}
	}
}

// lengthBand looks at the end of a side of 7.8 cm that arcs have constructed.
func lengthBand(t *testing.T, name string, allowed slip.Tolerance) {
	t.Helper()
	b := bandsOf(t, "figure \"t\"\ngiven A (0, 0)\ngiven B (8, 0)\narc c centre A radius 7.8\narc d centre B radius 6\nc meets d at C above AB\njoin AC, BC\n", allowed)["C"]
	least, most := math.Inf(1), 0.
	for _, p := range b.Outline {
		d := math.Hypot(p.X, p.Y)
		least, most = math.Min(least, d), math.Max(most, d)
	}
	short, long := (7.8-least)*10, (most-7.8)*10
	for _, out := range []float64{short, long} {
		if out < allowed.Millimetres-0.01 || out > 3*allowed.Millimetres {
			t.Errorf("%s: AC may be from %.2f mm too short to %.2f mm too long, and %g mm are accepted", name, short, long, allowed.Millimetres)
		}
	}
}
