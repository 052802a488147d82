package lang_test

import (
	"testing"

	"trammel/lang"
)

// regions are theorems that hold in a part of the figures of a source, and what must be said
// of them: Always or Tried where the source names the part, HereOnly where it leaves it open.
// Elementary, from memory, no source, unless one is named.
var regions = []struct {
	about, lines, claim string
	want                lang.Reach
}{
	{"the foot of an altitude", "given points A, B, C\nn, F by drop(AB, C)", "AF + FB = AB", lang.HereOnly},
	{"the foot of an altitude", "given acute triangle ABC\nn, F by drop(AB, C)", "F between A and B", lang.Tried},
	{"the foot of an altitude, signless", "given points A, B, C\nn, F by drop(AB, C)", "AF² + CF² = AC²", lang.Always},
	{"the angle at the centre, Euclid III.20", "given points A, B, C\nk, O by circumcircle(A, B, C)", "angle AOB = 2 angle ACB", lang.HereOnly},
	{"the centre inside", "given points A, B, C\nk, O by circumcircle(A, B, C)", "O inside ABC", lang.HereOnly},
	{"the centre inside", "given acute triangle ABC\nk, O by circumcircle(A, B, C)", "O inside ABC", lang.Tried},
	{"the orthocentre's distance", "given points A, B, C\nH, D, E, F by orthocentre(A, B, C)\nk, O by circumcircle(A, B, C)\nM by middle(B, C)", "AH = 2 OM", lang.Always},
	{"parts of an altitude", "given points A, B, C\nH, D, E, F by orthocentre(A, B, C)", "AH + HD = AD", lang.HereOnly},
	{"parts of the altitudes", "given points A, B, C\nH, D, E, F by orthocentre(A, B, C)", "AH * HD = BH * HE", lang.Always},
	{"order of points on a line", "given A (0, 0)\ngiven B (6, 0)\nline m through A and B\ngiven P on m", "AP + PB = AB", lang.HereOnly},
	{"order of points on a line", "given A (0, 0)\ngiven B (6, 0)\ngiven P between A and B", "AP + PB = AB", lang.Always},
	{"Van Schooten: PA = PB + PC on one arc", "given circle k centre O radius 3\ngiven A on k at 90°\ngiven B on k at 210°\ngiven C on k at 330°\ngiven P on k at about 270°", "PA = PB + PC", lang.HereOnly},
	{"Van Schooten: PA = PB + PC on one arc", "given circle k centre O radius 3\ngiven A on k at 90°\ngiven B on k at 210°\ngiven C on k at 330°\ntake P on k, below BC", "PA = PB + PC", lang.Tried},
	{"Van Schooten, squares", "given circle k centre O radius 3\ngiven A on k at 90°\ngiven B on k at 210°\ngiven C on k at 330°\ngiven P on k", "PA² + PB² + PC² = 54", lang.Tried},
	{"Ptolemy, Almagest I.10", "given circle k centre O radius 3\ngiven A on k\ngiven B on k\ngiven C on k\ngiven D on k", "AC * BD = AB * CD + BC * AD", lang.HereOnly},
	{"Ptolemy's inequality", "given points A, B, C, D", "AC * BD ≤ AB * CD + BC * AD", lang.Tried},
	{"Viviani", "given A (0, 0)\ngiven B (6, 0)\ngiven C (3, 3*sqrt(3))\ngiven P about (3, 1)\nd, D by drop(AB, P)\ne, E by drop(BC, P)\nf, F by drop(CA, P)", "PD + PE + PF = 3*sqrt(3)", lang.HereOnly},
	{"sums of areas", "given A (0, 0)\ngiven B (6, 0)\ngiven C (2, 5)\ngiven P about (2, 2)", "area of ABP + area of BCP + area of CAP = area of ABC", lang.HereOnly},
	{"Viviani", "given A (0, 0)\ngiven B (6, 0)\ngiven C (3, 3*sqrt(3))\ngiven P inside ABC\nd, D by drop(AB, P)\ne, E by drop(BC, P)\nf, F by drop(CA, P)", "PD + PE + PF = 3*sqrt(3)", lang.Always},
	{"bisector and opposite side, Euclid VI.3", "given points A, B, C\nH by halve(B, A, C)\nline l through A and H\nline m through B and C\nl meets m at D", "BD : DC = AB : AC", lang.Always},
	{"the incircle lies inside", "given points A, B, C\nk, I by incircle(A, B, C)", "I inside ABC", lang.Tried},
	{"tangents to the incircle", "given points A, B, C\nk, I by incircle(A, B, C)\nn, D by drop(AB, I)", "2 AD = AB + AC - BC", lang.Tried},
	{"the excircle lies outside", "given points A, B, C\nk, J by excircle(A, B, C)\nn, D by drop(AB, J)", "2 AD = AB + BC + CA", lang.Always},
	{"the excentre on the bisector", "given triangle ABC\nk, I by incircle(A, B, C)\nj, J by excircle(A, B, C)", "collinear AIJ", lang.Always},
	{"Euler, how far the centres are apart", "given triangle ABC\no, O by circumcircle(A, B, C)\nk, I by incircle(A, B, C)", "OI * OI = OA * OA - 2 OA * radius k", lang.Always},
	{"the circle on the centres", "given triangle ABC\nk, I by incircle(A, B, C)\nj, J by excircle(A, B, C)", "concyclic BICJ", lang.Always},
	{"the excircle's tangent beyond B", "given points A, B, C\nk, J by excircle(A, B, C)\nn, D by drop(AB, J)", "AB + BD = AD", lang.Tried},
	{"angles over one chord, Euclid III.21", "given circle k centre O radius 3\ngiven A on k at 210°\ngiven B on k at 330°\ngiven P on k at about 80°\ngiven Q on k at about 110°", "angle APB = angle AQB", lang.HereOnly},
	{"angles over one chord, Euclid III.21", "given circle k centre O radius 3\ngiven A on k at 210°\ngiven B on k at 330°\ntake P on k, above AB\ntake Q on k, above AB", "angle APB = angle AQB", lang.Always},
	{"chords that cross, Euclid III.35, III.36", "given circle k centre O radius 3\ngiven points P\nline m through P and O\nm meets k at X and Y", "PX * PY = OP² - 9", lang.HereOnly},
	{"the exterior angle, Euclid I.32", "given points A, B, C\njoin AB\nproduce AB beyond B by 2 to D", "angle CBD = angle BAC + angle ACB", lang.Always},
	{"angles at a point within", "given A (0, 0)\ngiven B (6, 0)\ngiven C (2, 5)\ngiven D about (2, 2)", "angle ADB + angle BDC + angle CDA = 360°", lang.HereOnly},
	{"angles at a point within", "given points A, B, C\ngiven D inside ABC", "angle ADB + angle BDC + angle CDA = 360°", lang.Always},
	{"angles of a quadrilateral that may cross itself", "given points A, B, C, D", "angle ABC + angle BCD + angle CDA + angle DAB = 360°", lang.HereOnly},
	{"angles of a quadrilateral, which is convex", "given quadrilateral ABCD", "angle ABC + angle BCD + angle CDA + angle DAB = 360°", lang.Always},
	{"angles of a quadrilateral, which is convex", "given quadrilateral ABCD with AB = about 4, BC = about 5, CD = about 6, DA = about 6, angle B = about 80°", "angle ABC + angle BCD + angle CDA + angle DAB = 360°", lang.Always},
	{"a kite, which is convex", "given kite ABCD with AB = about 4, BC = about 6, AC = about 7", "AC bisects angle DAB", lang.Always},
	{"Varignon, of any", "given points A, B, C, D\nK by middle(A, B)\nL by middle(B, C)\nM by middle(C, D)\nN by middle(D, A)", "area of KLMN = 1/2 area of ABCD", lang.Tried},
	{"medians", "given points A, B, C\nL by middle(B, C)", "AB² + AC² = 2 AL² + 2 BL²", lang.Always},
}

// TestRegions: no claim that fails in a region which its source leaves open holds always.
func TestRegions(t *testing.T) {
	for _, test := range regions {
		r := lang.Compile("regions.trm", []byte("figure \"regions\"\n"+test.lines+"\nclaim here "+test.claim+"\n"))
		if r.Figure == nil {
			t.Errorf("%s: %s\n%s", test.about, r.Problems[0].Text, test.lines)
			continue
		}
		reaches, figures := r.Reaches(1)
		if reaches[0] != test.want {
			t.Errorf("%s: %s %s, want %s", test.about, test.claim, reaches[0], test.want)
		}
		if reaches[0] == lang.Tried && figures < 30 {
			t.Errorf("%s: tried in %d figures only", test.about, figures)
		}
		if counter := r.CounterExamples(); (len(counter) > 0) != (test.want == lang.HereOnly) {
			t.Errorf("%s: %d counter-examples", test.about, len(counter))
		}
	}
}
