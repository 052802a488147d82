package glyph

import (
	"testing"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

const height = 3500

func box(outline []Segment) Box {
	b := NoBox
	for _, s := range outline {
		b = b.Grow(s.Points()...)
	}
	return b
}

// The signs of school geometry; none may fall back on the reader's fonts.
const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789αβγδεζηθικλμνξοπρστυφχψω" +
	"ΓΔΘΛΞΠΣΦΨΩ°′″√∠⟂⊥∥△≅≈≡∼≤≥≠·×÷−±½¼¾⅓²³¹ .,:;/()+=–—’“”…éüñçåøßčłșЖДЯ"

func TestSigns(t *testing.T) {
	for _, f := range []Face{Roman, Italic, Sans} {
		for _, r := range signs {
			g, ok := f.Glyph(r, height)
			if !ok || g.Advance <= 0 || r != ' ' && len(g.Outline) == 0 {
				t.Errorf("face %d has no %c", f, r)
			}
			if len(g.Outline) > 0 && g.Outline[0].Op != 'M' {
				t.Errorf("face %d: the outline of %c starts with %c", f, r, g.Outline[0].Op)
			}
		}
	}
	for _, r := range "中אا\x00\U0010FFFF" {
		if _, ok := Roman.Glyph(r, height); ok {
			t.Errorf("%U has an outline, which cannot be its own", r)
		}
	}
}

func TestCapitalHeight(t *testing.T) {
	for _, f := range []Face{Roman, Italic, Sans} {
		g, _ := f.Glyph('H', height)
		if b := box(g.Outline); b.Max.Y != 0 || b.Min.Y < -height-20 || b.Min.Y > -height+20 {
			t.Errorf("face %d: H reaches from %d to %d, not from 0 to %d", f, b.Max.Y, b.Min.Y, -height)
		}
	}
}

// The box of all points of an outline, with control points, is the box of its
// ink, to a hundredth of a capital: the faces' curves have a point at each extreme.
func TestPointsBoundTheInk(t *testing.T) {
	for _, f := range []Face{Roman, Italic, Sans} {
		for _, r := range signs {
			g, _ := f.Glyph(r, height)
			points, ink := box(g.Outline), sampled(g.Outline)
			if off := max(ink.Min.X-points.Min.X, ink.Min.Y-points.Min.Y, points.Max.X-ink.Max.X, points.Max.Y-ink.Max.Y); off > height/100 {
				t.Errorf("face %d: the points of %c reach %d past its ink", f, r, off)
			}
		}
	}
}

// sampled is the box of an outline from 65 points of each curve.
func sampled(outline []Segment) Box {
	b, pen := NoBox, Point{}
	for _, s := range outline {
		points := s.Points()
		end := points[len(points)-1]
		for k := 0; k <= 64 && s.Op == 'C'; k++ {
			b = b.Grow(Point{bezier(pen.X, s.To[0].X, s.To[1].X, end.X, k), bezier(pen.Y, s.To[0].Y, s.To[1].Y, end.Y, k)})
		}
		b, pen = b.Grow(end), end
	}
	return b
}

// bezier is the cubic through a, b, c, d at k/64.
func bezier(a, b, c, d, k int) int {
	l := 64 - k
	return divide(a*l*l*l+3*b*l*l*k+3*c*l*k*k+d*k*k*k, 64*64*64)
}

func TestScaling(t *testing.T) {
	small, _ := Italic.Glyph('P', 657) // the face's own units
	large, _ := Italic.Glyph('P', 657*1000)
	if small.Advance*1000 != large.Advance {
		t.Errorf("the advances %d and %d are not as 1 to 1000", small.Advance, large.Advance)
	}
	for i, s := range large.Outline {
		for j, p := range s.Points() {
			if want := small.Outline[i].To[j]; p != (Point{want.X * 1000, want.Y * 1000}) {
				t.Fatalf("point %v is not 1000 times %v", p, want)
			}
		}
	}
	if got := Roman.Em(657); got != 1000 {
		t.Errorf("an em is %d units", got)
	}
}

// The parabola from (0, 0) by (30, 60) to (60, 0) is the cubic by (20, 40) and (40, 40).
func TestParabola(t *testing.T) {
	face := &parsed{capital: 1}
	quad := sfnt.Segment{Op: sfnt.SegmentOpQuadTo, Args: [3]fixed.Point26_6{{X: 30, Y: 60}, {X: 60}}}
	want := Segment{'C', [3]Point{{200, 400}, {400, 400}, {600, 0}}}
	if got := face.segment(quad, fixed.Point26_6{}, 10); got != want {
		t.Errorf("the cubic is %v, want %v", got, want)
	}
}

func TestKern(t *testing.T) {
	if got := Roman.Kern('A', 'V', 657); got != -100 {
		t.Errorf("V after A is moved by %d", got)
	}
	for _, pair := range [][2]rune{{'H', 'H'}, {'√', '2'}, {'中', 'A'}, {'A', '中'}} {
		if got := Roman.Kern(pair[0], pair[1], 657); got != 0 {
			t.Errorf("%c after %c is moved by %d", pair[1], pair[0], got)
		}
	}
}

func TestDivide(t *testing.T) {
	for _, test := range []struct{ a, b, want int }{{0, 7, 0}, {3, 2, 2}, {-3, 2, -1}, {1, 3, 0}, {2, 3, 1}, {-1, 3, 0}, {-2, 3, -1}, {-4, 2, -2}} {
		if got := divide(test.a, test.b); got != test.want {
			t.Errorf("%d/%d is rounded to %d, want %d", test.a, test.b, got, test.want)
		}
	}
}

// A text of twenty labels costs some tenths of a millisecond to draw.
func BenchmarkGlyph(b *testing.B) {
	for b.Loop() {
		Italic.Glyph('P', height)
	}
}
