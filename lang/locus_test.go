package lang_test

import (
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
)

// about is what the refused lines about loci speak of.
const about = `figure "loci"
given A (0, 0)
given B (6, 0)
given C (2, 4)
given line m through D (0, -3) and E (6, -3)
given line n through F (0, -4) and G (6, -5)
given line l parallel to m through H (0, -6)
given circle k centre A radius 2
join AB
`

// TestLocusRefusals pairs the last lines of a source with its only error.
func TestLocusRefusals(t *testing.T) {
	tests := []struct{ lines, text, help string }{
		{"locus p, q 2 from A", "the points at a distance from a point are one circle, and there are 2 names", "name it once: locus k 3 from A"},
		{"locus p 2 from m", "the points 2 from m are two parallels, and there is one name", "name both: locus p, q 2 from m"},
		{"locus p 2 from AC", "the points 2 from AC are two parallels, and there is one name", "name both: locus p, q 2 from AC; or join AC first for the curve round the join alone"},
		{"locus p, q 2 from AB", "the points 2 from AB are one curve round its ends, and there are 2 names", "name it once: locus k 2 from AB"},
		{"locus p 0 from A", "the distance is 0, and it must be more than 0", ""},
		{"locus p, q 1 - 2 from m", "the distance is −1, and it must be more than 0", ""},
		{"locus p 1 from k", "a locus is drawn about a point, a line or a join, and k is a circle", "draw the circles about its centre"},
		{"locus p equidistant from A and m", "the points equally far from a point and a line lie on a parabola, which cannot be drawn with compasses and straightedge", "take two points or two lines"},
		{"locus p, q equidistant from A and B", "the points equally far from two points are one line, and there are 2 names", "name it once: locus n equidistant from A and B"},
		{"locus p equidistant from m and n", "m and n cross, so the points equally far from them are two lines", "name both: locus p, q equidistant from m and n"},
		{"locus p, q equidistant from m and l", "m and l are parallel, so the points equally far from them are one line", "name it once: locus n equidistant from m and l"},
		{"locus p, q equidistant from m and DE", "m and DE: they are one and the same line", ""},
		{"locus p, q, r equidistant from m and n", "two lines have two bisectors at most, and there are 3 names", "name both: locus p, q equidistant from m and n"},
		{"take X on AB, 1 from A\nlocus p equidistant from AX and AB", "X, A and B lie on one line, so there is no angle to halve", ""},
		{"locus r 1 from AB\nr meets m at X", "r is a rim; a line or circle is wanted here", "a curve round a join bounds a region, as in: shade where inside r; its sides and half circles have no names of their own"},
		{"locus b equidistant from AB and AC\nlocus p, q 1 from b", "b has an end, so the points at a distance from it are no two lines", ""},
		{"shade where nearest A", "nearest A picks one point out, and says no region", "regions read: nearer A than B · under 3 from A · inside ABC · above m · left of AB"},
		{"shade where left of m", "left of a line says nothing without its direction", "name two points of m: left of AB, standing at A and looking to B"},
		{"shade where above m, under 1 from k", "k is a circle; a line is wanted here", "of a circle say on k, inside k, outside k or touches"},
		{"shade where inside m", "m is a line; a circle or rim is wanted here", ""},
		{"shade where same side of AB as B", "B lies on AB, on neither side of it", ""},
		{"shade where above AF", "AF is upright, so nothing is above or below it", "say left of AF or right of AF"},
		{"shade where under 1 - 1 from A", "the distance is 0, and it must be more than 0", ""},
		{"shade where above AC, below AC", "nothing of this region would show on the paper: no place within reach of the figure is above AC and below AC", "change a distance, or leave a condition out"},
		{"shade where under 2 from A, over 2 from A", "nothing of this region would show on the paper: no place within reach of the figure is under 2 from A and over 2 from A", "change a distance, or leave a condition out"},
	}
	for _, test := range tests {
		r := lang.Compile("locus.trm", []byte(about+test.lines+"\n"))
		var got []string
		for _, p := range r.Problems {
			if p.Severity == source.Error {
				got = append(got, p.Text+" | "+p.Help)
			}
		}
		if want := test.text + " | " + test.help; strings.Join(got, "\n") != want {
			t.Errorf("%s\n got %s\nwant %s", test.lines, strings.Join(got, "\n     "), want)
		}
	}
}

// TestMidline: where nothing hangs on parallels, the line midway has no end of its own
// either, and is drawn as long as they are.
func TestMidline(t *testing.T) {
	r := chosen(t, titled("given line m\ngiven line n parallel to m\nlocus p equidistant from m and n"))
	for _, s := range r.Figure.Straights {
		if len(s.Used) > 0 {
			t.Errorf("%s is drawn to %v", s.Name, s.Used)
		}
	}
	if n := len(r.Figure.Straights); n != 3 {
		t.Errorf("%d straights, want 3", n)
	}
}
