package exact

import (
	"math/big"
	"testing"
)

// TestRoughField keeps what a rough field takes for 0 out of true fields.
func TestRoughField(t *testing.T) {
	tiny := new(big.Rat).SetFrac(big.NewInt(1), powerOfTen(30))
	signs := func(f *Field) (zero, positive, clear int) {
		z := f.Int(2).Sqrt().Mul(f.Int(3).Sqrt()).Sub(f.Int(6).Sqrt())
		return z.Sign(), z.Add(f.Rat(tiny)).Add(z).Sign(), f.Int(3).Sqrt().Cmp(f.Int(2).Sqrt())
	}
	if zero, positive, clear := signs(NewRoughField()); zero != 0 || positive != 1 || clear != 1 {
		t.Errorf("rough: %d, %d, %d", zero, positive, clear)
	}
	if zero, positive, clear := signs(NewField()); zero != 0 || positive != 1 || clear != 1 {
		t.Errorf("true: %d, %d, %d", zero, positive, clear)
	}
	wrong := func(f *Field) int { return f.Int(2).Sqrt().Add(f.Rat(tiny)).Cmp(f.Int(2).Sqrt()) }
	if rough, exact := wrong(NewRoughField()), wrong(NewField()); rough != 0 || exact != 1 {
		t.Errorf("√2 + 10^-30 against √2: rough %d, true %d", rough, exact)
	}
}

// TestFieldsInParallel shares nothing between fields but tables.
func TestFieldsInParallel(t *testing.T) {
	for range 4 {
		t.Run("field", func(t *testing.T) {
			t.Parallel()
			k := newKit()
			if !k.closes(k.step17(), 17) || !k.cos(20, 1).MulInt(2).Equal(k.cos(40, 1).Add(k.cos(80, 1)).MulInt(2)) {
				t.Error("a figure went wrong beside others")
			}
		})
	}
}

// TestTrustLeavesNumbers: what passes for 0 while an enclosure is trusted keeps
// its value, and so do products with it.
func TestTrustLeavesNumbers(t *testing.T) {
	f := NewField()
	two := f.Int(2).Sqrt()
	tiny := two.Add(f.Rat(new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(big.NewInt(1), 600)))).Sub(two)
	x := tiny.Mul(f.Int(3).Sqrt())
	f.Trust(256)
	if x.Sign() != 0 {
		t.Error("2^-600·√3 is told from 0 by 256 bits")
	}
	f.Trust(0)
	if x.Sign() != 1 || tiny.Sign() != 1 {
		t.Errorf("2^-600·√3 has the sign %d after it passed for 0", x.Sign())
	}
}

// TestFaults holds the messages of what cannot be computed.
func TestFaults(t *testing.T) {
	k := newKit()
	zero := k.sqrt(2).Mul(k.sqrt(3)).Sub(k.sqrt(6))
	if err := Try(func() { k.int(1).Div(zero) }); err == nil || err.Error() != "division by zero" {
		t.Errorf("1/0: %v", err)
	}
	if err := Try(func() { k.sqrt(2).Sub(k.sqrt(3)).Sqrt() }); err == nil || err.Error() != "square root of a negative number" {
		t.Errorf("√(√2 - √3): %v", err)
	}
	if !zero.Sqrt().IsZero() || !zero.Add(k.int(1)).Equal(k.int(1)) {
		t.Error("√0 is not 0, or 0 + 1 not 1")
	}
	for _, c := range []struct {
		degrees *big.Rat
		want    string
	}{
		{big.NewRat(67, 9), "67/9° cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"},
		{big.NewRat(360, 7), "360/7° cannot be decided exactly: whole degrees, tenths, minutes and their halvings can"},
	} {
		if _, _, err := k.f.CosSin(c.degrees); err == nil || err.Error() != c.want {
			t.Errorf("CosSin(%v): %v, want %s", c.degrees, err, c.want)
		}
	}
}
