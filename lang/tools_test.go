package lang_test

import (
	"fmt"
	"testing"

	"trammel/lang"
)

// TestToolUses holds every act against the tool that a class would take for it
// (common practice, no source).
func TestToolUses(t *testing.T) {
	source := `figure "tools"
given A (0, 0)
given B 6 from A
arc c centre A radius AB
arc d centre B radius 5 cuts c at C above AB
join ABC
produce AB beyond B by 2 to D
take E on AB, 1 from A towards B
take F 3 from A at 70° to AB
M, n by bisect(A, B)
locus p equidistant from B and C
step off P[1 to 2] on c from B, radius 1
produce AC beyond C by AB to G
arc e centre F radius 2 AB - CD
arc f centre F radius half AB
`
	r := lang.Compile("tools.trm", []byte(source))
	got := fmt.Sprint(r.ToolUses())
	want := "[{straightedge [6 7 10 13]} {compasses [4 5 10 12 13 14 15]} {ruler [5 7 8 9 12 15]} {protractor [9]} {outright [11]}]"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
