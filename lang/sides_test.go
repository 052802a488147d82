package lang_test

import (
	"testing"

	"trammel/lang"
)

// TestSides: what holds on one side of something that the source does not name is not said
// to hold always, however far off or small the other side is; by coordinates, with
// figures in which each claim fails.
func TestSides(t *testing.T) {
	tests := []struct{ name, lines string }{
		{"an arc of 7°, P at 23°", `given circle k centre O radius 3
given A on k at 20°
given B on k at 27°
given C on k at 30°
given P on k
claim here angle APB = angle ACB
`},
		{"two points outside of a circle, A (-6, 0) and B (-10, 0)", `given A about (0, 0)
given C (0, 1)
given B about (3, 0)
circle k centre C radius 4
line m through B and A
k meets m at F and G
claim here angle CFG = angle CFA
`},
		{"a radius over four times as large as it is drawn, 13", `given A (0, 0)
given B (12, 0)
line m through A and B
given circle k centre A radius about 3
k meets m at Y and X
claim here AX + XB = AB
`},
		{"an obtuse triangle, A (9, -3)", `given A about (-1, -2)
given B (5, -4)
given C (-1, 1)
D, E, F, G by orthocentre(C, A, B)
claim here angle DCG = angle EBG
`},
		{"a point far along a line, at 14", `given A about (0, 0)
given B about (4, 0)
line m through A and B
given E on m
G by middle(B, E)
H by middle(A, G)
claim here angle EGB = angle BHA
`},
		{"an obtuse angle at B, C (6, 3); the claim after it hangs on it too", `given triangle ABC
line m1 through A and B
m2, D by drop(m1, C)
claim here angle CDA + angle ABD = 90°
claim here angle ABD + angle DCB = angle DCB
`},
		{"a length of another claim, A (-1, 1)", `given A about (-6, 1.1)
given B about (7, 1.9)
C, m1 by bisect(B, A)
D by layoff(A, B, 3)
claim here angle BDA = angle BCD
claim here CA + DC = BD
`},
		{"half a turn twice is a full one, D (-2, 0)", `given A about (0, 0)
given B about (5, 1)
line m through A and B
take D on m
claim here 2 angle DAB = 0°
`},
		{"what a construction needs to be unequal, P (9, 0.5)", `construction foo(point A, point B, point P) gives point Q
  "Halve {A}{P}."
  needs AB ≠ AP
  Q by middle(A, P)
end
given A (0, 0)
given B (6, 0)
given P about (4, -1)
Q by foo(A, B, P)
C by layoff(A, B, AP)
claim here AC + CB = AB
`},
		{"which of two meetings is taken, B (9, -9)", `given A (-9, -2)
given B about (4, 8)
given C (9, 2)
D by middle(A, B)
circle k1 centre B radius DC
line m1 through C and D
k1 meets m1 at E left of AC
k1 meets m1 at F other than E
G, H, I, J by orthocentre(B, E, D)
m2 by parallel(m1, I)
K by middle(G, A)
claim here angle BGF = angle IGB
`},
		{"the angle at the centre, over the lesser arc", `given triangle ABC
circle k1 centre B through A
line m1 through A and B
k1 meets m1 at D other than A
line m2 through D and A
m3 by erect(m2, D)
line m4 through C and D
k1 meets m4 at E other than D
F, G by squareon(B, D)
claim here angle EBG = 2 angle EAG
`},
		{"the foot of an altitude, the obtuse angle at A", `given obtuse triangle ABC
line m1 through A and B
m2, D by drop(m1, C)
line m3 through D and B
claim here angle DAB + angle ADC = 90°
`},
		{"which meeting is the nearer one, C (2, 3)", `given A about (0, 0)
given B about (5, 1)
given C about (-2, 3)
circle k centre A through C
line m through A and C
k meets m at X nearest B
claim here CX = 2 AC
`},
		{"which meeting is the farther one, C at 0° and B at 100°", `given circle q centre A radius about 3
given B on q
given C on q
E by triangleon(A, C)
line u through B and C
q meets u at F farthest from E
claim here FC = BC
`},
		{"the orthic triangle of an obtuse triangle, C (4, 2)", `given isosceles triangle ABC
D, E, F, G by orthocentre(B, A, C)
claim here FD bisects angle EFG
`},
		{"a point 4 away", `given A (0, 0)
given B about (1, 0)
join AB
claim here AB < 4
`},
	}
	for _, test := range tests {
		r := lang.Compile("sides.trm", []byte("figure \"sides\"\n"+test.lines))
		if r.Figure == nil {
			t.Fatalf("%s: %s", test.name, r.Problems[0].Text)
		}
		if reaches, _ := r.Reaches(1); reaches[0] == lang.Always {
			t.Errorf("%s: %s %s", test.name, reaches[0], r.Claims[0].Text)
		}
	}
}
