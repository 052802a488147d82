// Ink fails for every PNG file named that shows nothing but white.
package main

import (
	"fmt"
	"image/color"
	"image/png"
	"os"
)

func main() {
	blank := 0
	for _, name := range os.Args[1:] {
		ok, err := hasInk(name)
		switch {
		case err != nil:
			fmt.Fprintln(os.Stderr, err)
			blank++
		case !ok:
			fmt.Fprintf(os.Stderr, "%s is blank\n", name)
			blank++
		}
	}
	if blank > 0 || len(os.Args) == 1 {
		os.Exit(1)
	}
}

// hasInk tells whether a pixel is darker than a light grey.
func hasInk(name string) (bool, error) {
	f, err := os.Open(name)
	if err != nil {
		return false, err
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		return false, fmt.Errorf("%s: %w", name, err)
	}
	for y := page.Bounds().Min.Y; y < page.Bounds().Max.Y; y++ {
		for x := page.Bounds().Min.X; x < page.Bounds().Max.X; x++ {
			if color.GrayModel.Convert(page.At(x, y)).(color.Gray).Y < 200 {
				return true, nil
			}
		}
	}
	return false, nil
}
