package slip

import (
	"math"
	"slices"

	"trammel/geom/figure"
	"trammel/lang/program"
)

// still is how little, in units, a result may move to have no band.
const still = 1e-6

// band is what all the slipped drawings of a result cover; false if none moves it.
func (r *run) band(x *result) (figure.Band, bool) {
	b := figure.Band{Of: r.program.Slots[x.slot].Name}
	switch x.home.kind {
	case program.Point:
		var places []figure.XY
		for _, s := range x.seen {
			places = append(places, s.at)
		}
		b.Outline = hull(append(places, x.home.at))
		return b, len(b.Outline) > 2
	case program.Circle:
		return b, x.ring(&b)
	}
	return b, x.strip(&b)
}

// ring is between the nearest and the farthest that a slipped circle comes to
// the true centre.
func (x *result) ring(b *figure.Band) bool {
	b.Centre, b.Inner, b.Outer = x.home.at, x.home.radius, x.home.radius
	for _, s := range x.seen {
		d := math.Hypot(s.at.X-x.home.at.X, s.at.Y-x.home.at.Y)
		b.Inner, b.Outer = min(b.Inner, s.radius-d), max(b.Outer, s.radius+d)
	}
	b.Inner = max(b.Inner, 0)
	return b.Outer-b.Inner > still
}

// cuts is in how many parts the length of a straight is taken for its band.
const cuts = 16

// strip is what the slipped straights cover: on each of a row of places along
// the true one, from the rightmost to the leftmost. At the ends it goes on as far as
// an end may slip along.
func (x *result) strip(b *figure.Band) bool {
	lo, hi := x.home.lo, x.home.hi
	for _, s := range x.seen {
		lo = min(lo, x.home.along(s.place(s.lo, 0)))
		hi = max(hi, x.home.along(s.place(s.hi, 0)))
	}
	var right, left []figure.XY
	moves := false
	for i := range cuts + 1 {
		t := lo + float64((hi-lo)*float64(i)/cuts)
		low, high := x.offsets(t)
		moves = moves || high-low > still
		right, left = append(right, x.home.place(t, low)), append(left, x.home.place(t, high))
	}
	slices.Reverse(left)
	b.Outline = append(right, left...)
	return moves
}

// offsets are the least and the greatest distance to the left at which a slipped
// straight passes the place t along the true one.
func (x *result) offsets(t float64) (low, high float64) {
	for _, s := range x.seen {
		along := float64(s.way.X*x.home.way.X) + float64(s.way.Y*x.home.way.Y)
		if along < 0.1 {
			continue // it has turned out of all likeness
		}
		slope := (float64(s.way.Y*x.home.way.X) - float64(s.way.X*x.home.way.Y)) / along
		o := x.home.off(s.at) + float64(slope*(t-x.home.along(s.at)))
		low, high = min(low, o), max(high, o)
	}
	return low, high
}

// hull is the corners of the convex hull, anticlockwise (Andrew 1979).
func hull(ps []figure.XY) []figure.XY {
	slices.SortFunc(ps, func(a, b figure.XY) int {
		if a.X != b.X {
			return sign(a.X - b.X)
		}
		return sign(a.Y - b.Y)
	})
	half := func(ps []figure.XY) []figure.XY {
		var h []figure.XY
		for _, p := range ps {
			for len(h) > 1 && turn(h[len(h)-2], h[len(h)-1], p) <= still*still {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		return h[:len(h)-1]
	}
	lower := half(ps)
	slices.Reverse(ps)
	return append(lower, half(ps)...)
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// turn is positive where the way from a over b to c turns left.
func turn(a, b, c figure.XY) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y)) - float64((b.Y-a.Y)*(c.X-a.X))
}
