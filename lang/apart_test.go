package lang_test

import (
	"math"
	"strings"
	"testing"
)

// room is the box of the points of some letters.
func room(at map[string][2]float64, letters string) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, letter := range strings.Split(letters, "") {
		for k := range 2 {
			lo[k], hi[k] = min(lo[k], at[letter][k]), max(hi[k], at[letter][k])
		}
	}
	return lo, hi
}

// copied is a triangle copied by its sides.
const copied = `given triangle ABC
join ABCA
given points P, Q
ray PQ
arc c centre P radius AB
c meets PQ at R
arc d centre P radius AC
arc e centre R radius BC
d meets e at S left of PQ
join PSRP
claim triangle ABC congruent to PRS`

// TestStaysTogether: free points that later acts bring together with what was given before
// keep their places about it.
func TestStaysTogether(t *testing.T) {
	at := spots(chosen(t, titled("given quadrilateral ABCD\njoin ABCDA\ngiven points P\nline n through A and P\nn meets BC at X")))
	lo, hi := room(at, "ABCD")
	if p := at["P"]; p[0] < lo[0] || p[0] > hi[0] || p[1] < lo[1] || p[1] > hi[1] {
		t.Errorf("P is at %.2f, outside of %.2f and %.2f", p, lo, hi)
	}
}

// TestApart: what is given by itself stands apart from all that was given before it.
func TestApart(t *testing.T) {
	for lines, groups := range map[string][]string{
		"given S (0, 0)\ngiven triangle ABC":                                                    {"S", "ABC"},
		"given S about (0, 0)\ngiven triangle ABC\nray SA\nray SB\nray SC":                      {"S", "ABC"},
		"given S (0, 0)\ngiven square ABCD\njoin SA":                                            {"S", "ABCD"},
		"given S (40, 30)\ngiven quadrilateral ABCD":                                            {"S", "ABCD"},
		"given line m through X (0, 0) and Y (6, 0)\ngiven triangle ABC":                        {"XY", "ABC"},
		"given line m through X (0, 0) and Y (1, 6)\ngiven triangle ABC":                        {"XY", "ABC"},
		"given A about (0, 0)\ngiven B about 4 from A\ngiven triangle PQR":                      {"AB", "PQR"},
		"given triangle ABC\ngiven triangle PQR\ngiven square STUV":                             {"ABC", "PQR", "STUV"},
		"given triangle PQR\ngiven triangle ABC with AB = PQ, BC = QR, CA = RP":                 {"PQR", "ABC"},
		"given triangle ABC\ngiven points P, Q\njoin ABCA, PQ":                                  {"ABC", "PQ"},
		"given points A, B, C\njoin ABCA\ngiven points D, E, F\njoin DEFD":                      {"ABC", "DEF"},
		"given triangle ABC\ngiven points D, E, F, G, H\njoin DEFGHD":                           {"ABC", "DEFGH"},
		"given triangle ABC\njoin ABCA\ngiven points P, Q\njoin PQ, AP\nline n through B and Q": {"ABC", "PQ"},
		copied: {"ABC", "PRS"},
		"given angle BAC\ngiven points P, Q\nray PQ\nS by copyangle(B, A, C, P, Q)\nray PS":        {"BAC", "PQS"},
		"given angle BAC\ngiven angle YXZ":                                                         {"BAC", "YXZ"},
		"given points A, B\ngiven angle YXZ\nk, O by viewarc(A, B, Y, X, Z)":                       {"AB", "YXZ"},
		"given points A, B\ngiven triangle PQR with PQ = 5, QR = 4, RP = 3\njoin AB":               {"AB", "PQR"},
		"given triangle ABC with AB = 5, BC = 4, CA = 3\ngiven triangle ADE":                       {"BC", "DE"},
		"given rectangle ABCD with AB = 5, BC = 3\ngiven triangle PQR with PQ = 4, QR = 5, RP = 6": {"ABCD", "PQR"},
	} {
		at := spots(chosen(t, titled(lines)))
		for i, group := range groups {
			for _, other := range groups[:i] {
				lo, hi := room(at, group)
				from, to := room(at, other)
				if gap := max(lo[0]-to[0], from[0]-hi[0], lo[1]-to[1], from[1]-hi[1]); gap < 0.3 {
					t.Errorf("%s: between %s and %s is a gap of %.2f only", lines, other, group, gap)
				}
			}
		}
	}
}

// TestApartFromCurves: a shape keeps clear of lines and circles, and circles of shapes.
func TestApartFromCurves(t *testing.T) {
	for lines, corners := range map[string]string{
		"given line m\ngiven triangle ABC with AB = 4, BC = 5, CA = 6":                     "ABC",
		"given line m through X (0, 0) and Y (3, 5)\ngiven square ABCD":                    "ABCD",
		"given circle k centre O (0, 0) radius 2\ngiven triangle ABC":                      "ABC",
		"given circle k centre O radius 3\ngiven triangle ABC with AB = 4, BC = 5, CA = 6": "ABC",
		"given triangle ABC\ngiven circle k centre O":                                      "ABC",
		"given rectangle ABCD\ngiven circle k centre O radius 2\ngiven triangle PQR":       "ABCDPQR",
		"given circle k centre O\ngiven points A, B, C\njoin ABCA":                         "ABC",
		"given angle BAC\ngiven circle k centre O":                                         "BAC",
	} {
		r := chosen(t, titled(lines))
		at := spots(r)
		for _, letter := range strings.Split(corners, "") {
			p := at[letter]
			for _, c := range r.Figure.Circles {
				x, y := c.Circle.C.X.Float(), c.Circle.C.Y.Float()
				if way := far(p, [2]float64{x, y}) - math.Sqrt(c.Circle.R2.Float()); way < 0.3 {
					t.Errorf("%s: %s is %.2f from the circle", lines, letter, way)
				}
			}
			for _, l := range r.Figure.Straights {
				if l.Start != nil || l.End != nil {
					continue
				}
				d, q := l.Line.D, l.Line.P
				x, y := d.X.Float(), d.Y.Float()
				off := math.Abs(x*(p[1]-q.Y.Float())-y*(p[0]-q.X.Float())) / math.Hypot(x, y)
				if off < 0.3 {
					t.Errorf("%s: %s is %.2f from the line", lines, letter, off)
				}
			}
		}
	}
}

// TestApartFromLater: what is left to chance keeps off points and circles that are fixed
// after it, as it does off those that are fixed before it.
func TestApartFromLater(t *testing.T) {
	for _, lines := range []string{
		"given triangle ABC with AB = 5, BC = 4, CA = 3.5\ngiven P (0, 0)",
		"given triangle ABC with AB = 5, BC = 4, CA = 3.5\ngiven P (5, 0)",
		"given triangle ABC with AB = 5, BC = 4, CA = 3.5\ngiven P (5/2, 0)",
		"given triangle ABC with AB = 5, BC = 4, CA = 3.5\ngiven line m through P (0, 0) and Q (-3, 3)",
		"given triangle ABC with AB = 5, BC = 4, CA = 3.5\ngiven circle k centre P (0, 3) radius 3",
		"given square ABCD\ngiven P (0, 0)\ngiven Q (3, 1)",
		"given angle BAC = 50°\ngiven P (0, 0)",
		"given points A, B, C\ngiven P (0, 0)\ngiven Q (7, 1.2)",
		"given circle k centre O\ngiven P (0, 0)",
		"given line m\ngiven P (4, 0)",
		"given line m\ngiven circle k centre P (4, 2) radius 2",
	} {
		r := chosen(t, titled(lines))
		at := spots(r)
		for p, x := range at {
			for q, y := range at {
				if way := far(x, y); p != q && way < 0.45 {
					t.Errorf("%s: %s is %.2f from %s", lines, p, way, q)
				}
			}
			if l := r.Figure.Straights; strings.Contains(lines, "line m\n") && math.Abs(l[0].Line.P.Y.Float()-x[1]) < 0.45 {
				t.Errorf("%s: %s is on m", lines, p)
			}
			for _, c := range r.Figure.Circles {
				r := math.Sqrt(c.Circle.R2.Float())
				if off := math.Abs(far(x, [2]float64{c.Circle.C.X.Float(), c.Circle.C.Y.Float()}) - r); off < 0.3 {
					t.Errorf("%s: %s is %.2f from the circle", lines, p, off)
				}
			}
		}
	}
}

// TestParallelsApart: free parallels to one line are lines of their own.
func TestParallelsApart(t *testing.T) {
	at := spots(chosen(t, titled(`given line m
given line n parallel to m
given line l parallel to m
take A on m
take B on l
line t through A and B
t meets n at C
take D on m
line u through B and D
u meets n at E`)))
	for _, pair := range []string{"BC", "CE", "AC"} {
		if way := far(at[pair[:1]], at[pair[1:]]); way < 0.5 {
			t.Errorf("%s is %.2f long", pair, way)
		}
	}
}

// TestTransversals: a free line that is to meet sides of a free shape cuts across them,
// whichever is given first, and goes through no corner.
func TestTransversals(t *testing.T) {
	for _, lines := range []string{
		"given triangle ABC\ngiven line m\nm meets AB at X\nm meets AC at Y",
		"given line m\ngiven triangle ABC\nm meets AB at X\nm meets AC at Y",
		"given square ABCD\ngiven line m\nm meets BC at X\nm meets AD at Y",
		"given triangle ABC\ngiven line m\nline a through B and C\nm meets AB at X\nm meets AC at Y\nm meets a at Z",
		"given points A, B, C\njoin ABCA\ngiven line m\nAB meets m at X\nm meets AC at Y",
		"given parallelogram ABCD\ngiven line m\nm meets AB at X",
	} {
		at := spots(chosen(t, titled(lines)))
		for p, x := range at {
			for q, y := range at {
				if way := far(x, y); p != q && way < 0.5 {
					t.Errorf("%s: %s is %.2f from %s", lines, p, way, q)
				}
			}
		}
	}
}

// TestAlongsideAslant: the parallel by equal angles is drawn by a line that crosses plainly
// aslant, wherever the point is.
func TestAlongsideAslant(t *testing.T) {
	for _, lines := range []string{
		"given line m through A (0, 5) and B (0, 0)\ngiven P (3, 2)", "given line m through A (0, 0) and B (6, 0)\ngiven P (3, 2)",
		"given line m through A (0, 0) and B (6, 0)\ngiven P (1, 3)", "given line m through A (0, 0) and B (5, 5)\ngiven P (1, 4)",
		"given line m through A (0, 0) and B (6, 0)\ngiven P (9, 1)", "given line m through A (0, 0) and B (6, 0)\ngiven P (3, -4)",
		"given line m\ngiven P above m", "given line m\ngiven P below m",
	} {
		r := chosen(t, titled(lines+"\nn by alongside(m, P)"))
		m := r.Figure.Straights[0].Line.D
		found := false
		for _, s := range r.Figure.Straights {
			if s.Start == nil || s.End != nil {
				continue
			}
			found = true
			d := s.Line.D
			angle := math.Abs(math.Atan2(m.Cross(d).Float(), m.Dot(d).Float())) * 180 / math.Pi
			if angle = min(angle, 180-angle); angle < 40 || angle > 80 {
				t.Errorf("%s: it crosses under %.0f°", lines, angle)
			}
		}
		if !found {
			t.Errorf("%s: there is no ray", lines)
		}
	}
}
