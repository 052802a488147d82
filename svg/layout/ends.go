package layout

import "math"

// Ends of strokes in millimetres: an arc that would end so near to another end
// goes on a little, since the two would look like a corner.
const (
	endsApart  = 1.0
	endFurther = 1.5
	endTries   = 3
)

// easeEnds lengthens the arcs whose ends would make a corner with the ends of
// other strokes.
func (d *drawing) easeEnds(all []rounded) {
	ends := tips{}
	for _, s := range d.strokes {
		if g, ok := s.curve.(segment); ok {
			ends.add(g.a, -1)
			ends.add(g.b, -1)
		}
	}
	for i, k := range all {
		for _, s := range k.spans {
			ends.add(k.point(s.lo), i)
			ends.add(k.point(s.hi), i)
		}
	}
	for i, k := range all {
		for j := range k.spans {
			if s := &k.spans[j]; k.free && s.hi-s.lo < float64(allRound*k.r) {
				s.lo = ends.ease(k, s.lo, -d.mm(endFurther), i, d.mm(endsApart))
				s.hi = ends.ease(k, s.hi, d.mm(endFurther), i, d.mm(endsApart))
			}
		}
	}
}

// tips are the ends of strokes by the square of paper that they lie in.
type tips map[[2]int][]tip

// tip is an end and the index of its circle, -1 for a straight's.
type tip struct {
	at    vec
	owner int
}

const tipCell = 2 * mm

func (t tips) cell(p vec) [2]int {
	return [2]int{int(math.Floor(p.x / tipCell)), int(math.Floor(p.y / tipCell))}
}

// mostTips bounds the ends that are remembered of one square.
const mostTips = 40

func (t tips) add(p vec, owner int) {
	if c := t.cell(p); len(t[c]) < mostTips {
		t[c] = append(t[c], tip{p, owner})
	}
}

// ease moves an end on until no other one is near.
func (t tips) ease(k rounded, end, step float64, owner int, apart float64) float64 {
	at := end
	for range endTries {
		if !t.crowded(k.point(at), owner, apart) {
			break
		}
		at += step
	}
	if at != end {
		t.add(k.point(at), owner)
	}
	return at
}

func (t tips) crowded(p vec, but int, apart float64) bool {
	lo, hi := t.cell(p.sub(vec{apart, apart})), t.cell(p.add(vec{apart, apart}))
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for _, o := range t[[2]int{x, y}] {
				if o.owner != but && o.at.dist(p) < apart {
					return true
				}
			}
		}
	}
	return false
}
