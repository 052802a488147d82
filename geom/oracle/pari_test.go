// Package oracle holds the exact kernel, the plane on it and whole sources
// against programs that know nothing of them: PARI/GP, which proves the sign of
// every number by a separation bound, and Calcium's qqbar (now a part of FLINT),
// which works with minimal polynomials. It has tests only.
package oracle

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"trammel/geom/exact"
)

// question is a sign that trammel has told.
type question struct {
	name string
	x    *term
	told string // "-1", "0", "1", "not 0", or why there is none: "negative", "zero", "undecided"
}

// ask is what trammel says of the sign of left - right.
func (w *world) ask(name string, left, right *term) question {
	q := question{name: name, x: left.minus(right)}
	q.told = told(func() int { return w.real(left).Cmp(w.real(right)) })
	return q
}

// told is the sign, or the reason why there is none, in the oracles' words.
func told(sign func() int) (out string) {
	err := exact.Try(func() { out = []string{"-1", "0", "1"}[sign()+1] })
	switch err.(type) {
	case *exact.NegativeRoot:
		return "negative"
	case *exact.DivisionByZero:
		return "zero"
	case *exact.Undecided:
		return "undecided"
	}
	return out
}

// need finds a program that the tests cannot do without.
func need(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		lacking(t, program)
	}
	return path
}

// lacking fails in CI, and forgives elsewhere, that something is not installed.
func lacking(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatalf("missing: %s", what)
	}
	t.Skipf("missing (.ci/run installs it): %s", what)
}

// lines runs a program once on an input and gives the lines that it prints.
func lines(t testing.TB, input string, program string, args ...string) []string {
	t.Helper()
	command := exec.Command(need(t, program), args...)
	command.Stdin = strings.NewReader(input)
	var wrong strings.Builder
	command.Stderr = &wrong
	out, err := command.Output()
	if err != nil || wrong.Len() > 0 {
		t.Fatalf("%s: %v\n%s", program, err, wrong.String())
	}
	return strings.Split(strings.TrimSpace(string(out)), "\n")
}

// pariSays are PARI/GP's proved answers to the questions.
func pariSays(t testing.TB, questions []question) []string {
	t.Helper()
	script, err := os.ReadFile(filepath.Join("testdata", "signs.gp"))
	if err != nil {
		t.Fatal(err)
	}
	var input strings.Builder
	input.Write(script)
	for _, q := range questions {
		input.WriteString("\n" + q.x.pari())
	}
	answers := lines(t, input.String()+"\n", "gp", "--quiet", "--fast", "--stacksize", "256M")
	if len(answers) != len(questions) {
		t.Fatalf("gp answered %d of %d questions; last: %s", len(answers), len(questions), answers[len(answers)-1])
	}
	return answers
}

// A longer search for a wrong verdict: go test ./geom/oracle -from 1000 -times 20.
var (
	from  = flag.Uint64("from", 1, "the first seed of what is drawn at random")
	times = flag.Int("times", 0, "how many times as much as in CI is drawn; 0: a tenth, or in CI all of it")
)

// many is n in CI, and less elsewhere, unless more is asked for.
func many(n int) int {
	switch {
	case *times > 0:
		return n * *times
	case os.Getenv("CI") == "":
		return n / 10
	}
	return n
}

// counts are how many questions got which answer.
type counts map[string]int

// compare complains of each question that PARI/GP answers in another way, and
// of each that is left open without need.
func compare(t *testing.T, questions []question) counts {
	t.Helper()
	out := counts{}
	for i, answer := range pariSays(t, questions) {
		q := questions[i]
		out[q.told]++
		if answer == "near" {
			out["equal to 2000 digits"]++
		}
		if q.told == "undecided" && !q.isDeep() {
			t.Errorf("%s: not decided\n%s", q.name, q.x.pari())
		}
		if !agree(q.told, answer) {
			t.Errorf("%s: trammel says %s, PARI/GP %s\n%s", q.name, q.told, answer, q.x.pari())
		}
	}
	return out
}

// isDeep tells whether a question may pass the budget: eight roots make 256
// terms, and fractions of degrees of two kinds a field of degree 1440 by themselves.
func (q question) isDeep() bool { return q.x.degree().BitLen() > 8 }

// agree tells whether an answer is what the oracle says. Not to decide is no
// wrong answer; "near" is no proof of 0, and the most that there is.
func agree(told, oracle string) bool {
	switch told {
	case "undecided":
		return true
	case "0":
		return oracle == "0" || oracle == "near"
	case "not 0":
		return oracle == "1" || oracle == "-1"
	}
	return told == oracle
}

// TestAgree tries the judge on wrong verdicts.
func TestAgree(t *testing.T) {
	third := rational(bigRat("1/3"))
	x := root(2).times(root(3)).minus(root(6)) // 0
	y := x.plus(third)
	for _, c := range []struct {
		q    question
		fine bool
	}{
		{question{"0", x, "0"}, true},
		{question{"0", x, "1"}, false},
		{question{"0", x, "zero"}, false},
		{question{"1/3", y, "1"}, true},
		{question{"1/3", y, "0"}, false},
		{question{"1/3", y, "-1"}, false},
		{question{"1/0", third.over(x), "zero"}, true},
		{question{"1/0", third.over(x), "1"}, false},
		{question{"√-1/3", x.minus(third).root(), "negative"}, true},
		{question{"√-1/3", x.minus(third).root(), "0"}, false},
	} {
		if answer := pariSays(t, []question{c.q})[0]; agree(c.q.told, answer) != c.fine {
			t.Errorf("%s: %s against PARI/GP's %s", c.q.name, c.q.told, answer)
		}
	}
}
