package layout

import (
	"math"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/geom/region"
)

// A tint cannot be felt. For fingers an area is covered by strokes as far apart
// as they tell them apart, and these keep as far from all other ink and from words.
// Shorter ones than this, in millimetres, would be taken for points.
const textureShort = 5.0

// areas are the regions that are hatched for a mark: none for what is no area, and
// two for a sector of more than half a turn.
func (d *drawing) areas(m figure.Mark) ([]region.Region, int) {
	switch m := m.(type) {
	case figure.Hatch:
		return []region.Region{m.Region}, m.Step
	case figure.Shade:
		if d.theme.gap > 0 {
			return regionsOf(m), m.Step
		}
	}
	return nil, 0
}

// regionsOf is a shade as regions.
func regionsOf(s figure.Shade) []region.Region {
	switch {
	case s.Circle != nil:
		return []region.Region{{region.Within(region.Spot(s.Circle.C), s.Circle.R2)}}
	case s.Centre == nil:
		return []region.Region{{region.Inside(s.Outline)}}
	}
	c := *s.Centre
	from, to := s.Outline[0].Sub(c), s.Outline[1].Sub(c)
	disc := region.Within(region.Spot(c), from.Norm2())
	half := func(from, to geom.Vector) region.Region {
		return region.Region{disc, region.LeftOf(geom.Line{P: c, D: from}), region.LeftOf(geom.Line{P: c, D: back(to)})}
	}
	if from.Cross(to).Sign() >= 0 {
		return []region.Region{half(from, to)}
	}
	return []region.Region{{disc, region.LeftOf(geom.Line{P: c, D: from})}, half(back(from), to)}
}

func back(v geom.Vector) geom.Vector { return geom.Vector{X: v.X.Neg(), Y: v.Y.Neg()} }

// textured keeps of the strokes of a texture what is clear of everything else.
func (d *drawing) textured(strokes []segment) []segment {
	const step = 0.25 * mm
	var kept []segment
	for _, s := range strokes {
		u, from, length := s.a.to(s.b), 0.0, s.length()
		for at := 0.0; at <= length+step; at += step {
			if at <= length && d.roomAt(s.a.add(u.times(at))) {
				continue
			}
			if at-step-from >= textureShort*mm {
				kept = append(kept, segment{s.a.add(u.times(from)).snap(), s.a.add(u.times(at - step)).snap()})
			}
			from = at + step
		}
	}
	return kept
}

// roomAt tells whether the middle of a texture's stroke at p is clear.
func (d *drawing) roomAt(p vec) bool {
	clear := d.theme.gap + d.theme.mark.half()
	for _, s := range d.strokes {
		if reach := clear + s.half(); s.bounds().grow(reach).holds(p) && off(s.curve, p) < reach {
			return false
		}
	}
	for _, o := range d.dots {
		if off(o.disc, p) < clear {
			return false
		}
	}
	for _, l := range d.labels {
		if l.spots[l.at].near(p) < clear {
			return false
		}
	}
	return true
}

// hatchPen is how wide strokes of hatching are, and how close they may come.
func (d *drawing) hatchPen() (width, closest float64) {
	if d.theme.gap > 0 {
		width := float64(d.theme.mark.width)
		return width, math.Ceil(d.theme.gap + width)
	}
	return d.mm(hatchWidth), d.mm(hatchClosest)
}
