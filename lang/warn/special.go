package warn

import (
	"math"

	"trammel/geom"
	"trammel/lang/program"
)

// Special lists what is exactly equal, perpendicular or parallel among the
// straights of a run that the reader sees: "AB = BC". With other measurements
// some of it is so still, and the rest was luck.
func Special(st *program.State) map[string]bool {
	defer trusting(st.Field)()
	f := &finder{st: st, mm: millimetres(st)}
	f.collect()
	all := map[string]bool{}
	for i, s := range f.straights {
		for _, t := range f.straights[:i] {
			if relation := f.special(t, s); relation != "" {
				all[t.name+relation+s.name] = true
			}
		}
	}
	return all
}

// special is " = ", " ⟂ " or " ∥ " where that holds of two straights.
func (f *finder) special(s, t straight) string {
	const close = 1e-6 // worth deciding exactly
	cross, dot := math.Abs(s.dx*t.dy-s.dy*t.dx), math.Abs(s.dx*t.dx+s.dy*t.dy)
	ends := s.length > 0 && t.length > 0 && s.a >= 0 && t.a >= 0
	switch {
	case ends && math.Abs(s.length-t.length) < close && surely(func() bool {
		return geom.Dist2(f.point(s.a), f.point(s.b)).Equal(geom.Dist2(f.point(t.a), f.point(t.b)))
	}):
		return " = "
	case dot < close && surely(func() bool { return geom.Perpendicular(f.line(s), f.line(t)) }):
		return " ⟂ "
	case cross < close && surely(func() bool { return geom.Parallel(f.line(s), f.line(t)) }):
		return " ∥ "
	}
	return ""
}
