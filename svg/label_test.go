package svg

import (
	"fmt"
	"strings"
	"testing"
)

// marked writes runs with their styles: *italic*, _lowered_, and ^n before what
// is under n bars. A thin space is ~, a fraction [a|b].
func marked(runs []Run) string {
	var s strings.Builder
	for _, r := range runs {
		text := r.Text
		if r.Top != nil {
			text = "[" + marked(r.Top) + "|" + marked(r.Bottom) + "]"
		}
		if r.Italic {
			text = "*" + text + "*"
		}
		if r.Sub {
			text = "_" + text + "_"
		}
		if r.Over > 0 {
			text = fmt.Sprintf("^%d%s", r.Over, text)
		}
		s.WriteString(strings.ReplaceAll(text, string(thin), "~"))
	}
	return s.String()
}

func TestLabel(t *testing.T) {
	const name, words = true, false
	for _, test := range []struct {
		text string
		name bool
		want string
		said string // "" for the text itself
	}{
		{"P", name, "*P*", ""},
		{"P1", name, "*P*_1_", ""},
		{"P12'", name, "*P*_12_′", "P12′"},
		{"A''", name, "*A*′′", "A′′"},
		{"base", name, "*base*", ""},
		{"k2", name, "*k*_2_", ""},
		{"α", name, "*α*", ""},
		{"P1Q2", name, "*P*_1_*Q*_2_", ""},
		{"中1", name, "中_1_", ""},
		{"5 cm", words, "5~cm", ""},
		{"5 m", words, "5~m", ""},
		{"√2 m", words, "√^12~m", ""},
		{"√(2) m", words, "√^12~m", "√2 m"},
		{"5 men", words, "5 men", ""},
		{"in 3 mm", words, "in 3~mm", ""},
		{"60°", words, "60°", ""},
		{"α = 22.5°", words, "*α* = 22.5°", ""},
		{"2x", words, "2*x*", ""},
		{"x + y", words, "*x* + *y*", ""},
		{"AB = 5 cm", words, "*AB* = 5~cm", ""},
		{"a line", words, "a line", ""},
		{"h_c", words, "*h*_*c*_", "hc"},
		{"a_1 + a_2", words, "*a*_1_ + *a*_2_", "a1 + a2"},
		{"d_max", words, "*d*_max_", "dmax"},
		{"height h_c", words, "height *h*_*c*_", "height hc"},
		{"a_ b", words, "*a*_ *b*", ""},
		{"circumcircle k", words, "circumcircle *k*", ""},
		{"the radius r of k, drawn to A' and on", words, "the radius r of *k*, drawn to *A*′ and on", "the radius r of k, drawn to A′ and on"},
		{"area = a · b", words, "area = *a* · *b*", ""},
		{"Gerade m (durch P)", words, "Gerade *m* (durch *P*)", ""},
		{"P and Q", words, "*P* and *Q*", ""},
		{"A and B", words, "A and B", ""},
		{"it is a map", words, "it is a map", ""},
		{"a board 5 m wide, Pete's, T-shaped, e.g. so", words, "a board 5~m wide, Pete’s, T-shaped, e.g. so", "a board 5 m wide, Pete’s, T-shaped, e.g. so"},
		{"the angle α", words, "the angle *α*", ""},
		{"don't", words, "don’t", "don’t"},
		{"A' and B'", words, "*A*′ and *B*′", "A′ and B′"},
		{"3√2", words, "3√^12", ""},
		{"√12.5 + 1", words, "√^112.5 + 1", ""},
		{"√10\u202f217/10 cm", words, "[√^110~217|10]~cm", "√10 217/10 cm"},
		{"10\u202f217/12\u202f345", words, "[10~217|12~345]", "10 217/12 345"},
		{"√2.", words, "√^12.", ""},
		{"√2√3", words, "√^12√^13", ""},
		{"√(10 + 2√5)", words, "√^110 + 2√^25", ""},
		{"√(2√5 + 10)", words, "√^12√^25^1 + 10", ""},
		{"√√2", words, "√^1√^22", ""},
		{"√(√2 + √3)/2", words, "[√^1√^22^1 + √^23|2]", ""},
		{"√((1 + 2)(3))", words, "√^1(1 + 2)(3)", ""},
		{"(1 + √5)/2", words, "[1 + √^15|2]", ""},
		{"3√2/2 cm", words, "[3√^12|2]~cm", ""},
		{"25√3/4 cm²", words, "[25√^13|4]~cm²", ""},
		{"-1/2", words, "−[1|2]", "−1/2"},
		{"1/(2√3)", words, "[1|2√^13]", "1/(2√3)"},
		{"a = 1,5/2", words, "*a* = [1,5|2]", ""},
		{"√(1/2)", words, "√^1[1|2]", "√(1/2)"},
		{"1/2/3", words, "1/2/3", ""},
		{"a/b", words, "[*a*|*b*]", ""},
		{"1/2 of it", words, "1/2 of it", ""},
		{"1/", words, "1/", ""},
		{"the foot of P12", words, "the foot of *P*_12_", ""},
		{"P1P2 is it", words, "*P*_1_*P*_2_ is it", ""},
		{"OK5 is it", words, "OK5 is it", ""},
		{"√x", words, "√^1*x*", ""},
		{"5 - √2", words, "5 − √^12", "5 − √2"},
		{"-3", words, "−3", "−3"},
		{"right-angled", words, "right-angled", ""},
		{"√", words, "√", ""},
		{"√(", words, "√(", ""},
		{"√()", words, "√()", ""},
		{"√(1", words, "√(1", ""},
		{"√ 2", words, "√ 2", ""},
		{"", words, "", ""},
		{"a\tb", words, "*a* *b*", "a b"},
	} {
		runs := Label(test.text, test.name)
		if got := marked(runs); got != test.want {
			t.Errorf("%q is set as %s, want %s", test.text, got, test.want)
		}
		said := test.said
		if said == "" {
			said = test.text
		}
		if got := (Text{Runs: runs}).String(); got != said {
			t.Errorf("%q is said as %q, want %q", test.text, got, said)
		}
	}
}

// TestStackedPrimes sets primes above the subscript that they follow.
func TestStackedPrimes(t *testing.T) {
	set := Text{Runs: Label("P12''", true), Size: 3500}.Set().Letters
	if len(set) != 5 || set[3].At.X != set[1].At.X || set[3].At.Y >= set[1].At.Y || set[4].At.X <= set[3].At.X {
		t.Errorf("the letters stand at %+v", set)
	}
	with, without := Measure(Text{Runs: Label("P12'", true), Size: 3500}), Measure(Text{Runs: Label("P12", true), Size: 3500})
	if with.Advance != without.Advance || with.Top >= without.Top {
		t.Errorf("with a prime %+v, without %+v", with, without)
	}
}

func TestDeepRoots(t *testing.T) {
	for _, text := range []string{strings.Repeat("√", 1000) + "2", strings.Repeat("√(1 + ", 300) + "2" + strings.Repeat(")", 300)} {
		runs := Label(text, false)
		for _, r := range runs {
			if r.Over > maxRoots {
				t.Fatalf("%d bars", r.Over)
			}
		}
		if got := (Text{Runs: runs}).String(); got != text {
			t.Errorf("%q is said as %q", text, got)
		}
	}
}

func measure(text string, name bool) Box {
	return Measure(Text{Runs: Label(text, name), Size: 3500, Fill: black})
}

func TestMeasure(t *testing.T) {
	if got := measure("H", false); got.Top != -3500 || got.Bottom != 0 {
		t.Errorf("a capital of 3.5 mm is %d µm over the line and %d under", -got.Top, got.Bottom)
	}
	if a, b := measure("HH", false), measure("H", false); a.Advance != 2*b.Advance || a.Right-b.Right != b.Advance {
		t.Errorf("HH measures %+v, H %+v", a, b)
	}
	if pair, a, v := measure("AV was", false), measure("A was", false), measure("V", false); pair.Advance >= a.Advance+v.Advance {
		t.Error("A and V are not drawn together")
	}
	if p1, p := measure("P1", true), measure("P", true); p1.Bottom != 1050 || p1.Top != p.Top || p1.Advance <= p.Advance {
		t.Errorf("P1 measures %+v, P %+v", p1, p)
	}
	if got, want := measure("P1", true).Advance-measure("P", true).Advance, measure("1", false).Advance*7/10; max(got-want, want-got) > 1 {
		t.Errorf("a subscript is %d µm wide, want %d", got, want)
	}
	if got := measure(" ", false); got.Advance <= 0 || got.Left != 0 || got.Right != 0 || got.Top != 0 || got.Bottom != 0 {
		t.Errorf("a space measures %+v", got)
	}
	if got := measure("", false); got != (Box{}) {
		t.Errorf("nothing measures %+v", got)
	}
	if got := measure("中", true); got.Right-got.Left < 3500 || got.Top > -3500 || got.Bottom < 0 {
		t.Errorf("a letter without an outline has only the room %+v", got)
	}
}

// The bar of a root covers its radicand and clears it, also one with a root in it.
func TestRootBars(t *testing.T) {
	for _, radicand := range []string{"2", "10", "10 + 2√5", "(1 + √√2)/2", "Å", "y"} {
		inner, root := measure(radicand, false), measure("√("+radicand+")", false)
		if root.Top >= inner.Top-3500*rootGap/100 {
			t.Errorf("the bar over %s is %d µm high, the radicand %d", radicand, -root.Top, -inner.Top)
		}
		if root.Right-root.Left <= inner.Advance || root.Advance <= root.Right {
			t.Errorf("the bar over %s ends at %d: the radicand is %d wide, the root %d", radicand, root.Right, inner.Advance, root.Advance)
		}
	}
	if plain, nested := measure("√2", false), measure("√√2", false); nested.Top >= plain.Top {
		t.Error("a root in a root is no higher")
	}
}

// A mile of text is kept as letters, not as a hundred miles of outlines.
func TestLongText(t *testing.T) {
	long := strings.Repeat("a1", 500_000)
	d := &Doc{Width: 1000, Height: 1000, Groups: []Group{{Items: []Item{label(long, true, 0, 0)}}}}
	got := string(written(t, d, Options{}))
	if !strings.Contains(got, ">"+long+"</tspan>") || len(got) > len(long)+1000 {
		t.Errorf("%d bytes of text make %d", len(long), len(got))
	}
}
