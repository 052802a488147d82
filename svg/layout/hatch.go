package layout

import (
	"math"

	"trammel/geom/region"
	"trammel/svg"
)

// Hatching, in millimetres. A region too small for three strokes gets closer
// ones, down to the closest that still print apart.
const (
	hatchApart   = 1.6
	hatchClosest = 0.4
	hatchShort   = 0.15 // strokes under this are specks
	hatchWidth   = 0.18
	hatchGap     = 0.5 // about words
)

// drawHatches strokes the regions, the first one rising to the right, the next
// falling, so that two can be told apart where they overlap. A region that runs
// on ends with the ink of the figure.
func (d *drawing) drawHatches() {
	ink := d.inkExtent()
	rising := true
	for _, m := range d.fig.Marks {
		areas, step := d.areas(m)
		if len(areas) == 0 {
			continue
		}
		var strokes []segment
		for _, r := range areas {
			strokes = append(strokes, d.hatch(r, ink, rising)...)
		}
		if len(strokes) == 0 {
			d.warn(step, "nothing of the hatched region shows within the figure", "draw what bounds it")
		}
		d.hatches = append(d.hatches, strokes...)
		d.record.hatchings = append(d.record.hatchings, hatching{strokes, step})
		rising = !rising
	}
}

// hatching is the strokes of a region, before words clear them.
type hatching struct {
	strokes []segment
	step    int
}

func (d *drawing) hatch(r region.Region, ink box, rising bool) []segment {
	b, bounded := r.Box()
	if !bounded {
		b = region.Box{Left: ink.lo.x / d.scale, Bottom: -ink.hi.y / d.scale, Right: ink.hi.x / d.scale, Top: -ink.lo.y / d.scale}
	}
	angle := d.hatchAngle(box{vec{b.Left, -b.Top}.times(d.scale), vec{b.Right, -b.Bottom}.times(d.scale)}, rising)
	var out []segment
	_, closest := d.hatchPen()
	for apart := d.mm(hatchApart); apart >= closest && len(out) < 3; apart /= 2 {
		out = out[:0]
		for _, s := range r.Hatch(b, angle, apart/d.scale) {
			g := segment{vec{s.X1, -s.Y1}.times(d.scale).snap(), vec{s.X2, -s.Y2}.times(d.scale).snap()}
			if g.length() >= d.mm(hatchShort) {
				out = append(out, g)
			}
		}
	}
	return out
}

// hatchAngles are the slopes of hatching in degrees, the usual one first. Where a
// straight runs along it, hatching looks ragged or doubles the straight, and so it
// turns until they cross by hatchTurn.
var hatchAngles = []float64{45, 30, 60}

const hatchTurn = 12.0

// hatchAngle is the first of the slopes that no straight across the area runs
// along, or else the one that crosses them best.
func (d *drawing) hatchAngle(area box, rising bool) float64 {
	best, most := 0.0, -1.0
	for _, degrees := range hatchAngles {
		angle := degrees * math.Pi / 180
		if !rising {
			angle = -angle
		}
		least := math.Pi
		for _, s := range d.strokes {
			if g, ok := s.curve.(segment); ok && s.owner != nil && g.touches(area) {
				off := apart(2*g.a.to(g.b).angle(), 2*angle) / 2
				least = min(least, off)
			}
		}
		if least >= hatchTurn*math.Pi/180 {
			return angle
		}
		if least > most {
			best, most = angle, least
		}
	}
	return best
}

// hatchCost is for words that stand on hatching where there is room elsewhere.
const hatchCost = 45

// hatchCosts prices the spots that lie on hatching.
func (d *drawing) hatchCosts() {
	if len(d.hatches) == 0 {
		return
	}
	var all []obstacle
	for i, h := range d.hatches {
		all = append(all, obstacle{h, 0, hatchCost, true, i, -1})
	}
	g := newGrid(all)
	for _, l := range d.labels {
		for i := range l.spots {
			on := false
			g.near(l.spots[i].box, func(o *obstacle) bool {
				on = o.touches(l.spots[i].box)
				return !on
			})
			if on {
				l.spots[i].cost += hatchCost
			}
		}
	}
}

// clearHatches breaks the hatching around words, which are placed by now, and
// around dots; for fingers around all that is inked.
func (d *drawing) clearHatches() {
	if d.theme.gap > 0 {
		d.hatches = d.textured(d.hatches)
		return
	}
	for _, l := range d.labels {
		d.clearHatch(l.spots[l.at].grow(d.mm(hatchGap)))
	}
	for _, o := range d.dots {
		d.clearHatch(o.bounds())
	}
}

func (d *drawing) clearHatch(b box) {
	var rest []segment
	for _, h := range d.hatches {
		if !h.touches(b) {
			rest = append(rest, h)
			continue
		}
		for _, piece := range h.without(b) {
			if s := piece.(segment); s.length() >= d.mm(hatchShort) {
				rest = append(rest, s)
			}
		}
	}
	d.hatches = rest
}

// hatchItems are the strokes as the drawing has them.
func (d *drawing) hatchItems() []svg.Item {
	width, _ := d.hatchPen()
	ink := svg.Ink{Stroke: black, Width: whole(width)}
	var items []svg.Item
	for _, h := range d.hatches {
		items = append(items, svg.Path{Ink: ink, Start: h.a.xy(), Pieces: []svg.Piece{{To: h.b.xy()}}})
	}
	return items
}
