package exact

import (
	"math"
	"math/big"
	"testing"
)

// TestSumOfTurns tells sums of angles from 0, and leaves those that are 0: 4 arctan 1/5 -
// arctan 1/239 = 45° (Machin 1706).
func TestSumOfTurns(t *testing.T) {
	k := newKit()
	turn := func(times int64, x, y int64) Turn {
		return Turn{Times: big.NewRat(times, 1), X: k.int(x), Y: k.int(y)}
	}
	machin := []Turn{turn(4, 5, 1), turn(-1, 239, 1)}
	tiny := big.NewRat(1, 1e18)
	for _, c := range []struct {
		name    string
		turns   []Turn
		degrees *big.Rat
		sign    int
		radians float64
	}{
		{"Machin's angles less 45°", machin, big.NewRat(-45, 1), 0, 0},
		{"and 10^-18 of a degree", machin, new(big.Rat).Add(big.NewRat(-45, 1), tiny), 1, math.Pi / 180e18},
		{"less that", machin, new(big.Rat).Sub(big.NewRat(-45, 1), tiny), -1, -math.Pi / 180e18},
		{"the x axis", []Turn{turn(1, 1, 0)}, big.NewRat(1, 1), 1, math.Pi / 180},
		{"the second quadrant", []Turn{turn(1, -1, 1)}, new(big.Rat), 1, 3 * math.Pi / 4},
		{"the third", []Turn{turn(1, -1, -1)}, new(big.Rat), 1, 5 * math.Pi / 4},
		{"the fourth", []Turn{turn(1, 1, -1)}, new(big.Rat), 1, 7 * math.Pi / 4},
		{"a third of a right angle less 31°", []Turn{{big.NewRat(1, 3), k.int(0), k.int(2)}}, big.NewRat(-31, 1), -1, -math.Pi / 180},
	} {
		sign, radians := k.f.SumOfTurns(c.turns, c.degrees)
		if sign != c.sign || math.Abs(radians-c.radians) > 1e-14*math.Abs(c.radians) {
			t.Errorf("%s: sign %d, %v radians, want %d, %v", c.name, sign, radians, c.sign, c.radians)
		}
	}
	if sign, _ := NewRoughField().SumOfTurns(machin, big.NewRat(1, 1)); sign != 0 {
		t.Errorf("a rough field tells the sign %d", sign)
	}
}
