package lang_test

import (
	"strings"
	"testing"

	"trammel/lang/program"
	"trammel/lang/solve"
)

// mostMoved are how many of a thousand acts of a kind at the end of a source may move its
// picture. Some must: a join that nearly comes to be equal, parallel or at right angles to
// another would be taken for so, and the midpoint may fall on what is there.
var mostMoved = map[string]int{"join %s": 8, "M9 by middle(%s)": 15}

// TestAddedActsSeldomMove adds at the end of each source a join between two of its
// points, or their midpoint. A picture moves if something in it does by more than a tenth of the whole.
func TestAddedActsSeldomMove(t *testing.T) {
	for act, most := range mostMoved {
		added, moved := 0, 0
		for _, f := range leftToChance {
			text := titled(f.lines)
			p := flat("", text)
			if p == nil {
				continue
			}
			old, _ := planOf(p, solve.Inputs(p).Inputs)
			for _, line := range addedTo(p, act) {
				q := flat("", text+line+"\n")
				if q == nil {
					continue
				}
				now, ok := planOf(q, solve.Inputs(q).Inputs)
				if !ok {
					t.Errorf("%s fails with %s", f.name, line)
					continue
				}
				added++
				if old.apart(now) > old.reach/10 {
					moved++
					t.Logf("%s moves with %s", f.name, line)
				}
			}
		}
		t.Logf("%d of %d acts like %q move a picture", moved, added, act)
		if added < 500 || 1000*moved > most*added {
			t.Errorf("%d of %d acts like %q move a picture", moved, added, act)
		}
	}
}

// addedTo are acts of a kind for all pairs of a figure's points with letters.
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
		for _, b := range names[:i] {
			lines = append(lines, strings.Replace(act, "%s", b+parted+a, 1))
		}
	}
	return lines
}
