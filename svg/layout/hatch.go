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
	hatchBeyond  = 5.0 // past the ink, where a region runs on
	hatchLeast   = 24.0
)

// drawHatches strokes the regions, each next one at another slope, so that they can
// be told apart where they overlap. A region that runs
// on ends a little beyond the ink of the figure, so that no point seems to bound it.
func (d *drawing) drawHatches() {
	regions := 0
	for _, m := range d.fig.Marks {
		areas, step := d.areas(m)
		if len(areas) == 0 {
			continue
		}
		var strokes []segment
		for _, r := range areas {
			strokes = append(strokes, d.hatch(r, d.open, hatchSlopes[regions%len(hatchSlopes)])...)
		}
		if len(strokes) == 0 {
			d.warn(step, "nothing of the hatched region shows within the figure", "draw what bounds it")
		}
		d.hatches = append(d.hatches, strokes...)
		d.record.hatchings = append(d.record.hatchings, hatching{strokes, step})
		regions++
	}
}

// hatching is the strokes of a region, before words clear them.
type hatching struct {
	strokes []segment
	step    int
}

func (d *drawing) hatch(r region.Region, ink box, slope float64) []segment {
	b, bounded := r.Box()
	if !bounded {
		b = region.Box{Left: ink.lo.x / d.scale, Bottom: -ink.hi.y / d.scale, Right: ink.hi.x / d.scale, Top: -ink.lo.y / d.scale}
	}
	angle := d.hatchAngle(r, box{vec{b.Left, -b.Top}.times(d.scale), vec{b.Right, -b.Bottom}.times(d.scale)}, slope)
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

// hatchSlopes are those of one hatching after the other, in degrees. Where a straight
// runs along it, hatching looks ragged or doubles the straight, and so it turns by one
// of hatchTurns until they cross by hatchTurn.
var (
	hatchSlopes = []float64{45, -45, 70, -20}
	hatchTurns  = []float64{0, -15, 15}
)

const hatchTurn = 12 * math.Pi / 180

// hatchAngle is the first of the angles near a slope that no straight runs along which
// bounds the region or crosses its box, or else the one that they cross best.
func (d *drawing) hatchAngle(r region.Region, area box, slope float64) float64 {
	ways := r.Borders()
	for _, s := range d.strokes {
		if g, ok := s.curve.(segment); ok && s.owner != nil && g.touches(area) {
			ways = append(ways, g.a.to(g.b).angle())
		}
	}
	best, most := 0.0, -1.0
	for _, by := range hatchTurns {
		angle := (slope + by) * math.Pi / 180
		least := math.Pi
		for _, w := range ways {
			least = min(least, apart(2*w, 2*angle)/2)
		}
		if least >= hatchTurn {
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
