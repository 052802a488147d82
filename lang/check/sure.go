package check

import (
	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// reachesSurely tells a field that keeps formulas that a meeting is within the ends of
// curves, as it must be to be one.
func reachesSurely(p geom.Point, curves ...*program.Curve) {
	for _, c := range curves {
		if c.Straight == nil {
			continue
		}
		if s := c.Straight.Start; s != nil {
			p.Sub(*s).Dot(c.Straight.D).Sure()
		}
		if e := c.Straight.End; e != nil {
			e.Sub(p).Dot(c.Straight.D).Sure()
		}
	}
}

// surelyInside tells a field that keeps formulas what is positive as a point lies inside
// of a circle or a triangle.
func (s *scope) surelyInside(r *syntax.Ref) func(*program.State, geom.Point) {
	if r.Name != "" {
		slot, _ := s.circle(r)
		return func(st *program.State, p geom.Point) {
			k := st.Curve(slot).Circle
			k.R2.Sub(geom.Dist2(p, k.C)).Sure()
		}
	}
	ps, _ := s.polygon(r)
	return func(st *program.State, p geom.Point) {
		pts := st.Points(ps)
		if len(pts) != 3 || !st.Field.KeepsFormulas() {
			return
		}
		area := geom.SignedArea2(pts)
		for i, a := range pts {
			geom.Through(a, pts[(i+1)%3]).Across(p).Mul(area).Sure()
		}
	}
}
