package geom

// Similar moves, turns and scales ps so that ps[i] comes to p and ps[j] to q;
// orientation is kept. ps[i] and ps[j] must differ.
func Similar(ps []Point, i, j int, p, q Point) []Point {
	base := ps[j].Sub(ps[i])
	way := q.Sub(p)
	n := base.Norm2()
	cos, sin := base.Dot(way).Div(n), base.Cross(way).Div(n)
	return place(ps, ps[i], p, func(v Vector) Vector { return v.Turn(cos, sin) })
}

// Shift moves ps so that ps[i] comes to p.
func Shift(ps []Point, i int, p Point) []Point {
	return place(ps, ps[i], p, func(v Vector) Vector { return v })
}

// Flip mirrors ps in the line through ps[i] and ps[j].
func Flip(ps []Point, i, j int) []Point {
	l := Through(ps[i], ps[j])
	out := make([]Point, len(ps))
	for k, p := range ps {
		out[k] = p
		if k != i && k != j {
			out[k] = l.Mirror(p)
		}
	}
	return out
}

func place(ps []Point, from, to Point, move func(Vector) Vector) []Point {
	out := make([]Point, len(ps))
	for k, p := range ps {
		out[k] = to.Add(move(p.Sub(from)))
	}
	return out
}
