package geom

// Bisector is the line of all points equally far from a and b, which must
// differ; it runs to the left of the way from a to b (Euclid I.10 and I.11).
func Bisector(a, b Point) Line { return Line{Midpoint(a, b), b.Sub(a).Left()} }

// Equidistant is the lines of all points equally far from l and m: the two
// bisectors of lines that cross, first the one between their directions, or
// the one line midway between parallels. One line has none of its own.
func Equidistant(l, m Line) ([]Line, error) {
	p, err := MeetLines(l, m)
	switch {
	case err == nil:
		v := HalfWay(l.D, m.D)
		return []Line{{p, v}, {p, v.Left()}}, nil
	case l.Holds(m.P):
		return nil, err
	}
	return []Line{{Midpoint(l.P, m.P), l.D}}, nil
}

// HalfWay is a vector that halves the angle from v to w, which must not be
// opposite: |v|·w + |w|·v, times |v| to save a root.
func HalfWay(v, w Vector) Vector {
	v2, w2 := v.Norm2(), w.Norm2()
	return v.Scale(v2.Mul(w2).Sqrt()).add(w.Scale(v2))
}

// Beside is the line at the distance d to the left of l, with its direction.
func Beside(l Line, d Real) Line { return Line{Along(l.P, l.D.Left(), d), l.D} }

// Rim is the curve of all points at the distance R from a straight that has an
// end: two parallels, and a half circle about each end.
type Rim struct {
	Spine Straight
	R     Real
}

// Sides are the straight parts, the left one first; they run as the spine does.
func (r Rim) Sides() [2]Straight {
	way := r.Spine.D.Left()
	return [2]Straight{r.side(way), r.side(way.Neg())}
}

func (r Rim) side(way Vector) Straight {
	s := Straight{Line: Line{Along(r.Spine.P, way, r.R), r.Spine.D}}
	if r.Spine.Start != nil {
		p := Along(*r.Spine.Start, way, r.R)
		s.Start = &p
	}
	if r.Spine.End != nil {
		p := Along(*r.Spine.End, way, r.R)
		s.End = &p
	}
	return s
}

// Cap is a half circle of a rim, anticlockwise from its first end to its second.
type Cap struct {
	Circle
	Ends [2]Point
}

// Caps are the half circles about the ends that the spine has.
func (r Rim) Caps() []Cap {
	var caps []Cap
	left, right := r.Sides()[0], r.Sides()[1]
	if s := r.Spine.Start; s != nil {
		caps = append(caps, Cap{Circle{*s, r.R.Mul(r.R)}, [2]Point{*left.Start, *right.Start}})
	}
	if e := r.Spine.End; e != nil {
		caps = append(caps, Cap{Circle{*e, r.R.Mul(r.R)}, [2]Point{*right.End, *left.End}})
	}
	return caps
}
