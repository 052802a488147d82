package png

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"strconv"

	"golang.org/x/image/vector"

	"trammel/svg"
	"trammel/svg/glyph"
)

// canvas is a picture that is being painted.
type canvas struct {
	*image.RGBA
	scale float64 // pixels to the micrometre
	tool  vector.Rasterizer
}

func newCanvas(width, height int, o Options) *canvas {
	c := &canvas{RGBA: image.NewRGBA(image.Rect(0, 0, width, height)), scale: float64(o.DPI) / inch}
	if !o.Transparent {
		draw.Draw(c, c.Rect, image.White, image.Point{}, draw.Src)
	}
	return c
}

func (c *canvas) draw(d *svg.Doc) error {
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if err := c.item(item); err != nil {
				return err
			}
		}
	}
	return nil
}

func (c *canvas) item(item svg.Item) error {
	switch v := item.(type) {
	case svg.Path:
		c.shape(v.Ink, v.Stretches(), v.Closed)
	case svg.Disc:
		c.shape(v.Ink, v.Stretches(), true)
	case svg.Text:
		return c.text(v)
	}
	return nil
}

// shape fills, and strokes on top.
func (c *canvas) shape(ink svg.Ink, outline []svg.Stretch, closed bool) {
	for i := range outline {
		outline[i] = c.fine(outline[i])
	}
	if ink.Fill != "" {
		var s shape
		for _, stretch := range outline {
			s.follow(stretch, 0)
		}
		c.fill([]shape{s}, ink.Fill)
	}
	if ink.Width > 0 {
		c.fill(stroke(ink, outline, closed, c.scale), ink.Stroke)
	}
}

// flat is how far a chord may be from its arc, in pixels.
const flat = 0.02

// fine gives an arc so many spokes that its chords are as good as itself: an
// angle θ has a sagitta of nearly θ²/8 radii.
func (c *canvas) fine(s svg.Stretch) svg.Stretch {
	for len(s.Spokes) > 0 {
		u, v := s.Spokes[0], s.Spokes[1]
		square := float64((u.X-v.X)*(u.X-v.X)) + float64((u.Y-v.Y)*(u.Y-v.Y))
		if s.Radius*square/8*c.scale < flat {
			break
		}
		s = s.Finer()
	}
	return s
}

// text fills the outlines of letters, the same as an SVG has.
func (c *canvas) text(t svg.Text) error {
	set := t.Set()
	if set.Lacks != 0 {
		return &svg.Unlettered{Letter: set.Lacks, Text: t.String()}
	}
	shapes := c.outline(set.Shapes, svg.XY{})
	for _, l := range set.Letters {
		g, _ := l.Face.Glyph(l.Sign, l.Size)
		shapes = append(shapes, c.outline(g.Outline, l.At)...)
	}
	c.fill(shapes, t.Fill)
	return nil
}

// outline is closed contours, their curves in chords.
func (c *canvas) outline(segments []glyph.Segment, at svg.XY) (shapes []shape) {
	var pen svg.Place
	place := func(p glyph.Point) svg.Place { return svg.Place{X: float64(at.X + p.X), Y: float64(at.Y + p.Y)} }
	for _, s := range segments {
		if s.Op == 'M' {
			shapes = append(shapes, nil)
		}
		last := &shapes[len(shapes)-1]
		if s.Op == 'C' {
			*last = append(*last, c.curve(pen, place(s.To[0]), place(s.To[1]), place(s.To[2]))...)
			pen = place(s.To[2])
			continue
		}
		pen = place(s.To[0])
		*last = append(*last, pen)
	}
	return shapes
}

// curve is points of a cubic curve after its start, the closer the longer it is.
func (c *canvas) curve(p, q, r, s svg.Place) (points shape) {
	length := c.scale * (math.Abs(q.X-p.X) + math.Abs(q.Y-p.Y) + math.Abs(r.X-q.X) + math.Abs(r.Y-q.Y) + math.Abs(s.X-r.X) + math.Abs(s.Y-r.Y))
	n := max(2, min(100, int(2*math.Sqrt(length))))
	for k := 1; k <= n; k++ {
		t := float64(k) / float64(n)
		a, b, d := between(p, q, t), between(q, r, t), between(r, s, t)
		points = append(points, between(between(a, b, t), between(b, d, t), t))
	}
	return points
}

// between divides a straight line as t to 1 - t.
func between(a, b svg.Place, t float64) svg.Place {
	return svg.Place{X: a.X + float64((b.X-a.X)*t), Y: a.Y + float64((b.Y-a.Y)*t)}
}

// fill fills what the shapes cover, once where several do. Shapes that lie over
// each other must turn the same way round; one that turns the other way makes a hole.
func (c *canvas) fill(shapes []shape, hex string) {
	box := c.box(shapes)
	if box.Empty() {
		return
	}
	c.tool.Reset(box.Dx(), box.Dy())
	for _, s := range shapes {
		for i, p := range s {
			x := float32(float64(p.X*c.scale) - float64(box.Min.X))
			y := float32(float64(p.Y*c.scale) - float64(box.Min.Y))
			if i == 0 {
				c.tool.MoveTo(x, y)
			} else {
				c.tool.LineTo(x, y)
			}
		}
		c.tool.ClosePath()
	}
	c.tool.Draw(c.RGBA, box, image.NewUniform(colour(hex)), image.Point{})
}

// box is the pixels that the shapes may touch.
func (c *canvas) box(shapes []shape) image.Rectangle {
	low, high := svg.Place{X: math.Inf(1), Y: math.Inf(1)}, svg.Place{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range shapes {
		for _, p := range s {
			low = svg.Place{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
			high = svg.Place{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
		}
	}
	if low.X > high.X {
		return image.Rectangle{}
	}
	down := func(v float64) int { return int(math.Floor(v * c.scale)) }
	up := func(v float64) int { return int(math.Ceil(v * c.scale)) }
	return image.Rect(down(low.X), down(low.Y), up(high.X), up(high.Y)).Intersect(c.Rect)
}

// colour reads "#rrggbb"; the drawing has been checked.
func colour(hex string) color.RGBA {
	n, _ := strconv.ParseUint(hex[1:], 16, 32)
	return color.RGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 255}
}
