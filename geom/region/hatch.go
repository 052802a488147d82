package region

import "math"

// Stroke is a straight stroke in units.
type Stroke struct{ X1, Y1, X2, Y2 float64 }

// most is how many strokes' ways are tried at most over a box.
const most = 4000

// Hatch covers what of the region lies in the box with strokes at the angle to
// the x axis. They lie on lines that are so far apart and fixed in the plane, so
// that neighbouring areas hatched alike are of a piece; none goes through the
// origin, where borders at that angle like to pass.
func (r Region) Hatch(b Box, angle, apart float64) []Stroke {
	if !(b.Left < b.Right && b.Bottom < b.Top) {
		return nil
	}
	along := xy{math.Cos(angle), math.Sin(angle)}
	across := xy{-along.y, along.x}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range b.corners() {
		d := across.dot(c)
		lo, hi = min(lo, d), max(hi, d)
	}
	apart = max(apart, (hi-lo)/most)
	var strokes []Stroke
	for k := math.Ceil(lo/apart-0.5) + 0.5; float64(k*apart) <= hi; k++ {
		w := way{across.times(k * apart), along}
		for _, s := range r.Along(w.from.x, w.from.y, angle) {
			if s = b.clip(w, s); s.Lo < s.Hi {
				p, q := w.at(s.Lo), w.at(s.Hi)
				strokes = append(strokes, Stroke{p.x, p.y, q.x, q.y})
			}
		}
	}
	return strokes
}

func (b Box) corners() [4]xy {
	return [4]xy{{b.Left, b.Bottom}, {b.Right, b.Bottom}, {b.Right, b.Top}, {b.Left, b.Top}}
}

// clip keeps what of a stretch lies in the box (Liang and Barsky); the way is
// along neither axis.
func (b Box) clip(w way, s Span) Span {
	for _, side := range [2][4]float64{
		{w.from.x, w.along.x, b.Left, b.Right},
		{w.from.y, w.along.y, b.Bottom, b.Top},
	} {
		in, out := (side[2]-side[0])/side[1], (side[3]-side[0])/side[1]
		s = Span{max(s.Lo, min(in, out)), min(s.Hi, max(in, out))}
	}
	return s
}
