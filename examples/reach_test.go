package examples_test

import (
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/svg/layout"
)

// By how many millimetres a figure may take less paper than it is said to, and more: measures
// and notes stand outside.
const (
	reachLess = 6
	reachMore = 11
)

// TestReach compares what a figure is said to take of paper with what its drawing takes.
func TestReach(t *testing.T) {
	compared := 0
	for _, path := range find(t, ".trm") {
		f := lang.Compile(path, read(t, path)).Figure
		if f == nil || f.Paper != nil {
			continue
		}
		compared++
		wide, high := f.Reach()
		w, h := drawnSize(t, f)
		if max(wide-w, high-h) > reachLess || max(w-wide, h-high) > reachMore {
			t.Errorf("%s takes %.1f × %.1f mm, and is said to take %.1f × %.1f", path, w, h, wide, high)
		}
	}
	if compared < 100 {
		t.Errorf("only %d figures were compared", compared)
	}
}

func drawnSize(t *testing.T, f *figure.Figure) (wide, high float64) {
	t.Helper()
	doc, _, err := layout.Draw(f, layout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return float64(doc.Width) / 1000, float64(doc.Height) / 1000
}

// Figures in which arcs, the ends of straights and letters go far beyond the points.
var farReaching = map[string]string{
	"an arc that sees a join": `given points A, B
given angle XYZ = 50°
k, O by viewarc(A, B, X, Y, Z)
take P on k, left of AB
join APB`,
	"a triangle and its image": `given triangle ABC
given Z outside ABC
join ABCA
line a through A and Z
line b through B and Z
line c through C and Z
arc p centre Z through A
a meets p at D other than A
arc q centre Z through B
b meets q at E other than B
arc r centre Z through C
c meets r at F other than C
join DEFD`,
	"a circle that touches a line": `given line m
given A above m
given B above m
k, T, O by throughtouch(A, B, m)
M by middle(A, B)`,
	"a circle on a small sheet": `paper 60 mm by 60 mm
given points A, B, C
join ABCA
k, O by circumcircle(A, B, C)`,
}

// TestFarReaching wants room on the page for all ink of figures in which all is left to chance.
func TestFarReaching(t *testing.T) {
	for name, text := range farReaching {
		t.Run(name, func(t *testing.T) {
			r := lang.Compile("", []byte("figure \""+name+"\"\n"+text+"\n"))
			if r.Figure == nil {
				t.Fatal(r.Problems)
			}
			doc, warnings, err := layout.Draw(r.Figure, layout.Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range warnings {
				if strings.Contains(w.Text, "of paper") {
					t.Error(w.Text)
				}
			}
			if doc.Width > figure.PageWide*1000 {
				t.Errorf("it is %d µm wide", doc.Width)
			}
		})
	}
}
