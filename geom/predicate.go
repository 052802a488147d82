package geom

// Side is 1 when p lies left of l, -1 when right of it and 0 when on it.
func (l Line) Side(p Point) int { return l.Across(p).Sign() }

// Across is positive when p lies left of l, negative when right of it and 0 when on it.
func (l Line) Across(p Point) Real { return l.D.Cross(p.Sub(l.P)) }

// Contains tells whether p lies on the straight, its ends included.
func (s Straight) Contains(p Point) bool {
	return s.Holds(p) && s.Reaches(p)
}

// Reaches tells whether p, a point of the line, is not past an end.
func (s Straight) Reaches(p Point) bool {
	if s.Start != nil && p.Sub(*s.Start).Dot(s.D).Sign() < 0 {
		return false
	}
	return s.End == nil || p.Sub(*s.End).Dot(s.D).Sign() <= 0
}

// Holds tells whether p lies on l.
func (l Line) Holds(p Point) bool { return l.Across(p).IsZero() }

// Holds tells whether p lies on the rim of c.
func (c Circle) Holds(p Point) bool { return Dist2(p, c.C).Equal(c.R2) }

// Side is 1 when p lies outside c, -1 when inside and 0 when on it.
func (c Circle) Side(p Point) int { return Dist2(p, c.C).Cmp(c.R2) }

// Parallel tells whether l and m have one direction, or opposite ones; a line
// is parallel to itself.
func Parallel(l, m Line) bool { return l.D.Cross(m.D).IsZero() }

// Perpendicular tells whether l and m are at right angles.
func Perpendicular(l, m Line) bool { return l.D.Dot(m.D).IsZero() }

// Collinear tells whether all points lie on one line.
func Collinear(ps ...Point) bool {
	first := ps[0]
	var l *Line
	for _, p := range ps[1:] {
		switch {
		case l != nil:
			if !l.Holds(p) {
				return false
			}
		case !p.Equal(first):
			m := Through(first, p)
			l = &m
		}
	}
	return true
}

// Concyclic tells whether all points lie on one circle; three that are not on
// a line always do.
func Concyclic(ps ...Point) bool {
	c, ok := CircleThrough(ps)
	if !ok {
		return false
	}
	for _, p := range ps {
		if !c.Holds(p) {
			return false
		}
	}
	return true
}

// CircleThrough is the circle through the first three of the points that are
// three places; false when there are no such three, or they are on a line.
func CircleThrough(ps []Point) (Circle, bool) {
	var three []Point
	for _, p := range ps {
		fresh := true
		for _, q := range three {
			fresh = fresh && !p.Equal(q)
		}
		if fresh {
			three = append(three, p)
		}
		if len(three) == 3 {
			return Circumcircle(three[0], three[1], three[2])
		}
	}
	return Circle{}, false
}

// Circumcircle is the circle through three points; false when they are on a line.
func Circumcircle(a, b, c Point) (Circle, bool) {
	u, v := b.Sub(a), c.Sub(a)
	d := u.Cross(v).MulInt(2)
	if d.IsZero() {
		return Circle{}, false
	}
	u2, v2 := u.Norm2(), v.Norm2()
	w := Vector{
		v.Y.Mul(u2).Sub(u.Y.Mul(v2)).Div(d),
		u.X.Mul(v2).Sub(v.X.Mul(u2)).Div(d),
	}
	return Circle{a.Add(w), w.Norm2()}, true
}

// Between tells whether p lies strictly between a and b on the line through them.
func Between(p, a, b Point) bool {
	return Collinear(a, b, p) && p.Sub(a).Dot(p.Sub(b)).Sign() < 0
}

// Beyond tells whether p lies on the line from a to b, past b.
func Beyond(p, a, b Point) bool {
	return Collinear(a, b, p) && p.Sub(b).Dot(b.Sub(a)).Sign() > 0
}

// SignedArea2 is twice the area of the polygon, positive when it runs anticlockwise.
func SignedArea2(ps []Point) Real {
	sum := ps[0].X.Field().Int(0)
	for i := 1; i+1 < len(ps); i++ {
		sum = sum.Add(ps[i].Sub(ps[0]).Cross(ps[i+1].Sub(ps[0])))
	}
	return sum
}

// Place tells where p lies to a polygon: 1 outside, 0 on its rim, -1 inside,
// by the number of edges that a level way to the right crosses.
func Place(p Point, ps []Point) int {
	inside := false
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if !a.Equal(b) && Join(a, b).Contains(p) {
			return 0
		}
		upA, upB := a.Y.Cmp(p.Y) > 0, b.Y.Cmp(p.Y) > 0
		if upA != upB && (Through(a, b).Side(p) > 0) == upB {
			inside = !inside
		}
	}
	if inside {
		return -1
	}
	return 1
}

// Simple tells whether the polygon's edges meet only at shared corners.
func Simple(ps []Point) bool {
	n := len(ps)
	for i := range ps {
		if ps[i].Equal(ps[(i+1)%n]) {
			return false
		}
	}
	for i := range ps {
		for j := i + 1; j < n; j++ {
			if touching(ps, i, j) {
				return false
			}
		}
	}
	return true
}

// touching tells whether edges i < j share more than the corner that neighbours must.
func touching(ps []Point, i, j int) bool {
	n := len(ps)
	a, b, c, d := ps[i], ps[(i+1)%n], ps[j], ps[(j+1)%n]
	switch {
	case j == i+1:
		return Join(a, b).Contains(d) || Join(c, d).Contains(a)
	case (j+1)%n == i:
		return Join(a, b).Contains(c) || Join(c, d).Contains(b)
	}
	ab, cd := Through(a, b), Through(c, d)
	return ab.Side(c)*ab.Side(d) <= 0 && cd.Side(a)*cd.Side(b) <= 0 &&
		(!Parallel(ab, cd) || Join(a, b).Contains(c) || Join(a, b).Contains(d) || Join(c, d).Contains(a))
}
