package layout

import (
	"bytes"
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"testing"

	"trammel/svg"
)

var out = flag.String("out", "", "folder to write the drawings of the gate to")

// TestGate reads the finished drawings, independently of how they were laid
// out: no two texts overlap, none touches ink, none leaves the paper.
func TestGate(t *testing.T) {
	for _, f := range textbook {
		t.Run(f.name, func(t *testing.T) {
			doc, warnings, err := Draw(&f.draw().Figure, Options{ID: f.name})
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range warnings {
				t.Errorf("warning: %s", w.Text)
			}
			var first, again bytes.Buffer
			if err := doc.Write(&first, svg.Options{}); err != nil {
				t.Fatal(err)
			}
			inspect(t, doc)
			doc, _, _ = Draw(&f.draw().Figure, Options{ID: f.name})
			if doc.Write(&again, svg.Options{}); !bytes.Equal(first.Bytes(), again.Bytes()) {
				t.Error("drawn twice, the bytes differ")
			}
			save(t, f.name, doc)
		})
	}
}

// save writes a drawing where it can be looked at, if asked.
func save(t *testing.T, name string, doc *svg.Doc) {
	t.Helper()
	if *out == "" {
		return
	}
	f, err := os.Create(filepath.Join(*out, name+".svg"))
	if err == nil {
		err = errors.Join(doc.Write(f, svg.Options{}), f.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
}

// inspect counts contacts on the paper.
func inspect(t *testing.T, doc *svg.Doc) {
	t.Helper()
	var texts []svg.Text
	var boxes []svg.Box
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			if x, ok := i.(svg.Text); ok {
				b := svg.Measure(x)
				boxes = append(boxes, svg.Box{Left: b.Left + x.At.X, Right: b.Right + x.At.X, Top: b.Top + x.At.Y, Bottom: b.Bottom + x.At.Y})
				texts = append(texts, x)
			}
		}
	}
	for i, b := range boxes {
		if b.Left < 0 || b.Top < 0 || b.Right > doc.Width || b.Bottom > doc.Height {
			t.Errorf("%s is off the paper", texts[i])
		}
		for j, c := range boxes[:i] {
			if b.Left <= c.Right && c.Left <= b.Right && b.Top <= c.Bottom && c.Top <= b.Bottom {
				t.Errorf("%s overlaps %s", texts[i], texts[j])
			}
		}
		for _, g := range doc.Groups {
			for _, item := range g.Items {
				if gap := inkGap(item, b); gap <= 0 {
					t.Errorf("%s touches the %s by %.0f µm", texts[i], g.Class, -gap)
				}
			}
		}
	}
}

// inkGap walks along the ink in small steps and gives the least distance from
// its edge to the box.
func inkGap(item svg.Item, b svg.Box) float64 {
	least := math.Inf(1)
	near := func(x, y, half float64) {
		dx := math.Max(0, math.Max(float64(b.Left)-x, x-float64(b.Right)))
		dy := math.Max(0, math.Max(float64(b.Top)-y, y-float64(b.Bottom)))
		least = math.Min(least, math.Hypot(dx, dy)-half)
	}
	switch x := item.(type) {
	case svg.Disc:
		if x.Width == 0 {
			near(float64(x.Centre.X), float64(x.Centre.Y), float64(x.Radius))
			break
		}
		for i := range 4000 {
			a := float64(i) * math.Pi / 2000
			near(float64(x.Centre.X)+float64(x.Radius)*math.Cos(a), float64(x.Centre.Y)+float64(x.Radius)*math.Sin(a), float64(x.Width)/2)
		}
	case svg.Path:
		if x.Width > 0 {
			walk(x, func(px, py float64) { near(px, py, float64(x.Width)/2) })
		}
	}
	return least
}

// walk visits points of a path 50 µm apart.
func walk(p svg.Path, visit func(x, y float64)) {
	from := p.Start
	pieces := p.Pieces
	if p.Closed {
		pieces = append(pieces[:len(pieces):len(pieces)], svg.Piece{To: p.Start})
	}
	for _, q := range pieces {
		ax, ay, bx, by := float64(from.X), float64(from.Y), float64(q.To.X), float64(q.To.Y)
		n := math.Ceil(math.Hypot(bx-ax, by-ay)/50) + 1
		if q.Radius == 0 {
			for i := 0.0; i <= n; i++ {
				visit(ax+(bx-ax)*i/n, ay+(by-ay)*i/n)
			}
		} else {
			walkArc(ax, ay, bx, by, q, visit)
		}
		from = q.To
	}
}

// walkArc follows the arc as the SVG specification defines it (appendix on
// elliptical arcs, for equal radii).
func walkArc(ax, ay, bx, by float64, q svg.Piece, visit func(x, y float64)) {
	r := float64(q.Radius)
	px, py := (ax-bx)/2, (ay-by)/2
	k := math.Sqrt(math.Max(0, r*r/(px*px+py*py)-1))
	if q.Large == q.Clockwise {
		k = -k
	}
	cx, cy := k*py+(ax+bx)/2, -k*px+(ay+by)/2
	from, to := math.Atan2(ay-cy, ax-cx), math.Atan2(by-cy, bx-cx)
	if q.Clockwise && to < from {
		to += 2 * math.Pi
	} else if !q.Clockwise && to > from {
		to -= 2 * math.Pi
	}
	n := math.Ceil(math.Abs(to-from)*r/50) + 1
	for i := 0.0; i <= n; i++ {
		a := from + (to-from)*i/n
		visit(cx+r*math.Cos(a), cy+r*math.Sin(a))
	}
}
