package solve

import "math"

// corners objects to what a join makes with others: a corner that is hardly
// one, and what looks equal, parallel or at right angles and is not; and to a line
// that looks parallel or at right angles to a join.
func (j *judge) corners(slot int, t *thing) float64 {
	if t.a < 0 && !t.line {
		return 0
	}
	sum := 0.0
	if !t.line {
		sum += j.tilt(slot, t)
	}
	for _, other := range j.joins {
		o := &j.slots[other]
		switch {
		case other == slot || o.kind != straight || j.is[other] != notMine && other < slot:
		case t.line:
			sum += j.falseTurn(slot, other, t, o)
		default:
			sum += j.sharpness(t, o) + j.falseLikeness(slot, other, t, o)
		}
	}
	if t.line {
		return sum
	}
	for _, other := range j.others {
		if o := &j.slots[other]; o.kind == straight && (j.is[other] == notMine || other > slot) {
			sum += j.falseTurn(slot, other, t, o)
		}
	}
	return sum
}

// tilted is the sine of an angle under which a join that is not level or upright looks as if
// it had been meant to be.
const tilted = 0.06

// tiltedChord is that for a chord between points that are left to chance on a circle. It
// is no better if it is exactly level or upright: that is an accident.
const tiltedChord = 0.11

// tilt objects to a join that lies all but level, or stands all but upright.
func (j *judge) tilt(slot int, t *thing) float64 {
	off := min(math.Abs(t.dx), math.Abs(t.dy))
	switch {
	case t.a >= 0 && j.seats[t.a] && j.seats[t.b]:
		return 1.8 * short(off, tiltedChord)
	case off < 1e-9 || off > tilted:
		return 0
	}
	return 0.8 * short(off, tilted)
}

// sharpness grows as the corner that two joins share closes up.
func (j *judge) sharpness(t, o *thing) float64 {
	corner, p, q := t.a, t.b, o.b
	switch {
	case t.a == o.a:
	case t.a == o.b:
		q = o.a
	case t.b == o.a:
		corner, p = t.b, t.a
	case t.b == o.b:
		corner, p, q = t.b, t.a, o.a
	default:
		return 0
	}
	v, a, b := &j.slots[corner], &j.slots[p], &j.slots[q]
	if v.kind != point || a.kind != point || b.kind != point {
		return 0
	}
	ux, uy, wx, wy := a.x-v.x, a.y-v.y, b.x-v.x, b.y-v.y
	angle := math.Abs(math.Atan2(ux*wy-uy*wx, ux*wx+uy*wy)) * 180 / math.Pi
	if angle > 1e-6 {
		return short(angle, 30)
	}
	return 0
}

// falseLikeness objects to two joins that look equal, parallel or at right
// angles and are not, or are so by accident.
func (j *judge) falseLikeness(slot, other int, t, o *thing) float64 {
	sum := j.falseTurn(slot, other, t, o)
	if m, n := j.length(t), j.length(o); m > 0 && n > 0 {
		sum += j.likely(equalJoins, slot, other, math.Abs(m-n)/max(m, n))
	}
	return sum
}

// falseTurn objects to two straights that look parallel or at right angles and are not.
func (j *judge) falseTurn(slot, other int, t, o *thing) float64 {
	cross, dot := turns(t, o)
	return j.likely(parallelJoins, slot, other, cross) + j.likely(rightJoins, slot, other, dot)
}

// unclear is the sine of an angle, or the part of a length, that the eye does
// not see.
const unclear = 0.022

// likely objects to an amount that is nearly 0, or 0 by accident.
func (j *judge) likely(what, slot, other int, off float64) float64 {
	switch {
	case off < 1e-9:
		return j.accident(what, slot, other)
	case off < 0.065:
		return 0.45 * short(max(0, off-unclear), 0.065-unclear)
	}
	return 0
}

// length is a join's, 0 for what runs on and where an end is missing.
func (j *judge) length(t *thing) float64 {
	if math.IsInf(t.lo, -1) || math.IsInf(t.hi, 1) {
		return 0
	}
	a, b := &j.slots[t.a], &j.slots[t.b]
	if a.kind != point || b.kind != point {
		return 0
	}
	return math.Hypot(a.x-b.x, a.y-b.y)
}
