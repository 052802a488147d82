// Package geom holds the exact plane: points, directed lines, circles, where
// they meet, and what is true of them. It knows no source and no ink; every
// answer is exact.
package geom

import "trammel/geom/exact"

// Real is an exact constructible number.
type Real = *exact.Real

// Point is a place; coordinates are in units, Y upwards.
type Point struct{ X, Y Real }

// Vector is a difference of points.
type Vector struct{ X, Y Real }

// Line is a whole line with a direction: through P along D, D never zero.
type Line struct {
	P Point
	D Vector
}

// Circle has a centre and the square of its radius, which is positive.
type Circle struct {
	C  Point
	R2 Real
}

// Straight is a line, or the part of one from Start to End along its
// direction; a nil end runs on.
type Straight struct {
	Line
	Start, End *Point
}

// Sub is the way from q to p.
func (p Point) Sub(q Point) Vector { return Vector{p.X.Sub(q.X), p.Y.Sub(q.Y)} }

// Add is the point reached from p by v.
func (p Point) Add(v Vector) Point { return Point{p.X.Add(v.X), p.Y.Add(v.Y)} }

// Equal tells whether p and q are one place.
func (p Point) Equal(q Point) bool {
	if p.X.Field().KeepsFormulas() {
		return p.Sub(q).Norm2().IsZero()
	}
	return p.X.Equal(q.X) && p.Y.Equal(q.Y)
}

// Dot is the scalar product.
func (v Vector) Dot(w Vector) Real { return v.X.Mul(w.X).Add(v.Y.Mul(w.Y)) }

// Cross is the signed area of the parallelogram from v to w, positive for a left turn.
func (v Vector) Cross(w Vector) Real { return v.X.Mul(w.Y).Sub(v.Y.Mul(w.X)) }

// Norm2 is the square of the length.
func (v Vector) Norm2() Real { return v.X.Mul(v.X).Add(v.Y.Mul(v.Y)) }

// Scale is k times v.
func (v Vector) Scale(k Real) Vector { return Vector{v.X.Mul(k), v.Y.Mul(k)} }

// Neg is v turned back.
func (v Vector) Neg() Vector { return Vector{v.X.Neg(), v.Y.Neg()} }

// Left is v turned by a right angle to the left.
func (v Vector) Left() Vector { return Vector{v.Y.Neg(), v.X} }

// Turn is v turned to the left by the angle whose cosine and sine are given.
func (v Vector) Turn(cos, sin Real) Vector {
	return v.Scale(cos).add(v.Left().Scale(sin))
}

func (v Vector) add(w Vector) Vector { return Vector{v.X.Add(w.X), v.Y.Add(w.Y)} }

// Dist2 is the square of the distance.
func Dist2(p, q Point) Real { return p.Sub(q).Norm2() }

// Dist is the distance.
func Dist(p, q Point) Real { return Dist2(p, q).Sqrt() }

// Through is the line from p to q; the points must differ.
func Through(p, q Point) Line { return Line{p, q.Sub(p)} }

// Join is the straight from p to q; the points must differ.
func Join(p, q Point) Straight { return Straight{Through(p, q), &p, &q} }

// Whole is the line that s is part of.
func (s Straight) Whole() Straight { return Straight{Line: s.Line} }

// Midpoint halves the way from p to q.
func Midpoint(p, q Point) Point {
	two := p.X.Field().Int(2)
	return Point{p.X.Add(q.X).Div(two), p.Y.Add(q.Y).Div(two)}
}

// Along is the point at distance d from p in the direction of v.
func Along(p Point, v Vector, d Real) Point {
	return p.Add(v.Scale(d.Div(v.Norm2().Sqrt())))
}

// Foot is the point of l nearest to p.
func (l Line) Foot(p Point) Point {
	return l.P.Add(l.D.Scale(p.Sub(l.P).Dot(l.D).Div(l.D.Norm2())))
}

// Mirror is p reflected in l.
func (l Line) Mirror(p Point) Point {
	f := l.Foot(p)
	return f.Add(f.Sub(p))
}
