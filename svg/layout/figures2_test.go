package layout

import (
	"fmt"
	"math"

	"trammel/geom/figure"
)

func init() {
	textbook = append(textbook, []entry{{"tangents", tangents}, {"divide", divide}, {"pentagon", pentagon}, {"angle-bisector", halve}, {"parallelogram", parallelogram}, {"chain", chain}}...)
}

// tangents from a point to a circle, by the circle over the diameter.
func tangents() *sketch {
	s := newSketch("Tangents from a point")
	s.point("O", 0, 0, giv)
	s.point("P", 7, 1, giv)
	s.circle("k", "O", 2.5, giv)
	s.join("OP", con)
	s.mid("M", "O", "P", con)
	d2 := 50.0
	a := 2.5 * 2.5 / d2
	h := 2.5 * math.Sqrt(d2-2.5*2.5) / d2
	s.point("T", a*7-h*1, a*1+h*7, res)
	s.point("U", a*7+h*1, a*1-h*7, res)
	s.arc("M", s.dist("O", "M"), "TU", con)
	for _, x := range []string{"T", "U"} {
		l := s.line("", "P", x, "P"+x, res)
		from := s.at["P"]
		l.Start = &from
		s.join("O"+x, con)
	}
	s.right("OTP")
	s.right("PUO")
	s.ticks(1, "PT", "PU")
	return s
}

func divide() *sketch {
	s := newSketch("A segment in five equal parts")
	s.point("A", 0, 0, giv)
	s.point("B", 9, 0, giv)
	s.join("AB", giv)
	u, v := 1.3*math.Cos(0.6), 1.3*math.Sin(0.6)
	for i := 1; i <= 5; i++ {
		n := string(rune('p' + i))
		s.point(n, u*float64(i), v*float64(i), con).Label.Text = fmt.Sprintf("Q%d", i)
	}
	ray := s.line("", "A", "u", "Aqrstu", con)
	from := s.at["A"]
	ray.Start = &from
	for i := 1; i <= 4; i++ {
		n := string(rune('f' + i))
		s.point(n, 9*float64(i)/5, 0, res).Label.Text = fmt.Sprintf("P%d", i)
	}
	s.join("uB", con)
	for i := 1; i <= 4; i++ {
		s.join(string(rune('p'+i))+string(rune('f'+i)), con)
	}
	s.ticks(1, "Ag", "gh", "hi", "ij", "jB")
	return s
}

func pentagon() *sketch {
	s := newSketch("A pentagram")
	s.point("O", 0, 0, con)
	polygon(s, 5, 4, 90, giv)
	s.circle("", "O", 4, con)
	s.join("ABCDEA", giv)
	s.join("ACEBDA", res)
	s.meet("P", "A", "C", "B", "E", res)
	s.meet("Q", "B", "D", "A", "C", res)
	s.meet("R", "C", "E", "B", "D", res)
	s.meet("S", "D", "A", "C", "E", res)
	s.meet("T", "E", "B", "D", "A", res)
	s.arcs(1, "CAD", "DBE", "ECA", "ADB", "BEC")
	return s
}

func halve() *sketch {
	s := newSketch("The bisector of an angle")
	s.point("A", 0, 0, giv)
	s.point("B", 7, 0, giv)
	s.point("C", 7*math.Cos(0.9), 7*math.Sin(0.9), giv)
	s.point("S", 4, 0, con)
	s.point("T", 4*math.Cos(0.9), 4*math.Sin(0.9), con)
	s.point("X", 6.6*math.Cos(0.45), 6.6*math.Sin(0.45), con)
	for _, n := range []string{"B", "C", "X"} {
		l := s.line("", "A", n, "A"+n, giv)
		from := s.at["A"]
		l.Start = &from
		if n == "X" {
			l.Role = res
		}
	}
	s.arc("A", 4, "ST", con)
	s.arc("S", s.dist("S", "X"), "X", con)
	s.arc("T", s.dist("T", "X"), "X", con)
	s.arcs(1, "BAX", "XAC")
	return s
}

func parallelogram() *sketch {
	s := newSketch("A parallelogram")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 8, 3.5, giv)
	s.point("D", 2, 3.5, giv)
	s.join("ABCDA", giv)
	for _, j := range append(s.join("AC", res), s.join("BD", res)...) {
		j.Weight = figure.Faint
	}
	s.point("M", 4, 1.75, res)
	s.arrows(1, "AB", "DC")
	s.arrows(2, "AD", "BC")
	s.ticks(1, "AM", "MC")
	s.ticks(2, "BM", "MD")
	s.size("DAB", "60.3°")
	s.length("AB", "6 cm")
	s.length("BC", "4 cm")
	return s
}

func chain() *sketch {
	s := newSketch("Three circles")
	s.point("A", 0, 0, giv)
	s.point("B", 4, 0, giv)
	s.point("C", 2, 2*math.Sqrt(3), res)
	s.point("D", 2, -2*math.Sqrt(3), con)
	s.circle("c", "A", 4, con)
	s.circle("d", "B", 4, con)
	s.circle("e", "C", 4, con)
	s.join("ABCA", res)
	s.ticks(1, "AB", "BC", "CA")
	s.size("BAC", "60°")
	return s
}
