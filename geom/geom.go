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
