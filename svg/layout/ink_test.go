package layout

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/svg"
)

// drawn is a figure's drawing with its strokes, before it is framed.
func drawn(t *testing.T, s *sketch) *drawing {
	t.Helper()
	d, err := newDrawing(&s.Figure)
	if err != nil {
		t.Fatal(err)
	}
	d.drawStraights()
	d.drawCircles()
	d.drawDots()
	d.lay()
	d.drawMarks()
	return d
}

// lengthIn is how much ink a layer holds.
func (d *drawing) lengthIn(l layer) float64 {
	sum := 0.0
	for _, s := range d.strokes {
		if s.layer == l {
			sum += s.length()
		}
	}
	return sum
}

// TestInkedOnce covers part of a line by a join and part of an arc by another.
func TestInkedOnce(t *testing.T) {
	s := newSketch("once")
	for i, n := range []string{"A", "B", "C", "D"} {
		s.point(n, float64(i)*2, float64(i), giv)
	}
	s.line("", "A", "D", "ABCD", giv)
	s.join("BC", res)
	d := drawn(t, s)
	unit := math.Hypot(2, 1) * 10 * mm
	if got, want := d.lengthIn(givenLayer), 2*unit+10*mm; math.Abs(got-want) > 10 {
		t.Errorf("the line keeps %.0f µm, want %.0f", got, want)
	}
	if got := d.lengthIn(resultLayer); math.Abs(got-unit) > 10 {
		t.Errorf("the join has %.0f µm, want %.0f", got, unit)
	}

	s = newSketch("once round")
	s.point("O", 0, 0, giv)
	s.circle("", "O", 2, giv)
	s.at["E"], s.at["N"] = s.pt(2, 0), s.pt(0, 2)
	s.arc("O", 2, "", res).Part = &[2]geom.Point{s.at["N"], s.at["E"]}
	s.arc("O", 2, "E", con)
	d = drawn(t, s)
	round := fullway * 20 * mm
	if got := d.lengthIn(givenLayer); math.Abs(got-round/4) > 20 {
		t.Errorf("the circle keeps %.0f µm, want %.0f", got, round/4)
	}
	if got := d.lengthIn(constructionLayer); got != 0 {
		t.Errorf("the arc on the circle has %.0f µm, want none", got)
	}
}

func TestCompass(t *testing.T) {
	degrees := func(list ...float64) []float64 {
		for i := range list {
			list[i] *= math.Pi / 180
		}
		return list
	}
	tests := []struct {
		name    string
		angles  []float64
		strokes int
		drawn   float64
	}{
		{"one meeting", degrees(40), 1, 20},
		{"two near", degrees(80, 20), 1, 80},
		{"two near across the start", degrees(350, 20), 1, 50},
		{"two apart", degrees(0, 180), 2, 40},
		{"just too far", degrees(0, 76), 2, 40},
		{"a chain", degrees(0, 70, 140), 1, 160},
		{"all round", degrees(0, 70, 140, 210, 285), 1, 360},
	}
	for _, tt := range tests {
		got := compass(tt.angles, 10*math.Pi/180, func(from, to float64) bool { return false })
		sum := 0.0
		for _, s := range got {
			sum += (s.hi - s.lo) * 180 / math.Pi
		}
		if len(got) != tt.strokes || math.Abs(sum-tt.drawn) > 0.01 {
			t.Errorf("%s: %d strokes of %.2f°, want %d of %.2f°", tt.name, len(got), sum, tt.strokes, tt.drawn)
		}
	}
}

// TestLens strikes two arcs that meet twice far apart at each meeting alone.
func TestLens(t *testing.T) {
	for _, tt := range []struct {
		half    float64
		strokes int
	}{{0.7, 2}, {2.2, 4}} {
		s := newSketch("lens")
		s.point("A", 0, 0, giv)
		s.point("B", 6, 0, giv)
		s.at["X"], s.at["Y"] = s.pt(3, tt.half), s.pt(3, -tt.half)
		s.arc("A", math.Hypot(3, tt.half), "XY", con)
		s.arc("B", math.Hypot(3, tt.half), "XY", con)
		if got := len(drawn(t, s).strokes); got != tt.strokes {
			t.Errorf("meetings %v cm apart: %d strokes, want %d", 2*tt.half, got, tt.strokes)
		}
	}
}

// TestNoCorners looks for arcs that end where another stroke ends.
func TestNoCorners(t *testing.T) {
	s := newSketch("corner")
	s.point("A", 0, 0, giv)
	s.at["X"] = s.pt(3, 0)
	over := 3.5 / 30
	s.at["E"], s.at["F"] = s.pt(3*math.Cos(over), 3*math.Sin(over)), s.pt(6, 3)
	s.arc("A", 3, "X", con)
	s.join("EF", giv)
	d := drawn(t, s)
	end := d.place(s.at["E"])
	for _, m := range d.strokes {
		if a, ok := m.curve.(arc); ok && (a.start().dist(end) < 1*mm || a.end().dist(end) < 1*mm) {
			t.Errorf("the arc ends %.0f µm from the join's end", min(a.start().dist(end), a.end().dist(end)))
		}
	}
}

// TestStraightEnds tells how far lines run past what they use.
func TestStraightEnds(t *testing.T) {
	s := newSketch("ends")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.line("", "A", "B", "AB", giv)
	ray := s.line("", "B", "A", "AB", res)
	from := s.pt(6, 0)
	ray.Start = &from
	lone := s.line("", "A", "B", "A", con)
	d := drawn(t, s)
	if r := d.rule(ray); r.lo != 0 || math.Abs(r.hi-65*mm) > 1 {
		t.Errorf("the ray runs from %v to %v, want 0 to 65000", r.lo, r.hi)
	}
	if r := d.rule(lone); r.hi-r.lo < 40*mm || r.hi-r.lo > 90*mm {
		t.Errorf("a line with one point is %.0f µm long", r.hi-r.lo)
	}
}

// TestProlong draws a ray on in its own ink where a fainter one goes farther,
// and leaves a join alone.
func TestProlong(t *testing.T) {
	s := newSketch("prolong")
	s.point("A", 0, 0, giv)
	s.point("B", 3, 0, giv)
	s.point("C", 6, 0, giv)
	ray := s.line("", "A", "B", "AB", res)
	from := s.at["A"]
	ray.Start = &from
	s.line("", "A", "C", "BC", con)
	d := drawn(t, s)
	if got := d.lengthIn(resultLayer); math.Abs(got-65*mm) > 10 {
		t.Errorf("the ray has %.0f µm of ink, want 65000", got)
	}
	s = newSketch("a join")
	s.point("A", 0, 0, giv)
	s.point("B", 3, 0, giv)
	s.join("AB", res)
	s.line("", "A", "B", "AB", con)
	if got := drawn(t, s).lengthIn(resultLayer); math.Abs(got-30*mm) > 10 {
		t.Errorf("the join has %.0f µm of ink, want 30000", got)
	}
}

// TestMarksKeepClear slides ticks off a crossing and steps arcs outward.
func TestMarksKeepClear(t *testing.T) {
	s := newSketch("clear")
	s.point("A", 0, 0, giv)
	s.point("B", 6, 0, giv)
	s.at["C"], s.at["D"] = s.pt(3, -2), s.pt(3, 2)
	s.at["E"] = s.pt(6, 3)
	s.join("AB", giv)
	s.join("CD", con)
	s.ticks(2, "AB")
	s.arcs(1, "BAE")
	s.arcs(1, "BAD")
	d := drawn(t, s)
	var radii []float64
	for _, m := range d.strokes {
		switch c := m.curve.(type) {
		case segment:
			if m.layer == markLayer && math.Abs(c.a.x-30*mm) < 1*mm {
				t.Errorf("a tick stands on the crossing at %v", c.a)
			}
			if m.layer == markLayer && c.a.dist(c.b) != 3*mm {
				t.Errorf("a tick is %v µm long, want 3000", c.a.dist(c.b))
			}
		case arc:
			radii = append(radii, c.r)
		}
	}
	if len(radii) != 2 || math.Abs(radii[0]-radii[1]) < 1*mm {
		t.Errorf("arcs of different angles at one vertex have radii %v", radii)
	}
}

// TestNeighbours reads equal angles side by side as so many marks: no arc of
// one runs on as an arc of the next.
func TestNeighbours(t *testing.T) {
	for _, count := range []int{1, 2, 3} {
		s := newSketch("neighbours")
		for i, n := range []string{"P", "Q", "R", "S"} {
			a := float64(i) * 0.6
			s.point(n, 5*math.Cos(a), 5*math.Sin(a), giv)
		}
		s.point("O", 0, 0, giv)
		s.arcs(count, "POQ", "QOR", "ROS")
		strokes := drawn(t, s).strokes
		if len(strokes) != 3*count {
			t.Fatalf("%d arcs, want %d", len(strokes), 3*count)
		}
		for i, m := range strokes {
			for _, o := range strokes[:i] {
				a, b := m.curve.(arc), o.curve.(arc)
				meet := apart(a.from, b.from+b.sweep) < 0.01 || apart(b.from, a.from+a.sweep) < 0.01
				if meet && math.Abs(a.r-b.r) < 0.4*mm {
					t.Errorf("%d arcs each: neighbours with the radii %v and %v", count, a.r, b.r)
				}
			}
		}
	}
}

// TestDividedAngle writes the size of an angle that others divide right beyond
// its own arc, and that arc beyond theirs.
func TestDividedAngle(t *testing.T) {
	s := newSketch("divided")
	s.point("O", 0, 0, giv)
	for i, n := range []string{"P", "Q", "R"} {
		a := float64(i) * 30 * math.Pi / 180
		s.point(n, 6*math.Cos(a), 6*math.Sin(a), giv)
		s.join("O"+n, giv)
	}
	s.arcs(1, "POQ", "QOR")
	s.size("POR", "60°")
	d := drawn(t, s)
	d.requestLabels()
	d.placeLabels()
	whole, ok := d.bandOf(d.corner(s.angle("POR")))
	for _, b := range d.bands {
		if !ok || b != whole && b.hi >= whole.lo {
			t.Errorf("the arc of the whole at %v, that of a part at %v", whole.lo, b.hi)
		}
	}
	l := d.labels[len(d.labels)-1]
	if off := l.spots[l.at].near(d.place(s.at["O"])) - whole.hi; off < 0.5*mm || off > 3*mm {
		t.Errorf("the size stands %.0f µm beyond its arc", off)
	}
}

// TestRadiusCap holds arcs within 0.4 of the shorter arm, however narrow.
func TestRadiusCap(t *testing.T) {
	for _, deg := range []float64{2, 8, 15, 40, 90, 170} {
		s := newSketch("cap")
		a := deg * math.Pi / 180
		s.point("A", 0, 0, giv)
		s.point("B", 2, 0, giv)
		s.point("C", 5*math.Cos(a), 5*math.Sin(a), giv)
		s.arcs(2, "BAC")
		for _, m := range drawn(t, s).strokes {
			if c := m.curve.(arc); c.r > 0.4*20*mm+1 {
				t.Errorf("%v°: an arc has the radius %v µm", deg, c.r)
			}
		}
	}
}

func TestPin(t *testing.T) {
	for hour := 1.0; hour <= 12; hour++ {
		s := newSketch("pin")
		p := s.point("A", 0, 0, giv)
		s.at["B"] = s.pt(5, 1)
		s.join("AB", giv)
		p.Label.Pin = figure.Pin{Set: true, Clock: hour}
		doc, _, err := Draw(&s.Figure, Options{})
		if err != nil {
			t.Fatal(err)
		}
		dot, text := find[svg.Disc](doc), find[svg.Text](doc)
		b := svg.Measure(text)
		x := float64(text.At.X + (b.Left+b.Right)/2 - dot.Centre.X)
		y := float64(text.At.Y + (b.Top+b.Bottom)/2 - dot.Centre.Y)
		if got, want := math.Atan2(x, -y), hour*math.Pi/6; apart(got, want) > 0.02 {
			t.Errorf("at %v o'clock the label lies %.1f° off", hour, apart(got, want)*180/math.Pi)
		}
	}
}

// find is the first item of a type.
func find[T svg.Item](doc *svg.Doc) T {
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			if x, ok := i.(T); ok {
				return x
			}
		}
	}
	panic("the drawing holds none")
}

func TestPaper(t *testing.T) {
	s := kite()
	s.Paper = &figure.Paper{Width: big.NewRat(120, 1), Height: big.NewRat(80, 1)}
	doc, _, err := Draw(&s.Figure, Options{})
	if err != nil || doc.Width != 120000 || doc.Height != 80000 {
		t.Fatalf("got %v, %v", doc, err)
	}
	s.Paper = &figure.Paper{Width: big.NewRat(60, 1), Height: big.NewRat(80, 1)}
	_, _, err = Draw(&s.Figure, Options{})
	if err == nil {
		t.Fatal("a kite 70 mm wide fits on 60 mm")
	}
	_, unit, ok := strings.Cut(err.(*Refusal).Help, "unit ")
	if !ok || !strings.Contains(err.Error(), "mm too wide") {
		t.Fatalf("the error says %q", err)
	}
	unit, _, _ = strings.Cut(unit, " ")
	s.Unit.SetString(unit)
	if _, _, err := Draw(&s.Figure, Options{}); err != nil {
		t.Errorf("with the unit %s mm that should fit: %v", unit, err)
	}
}

func TestLargeFigures(t *testing.T) {
	s := kite()
	s.Unit.SetInt64(30)
	_, warnings, err := Draw(&s.Figure, Options{})
	if err != nil || len(warnings) != 1 || !strings.Contains(warnings[0].Text, "170 × 257 mm") {
		t.Errorf("210 mm wide: got %v, %v", warnings, err)
	}
	s.Unit.SetInt64(3000)
	if _, _, err := Draw(&s.Figure, Options{}); err == nil {
		t.Error("21 m wide: no error")
	}
}

// told is captions; what is written at a part it says with the language's tag.
type told []string

func (t told) Steps(tag string) []string {
	all := make([]string, len(t))
	for i, text := range t {
		all[i] = strings.ReplaceAll(text, "%s", tag)
	}
	return all
}

func (t told) Finished(tag string) string { return "Finished in " + tag + "." }

func (t told) Written(tag string, m figure.Mark) string {
	switch m := m.(type) {
	case figure.LengthLabel:
		return m.Of + " has " + tag + " " + m.Text
	case figure.Note:
		return m.Text
	}
	return ""
}

func TestDescribe(t *testing.T) {
	f := bisector().Figure
	f.Tell = told{"Join A to B.", "", "Bisect AB", "In %s"}
	f.Language = "de"
	a, b := f.Points[0].At, f.Points[1].At
	f.Marks = append(f.Marks,
		figure.LengthLabel{Segment: figure.Segment{A: a, B: b}, Of: "AB", Label: figure.Label{Text: "4.5 cm", Measured: true}},
		figure.Note{Near: a, Text: "an oak"})
	got := describe(&f)
	want := "Join A to B. Bisect AB. In de. AB has de 4.5 cm. an oak."
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// TestDescribeExam tells nothing that the candidate is to find.
func TestDescribeExam(t *testing.T) {
	f := bisector().As("exam", "")
	f.Steps = []figure.Step{{Given: true}, {}, {Reason: true}}
	f.Tell = told{"Given: A and B.", "Bisect AB.", "Then M is the midpoint."}
	if got := describe(f); got != "Given: A and B." {
		t.Errorf("got %s", got)
	}
}

// TestTiny draws a figure too small to be seen: nothing degenerate is inked,
// and the marks that have no room are warned of.
func TestTiny(t *testing.T) {
	s := kite()
	s.Unit.SetString("0.0001")
	doc, warnings, err := Draw(&s.Figure, Options{})
	if err != nil || len(warnings) < 5 {
		t.Errorf("got warnings %v and error %v", warnings, err)
	}
	for _, g := range doc.Groups {
		if g.Class == "marks" {
			t.Error("marks are drawn without room for them")
		}
	}
}

// TestLengthsOutside writes the lengths of a triangle's sides outside it,
// whichever way each side runs and whatever stands elsewhere.
func TestLengthsOutside(t *testing.T) {
	for _, run := range []string{"ABCA", "ACBA"} {
		s := newSketch("outside")
		s.point("A", 0, 0, giv)
		s.point("B", 6, 0, giv)
		s.point("C", 2, 4, giv)
		s.point("Z", 8, 3, giv)
		s.join(run, giv)
		for i := range 3 {
			s.length(run[i:i+2], "x")
		}
		d := drawn(t, s)
		d.requestLabels()
		d.placeLabels()
		centre := vec{80 * mm / 3, -40 * mm / 3}
		for i, l := range d.labels[4:] {
			seg := s.seg(run[i : i+2])
			a, b := d.place(seg.A), d.place(seg.B)
			at := l.spots[l.at].centre()
			if u := a.to(b); u.cross(at.sub(a))*u.cross(centre.sub(a)) > 0 {
				t.Errorf("%s: the length of %s is inside", run, run[i:i+2])
			}
		}
	}
}

// TestPassed draws a line through all the points that lie on it, and a ray or a line
// without a letter through those nearby only.
func TestPassed(t *testing.T) {
	for _, tt := range []struct {
		letter bool
		past   float64 // where the point is, in centimetres
		drawn  bool
	}{{true, 9, true}, {false, 9, false}, {false, 4.7, true}} {
		s := newSketch("a line")
		s.point("A", 0, 0, giv)
		s.point("B", 4, 0, giv)
		s.point("C", tt.past, 0, giv)
		l := s.line("m", "A", "B", "AB", con)
		if !tt.letter {
			l.Label = nil
		}
		d := drawn(t, s)
		if r := d.ruled[&l.Thing]; (r.hi > tt.past*10*mm) != tt.drawn {
			t.Errorf("lettered %v, it is drawn to %v µm past a point at %v cm", tt.letter, r.hi, tt.past)
		}
	}
}

// TestArrowOnInk puts the arrow of a line on what is drawn of it.
func TestArrowOnInk(t *testing.T) {
	s := newSketch("parallels")
	for i, p := range []struct{ x, y float64 }{{0, 0}, {9, 0}, {-3, 3}, {4, 3}, {5, 3}, {9, 3}} {
		s.point(string(rune('A'+i)), p.x, p.y, giv).Hidden = i > 3
	}
	s.join("AB", giv)
	s.join("CD", giv)
	s.arrows(1, "AB", "EF") // of the line of CD, where it is not drawn
	d := drawn(t, s)
	for _, k := range d.strokes {
		if k.hook == arrowHook && k.bounds().hi.y < -20*mm && k.bounds().hi.x > 40*mm {
			t.Errorf("an arrow stands at %v, past the end of its line", k.bounds())
		}
	}
}
