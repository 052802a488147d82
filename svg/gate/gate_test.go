package gate

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// page is a drawing of 60 by 40 mm made by hand, with groups as given.
func page(groups string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><title>t</title>` + groups + `</svg>`
}

// block is a label in the shape of a square of 2 mm, whose lower left corner is at x, y.
func block(class, words string, x, y float64) string {
	return fmt.Sprintf(`<g class="labels"><path d="M%g %g L%g %g L%g %g L%g %g Z" class="%s" fill="#000000" role="img" aria-label="%s"/></g>`,
		x, y, x+2, y, x+2, y-2, x, y-2, class, words)
}

func dot(class string, x, y float64) string {
	return fmt.Sprintf(`<g class="points"><circle cx="%g" cy="%g" r="0.6" class="%s" fill="#000000"/></g>`, x, y, class)
}

func line(class, width string, x1, y1, x2, y2 float64) string {
	return fmt.Sprintf(`<g class="given"><line x1="%g" y1="%g" x2="%g" y2="%g" class="%s" stroke="#000000" stroke-width="%s"/></g>`, x1, y1, x2, y2, class, width)
}

func mark(class, path string) string {
	return fmt.Sprintf(`<g class="marks"><path d="%s" class="%s" stroke="#000000" stroke-width="0.35"/></g>`, path, class)
}

func round(class string, x, y, r float64) string {
	return fmt.Sprintf(`<g class="result"><circle cx="%g" cy="%g" r="%g" class="%s" stroke="#000000" stroke-width="0.5"/></g>`, x, y, r, class)
}

// A cross of two lines at (30, 20), with its dot.
var cross = line("s1", "0.35", 10, 20, 50, 20) + line("s2", "0.35", 30, 5, 30, 35) + dot("p1", 30, 20)

// drawings are made by hand, each with the faults that it has: kinds, in order.
var drawings = []struct {
	name   string
	groups string
	faults []Kind
}{
	{"a label in its corner", cross + block("p1", "A", 31, 19), nil},
	{"a label on a line", cross + block("p1", "A", 31, 21), []Kind{Contact}},
	{"a label within the width of a line", cross + block("p1", "A", 31, 19.83), []Kind{Contact}},
	{"a label just clear of a line", cross + block("p1", "A", 31, 19.8), nil},
	{"a label on its own dot", dot("p1", 30, 20) + block("p1", "A", 30.3, 20), []Kind{Contact}},
	{"a dot within a label", dot("p1", 30, 20) + `<g class="labels"><path d="M20 30 L40 30 L40 10 L20 10 Z" class="p1" fill="#000000" aria-label="A"/></g>`, []Kind{Contact}},
	{"a ring about a dot", dot("p1", 30, 20) + `<g class="labels"><path d="M20 30 L40 30 L40 10 L20 10 Z M21 11 L39 11 L39 29 L21 29 Z" class="p1" fill="#000000" aria-label="O"/></g>`, nil},
	{"a label whose box, but not its ink, meets a line", line("s1", "0.35", 10, 10, 20, 20) + dot("p1", 23, 20) +
		`<g class="labels"><path d="M16 10 L22 10 L22 16 Z" class="p1" fill="#000000" aria-label="A"/></g>`, nil},
	{"a label on a gap of a broken line", line("s1", "0.35", 10, 20, 28, 20) + line("s1", "0.35", 32, 20, 50, 20) + block("s1", "m", 29, 21), nil},
	{"a label in the gap of a dashed line", strings.Replace(line("s1", "0.35", 10, 20, 50, 20), "/>", ` stroke-dasharray="6 6"/>`, 1) + block("s1", "m", 18, 21), []Kind{Contact}},
	{"a label on a circle", round("c1", 30, 20, 10) + block("c1", "k", 39, 21), []Kind{Contact}},
	{"a label within a circle", round("c1", 30, 20, 10) + block("c1", "k", 29, 21), nil},
	{"a label on an arc", `<g class="result"><path d="M20 20 A10 10 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>` + block("c1", "k", 29, 11), []Kind{Contact}},
	{"a label where the arc is not", `<g class="result"><path d="M20 20 A10 10 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>` + block("c1", "k", 29, 31), nil},
	{"a label within the large arc", `<g class="result"><path d="M20 20 A12 12 0 1 0 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>` + block("c1", "k", 29, 30), nil},
	{"a label on the large arc", `<g class="result"><path d="M20 20 A12 12 0 1 0 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>` + block("c1", "k", 29, 39.5), []Kind{Contact}},
	{"a label on hatching", `<g class="shade"><line x1="10" y1="10" x2="20" y2="20" stroke="#000000" stroke-width="0.18"/></g>` + dot("p1", 25, 15) + block("p1", "A", 15, 16), []Kind{Contact}},
	{"a label on a tint", `<g class="shade"><path d="M10 10 L20 10 L20 20 Z" fill="#e6e6e6"/></g>` + dot("p1", 19, 12) + block("p1", "A", 16, 13), nil},
	{"a label on a mark", cross + mark("tick", "M40 18.5 L40 21.5") + block("length s1", "5", 39, 19.5), []Kind{Contact}},
	{"two labels all but apart", cross + dot("p2", 40, 30) + block("p1", "A", 31, 19) + block("p2", "B", 33.1, 19), []Kind{Nearer, Joined}},
	{"two labels in one place", cross + block("p1", "A", 31, 19) + block("note p1", "B", 32.9, 19), []Kind{Overlap}},
	{"a label inside another", dot("p1", 30, 5) + block("p1", "A", 30, 20) +
		`<g class="labels"><path d="M25 25 L40 25 L40 10 L25 10 Z" class="p1" fill="#000000" aria-label="B"/></g>`, []Kind{Overlap}},
	{"a label half off the paper", dot("p1", 57, 20) + block("p1", "A", 58.5, 21), []Kind{Off}},
	{"a line off the paper by half its width", line("s1", "0.5", 10, 0.2, 50, 0.2), []Kind{Off}},
	{"a tick on its line", cross + mark("tick", "M40 18.5 L40 21.5"), nil},
	{"a tick aslant", cross + mark("tick", "M39 18.5 L41 21.5"), []Kind{Foreign}},
	{"a tick off the middle", cross + mark("tick", "M40 18.5 L40 20.5"), []Kind{Foreign}},
	{"a tick on a crossing", cross + mark("tick", "M31 18.5 L31 21.5") + line("s3", "0.25", 21, 10, 41, 30), []Kind{Foreign}},
	{"a tick on a dot", cross + mark("tick", "M30.5 18.5 L30.5 21.5"), []Kind{Foreign}},
	{"two ticks in one place", cross + mark("tick", "M40 18.5 L40 21.5") + mark("tick", "M40.3 18.5 L40.3 21.5"), []Kind{Foreign}},
	{"two ticks side by side", cross + mark("tick", "M40 18.5 L40 21.5") + mark("tick", "M41 18.5 L41 21.5"), nil},
	{"an arrow on its line", cross + mark("arrow", "M38 19 L40 20 L38 21"), nil},
	{"an arrow on another's line", cross + mark("arrow", "M29 18 L30 16 L31 18") + line("s3", "0.35", 20, 16.5, 40, 16.5), []Kind{Foreign}},
	{"a square in its corner", cross + mark("square a1", "M33 20 L33 17 L30 17"), nil},
	{"squares side by side", cross + mark("square a1", "M33 20 L33 17 L30 17") + mark("square a2", "M27 20 L27 17 L30 17"), nil},
	{"squares of two vertices", cross + mark("square a1", "M33 20 L33 17 L30 17") + mark("square a2", "M36 20 L36 17 L33 17"), []Kind{Foreign}},
	{"a square in no corner", cross + mark("square a1", "M34 21 L34 18 L31 18"), []Kind{Foreign}},
	{"a square that a tangent's circle passes", cross + mark("square a1", "M33 20 L33 17 L30 17") + round("c1", 30, 11, 9), nil},
	{"a square that another circle passes", cross + mark("square a1", "M33 20 L33 17 L30 17") + round("c1", 32, 10, 9), []Kind{Foreign}},
	{"a square on a tick", cross + mark("square a1", "M33 20 L33 17 L30 17") + mark("tick", "M33.2 18.5 L33.2 21.5"), []Kind{Foreign}},
	{"an arc in its angle", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14"), nil},
	{"an arc across a bisector", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + line("s3", "0.25", 30, 20, 40, 10), nil},
	{"an arc across another line", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + line("s3", "0.25", 33, 20, 40, 10), []Kind{Foreign}},
	{"an arc through a dot", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + dot("p2", 36.5, 20), []Kind{Foreign}},
	{"arcs of two angles that meet", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M30 14 A6 6 0 0 0 24 20"), []Kind{Foreign}},
	{"arcs of two angles that nest", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M30 13 A7 7 0 0 0 23 20"), nil},
	{"an angle's size in its own, by the end of another's arc", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M30 11 A9 9 0 0 0 21 20") + block("angle a1", "90", 31, 12), nil},
	{"a tick on a chord under a flat arc", line("s1", "0.35", 20, 20, 40, 20) + mark("tick", "M30 18.5 L30 21.5") + `<g class="result"><path d="M20 20 A50 50 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>`, nil},
	{"a tick on a chord under a round arc", line("s1", "0.35", 20, 20, 40, 20) + mark("tick", "M30 18.5 L30 21.5") + `<g class="result"><path d="M20 20 A40 40 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>`, []Kind{Foreign}},
	{"a tick on another chord under the flat arc", line("s1", "0.35", 20, 20, 39, 20) + mark("tick", "M30 18.5 L30 21.5") + `<g class="result"><path d="M20 20 A50 50 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>`, []Kind{Foreign}},
	{"an angle's size beyond another's arc", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M30 13 A7 7 0 0 0 23 20") + block("angle a2", "90", 35, 15), []Kind{Nearer, Outside}},
	{"an angle's size across an arm", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + block("angle a1", "90", 33, 24), []Kind{Outside}},
	{"an angle's size between the arms", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + block("angle a1", "90", 35, 15), nil},
	{"a right angle's size across an arm", cross + mark("square a1", "M33 20 L33 17 L30 17") + block("angle a1", "90", 34, 24), []Kind{Outside}},
	{"two names run together", dot("p1", 30, 20) + dot("p2", 34, 20) + block("p1", "A", 31, 18) + block("p2", "B", 33.4, 18), []Kind{Joined}},
	{"two names with a space between", dot("p1", 30, 20) + dot("p2", 34, 20) + block("p1", "A", 31, 18) + block("p2", "B", 33.6, 18), nil},
	{"one name above another", dot("p1", 30, 20) + dot("p2", 30, 24) + block("p1", "A", 31, 21) + block("p2", "B", 31, 23.3), nil},
	{"the arc of a whole at that of its part", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M38.5 20 A8.5 8.5 0 0 0 21.5 20"), []Kind{Mixed}},
	{"the arc of a whole well beyond that of its part", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M39 20 A9 9 0 0 0 21 20"), nil},
	{"the arc of a whole beside that of another angle", cross + mark("arc a1", "M36 20 A6 6 0 0 0 30 14") + mark("arc a2", "M23 20 A7 7 0 0 0 37 20"), nil},
	{"a letter at another's dot", cross + dot("p2", 35, 15) + block("p1", "A", 32, 15), []Kind{Nearer}},
	{"a letter for two dots in one place", cross + dot("p2", 30, 20) + block("p1", "A", 31, 19), nil},
	{"a length by another line", cross + line("s3", "0.35", 10, 15, 29, 15) + block("length s1", "4", 15, 17.5), []Kind{Nearer}},
	{"a length by a fainter line", cross + line("s3", "0.25", 10, 15, 29, 15) + block("length s1", "4", 15, 17.5), nil},
	{"a length by more of its line", cross + line("s3", "0.35", 50, 20, 58, 20) + block("length s1", "4", 51, 19), nil},
	{"a letter without a dot", cross + block("p7", "A", 15, 18), []Kind{Unowned}},
	{"letters without an outline", cross + `<g class="labels"><text x="15" y="18"><tspan x="15" y="18">A</tspan></text></g>`, []Kind{Unowned}},
	{"a triangle in one path, piece by piece", `<g class="given"><path d="M10 30 L50 30 L30 10 Z" class="s1 s2 s3" stroke="#000000" stroke-width="0.35"/></g>` + mark("tick", "M30 28.5 L30 31.5") + block("length s2", "7", 45, 25), []Kind{Contact}},
	{"the base's length at a leg", `<g class="given"><path d="M10 30 L50 30 L30 10 Z" class="s1 s2 s3" stroke="#000000" stroke-width="0.35"/></g>` + block("length s1", "7", 44, 22), []Kind{Nearer}},
}

// TestHandMade draws faults by hand, and beside them what only looks like one:
// each is told, and no other.
func TestHandMade(t *testing.T) {
	for _, d := range drawings {
		r, err := Measure(d.name, strings.NewReader(page(d.groups)))
		if err != nil {
			t.Errorf("%s: %v", d.name, err)
			continue
		}
		for k := range kinds {
			want := 0
			for _, f := range d.faults {
				if f == k {
					want++
				}
			}
			if got := r.Count(k); got != want {
				t.Errorf("%s: %d faults of kind %d, want %d: %v", d.name, got, k, want, r.Faults)
			}
		}
	}
}

// TestDistances measures clearances that are known: a dot of 0.6 mm 3 mm away,
// a line of 0.35 mm at 1 mm, a label 0.5 mm off.
func TestDistances(t *testing.T) {
	for _, d := range []struct {
		groups     string
		ink, words float64
	}{
		{dot("p1", 30, 20) + block("p1", "A", 33, 21), 2.4, math.Inf(1)},
		{line("s1", "0.35", 10, 20, 50, 20) + block("s1", "m", 30, 19), 0.825, math.Inf(1)},
		{round("c1", 30, 20, 10) + block("c1", "k", 41, 21), 0.75, math.Inf(1)},
		{dot("p1", 30, 20) + block("p1", "A", 33, 21) + block("p1", "B", 35.5, 21), 2.4, 0.5},
		{dot("p1", 30, 20) + block("p1", "A", 33, 17), math.Hypot(3, 3) - 0.6, math.Inf(1)},
	} {
		r, err := Measure("", strings.NewReader(page(d.groups)))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(r.Ink-d.ink) > 2*fine || r.Words != d.words && math.Abs(r.Words-d.words) > 2*fine {
			t.Errorf("%s: %.3f to ink and %.3f to words, want %.3f and %.3f", d.groups, r.Ink, r.Words, d.ink, d.words)
		}
	}
}

// TestBreaks counts the labels that stand in gaps of lines that are not theirs.
func TestBreaks(t *testing.T) {
	broken := line("s1", "0.35", 10, 20, 28, 20) + line("s1", "0.35", 32, 20, 50, 20)
	arc := `<g class="result"><path d="M20 20 A10 10 0 0 1 28 10.202" class="c1" stroke="#000000" stroke-width="0.5"/>` +
		`<path d="M32 10.202 A10 10 0 0 1 40 20" class="c1" stroke="#000000" stroke-width="0.5"/></g>`
	for _, d := range []struct {
		groups string
		want   int
	}{
		{broken + dot("p1", 30, 26) + block("p1", "A", 29, 21), 1},
		{broken + dot("p1", 30, 26) + block("p1", "A", 29, 24), 0},
		{broken + block("s1", "m", 29, 21), 0},
		{broken + line("s2", "0.35", 28, 20, 32, 20) + dot("p1", 30, 26) + block("p1", "A", 29, 23), 0},
		{arc + dot("p1", 30, 15) + block("p1", "A", 29, 11), 1},
		{arc + dot("p1", 30, 15) + block("p1", "A", 29, 14), 0},
	} {
		r, err := Measure("", strings.NewReader(page(d.groups)))
		if err != nil || r.Breaks != d.want || len(r.Faults) > 0 {
			t.Errorf("%s: %d labels in gaps, not %d; %v, %v", d.groups, r.Breaks, d.want, r.Faults, err)
		}
	}
}

// TestRefused reads what is no drawing of trammel's.
func TestRefused(t *testing.T) {
	for _, text := range []string{
		"", "no XML", "<html></html>", `<svg width="60mm" height="40mm" viewBox="0 0 120 80"/>`, `<svg width="600" height="400" viewBox="0 0 600 400"/>`,
		page(`<g class="labels"><path d="M1 2 H3"/></g>`), page(`<g><path d="M1 2 L3"/></g>`), page(`<g><path d="M1 2"/></g>`),
		page(`<g><path d="M1 2 A3 4 0 0 1 5 6"/></g>`), page(`<g><circle cx="x" r="1"/></g>`), page(`<g><rect/></g>`), page("<g>")[:40],
	} {
		if r, err := Measure("x", strings.NewReader(text)); err == nil {
			t.Errorf("%q is read as %+v", text, r)
		}
	}
}

// TestCurves holds flattened curves to the formulas of what they stand for.
func TestCurves(t *testing.T) {
	for _, r := range []float64{0.5, 3, 23.5, 400} {
		a := arc{xy{5, 7}, r, 1, 4}
		line := a.flat()
		for i := 1; i < len(line); i++ {
			if off := r - line[i-1].mid(line[i]).dist(a.c); off > fine {
				t.Fatalf("a chord of the radius %g is %g mm off", r, off)
			}
		}
	}
	// A quarter circle as a Bézier curve errs by 0.027 % of the radius
	// (common practice: control points at 4/3 (√2 - 1)).
	const k = 0.5522847498
	for _, p := range cubic(xy{10, 0}, xy{10, 10 * k}, xy{10 * k, 10}, xy{0, 10}) {
		if math.Abs(p.len()-10) > 0.003 {
			t.Errorf("%v is %g from the centre", p, p.len())
		}
	}
}

func examples(t *testing.T) []string {
	t.Helper()
	var files []string
	for _, depth := range []string{"*.svg", "*/*.svg"} {
		found, err := filepath.Glob(filepath.Join("../../examples", depth))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	if len(files) < 100 {
		t.Fatalf("only %d examples", len(files))
	}
	return files
}

// TestSpoilt spoils a figure that has no fault, as the layout writes it, and
// finds each kind of fault.
func TestSpoilt(t *testing.T) {
	text, err := os.ReadFile("../../examples/nine-point-circle.svg")
	if err != nil {
		t.Fatal(err)
	}
	drawing := string(text)
	words := strings.Index(drawing, `<g class="labels"`)
	paper := regexp.MustCompile(`width="[0-9.]+mm" height="([0-9.]+)mm" viewBox="0 0 [0-9.]+ `)
	for _, s := range []struct {
		kind    Kind
		drawing string
	}{
		{Overlap, drawing[:words] + regexp.MustCompile(`<path d="M\d+`).ReplaceAllString(drawing[words:], `<path d="M0 0 L99`)},
		{Contact, strings.ReplaceAll(drawing, `stroke-width="0.5"`, `stroke-width="9"`)},
		{Off, paper.ReplaceAllString(drawing, `width="80mm" height="${1}mm" viewBox="0 0 80 `)},
		{Foreign, strings.ReplaceAll(drawing, `<g class="result"`, `<g class="marks"`)},
		{Nearer, drawing[:words] + strings.NewReplacer(`class="p1"`, `class="p2"`, `class="p2"`, `class="p1"`).Replace(drawing[words:])},
		{Unowned, strings.ReplaceAll(drawing[:words], `class="p`, `class="q`) + drawing[words:]},
	} {
		if r, err := Measure("spoilt", strings.NewReader(s.drawing)); err != nil || r.Count(s.kind) == 0 {
			t.Errorf("no fault of kind %d is found: %v", s.kind, err)
		}
	}
	if r, err := Measure("sound", strings.NewReader(drawing)); err != nil || len(r.Faults) > 0 {
		t.Errorf("%v, %v", r.Faults, err)
	}
}

// TestExamples finds no fault in any example.
func TestExamples(t *testing.T) {
	for _, name := range examples(t) {
		f, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := Measure(strings.TrimPrefix(filepath.ToSlash(name), "../../examples/"), f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Faults {
			t.Errorf("%s: %s", r.Name, f)
		}
	}
}

// uneven is how far in millimetres the margins of a cropped figure may differ: the
// paper is padded to whole CSS pixels of 0.265 mm, half of it at each side, and a few
// micrometres are lost where outlines are flattened.
const uneven = 0.15

// TestMargins has even margins about every example that is cropped to its ink.
func TestMargins(t *testing.T) {
	cropped := 0
	for _, name := range examples(t) {
		source, err := os.ReadFile(strings.TrimSuffix(name, ".svg") + ".trm")
		if err == nil && regexp.MustCompile(`(?m)^paper `).Match(source) {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := Measure(name, bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		cropped++
		if m := r.Margins; slices.Max(m[:])-slices.Min(m[:]) > uneven {
			t.Errorf("%s: the margins are %.3f", name, m)
		}
	}
	if cropped < 100 {
		t.Errorf("only %d examples are cropped", cropped)
	}
}
