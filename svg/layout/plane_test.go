package layout

import (
	"math"
	"math/rand/v2"
	"testing"
)

// along are points of a curve, close together.
func along(c curve) []vec {
	var list []vec
	const n = 4000
	for i := range n + 1 {
		t := float64(i) / n
		switch c := c.(type) {
		case segment:
			list = append(list, c.a.add(c.b.sub(c.a).times(t)))
		case arc:
			list = append(list, c.at(c.from+c.sweep*t))
		}
	}
	return list
}

func someCurve(r *rand.Rand) curve {
	p := func() vec { return vec{r.Float64() * 20 * mm, r.Float64() * 20 * mm}.snap() }
	if r.IntN(2) == 0 {
		return segment{p(), p()}
	}
	return arc{p(), 1*mm + r.Float64()*10*mm, r.Float64() * fullway, 0.2 + r.Float64()*(fullway-0.2)}
}

// TestCurves checks touching, bounds and cutting against many points of each
// curve; near misses within the step between them are let pass.
func TestCurves(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		c := someCurve(r)
		b := around(vec{r.Float64() * 20 * mm, r.Float64() * 20 * mm}, 0.5*mm+r.Float64()*3*mm, 0.5*mm+r.Float64()*3*mm)
		inner, outer, all := false, false, c.bounds().grow(1)
		for _, p := range along(c) {
			inner = inner || b.grow(-20).holds(p)
			outer = outer || b.grow(20).holds(p)
			if !all.holds(p) {
				t.Fatalf("%v leaves its bounds %v at %v", c, all, p)
			}
		}
		if got := c.touches(b); got && !outer || !got && inner {
			t.Fatalf("%v touches %v: got %v", c, b, got)
		}
		for _, rest := range c.without(b) {
			for _, p := range along(rest) {
				if b.grow(-20).holds(p) {
					t.Fatalf("%v without %v still holds %v", c, b, p)
				}
			}
		}
	}
}

// TestWithoutKeeps checks that cutting takes away no more than the box.
func TestWithoutKeeps(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		c := someCurve(r)
		b := around(vec{r.Float64() * 20 * mm, r.Float64() * 20 * mm}, 2*mm, 1*mm)
		out := 0
		for _, p := range along(c) {
			if !b.grow(20).holds(p) {
				out++
			}
		}
		whole, rest := c.length(), 0.0
		for _, piece := range c.without(b) {
			rest += piece.length()
		}
		if want := whole * float64(out) / 4001; rest < want-0.2*mm {
			t.Fatalf("%v without %v keeps %.0f µm, want %.0f", c, b, rest, want)
		}
	}
}

func TestRays(t *testing.T) {
	degrees := func(d float64) float64 { return d * math.Pi / 180 }
	half := arc{vec{}, 10 * mm, 0, math.Pi}
	tests := []struct {
		name string
		c    curve
		p    vec
		want []float64
	}{
		{"an end", segment{vec{}, vec{10 * mm, 0}}, vec{}, []float64{0}},
		{"the middle", segment{vec{}, vec{0, -10 * mm}}, vec{0, -5 * mm}, []float64{degrees(270), degrees(90)}},
		{"beside", segment{vec{}, vec{10 * mm, 0}}, vec{5 * mm, 1 * mm}, nil},
		{"top of an arc", half, vec{0, -10 * mm}, []float64{0, degrees(180)}},
		{"start of an arc", half, vec{10 * mm, 0}, []float64{degrees(90)}},
		{"end of an arc", half, vec{-10 * mm, 0}, []float64{degrees(90)}},
		{"off an arc", half, vec{0, 10 * mm}, nil},
	}
	for _, tt := range tests {
		got := tt.c.rays(tt.p)
		if len(got) != len(tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
			continue
		}
		for i := range got {
			if apart(got[i], tt.want[i]) > 0.01 {
				t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
			}
		}
	}
}

func TestUncovered(t *testing.T) {
	tests := []struct {
		covers, want []span
	}{
		{nil, []span{{0, 1000}}},
		{[]span{{200, 300}}, []span{{0, 200}, {300, 1000}}},
		{[]span{{500, 2000}, {-5, 100}}, []span{{100, 500}}},
		{[]span{{0, 600}, {400, 1000}}, nil},
		{[]span{{2000, 3000}}, []span{{0, 1000}}},
	}
	for _, tt := range tests {
		got := span{0, 1000}.uncovered(tt.covers)
		if len(got) != len(tt.want) {
			t.Errorf("%v leave %v, want %v", tt.covers, got, tt.want)
			continue
		}
		for i := range got {
			if got[i] != tt.want[i] {
				t.Errorf("%v leave %v, want %v", tt.covers, got, tt.want)
			}
		}
	}
}

// TestGrid checks the grid against asking every obstacle.
func TestGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	var all []obstacle
	for range 60 {
		all = append(all, obstacle{shape: someCurve(r), half: 250})
	}
	g := newGrid(all)
	for range 300 {
		b := around(vec{r.Float64()*24*mm - 2*mm, r.Float64()*24*mm - 2*mm}, 2*mm, 1*mm)
		met := map[*obstacle]int{}
		g.near(b, func(o *obstacle) bool {
			met[o]++
			return true
		})
		for i := range g.all {
			o := &g.all[i]
			if o.touches(b.grow(o.half)) && met[o] != 1 {
				t.Fatalf("the grid met %v %d times at %v", o, met[o], b)
			}
		}
	}
}
