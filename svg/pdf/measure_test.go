package pdf

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"trammel/svg"
	"trammel/svg/svgtest"
)

// reading is what a page says to those who know PDF's operators only: paths in
// millimetres of paper from its upper left corner, read from qpdf's plain form.
type reading struct {
	height float64 // of the page, in points
	matrix [6]float64
	stack  []float64
	paths  [][]bezier
	pen    point
	width  float64 // of the pen, in millimetres
}

type point struct{ x, y float64 }

// bezier is a cubic; a straight line has its control points at its ends.
type bezier [4]point

var (
	mediaBox = regexp.MustCompile(`/MediaBox \[\s+0\s+0\s+([0-9.]+)\s+([0-9.]+)\s+\]`)
	contents = regexp.MustCompile(`(?s)stream\n(.*?)\nendstream`)
)

// read reads the first page, whose contents is the stream with an operator cm.
func read(t *testing.T, d *svg.Doc) (r *reading, width, height float64) {
	t.Helper()
	file := svgtest.Save(t, "measured.pdf", written(t, d))
	plain := svgtest.Run(t, "qpdf", "--qdf", "--object-streams=disable", "--no-original-object-ids", file, "-")
	box := mediaBox.FindStringSubmatch(plain)
	if box == nil {
		t.Fatal("there is no box of the page")
	}
	const millimetre = 25.4 / 72
	w, _ := strconv.ParseFloat(box[1], 64)
	h, _ := strconv.ParseFloat(box[2], 64)
	r = &reading{height: h, matrix: [6]float64{1, 0, 0, 1, 0, 0}}
	for _, stream := range contents.FindAllStringSubmatch(plain, -1) {
		if strings.Contains(stream[1], " cm ") {
			for _, word := range strings.Fields(stream[1]) {
				r.word(word)
			}
		}
	}
	return r, w * millimetre, h * millimetre
}

// word takes a number, or does what an operator asks.
func (r *reading) word(word string) {
	if v, err := strconv.ParseFloat(word, 64); err == nil {
		r.stack = append(r.stack, v)
		return
	}
	n := r.stack
	switch word {
	case "cm":
		r.matrix = [6]float64(n) // the first and only one
	case "w":
		r.width = n[0] * r.matrix[0] * 25.4 / 72
	case "m":
		r.paths = append(r.paths, nil)
		r.pen = r.place(n[0], n[1])
	case "l":
		r.draw(r.pen, r.place(n[0], n[1]), r.place(n[0], n[1]))
	case "c":
		r.draw(r.place(n[0], n[1]), r.place(n[2], n[3]), r.place(n[4], n[5]))
	}
	r.stack = nil
}

func (r *reading) draw(a, b, end point) {
	last := len(r.paths) - 1
	r.paths[last] = append(r.paths[last], bezier{r.pen, a, b, end})
	r.pen = end
}

// place turns numbers of the contents into millimetres from the upper left corner.
func (r *reading) place(x, y float64) point {
	m := r.matrix
	const millimetre = 25.4 / 72
	return point{(m[0]*x + m[2]*y + m[4]) * millimetre, (r.height - (m[1]*x + m[3]*y + m[5])) * millimetre}
}

// at is the point of the curve at t.
func (b bezier) at(t float64) point {
	u := 1 - t
	p, q, r, s := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return point{p*b[0].x + q*b[1].x + r*b[2].x + s*b[3].x, p*b[0].y + q*b[1].y + r*b[2].y + s*b[3].y}
}

// A line of 100 mm is as long on the page to a tenth of a micrometre, far within
// the 0.02 mm that paper asks for; a circle is round to a micrometre.
func TestTrueToScale(t *testing.T) {
	r, width, height := read(t, svgtest.Ruler())
	near(t, "width of the page", width, float64(svg.PadToPixels(120_000))/1000, 0.0001)
	near(t, "height of the page", height, float64(svg.PadToPixels(90_000))/1000, 0.0001)
	near(t, "pen", r.width, 0.5, 0.0001)
	if len(r.paths) != 2 {
		t.Fatalf("%d paths were read", len(r.paths))
	}
	line := r.paths[0][0]
	near(t, "length", line[3].x-line[0].x, 100, 0.0001)
	near(t, "slope", line[3].y-line[0].y, 0, 0.0001)
	near(t, "from the left", line[0].x, 10, 0.0001)
	near(t, "from above", line[0].y, 10, 0.0001)
	off := 0.0
	for _, b := range r.paths[1] {
		for k := range 101 {
			p := b.at(float64(k) / 100)
			off = max(off, math.Abs(math.Hypot(p.x-60, p.y-50)-30))
		}
	}
	t.Logf("the circle is off by %.6f mm", off)
	near(t, "circle", off, 0, 0.001)
}

// Arcs of every size and turn keep to their circles and go the right way.
func TestArcs(t *testing.T) {
	for _, radius := range []int{3000, 25_000, 250_000} {
		for _, turn := range []float64{1, 30, 89.99, 90, 91, 180, 200, 270, 330, 359} {
			for _, clockwise := range []bool{true, false} {
				checkArc(t, radius, turn, clockwise)
			}
		}
	}
}

func checkArc(t *testing.T, radius int, turn float64, clockwise bool) {
	t.Helper()
	on := func(degrees float64) svg.XY {
		angle := degrees * math.Pi / 180
		return svg.XY{X: 300_000 + int(math.Round(float64(radius)*math.Cos(angle))), Y: 300_000 + int(math.Round(float64(radius)*math.Sin(angle)))}
	}
	direction := 1.0 // clockwise angles grow where Y runs down
	if !clockwise {
		direction = -1
	}
	const start = 37
	arc := svg.Path{
		Ink: svg.Ink{Stroke: "#000000", Width: 250}, Start: on(start),
		Pieces: []svg.Piece{{To: on(start + direction*turn), Radius: radius, Large: turn > 180, Clockwise: clockwise}},
	}
	r, _, _ := read(t, &svg.Doc{Width: 600_000, Height: 600_000, Groups: []svg.Group{{Items: []svg.Item{arc}}}})
	centre, from, sweep := asInSVG(arc)
	name := fmt.Sprintf("radius %d, turn %v, clockwise %v", radius, turn, clockwise)
	near(t, name+", sweep in degrees", sweep*180/math.Pi, direction*turn, 1.5)
	off := 0.0
	for i, b := range r.paths[0] {
		for k := range 11 {
			p := b.at(float64(k) / 10)
			off = max(off, math.Abs(math.Hypot(p.x-centre.x, p.y-centre.y)-float64(radius)/1000))
		}
		if i == len(r.paths[0])/2 { // the pieces of a quarter are alike, those of the last part smaller
			angle := math.Mod(direction*(math.Atan2(b[0].y-centre.y, b[0].x-centre.x)-from)+4*math.Pi, 2*math.Pi)
			if angle > math.Abs(sweep) {
				t.Errorf("%s: it goes the other way round", name)
			}
		}
	}
	near(t, name+", from its circle", off, 0, 0.001)
	near(t, name+", end across", r.pen.x, float64(arc.Pieces[0].To.X)/1000, 0.0002)
	near(t, name+", end down", r.pen.y, float64(arc.Pieces[0].To.Y)/1000, 0.0002)
}

// asInSVG is an arc's centre in millimetres, the angle at which it starts and
// how far it turns, by the formulas of SVG 1.1, F.6.5.
func asInSVG(p svg.Path) (centre point, from, sweep float64) {
	x1, y1 := float64(p.Start.X)/1000, float64(p.Start.Y)/1000
	x2, y2 := float64(p.Pieces[0].To.X)/1000, float64(p.Pieces[0].To.Y)/1000
	r := float64(p.Pieces[0].Radius) / 1000
	dx, dy := (x1-x2)/2, (y1-y2)/2
	if d := math.Hypot(dx, dy); d > r {
		r = d // F.6.6
	}
	root := math.Sqrt(max(0, (r*r*r*r-r*r*dy*dy-r*r*dx*dx)/(r*r*dy*dy+r*r*dx*dx)))
	if p.Pieces[0].Large == p.Pieces[0].Clockwise {
		root = -root
	}
	cx, cy := root*dy, -root*dx
	centre = point{cx + (x1+x2)/2, cy + (y1+y2)/2}
	from = math.Atan2((dy-cy)/r, (dx-cx)/r)
	sweep = math.Atan2((-dy-cy)/r, (-dx-cx)/r) - from
	switch {
	case p.Pieces[0].Clockwise && sweep < 0:
		sweep += 2 * math.Pi
	case !p.Pieces[0].Clockwise && sweep > 0:
		sweep -= 2 * math.Pi
	}
	return centre, from, sweep
}

func near(t *testing.T, what string, got, want, slack float64) {
	t.Helper()
	if math.Abs(got-want) > slack {
		t.Errorf("%s: %.6f mm, want %.6f", what, got, want)
	}
}
