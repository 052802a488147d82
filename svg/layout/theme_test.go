package layout

import (
	"math"
	"slices"
	"testing"

	"trammel/geom/figure"
	"trammel/svg"
)

// TestThemes lays every figure out in every theme.
func TestThemes(t *testing.T) {
	for _, theme := range figure.Themes {
		for _, f := range textbook {
			doc, _, err := Draw(f.draw().As(theme, ""), Options{})
			if theme == "tactile" {
				continue // see TestTactile
			}
			if err != nil {
				t.Fatal(err)
			}
			save(t, theme+"-"+f.name, doc)
			for _, g := range doc.Groups {
				for _, i := range g.Items {
					if p, ok := i.(svg.Path); ok && theme == "exam" && p.Stroke == grey {
						t.Errorf("%s: grey ink in the exam theme", f.name)
					}
				}
			}
		}
	}
	if _, _, err := Draw(kite().As("neon", ""), Options{}); err == nil {
		t.Error("a theme that is not there is taken")
	}
}

// TestThemesKeepGeometry has the points of a figure at the same distances from
// each other in every theme.
func TestThemesKeepGeometry(t *testing.T) {
	for _, f := range textbook {
		var want []svg.XY
		for _, theme := range figure.Themes {
			g := f.draw().As(theme, "")
			g.Unit.SetInt64(50)
			d, err := newDrawing(g)
			if err != nil {
				t.Fatal(err)
			}
			doc, err := d.laid().frame()
			if err != nil {
				t.Fatal(err)
			}
			got := dotsFrom(doc)
			if want == nil {
				want = got
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s: the points of %s stand elsewhere", f.name, theme)
			}
		}
	}
}

// dotsFrom are the places of a drawing's dots, as seen from the first one.
func dotsFrom(doc *svg.Doc) []svg.XY {
	var list []svg.XY
	for _, g := range doc.Groups {
		for _, i := range g.Items {
			if d, ok := i.(svg.Disc); ok && g.Class == classes[dotLayer] {
				list = append(list, d.Centre)
			}
		}
	}
	for i := len(list) - 1; i >= 0; i-- {
		list[i] = svg.XY{X: list[i].X - list[0].X, Y: list[i].Y - list[0].Y}
	}
	return list
}

// TestDashes checks that dashes end as they begin and stand at the middle.
func TestDashes(t *testing.T) {
	for _, length := range []float64{1500, 7000, 20000, 43210} {
		ink := pen{width: 500, colour: black, dashed: true}.ink(length, false)
		dash, gap := float64(ink.Dash[0]), float64(ink.Dash[1])
		if rest := math.Mod(length, dash+gap); math.Abs(rest-dash) > 20 {
			t.Errorf("%v µm: dashes of %v and gaps of %v end %v into the last", length, dash, gap, rest)
		}
		if n := math.Round((length + gap) / (dash + gap)); math.Mod(n, 2) != 1 || dash > 4000 || length > 3000 && dash < 1200 {
			t.Errorf("%v µm: %v dashes of %v", length, n, dash)
		}
	}
	ink := pen{width: 500, colour: black, dashed: true}.ink(60000, true)
	if rest := math.Mod(60000+10, float64(ink.Dash[0]+ink.Dash[1])); rest > 20 {
		t.Errorf("on a closed curve %v is left over", rest)
	}
}
