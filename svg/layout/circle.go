package layout

import (
	"math"
	"slices"
	"sort"

	"trammel/geom/figure"
)

// An arc goes a little over its meetings; those that lie closer than oneSweep
// are joined by one sweep of the compass, and an arc that would go farther
// round than allRound is drawn as the whole circle. Two arcs that meet twice
// are struck at each meeting alone, unless the lens between is short.
const (
	arcOver  = 3.5 // mm past a meeting
	longLens = 20  // mm
	oneSweep = figure.OneSweep
	allRound = 300 * math.Pi / 180
)

// rounded is a circle on the paper with the spans that are drawn, in
// micrometres along it from its rightmost point.
type rounded struct {
	owner *figure.Thing
	c     vec
	r     float64
	spans []span
	free  bool // the ends are where the compass happened to be lifted
	pen
}

// drawCircles inks every circle and arc once, as drawStraights does.
func (d *drawing) drawCircles() {
	d.record.circles = d.roundAll()
	d.inkCircles(d.record.circles)
}

func (d *drawing) inkCircles(all []rounded) {
	for i, k := range all {
		var covers []span
		for j, o := range all {
			if i != j && (o.outranks(k.pen) || j < i && !k.outranks(o.pen)) && k.c.dist(o.c) < touching && math.Abs(k.r-o.r) < touching {
				covers = append(covers, o.laps()...)
			}
		}
		for _, s := range k.spans {
			for _, s := range s.uncovered(covers) {
				d.ink(arc{k.c, k.r, turn(s.lo / k.r), sweepOf(s, k.r)}, k.owner)
			}
		}
	}
}

// sweepOf is the angle of a span along the rim. What lacks less than a
// micrometre of the full way is all of it: an arc whose ends coincide would vanish.
func sweepOf(s span, r float64) float64 {
	if s.hi-s.lo > float64(fullway*r)-1 {
		return fullway
	}
	return (s.hi - s.lo) / r
}

// laps are the spans of k once more a turn earlier and a turn later, so that
// they cover those that run through the start of the count.
func (k rounded) laps() []span {
	var laps []span
	for _, s := range k.spans {
		for _, lap := range []float64{-1, 0, 1} {
			off := lap * fullway * k.r
			laps = append(laps, span{s.lo + off, s.hi + off})
		}
	}
	return laps
}

func (d *drawing) roundAll() []rounded {
	d.strike()
	var all []rounded
	for _, c := range d.fig.Circles {
		if c.Hidden {
			continue
		}
		k := rounded{owner: &c.Thing, c: d.place(c.Circle.C), free: c.Part == nil}
		k.pen, _ = d.theme.ink(&c.Thing)
		k.r = math.Round(float64(math.Sqrt(c.Circle.R2.Float()) * d.scale))
		for _, s := range d.sweeps(c, k) {
			k.spans = append(k.spans, span{float64(s.lo * k.r), float64(s.hi * k.r)})
		}
		all = append(all, k)
	}
	d.easeEnds(all)
	return all
}

func (k rounded) point(along float64) vec { return k.c.add(way(along / k.r).times(k.r)) }

// sweeps are the angles through which c is drawn.
func (d *drawing) sweeps(c *figure.Circle, k rounded) []span {
	switch {
	case c.Part != nil:
		from := d.place(c.Part[0]).sub(k.c).angle()
		return []span{{from, from + turn(d.place(c.Part[1]).sub(k.c).angle()-from)}}
	case c.Whole || len(c.Used) == 0:
		return []span{{0, fullway}}
	}
	angles := make([]float64, len(c.Used))
	used := make(map[float64]vec, len(c.Used))
	for i, p := range c.Used {
		angles[i] = d.place(p).sub(k.c).angle()
		used[angles[i]] = d.place(p)
	}
	lens := func(from, to float64) bool {
		return c.Role == figure.Construction && float64(turn(to-from)*k.r) > d.mm(longLens) && d.twin(k.c, used[from], used[to])
	}
	return compass(angles, min(d.mm(arcOver)/k.r, math.Pi/3), lens)
}

// mostStruck bounds the arcs through one meeting that are looked at.
const mostStruck = 100

// twin tells whether an arc about another centre is used at both places.
func (d *drawing) twin(c, p, q vec) bool {
	through := d.struck[p]
	for _, i := range d.struck[q] {
		if _, ok := slices.BinarySearch(through, i); ok && d.centres[i] != c {
			return true
		}
	}
	return false
}

// strike notes of each meeting which arcs are used there.
func (d *drawing) strike() {
	d.struck = map[vec][]int{}
	for i, c := range d.fig.Circles {
		d.centres = append(d.centres, d.place(c.Circle.C))
		if c.Hidden || c.Whole || c.Part != nil {
			continue
		}
		for _, p := range c.Used {
			at := d.place(p)
			if list := d.struck[at]; len(list) == 0 || len(list) < mostStruck && list[len(list)-1] != i {
				d.struck[at] = append(list, i)
			}
		}
	}
}

// compass sweeps through the angles, over at each end, but not from one to the
// next where they are the ends of a lens.
func compass(angles []float64, over float64, lens func(from, to float64) bool) []span {
	sort.Float64s(angles)
	first := afterWidestGap(angles)
	var sweeps []span
	total, last := 0.0, 0.0
	for i := range angles {
		a := angles[(first+i)%len(angles)]
		if first+i >= len(angles) {
			a += fullway
		}
		n := len(sweeps)
		if n > 0 && a-over-sweeps[n-1].hi < max(oneSweep-2*over, 0) && !lens(last, angles[(first+i)%len(angles)]) {
			total += a + over - sweeps[n-1].hi
			sweeps[n-1].hi = a + over
		} else {
			total += 2 * over
			sweeps = append(sweeps, span{a - over, a + over})
		}
		last = angles[(first+i)%len(angles)]
	}
	if total > allRound {
		return []span{{0, fullway}}
	}
	return sweeps
}

// afterWidestGap is the index of the angle that ends the widest gap.
func afterWidestGap(angles []float64) int {
	last := len(angles) - 1
	first, widest := 0, angles[0]+fullway-angles[last]
	for i := 1; i <= last; i++ {
		if gap := angles[i] - angles[i-1]; gap > widest {
			first, widest = i, gap
		}
	}
	return first
}
