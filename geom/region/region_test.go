package region_test

import (
	"math"
	"math/rand"
	"testing"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/region"
)

var field = exact.NewField()

func pt(x, y int64) geom.Point { return geom.Point{X: field.Int(x), Y: field.Int(y)} }

var (
	square  = []geom.Point{pt(0, 0), pt(4, 0), pt(4, 4), pt(0, 4)}
	arrow   = []geom.Point{pt(0, 0), pt(4, 0), pt(2, 1), pt(4, 4)}
	join    = geom.Join(pt(0, 0), pt(4, 0))
	level   = geom.Through(pt(0, 1), pt(1, 1))
	rising  = geom.Through(pt(0, 0), pt(1, 1))
	origin  = region.Spot(pt(0, 0))
	ray     = geom.Straight{Line: level, Start: &level.P}
	inf     = math.Inf(1)
	root2   = math.Sqrt2
	quarter = math.Pi / 4
)

// TestAlong takes level and rising lines through regions whose borders are
// known by hand.
func TestAlong(t *testing.T) {
	tests := []struct {
		name        string
		r           region.Region
		x, y, angle float64
		want        []region.Span
	}{
		{"everything", region.Region{}, 0, 0, 0, []region.Span{{-inf, inf}}},
		{"disc", region.Region{region.Within(origin, field.Int(25))}, 0, 3, 0, []region.Span{{-4, 4}}},
		{"outside a disc", region.Region{region.Beyond(origin, field.Int(25))}, 0, 3, 0, []region.Span{{-inf, -4}, {4, inf}}},
		{"past a disc", region.Region{region.Within(origin, field.Int(25))}, 0, 6, 0, nil},
		{"strip", region.Region{region.Within(geom.Straight{Line: level}, field.Int(1))}, 0, 0, quarter, []region.Span{{0, 2 * root2}}},
		{"along a strip", region.Region{region.Within(geom.Straight{Line: level}, field.Int(1))}, 0, 1.5, 0, []region.Span{{-inf, inf}}},
		{"rounded band, level", region.Region{region.Within(join, field.Int(25))}, 0, 3, 0, []region.Span{{-4, 8}}},
		{"rounded band, upright", region.Region{region.Within(join, field.Int(25))}, 7, 0, math.Pi / 2, []region.Span{{-4, 4}}},
		{"band of a ray", region.Region{region.Within(ray, field.Int(25))}, 0, 4, 0, []region.Span{{-4, inf}}},
		{"half plane", region.Region{region.LeftOf(rising)}, 0, 2, 0, []region.Span{{-inf, 2}}},
		{"nearer a point", region.Region{region.Nearer(origin, region.Spot(pt(4, 0)))}, 0, 7, 0, []region.Span{{-inf, 2}}},
		{"nearer a line", region.Region{region.Nearer(geom.Straight{Line: level}, geom.Straight{Line: geom.Through(pt(0, 1), pt(0, 2))})}, 0, 3, 0, []region.Span{{-inf, -2}, {2, inf}}},
		{"nearer a point than a line: a parabola", region.Region{region.Nearer(region.Spot(pt(0, 1)), geom.Straight{Line: geom.Through(pt(0, -1), pt(1, -1))})}, 0, 4, 0, []region.Span{{-4, 4}}},
		{"square", region.Region{region.Inside(square)}, 0, 1, 0, []region.Span{{0, 4}}},
		{"square, by its corners", region.Region{region.Inside(square)}, 0, 0, quarter, []region.Span{{0, 4 * root2}}},
		{"square, past a corner", region.Region{region.Inside(square)}, -2, 2, quarter, nil},
		{"dented figure", region.Region{region.Inside(arrow)}, 3, 0, math.Pi / 2, []region.Span{{0, 0.5}, {2.5, 3}}},
		{"outside a figure", region.Region{region.Outside(square)}, 0, 1, 0, []region.Span{{-inf, 0}, {4, inf}}},
		{"all at once", region.Region{region.Inside(square), region.Beyond(origin, field.Int(4)), region.LeftOf(level)}, 0, 0, quarter, []region.Span{{2, 4 * root2}}},
	}
	for _, tt := range tests {
		got := tt.r.Along(tt.x, tt.y, tt.angle)
		same := len(got) == len(tt.want)
		for i := 0; same && i < len(got); i++ {
			same = close2(got[i].Lo, tt.want[i].Lo) && close2(got[i].Hi, tt.want[i].Hi)
		}
		if !same {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

func close2(a, b float64) bool { return a == b || math.Abs(a-b) < 1e-9 }

// TestAlongByPoints compares stretches with the conditions worked out exactly
// at points of the line.
func TestAlongByPoints(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	far := func() geom.Point { return pt(rnd.Int63n(21)-10, rnd.Int63n(21)-10) }
	for range 200 {
		a, b, c, d := far(), far(), far(), far()
		if a.Equal(b) || c.Equal(d) || !geom.Simple([]geom.Point{a, b, c, d}) {
			continue
		}
		square := field.Int(1 + rnd.Int63n(40))
		disc, line := geom.Circle{C: a, R2: square}, geom.Through(b, c)
		outline := []geom.Point{a, b, c, d}
		regions := map[string]region.Region{
			"disc":   {region.Within(region.Spot(a), square)},
			"nearer": {region.Nearer(region.Spot(a), region.Spot(b))},
			"left":   {region.LeftOf(line)},
			"inside": {region.Inside(outline)},
		}
		holds := map[string]func(p geom.Point) int{
			"disc":   func(p geom.Point) int { return -disc.Side(p) },
			"nearer": func(p geom.Point) int { return geom.Dist2(p, b).Cmp(geom.Dist2(p, a)) },
			"left":   line.Side,
			"inside": func(p geom.Point) int { return -geom.Place(p, outline) },
		}
		x, y := rnd.Int63n(11)-5, rnd.Int63n(11)-5
		for name, r := range regions {
			spans := r.Along(float64(x), float64(y), quarter)
			for k := int64(-12); k <= 12; k++ {
				side := holds[name](pt(x+k, y+k))
				if in := lies(float64(k)*root2, spans); side != 0 && in != (side > 0) {
					t.Errorf("%s of %v %v %v %v: at (%d, %d) the stretches %v say %v", name, a, b, c, d, x+k, y+k, spans, in)
				}
			}
		}
	}
}

func lies(t float64, spans []region.Span) bool {
	for _, s := range spans {
		if s.Lo < t && t < s.Hi {
			return true
		}
	}
	return false
}

func TestBox(t *testing.T) {
	tests := []struct {
		r       region.Region
		want    region.Box
		bounded bool
	}{
		{region.Region{region.LeftOf(level), region.Nearer(origin, join)}, region.Box{}, false},
		{region.Region{region.Within(geom.Straight{Line: level}, field.Int(1))}, region.Box{}, false},
		{region.Region{region.Outside(square), region.Beyond(origin, field.Int(1))}, region.Box{}, false},
		{region.Region{region.Within(join, field.Int(4)), region.LeftOf(level)}, region.Box{Left: -2, Bottom: -2, Right: 6, Top: 2}, true},
		{region.Region{region.Within(join, field.Int(4)), region.Inside(square)}, region.Box{Left: 0, Bottom: 0, Right: 4, Top: 2}, true},
	}
	for i, tt := range tests {
		if got, ok := tt.r.Box(); got != tt.want || ok != tt.bounded {
			t.Errorf("%d: got %v, %v, want %v, %v", i, got, ok, tt.want, tt.bounded)
		}
	}
}

// TestHatch adds up the strokes over a square: length times distance is its
// area, all but the last stroke.
func TestHatch(t *testing.T) {
	r := region.Region{region.Inside(square)}
	b := region.Box{Left: -1, Bottom: -1, Right: 5, Top: 5}
	for _, angle := range []float64{quarter, -quarter} {
		sum := 0.0
		for _, s := range r.Hatch(b, angle, 0.05) {
			sum += math.Hypot(s.X2-s.X1, s.Y2-s.Y1)
		}
		if area := sum * 0.05; math.Abs(area-16) > 0.02 {
			t.Errorf("the strokes cover %.3f, want 16", area)
		}
	}
	half := region.Box{Left: 2, Bottom: -1, Right: 9, Top: 9}
	for _, s := range r.Hatch(half, quarter, 0.1) {
		if s.X1 < 2-1e-9 || s.X2 < 2-1e-9 {
			t.Fatalf("the stroke %v leaves the box", s)
		}
	}
	if got := r.Hatch(region.Box{}, quarter, 1); got != nil {
		t.Errorf("in an empty box: %v", got)
	}
	huge := region.Box{Left: -1e6, Bottom: -1e6, Right: 1e6, Top: 1e6}
	if got := len((region.Region{}).Hatch(huge, quarter, 1)); got > 4001 {
		t.Errorf("%d strokes over a huge box", got)
	}
}

// TestBorders finds the straights that bound regions: the bisector of two points, both
// of two lines, the sides of a polygon; a circle and a parabola have none.
func TestBorders(t *testing.T) {
	level, upright := geom.Straight{Line: level}, geom.Straight{Line: geom.Through(pt(0, 0), pt(0, 1))}
	a, b := region.Spot(pt(0, 0)), region.Spot(pt(2, 2))
	for name, test := range map[string]struct {
		region region.Region
		want   []float64 // degrees, of 0 to 180
	}{
		"points":   {region.Region{region.Nearer(a, b)}, []float64{135}},
		"lines":    {region.Region{region.Nearer(level, upright)}, []float64{45, 135}},
		"parabola": {region.Region{region.Nearer(a, level)}, nil},
		"disc":     {region.Region{region.Within(a, field.Int(1))}, nil},
		"strip":    {region.Region{region.Within(upright, field.Int(1))}, []float64{90}},
		"polygon":  {region.Region{region.Inside([]geom.Point{pt(0, 0), pt(1, 0), pt(1, 1)})}, []float64{0, 90, 45}},
	} {
		got := test.region.Borders()
		if len(got) != len(test.want) {
			t.Errorf("%s: %v", name, got)
			continue
		}
		for i, w := range test.want {
			if off := math.Remainder(got[i]*180/math.Pi-w, 180); math.Abs(off) > 1e-9 {
				t.Errorf("%s: border %d at %v°, not %v°", name, i, got[i]*180/math.Pi, w)
			}
		}
	}
}
