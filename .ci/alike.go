// Alike compares the pictures that several programs drew of one figure, as PNG
// files at 300 dots to the inch. It prints the worst share of ink that differs
// between two of them, in per cent, and fails where that is over 0.05:
//
//	alike librsvg/incircle.png chromium/incircle.png resvg/incircle.png
//
// A pixel differs where its grey lies more than a quarter of the way from black
// to white outside the greys of the other picture's pixels about it (3 by 3):
// programs shade the edges of a stroke in their own ways, and may set it off by
// part of a pixel. The share is of all pixels that are not white in both.
package main

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
)

const (
	quarter = 255 / 4
	white   = 250
	most    = 0.05 // per cent of the ink; a short thin line that is missing is 0.3
)

func main() {
	worst, err := compare(os.Args[1:])
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
	fmt.Printf("%.4f\n", worst)
}

// compare holds every two files against each other.
func compare(files []string) (worst float64, err error) {
	if len(files) < 2 {
		return 0, errors.New("two files or more have to be named")
	}
	for i, a := range files {
		for _, b := range files[:i] {
			share, err := differs(a, b)
			if err == nil && share > most {
				err = fmt.Errorf("%.3f %% of the ink differs between %s and %s", share, a, b)
			}
			if err != nil {
				return 0, err
			}
			worst = max(worst, share)
		}
	}
	return worst, nil
}

// differs is how many per cent of the ink differ between two files.
func differs(a, b string) (float64, error) {
	p, err := read(a)
	if err != nil {
		return 0, err
	}
	q, err := read(b)
	if err != nil {
		return 0, err
	}
	if w, h := p.Rect.Dx()-q.Rect.Dx(), p.Rect.Dy()-q.Rect.Dy(); w < -1 || w > 1 || h < -1 || h > 1 {
		return 0, fmt.Errorf("%s is %v and %s is %v", a, p.Rect, b, q.Rect)
	}
	ink, off := 0, 0
	for y := range min(p.Rect.Dy(), q.Rect.Dy()) {
		for x := range min(p.Rect.Dx(), q.Rect.Dx()) {
			if p.GrayAt(x, y).Y > white && q.GrayAt(x, y).Y > white {
				continue
			}
			ink++
			if strange(p, q, x, y) || strange(q, p, x, y) {
				off++
			}
		}
	}
	if ink == 0 {
		return 0, fmt.Errorf("%s and %s are blank", a, b)
	}
	return 100 * float64(off) / float64(ink), nil
}

// strange tells whether the pixel of p lies outside the greys about it in q.
func strange(p, q *image.Gray, x, y int) bool {
	low, high := 255, 0
	for _, dy := range [3]int{-1, 0, 1} {
		for _, dx := range [3]int{-1, 0, 1} {
			if (image.Point{X: x + dx, Y: y + dy}).In(q.Rect) {
				v := int(q.GrayAt(x+dx, y+dy).Y)
				low, high = min(low, v), max(high, v)
			}
		}
	}
	v := int(p.GrayAt(x, y).Y)
	return v < low-quarter || v > high+quarter
}

// read reads a PNG file in greys.
func read(name string) (*image.Gray, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	b := page.Bounds()
	grey := image.NewGray(image.Rect(0, 0, b.Dx(), b.Dy()))
	for y := range b.Dy() {
		for x := range b.Dx() {
			grey.SetGray(x, y, color.GrayModel.Convert(page.At(b.Min.X+x, b.Min.Y+y)).(color.Gray))
		}
	}
	return grey, nil
}
