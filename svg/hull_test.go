package svg

import "testing"

// TestHull has the hull of a text touch each side of its box, turn one way only,
// and hold all of its ink: a V is narrow at its foot, and its hull too.
func TestHull(t *testing.T) {
	for _, text := range []string{"V", "P12", "5.1 cm", "√(2+√3)", "W"} {
		label := Text{Runs: Label(text, len(text) < 4), Size: 3500}
		box, round := Measure(label), Hull(label)
		lo, hi := round[0], round[0]
		for i, p := range round {
			lo, hi = XY{min(lo.X, p.X), min(lo.Y, p.Y)}, XY{max(hi.X, p.X), max(hi.Y, p.Y)}
			if n := len(round); !turns(p, round[(i+1)%n], round[(i+2)%n]) {
				t.Errorf("%s: no corner after %v", text, p)
			}
		}
		if (lo != XY{box.Left, box.Top}) || (hi != XY{box.Right, box.Bottom}) {
			t.Errorf("%s: hull from %v to %v in the box %+v", text, lo, hi, box)
		}
	}
	for _, p := range Hull(Text{Runs: Label("V", true), Size: 3500}) {
		if p.Y > -200 && p.X > 2000 {
			t.Errorf("the foot of a V reaches %v", p)
		}
	}
	if Hull(Text{Size: 3500}) != nil {
		t.Error("nothing has a hull")
	}
}
