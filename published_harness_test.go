package trammel_test

import (
	"fmt"
	"maps"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
)

// The tests here hold the compiler against published facts, each through a
// source that is compiled as a user's would be. The tables in testdata/published
// say where each fact comes from; «heading» in a source stands for a cell of the
// table's row, and a line whose cell is empty is left out.
//
// Every claim of a source must hold, and its twins, which say a little less or
// more, must be refused. Comments ask for something else:
//
//	# ERROR "text"   the line is refused, and the message has this text
//	# ROUNDED        the claim is refused, by half a unit of its last decimal at most

// published is the folder of the tables and the sources.
const published = "testdata/published/"

// row is a line of a table, by heading.
type row map[string]string

// table reads a file of rows.
func table(t *testing.T, name string) (rows []row) {
	t.Helper()
	text, err := os.ReadFile(published + name + ".tsv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	heads := strings.Split(lines[0], "\t")
	for _, line := range lines[1:] {
		r := row{}
		for i, cell := range strings.Split(line, "\t") {
			r[heads[i]] = cell
		}
		if len(r) != len(heads) || r["source"] == "" {
			t.Fatalf("%s: a row without all its cells, or its source: %s", name, line)
		}
		rows = append(rows, r)
	}
	return rows
}

var placeholder = regexp.MustCompile(`«([^»]*)»`)

// fill reads a source and puts in the cells of a row.
func (r row) fill(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(published + name)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for line := range strings.Lines(string(text)) {
		empty := false
		line = placeholder.ReplaceAllStringFunc(line, func(place string) string {
			cell, known := r[placeholder.FindStringSubmatch(place)[1]]
			if !known {
				t.Fatalf("%s: there is no column %s", name, place)
			}
			empty = empty || cell == "" || cell == "undefined"
			return cell
		})
		if !empty {
			out.WriteString(line)
		}
	}
	return out.String()
}

// hold complains of all in a source that does not come out as it should.
func hold(t *testing.T, name, text string) {
	t.Helper()
	if wrong := faults(name, text); len(wrong) > 0 {
		t.Errorf("%s\n%s\n%s", name, strings.Join(wrong, "\n"), numbered(text))
	}
}

func numbered(text string) string {
	var out strings.Builder
	n := 0
	for line := range strings.Lines(text) {
		n++
		fmt.Fprintf(&out, "%4d  %s", n, line)
	}
	return out.String()
}

// faults are the lines of a source and of its claims' twins that do not come
// out as they should.
func faults(name, text string) (out []string) {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	own := len(lines)
	for _, line := range lines[:own] {
		lines = append(lines, twins(line)...)
	}
	result := lang.Compile(name, []byte(strings.Join(lines, "\n")+"\n"))
	found := map[int][]string{}
	for _, p := range result.Problems {
		line, _ := p.Span.File.Position(p.Span.Start)
		if p.Severity == source.Error {
			found[line] = append(found[line], p.Text)
		}
	}
	for i, line := range lines {
		if wrong := judge(line, i >= own, found[i+1]); wrong != "" {
			out = append(out, fmt.Sprintf("line %d: %s: %s", i+1, line, wrong))
		}
		delete(found, i+1)
	}
	for _, line := range slices.Sorted(maps.Keys(found)) {
		out = append(out, fmt.Sprintf("line %d, past the end: %s", line, found[line]))
	}
	return out
}

var wantedError = regexp.MustCompile(`# ERROR "(.*)"`)

// judge says what is wrong with what was reported of a line.
func judge(line string, twin bool, errors []string) string {
	want := wantedError.FindStringSubmatch(line)
	rounded := strings.HasSuffix(line, "# ROUNDED")
	switch {
	case len(errors) > 1:
		return "several errors: " + strings.Join(errors, "; ")
	case len(errors) == 0 && rounded && strings.HasSuffix(literal(line), "0"):
		return ""
	case len(errors) == 0 && (twin || want != nil || rounded):
		return "should have been refused"
	case len(errors) == 0:
		return ""
	case want != nil && !strings.Contains(errors[0], want[1]):
		return "another error: " + errors[0]
	case want != nil:
		return ""
	case rounded:
		return nearEnough(line, errors[0])
	case twin && comparison.MatchString(line) && refusal.MatchString(errors[0]):
		return ""
	case twin && !comparison.MatchString(line) && strings.HasPrefix(errors[0], "the claim does not hold: "):
		return ""
	}
	return errors[0]
}

var comparison = regexp.MustCompile(` [=≤≥] `)

// refusal is how a false comparison is refused: by an amount that is not 0.
var refusal = regexp.MustCompile(`^the claim does not hold: .* is −?[\d.]*[1-9][^:]*$`)

// nearEnough checks the amount by which a rounded decimal was refused.
func nearEnough(line, message string) string {
	off, ok := amount(message)
	if !ok {
		return "refused without an amount: " + message
	}
	_, decimals, _ := strings.Cut(literal(line), ".")
	// The amount itself has three digits, so that 0.5 may be 0.50049….
	if half := 0.5005 * math.Pow10(-len(decimals)); off == 0 || math.Abs(off) > half {
		return fmt.Sprintf("should be refused by half a unit of the last decimal at most, %.3g: %s", half, message)
	}
	return ""
}

var (
	lastLiteral = regexp.MustCompile(`(\d*\.\d+)[^\d.]*$`)
	lastAmount  = regexp.MustCompile(` is (−?[\d.]+)(?:·10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?[^\d]*$`)
	plainDigits = strings.NewReplacer("−", "-", "⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")
)

// literal is the last decimal fraction of a line.
func literal(line string) string {
	if m := lastLiteral.FindStringSubmatch(line); m != nil {
		return m[1]
	}
	return ""
}

// amount reads by how much a claim failed.
func amount(message string) (float64, bool) {
	m := lastAmount.FindStringSubmatch(message)
	if m == nil {
		return 0, false
	}
	exponent := "0"
	if m[2] != "" {
		exponent = m[2]
	}
	x, err := strconv.ParseFloat(plainDigits.Replace(m[1]+"e"+exponent), 64)
	return x, err == nil
}

// twins are false claims that look like a claim, if the line is one that must hold.
func twins(line string) []string {
	claimed, ok := strings.CutPrefix(line, "claim ")
	if !ok || strings.Contains(line, "#") {
		return nil
	}
	for _, swap := range [][2]string{{" < ", " ≥ "}, {" > ", " ≤ "}} {
		if strings.Contains(line, swap[0]) {
			return []string{strings.Replace(line, swap[0], swap[1], 1)}
		}
	}
	i := strings.LastIndex(line, " = ")
	denied, denies := strings.CutPrefix(claimed, "not ")
	switch {
	case denies:
		return []string{"claim " + denied}
	case i < 0:
		return []string{"claim not " + claimed}
	case strings.Contains(line, "angle"):
		return []string{line + " + 0.75°"}
	}
	return append(digitTwin(line[:i+3], line[i+3:]), scaledTwin(line, i+3)...)
}

var word = regexp.MustCompile(`[A-Za-z]\w*'*|[\d.]+`)

// digitTwin changes one digit on the right side: in the innermost root, if there is one.
func digitTwin(left, right string) []string {
	from := max(strings.LastIndex(right, "sqrt("), 0)
	at := -1
	for _, span := range word.FindAllStringIndex(right[from:], -1) {
		if first := right[from+span[0]]; first >= '0' && first <= '9' && (at < 0 || from == 0) {
			at = from + span[1] - 1
		}
	}
	if at < 0 {
		return nil
	}
	other := right[at] + 1
	if right[at] == '9' {
		other = '8'
	}
	return []string{left + right[:at] + string(other) + right[at+1:]}
}

// scaledTwin makes what stands after the last = or : a millionth smaller.
func scaledTwin(line string, from int) []string {
	if i := strings.LastIndex(line, " : "); i > from {
		from = i + 3
	}
	last := strings.TrimSpace(line[from:])
	if sizeless.MatchString(last) {
		return nil
	}
	return []string{line[:from] + "999999/1000000 * (" + last + ")"}
}

// sizeless is what has no part: 0, 0 times something, a point.
var sizeless = regexp.MustCompile(`^(0|.*\* \(0\)|[A-Z]\d*'*)$`)

// TestPublishedHarness holds the judge to finding what is wrong.
func TestPublishedHarness(t *testing.T) {
	const given = "figure \"harness\"\ngiven A (0, 0)\ngiven B 6 from A\ngiven C 2 from A at 60° to AB\n"
	for line, wrong := range map[string]bool{
		"claim AB = 6":      false,
		"claim AB = 6.0001": true,
		"claim AB = 7 # ERROR \"AB − 7 is −1.00 cm\"":   false,
		"claim AB = 7 # ERROR \"AB − 7 is −2.00 cm\"":   true,
		"claim AB = 6 # ERROR \"is\"":                   true,
		"claim area of ABC = 5.1962 # ROUNDED":          false,
		"claim area of ABC = 5.1961 # ROUNDED":          true,
		"claim area of ABC = 5.20 # ROUNDED":            false,
		"claim AB = 6.00 # ROUNDED":                     false,
		"claim AB = 6.01 # ROUNDED":                     true,
		"claim area of ABC = 3*sqrt(3)":                 false,
		"claim area of ABC = 3*sqrt(2)":                 true,
		"claim angle ABC < 30°":                         false,
		"claim angle ABC > 30°":                         true,
		"claim angle BAC = 60°":                         false,
		"claim AB : AC = 3 : 1":                         false,
		"claim AB : AC = 3 : 2":                         true,
		"claim not collinear ABC":                       false,
		"claim collinear ABC":                           true,
		"claim B = B":                                   false,
		"claim B = C":                                   true,
		"join AD # ERROR \"there is no point D\"":       true,
		"given D between A and C # ERROR \"no such\"":   true,
		"claim triangle ABC similar to ABC":             false,
		"claim 3 area of ABC = 9*sqrt(3) - 0*sqrt(999)": true, // the changed digit is worth nothing
	} {
		if got := faults("harness.trm", given+line+"\n"); (len(got) > 0) != wrong {
			t.Errorf("%s: %q", line, got)
		}
	}
}
