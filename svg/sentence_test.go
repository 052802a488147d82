package svg

import "testing"

func TestLowered(t *testing.T) {
	for text, want := range map[string]string{
		"Join P1 to P12, AP1P2.": "Join P₁ to P₁₂, AP₁P₂.",
		"AB = 5 cm, 2 AP1 = 3/4": "AB = 5 cm, 2 AP₁ = 3/4",
		"x2′ and 10 steps":       "x₂′ and 10 steps",
		"With radius 4, an arc.": "With radius 4, an arc.",
	} {
		if got := Lowered(text); got != want {
			t.Errorf("%q, not %q", got, want)
		}
	}
	runs := Sentence("AP₁₂ = P₃")
	if len(runs) != 4 || runs[0].Text != "AP" || runs[1].Text != "12" || !runs[1].Sub || runs[2].Text != " = P" || runs[3].Text != "3" || !runs[3].Sub {
		t.Errorf("%+v", runs)
	}
}
