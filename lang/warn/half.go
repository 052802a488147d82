package warn

import (
	"cmp"
	"math"
	"slices"

	"trammel/geom"
)

// nearlyHalved are joins that a point on them looks as if it halved.
func (f *finder) nearlyHalved() {
	for _, s := range f.straights {
		for _, p := range f.points {
			if s.length > 0 && s.a >= 0 && p.slot != s.a && p.slot != s.b && s.alongside(p) {
				f.halved(s, p)
			}
		}
	}
}

func (f *finder) halved(s straight, p point) {
	away := math.Abs((p.x-s.x)*s.dy - (p.y-s.y)*s.dx)
	at := s.along(p.x, p.y) - s.lo
	off := math.Abs(2*at - s.length)
	if away > nearLine || off > nearSize*s.length || f.joined(s.a, p.slot) && f.joined(p.slot, s.b) {
		return // parts that are drawn are compared as lengths
	}
	m, a, b := f.point(p.slot), f.point(s.a), f.point(s.b)
	if !surely(func() bool { return !geom.Dist2(m, a).Equal(geom.Dist2(m, b)) }) {
		return
	}
	f.looks(f.span(p.slot), []int{p.slot, s.slot}, otherMeasurements,
		"%s looks like the midpoint of %s and is not: its parts differ by %s mm", p.name, s.name, little(off))
}

// arm is a straight that leaves a point.
type arm struct {
	straight
	angle float64 // of its way, in degrees
	way   geom.Vector
}

// narrow is the angle in degrees under which nobody compares two.
const narrow = 8

// nearlyBisected are angles that the next arm at their vertex looks as if it halved.
func (f *finder) nearlyBisected() {
	for _, p := range f.points {
		arms := f.arms(p)
		for i := range arms {
			if n := len(arms); n > 2 {
				f.bisected(p, arms[i], arms[(i+1)%n], arms[(i+2)%n])
			}
		}
	}
}

// arms are the joins and rays that end at a point, in the order of their ways.
func (f *finder) arms(p point) (arms []arm) {
	for _, s := range f.straights {
		if s.a != p.slot && s.b != p.slot || math.IsInf(s.lo, 0) && math.IsInf(s.hi, 0) {
			continue
		}
		way := f.point(s.a + s.b - p.slot).Sub(f.point(p.slot))
		arms = append(arms, arm{s, math.Atan2(way.Y.Float(), way.X.Float()) * 180 / math.Pi, way})
	}
	slices.SortStableFunc(arms, func(a, b arm) int { return cmp.Compare(a.angle, b.angle) })
	return arms
}

// bisected looks at three neighbouring arms.
func (f *finder) bisected(p point, a, m, b arm) {
	first, second := math.Mod(m.angle-a.angle+360, 360), math.Mod(b.angle-m.angle+360, 360)
	if min(first, second) < narrow || first+second >= 180 || math.Abs(first-second) > nearAngle {
		return
	}
	halves := func() bool {
		return a.way.Cross(m.way).Mul(m.way.Dot(b.way)).Equal(m.way.Cross(b.way).Mul(a.way.Dot(m.way)))
	}
	if !surely(func() bool { return !halves() }) {
		return
	}
	later := max(a.slot, m.slot, b.slot)
	f.looks(f.span(later), []int{a.slot, m.slot, b.slot}, otherMeasurements,
		"%s looks as if it halved the angle of %s and %s at %s: the halves differ by %s°", m.name, a.name, b.name, p.name, little(math.Abs(first-second)))
}
