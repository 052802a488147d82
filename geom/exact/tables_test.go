package exact

import (
	"bufio"
	"fmt"
	"math/big"
	"os"
	"strings"
	"testing"
)

// readTable reads a file of testdata: rows of tab-separated columns under a
// heading; a row is a map from heading to cell.
func readTable(t *testing.T, name string) (rows []map[string]string) {
	file, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var heads []string
	for lines := bufio.NewScanner(file); lines.Scan(); {
		cells := strings.Split(lines.Text(), "\t")
		if heads == nil {
			heads = cells
			continue
		}
		row := map[string]string{}
		for i, cell := range cells {
			row[heads[i]] = cell
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", name)
	}
	return rows
}

// reader reads an expression with + - * / sqrt( ) and cos(2*pi/17), as the
// tables have them.
type reader struct {
	k    *kit
	rest string
}

func (k *kit) formula(text string) *Real {
	f := reader{k, text}
	x := f.sum()
	if f.rest != "" {
		panic(fmt.Sprintf("%q: cannot read %q", text, f.rest))
	}
	return x
}

func (f *reader) eat(token string) bool {
	rest, ok := strings.CutPrefix(f.rest, token)
	f.rest = rest
	return ok
}

func (f *reader) sum() *Real {
	x := f.product()
	for {
		switch {
		case f.eat("+"):
			x = x.Add(f.product())
		case f.eat("-"):
			x = x.Sub(f.product())
		default:
			return x
		}
	}
}

func (f *reader) product() *Real {
	x := f.factor()
	for {
		switch {
		case f.eat("*"):
			x = x.Mul(f.factor())
		case f.eat("/"):
			x = x.Div(f.factor())
		default:
			return x
		}
	}
}

func (f *reader) factor() *Real {
	switch {
	case f.eat("-"):
		return f.factor().Neg()
	case f.eat("cos(2*pi/17)"):
		return f.k.step17().x
	case f.eat("sqrt("):
		x := f.sum()
		f.eat(")")
		return x.Sqrt()
	case f.eat("("):
		x := f.sum()
		f.eat(")")
		return x
	}
	end := strings.IndexFunc(f.rest, func(r rune) bool { return r < '0' || r > '9' })
	if end < 0 {
		end = len(f.rest)
	}
	n, ok := new(big.Rat).SetString(f.rest[:end])
	if !ok {
		panic(fmt.Sprintf("no number at %q", f.rest))
	}
	f.rest = f.rest[end:]
	return f.k.f.Rat(n)
}

// decimalAgrees compares x with a printed decimal of some significant digits,
// the last of which may be off by one.
func decimalAgrees(x *Real, printed string) bool {
	want, ok := new(big.Rat).SetString(printed)
	if !ok {
		return false
	}
	_, places, _ := strings.Cut(printed, ".")
	got, _ := new(big.Rat).SetString(x.Decimal(len(places)))
	unit := new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(len(places)))
	return got.Sub(got, want).Abs(got).Cmp(unit) <= 0
}

// TestTrigonometricTable holds cosines and sines, in surds and decimals, to published ones.
func TestTrigonometricTable(t *testing.T) {
	for _, row := range readTable(t, "trig_exact.tsv") {
		k := newKit()
		degrees, _ := new(big.Rat).SetString(row["deg"])
		cos, sin, err := k.f.CosSin(degrees)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, c := range []struct {
			name  string
			value func() *Real
		}{
			{"sin", func() *Real { return sin }},
			{"cos", func() *Real { return cos }},
			{"tan", func() *Real { return sin.Div(cos) }},
		} {
			if c.name == "tan" && cos.IsZero() {
				continue
			}
			x := c.value()
			if form := row[c.name+"_exact"]; form != "" && !x.Equal(k.formula(form)) {
				t.Errorf("%s %s° is not %s", c.name, row["deg"], form)
			}
			if !decimalAgrees(x, row[c.name+"_20"]) {
				t.Errorf("%s %s° = %s, table has %s", c.name, row["deg"], x.Decimal(20), row[c.name+"_20"])
			}
		}
		if k.f.tower.all().has(ninthLevel) {
			t.Errorf("%s° stands over Q(2cos 40°)", row["deg"])
		}
	}
}

// TestRegularPolygonTable holds sides, apothems and areas of polygons to published ones.
func TestRegularPolygonTable(t *testing.T) {
	for _, row := range readTable(t, "regular_polygons.tsv") {
		if row["constructible"] != "yes" || row["n"] == "17" {
			continue
		}
		k := newKit()
		half := new(big.Rat)
		fmt.Sscan(row["central_deg"], half)
		half.Quo(half, big.NewRat(2, 1))
		apothem, sin, err := k.f.CosSin(half)
		if err != nil {
			t.Errorf("n = %s: %v", row["n"], err)
			continue
		}
		side := sin.MulInt(2)
		n, _ := new(big.Rat).SetString(row["n"])
		area := side.Mul(apothem).Mul(k.f.Rat(n)).Div(k.int(2))
		for _, c := range []struct {
			x             *Real
			exact, places string
		}{
			{side, row["side_over_R_exact"], row["side_over_R"]},
			{apothem, row["apothem_over_R_exact"], row["apothem_over_R"]},
			{area, "", row["area_over_R2"]},
			{k.int(1).Div(side), "", row["R_over_side"]},
			{apothem.Div(side), "", row["apothem_over_side"]},
			{area.Div(side.Mul(side)), "", row["area_over_side2"]},
		} {
			if c.exact != "" && !c.x.Equal(k.formula(c.exact)) {
				t.Errorf("n = %s: %s is not %s", row["n"], c.x.Decimal(20), c.exact)
			}
			if !decimalAgrees(c.x, c.places) {
				t.Errorf("n = %s: %s, table has %s", row["n"], c.x.Decimal(20), c.places)
			}
		}
	}
}

// TestHeptadecagon holds Gauss's formula, his periods and the minimal polynomial together.
func TestHeptadecagon(t *testing.T) {
	rows := map[string]map[string]string{}
	for _, row := range readTable(t, "heptadecagon.tsv") {
		rows[row["quantity"]] = row
	}
	k := newKit()
	gauss := k.formula(rows["cos(2*pi/17)"]["exact"])
	if !gauss.Equal(k.step17().x) {
		t.Error("two ways to cos 2π/17 differ")
	}
	half := k.root(gauss.Add(k.int(1)).Div(k.int(2)))
	side := k.formula(rows["sin(pi/17)*2 (side/R)"]["exact"])
	quadratic := func(b, c *Real) *Real { // the larger root of x² + bx + c
		return k.root(b.Mul(b).Sub(c.MulInt(4))).Sub(b).Div(k.int(2))
	}
	eight := quadratic(k.int(1), k.int(-4))
	other := eight.Neg().Sub(k.int(1))
	four, third := quadratic(eight.Neg(), k.int(-1)), quadratic(other.Neg(), k.int(-1))
	for _, c := range []struct {
		name string
		x    *Real
	}{
		{"cos(2*pi/17)", gauss},
		{"cos(pi/17)", half},
		{"sin(pi/17)*2 (side/R)", side},
		{"17-gon period eta0 (8 terms)", eight},
		{"17-gon period eta0,0 (4 terms: 1,4)", four},
		{"17-gon period eta1,0 (3,5)", third},
		{"17-gon: 2cos(2pi/17)", quadratic(four.Neg(), third)},
	} {
		if !decimalAgrees(c.x, rows[c.name]["decimal"]) {
			t.Errorf("%s = %s, table has %s", c.name, c.x.Decimal(40), rows[c.name]["decimal"])
		}
	}
	if !quadratic(four.Neg(), third).Equal(gauss.MulInt(2)) {
		t.Error("the larger root of the last quadratic is not 2cos 2π/17")
	}
	if !side.Mul(side).Equal(k.int(2).Sub(gauss.MulInt(2))) || !k.closes(k.step17(), 17) {
		t.Error("the 17-gon does not close")
	}
	p := k.int(0) // the minimal polynomial, by Horner
	for _, c := range []int64{256, 128, -448, -192, 240, 80, -40, -8, 1} {
		p = p.Mul(gauss).Add(k.int(c))
	}
	if !p.IsZero() {
		t.Error("cos 2π/17 is no root of its minimal polynomial")
	}
}
