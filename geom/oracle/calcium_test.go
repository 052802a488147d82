package oracle

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// calcium builds testdata/calcium.c.
func calcium(t testing.TB) string {
	return built(t, "calcium.c", "cc", "-lcalcium", "-lflint-arb", "-lflint", "-lgmp")
}

// built compiles a program of testdata.
func built(t testing.TB, name, compiler string, libraries ...string) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "program")
	args := append([]string{"-O2", "-o", program, filepath.Join("testdata", name)}, libraries...)
	if said, err := exec.Command(need(t, compiler), args...).CombinedOutput(); err != nil {
		lacking(t, "a library for "+name+": "+string(said))
	}
	return program
}

// TestAgainstCalcium asks for the same verdicts by minimal polynomials, of all
// numbers whose degree allows it.
func TestAgainstCalcium(t *testing.T) {
	t.Parallel()
	questions := append(someQuestions(*from+1, many(800)), append(someFigures(*from+1000, many(40)), someTheorems(*from+1000, many(112))...)...)
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
