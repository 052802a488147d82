package exact

import "testing"

// TestFullRank holds that a system of parities is settled only when every
// unknown is determined.
func TestFullRank(t *testing.T) {
	row := func(odd bool, unknowns ...int) (p parity) {
		p.odd = odd
		for _, i := range unknowns {
			p.unknowns.add(i)
		}
		return p
	}
	system := newParities(3)
	for range 10 * spareMaps {
		for _, r := range []parity{row(true, 0, 1), row(false, 2), row(true, 0, 1, 2)} {
			if !system.add(r) {
				t.Fatal("a contradiction where there is none")
			}
		}
	}
	if system.isSettled() {
		t.Error("settled, though unknowns 0 and 1 only ever came together")
	}
	if !system.add(row(true, 1)) || !system.isSettled() {
		t.Error("not settled by the missing equation")
	}
	if ones := system.solution(); ones != setOf(1) {
		t.Errorf("solution %v", ones)
	}
	if system.add(row(true, 0)) {
		t.Error("a contradiction is not noticed")
	}
}
