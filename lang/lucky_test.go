package lang

import (
	"strings"
	"testing"

	"trammel/lang/warn"
)

// TestLucky: what trammel itself chose does not mislead where other choices do not.
func TestLucky(t *testing.T) {
	for _, src := range []string{
		"given trapezium ABCD\nC1, D1 by squareon(C, D)\narc a2 centre C1 radius any over half C1B\narc e2 centre B radius any\na2 meets e2 at U2 left of C1B\nn3 by parallel(D1C1, D)\njoin DU2B\n",
		"given triangle ABC\narc a1 centre A radius any over half AC\narc e1 centre C radius any\na1 meets e1 at U1 left of AC\nk2, I2 by incircle(C, B, U1)\ngiven Q3 outside k2\nS3, T3, s3, t3 by tangents(k2, Q3)\njoin AU1Q3\n",
		"given acute triangle ABC\nk1, I1 by incircle(C, A, B)\ntake Z2 on k1\nC3, D3 by squareon(I1, Z2)\ntake Z4 on k1\njoin BC3A\n",
		"given triangle ABC\ngiven P inside ABC\ntake X1 between C and A\nk2, I2 by incircle(B, A, C)\ntake X3 between C and I2\nC4, D4 by squareon(A, P)\njoin I2X3C4\n",
		"given obtuse triangle ABC\nk1, O1 by circumcircle(B, A, C)\nk2, I2 by incircle(B, O1, C)\nn3, F3 by drop(AC, I2)\nk4, O4 by circumcircle(A, B, F3)\njoin CI2F3\n",
	} {
		r := Compile("t.trm", []byte("figure \"t\"\n"+src))
		for _, p := range r.Problems {
			if strings.Contains(p.Text, "look") {
				t.Errorf("%s%s", src, p.Text)
			}
		}
	}
}

// TestNotClumsy: sides of a free hexagon in a circle are not nearly parallel, though
// that is worth no warning.
func TestNotClumsy(t *testing.T) {
	r := Compile("t.trm", []byte("figure \"t\"\ngiven circle k centre O (0, 0) radius 3\n"+
		"take A on k\ntake B on k\ntake C on k\ntake D on k\ntake E on k\ntake F on k\njoin ABCDEFA\n"))
	if r.Figure == nil || warn.Clumsy(r.state) {
		t.Errorf("clumsy: %v", r.Problems)
	}
}
