package oracle

import (
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/geom/exact"
)

// table reads a file of testdata/published: a row is a map from heading to cell.
func table(t *testing.T, name string) (rows []map[string]string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", name))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	heads := strings.Split(lines[0], "\t")
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range strings.Split(line, "\t") {
			row[heads[i]] = cell
		}
		if row["source"] == "" || len(row) != len(heads) {
			t.Fatalf("%s: a row without all its cells, or its source: %s", name, line)
		}
		rows = append(rows, row)
	}
	return rows
}

// asksMixed is ask for numbers of which one may be π.
func asksMixed(name string, left, right *term) question {
	w := newWorld()
	return hasSign(name, left.minus(right), func() int { return w.mixed(left).Sub(w.mixed(right)).Sign() })
}

// mixed works out sums and differences with π in them, or other numbers.
func (w *world) mixed(x *term) *exact.Mixed {
	switch {
	case x.op == 'p':
		return w.f.Pi()
	case x.op == '+':
		return w.mixed(x.x).Add(w.mixed(x.y))
	case x.op == '-':
		return w.mixed(x.x).Sub(w.mixed(x.y))
	}
	return exact.Pure(w.real(x))
}

// TestIdentities holds published identities against the kernel, each from both
// sides and, so that equality is no habit, with a side changed by 10^-40.
func TestIdentities(t *testing.T) {
	t.Parallel()
	var questions []question
	want := map[string]string{}
	for _, row := range table(t, "identities.tsv") {
		left, right := readFormula(row["left"]), readFormula(row["right"])
		more := right.plus(rational(tenTo(40)))
		for _, q := range []question{
			newWorld().ask(row["name"], left, right),
			newWorld().ask(row["name"]+", from the right", right, left),
		} {
			questions, want[q.name] = append(questions, q), "0"
		}
		q := newWorld().ask(row["name"]+" and 10^-40", left, more)
		questions, want[q.name] = append(questions, q), "-1"
	}
	for _, q := range questions {
		if q.told != want[q.name] {
			t.Errorf("%s: sign %s of the difference, want %s", q.name, q.told, want[q.name])
		}
	}
	t.Log(compare(t, questions))
}

// TestNearMisses holds what is nearly equal apart, by the differences of the
// table, and the values to the decimals that were published.
func TestNearMisses(t *testing.T) {
	t.Parallel()
	var questions []question
	for _, row := range table(t, "near_misses.tsv") {
		questions = append(questions, nearMiss(t, row)...)
	}
	t.Log(compare(t, questions))
}

// nearMiss asks of a row whether the value lies on the right side of the target,
// and between what its decimals allow.
func nearMiss(t *testing.T, row map[string]string) (out []question) {
	value, target := readFormula(row["value"]), readFormula(row["target"])
	difference := bigRat(row["difference"])
	want := "1"
	if difference.Sign() < 0 {
		want = "-1"
	}
	within := func(what string, x, y *term, low, high *big.Rat) {
		name := row["name"] + ", " + what
		below, above := asksMixed(name, x, y.plus(rational(low))), asksMixed(name, x, y.plus(rational(high)))
		if below.told == "-1" || above.told == "1" {
			t.Errorf("%s: not as the table has it", name)
		}
		out = append(out, below, above)
	}
	if row["published"] != "" {
		p, unit := bigRat(row["published"]), lastPlace(row["published"])
		within("published", value, rational(p), new(big.Rat).Neg(unit), unit)
	}
	if row["steps"] != "" {
		return append(out, polygonStaysOpen(t, row, value))
	}
	side := asksMixed(row["name"], value, target)
	if side.told != want {
		t.Errorf("%s: sign %s of the difference, want %s", row["name"], side.told, want)
	}
	tolerance := new(big.Rat).Abs(new(big.Rat).Mul(difference, big.NewRat(6, 10_000)))
	within("difference", value, target, new(big.Rat).Sub(difference, tolerance), new(big.Rat).Add(difference, tolerance))
	return append(out, side)
}

// lastPlace is the worth of a decimal's last digit.
func lastPlace(decimal string) *big.Rat {
	_, places, _ := strings.Cut(decimal, ".")
	return tenTo(len(places))
}

// polygonStaysOpen goes round the unit circle in chords of that length: the
// cosine of all the way, Chebyshev's polynomial, is not 1. The kernel has no
// cosine of a seventh of a turn; PARI/GP has, and says on which side the chord lies.
func polygonStaysOpen(t *testing.T, row map[string]string, chord *term) question {
	want := readFormula(row["target"]).plus(rational(bigRat(row["difference"])))
	tolerance := rational(new(big.Rat).Abs(new(big.Rat).Mul(bigRat(row["difference"]), big.NewRat(6, 10_000))))
	far := question{x: chord.minus(want).square().minus(tolerance.square()), told: "-1"}
	if answer := pariSays(t, []question{far})[0]; answer != "-1" {
		t.Errorf("%s: the chord differs from the side by another amount", row["name"])
	}
	cosine := whole(1).minus(chord.square().times(fraction(1, 2)))
	last, now := whole(1), cosine
	for range int(bigRat(row["steps"]).Num().Int64()) - 1 {
		last, now = now, cosine.times(now).times(whole(2)).minus(last)
	}
	return newWorld().ask(row["name"]+", all the way round", now, whole(1))
}

// TestTrigonometricTable holds the table of exact values against PARI/GP too.
func TestTrigonometricTable(t *testing.T) {
	t.Parallel()
	var questions []question
	for _, row := range table(t, "trig_exact.tsv") {
		for _, name := range []string{"sin", "cos", "tan"} {
			if form := row[name+"_exact"]; form != "" && form != "undefined" {
				value := readFormula(name + "(" + row["deg"] + ")")
				questions = append(questions, newWorld().ask(name+" "+row["deg"]+"°", value, readFormula(form)))
			}
		}
	}
	for _, q := range questions {
		if q.told != "0" {
			t.Errorf("%s is not what the table has", q.name)
		}
	}
	t.Log(compare(t, questions))
}
