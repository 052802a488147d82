package main

import (
	"fmt"
	"strings"
	"testing"

	"trammel/lang"
)

// TestTrials follows the advice for figures that fingers could not read, and that leave
// something to chance: with the unit that is named they are drawn.
func TestTrials(t *testing.T) {
	const given = "given triangle ABC with AB = 8, BC = 7, CA = 6\njoin ABCA\n"
	followed := 0
	for _, body := range []string{
		"M by middle(A, B)\njoin CM\nmark AM = MB\nlabel BC length\nlabel angle BAC size\n",
		"n, F by drop(AB, C)\nmark right AFC\n",
		"k, O by circumcircle(A, B, C)\n",
	} {
		for _, head := range []string{"figure \"A trial\"\n", "figure \"A trial\"\nunit 11 mm\n", ""} {
			text := head + given + body
			unit := 0
			if fmt.Sscanf(advice(t, text), "unit %d mm would do", &unit); unit == 0 {
				continue
			}
			followed++
			if again := advice(t, string(inUnit("trial.trm", []byte(text), unit))); again != "" {
				t.Errorf("with unit %d mm the advice is %q:\n%s", unit, again, text)
			}
		}
	}
	if followed < 5 {
		t.Errorf("only %d figures could be mended by a unit", followed)
	}
}

// advice is what would mend a figure for fingers; "" if nothing needs to be mended.
func advice(t *testing.T, text string) string {
	t.Helper()
	r := lang.Compile("trial.trm", []byte(text))
	if r.Figure == nil {
		t.Fatalf("%+v", r.Problems)
	}
	d := &drawing{job: job{input: input{path: "trial.trm", within: "trial.trm"}}, Result: *r}
	if frames := d.layOut([]byte(text), style{Theme: "tactile"}); frames != nil {
		return ""
	}
	for _, p := range d.Problems {
		if strings.Contains(p.Text, "fingers") {
			return p.Help
		}
	}
	return "no refusal"
}
