package figure

// Band is where a result of the figure may lie when the drawing slips a little.
// It is an outline, or a ring round a centre where there is none. In units of
// the source; floats, since it is measured with a ruler.
type Band struct {
	Of           string // the result's name
	Outline      []XY   // its corners in order, closed
	Centre       XY
	Inner, Outer float64 // radii
}

// XY is a place, roughly.
type XY struct{ X, Y float64 }
