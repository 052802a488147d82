package oracle

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// calcium builds testdata/calcium.c.
func calcium(t testing.TB) string {
	t.Helper()
	compiler := need(t, "cc")
	program := filepath.Join(t.TempDir(), "calcium")
	build := exec.Command(compiler, "-O2", "-o", program, filepath.Join("testdata", "calcium.c"),
		"-lcalcium", "-lflint-arb", "-lflint", "-lgmp")
	if said, err := build.CombinedOutput(); err != nil {
		lacking(t, "Calcium's library: "+string(said))
	}
	return program
}

// TestAgainstCalcium asks for the same verdicts by minimal polynomials, of all
// numbers whose degree allows it.
func TestAgainstCalcium(t *testing.T) {
	t.Parallel()
	questions := append(someQuestions(2, many(800)), append(someFigures(1001, many(40)), someTheorems(1001, many(112))...)...)
	var input strings.Builder
	for _, q := range questions {
		input.WriteString(q.x.steps() + "\n")
	}
	answered := 0
	for i, line := range lines(t, input.String(), calcium(t), "qqbar", "12") {
		q := questions[i]
		answer, _, _ := strings.Cut(line, " ")
		if answer == "?" {
			continue
		}
		answered++
		if !agree(q.told, answer) {
			t.Errorf("%s: trammel says %s, qqbar %s\n%s", q.name, q.told, answer, q.x.pari())
		}
	}
	t.Logf("%d of %d answered", answered, len(questions))
	if answered < len(questions)/5 {
		t.Errorf("qqbar answered %d of %d questions only", answered, len(questions))
	}
}
