package lang_test

import (
	"strings"
	"testing"

	"trammel/lang/solve"
)

// mostMoved is how many of a hundred joins at the end of a source may move its
// picture. A join can: it may come to look equal, parallel or at right angles to
// another, which the reader would take for so.
const mostMoved = 5

// TestJoinsSeldomMove draws, at the end of each source, a join between two of its
// points. A picture moves if something in it does by more than a tenth of the whole.
func TestJoinsSeldomMove(t *testing.T) {
	joins, moved := 0, 0
	for _, f := range leftToChance {
		text := titled(f.lines)
		p := flat("", text)
		if p == nil {
			continue
		}
		old, _ := planOf(p, solve.Inputs(p).Inputs)
		var names []string
		for _, slot := range p.Slots {
			if slot.Top && slot.Ink != nil && slot.Ink.Label != nil && !slot.Ink.Hidden && strings.ToUpper(slot.Name) == slot.Name && len(slot.Name) == 1 {
				names = append(names, slot.Name)
			}
		}
		for i, a := range names {
			for _, b := range names[:i] {
				q := flat("", text+"join "+b+a+"\n")
				if q == nil || len(q.Inputs) != len(p.Inputs) {
					continue
				}
				now, ok := planOf(q, solve.Inputs(q).Inputs)
				if !ok {
					t.Errorf("%s fails with join %s%s", f.name, b, a)
					continue
				}
				joins++
				if now.apart(old) > old.reach/10 {
					moved++
					t.Logf("%s moves with join %s%s", f.name, b, a)
				}
			}
		}
	}
	t.Logf("%d of %d joins move a picture", moved, joins)
	if joins < 500 || 100*moved > mostMoved*joins {
		t.Errorf("%d of %d joins move a picture", moved, joins)
	}
}
