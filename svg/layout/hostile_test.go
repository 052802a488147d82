package layout

import (
	"fmt"
	"math"
	"testing"

	"trammel/geom/figure"
)

// hostile are figures that no teacher draws, each of a kind that a search
// without bounds takes long over.
var hostile = []entry{
	{"many-lines", func() *sketch {
		s := newSketch("lines")
		for i := range 6000 {
			a, b := fmt.Sprint("a", i), fmt.Sprint("b", i)
			x := float64(i%100) * 0.15
			s.at[a], s.at[b] = s.pt(x, float64(i/100)*0.3), s.pt(x+8, float64((i*37)%60)*0.3)
			from, to := s.at[a], s.at[b]
			s.Straights = append(s.Straights, &figure.Straight{Thing: thing("", giv), Line: s.through(a, b), Start: &from, End: &to})
			if i < 400 {
				s.Marks = append(s.Marks, figure.Ticks{Segments: []figure.Segment{{A: from, B: to}}, Count: 3})
			}
		}
		return s
	}},
	{"one-line", func() *sketch {
		s := newSketch("one line")
		s.at["A"], s.at["B"] = s.pt(0, 0), s.pt(9, 0)
		for i := range 6000 {
			l := s.line("", "A", "B", "AB", figure.Role(i%3))
			l.Used = append(l.Used, s.pt(float64(i%10), 0))
		}
		return s
	}},
	{"endless-lines", func() *sketch {
		s := newSketch("endless")
		for i := range 500 {
			a, b := fmt.Sprint("a", i), fmt.Sprint("b", i)
			s.at[a], s.at[b] = s.pt(float64(i)*0.03, 0), s.pt(float64(i)*0.03, 9)
			l := s.line(a, a, b, "", giv)
			l.Used = append(l.Used, s.at[a], s.at[b])
		}
		return s
	}},
	{"one-spot", func() *sketch {
		s := newSketch("spot")
		for i := range 500 {
			s.point(fmt.Sprint("A", i), float64(i%3)*0.01, 0, giv)
		}
		return s
	}},
	{"one-length", func() *sketch {
		s := newSketch("length")
		s.point("A", 0, 0, giv)
		for i := range 500 {
			s.at["B"] = s.pt(5, float64(i)*0.001)
			s.join("AB", giv)
			s.length("AB", "5 cm")
		}
		return s
	}},
	{"one-vertex", func() *sketch {
		s := newSketch("vertex")
		s.point("A", 0, 0, giv)
		for i := range 500 {
			a := float64(i) * math.Pi / 500
			s.at["B"], s.at["C"] = s.pt(6*math.Cos(a), 6*math.Sin(a)), s.pt(6*math.Cos(a+0.3), 6*math.Sin(a+0.3))
			s.join("AB", giv)
			s.size("BAC", "17°")
		}
		return s
	}},
	{"many-arcs", func() *sketch {
		s := newSketch("arcs")
		for i := range 4000 {
			c, p := fmt.Sprint("c", i), fmt.Sprint("p", i)
			s.at[c], s.at[p] = s.pt(float64(i%63)*0.2, float64(i/63)*0.2), s.pt(float64(i%63)*0.2+1, float64(i/63)*0.2)
			k := s.arc(c, 1, "", con)
			k.Used = append(k.Used, s.at[p])
		}
		return s
	}},
	{"many-meetings", func() *sketch {
		s := newSketch("meetings")
		for i := range 60 {
			c := fmt.Sprint("c", i)
			s.at[c] = s.pt(float64(i)*0.1, 0)
			k := s.arc(c, 9, "", con)
			for j := range 200 {
				a := float64(i*j) * 0.001
				k.Used = append(k.Used, s.pt(float64(i)*0.1+9*math.Cos(a), 9*math.Sin(a)))
			}
		}
		return s
	}},
}

// BenchmarkHostile lays each out: all stay under a second on a quiet machine.
func BenchmarkHostile(b *testing.B) {
	for _, f := range hostile {
		b.Run(f.name, func(b *testing.B) {
			for b.Loop() {
				s := f.draw()
				if _, _, err := Draw(&s.Figure, Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
