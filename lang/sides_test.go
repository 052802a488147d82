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
