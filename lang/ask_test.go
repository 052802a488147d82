package lang_test

import (
	"testing"

	"trammel/lang"
)

func TestAsk(t *testing.T) {
	source := `figure "ask"
given A (0, 0)
given B (3, 3)
given C (3, 0)
arc c centre A radius any
c meets AB at P between A and B
take Q above AB
join ABCA
`
	want := []lang.Answer{
		{Expr: "AB", Exact: "3√2 cm", Decimal: "4.242641 cm", Measured: "42 mm"},
		{Expr: "AB : AC", Exact: "√2", Decimal: "1.414214", Measured: "1.41"},
		{Expr: "angle BAC", Exact: "45°", Decimal: "45°", Measured: "45°"},
		{Expr: "area of ABC", Exact: "9/2 cm²", Decimal: "4.5 cm²", Measured: "4.5 cm²"},
		{Expr: "AB + AC", Exact: "(3 + 3√2) cm", Decimal: "7.242641 cm", Measured: "72 mm"},
		{Expr: "1 + AB / AC", Exact: "1 + √2", Decimal: "2.414214", Measured: "2.41"},
		{Expr: "(AB + AC)/2", Exact: "(3 + 3√2)/2 cm", Decimal: "3.62132 cm", Measured: "36 mm"},
		{Expr: "AB * AC * AC", Exact: "27√2 cm³", Decimal: "38.183766 cm³", Measured: "38.2 cm³"},
		{Expr: "sqrt(2) / 1000000 / 1000000", Exact: "√2/1000000000000", Decimal: "1.41·10⁻¹²", Measured: "1.41·10⁻¹²"},
		{Expr: "AC : BC : AB", Exact: "1 : 1 : √2", Decimal: "1 : 1 : 1.414214", Measured: "1 : 1 : 1.41"},
		{Expr: "2 AC : BC : 4", Exact: "6 : 3 : 4", Decimal: "6 : 3 : 4", Measured: "6 : 3 : 4"},
		{Expr: "angle ABC : angle BCA", Exact: "1/2", Decimal: "0.5", Measured: "0.5"},
		{Expr: "angle ABC : angle BCA : angle CAB", Exact: "1 : 2 : 1", Decimal: "1 : 2 : 1", Measured: "1 : 2 : 1"},
		{Expr: "AB : angle ABC : AC", Problem: "the terms of a ratio are of one kind: here are a length and an angle"},
		{Expr: "AB : BC : AA", Problem: "a ratio has no term 0, and AA is 0"},
		{Expr: "AX", Problem: "X is not known here (make it first: given X (0, 0), take X on …, or as a meeting: … at X)"},
		{Expr: "AB +", Problem: "the expression ends where a value is wanted"},
	}
	var exprs []string
	for _, w := range want {
		exprs = append(exprs, w.Expr)
	}
	got, r := lang.Ask("ask.trm", []byte(source), exprs)
	if r.Figure == nil {
		t.Fatal(r.Problems[0].Text)
	}
	for i, w := range want {
		if got[i] != w {
			t.Errorf("%s: got %+v, want %+v", w.Expr, got[i], w)
		}
	}
	choices := r.Choices()
	if len(choices) != 2 || choices[0].Name != "arc c" || choices[0].Range == "" || choices[1].Name != "Q" {
		t.Errorf("choices: %+v", choices)
	}
}

// TestMeasuredTies: a half goes up, as pupils learn it, also where floats are a
// hair under it.
func TestMeasuredTies(t *testing.T) {
	for degrees, want := range map[string]string{"55": "28°", "65": "33°", "64": "32°", "75": "38°"} {
		source := "figure \"t\"\ngiven A (0, 0)\ngiven B 5 from A\ngiven angle BAC = " + degrees + "°\njoin AB\nray AC\nX by halve(B, A, C)\nray AX\n"
		answers, r := lang.Ask("t.trm", []byte(source), []string{"angle BAX"})
		if len(answers) != 1 || answers[0].Measured != want {
			t.Errorf("half of %s°: %+v %v, want %s", degrees, answers, r.Problems, want)
		}
	}
	if answers, _ := lang.Ask("t.trm", []byte("figure \"t\"\ngiven A (0, 0)\ngiven B 4.25 from A\njoin AB\n"), []string{"AB"}); answers[0].Measured != "43 mm" {
		t.Errorf("42.5 mm are measured %s", answers[0].Measured)
	}
}

// TestAskPlainestRoots has nested roots come out without a square under them: in a
// circle of radius R = 8/√7 a regular pentagon has the side R√((5 − √5)/2) (Euclid
// XIII.10) and the area 5/2 R² sin 72°.
func TestAskPlainestRoots(t *testing.T) {
	source := `figure "ask"
given triangle ABC with AB = 6, BC = 5, CA = 4
k, O by circumcircle(A, B, C)
P[1 to 4] by pentagon(k, A)
`
	got, r := lang.Ask("ask.trm", []byte(source), []string{"AP1", "area of AP1P2P3P4"})
	if r.Figure == nil {
		t.Fatal(r.Problems[0].Text)
	}
	for i, want := range []string{"4√(70 − 14√5)/7 cm", "40√(10 + 2√5)/7 cm²"} {
		if got[i].Exact != want {
			t.Errorf("%s = %s, want %s", got[i].Expr, got[i].Exact, want)
		}
	}
}
