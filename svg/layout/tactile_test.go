package layout

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/svg"
)

// TestTactile draws figures for fingers. What is refused is drawn with the unit
// that the refusal names, and then the finished drawing is measured.
func TestTactile(t *testing.T) {
	refused := 0
	for _, f := range textbook {
		g := f.draw().As("tactile", "")
		doc, _, err := Draw(g, Options{})
		var refusal *Refusal
		if errors.As(err, &refusal) {
			refused++
			unit := 0
			if fmt.Sscanf(refusal.Help, "unit %d mm would do", &unit); unit == 0 {
				t.Errorf("%s: %v (%s)", f.name, refusal, refusal.Help)
				continue
			}
			g.Unit.SetInt64(int64(unit))
			doc, _, err = Draw(g, Options{})
		}
		if err != nil {
			t.Errorf("%s: %v", f.name, err)
			continue
		}
		save(t, "tactile-"+f.name, doc)
		feel(t, f.name, doc)
	}
	if refused < len(textbook)/2 {
		t.Errorf("only %d figures of print size are refused", refused)
	}
}

// feel measures the drawing: words 3 mm from all ink and from each other, ink
// of three widths, nothing grey.
func feel(t *testing.T, name string, doc *svg.Doc) {
	t.Helper()
	widths := map[int]bool{}
	var boxes []svg.Box
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			switch x := i.(type) {
			case svg.Text:
				b := svg.Measure(x)
				boxes = append(boxes, svg.Box{Left: b.Left + x.At.X, Right: b.Right + x.At.X, Top: b.Top + x.At.Y, Bottom: b.Bottom + x.At.Y})
			case svg.Path:
				widths[x.Width] = true
				if x.Stroke != black || x.Fill != "" {
					t.Errorf("%s: ink %q %q", name, x.Stroke, x.Fill)
				}
			}
		}
	}
	for w := range widths {
		for v := range widths {
			if w < v && v-w < 150 {
				t.Errorf("%s: widths of %d and %d", name, w, v)
			}
		}
	}
	for i, b := range boxes {
		for _, g := range doc.Groups {
			for _, item := range g.Items {
				if gap := inkGap(item, b); gap < fingersApart*mm-60 {
					t.Errorf("%s: words %d are %.0f µm from the %s", name, i, gap, g.Class)
				}
			}
		}
		for _, c := range boxes[:i] {
			dx := max(b.Left-c.Right, c.Left-b.Right, 0)
			dy := max(b.Top-c.Bottom, c.Top-b.Bottom, 0)
			if math.Hypot(float64(dx), float64(dy)) < fingersApart*mm-1 {
				t.Errorf("%s: words are %d, %d µm apart", name, dx, dy)
			}
		}
	}
}

// TestRefusal names what is too close, by how much, and what would do.
func TestRefusal(t *testing.T) {
	s := newSketch("two points 3 mm apart")
	s.point("A", 0, 0, giv)
	s.point("B", 0.7, 0, giv)
	s.point("C", 5, 5, giv)
	_, _, err := Draw(s.As("tactile", ""), Options{})
	var refusal *Refusal
	if !errors.As(err, &refusal) || !strings.Contains(refusal.Text, "the point A and the point B are 2.0 mm apart, and need 3.0 mm") {
		t.Fatalf("%v", err)
	}
	if refusal.Help != "unit 12 mm would do" {
		t.Error(refusal.Help)
	}
	s.Points[0].Label.Text = "中"
	if _, _, err := Draw(s.As("tactile", ""), Options{}); err == nil || !strings.Contains(err.Error(), "the label of the point A has no braille for 中") {
		t.Error(err)
	}
}

// TestTexture strokes shades for fingers: as far apart as these tell apart, and as
// far from the border, from dots and from words. What is too small is refused.
func TestTexture(t *testing.T) {
	for sector, outline := range []string{"ABC", "AB", "BA"} {
		s := newSketch("a shade")
		s.point("A", 9, 0, giv)
		s.point("B", 0, 9, giv)
		s.point("C", -4, -6, giv)
		s.join("ABCA", giv)
		shade := figure.Shade{Outline: s.points(outline)}
		if sector > 0 {
			o := s.pt(0, 0)
			shade.Centre = &o
		}
		s.Marks = append(s.Marks, shade)
		d, err := newDrawing(s.As("tactile", ""))
		if err != nil {
			t.Fatal(err)
		}
		d.laid()
		if len(d.hatches) < 5 || len(d.unfit()) > 0 {
			t.Errorf("%s: %d strokes, %v", outline, len(d.hatches), d.unfit())
		}
		area := 0.0
		for i, h := range d.hatches {
			area += h.length() * d.mm(hatchApart) / 1e8
			for _, p := range h.samples(mm) {
				if !d.roomAt(p) {
					t.Errorf("%s: a stroke is too near to something at %v", outline, p)
				}
				for _, o := range d.hatches[:i] {
					if o.dist(p) < fingersApart*mm && !o.along(h) { // halves of one stroke go on from each other
						t.Errorf("%s: two strokes are %.1f mm apart", outline, o.dist(p)/mm)
					}
				}
			}
		}
		// What the strokes cover is the area, in units, but for what is kept clear.
		whole := []float64{94.5, 63.6, 190.9}[sector]
		if area > whole*1.03 || area < whole*0.55 {
			t.Errorf("%s: strokes cover %.1f of %.1f", outline, area, whole)
		}
	}
	s := newSketch("a small shade")
	s.point("A", 0, 0, giv)
	s.point("B", 1.2, 0, giv)
	s.point("C", 0, 1.2, giv)
	s.Marks = append(s.Marks, figure.Shade{Outline: s.points("ABC")})
	if _, _, err := Draw(s.As("tactile", ""), Options{}); err == nil || !strings.Contains(err.Error(), "a shaded area has no room for strokes 3.0 mm apart") {
		t.Error(err)
	}
}
