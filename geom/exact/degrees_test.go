package exact

import (
	"math"
	"slices"
	"testing"
)

// TestCosSinNearFloats holds every cosine and sine to that of the library math.
func TestCosSinNearFloats(t *testing.T) {
	k := newKit()
	for _, den := range []int64{2, 3, 5, 15, 60} {
		for n := int64(-400); n <= 800; n++ {
			c, s := k.cos(n, den), k.sin(n, den)
			a := float64(n) / float64(den) * math.Pi / 180
			if math.Abs(c.Float()-math.Cos(a)) > 1e-14 || math.Abs(s.Float()-math.Sin(a)) > 1e-14 {
				t.Fatalf("%d/%d°: %v, %v", n, den, c.Float(), s.Float())
			}
		}
	}
}

// TestAngleIdentities decides identities between whole degrees (from memory; that of cos 20°
// cos 40° cos 80° is known as Morrie's law).
func TestAngleIdentities(t *testing.T) {
	k := newKit()
	for n := int64(0); n <= 180; n++ {
		c, s := k.cos(n, 1), k.sin(n, 1)
		if !c.Mul(c).Add(s.Mul(s)).Equal(k.int(1)) {
			t.Errorf("sin² + cos² is not 1 at %d°", n)
		}
		if triple := k.cos(3*n, 1); !c.Mul(c).Mul(c).MulInt(4).Sub(c.MulInt(3)).Equal(triple) {
			t.Errorf("4cos³ - 3cos is not the cosine of the triple at %d°", n)
		}
	}
	tan := func(n int64) *Real { return k.sin(n, 1).Div(k.cos(n, 1)) }
	x := k.cos(40, 1)
	for _, c := range []struct {
		name        string
		left, right *Real
	}{
		{"8x³ + 1 = 6x at cos 40°", x.Mul(x).Mul(x).MulInt(8).Add(k.int(1)), x.MulInt(6)},
		{"cos 20° cos 40° cos 80°", k.cos(20, 1).Mul(k.cos(40, 1)).Mul(k.cos(80, 1)), k.frac(1, 8)},
		{"cos 40° + cos 80°", k.cos(40, 1).Add(k.cos(80, 1)), k.cos(20, 1)},
		{"sin 50°", k.sin(50, 1), k.cos(40, 1)},
		{"tan 10° tan 50° tan 70°", tan(10).Mul(tan(50)).Mul(tan(70)), k.sqrt(3).Div(k.int(3))},
		{"cos 20.5° by halving", k.cos(41, 2).square().MulInt(2).Sub(k.int(1)), k.cos(41, 1)},
		{"√(1 - cos² 40°)", k.root(k.int(1).Sub(x.square())), k.sin(40, 1)},
		{"√(1 - cos² 7°)", k.root(k.int(1).Sub(k.cos(7, 1).square())), k.sin(7, 1)},
	} {
		if !c.left.Equal(c.right) {
			t.Errorf("%s: %s is not %s", c.name, c.left.Decimal(20), c.right.Decimal(20))
		}
	}
}

// TestFractionsOfDegrees tries identities over the larger bases: every
// generator must be the cosine it is taken for, and roots must be recognised.
func TestFractionsOfDegrees(t *testing.T) {
	for _, den := range []int64{3, 5, 15, 10, 60} {
		k := newKit()
		for _, n := range []int64{1, 7} {
			c, s := k.cos(n, den), k.sin(n, den)
			if !c.Mul(c).Add(s.Mul(s)).Equal(k.int(1)) {
				t.Errorf("sin² + cos² is not 1 at %d/%d°", n, den)
			}
			if double := k.cos(2*n, den); !c.Mul(c).MulInt(2).Sub(k.int(1)).Equal(double) {
				t.Errorf("2cos² - 1 is not the cosine of the double at %d/%d°", n, den)
			}
			if den < 10 && !k.root(k.int(1).Sub(c.Mul(c))).Equal(s) {
				t.Errorf("√(1 - cos²) is not the sine at %d/%d°", n, den)
			}
		}
	}
}

// TestBaseRoots finds roots of squares in the base, none of twice a square, and inverses.
func TestBaseRoots(t *testing.T) {
	tower := newTower()
	ninth, fifth := polynomial(ninthLevel, 3, -2, 5), polynomial(twentyFifthLevel, -1, 4, 0, 2, 7)
	root27 := horner(twentySeventhLevel, []*element{ninth, constant(integer{k: 4}), ninth})
	for _, x := range []*element{ninth, fifth, root27, ninth.add(fifth), tower.mul(ninth, fifth), root27.add(fifth)} {
		square := tower.mul(x, x)
		r := tower.baseRoot(square)
		if r == nil || !tower.mul(r.num, r.num).equal(square.scale(r.den.mul(r.den))) {
			t.Errorf("no root of the square of %v", x.levels())
		}
		if r := tower.baseRoot(square.scale(integer{k: 2})); r != nil {
			t.Errorf("a root of twice the square of %v", x.levels())
		}
		inverse, n := tower.invert(x)
		if !tower.mul(inverse, x).equal(constant(n)) || n.sign() == 0 {
			t.Errorf("no inverse of %v", x.levels())
		}
	}
	conjugate := tower.fraction(generators[twentyFifthLevel].conjugate, integer{k: 7})
	square := conjugate.mul(conjugate)
	if r := tower.numberRoot(square, levelSet{}); r == nil || !r.mul(r).num.equal(square.num) {
		t.Errorf("the square of a conjugate, which needs a denominator, has no root")
	}
}

// TestMinutesShareRoots holds how few roots all minutes of arc together need.
func TestMinutesShareRoots(t *testing.T) {
	k := newKit()
	for n := int64(1); n < 120; n += 7 {
		k.cos(n, 60).form()
	}
	if got := len(k.f.tower.levels) - baseLevels - 1; got > 6 {
		t.Errorf("%d roots, where √2, √3, √5, √(10 + 2√5), √(2 + √2) and √(2 + √(2 + √2)) are enough", got)
	}
}

// TestSpareBits holds what proves that baseRoot misses no root: how much longer than half its
// square's the coefficients of a root can be, by the norms of the matrix that takes
// coefficients to conjugates, and of its inverse.
func TestSpareBits(t *testing.T) {
	matrix := conjugatesOfPowers()
	inverse := inverted(matrix)
	if bits := math.Log2(rowNorm(matrix))/2 + math.Log2(rowNorm(inverse)); bits > 9 || spareBits < bits+2 {
		t.Errorf("a root may have %v bits more than half of its square's, where %d are spare", bits, spareBits)
	}
}

// conjugatesOfPowers has a row for each embedding of the base in the real numbers: the images
// of the products of powers of the generators.
func conjugatesOfPowers() (rows [][]float64) {
	cos := func(n, d int) float64 { return 2 * math.Cos(2*math.Pi*float64(n)/float64(d)) }
	for _, k := range []int{1, 2, 4, 5, 7, 8, 10, 11, 13} { // 2cos 40°/3 is that of 1/27
		for _, m := range []int{1, 2, 4, 8, 16} {
			c, theta, psi := cos(k, 9), cos(k, 27), cos(m, 25)+cos(7*m, 25)
			var row []float64
			for i := range 45 {
				row = append(row, math.Pow(c, float64(i%3))*math.Pow(theta, float64(i/3%3))*math.Pow(psi, float64(i/9)))
			}
			rows = append(rows, row)
		}
	}
	return rows
}

func rowNorm(m [][]float64) (norm float64) {
	for _, row := range m {
		sum := 0.0
		for _, x := range row {
			sum += math.Abs(x)
		}
		norm = max(norm, sum)
	}
	return norm
}

// inverted is the inverse of a matrix, by Gauss and Jordan with pivots.
func inverted(m [][]float64) [][]float64 {
	n := len(m)
	work, inverse := make([][]float64, n), make([][]float64, n)
	for i, row := range m {
		work[i] = append(slices.Clone(row), make([]float64, n)...)
		work[i][n+i] = 1
	}
	for k := range n {
		pivot := k
		for i := k; i < n; i++ {
			if math.Abs(work[i][k]) > math.Abs(work[pivot][k]) {
				pivot = i
			}
		}
		work[k], work[pivot] = work[pivot], work[k]
		for i := range n {
			factor := work[i][k] / work[k][k]
			if i == k {
				factor = 1 - 1/work[k][k]
			}
			for j := range work[i] {
				work[i][j] -= factor * work[k][j]
			}
		}
	}
	for i := range inverse {
		inverse[i] = work[i][n:]
	}
	return inverse
}
