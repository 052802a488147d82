package layout

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// crowded is a sheet of 50 labelled points among 20 lines and 5 circles.
func crowdedSheet(seed uint64) *sketch {
	r := rand.New(rand.NewPCG(seed, 1))
	s := newSketch("A crowd")
	for i := range 20 {
		a, b := fmt.Sprintf("a%d", i), fmt.Sprintf("b%d", i)
		s.at[a] = s.pt(r.Float64()*15, r.Float64()*20)
		s.at[b] = s.pt(r.Float64()*15, r.Float64()*20)
		l := s.line("", a, b, "", giv)
		l.Used = append(l.Used, s.at[a], s.at[b])
	}
	for i := range 5 {
		c := fmt.Sprintf("c%d", i)
		s.at[c] = s.pt(3+r.Float64()*9, 3+r.Float64()*14)
		s.circle("", c, 1.5+r.Float64()*3, res)
	}
	for i := range 50 {
		on := s.Straights[i%20]
		t := r.Float64()
		a, b := s.at[fmt.Sprintf("a%d", i%20)], s.at[fmt.Sprintf("b%d", i%20)]
		x := a.X.Float() + t*(b.X.Float()-a.X.Float())
		y := a.Y.Float() + t*(b.Y.Float()-a.Y.Float())
		p := s.point(fmt.Sprintf("p%d", i), x, y, con)
		p.Label.Text = string(rune('A' + i%26))
		on.Used = append(on.Used, p.At)
	}
	return s
}

// TestCrowd holds the number of bad places in random crowds: nearly all of
// 50 labels stand clear, and each that does not is warned of.
func TestCrowd(t *testing.T) {
	worst := 0
	for seed := range uint64(6) {
		f := crowdedSheet(seed)
		doc, warnings, err := Draw(&f.Figure, Options{})
		if err != nil {
			t.Fatal(err)
		}
		inspect(t, doc)
		save(t, fmt.Sprintf("crowd%d", seed), doc)
		bad := 0
		for _, w := range warnings {
			if w.Line == 1 {
				bad++
			}
		}
		t.Logf("seed %d: %d of 50 labels touch ink", seed, bad)
		worst = max(worst, bad)
	}
	if worst > 6 {
		t.Errorf("%d of 50 labels stand on ink", worst)
	}
}

func BenchmarkCrowd(b *testing.B) {
	f := crowdedSheet(3)
	for b.Loop() {
		if _, _, err := Draw(&f.Figure, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestOneSpot has 60 labels for one place: the search stays bounded and says
// what it could not do.
func TestOneSpot(t *testing.T) {
	s := newSketch("One spot")
	for i := range 60 {
		s.point(fmt.Sprintf("A%d", i), math.Mod(float64(i), 3)*0.01, 0, giv)
	}
	_, warnings, err := Draw(&s.Figure, Options{})
	if err != nil || len(warnings) == 0 {
		t.Errorf("got %d warnings and error %v", len(warnings), err)
	}
}
