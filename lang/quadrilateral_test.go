package lang_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/solve"
	"trammel/lang/source"
)

// dataOf are the sides, diagonals and angles of a quadrilateral ABCD, as data.
func dataOf(ps [][2]float64) (data []string) {
	for _, e := range [][2]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}} {
		data = append(data, fmt.Sprintf("%c%c = %.1f", 'A'+e[0], 'A'+e[1], far(ps[e[0]], ps[e[1]])))
	}
	for i, angle := range turns(ps) {
		data = append(data, fmt.Sprintf("angle %c = %.0f°", 'A'+i, angle))
	}
	return data
}

// subsets tells of each way to take so many of some data.
func subsets(of, taken []string, n int, tell func([]string)) {
	if n == 0 {
		tell(taken)
		return
	}
	for i, d := range of {
		subsets(of[i+1:], append(taken[:len(taken):len(taken)], d), n-1, tell)
	}
}

// settled are the messages of data that are more than the shape needs, and were rounded,
// and of those that two shapes have.
var settled = regexp.MustCompile(`^the other data make |^two .*s have these data|^the angles at . and . add up to 180°`)

// TestFewData: of data that a real quadrilateral has, however few, one is
// found that is convex and not stunted.
func TestFewData(t *testing.T) {
	for _, shape := range []struct {
		kind string
		at   [4][2]float64
		most int // data
	}{
		{"quadrilateral", [4][2]float64{{0, 0}, {7.1, 0}, {6.2, 4.3}, {1.3, 5.2}}, 3},
		{"trapezium", [4][2]float64{{0, 0}, {8, 0}, {5.5, 4}, {1.4, 4}}, 3},
		{"isosceles trapezium", [4][2]float64{{0, 0}, {8, 0}, {6.2, 3.5}, {1.8, 3.5}}, 2},
		{"parallelogram", [4][2]float64{{0, 0}, {7, 0}, {8.7, 3.6}, {1.7, 3.6}}, 2},
		{"rhombus", [4][2]float64{{0, 0}, {5, 0}, {6.9, 4.6}, {1.9, 4.6}}, 1},
		{"rectangle", [4][2]float64{{0, 0}, {7, 0}, {7, 4}, {0, 4}}, 1},
	} {
		for n := 1; n <= shape.most; n++ {
			k := 0
			subsets(dataOf(shape.at[:]), nil, n, func(data []string) {
				if k++; n < 3 || k%3 == 0 { // of three data each third is enough
					holdPlain(t, shape.kind, "given "+shape.kind+" ABCD with "+strings.Join(data, ", "), n)
				}
			})
		}
	}
}

func holdPlain(t *testing.T, kind, line string, n int) {
	t.Helper()
	r := lang.Compile("x.trm", []byte(titled(line)))
	for _, p := range r.Problems {
		if p.Severity == source.Error && !settled.MatchString(p.Text) {
			t.Errorf("%s: %s", line, p.Text)
		}
	}
	if r.Figure == nil || n > 2 {
		return
	}
	ps := cornersOf(spots(r), "ABCD")
	shortest, longest := math.Inf(1), 0.0
	for i, angle := range turns(ps) {
		if angle < 25 || angle > 155 {
			t.Errorf("%s: the angle at %c is %.0f°", line, 'A'+i, angle)
		}
		side := far(ps[i], ps[(i+1)%4])
		shortest, longest = min(shortest, side), max(longest, side)
	}
	if shortest < longest/6 {
		t.Errorf("%s: a side of %.2f beside one of %.2f", line, shortest, longest)
	}
}

// TestSpecialParallelograms: two diagonals, a diagonal and an angle, and multiples settle
// them, or leave a plain one.
func TestSpecialParallelograms(t *testing.T) {
	for _, data := range []string{
		"parallelogram ABCD with AC = 8, BD = 6", "parallelogram ABCD with AC = 2 BD", "parallelogram ABCD with angle A = 2 angle B",
		"parallelogram ABCD with angle A = angle B", "parallelogram ABCD with AC = 8, AB = 5", "parallelogram ABCD with BD = 5, angle A = 50°",
		"rhombus ABCD with AC = 8", "rhombus ABCD with BD = 8", "rhombus ABCD with AC = 6, angle A = 100°", "rhombus ABCD with AC = 2 BD",
		"rhombus ABCD with AC = 6, BD = 5", "rectangle ABCD with AC = 6, AB = 5", "rectangle ABCD with BD = 6",
	} {
		kind, _, _ := strings.Cut(data, " ")
		holdPlain(t, kind, "given "+data+"\nclaim "+kind+" ABCD", 1)
	}
}

// TestEqualInQuadrilaterals: sides, diagonals and angles of a quadrilateral can be given
// as equal or as multiples, with nothing else, and nothing else comes out equal.
func TestEqualInQuadrilaterals(t *testing.T) {
	for _, data := range []string{
		"angle A = angle C", "angle B = angle D", "angle A = angle B", "angle A = angle B = angle C", "angle A = 2 angle C",
		"AC = BD", "AB = CD", "AB = BC = CD", "AB = 2 BC", "AB = 5, angle A = angle C", "AC = 2 CD",
	} {
		line := "given quadrilateral ABCD with " + data
		holdPlain(t, "quadrilateral", line, 1)
		r := lang.Compile("x.trm", []byte(titled(line)))
		if r.Figure == nil {
			continue
		}
		equal, angles := 0, turns(cornersOf(spots(r), "ABCD"))
		for i := range angles {
			for j := range i {
				if math.Abs(angles[i]-angles[j]) < 0.5 {
					equal++
				}
			}
		}
		said := strings.Count(data, "angle")
		if strings.Contains(data, "2 angle") {
			said = 0
		}
		if equal > said*(said-1)/2 {
			t.Errorf("%s: %d pairs of equal angles", line, equal)
		}
	}
}

// TestPartialQuadrilateralsSteady: what is left to chance of a quadrilateral follows its data.
// One in seven edits may make it jump: an angle passes from one side of a special one to the other.
func TestPartialQuadrilateralsSteady(t *testing.T) {
	var jumps []string
	edits := 0
	for _, data := range []string{
		"AB = 5, angle B = 100°", "AB = 6, angle B = 80°", "AB = 6, BC = 4, CD = 5", "AB = 5, BC = 4, CD = 3, DA = 4.5",
		"AC = 6, BD = 7", "AB = 6, BC = 5, angle C = 110°", "AB = 5, BC = 4, AC = 7", "angle A = 70°, angle B = 85°",
	} {
		for _, joined := range []string{"", "\njoin AC, BD"} {
			text := titled("given quadrilateral ABCD with " + data + joined)
			p := flat("", text)
			some, of := jumpsOf(t, data, text, solve.Inputs(p).Inputs, p)
			jumps, edits = append(jumps, some...), edits+of
		}
	}
	if edits < 100 || 7*len(jumps) > edits {
		t.Errorf("%d of %d edits make a quadrilateral jump:\n%s", len(jumps), edits, strings.Join(jumps, "\n"))
	}
}
