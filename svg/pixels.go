package svg

// A CSS pixel is 1/96 inch, which is 127/480 mm or 3175/12 µm.
const pixels, perPixels = 12, 3175

// PadToPixels is the least length, in whole micrometres, that is not under v
// and that rounds a whole number of CSS pixels. Browsers snap a drawing that
// stands alone to whole pixels, and would stretch one of another size.
func PadToPixels(v Micrometre) Micrometre {
	n := v * pixels / perPixels
	for nearest(n*perPixels, pixels) < v {
		n++
	}
	return nearest(n*perPixels, pixels)
}

// nearest is a/b rounded, for numbers that are not negative.
func nearest(a, b int) int { return (2*a + b) / (2 * b) }
