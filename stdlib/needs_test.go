package stdlib_test

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/stdlib"
)

// fault is data that violate one thing that constructions need, and nothing else.
type fault struct {
	needs  string
	givens string
	calls  []string
}

const (
	onePlace  = "given A (1, 2)\ngiven B (1, 2)\n"
	twoPlaces = "given A (0, 0)\ngiven B (6, 1)\n"
	oneLine   = "given A (0, 0)\ngiven B (2, 1)\ngiven C (6, 3)\n"
	offCircle = "given circle k centre O (0, 0) radius 3\ngiven A (3, 1)\n"
	slope     = "given line m through X (0, 0) and Y (8, 6)\n"
)

var faults = []fault{
	{"A ≠ B", onePlace, []string{
		"M, n by bisect(A, B)", "M by middle(A, B)", "n by erectend(A, B)", "C by layoff(A, B, 3)",
		"C by triangleon(A, B)", "C, D by squareon(A, B)", "C, D by rectangleon(A, B, 3)",
		"C by angle60(A, B)", "C by angle120(A, B)", "C by angle90(A, B)", "C by angle45(A, B)",
		"C by angle30(A, B)", "C by angle15(A, B)", "C by angle75(A, B)", "C by angle36(A, B)", "C by angle72(A, B)",
		"P[1 to 2] by divide(A, B, 3)", "P by cutratio(A, B, 2, 3)", "F, X by third(A, B, 2, 3)",
		"F, X by fourth(A, B, 2, 3, 4)", "D, X by mean(A, B, 2, 3)", "D, X by root(A, B, 2)", "G by golden(A, B)",
		"C by frommedians(A, B, 3, 4)",
	}},
	{"A ≠ B", onePlace + "given C (3, 3)", []string{"X, Y, Z by squarerectangle(A, B, C)"}},
	{"A ≠ B", onePlace + "given X (7, 1)\ngiven Y (6, 0)\ngiven Z (8, 0)", []string{"k, O by viewarc(A, B, X, Y, Z)"}},
	{"A ≠ B", onePlace + "given line m through X (0, 0) and Y (9, 0)", []string{"k, T by throughtouch(A, B, m)"}},
	{"A ≠ C", "given A (1, 2)\ngiven C (1, 2)", []string{"B, D by diamond(A, C, 3)"}},
	{"B ≠ C", twoPlaces + "given C (6, 1)", []string{"X, Y, Z by squarerectangle(A, B, C)"}},
	{"P ≠ Q", "given A (0, 0)\ngiven B (2, 1)\ngiven C (6, 2)\ngiven P (1, 4)\ngiven Q (1, 4)",
		[]string{"R by copyangle(A, B, C, P, Q)"}},

	{"not collinear ABC", oneLine, []string{
		"H by halve(A, B, C)", "k, O by circumcircle(A, B, C)", "k, I by incircle(A, B, C)", "k, J by excircle(A, B, C)",
		"G by centroid(A, B, C)", "H by orthocentre(A, B, C)", "k by ninepoint(A, B, C)",
		"X, Y, Z by squaretriangle(A, B, C)", "k, l, m by threetouching(A, B, C)",
	}},
	{"not collinear ABC", oneLine + "given P (3, 3)\ngiven Q (4, 4)",
		[]string{"R by copyangle(A, B, C, P, Q)", "k by cornercircle(A, B, C, P)"}},
	{"not collinear ABX", oneLine, []string{"P, Q by rhombuson(A, B, C)"}},
	{"not collinear ABD", oneLine, []string{"P by parallelogramon(A, B, C)"}},
	{"not collinear XYZ", twoPlaces + "given X (0, 3)\ngiven Y (1, 3)\ngiven Z (3, 3)", []string{"k by viewarc(A, B, X, Y, Z)"}},

	{"P on m", slope + "given P (3, 3)", []string{"n by erect(m, P)"}},
	{"not P on m", slope + "given P (4, 3)", []string{"n, F by drop(m, P)", "n by parallel(m, P)", "n by alongside(m, P)"}},
	{"not A on m", slope + "given A (4, 3)\ngiven B (2, 5)", []string{"k, T by throughtouch(A, B, m)"}},
	{"not B on m", slope + "given B (4, 3)\ngiven A (2, 5)", []string{"k, T by throughtouch(A, B, m)"}},
	{"B same side of m as A", slope + "given A (2, 5)\ngiven B (5, -1)", []string{"k, T by throughtouch(A, B, m)"}},
	{"A ≠ B", onePlace + "given line m through X (0, 5) and Y (9, 5)", []string{"k, T by touchparallel(A, B, m)"}},
	{"not A on m", slope + "given A (4, 3)\ngiven B (8, 6)", []string{"k, T by touchparallel(A, B, m)"}},
	{"AB parallel to m", slope + "given A (0, 3)\ngiven B (4, 7)", []string{"k, T by touchparallel(A, B, m)"}},
	{"A on m", slope + "given A (4, 4)\ngiven B (2, 5)", []string{"k, O by touchat(m, A, B)"}},
	{"not B on m", slope + "given A (4, 3)\ngiven B (8, 6)", []string{"k, O by touchat(m, A, B)"}},
	{"not AB parallel to m", slope + "given A (0, 3)\ngiven B (4, 6)", []string{"k, T by throughtouch(A, B, m)"}},

	{"a > 0", twoPlaces, []string{
		"C by layoff(A, B, 0)", "C, D by rectangleon(A, B, 0)", "P by cutratio(A, B, 0, 3)",
		"F, X by third(A, B, 0, 3)", "F, X by fourth(A, B, -1, 3, 4)", "D, X by mean(A, B, 0, 3)", "D, X by root(A, B, -2)",
	}},
	{"b > 0", twoPlaces, []string{
		"P by cutratio(A, B, 3, 0)", "F, X by third(A, B, 3, 0)", "F, X by fourth(A, B, 3, -1, 4)", "D, X by mean(A, B, 3, 0)",
	}},
	{"c > 0", twoPlaces, []string{"F, X by fourth(A, B, 3, 4, 0)"}},
	{"n > 1", twoPlaces, []string{"P by divide(A, B, 1)", "P by divide(A, B, 0)", "P by divide(A, B, -3)"}},
	{"a > half AC", "given A (0, 0)\ngiven C (3, 4)", []string{"B, D by diamond(A, C, 5/2)"}},
	{"a + b > 3/2 AB", "given A (0, 0)\ngiven B (4, 0)", []string{"C by frommedians(A, B, 2, 4)"}},
	{"a + 3/2 AB > b", "given A (0, 0)\ngiven B (4, 0)", []string{"C by frommedians(A, B, 2, 8)"}},
	{"b + 3/2 AB > a", "given A (0, 0)\ngiven B (4, 0)", []string{"C by frommedians(A, B, 8, 2)"}},

	{"angle ABC = 90°", "given A (0, 0)\ngiven B (6, 0)\ngiven C (7, 3)", []string{"X, Y, Z by squarerectangle(A, B, C)"}},
	{"angle ABC ≠ 90°", "given B (0, 0)\ngiven A (4, 0)\ngiven C (0, 3)", []string{"k by ninepoint(A, B, C)"}},
	{"angle BCA ≠ 90°", "given C (0, 0)\ngiven A (4, 0)\ngiven B (0, 3)", []string{"k by ninepoint(A, B, C)"}},
	{"angle CAB ≠ 90°", "given A (0, 0)\ngiven B (4, 0)\ngiven C (0, 3)", []string{"k by ninepoint(A, B, C)"}},
	{"angle ABP + angle PBC = angle ABC", "given B (0, 0)\ngiven A (4, 0)\ngiven C (0, 3)\ngiven P (2, -1)",
		[]string{"k by cornercircle(A, B, C, P)"}},
	{"angle ABP > 0°", "given B (0, 0)\ngiven A (4, 0)\ngiven C (0, 3)\ngiven P (2, 0)", []string{"k by cornercircle(A, B, C, P)"}},
	{"angle PBC > 0°", "given B (0, 0)\ngiven A (4, 0)\ngiven C (0, 3)\ngiven P (0, 2)", []string{"k by cornercircle(A, B, C, P)"}},

	{"T on k", offCircle, []string{"t by tangent(k, A)"}},
	{"P outside k", "given circle k centre O (0, 0) radius 5\ngiven P (3, 4)", []string{"S, T by tangents(k, P)"}},
	{"A on k", offCircle, []string{
		"B, C by trianglein(k, A)", "B, C, D by squarein(k, A)", "P[1 to 4] by pentagon(k, A)", "P[1 to 5] by hexagon(k, A)",
		"P[1 to 7] by octagon(k, A)", "P[1 to 9] by decagon(k, A)", "P[1 to 11] by dodecagon(k, A)",
		"P[1 to 14] by pentadecagon(k, A)", "P[1 to 16] by heptadecagon(k, A)",
	}},
	{"radius k > radius l", "given circle k centre O (0, 0) radius 2\ngiven circle l centre Q (7, 0) radius 2", []string{"A, B by outers(k, l)"}},
	{"not l inside k", "given circle k centre O (0, 0) radius 4\ngiven circle l centre Q (1, 0) radius 2", []string{"A, B by outers(k, l)", "A, B by belts(k, l)"}},
	{"not k touches l inside", "given circle k centre O (0, 0) radius 4\ngiven circle l centre Q (2, 0) radius 2", []string{"A, B by outers(k, l)", "A, B by belts(k, l)"}},
	{"not k inside l", "given circle k centre O (1, 0) radius 2\ngiven circle l centre Q (0, 0) radius 4", []string{"A, B by belts(k, l)"}},
	{"k outside l", "given circle k centre O (0, 0) radius 4\ngiven circle l centre Q (6, 0) radius 2", []string{"A, B by inners(k, l)"}},
	{"not collinear O1O2O3", "given circle k centre K (0, 0) radius 1\ngiven circle l centre L (4, 0) radius 1\ngiven circle m centre M (9, 0) radius 2",
		[]string{"o by touchthree(k, l, m)"}},
	{"k outside l", circles(0, 5, 8), []string{"o by touchthree(k, l, m)"}},
	{"l outside m", circles(0, 8, 12), []string{"o by touchthree(k, l, m)"}},
	{"m outside k", circles(0, 8, 3), []string{"o by touchthree(k, l, m)"}},
}

// circles is three circles k, l and m of radius 3, 3 and 2, their centres at
// these places of the x-axis, the last 2 above it.
func circles(k, l, m int) string {
	return fmt.Sprintf("given circle k centre K (%d, 0) radius 3\ngiven circle l centre L (%d, 0) radius 3\ngiven circle m centre M (%d, 2) radius 2\n", k, l, m)
}

// TestNeeds calls each construction on data that violate its needs, one by
// one: the call is blamed, the need named, and nothing else reported.
func TestNeeds(t *testing.T) {
	tried := map[string]bool{}
	for _, f := range faults {
		for _, call := range f.calls {
			name := construction(call)
			tried[name+" needs "+f.needs] = true
			t.Run(name+"/"+f.needs, func(t *testing.T) { refuse(t, f, name, call) })
		}
	}
	for _, name := range stdlib.Names() {
		for _, need := range needs(t, name) {
			if !tried[name+" "+need] {
				t.Errorf("%s %s: never violated", name, need)
			}
		}
	}
}

// construction is the name of what a line calls.
func construction(call string) string {
	_, name, _ := strings.Cut(call, " by ")
	name, _, _ = strings.Cut(name, "(")
	return name
}

// refuse compiles a call that must be refused for one reason. What uses its
// results must not be blamed.
func refuse(t *testing.T, f fault, name, call string) {
	t.Helper()
	results, by, _ := strings.Cut(call, " by ")
	call = results + " by " + ofCaller(by)
	src := "figure \"refused\"\n" + ofCaller(strings.TrimSpace(f.givens)) + "\n" + call + "\n"
	result := lang.Compile("case.trm", []byte(src))
	want := name + " needs "
	var errors source.List
	for _, p := range result.Problems {
		if p.Severity == source.Error {
			errors = append(errors, p)
		}
	}
	if len(errors) != 1 || !strings.Contains(errors[0].Text, want) || len(errors[0].Notes) != 1 {
		t.Fatalf("want one error, %q; got\n%s%s", want, problems(errors), src)
	}
	if is := errors[0].Notes[0].Span.Text(); is != "needs "+f.needs {
		t.Errorf("it is refused for %q, not for what it needs, %q", is, f.needs)
	}
	if at := errors[0].Span.Text(); !strings.Contains(call, at) {
		t.Errorf("the blame lies on %q, not in %q", at, call)
	}
	if errors[0].Help == "" && !strings.Contains(errors[0].Text, " more than ") {
		t.Errorf("nothing says how to mend %q", errors[0].Text)
	}
	for _, name := range names.FindAllString(errors[0].Text+" "+errors[0].Help, -1) {
		if letters.ReplaceAllString(name, "") != "" && !introduced[name] {
			t.Errorf("%s is told to a caller who has no such thing:\n%s\n%s", name, errors[0].Text, errors[0].Help)
		}
	}
}

var (
	letter  = regexp.MustCompile(`\b[A-Za-z]\b`)
	names   = regexp.MustCompile(`\b(?:[A-Z][A-Z0-9]*|[b-z]\d*)\b`)
	letters = regexp.MustCompile(`[A-Za-z]7`)
)

// introduced are names that a help says the meaning of.
var introduced = map[string]bool{"T": true, "L": true, "M": true, "N": true}

// ofCaller is a source with names that no construction of the library has.
func ofCaller(text string) string { return letter.ReplaceAllString(text, "${0}7") }

// needs are the lines of a library file that say what must hold.
func needs(t *testing.T, name string) []string {
	t.Helper()
	text, err := fs.ReadFile(stdlib.Files, name+".trm")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, "needs ") {
			line, _, _ = strings.Cut(line, " \"")
			line = strings.TrimSuffix(line, " else")
			out = append(out, line)
		}
	}
	return out
}
