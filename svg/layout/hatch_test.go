package layout

import (
	"math"
	"testing"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/geom/region"
	"trammel/svg"
)

// meadow has a region with a straight border of each kind and a round one.
func meadow() *sketch {
	s := newSketch("Where kites may be flown")
	s.point("P", 0, 0, giv)
	s.point("Q", 10, 0, giv)
	s.point("R", 9, 7, giv)
	s.point("S", 0.5, 6, giv)
	s.point("H", 3, 3, giv)
	s.point("A", 0.25, 3, giv)
	s.point("B", 9.75, 2, giv)
	s.join("PQRSP", giv)
	s.circle("", "H", 3.5, res)
	s.line("m", "P", "Q", "PQ", giv)
	s.Marks = append(s.Marks,
		figure.Hatch{Where: "inside PQRS", Region: region.Region{
			region.Inside(s.points("PQRS")),
			region.Within(region.Spot(s.at["H"]), s.real(3.5*3.5)),
			region.Nearer(region.Spot(s.at["A"]), region.Spot(s.at["B"])),
			region.Beyond(geom.Straight{Line: s.through("P", "Q")}, s.real(1)),
		}},
		figure.Note{Near: s.at["H"], Text: "hut"})
	return s
}

// borders are how far a place is from each border of the meadow's region, in units.
func (s *sketch) borders(x, y float64) []float64 {
	var all []float64
	corners := "PQRSP"
	for i := range 4 {
		ax, ay := s.xy(corners[i : i+1])
		bx, by := s.xy(corners[i+1 : i+2])
		all = append(all, math.Abs((bx-ax)*(y-ay)-(by-ay)*(x-ax))/math.Hypot(bx-ax, by-ay))
	}
	hx, hy := s.xy("H")
	ax, ay := s.xy("A")
	bx, by := s.xy("B")
	across := (math.Hypot(x-ax, y-ay) - math.Hypot(x-bx, y-by)) / 2
	return append(all, math.Abs(math.Hypot(x-hx, y-hy)-3.5), math.Abs(across), math.Abs(y-1))
}

// TestHatchEnds wants every stroke of a hatching to end on a border of the
// region, worked out here for itself, and to stay within.
func TestHatchEnds(t *testing.T) {
	s := meadow()
	d := drawn(t, s)
	d.drawHatches()
	if len(d.hatches) < 20 {
		t.Fatalf("%d strokes", len(d.hatches))
	}
	for _, h := range d.hatches {
		for _, end := range []vec{h.a, h.b} {
			least := math.Inf(1)
			for _, off := range s.borders(end.x/d.scale, -end.y/d.scale) {
				least = min(least, off)
			}
			if least*d.scale > 2 {
				t.Errorf("a stroke ends at %v, %.0f µm from the nearest border", end, least*d.scale)
			}
		}
		mid := h.a.mid(h.b)
		x, y := mid.x/d.scale, -mid.y/d.scale
		if math.Hypot(x-3, y-3) > 3.5 || y < 1 || x > 5.5 {
			t.Errorf("a stroke runs through (%.2f, %.2f), outside", x, y)
		}
	}
}

// TestHatchEven wants neighbouring strokes the distance apart and at 45°, and
// a second hatching across the first.
func TestHatchEven(t *testing.T) {
	s := meadow()
	s.Marks = append(s.Marks, figure.Hatch{Region: region.Region{region.Inside(s.points("PQRS"))}})
	d := drawn(t, s)
	d.drawHatches()
	rising, falling := 0, 0
	for _, h := range d.hatches {
		u := h.b.sub(h.a)
		if math.Abs(math.Abs(u.x)-math.Abs(u.y)) > 2 {
			t.Fatalf("the stroke %v is not at 45°", h)
		}
		steps := (h.a.x + h.a.y) / math.Sqrt2 / 1600
		if u.x*u.y > 0 {
			falling++
			steps = (h.a.x - h.a.y) / math.Sqrt2 / 1600
		} else {
			rising++
		}
		if off := math.Abs(steps - math.Floor(steps) - 0.5); off > 0.005 {
			t.Errorf("the stroke %v lies %.3f of a distance off its line", h, off)
		}
	}
	if rising < 20 || falling < 20 {
		t.Errorf("%d strokes rise and %d fall", rising, falling)
	}
}

// TestHatchTurns turns the hatching of an area that a straight crosses along it.
func TestHatchTurns(t *testing.T) {
	s := newSketch("square")
	for name, at := range map[string][2]float64{"A": {0, 0}, "B": {5, 0}, "C": {5, 5}, "D": {0, 5}} {
		s.at[name] = s.pt(at[0], at[1])
	}
	s.join("AC", giv)
	s.Marks = append(s.Marks, figure.Hatch{Region: region.Region{region.Inside(s.points("ABCD"))}})
	d := drawn(t, s)
	d.drawHatches()
	for _, h := range d.hatches {
		if slope := apart(h.a.to(h.b).angle(), math.Pi/4); min(slope, math.Pi-slope) < 0.2 {
			t.Fatalf("the stroke %v runs along the diagonal", h)
		}
	}
	if len(d.hatches) < 10 {
		t.Errorf("%d strokes", len(d.hatches))
	}
}

// TestHatchWords reads the finished drawing: words stand clear of the hatching.
func TestHatchWords(t *testing.T) {
	doc, warnings, err := Draw(&meadow().Figure, Options{ID: "meadow"})
	if err != nil || len(warnings) > 0 {
		t.Fatal(err, warnings)
	}
	inspect(t, doc)
	save(t, "meadow", doc)
	if doc.Groups[0].Class != "shade" {
		t.Errorf("the first group is %s", doc.Groups[0].Class)
	}
	for _, item := range doc.Groups[0].Items {
		if p := item.(svg.Path); p.Width != 180 || len(p.Pieces) != 1 {
			t.Errorf("a stroke is %+v", p)
		}
	}
}

// TestHatchFrame ends a region that runs on a little beyond the figure, and keeps all of
// one that is bounded.
func TestHatchFrame(t *testing.T) {
	s := newSketch("frame")
	s.point("A", 0, 0, giv)
	s.point("B", 5, 3, giv)
	near := region.Nearer(region.Spot(s.at["A"]), region.Spot(s.at["B"]))
	s.Marks = []figure.Mark{figure.Hatch{Region: region.Region{near}}}
	d := drawn(t, s)
	ink := d.inkExtent().grow(hatchBeyond * mm)
	d.drawHatches()
	if got := d.inkExtent(); got.lo.x < ink.lo.x || got.lo.x > ink.lo.x+100 || got.hi.y > ink.hi.y || got.hi.y < ink.hi.y-100 {
		t.Errorf("%d strokes make %v of %v", len(d.hatches), got, ink)
	}
	s.Marks = []figure.Mark{figure.Hatch{Region: region.Region{near, region.Within(region.Spot(s.at["A"]), s.real(4))}}}
	d = drawn(t, s)
	d.drawHatches()
	if got := d.inkExtent(); math.Abs(got.lo.x+20*mm) > 200 {
		t.Errorf("a disc of 20 mm about A begins at %v", got.lo.x)
	}
}

// TestBorders draws a straight on that bounds a region: through a bounded one and a little past
// it, beside one that runs on as far as that is hatched.
func TestBorders(t *testing.T) {
	s := newSketch("borders")
	s.point("A", 0, 0, giv)
	s.point("B", 4, 0, giv)
	s.point("P", 2, 4, giv)
	s.point("C", 2, 0, giv)
	border := s.line("n", "C", "P", "C", con)
	near := region.Nearer(region.Spot(s.at["A"]), region.Spot(s.at["B"]))
	for _, tt := range []struct {
		area region.Region
		high float64 // of the border's end, in millimetres above A
	}{
		{region.Region{near, region.Within(region.Spot(s.at["P"]), s.real(9))}, 70 + pastBorder},
		{region.Region{near}, 0},
	} {
		s.Marks = []figure.Mark{figure.Hatch{Region: tt.area}}
		d := drawn(t, s)
		d.drawHatches()
		if tt.high == 0 {
			tt.high = -d.open.lo.y / mm
		}
		r := d.ruled[&border.Thing]
		if top := -min(r.tips[0].y, r.tips[1].y) / mm; math.Abs(top-tt.high) > 0.1 {
			t.Errorf("the border ends %.2f mm above A, not %.2f", top, tt.high)
		}
	}
}

// TestHatchSmall hatches what is small more closely, and warns where nothing shows.
func TestHatchSmall(t *testing.T) {
	s := newSketch("small")
	s.point("A", 0, 0, giv)
	s.point("B", 5, 3, giv)
	small := func(r float64) figure.Hatch {
		return figure.Hatch{Region: region.Region{region.Within(region.Spot(s.at["A"]), s.real(r*r))}}
	}
	s.Marks = []figure.Mark{small(0.08)}
	d := drawn(t, s)
	d.drawHatches()
	if len(d.hatches) < 3 || len(d.warnings) > 0 {
		t.Errorf("a disc of 1.6 mm has %d strokes; %v", len(d.hatches), d.warnings)
	}
	s.Marks = []figure.Mark{small(0.001)}
	d = drawn(t, s)
	d.drawHatches()
	if len(d.hatches) > 0 || len(d.warnings) != 1 {
		t.Errorf("a disc of 20 µm has %d strokes; %v", len(d.hatches), d.warnings)
	}
}
