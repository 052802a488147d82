package lang_test

import (
	"fmt"
	"math/bits"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// trueSources is the folder of sources as an author of textbooks writes them.
// In each every claim holds; a source named …-false.trm is a twin with one
// number changed, so that the line with the comment
//
//	# ERROR "text"
//
// is refused with a message that has this text, and no other line is.
const trueSources = "testdata/true/"

var wantedError = regexp.MustCompile(`# ERROR "([^"]+)"`)

// eachTrueSource runs a test for every figure of the folder.
func eachTrueSource(t *testing.T, test func(t *testing.T, path string, text []byte)) {
	t.Helper()
	paths, err := filepath.Glob(trueSources + "*.trm")
	if err != nil || len(paths) < 100 {
		t.Fatalf("%d sources in %s: %v", len(paths), trueSources, err)
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		name := lang.Base(path)
		t.Run(name, func(t *testing.T) { test(t, path, text) })
	}
}

func isFalseTwin(path string) bool { return strings.HasSuffix(path, "-false.trm") }

func TestTrueSources(t *testing.T) {
	eachTrueSource(t, func(t *testing.T, path string, text []byte) {
		r := lang.Compile(path, text)
		if isFalseTwin(path) {
			wantOneRefusal(t, text, r)
			return
		}
		for _, p := range r.Problems {
			t.Errorf("%d: %s", lineOf(p), p.Text)
		}
		for _, c := range r.Claims {
			if !c.Holds {
				t.Errorf("%d: does not hold: %s", c.Line, c.Text)
			}
		}
	})
}

// wantOneRefusal wants errors at the commented line of the text and nowhere else.
func wantOneRefusal(t *testing.T, text []byte, r *lang.Result) {
	t.Helper()
	wanted := map[int]string{}
	for i, line := range strings.Split(string(text), "\n") {
		if m := wantedError.FindStringSubmatch(line); m != nil {
			wanted[i+1] = m[1]
		}
	}
	if len(wanted) != 1 {
		t.Fatalf("%d lines have the comment ERROR, want 1", len(wanted))
	}
	for _, p := range r.Problems {
		if p.Severity != source.Error {
			continue
		}
		want, ok := wanted[lineOf(p)]
		if !ok || !strings.Contains(p.Text, want) {
			t.Errorf("%d: %s", lineOf(p), p.Text)
			continue
		}
		delete(wanted, lineOf(p))
	}
	for line, want := range wanted {
		t.Errorf("%d: not refused, want %q", line, want)
	}
	if r.Figure != nil {
		t.Error("a figure comes out")
	}
}

func lineOf(p *source.Problem) int {
	line, _ := p.Span.File.Position(p.Span.Start)
	return line
}

// TestFormatTrueSources holds that the canonical form of a source is a form of
// its own and means the same: the same points, claims and inks.
func TestFormatTrueSources(t *testing.T) {
	eachTrueSource(t, func(t *testing.T, path string, text []byte) {
		formatted := format(t, path, string(text))
		if again := format(t, path, formatted); again != formatted {
			t.Errorf("formatted twice:\n%s\nformatted once:\n%s", again, formatted)
		}
		if formatted == string(text) {
			return
		}
		before, after := lang.Compile(path, text), lang.Compile(path, []byte(formatted))
		if got, want := meaning(after), meaning(before); got != want {
			t.Errorf("formatted means\n%s\nwant\n%s", got, want)
		}
	})
}

func format(t *testing.T, path, text string) string {
	t.Helper()
	var problems source.List
	out, ok := syntax.Format(source.NewFile(path, text), &problems)
	if !ok {
		t.Fatal(problems[0].Text)
	}
	return out
}

// meaning is what a result says, whatever the source's layout.
func meaning(r *lang.Result) string {
	var b strings.Builder
	for _, p := range r.Problems {
		fmt.Fprintln(&b, "problem", p.Severity)
	}
	for _, c := range r.Claims {
		fmt.Fprintln(&b, "claim", c.Decided, c.Holds)
	}
	if r.Figure == nil {
		return b.String()
	}
	fmt.Fprintln(&b, r.Figure.Title, r.Figure.Unit, r.Figure.Paper, r.Figure.Theme, r.Figure.Language)
	for _, p := range r.Figure.Points {
		fmt.Fprintln(&b, look(p.Thing), p.At)
	}
	for _, s := range r.Figure.Straights {
		fmt.Fprintln(&b, look(s.Thing), s.Line.P, s.Line.P.Add(s.Line.D), s.Start, s.End, s.Used)
	}
	for _, c := range r.Figure.Circles {
		fmt.Fprintln(&b, look(c.Thing), c.Circle.C, c.Circle.R2.Decimal(9), c.Whole, c.Used)
	}
	for _, m := range r.Figure.Marks {
		fmt.Fprintf(&b, "%T\n", m)
	}
	return b.String()
}

// look is how a thing is drawn.
func look(t figure.Thing) string {
	label := "no label"
	if t.Label != nil {
		label = fmt.Sprintf("label %v", *t.Label)
	}
	return fmt.Sprint(t.Name, t.Role, t.Weight, t.Dashed, t.Hidden, label)
}

// TestDataOfShapes gives quadrilaterals every one to three of ten data, most of
// which contradict each other: each datum is kept or the given is refused, and
// never is one left out without a word.
func TestDataOfShapes(t *testing.T) {
	data := []struct{ given, claim string }{
		{"AB = 5", "AB = 5"}, {"BC = 4", "BC = 4"}, {"CD = 3", "CD = 3"}, {"DA = 3.5", "DA = 3.5"},
		{"AC = 6", "AC = 6"}, {"BD = 5.5", "BD = 5.5"},
		{"angle A = 70°", "angle DAB = 70°"}, {"angle B = 100°", "angle ABC = 100°"},
		{"angle C = 80°", "angle BCD = 80°"}, {"angle D = 105°", "angle CDA = 105°"},
	}
	kept := 0
	for _, shape := range []string{"square", "rectangle", "parallelogram", "rhombus", "kite", "trapezium", "quadrilateral"} {
		for set := 1; set < 1<<len(data); set++ {
			if n := bits.OnesCount(uint(set)); n > 3 || n == 3 && set%4 > 0 { // one in four of these, for time
				continue
			}
			var given, claims []string
			for i, d := range data {
				if set>>i&1 == 1 {
					given, claims = append(given, d.given), append(claims, "claim "+d.claim)
				}
			}
			head := "figure \"t\"\ngiven " + shape + " ABCD with " + strings.Join(given, ", ") + "\n"
			r := lang.Compile("shape.trm", []byte(head+strings.Join(claims, "\n")+"\n"))
			for _, p := range r.Problems {
				if p.Severity == source.Error && lineOf(p) != 2 {
					t.Errorf("%s: %s", head, p.Text)
				}
			}
			if r.Figure != nil {
				kept++
			}
		}
	}
	if kept < 150 {
		t.Errorf("only %d figures, too few to tell", kept)
	}
}
