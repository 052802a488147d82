package lang_test

import (
	"math"
	"testing"
)

// TestHalvedPlainly: free lines whose angle a locus halves cross under 55° to 75°.
func TestHalvedPlainly(t *testing.T) {
	at := spots(chosen(t, titled("given line m\ngiven line n\nm meets n at P\nlocus p, q equidistant from m and n\ntake A on m\ntake B on n")))
	bearing := func(name string) float64 {
		return math.Atan2(at[name][1]-at["P"][1], at[name][0]-at["P"][0]) * 180 / math.Pi
	}
	angle := math.Mod(math.Abs(bearing("A")-bearing("B")), 180)
	if angle = min(angle, 180-angle); angle < 55 || angle > 75 {
		t.Errorf("the lines cross at %.1f°", angle)
	}
}
