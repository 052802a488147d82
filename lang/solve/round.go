package solve

import "math"

// By which parts of its radius a straight is clear of a whole circle's centre, and of being
// its tangent; and the sine of the angle under which it crosses plainly.
const (
	offCentre  = 0.4
	offTangent = 0.06
	crosses    = 0.6
)

// rounded objects to a straight that looks as if it went through the centre of a whole
// circle or touched it, and does not, for all circles.
func (j *judge) rounded(line int) float64 {
	sum := 0.0
	for k, c := range j.rings.there() {
		if c.x == c.x {
			sum += j.passing(line, j.circles[k])
		}
	}
	return sum
}

// rounds is that for a circle, and all straights that are not mine.
func (j *judge) rounds(ring int) float64 {
	sum := 0.0
	for k, l := range j.lines.there() {
		if line := j.straights[k]; l.x == l.x && j.is[line] == notMine {
			sum += j.passing(line, ring)
		}
	}
	return sum
}

// passing is that for a straight and a circle.
func (j *judge) passing(line, ring int) float64 {
	l, c := &j.slots[line], &j.slots[ring]
	straight := l.spot()
	off, at := straight.off(c.x, c.y)/c.r, l.along(c.x, c.y)
	switch {
	case !j.s.p.Slots[line].Top || !j.s.p.Slots[ring].Top || !c.whole || off > 1+offTangent || off < 1e-9 || math.Abs(off-1) < 1e-9:
		return 0
	case off < offCentre:
		if l.lo < at && at < l.hi && j.seen(c) && !j.kept(nearCentre, line, ring, off) {
			return 1.2 * short(off, offCentre)
		}
	case off > 1:
		if l.lo < at && at < l.hi && !j.kept(nearTangent, line, ring, off) {
			return 0.6 * short(off-1, offTangent)
		}
	default:
		sine := math.Sqrt(1 - off*off)
		if half := sine * c.r; (l.reaches(at-half) || l.reaches(at+half)) && sine < crosses && !j.kept(nearTangent, line, ring, off) {
			return 1.5 * short(sine, crosses)
		}
	}
	return 0
}

// reaches tells whether a straight is drawn so far along.
func (t *thing) reaches(at float64) bool { return t.lo-1e-9 <= at && at <= t.hi+1e-9 }

// seen tells whether a circle's centre is a point that has a letter.
func (j *judge) seen(c *thing) bool {
	for k, p := range j.dots.there() {
		if same(p.x, c.x) && same(p.y, c.y) && !j.slots[j.points[k]].hidden {
			return true
		}
	}
	return false
}
