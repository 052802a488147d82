package lang_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"trammel/lang"
)

func titled(lines string) string { return "figure \"by chance\"\n" + lines + "\n" }

// chosen compiles a source that must be free of errors.
func chosen(t *testing.T, text string) *lang.Result {
	t.Helper()
	r := lang.Compile("chance.trm", []byte(text))
	if r.Figure == nil {
		t.Fatalf("%s\n%v", text, complaints(r))
	}
	return r
}

func complaints(r *lang.Result) (all []string) {
	for _, p := range r.Problems {
		line, _ := p.Span.File.Position(p.Span.Start)
		all = append(all, fmt.Sprintf("%d: %s", line, p.Text))
	}
	return all
}

// spots are the points of a figure that have letters, in units.
func spots(r *lang.Result) map[string][2]float64 {
	at := map[string][2]float64{}
	for _, p := range r.Figure.Points {
		if p.Label != nil {
			at[p.Name] = [2]float64{p.At.X.Float(), p.At.Y.Float()}
		}
	}
	return at
}

// TestChoosesWell: every meeting exists, and there is nothing to warn about: no
// crossing under 30°, no two things nearly but not exactly alike.
func TestChoosesWell(t *testing.T) {
	for _, f := range leftToChance {
		t.Run(f.name, func(t *testing.T) {
			if r := chosen(t, titled(f.lines)); len(r.Problems) > 0 {
				t.Errorf("%s\n%v", f.lines, complaints(r))
			}
		})
	}
}

// TestChoosesOnPaper: what is chosen goes on a page: no figure is larger than
// 20 units or smaller than 2, and no two points are nearer than 0.3.
func TestChoosesOnPaper(t *testing.T) {
	for _, f := range leftToChance {
		at := spots(chosen(t, titled(f.lines)))
		widest, closest := 0.0, math.Inf(1)
		for p, a := range at {
			for q, b := range at {
				if d := math.Hypot(a[0]-b[0], a[1]-b[1]); p != q {
					widest, closest = max(widest, d), min(closest, d)
				}
			}
		}
		if widest > 20 || widest < 2 || closest < 0.3 {
			t.Errorf("%s: the points are from %.2f to %.2f units apart", f.name, closest, widest)
		}
	}
}

// TestChoosesAlike: the same source gives the same figure, in any order of compiling.
func TestChoosesAlike(t *testing.T) {
	first := make([]string, len(leftToChance))
	for i, f := range leftToChance {
		first[i] = choices(chosen(t, titled(f.lines)))
	}
	for i := len(leftToChance) - 1; i >= 0; i-- {
		if again := choices(chosen(t, titled(leftToChance[i].lines))); again != first[i] {
			t.Errorf("%s: first %s, then %s", leftToChance[i].name, first[i], again)
		}
	}
}

func choices(r *lang.Result) string {
	var all []string
	for _, c := range r.Choices() {
		all = append(all, c.Name+" "+c.Value)
	}
	return strings.Join(all, ", ")
}

// TestChoicesStay: a line at the end that makes no new demand leaves every choice
// as it is. (A join makes one: it may come to look equal to another.)
func TestChoicesStay(t *testing.T) {
	for _, f := range leftToChance {
		before := choices(chosen(t, titled(f.lines)))
		for _, line := range []string{"label A above", "note \"here\" near B", "claim AB > 0", "# a remark"} {
			if strings.Contains(f.lines, line) {
				continue
			}
			if after := choices(chosen(t, titled(f.lines+"\n"+line))); after != before {
				t.Errorf("%s, with %s: %s\nwithout it: %s", f.name, line, after, before)
			}
		}
	}
}

// TestChoosesNoAccident: a choice that would do, but would put a point on
// another, or make an opening just that of another, is not taken.
func TestChoosesNoAccident(t *testing.T) {
	for _, x := range []float64{1.75, 2, 2.3, 3.5, 4.6, 5.25, 7} {
		r := chosen(t, titled(fmt.Sprintf(`given A (0, 0)
given B (9, 0)
ray AB
given X on AB, %g from A
step off P[1 to 4] on AB from A, radius any
given C above AB
join CX`, x)))
		at := spots(r)
		for name, p := range at {
			if d := math.Abs(p[0] - at["X"][0]); strings.HasPrefix(name, "P") && d < 0.2 && p[1] == 0 {
				t.Errorf("X at %g: %s is %g from it", x, name, d)
			}
		}
	}
}

// TestChoosesInProportion: openings grow and shrink with the givens.
func TestChoosesInProportion(t *testing.T) {
	for _, size := range []float64{0.5, 1, 3, 8, 14} {
		for _, opening := range []string{"any over half AB", "any"} {
			r := chosen(t, titled(fmt.Sprintf("given A (0, 0)\ngiven B (%g, 0)\njoin AB\narc c centre A radius %s\narc d centre B radius c\nc meets d at X above AB\njoin AXB", size, opening)))
			if x := spots(r)["X"]; x[1] < 0.2*size || x[1] > size {
				t.Errorf("AB is %g, radius %s: X is %.3g above it", size, opening, x[1])
			}
		}
	}
}

// TestChoosesForPage: many free things of all kinds go on half a sheet, and on
// the paper that is named.
func TestChoosesForPage(t *testing.T) {
	many := `given line m
given P on m
given Q above m
given points A, B, C
join ABCA
n by erect(m, P)
r, F by drop(m, Q)
k, O by circumcircle(A, B, C)
M, b by bisect(A, B)
H by halve(A, B, C)`
	altitudes := "given triangle ABC\nH, D, E, F by orthocentre(A, B, C)"
	dropped := `given line m
given P above m
arc c centre P radius any cuts m at L and R
arc d centre L radius any
arc e centre R radius d
d meets e at Y below m`
	for _, c := range []struct {
		paper, lines  string
		width, height float64 // in units, without the margins
	}{
		{"", many, 18, 12.5}, {"paper a6 landscape\n", many, 11.8, 7.5},
		{"paper a5\n", altitudes, 11.8, 18}, {"paper 60 mm by 60 mm\n", dropped, 3, 3},
		{"unit 20 mm\n", dropped, 9, 6.25}, {"unit 40 mm\n", dropped, 4.5, 3.1}, {"unit 2 mm\n", dropped, 90, 62.5},
	} {
		lo, hi := [2]float64{99, 99}, [2]float64{-99, -99}
		for _, p := range spots(chosen(t, titled(c.paper+c.lines))) {
			for k := range 2 {
				lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
			}
		}
		w, h := hi[0]-lo[0], hi[1]-lo[1]
		if w > c.width || h > c.height || max(w/c.width, h/c.height) < 0.25 {
			t.Errorf("%s%s: the points take %.1f by %.1f", c.paper, c.lines, w, h)
		}
	}
}
