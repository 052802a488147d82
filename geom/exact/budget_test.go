package exact

import (
	"strings"
	"testing"
)

// TestAccounts: a decision that is easy by itself is taken after hard ones of other
// claims, not after hard ones of its own, and many hard claims come to an end.
func TestAccounts(t *testing.T) {
	k := newKit()
	k.f.Limit(5_000)
	hard := func() error { return Try(func() { k.chainGap(9).Sign() }) }
	easy := func() error { return Try(func() { k.chainGap(2).Sign() }) }
	k.f.Claim()
	for range 10 {
		if hard() == nil {
			t.Fatal("the hard decision is none")
		}
	}
	if err := easy(); err == nil || !strings.Contains(err.Error(), "one claim") {
		t.Errorf("in a claim that has cost its budget: %v", err)
	}
	for n := range 400 {
		k.f.Claim()
		if err := easy(); err != nil && n < 10 {
			t.Fatalf("after %d hard claims: %v", n+1, err)
		} else if err != nil {
			if !strings.Contains(err.Error(), "all claims") {
				t.Error(n, err)
			}
			return
		}
		hard()
		hard()
	}
	t.Error("hard claims may be as many as they like")
}
