package lang

import "testing"

// TestFine: nothing is said to hold always where it turns over in a region finer than
// other figures are looked for; the same claim of a figure with larger parts is refuted.
func TestFine(t *testing.T) {
	for part, want := range map[string]Reach{"1/100": HereOnly, "1/1000000*1/1000000": Tried} {
		r := Compile("t.trm", []byte(`figure "t"
given A (0, 0)
given B (6, 0)
line m through A and B
take M on m, `+part+` from A towards B
given P between A and B
claim here AM + MP = AP
`))
		if r.Problems.Failed() {
			t.Fatal(r.Problems)
		}
		if got, _ := r.Reaches(1); got[0] != want {
			t.Errorf("%s: %v, not %v", part, got[0], want)
		}
	}
}
