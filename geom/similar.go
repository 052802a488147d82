package geom

import "slices"

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

// EitherSign is 1; to a field that keeps formulas -1 as well, in other figures. n is any number over 0.
func EitherSign(n Real) Real {
	f := n.Field()
	if !f.KeepsFormulas() {
		return f.Int(1)
	}
	return n.Mul(n).EitherSqrt().Div(n)
}

// OnEitherSide is ps, in other figures mirrored in the line through ps[i] and ps[j].
func OnEitherSide(ps []Point, i, j int) []Point {
	l := Through(ps[i], ps[j])
	if !l.D.X.Field().KeepsFormulas() {
		return ps
	}
	sign, out := EitherSign(l.D.Norm2()), slices.Clone(ps)
	for k, p := range ps {
		if k != i && k != j {
			foot := l.Foot(p)
			out[k] = foot.Add(p.Sub(foot).Scale(sign))
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
