package examples_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// measured finds the measurements of givens, which a teacher edits.
var measured = regexp.MustCompile(`(?m)^(given .*?(?:= |radius |, |\(|[A-Z] ))(\d+(?:\.\d+)?)\b`)

// TestStable edits the first measurement of every example by two hundredths and
// counts the letters of points that then stand in another direction from
// their points, by more than an eighth of a turn: few may.
func TestStable(t *testing.T) {
	letters, moved, edited := 0, 0, 0
	for _, path := range find(t, ".trm") {
		text := read(t, path)
		place := measured.FindSubmatchIndex(text)
		if place == nil {
			continue
		}
		size, _ := strconv.ParseFloat(string(text[place[4]:place[5]]), 64)
		other := string(text[:place[4]]) + fmt.Sprintf("%.2f", size*1.02) + string(text[place[5]:])
		before, after := ways(t, path, string(text)), ways(t, path, other)
		if before == nil || after == nil {
			continue
		}
		edited++
		for class, a := range before {
			b, ok := after[class]
			if !ok {
				continue
			}
			letters++
			if math.Abs(math.Remainder(a-b, 2*math.Pi)) > math.Pi/4 {
				moved++
				t.Logf("%s: %s", path, class)
			}
		}
	}
	t.Logf("%d of %d letters moved in %d figures", moved, letters, edited)
	if edited < 60 || letters < 300 {
		t.Errorf("only %d figures with %d letters were edited", edited, letters)
	}
	if moved > letters*3/100 {
		t.Errorf("%d of %d letters moved", moved, letters)
	}
}

// ways are the directions from points to their letters, by the class of both;
// nil where the source does not compile.
func ways(t *testing.T, path, text string) map[string]float64 {
	t.Helper()
	r := lang.Compile(path, []byte(text))
	if r.Figure == nil {
		return nil
	}
	doc, _, err := layout.Draw(r.Figure, layout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	dots, ways := map[string]svg.XY{}, map[string]float64{}
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			if d, ok := i.(svg.Disc); ok && g.Class == "points" {
				dots[d.Class] = d.Centre
			}
		}
	}
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			l, ok := i.(svg.Text)
			if dot, isPoint := dots[l.Class]; ok && isPoint {
				b := svg.Measure(l)
				x, y := l.At.X+(b.Left+b.Right)/2-dot.X, l.At.Y+(b.Top+b.Bottom)/2-dot.Y
				ways[l.Class] = math.Atan2(float64(y), float64(x))
			}
		}
	}
	return ways
}
