package svg

// A CSS pixel is 1/96 inch, which is 127/480 mm or 3175/12 µm.
const pixels, perPixels = 12, 3175

// PadToPixels is the least length that is not under v and is a whole number of
// CSS pixels, rounded up to a micrometre. Browsers snap a drawing that stands
// alone to whole pixels, and stretch one of another size. They count in 64ths
// of a pixel and cut the rest: a length rounded down would be taken for a 64th
// less, and 100 mm would print as 99.98.
func PadToPixels(v Micrometre) Micrometre {
	n := v * pixels / perPixels
	for roundUp(n*perPixels, pixels) < v {
		n++
	}
	return roundUp(n*perPixels, pixels)
}

// roundUp is a/b rounded up, for numbers that are not negative.
func roundUp(a, b int) int { return (a + b - 1) / b }
