package solve

import (
	"math"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/lang/program"
)

// sight is the figure in floats, as far as it is drawn: what a step makes is
// looked at once, however often it is compared.
type sight struct {
	slots     []thing
	homes     []home // by slot
	dots      row    // of the points,
	rings     row    // of the circles
	lines     row    // and of the straights
	points    []int  // slots of the points that are drawn, seen or hidden
	circles   []int
	straights []int  // that the reader sees
	joins     []int  // among the straights: those from point to point,
	others    []int  // and those that run on
	seats     []bool // by slot: whether it is a point that is left to chance on a circle
}

// thing is what a slot holds.
type thing struct {
	kind   kind
	drawn  bool
	x, y   float64 // a point, a circle's centre, a point of a straight
	dx, dy float64 // a straight's direction, of length 1
	lo, hi float64 // where a straight starts and ends, along its direction
	r      float64 // a circle's radius
	a, b   int     // the slots of a join's ends
	line   bool    // it is compared with joins, and is none
	hidden bool    // no letter has to stand there
	given  bool
	whole  bool // drawn all round
	struck bool // an arc that is drawn about the points on it only
}

type kind uint8

const (
	nothing kind = iota
	point
	circle
	straight
)

// How many joins are compared with each other, and with how many other straights.
const (
	mostJoins = 40
	mostLines = 10
)

// newSight finds the slots that are drawn.
func newSight(p *program.Program) *sight {
	s := &sight{slots: make([]thing, len(p.Slots)), homes: make([]home, len(p.Slots)), seats: make([]bool, len(p.Slots))}
	drawn := map[[2]int]bool{}
	for i, slot := range p.Slots {
		if slot.Ink == nil || slot.Aside {
			continue
		}
		t := &s.slots[i]
		t.drawn, t.hidden, t.given, t.whole = true, slot.Ink.Hidden || slot.Kind == program.Point && slot.Ink.Label == nil, slot.Ink.Role == figure.Given, slot.Ink.Whole
		t.struck = slot.Kind == program.Circle && !slot.Ink.Whole && slot.Ink.Ends == nil
		t.a, t.b = -1, -1
		switch slot.Kind {
		case program.Point:
			s.points = append(s.points, i)
		case program.Circle:
			s.circles = append(s.circles, i)
		case program.Line:
			if t.hidden {
				continue
			}
			if ends := slot.Between; ends != nil {
				pair := [2]int{min(ends[0], ends[1]), max(ends[0], ends[1])}
				if drawn[pair] {
					t.drawn = false // over the other one: nothing new to see
					continue
				}
				drawn[pair] = true
				if len(s.joins) < mostJoins {
					t.a, t.b = pair[0], pair[1]
					s.joins = append(s.joins, i)
				}
			} else if len(s.others) < mostLines {
				s.others, t.line = append(s.others, i), true
			}
			s.straights = append(s.straights, i)
		}
	}
	s.settle(&s.dots, s.points)
	s.settle(&s.rings, s.circles)
	s.settle(&s.lines, s.straights)
	return s
}

// look notes the value of a slot.
func (s *sight) look(slot int, value any) {
	if t := &s.slots[slot]; t.drawn {
		t.look(value)
		s.move(slot)
	}
}

// put makes a thing stand in a slot as it has stood before.
func (s *sight) put(slot int, t *thing) {
	if t.drawn {
		s.slots[slot] = *t
		s.move(slot)
	}
}

func (t *thing) look(value any) {
	t.kind = nothing
	switch v := value.(type) {
	case geom.Point:
		t.kind, t.x, t.y = point, v.X.Float(), v.Y.Float()
	case *program.Curve:
		if v.Circle != nil {
			t.kind, t.x, t.y = circle, v.Circle.C.X.Float(), v.Circle.C.Y.Float()
			t.r = math.Sqrt(v.Circle.R2.Float())
			return
		}
		l := v.Line()
		dx, dy := l.D.X.Float(), l.D.Y.Float()
		n := math.Hypot(dx, dy)
		t.kind, t.x, t.y, t.dx, t.dy = straight, l.P.X.Float(), l.P.Y.Float(), dx/n, dy/n
		t.lo, t.hi = math.Inf(-1), math.Inf(1)
		if p := v.Straight.Start; p != nil {
			t.lo = t.along(p.X.Float(), p.Y.Float())
		}
		if p := v.Straight.End; p != nil {
			t.hi = t.along(p.X.Float(), p.Y.Float())
		}
	}
}

// along is how far a place lies along a straight.
func (t *thing) along(x, y float64) float64 { return (x-t.x)*t.dx + (y-t.y)*t.dy }

// page is the room for a figure, in its units; a sheet that is not named can be turned.
type page struct {
	width, height float64
	named         bool
}

// The room on a page that is not named: an A5 sheet without its margins, in millimetres.
const pageLong, pageShort = 155, 125

func pageOf(p *program.Program) page {
	mm, _ := p.Unit.Float64()
	if p.Paper == nil {
		return page{pageLong / mm, pageShort / mm, false}
	}
	w, _ := p.Paper.Width.Float64()
	h, _ := p.Paper.Height.Float64()
	return page{max(w-2*program.MarginMM, 20) / mm, max(h-2*program.MarginMM, 20) / mm, true}
}

// over is by which part of itself a box exceeds the page.
func (p page) over(b box) float64 {
	w, h := b.right-b.left, b.high-b.low
	if !p.named {
		w, h = max(w, h), min(w, h)
	}
	return max(w/p.width, h/p.height) - 1
}
