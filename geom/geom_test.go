package geom_test

import (
	"math/big"
	"regexp"
	"strings"
	"testing"

	"trammel/geom"
	"trammel/geom/exact"
)

var field = exact.NewField()

// term is a part of a sum such as 1/2+3√2/4.
var term = regexp.MustCompile(`([+-]?)(\d+(?:\.\d+)?(?:e-?\d+)?)?(?:√(\d+))?(?:/(\d+))?`)

// num reads a sum of fractions and roots.
func num(s string) geom.Real {
	sum := field.Int(0)
	for _, m := range term.FindAllStringSubmatch(strings.ReplaceAll(s, " ", ""), -1) {
		x := field.Int(1)
		for i, part := range m[2:] {
			if part == "" {
				continue
			}
			r, ok := new(big.Rat).SetString(part)
			switch y := field.Rat(r); {
			case !ok:
				panic(s)
			case i == 0:
				x = x.Mul(y)
			case i == 1:
				x = x.Mul(y.Sqrt())
			default:
				x = x.Div(y)
			}
		}
		if m[0] == "" {
			continue
		}
		if m[1] == "-" {
			x = x.Neg()
		}
		sum = sum.Add(x)
	}
	return sum
}

// pt reads a point such as "3,1/2".
func pt(s string) geom.Point {
	x, y, ok := strings.Cut(s, ",")
	if !ok {
		panic(s)
	}
	return geom.Point{X: num(x), Y: num(y)}
}

// pts reads points with spaces between them.
func pts(s string) []geom.Point {
	var out []geom.Point
	for _, p := range strings.Fields(s) {
		out = append(out, pt(p))
	}
	return out
}

// vec reads a vector as pt reads a point.
func vec(s string) geom.Vector { return pt(s).Sub(pt("0,0")) }

// through reads a line by two points of it.
func through(s string) geom.Line {
	ps := pts(s)
	return geom.Through(ps[0], ps[1])
}

func circle(centre, radius string) geom.Circle {
	r := num(radius)
	return geom.Circle{C: pt(centre), R2: r.Mul(r)}
}

func samePoints(got, want []geom.Point) bool {
	if len(got) != len(want) {
		return false
	}
	for i, p := range got {
		if !p.Equal(want[i]) {
			return false
		}
	}
	return true
}

func same(v, w geom.Vector) bool { return v.X.Equal(w.X) && v.Y.Equal(w.Y) }

func TestNum(t *testing.T) {
	for s, want := range map[string]float64{"1/2": 0.5, "-3": -3, "1e-12": 1e-12, "√2": 1.4142135623730951, "1/2-3√2/4": -0.5606601717798212} {
		if got := num(s).Float(); got < want-1e-15 || got > want+1e-15 {
			t.Errorf("num(%q) = %v, want %v", s, got, want)
		}
	}
}

func TestVectors(t *testing.T) {
	u, v := vec("3,4"), vec("1,-2")
	for _, test := range []struct{ name, got, want string }{
		{"dot", geom.Show(u.Dot(v)), "−5"},
		{"cross", geom.Show(u.Cross(v)), "−10"},
		{"cross the other way", geom.Show(v.Cross(u)), "10"},
		{"square of the length", geom.Show(u.Norm2()), "25"},
		{"of the zero vector", geom.Show(vec("0,0").Norm2()), "0"},
	} {
		if test.got != test.want {
			t.Errorf("%s: %s, want %s", test.name, test.got, test.want)
		}
	}
	for _, test := range []struct {
		name string
		got  geom.Vector
		want string
	}{
		{"scaled", u.Scale(num("1/2")), "3/2,2"},
		{"turned back", u.Neg(), "-3,-4"},
		{"turned left", u.Left(), "-4,3"},
		{"turned by 60°", vec("1,0").Turn(num("1/2"), num("√3/2")), "1/2,√3/2"},
		{"turned by 0°", u.Turn(num("1"), num("0")), "3,4"},
	} {
		if !same(test.got, vec(test.want)) {
			t.Errorf("%s: (%s, %s), want %s", test.name, geom.Show(test.got.X), geom.Show(test.got.Y), test.want)
		}
	}
}

func TestDistances(t *testing.T) {
	tests := []struct{ p, q, want string }{
		{"0,0", "3,4", "5"},
		{"1,1", "1,1", "0"},
		{"0,0", "1,1", "√2"},      // the diagonal of the unit square
		{"-1/2,0", "0,√3/2", "1"}, // half of an equilateral triangle, Euclid I.1
		{"0,0", "1e-12,0", "1e-12"},
		{"0,0", "√2,√3", "√5"}, // the spiral of roots, Plato's Theaetetus 147d
	}
	for _, test := range tests {
		if d := geom.Dist(pt(test.p), pt(test.q)); !d.Equal(num(test.want)) {
			t.Errorf("from %s to %s: %s, want %s", test.p, test.q, geom.Show(d), test.want)
		}
		if d := geom.Dist2(pt(test.q), pt(test.p)); !d.Equal(num(test.want).Mul(num(test.want))) {
			t.Errorf("from %s to %s, squared: %s", test.q, test.p, geom.Show(d))
		}
	}
}

func TestPlaces(t *testing.T) {
	slant, level := through("0,0 4,3"), through("0,2 -5,2")
	for _, test := range []struct {
		name string
		got  geom.Point
		want string
	}{
		{"midpoint", geom.Midpoint(pt("1,2"), pt("4,-2")), "5/2,0"},
		{"midpoint of one place", geom.Midpoint(pt("1,2"), pt("1,2")), "1,2"},
		{"along", geom.Along(pt("1,1"), vec("3,4"), num("10")), "7,9"},
		{"along, backwards", geom.Along(pt("1,1"), vec("3,4"), num("-5")), "-2,-3"},
		{"along, a diagonal", geom.Along(pt("0,0"), vec("1,1"), num("1")), "√2/2,√2/2"},
		{"along by nothing", geom.Along(pt("1,1"), vec("3,4"), num("0")), "1,1"},
		{"foot", slant.Foot(pt("0,25/3")), "4,3"}, // Euclid VI.8: 5² = 3 · 25/3
		{"foot of a point on the line", slant.Foot(pt("8,6")), "8,6"},
		{"foot before the line's first point", slant.Foot(pt("-1,-7")), "-4,-3"},
		{"mirror image", slant.Mirror(pt("5,0")), "7/5,24/5"},
		{"mirror image of a point on the line", slant.Mirror(pt("-4,-3")), "-4,-3"},
		{"mirror image in a level", level.Mirror(pt("√2,√3")), "√2,4-√3"},
		{"added", pt("1,2").Add(vec("√2,0")), "1+√2,2"},
	} {
		if !test.got.Equal(pt(test.want)) {
			t.Errorf("%s: %s, want %s", test.name, test.got, test.want)
		}
	}
}

func TestStraights(t *testing.T) {
	s := geom.Join(pt("1,1"), pt("4,5"))
	if !s.P.Equal(pt("1,1")) || !same(s.D, vec("3,4")) || !s.Start.Equal(pt("1,1")) || !s.End.Equal(pt("4,5")) {
		t.Errorf("the join is %v", s)
	}
	if w := s.Whole(); w.Start != nil || w.End != nil || !sameLine(w.Line, s.Line) {
		t.Errorf("the whole line is %v", w)
	}
}

// sameLine tells whether l and m have the same points.
func sameLine(l, m geom.Line) bool { return geom.Parallel(l, m) && l.Side(m.P) == 0 }
