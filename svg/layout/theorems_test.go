package layout

import (
	"math"

	"trammel/geom"
	"trammel/geom/figure"
)

func incircle() *sketch {
	s := newSketch("The incircle")
	s.point("A", 0, 0, giv)
	s.point("B", 8, 0, giv)
	s.point("C", 2.6, 5.4, giv)
	s.join("ABCA", giv)
	a, b, c := s.dist("B", "C"), s.dist("C", "A"), s.dist("A", "B")
	p := a + b + c
	s.point("I", (b*8+c*2.6)/p, c*5.4/p, res)
	s.foot("D", "I", "B", "C", con)
	s.foot("E", "I", "C", "A", con)
	s.foot("F", "I", "A", "B", con)
	for _, l := range []string{"AI", "BI", "CI"} {
		s.join(l, con)
	}
	for _, j := range append(append(s.join("ID", con), s.join("IE", con)...), s.join("IF", con)...) {
		j.Dashed = true
	}
	s.circle("", "I", s.dist("I", "F"), res)
	s.right("IFB")
	s.right("IDC")
	s.right("IEA")
	s.arcs(1, "BAI", "IAC")
	s.arcs(2, "CBI", "IBA")
	s.arcs(3, "ACI", "ICB")
	return s
}

// ninePoint is a crowd: altitudes, medians, midpoints and the circle through nine points.
func ninePoint() *sketch {
	s := newSketch("Nine points")
	s.Unit.SetInt64(12)
	s.point("A", 0, 0, giv)
	s.point("B", 9, 0, giv)
	s.point("C", 3.2, 7, giv)
	s.join("ABCA", giv)
	s.foot("D", "A", "B", "C", con)
	s.foot("E", "B", "C", "A", con)
	s.foot("F", "C", "A", "B", con)
	s.join("AD", con)
	s.join("BE", con)
	s.join("CF", con)
	s.meet("H", "A", "D", "B", "E", con)
	s.mid("K", "B", "C", con)
	s.mid("L", "C", "A", con)
	s.mid("M", "A", "B", con)
	s.mid("P", "A", "H", con)
	s.mid("Q", "B", "H", con)
	s.mid("R", "C", "H", con)
	s.mid("N", "P", "K", res)
	s.circle("", "N", s.dist("N", "K"), res)
	s.right("ADB")
	s.right("BEC")
	s.right("CFA")
	return s
}

func thales() *sketch {
	s := newSketch("The angle in a half circle")
	s.point("A", -4, 0, giv)
	s.point("B", 4, 0, giv)
	s.point("O", 0, 0, con)
	t := 70 * math.Pi / 180
	s.point("C", 4*math.Cos(t), 4*math.Sin(t), giv)
	c := s.arc("O", 4, "", giv)
	c.Part = &[2]geom.Point{s.at["B"], s.at["A"]}
	s.join("AB", giv)
	s.join("ACB", res)
	s.join("OC", con)
	s.right("ACB")
	s.ticks(1, "OA", "OB", "OC")
	s.arcs(1, "CAO", "OCA")
	s.arcs(2, "OBC", "BCO")
	s.size("CAO", "α")
	s.size("OBC", "β")
	return s
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

// euler is a triangle with its centres and the line through them.
func euler() *sketch {
	s := newSketch("Three centres on one line")
	s.point("A", 0, 0, giv)
	s.point("B", 10, 0, giv)
	s.point("C", 3, 8, giv)
	s.join("ABCA", giv)
	s.mid("D", "B", "C", con)
	s.mid("E", "C", "A", con)
	s.mid("F", "A", "B", con)
	s.join("AD", con)
	s.join("BE", con)
	s.join("CF", con)
	s.point("G", 13.0/3, 8.0/3, res)
	s.foot("X", "A", "B", "C", con)
	s.foot("Y", "C", "A", "B", con)
	s.join("AX", con)
	s.join("CY", con)
	s.meet("H", "A", "X", "C", "Y", res)
	hx, hy := s.xy("H")
	s.point("O", (13-hx)/2, (8-hy)/2, res)
	s.circle("", "O", s.dist("O", "A"), con)
	s.line("e", "H", "O", "HOG", res)
	s.ticks(1, "BD", "DC")
	s.ticks(2, "CE", "EA")
	s.ticks(3, "AF", "FB")
	s.right("AXC")
	s.right("CYB")
	return s
}
