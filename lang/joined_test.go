package lang_test

import (
	"math"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/program"
)

// mostMoved are how many of a thousand acts of a kind at the end of a source may move its
// picture. Some must: a join that nearly comes to be equal, parallel or at right angles to
// another would be taken for so, and the midpoint may fall on what is there.
var mostMoved = map[string]int{"join %s": 8, "M9 by middle(%s)": 30}

// finished are figures of many points, to which somebody adds a line.
var finished = []struct{ name, lines string }{
	{"Fermat point", `given acute triangle ABC
join ABCA
X by triangleon(B, A)
Y by triangleon(C, B)
Z by triangleon(A, C)
join CX, AY, BZ
join AXB, BYC, CZA`},
	{"equal steps", `given points A, B
ray AB
step off P[1 to 5] on AB from A, radius any`},
	{"dropped by two circles", `given line m
given P above m
take A on m
take B on m
arc c centre A through P
arc d centre B through P
c meets d at Q other than P
line n through P and Q cuts m at F`},
	{"through two points, touching", `given line m
given A above m
given B above m
k, T, O by throughtouch(A, B, m)`},
	{"two secants", `given circle k centre O
given P outside k
take A on k
take B on k
line m through P and A
line n through P and B
m meets k at C other than A
n meets k at D other than B
join AB, CD
claim PA * PC = PB * PD`},
	{"Euler line", `given triangle ABC
join ABCA
k, O by circumcircle(A, B, C)
G, P, Q, R by centroid(A, B, C)
H, D, E, F by orthocentre(A, B, C)
line e through O and H`},
	{"squared rectangle", `given rectangle PQRS
X, Y, Z by squarerectangle(P, Q, R)`},
}

// compiled is the plan of the figure that a user sees of a source, by slots of its things.
func compiled(t *testing.T, text string) plan {
	t.Helper()
	r := lang.Compile("joined.trm", []byte(text))
	if r.Figure == nil {
		t.Fatalf("%s\n%v", text, r.Problems[0].Text)
	}
	out := plan{at: map[int][3]float64{}}
	b := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range r.Figure.Points {
		x, y := p.At.X.Float(), p.At.Y.Float()
		out.at[p.Order] = [3]float64{x, y}
		b = [4]float64{min(b[0], x), min(b[1], y), max(b[2], x), max(b[3], y)}
	}
	for _, c := range r.Figure.Circles {
		if c.Whole {
			out.at[c.Order] = [3]float64{2: math.Sqrt(c.Circle.R2.Float())}
		}
	}
	out.reach = math.Hypot(b[2]-b[0], b[3]-b[1])
	return out
}

// TestAddedActsSeldomMove adds at the end of each source a join between two of its points, or
// their midpoint, and compiles it. A picture moves if something in it does by more than a
// tenth of the whole.
func TestAddedActsSeldomMove(t *testing.T) {
	for act, most := range mostMoved {
		added, moved := 0, 0
		for _, f := range append(finished, leftToChance...) {
			text := titled(f.lines)
			p := flat("", text)
			if p == nil {
				continue
			}
			old := compiled(t, text)
			for _, line := range addedTo(p, act) {
				if flat("", text+line+"\n") == nil {
					continue
				}
				added++
				if now := compiled(t, text+line+"\n"); old.apart(now) > old.reach/10 {
					moved++
					t.Logf("%s moves by %.2f with %s", f.name, old.apart(now)/old.reach, line)
				}
			}
		}
		t.Logf("%d of %d acts like %q move a picture", moved, added, act)
		if added < 400 || 1000*moved > most*added {
			t.Errorf("%d of %d acts like %q move a picture", moved, added, act)
		}
	}
}

// addedTo are acts of a kind for every other pair of a figure's points with letters.
func addedTo(p *program.Program, act string) (lines []string) {
	var names []string
	for _, slot := range p.Slots {
		if slot.Top && slot.Ink != nil && slot.Ink.Label != nil && !slot.Ink.Hidden && strings.ToUpper(slot.Name) == slot.Name && len(slot.Name) == 1 {
			names = append(names, slot.Name)
		}
	}
	parted := ""
	if strings.Contains(act, "(") {
		parted = ", "
	}
	for i, a := range names {
		for j, b := range names[:i] {
			if (i+j)%2 == 0 {
				continue
			}
			lines = append(lines, strings.Replace(act, "%s", b+parted+a, 1))
		}
	}
	return lines
}
