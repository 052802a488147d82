package layout

import (
	"math"
	"strings"
	"testing"

	"trammel/geom/figure"
)

// labelled lays a figure out as far as its labels, and gives them by their words.
func labelled(t *testing.T, s *sketch) (*drawing, map[string]*label) {
	t.Helper()
	d := drawn(t, s)
	d.requestLabels()
	d.placeLabels()
	named := map[string]*label{}
	for _, l := range d.labels {
		named[strings.Fields(l.what)[len(strings.Fields(l.what))-1]] = l
	}
	return d, named
}

func (l *label) chosen() *spot { return &l.spots[l.at] }

// TestLineNames stands names beyond the right end of lines, or the upper one,
// whichever way a line was drawn.
func TestLineNames(t *testing.T) {
	for _, ends := range []string{"AB", "BA"} {
		for _, tt := range []struct {
			x, y float64
			tip  int
		}{{6, 0, 1}, {6, 2, 1}, {6, -2, 1}, {0, 6, 1}, {-2, 6, 1}, {-6, 1, 0}} {
			s := newSketch("names")
			s.point("A", 0, 0, giv)
			s.point("B", tt.x, tt.y, giv)
			s.line("m", ends[:1], ends[1:], "AB", giv)
			d, named := labelled(t, s)
			a, b := d.place(s.at["A"]), d.place(s.at["B"])
			if tt.tip == 0 {
				a, b = b, a
			}
			tip, u := b.add(a.to(b).times(5*mm)), a.to(b)
			off := named["m"].chosen().centre().sub(tip)
			if along, across := u.dot(off), math.Abs(u.cross(off)); along < 1*mm || along > 6*mm || across > 0.1*mm {
				t.Errorf("%s to (%v, %v): the name is %.0f µm beyond the end and %.0f beside", ends, tt.x, tt.y, along, across)
			}
		}
	}
}

// TestLengthAtMiddle keeps a length at the middle of its side, farther out,
// where the short arcs of a construction cross it.
func TestLengthAtMiddle(t *testing.T) {
	s := newSketch("a side")
	s.point("A", 0, 0, giv)
	s.point("B", 5, 0, giv)
	s.point("C", 2, 4, giv)
	s.join("ABCA", giv)
	for i, x := range []float64{2.2, 2.8} {
		n := []string{"E", "F"}[i]
		s.at[n] = s.pt(x, 0)
		s.arc([]string{"A", "B"}[i], math.Abs(x-float64(i)*5), n, con)
	}
	s.length("AB", "5cm")
	d, named := labelled(t, s)
	at := named["5cm"].chosen()
	if off := math.Abs(at.centre().x - 25*mm); off > 1*mm || at.hits+at.thin > 0 || at.lo.y < 0 {
		t.Errorf("the length is %.0f µm off the middle, on %d strokes", off, at.hits+at.thin)
	}
	if a := named["A"].chosen(); a.off(*named["5cm"].base) < at.own {
		t.Errorf("the length is nearer to A at %v than to its middle", d.place(s.at["A"]))
	}
}

// TestPieceAndWhole writes the length of a piece beside it and that of the whole
// at a line of its own, on the other side, as long as the whole.
func TestPieceAndWhole(t *testing.T) {
	s := newSketch("a piece")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.point("C", 2, 4, giv)
	s.mid("M", "A", "B", res)
	s.join("ABCA", giv)
	s.length("AB", "6.5")
	s.length("AM", "3.25")
	d, named := labelled(t, s)
	line, whole := d.longestDimension(), named["6.5"].chosen()
	if line.length() != 60*mm || line.a.y < d.mm(dimensionGaps[0]) || math.Abs(whole.centre().x-30*mm) > mm || whole.off(line) > 2*mm {
		t.Errorf("the whole has the line %v and its length at %v", line, whole.centre())
	}
	if a, b := named["6.5"].chosen().centre().y, named["3.25"].chosen().centre().y; a < 0 || b > 0 {
		t.Errorf("the whole is written at %v and its piece at %v", a, b)
	}
}

func (d *drawing) longestDimension() (line segment) {
	for _, k := range d.strokes {
		if g, ok := k.curve.(segment); ok && strings.HasPrefix(k.hook, dimensionHook) && g.length() > line.length() {
			line = g
		}
	}
	return line
}

// TestDimensionAcross has the line of a dimension cross what cannot be avoided, at a
// steep angle, and warns where there is no room for it at all.
func TestDimensionAcross(t *testing.T) {
	kite := func() *sketch {
		s := newSketch("a kite")
		s.point("A", 0, 0, giv)
		s.point("B", 6, 0, giv)
		s.point("C", 3, 4, giv)
		s.point("D", 3, -4, giv)
		s.point("M", 3, 0, res)
		s.join("AB", giv)
		s.join("CM", giv)
		s.join("MD", giv)
		s.length("AB", "6.5")
		s.Marks[0] = measured(s.Marks[0].(figure.LengthLabel))
		return s
	}
	d, named := labelled(t, kite())
	if line, at := d.longestDimension(), named["6.5"].chosen(); line.length() != 60*mm || !at.clear() {
		t.Errorf("the dimension is %v, and its length stands on %d strokes, lost %v", line, at.hits, at.lost)
	}
	for _, end := range []string{"C", "D"} { // lines that end where the dimension's would
		s := kite()
		for i, y := range []float64{1, -1} {
			s.at["E"], s.at["F"] = s.pt(0, 0.3*y), s.pt(0, y*float64(4+i))
			s.join("EF", giv)
		}
		s.join("A"+end, giv)
		_, warnings, err := Draw(&s.Figure, Options{})
		if err != nil || len(warnings) == 0 || !strings.Contains(warnings[0].Text, "6.5") {
			t.Errorf("without room for a dimension there are the warnings %v and the error %v", warnings, err)
		}
	}
}

func measured(l figure.LengthLabel) figure.LengthLabel {
	l.Measured = true
	return l
}

// TestWarnings tells of labels on black ink and of labels nearer to another's
// dot, and is silent on one that only cuts a faint line.
func TestWarnings(t *testing.T) {
	fan := func(role figure.Role) *sketch {
		s := newSketch("a fan")
		s.point("M", 0, 0, giv).Label.Pin = figure.Pin{Set: true, Clock: 3}
		for i := range 40 {
			s.at["P"] = s.pt(4, (float64(i)-19.5)*0.4)
			s.join("MP", role)
		}
		return s
	}
	beside := newSketch("two dots")
	beside.point("M", 0, 0, giv).Label.Pin = figure.Pin{Set: true, Clock: 3}
	beside.point("N", 0.25, 0.2, giv)
	beside.point("A", 4, 3, giv)
	small := newSketch("a figure as small as its letters")
	small.point("A", 0, 0, giv)
	small.point("B", 0.6, 0.3, giv)
	for _, tt := range []struct {
		name   string
		figure *sketch
		want   int
	}{{"faint", fan(con), 0}, {"black", fan(giv), 1}, {"another's dot", beside, 1}, {"small", small, 1}, {"empty", newSketch("empty"), 1}} {
		_, warnings, err := Draw(&tt.figure.Figure, Options{})
		if err != nil || len(warnings) != tt.want {
			t.Errorf("%s: warnings %v, error %v, want %d", tt.name, warnings, err, tt.want)
		}
	}
}

// TestOwnDotNearest puts letters nearer to their own dot than to any other.
func TestOwnDotNearest(t *testing.T) {
	s := newSketch("three dots")
	s.point("S", 0, 0, giv)
	s.point("C", 0.6, 0.6, giv)
	s.point("D", -0.7, 0.6, giv)
	s.point("A", -4, -5, giv)
	s.point("B", 5, -4, giv)
	s.join("AC", giv)
	s.join("DB", giv)
	d, named := labelled(t, s)
	for _, n := range []string{"S", "C", "D"} {
		l := named[n]
		for _, o := range d.dots {
			if o.c != l.home && l.chosen().near(o.c) <= l.chosen().near(l.home) {
				t.Errorf("%s is as near to the dot %s as to its own", n, o.owner.Name)
			}
		}
	}
}

// TestSizesOfFan keeps the sizes of the parts of an angle within the mark of the whole,
// and warns where the arms are too short for that.
func TestSizesOfFan(t *testing.T) {
	for _, long := range []float64{7, 1.6} {
		s := newSketch("a fan")
		s.point("A", 0, 0, giv)
		for i, degrees := range []float64{0, 50, 81, 134} {
			n, turn := string(rune('B'+i)), degrees*math.Pi/180
			s.point(n, long*math.Cos(turn), long*math.Sin(turn), giv)
			s.join("A"+n, giv)
		}
		s.size("BAC", "50°")
		s.size("CAD", "31°")
		s.size("DAE", "53°")
		s.size("BAE", "134°")
		d, named := labelled(t, s)
		whole, _ := d.bandOf(d.corner(s.angle("BAE")))
		outside, warned := 0, 0
		for _, n := range []string{"50°", "31°", "53°"} {
			if named[n].chosen().far(vec{}) > whole.lo {
				outside++
			}
		}
		for _, l := range d.labels {
			if l.unclear() {
				warned++
			}
		}
		if long > 5 && outside+warned > 0 || long < 2 && warned < outside {
			t.Errorf("with arms of %v cm %d sizes are outside of the whole's mark, and %d are warned of", long, outside, warned)
		}
	}
}

// TestNotAcross keeps the letter of a point on its own side of a heavy straight, over a
// faint one if it must, and warns where it cannot.
func TestNotAcross(t *testing.T) {
	for _, tt := range []struct {
		faint bool
		warn  bool
	}{{true, false}, {false, true}} {
		s := newSketch("a slit")
		s.point("X", 0, 0, giv)
		for i, x := range []float64{-0.25, 0.25} {
			s.at["E"], s.at["F"] = s.pt(x, -9), s.pt(x, 9)
			role := giv
			if i == 0 && tt.faint {
				role = con
			}
			s.join("EF", role)
		}
		_, named := labelled(t, s)
		at := named["X"].chosen()
		if named["X"].unclear() != tt.warn || tt.faint && (at.across || at.centre().x > 0) {
			t.Errorf("a faint side %v: X stands at %v, across %v, on %d heavy strokes", tt.faint, at.centre(), at.across, at.hits)
		}
	}
}
