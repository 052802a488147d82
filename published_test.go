package trammel_test

import (
	"fmt"
	"math"
	"math/big"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang"
)

// TestPublishedTrig builds every angle of the table of exact values and measures
// the sides at it. Abramowitz & Stegun 4.3.46 and DLMF 4.17 for multiples of 15°;
// the other forms are from memory, as the table says.
func TestPublishedTrig(t *testing.T) {
	t.Parallel()
	for _, r := range table(t, "trig_exact") {
		hold(t, "trig_circle.trm, "+r["deg"]+"°", r.fill(t, "trig_circle.trm"))
		if r["deg"] != "0" && r["deg"] != "90" {
			hold(t, "trig_triangle.trm, "+r["deg"]+"°", r.fill(t, "trig_triangle.trm"))
		}
	}
}

// TestPublishedTrigByCompasses steps off the angles of the table that compasses
// can make, from 3°, 7.5° and 11.25°.
func TestPublishedTrigByCompasses(t *testing.T) {
	t.Parallel()
	for _, unit := range []float64{3, 7.5, 11.25} {
		name := fmt.Sprintf("trig_steps_%v.trm", unit)
		text := row{}.fill(t, name)
		for _, r := range table(t, "trig_exact") {
			size, err := strconv.ParseFloat(r["deg"], 64)
			if err != nil {
				t.Fatal(err)
			}
			if step := size / unit; step == math.Trunc(step) && size > 0 && size < 90 {
				r["step"] = strconv.Itoa(int(step))
				text += r.fill(t, "trig_step.trm")
			}
		}
		hold(t, name, text)
	}
}

// TestPublishedPolygons builds each regular polygon of the table in a circle, by
// compasses and by degrees, and measures it. The 5-decimal triples are those of
// the CRC Standard Mathematical Tables, from memory; R and r of the 17-gon are
// MathWorld's, the rest is computed as the table says.
func TestPublishedPolygons(t *testing.T) {
	t.Parallel()
	radical := heptadecagon(t)["cos(2*pi/17)"]
	for _, r := range table(t, "regular_polygons") {
		n, err := strconv.Atoi(r["n"])
		if err != nil {
			t.Fatal(err)
		}
		r["side_over_R_exact"] = strings.ReplaceAll(r["side_over_R_exact"], "cos(2*pi/17)", radical)
		for i := range n {
			r["corners"] += fmt.Sprintf("P%d", i+1)
		}
		handbook := strings.Fields(r["handbook_area_R_r_unit_side(from memory)"])
		for i, name := range []string{"area", "R", "r"} {
			r["handbook_"+name] = ""
			if len(handbook) == 3 {
				r["handbook_"+name] = unhandy(handbook[i])
			}
		}
		claims := r.fill(t, "polygon/claims.trm")
		if r["constructible"] == "yes" {
			name := "polygon/" + r["n"] + ".trm"
			hold(t, name, r.fill(t, name)+claims)
		}
		if 720%n == 0 { // a whole number of half degrees
			hold(t, "polygon/degrees.trm, "+r["n"], r.fill(t, "polygon/degrees.trm")+claims)
		} else {
			hold(t, "polygon/undecided.trm, "+r["n"], r.fill(t, "polygon/undecided.trm"))
		}
	}
}

// TestPublishedNearPolygons refuses two constructions that the eye takes for
// regular polygons, by the amounts that plane trigonometry gives.
func TestPublishedNearPolygons(t *testing.T) {
	t.Parallel()
	for _, r := range table(t, "regular_polygons") {
		if n := r["n"]; n == "5" || n == "7" {
			name := "polygon/near_" + n + ".trm"
			hold(t, name, r.fill(t, name))
		}
	}
}

// unhandy puts back the 0 that handbooks leave out before the point.
func unhandy(decimal string) string {
	if strings.HasPrefix(decimal, ".") {
		return "0" + decimal
	}
	return decimal
}

// heptadecagon reads the table of the 17-gon into one row: the exact numbers by
// their names, and their decimals, as many as a source may have. Gauss,
// Disquisitiones Arithmeticae, art. 365, quoted in OEIS A210644 and A210649.
func heptadecagon(t *testing.T) row {
	out := row{}
	for _, r := range table(t, "heptadecagon") {
		name := r["quantity"]
		out[name], _, _ = strings.Cut(r["exact"], ", root of")
		if x, ok := new(big.Rat).SetString(r["decimal"]); ok {
			out[name+" decimal"] = x.FloatString(36)
		}
	}
	return out
}

// TestPublishedHeptadecagon measures Gauss's numbers in Richmond's 17-gon, and
// the golden ratio in Ptolemy's pentagon.
func TestPublishedHeptadecagon(t *testing.T) {
	t.Parallel()
	r := heptadecagon(t)
	hold(t, "heptadecagon.trm", r.fill(t, "polygon/17.trm")+r.fill(t, "heptadecagon.trm"))
	hold(t, "golden.trm", r.fill(t, "polygon/5.trm")+r.fill(t, "golden.trm"))
}

// TestPublishedTriangles constructs the circles and lines of each triangle of the
// table. 13-14-15 with area 84 is Heron's own example, Metrica I.8, from memory;
// the rest is computed by the formulas that the table names.
func TestPublishedTriangles(t *testing.T) {
	t.Parallel()
	for _, r := range table(t, "triangles") {
		for _, corner := range []string{"A", "B", "C"} {
			size, err := strconv.ParseFloat(r["angle"+corner+"_deg"], 64)
			if err != nil {
				t.Fatal(err)
			}
			r["angle"+corner+"_below"] = fmt.Sprintf("%.8f", size-2e-8)
			r["angle"+corner+"_above"] = fmt.Sprintf("%.8f", size+2e-8)
		}
		hold(t, "triangle.trm, "+r["a"]+"-"+r["b"]+"-"+r["c"], r.fill(t, "triangle.trm"))
	}
}

// TestPublishedCentres constructs the first ten centres of the triangle with
// sides 6, 9 and 13, the table triangle of Kimberling's Encyclopedia of Triangle
// Centers (its numbering and trilinears from memory), and compares their places
// with the decimals.
func TestPublishedCentres(t *testing.T) {
	t.Parallel()
	for _, r := range table(t, "triangle_centers_6_9_13") {
		name := "centre/" + r["n"] + ".trm"
		x, y := r["x (B=(0,0),C=(6,0))"], r["y = (6,9,13) first normalised trilinear"]
		own := r.fill(t, name)
		drawn := lang.Compile(name, []byte(own)).Figure
		if drawn == nil {
			t.Errorf("%s has errors", name)
			continue
		}
		if p := pointOf(drawn, "P"); at(p.X, x) != x || at(p.Y, y) != y {
			t.Errorf("%s: %s is at (%s, %s), not (%s, %s)", name, r["name"], at(p.X, x), at(p.Y, y), x, y)
		}
		for i, cell := range []string{y, r["norm_trilinear_b"], r["norm_trilinear_c"]} {
			side := string("abc"[i])
			r["distance "+side] = strings.TrimPrefix(cell, "-")
			r["trilinear "+side] = trilinear(r["trilinear_first"], i)
			if strings.HasPrefix(cell, "-") {
				r["trilinear "+side] = "-1*(" + r["trilinear "+side] + ")"
			}
		}
		r["x"] = x
		hold(t, name, own+r.fill(t, "centre/claims.trm"))
	}
}

// pointOf is a point of a figure by its name.
func pointOf(f *figure.Figure, name string) geom.Point {
	i := slices.IndexFunc(f.Points, func(p *figure.Point) bool { return p.Name == name })
	return f.Points[i].At
}

// at is a number to as many decimals as the published one has.
func at(x *exact.Real, like string) string {
	_, decimals, _ := strings.Cut(like, ".")
	return x.Decimal(len(decimals))
}

// trilinear writes a centre's trilinear coordinate for a side of 6-9-13, in the
// language: the first, with the letters moved on.
func trilinear(first string, side int) string {
	lengths := [3]string{"6", "9", "13"}
	cosines := [3]string{"(107/117)", "(31/39)", "(-13/27)"}
	length := func(i int) string { return lengths[(side+i)%3] }
	cos := func(i int) string { return cosines[(side+i)%3] }
	sin := func(i int) string { return "sqrt(1-" + cos(i) + "*" + cos(i) + ")" }
	return strings.NewReplacer(
		"cos(B-C)", cos(1)+"*"+cos(2)+"+"+sin(1)+"*"+sin(2),
		"sec^2(A/2)", "2/(1+"+cos(0)+")",
		"cos A", cos(0), "sec A", "1/"+cos(0),
		"a", length(0), "b", length(1), "c", length(2),
	).Replace(first)
}

// TestPublishedEuclid carries out each construction of the Elements in the table
// (Heath's numbering) on its numeric instance, with what Euclid proves of it as
// claims; those that a condition forbids have a source that must be refused.
func TestPublishedEuclid(t *testing.T) {
	t.Parallel()
	sources, err := filepath.Glob(published + "euclid/*.trm")
	if err != nil {
		t.Fatal(err)
	}
	left := map[string]bool{}
	for _, path := range sources {
		left["euclid/"+filepath.Base(path)] = true
	}
	for _, r := range table(t, "euclid_constructions") {
		names := []string{"euclid/" + r["prop"] + ".trm"}
		if strings.Contains(r["must_hold"]+r["numeric_instance"], "refuse") {
			names = append(names, "euclid/"+r["prop"]+"-refused.trm")
		}
		for _, name := range names {
			hold(t, name, r.fill(t, name))
			delete(left, name)
		}
	}
	for name := range left {
		t.Errorf("%s belongs to no row", name)
	}
}

var (
	spreadAt = regexp.MustCompile(`(\d+): ([\d.]+)e`)
	arcsAt   = regexp.MustCompile(`r=([^:]+): ([\d.]+)`)
)

// TestPublishedPractice holds what draughtsmen are told of crossings: how far an
// error spreads, and how steeply the arcs about A and B cross. Elementary, as the
// table says; that 30° is too flat is practice, and nothing to prove.
func TestPublishedPractice(t *testing.T) {
	t.Parallel()
	rows := table(t, "practice")
	spreads := spreadAt.FindAllStringSubmatch(rows[0]["value_or_rule"], -1)
	arcs := arcsAt.FindAllStringSubmatch(rows[1]["value_or_rule"], -1)
	if len(spreads) != 6 || len(arcs) != 4 {
		t.Fatalf("the table has %d spreads and %d pairs of arcs that can be read", len(spreads), len(arcs))
	}
	for _, m := range spreads {
		r := row{"angle": m[1], "spread": roundedIf(m[2], "")}
		hold(t, "practice_spread.trm, "+m[1], r.fill(t, "practice_spread.trm"))
	}
	for _, m := range arcs {
		radius := strings.NewReplacer("AB", " AB", "sqrt2", "sqrt(2)").Replace(m[1])
		r := row{"angle": roundedIf(m[2], "°"), "radius": strings.TrimSpace(radius)}
		hold(t, "practice_arcs.trm, "+m[1], r.fill(t, "practice_arcs.trm"))
	}
}

// roundedIf is a value with its unit, as rounded if it has decimals.
func roundedIf(value, unit string) string {
	if strings.Contains(value, ".") {
		return value + unit + " # ROUNDED"
	}
	return value + unit
}
