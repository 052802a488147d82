package layout

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/geom/figure"
)

const (
	con = figure.Construction
	giv = figure.Given
	res = figure.Result
)

type entry = struct {
	name string
	draw func() *sketch
}

// textbook is the set of figures that the gates look at.
var textbook = []entry{
	{"bisector", bisector},
	{"erect", erect},
	{"kite", kite},
	{"square", squareMarked},
	{"hexagon", hexagon},
	{"incircle", incircle},
	{"nine", ninePoint},
	{"dodecagon", dodecagon},
	{"sixty", sixty},
	{"parallel", parallel},
	{"solids", shaded},
	{"thales", thales},
	{"drop", drop},
	{"tangents", tangents},
	{"divide", divide},
	{"pentagon", pentagon},
	{"angle-bisector", halve},
	{"parallelogram", parallelogram},
	{"chain", chain},
	{"zoo", zoo},
	{"euler", euler},
	{"short", short},
}

// bisector is the perpendicular bisector of AB with its arcs.
func bisector() *sketch {
	s := newSketch("The perpendicular bisector")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.join("AB", giv)
	h := math.Sqrt(16 - 9)
	s.point("X", 3, h, con)
	s.point("Y", 3, -h, con)
	s.arc("A", 4, "XY", con)
	s.arc("B", 4, "XY", con)
	n := s.line("n", "Y", "X", "XY", res)
	s.point("M", 3, 0, res)
	n.Used = s.points("XYM")
	s.ticks(1, "AM", "MB")
	s.right("BMX")
	s.Claims = []figure.Claim{{Text: "n perpendicular to AB"}, {Text: "AM = MB"}}
	return s
}

// erect raises a perpendicular at a point of a line.
func erect() *sketch {
	s := newSketch("A perpendicular from a point of a line")
	s.point("A", 0, 0, giv)
	s.point("B", 9, 0, giv)
	s.point("P", 4, 0, giv)
	s.point("L", 1.5, 0, con)
	s.point("R", 6.5, 0, con)
	s.line("m", "A", "B", "ABPLR", giv)
	h := math.Sqrt(3.5*3.5 - 2.5*2.5)
	s.point("X", 4, h, con)
	s.arc("P", 2.5, "LR", con)
	s.arc("L", 3.5, "X", con)
	s.arc("R", 3.5, "X", con)
	s.line("n", "P", "X", "PX", res)
	for _, j := range append(s.join("LX", res), s.join("RX", res)...) {
		j.Dashed = true
	}
	s.right("RPX")
	s.ticks(1, "PL", "PR")
	s.ticks(2, "LX", "RX")
	return s
}

func drop() *sketch {
	s := newSketch("A perpendicular dropped from a point to a line")
	s.point("P", 4, 3, giv)
	s.point("L", 1, 0, con)
	s.point("R", 7, 0, con)
	s.point("Y", 4, -2.2, con)
	s.line("m", "L", "R", "LR", giv)
	s.arc("P", math.Sqrt(18), "LR", con)
	r := math.Hypot(3, 2.2)
	s.arc("L", r, "Y", con)
	s.arc("R", r, "Y", con)
	s.point("F", 4, 0, res)
	s.line("n", "P", "Y", "PYF", res)
	for _, j := range s.join("PLYRP", res) {
		j.Dashed = true
	}
	s.ticks(1, "PL", "PR")
	s.ticks(2, "YL", "YR")
	s.right("PFR")
	return s
}

func kite() *sketch {
	s := newSketch("A kite")
	s.point("A", 0, 0, giv)
	s.point("B", 2.5, 2, giv)
	s.point("C", 7, 0, giv)
	s.point("D", 2.5, -2, giv)
	s.join("ABCDA", giv)
	s.join("AC", res)
	s.join("BD", res)
	s.point("S", 2.5, 0, res)
	s.ticks(1, "AB", "AD")
	s.ticks(2, "CB", "CD")
	s.right("CSB")
	s.arcs(1, "BAC", "CAD")
	s.arcs(2, "ACB", "DCA")
	return s
}

func squareMarked() *sketch {
	s := newSketch("Square on AB")
	s.point("A", 0, 0, giv)
	s.point("B", 5, 0, giv)
	s.point("C", 5, 5, res)
	s.point("D", 0, 5, res)
	s.line("m", "A", "D", "AD", con)
	s.line("n", "B", "C", "BC", con)
	s.arc("A", 5, "D", con)
	s.arc("B", 5, "C", con)
	s.join("ABCDA", res)
	s.ticks(1, "AB", "BC", "CD", "DA")
	s.right("DAB")
	s.right("ABC")
	s.length("AB", "5 cm")
	return s
}

func polygon(s *sketch, n int, r, from float64, role figure.Role) []string {
	var names []string
	for i := range n {
		name := string(rune('A' + i))
		t := (from + 360*float64(i)/float64(n)) * math.Pi / 180
		s.point(name, r*math.Cos(t), r*math.Sin(t), role)
		names = append(names, name)
	}
	return names
}

func hexagon() *sketch {
	s := newSketch("Six radii round the circle")
	s.point("O", 0, 0, giv)
	s.circle("k", "O", 3, giv)
	for i := range 6 {
		t := (20 + 60*float64(i)) * math.Pi / 180
		s.at[string(rune('a'+i))] = s.pt(3*math.Cos(t), 3*math.Sin(t))
		p := s.point(string(rune('a'+i)), 3*math.Cos(t), 3*math.Sin(t), con)
		p.Name = fmt.Sprintf("P%d", i+1)
		p.Label.Text = p.Name
	}
	for i := range 6 {
		s.arc(string(rune('a'+i)), 3, string(rune('a'+(i+1)%6)), con)
	}
	s.join("abcdefa", res)
	return s
}

func dodecagon() *sketch {
	s := newSketch("Twelve corners")
	s.point("O", 0, 0, giv)
	names := polygon(s, 12, 4, 90, res)
	s.circle("", "O", 4, con)
	run := ""
	for _, n := range names {
		run += n
		s.join("O"+n, con)
	}
	s.join(run+"A", res)
	s.size("AOB", "30°")
	return s
}

func sixty() *sketch {
	s := newSketch("60°, 30°, 15°")
	s.point("A", 0, 0, giv)
	s.point("B", 8, 0, giv)
	s.point("S", 4, 0, con)
	ray := func(deg float64, name string) {
		t := deg * math.Pi / 180
		s.point(name, 4*math.Cos(t), 4*math.Sin(t), con)
		from := s.at["A"]
		l := s.line("", "A", name, "A"+name, res)
		l.Start = &from
	}
	l := s.line("", "A", "B", "AB", giv)
	from := s.at["A"]
	l.Start = &from
	ray(60, "T")
	ray(30, "H")
	ray(15, "K")
	s.arc("A", 4, "ST", con)
	s.arc("S", 4, "T", con)
	s.size("SAT", "60°")
	s.size("SAH", "30°")
	s.size("SAK", "15°")
	return s
}

func parallel() *sketch {
	s := newSketch("Parallels and a transversal")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 1.5, 3.5, giv)
	s.point("D", 7.5, 3.5, giv)
	s.point("P", 2.2, 0, con)
	s.point("Q", 4.5, 3.5, con)
	s.line("l", "A", "B", "ABP", giv)
	s.line("m", "C", "D", "CDQ", giv)
	s.line("t", "P", "Q", "PQ", res)
	s.arrows(1, "AB", "CD")
	s.arcs(1, "BPQ", "CQP")
	s.size("BPQ", "57°")
	s.ticks(1, "AP", "QC")
	s.Marks = append(s.Marks, figure.Note{Near: s.at["Q"], Text: "alternate angles"})
	return s
}

func shaded() *sketch {
	s := newSketch("Areas")
	s.point("O", 0, 0, giv)
	s.circle("k", "O", 3, giv)
	s.point("A", 3, 0, giv)
	s.point("B", 1.5, 1.5*math.Sqrt(3), giv)
	s.point("C", -6, -2, giv)
	s.point("D", -3.5, 3, giv)
	s.point("E", -7, 2, giv)
	s.join("OA", res)
	s.join("OB", res)
	s.join("CDEC", giv)
	o := s.at["O"]
	s.Marks = append(s.Marks, figure.Shade{Outline: s.points("AB"), Centre: &o}, figure.Shade{Outline: s.points("CDE")})
	s.size("AOB", "60°")
	s.length("OA", "r")
	s.length("CD", "5.6 cm")
	s.length("DE", "2√3")
	s.Measures = []*figure.Measure{{Thing: thing("a", giv), Length: 4, Text: "4 cm"}, {Thing: thing("b", giv), Length: 2.5, Text: "2.5 cm"}}
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

// zoo holds one of each rarer mark.
func zoo() *sketch {
	s := newSketch("Rarer marks")
	s.point("A", 0, 0, giv)
	s.point("B", 4, 0, giv)
	s.point("C", 4, 3, giv)
	s.join("ABCA", giv)
	s.size("ABC", "90°")
	s.right("ABC")
	s.size("CAB", "36.9°")
	s.length("AC", "5")
	s.length("BC", "a")
	s.length("AB", "√2")
	s.point("P", 8, 1, giv)
	s.point("Q", 11, 0, giv)
	s.point("R", 10.5, 3, giv)
	s.join("QPR", giv)
	a := s.angle("RPQ")
	a.Reflex = true
	s.Marks = append(s.Marks, figure.AngleLabel{Angle: a, Label: figure.Label{Text: "φ", Name: true}})
	s.Marks = append(s.Marks, figure.Note{Near: s.at["C"], Text: "the right angle is at B"})
	s.point("S", 8, -3, giv)
	c := s.arc("S", 2, "", con)
	s.at["E"], s.at["N"] = s.pt(10, -3), s.pt(8, -1)
	c.Part = &[2]geom.Point{s.at["E"], s.at["N"]}
	c.Dashed = true
	c.Label = &figure.Label{Text: "c", Name: true}
	l := s.line("g", "E", "N", "EN", giv)
	l.Label.Pin = figure.Pin{Set: true, Clock: 2}
	s.point("T", 8, -3, res).Label.Text = "S'"
	k := s.circle("", "Q", 1, con)
	s.Marks = append(s.Marks, figure.Shade{Circle: &k.Circle})
	return s
}

// short has legs so short that marks must shrink.
func short() *sketch {
	s := newSketch("Short legs")
	s.point("A", 0, 0, giv)
	s.point("B", 1.2, 0, giv)
	s.point("C", 0, 0.9, giv)
	s.join("ABCA", giv)
	s.right("BAC")
	s.arcs(1, "CBA")
	s.arcs(2, "ACB")
	s.length("AB", "1.2")
	s.length("AC", "0.9")
	s.length("BC", "1.5")
	return s
}
