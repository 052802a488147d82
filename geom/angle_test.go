package geom_test

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"trammel/geom"
)

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(s)
	}
	return r
}

func degrees(s string) geom.Angle { return geom.Degrees(rat(s)) }

// corner is the angle of three points, the vertex in the middle.
func corner(s string) geom.Angle {
	ps := pts(s)
	return geom.Corner(ps[0], ps[1], ps[2], false)
}

func reflex(s string) geom.Angle {
	ps := pts(s)
	return geom.Corner(ps[0], ps[1], ps[2], true)
}

// sum adds multiples of angles: sum(k, a, l, b) is ka + lb.
func sum(parts ...any) geom.Angle {
	total := degrees("0")
	for i := 0; i < len(parts); i += 2 {
		total = total.Add(parts[i+1].(geom.Angle).Mul(rat(parts[i].(string))))
	}
	return total
}

// tan is the angle whose tangent is 1/n.
func tan(n string) geom.Angle { return corner(n + ",1 0,0 1,0") }

func TestAngleCmp(t *testing.T) {
	threeFourFive := []geom.Angle{corner("4,0 0,0 0,3"), corner("0,0 0,3 4,0"), corner("0,0 4,0 0,3")}
	heron := []geom.Angle{corner("14,0 0,0 5,12"), corner("0,0 5,12 14,0"), corner("0,0 14,0 5,12")}
	pentagon := corner("1,0 0,0 √5/4-1/4,1")
	tests := []struct {
		name string
		a, b geom.Angle
		want int
	}{
		{"a right angle", threeFourFive[0], degrees("90"), 0},
		{"an equilateral triangle's", corner("1,0 0,0 1/2,√3/2"), degrees("60"), 0}, // Euclid I.32
		{"half a square's", corner("1,0 0,0 1,1"), degrees("45"), 0},
		{"a straight angle", corner("1,0 0,0 -1,0"), degrees("180"), 0},
		{"no angle", corner("1,√2 0,0 2,2√2"), degrees("0"), 0},
		{"a hexagon's", corner("1,0 0,0 -1/2,√3/2"), degrees("120"), 0},
		{"a reflex right angle", reflex("4,0 0,0 0,3"), degrees("270"), 0},
		{"a reflex straight angle", reflex("1,0 0,0 -1,0"), degrees("180"), 0},
		{"the whole turn", reflex("1,0 0,0 2,0"), degrees("360"), 0},
		{"the whole turn is not nothing", reflex("1,0 0,0 2,0"), degrees("0"), 1},
		{"either way round", reflex("1,0 0,0 1/2,√3/2"), reflex("1/2,√3/2 0,0 1,0"), 0},
		{"an angle and its reflex", sum("1", corner("1,7 2,2 5,3"), "1", reflex("1,7 2,2 5,3")), degrees("360"), 0},
		{"the sum in 3, 4, 5", sum("1", threeFourFive[0], "1", threeFourFive[1], "1", threeFourFive[2]), degrees("180"), 0}, // Euclid I.32
		{"the sum in 13, 14, 15", sum("1", heron[0], "1", heron[1], "1", heron[2]), degrees("180"), 0},
		{"the two under a right angle", sum("1", threeFourFive[1], "1", threeFourFive[2]), threeFourFive[0], 0},
		{"the sum in a quadrilateral", sum("1", corner("0,4 0,0 5,0"), "1", corner("0,0 5,0 7,3"), "1", corner("5,0 7,3 0,4"), "1", corner("7,3 0,4 0,0")), degrees("360"), 0},
		{"a size, not a direction", degrees("370"), degrees("10"), 1},
		{"many times round", sum("20", threeFourFive[0]), degrees("1800"), 0},
		{"a half", corner("2,1 0,0 1,0"), sum("1/2", corner("3,4 0,0 1,0")), 0},
		{"a third", sum("1/3", threeFourFive[0]), degrees("30"), 0},
		{"a third that no ruler and compasses give", sum("1/3", corner("1,0 0,0 1/2,√3/2")), degrees("20"), 0},
		{"a third of 3, 4, 5's", sum("1/3", threeFourFive[1], "1/3", threeFourFive[2]), degrees("30"), 0},
		{"2/3 and 1/7", sum("2/3", heron[0], "1/7", heron[1]), sum("1/7", heron[1], "2/3", heron[0]), 0},
		{"taken away", sum("1", degrees("90"), "-1", threeFourFive[1]), threeFourFive[2], 0},
		{"below nothing", sum("1", threeFourFive[1], "-1", threeFourFive[2]), degrees("0"), 1},
		{"Euler's 45°", sum("1", tan("2"), "1", tan("3")), degrees("45"), 0},                      // Euler, 1738: ¼π = arctan 1/2 + arctan 1/3
		{"Machin's 45°", sum("4", tan("5"), "-1", tan("239")), degrees("45"), 0},                  // Machin, 1706
		{"Gauss's 45°", sum("12", tan("18"), "8", tan("57"), "-5", tan("239")), degrees("45"), 0}, // Gauss, Werke II
		{"almost Machin's", sum("4", tan("5"), "-1", tan("240")), degrees("45"), 1},
		{"a pentagon's, nearly", pentagon, degrees("72"), 1},
		{"1e-12 more than 45°", corner("1,0 0,0 1,1.000000000001"), degrees("45"), 1},
		{"1e-12 less than 45°", corner("1,0 0,0 1,0.999999999999"), degrees("45"), -1},
		{"1e-30 more than a right angle", corner("1,0 0,0 -1e-30,1"), degrees("90"), 1},
		{"1e-30 less than a right angle", corner("1,0 0,0 1e-30,1"), degrees("90"), -1},
		{"1e-30 more than nothing", corner("1,0 0,0 1,1e-30"), degrees("0"), 1},
		{"1e-30 less than a straight angle", corner("1,0 0,0 -1,1e-30"), degrees("180"), -1},
		{"1e-30 of a whole turn left", reflex("1,0 0,0 1,1e-30"), degrees("360"), -1},
		{"many degrees and one corner", corner("3,4 0,0 1,0"), degrees("53.1301023"), 1}, // arccos 3/5 = 53.1301023541559787…°
		{"and on the other side", corner("3,4 0,0 1,0"), degrees("53.1301024"), -1},
		{"arccos 3/5 to 16 decimals", corner("3,4 0,0 1,0"), degrees("53.1301023541559787"), 1}, // 53.13010235415597870314…°, by arbitrary precision
		{"and on the other side", corner("3,4 0,0 1,0"), degrees("53.1301023541559788"), -1},
		{"10^-60 more than 45°", degrees("45." + strings.Repeat("0", 59) + "1"), corner("1,0 0,0 1,1"), 1},
		{"of a reflex angle", reflex("3,4 0,0 1,0"), degrees("306.8698976458440212968"), 1},
		{"in the second quadrant", corner("-3,4 0,0 1,0"), degrees("126.8698976458440212969"), -1},
		{"a 17-gon's, nearly", corner("0.932472229404355804573115891821,0.361241666187152948744714596183 0,0 1,0"), degrees("360/17"), -1}, // cosine and sine cut off: by PARI/GP 2.6·10^-29° less
		{"1001 and a little more", sum("1001", tan("2"), "1001", tan("3")), degrees("45045.00000000000000000001"), -1},
		{"1001 times", sum("1001", tan("2"), "1001", tan("3")), degrees("45045"), 0},
		{"a million times", sum("1000000", corner("3,4 0,0 1,0")), sum("1000000", corner("6,8 0,0 2,0")), 0},
	}
	for _, test := range tests {
		got, err := test.a.Cmp(test.b)
		back, err2 := test.b.Cmp(test.a)
		if err != nil || err2 != nil || got != test.want || back != -test.want {
			t.Errorf("%s: %s and %s compare as %d and %d, %v, %v; want %d", test.name, test.a, test.b, got, back, err, err2, test.want)
		}
	}
}

// TestAngleUndecided has angles that are equal, in more than can be added up, and a
// difference less than can be seen.
func TestAngleUndecided(t *testing.T) {
	tests := []struct {
		name, want string
		a, b       geom.Angle
	}{
		{"too near", "not decided: the two angles are the same to 1200 decimals", corner("1,0 0,0 1,1"), degrees("45." + strings.Repeat("0", 1300) + "1")},
		{"too many", "not decided: more than 1000 turns of angles would have to be added up",
			sum("601", tan("2"), "601", tan("3"), "4", tan("5")), sum("27090", degrees("1"), "1", tan("239"))},
	}
	for _, test := range tests {
		if got, err := test.a.Cmp(test.b); err == nil || !strings.HasPrefix(err.Error(), test.want) {
			t.Errorf("%s: %d, %v; want %s", test.name, got, err, test.want)
		}
	}
}

func TestAngleText(t *testing.T) {
	tests := []struct {
		a     geom.Angle
		text  string
		exact string
	}{
		{degrees("60"), "60°", "60"},
		{degrees("22.5"), "22.5°", "45/2"},
		{degrees("0"), "0°", "0"},
		{corner("1,0 0,0 1/2,√3/2"), "60°", "60"},
		{corner("1+√2,1 0,0 1,0"), "22.5°", "45/2"}, // tan 22.5° = √2 − 1
		{corner("1,0 0,0 2+√3,1"), "15°", "15"},     // tan 15° = 2 − √3
		{degrees("1/3"), "0°20′", "1/3"},
		{degrees("37/3"), "12°20′", "37/3"},
		{degrees("-37/3"), "−12°20′", "-37/3"},
		{degrees("-0.5"), "−0.5°", "-1/2"},
		{degrees("5.625"), "5.625°", "45/8"},
		{degrees("1/7"), "≈ 0.14°", "1/7"},
		{degrees("0.1"), "0.1°", "1/10"},
		{corner("1,0 0,0 2,0"), "0°", "0"},
		{corner("1,0 0,0 -2,0"), "180°", "180"},
		{reflex("1,0 0,0 0,1"), "270°", "270"},
		{corner("3,4 0,0 1,0"), "≈ 53.13°", ""},
		{corner("1,0 0,0 1,1.000000000001"), "≈ 45°", ""},
		{sum("1/2", corner("1,0 0,0 1+√2,1")), "11.25°", "45/4"},
		{sum("4", tan("5"), "-1", tan("239")), "45°", "45"},
	}
	for _, test := range tests {
		if got := test.a.String(); got != test.text {
			t.Errorf("%q, want %q", got, test.text)
		}
		r, ok := test.a.Exact()
		if ok != (test.exact != "") || ok && r.Cmp(rat(test.exact)) != 0 {
			t.Errorf("%s is exactly %v, %v; want %s", test.text, r, ok, test.exact)
		}
	}
}

func TestAngleFloat(t *testing.T) {
	tests := []struct {
		a    geom.Angle
		want float64
	}{
		{degrees("22.5"), 22.5},
		{corner("3,4 0,0 1,0"), 53.13010235415598},
		{reflex("3,4 0,0 1,0"), 306.869897645844},
		{reflex("1,0 0,0 2,0"), 360},
		{sum("-1/2", corner("1,0 0,0 0,1")), -45},
	}
	for _, test := range tests {
		if got := test.a.Float(); math.Abs(got-test.want) > 1e-12 {
			t.Errorf("%v, want %v", got, test.want)
		}
	}
}

func TestAngleCosSin(t *testing.T) {
	tests := []struct {
		name     string
		a        geom.Angle
		cos, sin string
	}{
		{"60°", degrees("60"), "1/2", "√3/2"},
		{"405°", degrees("405"), "√2/2", "√2/2"},
		{"-90°", degrees("-90"), "0", "-1"},
		{"of 3, 4, 5", corner("3,4 0,0 1,0"), "3/5", "4/5"},
		{"reflex", reflex("3,4 0,0 1,0"), "3/5", "-4/5"},
		{"twice", sum("2", corner("3,4 0,0 1,0")), "-7/25", "24/25"},
		{"half", sum("1/2", corner("3,4 0,0 1,0")), "2√5/5", "√5/5"},
		{"half of a reflex one", sum("1/2", reflex("3,4 0,0 1,0")), "-2√5/5", "√5/5"},
		{"backwards", sum("-3/2", corner("3,4 0,0 1,0")), "2√5/25", "-11√5/25"},
		{"with degrees", sum("1", corner("3,4 0,0 1,0"), "1", degrees("90")), "-4/5", "3/5"},
	}
	for _, test := range tests {
		cos, sin, err := test.a.CosSin(field)
		if err != nil || !cos.Equal(num(test.cos)) || !sin.Equal(num(test.sin)) {
			t.Errorf("%s: %v, %s; want %s, %s", test.name, err, geom.Point{X: cos, Y: sin}, test.cos, test.sin)
		}
	}
	for _, test := range []struct {
		a    geom.Angle
		want string
	}{
		{sum("1/3", corner("3,4 0,0 1,0")), "an angle can be halved exactly, not divided by 3"},
		{sum("5/6", corner("3,4 0,0 1,0")), "an angle can be halved exactly, not divided by 6"},
		{sum("1/7", degrees("1"), "1", corner("3,4 0,0 1,0")), "1/7° cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"},
	} {
		if _, _, err := test.a.CosSin(field); err == nil || err.Error() != test.want {
			t.Errorf("%v, want %s", err, test.want)
		}
	}
}

func TestTurned(t *testing.T) {
	for v, want := range map[string]string{
		"1,0": "0", "1,1": "45", "0,3": "90", "-√3,1": "150", "-2,0": "180", "-1,-1": "225", "0,-1": "270", "1,-√3": "300", "2+√3,-1": "345",
	} {
		if c, err := geom.Turned(vec(v)).Cmp(degrees(want)); c != 0 || err != nil {
			t.Errorf("%s is turned by %s, %v; want %s°", v, geom.Turned(vec(v)), err, want)
		}
	}
}

// TestMinutes finds sizes in minutes and tenths of degrees from the corners
// that have them, and tells them from corners a hair wider.
func TestMinutes(t *testing.T) {
	for size, text := range map[string]string{
		"37/3": "12°20′", "1/60": "0°1′", "10739/60": "178°59′", "0.1": "0.1°", "44.9": "44.9°",
		"77/4": "19.25°", "90": "90°", "401/15": "26°44′", "45/8": "5.625°", "137": "137°",
	} {
		cos, sin, err := field.CosSin(rat(size))
		if err != nil {
			t.Fatal(err)
		}
		zero, one := field.Int(0), field.Int(1)
		a := geom.Corner(geom.Point{X: one, Y: zero}, geom.Point{X: zero, Y: zero}, geom.Point{X: cos, Y: sin}, false)
		if got, ok := a.Text(); !ok || got != text {
			t.Errorf("%s° is %q, %v; want %s", size, got, ok, text)
		}
		hair := field.Rat(rat("1/10000000000000000000000000000000000"))
		wider := geom.Corner(geom.Point{X: one, Y: zero}, geom.Point{X: zero, Y: zero}, geom.Point{X: cos.Sub(hair), Y: sin}, false)
		if got, ok := wider.Text(); ok {
			t.Errorf("a little more than %s° is %q", size, got)
		}
	}
}
