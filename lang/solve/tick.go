package solve

import "math"

// slipped objects to a meeting without a letter that is so near to another point that their
// ticks read as one, or as a slip of the compasses; gently, if they are only near.
func (j *judge) slipped(way, limit float64) float64 {
	sum := 0.1 * short(way, limit)
	if !j.lenient {
		sum += j.strikes(way)
	}
	return sum
}

// strikes is what a tick costs so far from what it does not mean.
func (j *judge) strikes(way float64) float64 { return min(2.5*short(way, slip*j.s.hand), mistaken) }

// How far ticks are clear of that, as a part of a plain hand's reach, and the most that it costs.
const (
	slip     = 0.034
	mistaken = 0.35
)

// halving objects to a meeting without a letter about the middle of a join, where marks
// stand.
func (j *judge) halving(slot int, t *thing, line int, l *thing) float64 {
	middle := (l.lo + l.hi) / 2
	if !t.hidden || l.a < 0 || math.IsInf(l.lo, 0) || math.IsInf(l.hi, 0) {
		return 0
	}
	cost := j.strikes(math.Abs(l.along(t.x, t.y) - middle))
	if cost == 0 || j.kept(nearMiddle, slot, line, cost) {
		return 0
	}
	return cost
}
