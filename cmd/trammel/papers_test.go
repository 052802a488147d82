package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/caption"
	"trammel/svg"
	"trammel/svg/layout"
	"trammel/svg/svgtest"
)

// sheets runs trammel sheet into a new folder.
func sheets(t testing.TB, args ...string) (folder, said string, status int) {
	t.Helper()
	folder = t.TempDir()
	var out, errs bytes.Buffer
	e := &env{stdin: nil, stdout: &out, stderr: &errs, compile: lang.Compile}
	status = run(e, append([]string{"sheet", "-o", folder}, args...))
	return folder, out.String() + errs.String(), status
}

const testSheet = "testdata/papers/sheet.trm"

// TestPapers reads the papers as a stranger does: their words, in the order of
// the page, and that the givens alone are lettered on what the pupil gets.
func TestPapers(t *testing.T) {
	svgtest.Tool(t, "pdftotext")
	folder, said, status := sheets(t, testSheet, "--film")
	if status != exitGood {
		t.Fatal(said)
	}
	text := func(name string) string {
		return svgtest.Run(t, "pdftotext", "-layout", filepath.Join(folder, name), "-")
	}
	pupil, answers, film := text("sheet.pdf"), text("sheet-answers.pdf"), text("sheet-film.pdf")
	for _, words := range []string{"Constructions, two pages", "Name:", "Date:", "Use ruler and compasses only.", "1.", "Construct the perpendicular to m at P. (3 marks)", "with AB = 7.5 cm", "Page 1 of 2", "This bar measures 50 mm"} {
		if !strings.Contains(pupil, words) {
			t.Errorf("the pupil does not read %q in\n%s", words, pupil)
		}
	}
	if strings.Contains(pupil, "X") || strings.Contains(pupil, "angle BAC ≈") {
		t.Errorf("the pupil reads the answer:\n%s", pupil)
	}
	for _, words := range []string{"Answers: Constructions, two pages", "X", "angle BAC ≈ ", "measured"} {
		if !strings.Contains(answers, words) {
			t.Errorf("the answers lack %q:\n%s", words, answers)
		}
	}
	if strings.Count(film, "lay the crosses") != 5 {
		t.Errorf("five tasks, and films of\n%s", film)
	}
	for _, name := range []string{"sheet.pdf", "sheet-answers.pdf", "sheet-film.pdf"} {
		svgtest.Tool(t, "qpdf")
		svgtest.Run(t, "qpdf", "--check", filepath.Join(folder, name))
	}
}

// TestVariantPapers: the same seed prints the same papers, each variant has its
// own measurements, and the table has the answers that the figures have.
func TestVariantPapers(t *testing.T) {
	one, said, status := sheets(t, testSheet, "--variants", "4", "--seed", "7")
	if status != exitGood {
		t.Fatal(said)
	}
	two, _, _ := sheets(t, testSheet, "--variants", "4", "--seed", "7")
	other, _, _ := sheets(t, testSheet, "--variants", "4", "--seed", "8")
	file := func(folder, name string) string {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	for _, name := range []string{"sheet.pdf", "sheet-answers.pdf", "sheet-answers.csv"} {
		if file(one, name) != file(two, name) {
			t.Errorf("%s: one seed made two papers", name)
		}
		if file(one, name) == file(other, name) {
			t.Errorf("%s: two seeds made one paper", name)
		}
	}
	rows, err := csv.NewReader(strings.NewReader(file(one, "sheet-answers.csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	dealt := map[string]string{}
	for _, row := range rows[1:] {
		if row[1] == "2" && len(row[4]) == 1 {
			dealt[row[0]] += row[4] + row[5] + " "
		}
	}
	seen := map[string]bool{}
	for _, values := range dealt {
		seen[values] = true
	}
	if len(dealt) != 4 || len(seen) != 4 {
		t.Errorf("dealt to the second task: %v", dealt)
	}
}

// TestHandouts: a pupil's paper has the size of the whole construction, and
// nothing that is not given but what a hint shows.
func TestHandouts(t *testing.T) {
	files, err := filepath.Glob("../../examples/[a-d]*.trm")
	if err != nil || len(files) < 8 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f := lang.Compile(name, text).Figure
		whole, _, err := layout.Draw(f, layout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		given, err := layout.Handout(f, 0, layout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if given.Width != whole.Width || given.Height != whole.Height {
			t.Errorf("%s: the handout is %d × %d, the figure %d × %d", name, given.Width, given.Height, whole.Width, whole.Height)
		}
		hinted, err := layout.Handout(f, 1, layout.Options{})
		if err != nil { // a construction of one step
			hinted = given
		}
		if few, more, all := itemsOf(given), itemsOf(hinted), itemsOf(whole); !(few <= more && more <= all) {
			t.Errorf("%s: %d things given, %d with a hint, %d in all", name, few, more, all)
		}
	}
}

// TestLateGivens: what the source calls given is on the paper wherever it stands,
// and what is found before it is not.
func TestLateGivens(t *testing.T) {
	f := lang.Compile("t.trm", []byte("figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\nM, n by bisect(A, B)\ngiven C (2, 4)\njoin CM\n")).Figure
	d, err := layout.Handout(f, 0, layout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := d.Write(&out, svg.Options{LiveText: true}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out.String(), ">C<") || strings.Contains(out.String(), ">M<") {
		t.Error(out.String())
	}
}

// TestHintsCountInk: an act that adds no ink, such as taking a centre that is given,
// is no step of a hint.
func TestHintsCountInk(t *testing.T) {
	f := lang.Compile("t.trm", []byte("figure \"t\"\ngiven circle k centre O radius 2\ngiven P 7 from O\nS, T, s, t by tangents(k, P) in full\n")).Figure
	before := 0
	for hint := range 3 {
		d, err := layout.Handout(f, hint, layout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if n := itemsOf(d); n <= before {
			t.Errorf("a hint of %d shows %d things, one less shows %d", hint, n, before)
		} else {
			before = n
		}
	}
}

// TestJoinsToDraw: joins of given points are on the pupil's paper before a
// construction, and are not where they are the construction.
func TestJoinsToDraw(t *testing.T) {
	straights := func(acts string) (n int) {
		f := lang.Compile("t.trm", []byte("figure \"t\"\ngiven points A, B, C, D\n"+acts)).Figure
		d, err := layout.Handout(f, 0, layout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range d.Groups {
			for _, item := range g.Items {
				if _, ok := item.(svg.Path); ok {
					n++
				}
			}
		}
		return n
	}
	none := straights("")
	if n := straights("join AC, BD\n"); n != none {
		t.Errorf("%d of the joins that are asked for are drawn", n-none)
	}
	if n := straights("join AB\nM, n by bisect(A, B)\n"); n != none+1 {
		t.Errorf("%d joins are drawn before a construction, not 1", n-none)
	}
}

// TestGermanAnswers: the answers speak the language of the papers.
func TestGermanAnswers(t *testing.T) {
	de, en := caption.In("de"), caption.In("en")
	for _, c := range [][3]string{
		{"angle BAC", "Winkel BAC", "angle BAC"}, {"radius k", "Radius von k", "the radius of k"},
		{"area of ABC", "Flächeninhalt von ABC", "the area of ABC"}, {"AB : BC", "AB : BC", "AB : BC"},
	} {
		if de.Spoken(c[0]) != c[1] || en.Spoken(c[0]) != c[2] {
			t.Errorf("%s is said %q and %q", c[0], de.Spoken(c[0]), en.Spoken(c[0]))
		}
	}
}

func itemsOf(d *svg.Doc) (n int) {
	for _, g := range d.Groups {
		n += len(g.Items)
	}
	return n
}

// TestSheetFaults: what is wrong with a worksheet is said at its line, and
// nothing is written.
func TestSheetFaults(t *testing.T) {
	folder := t.TempDir()
	put := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		return path
	}
	put("mute.trm", "figure \"t\"\ngiven A (0, 0)\n")
	put("wide.trm", "figure \"t\"\ngiven A (0, 0)\ngiven B 30 from A\njoin AB\ntask \"Draw AB.\"\n")
	put("bisect.trm", "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\nM, n by bisect(A, B)\njoin AM\n")
	put("centre.trm", "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\nM, n by bisect(A, B)\ncircle k centre M through A cuts n at X left of AB\njoin AX\nanswer AM\n")
	put("part.trm", "construction same(point P) gives point Q\n  take Q on P\nend\n")
	for sheet, want := range map[string]string{
		`task from "none.trm"`:                     `sheet.trm:2:1: error: none.trm cannot be read: no such file or folder`,
		`task from "../sheet.trm"`:                 `sheet.trm:2:1: error: ../sheet.trm cannot be read`,
		`task from "mute.trm"`:                     `sheet.trm:2:1: error: nothing says what is to be done`,
		`task "Draw {x}." from "mute.trm"`:         `sheet.trm:2:1: error: {x} stands for no choice of mute.trm`,
		`task from "wide.trm"`:                     `sheet.trm:2:1: error: task 1 is 318.0 mm wide, and a page has 180.0 mm between its margins`,
		`task "t" from "mute.trm", room 260 mm`:    `sheet.trm:2:27: error: the room for a task is at most 250 mm`,
		`task "t" from "sheet.trm"`:                `sheet.trm:2:1: error: there is no figure in sheet.trm`,
		`task "t" from "mute.trm", room 250 mm`:    `sheet.trm:2:1: error: task 1 takes`,
		`given A (0, 0)`:                           `a worksheet sets tasks, and draws nothing itself`,
		`task "t" from "bisect.trm", hint 2 steps`: `sheet.trm:2:1: error: bisect.trm: a hint has fewer steps than the construction: 2 is not less than 2`,
		`task "t" from "bisect.trm", hint 1 step`:  `sheet.trm:2:1: error: bisect.trm: a hint of 1 draws all that is to be constructed`,
		`task "t" from "centre.trm", hint 1 step`:  `sheet.trm:2:1: error: centre.trm: a hint of 1 draws all that is to be measured`,
		`task "" from "bisect.trm"`:                `sheet.trm:2:1: error: the task has no text`,
		`task "円." from "mute.trm"`:                `sheet.trm:2:1: error: the letter 円 is in none of the faces inside trammel`,
		`task "t" from "mute.trm", hint 1000000`:   `error`,
	} {
		path := put("sheet.trm", "worksheet \"t\"\n"+sheet+"\n")
		out, said, status := sheets(t, path)
		if !strings.Contains(said, want) || status == exitGood {
			t.Errorf("%s: said\n%s\nwant %s", sheet, said, want)
		}
		if made, _ := os.ReadDir(out); len(made) > 0 {
			t.Errorf("%s: made %s", sheet, made[0].Name())
		}
	}
}

// TestForbiddenTools: one line of a worksheet forbids a tool in every task; what
// uses it is told with its task, its act and where it stands.
func TestForbiddenTools(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"bisect.trm":   "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\nM, n by bisect(A, B)\n",
		"measured.trm": "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\njoin AB\ntake M on AB, 3 from A\n",
		"loose.trm":    "worksheet \"t\"\ntask \"t\" from \"measured.trm\"\n",
		"fit.trm":      "worksheet \"t\"\nusing straightedge and compasses only\ntask \"t\" from \"bisect.trm\"\n",
		"ruled.trm":    "worksheet \"t\"\nusing ruler and compasses only\ntask \"t\" from \"measured.trm\"\ntask \"t\" from \"bisect.trm\"\n",
		"strict.trm":   "worksheet \"t\"\nusing straightedge and compasses only\ntask \"t\" from \"bisect.trm\"\ntask \"t\" from \"measured.trm\"\n",
		"late.trm":     "worksheet \"t\"\ntask \"t\" from \"bisect.trm\"\nusing compasses only\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"loose.trm", "fit.trm", "ruled.trm"} {
		if _, said, status := sheets(t, filepath.Join(folder, name)); status != exitGood {
			t.Errorf("%s: %s", name, said)
		}
	}
	for name, want := range map[string][]string{
		"strict.trm": {"strict.trm:4:1: error: task 2: a length is measured here, which takes a ruler, and this worksheet is done using straightedge and compasses only", "measured.trm:5:6: note: here"},
		"late.trm":   {"late.trm:2:1: error: task 1: a straight is drawn", "bisect.trm:4:1"},
	} {
		out, said, status := sheets(t, filepath.Join(folder, name))
		for _, w := range want {
			if !strings.Contains(said, w) || status != exitSource {
				t.Errorf("%s: said\n%s\nwant %s", name, said, w)
			}
		}
		if made, _ := os.ReadDir(out); len(made) > 0 {
			t.Errorf("%s: made %s", name, made[0].Name())
		}
	}
}

// TestSamePages: every variant of a paper has its tasks on the same pages, though
// one value asks for more room than another.
func TestSamePages(t *testing.T) {
	svgtest.Tool(t, "pdftotext")
	folder := t.TempDir()
	put := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		return path
	}
	put("a.trm", "figure \"t\"\nchoose a from 5 to 10 by 1/2\ngiven A (0, 0)\ngiven B (1, a)\njoin AB\nM, n by bisect(A, B)\ntask \"Bisect AB.\"\n")
	sheet := put("sheet.trm", "worksheet \"t\"\n"+strings.Repeat("task from \"a.trm\"\n", 4))
	made, said, status := sheets(t, sheet, "--variants", "6", "--film")
	if status != exitGood {
		t.Fatal(said)
	}
	for _, name := range []string{"sheet.pdf", "sheet-answers.pdf"} {
		text := svgtest.Run(t, "pdftotext", "-layout", filepath.Join(made, name), "-")
		layouts := map[string]bool{}
		for _, of := range regexp.MustCompile(`Page 1 of (\d+)`).FindAllStringSubmatch(text, -1) {
			layouts[of[1]] = true
		}
		if len(layouts) != 1 {
			t.Errorf("%s: variants have %v pages", name, layouts)
		}
	}
	if film := svgtest.Run(t, "pdftotext", filepath.Join(made, "sheet-film.pdf"), "-"); strings.Count(film, "Variant") != 24 {
		t.Errorf("24 films, each with its variant:\n%s", film)
	}
}

// TestTable: numbers stand by themselves, beside their units, names are in the
// language of the papers, and tasks without answers are there with their marks.
func TestTable(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"a.trm": "figure \"t\"\nchoose a from 40 mm to 60 mm by 10 mm\ngiven triangle ABC with AB = a, angle A = 90°, AC = 2.5\njoin ABCA\ntask \"t\" for 3 marks\nanswer angle BAC, area of ABC, AB : AC, BC\n",
		"b.trm": "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\nM, n by bisect(A, B)\n",
		"w.trm": "worksheet \"t\"\nlanguage de\ntask from \"a.trm\"\ntask \"u\" from \"b.trm\"\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	made, said, status := sheets(t, filepath.Join(folder, "w.trm"))
	if status != exitGood {
		t.Fatal(said)
	}
	data, err := os.ReadFile(filepath.Join(made, "w-answers.csv"))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"Fassung,Aufgabe,Figur,Punkte,Name,genau,Wert,Einheit,gemessen,gemessen in",
		"1,1,a.trm,3,,,,,,", "1,1,a.trm,,a,50,50,mm,,", "1,1,a.trm,,Winkel BAC,90,90,°,90,°",
		"1,1,a.trm,,Flächeninhalt von ABC,25/4,6.25,cm²,6.25,cm²", "1,1,a.trm,,AB : AC,2,2,,2,",
		"1,1,a.trm,,BC,5√5/2,5.59017,cm,56,mm", "1,2,b.trm,,,,,,,", "",
	}
	if got := strings.Split(string(data), "\r\n"); !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestWorkLine: the answers tell the tools of each task, and the operations where
// they are straightedge and compasses.
func TestWorkLine(t *testing.T) {
	svgtest.Tool(t, "pdftotext")
	folder := t.TempDir()
	for name, text := range map[string]string{
		"a.trm": "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\narc c centre A radius AB\narc d centre B radius c\nc meets d at C above AB\njoin AC, BC\n",
		"b.trm": "figure \"t\"\ngiven A (0, 0)\ngiven B (6, 0)\njoin AB\ntake C 4 from A at 50° to AB\njoin AC\n",
		"w.trm": "worksheet \"t\"\nlanguage de\ntask \"t\" from \"a.trm\"\ntask \"u\" from \"b.trm\"\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	made, said, status := sheets(t, filepath.Join(folder, "w.trm"))
	if status != exitGood {
		t.Fatal(said)
	}
	text := svgtest.Run(t, "pdftotext", "-layout", filepath.Join(made, "w-answers.pdf"), "-")
	// By hand: AB into the compasses from A (2 C1), C3; the leg on B (C1), C3; two joins of 2 R1 + R2.
	for _, want := range []string{"Werkzeuge: Lineal ohne Skala, Zirkel. Schritte nach Lemoine: 4R1 + 2R2 + 3C1 + 2C3, Einfachheit 11, Genauigkeit 7.", "Winkelmesser."} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("the answers lack %q:\n%s", want, text)
		}
	}
}

// TestRepeats: more papers than sets of values are warned of, with what was left out.
func TestRepeats(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"a.trm": "figure \"t\"\nchoose a from 5 to 8\ngiven A (0, 0)\ngiven B 9 from A\narc k centre A radius a\narc l centre B radius 4\nk meets l at C above AB\ntask \"t {a}\"\n",
		"w.trm": "worksheet \"t\"\ntask from \"a.trm\"\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for n, want := range map[string]bool{"2": false, "9": true} {
		_, said, status := sheets(t, filepath.Join(folder, "w.trm"), "--variants", n)
		got := strings.Contains(said, "w.trm:2:1: warning: task 1 repeats: ") && strings.Contains(said, "left out: a = 5: ")
		if status != exitGood || got != want {
			t.Errorf("%s variants: %s", n, said)
		}
	}
}

// TestInkOnPaper: on the papers a figure for slides takes the room of its ink, and
// has no margin for a screen's shape.
func TestInkOnPaper(t *testing.T) {
	tall := "given A (0, 0)\ngiven B (0, 9)\nM, n by bisect(A, B)\n"
	for _, theme := range []string{"", "theme slide\n"} {
		f := lang.Compile("t.trm", []byte("figure \"t\"\n"+theme+tall)).Figure
		wide := func(d *svg.Doc, err error) bool {
			if err != nil {
				t.Fatal(err)
			}
			return d.Width > d.Height
		}
		film, err := layout.Film(f, nil, layout.Options{})
		given, err2 := layout.Handout(f, 0, layout.Options{})
		whole, _, err3 := layout.Draw(f, layout.Options{Tight: true})
		screen, _, err4 := layout.Draw(f, layout.Options{})
		if wide(film, err) || wide(given, err2) || wide(whole, err3) || wide(screen, err4) != (theme != "") {
			t.Errorf("%q: film %d × %d, handout %d × %d, answer %d × %d", theme, film.Width, film.Height, given.Width, given.Height, whole.Width, whole.Height)
		}
	}
}

// TestFilmGivens: a given line is on the film, dashed, so that it can be laid down.
func TestFilmGivens(t *testing.T) {
	r := lang.Compile("t.trm", []byte("figure \"t\"\ngiven line m\ngiven P above m\nn by parallel(m, P)\n"))
	d, err := layout.Film(r.Figure, r.Bands(lang.Tolerance{Millimetres: 2, Degrees: 2}), layout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	dashed := 0
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if p, ok := item.(svg.Path); ok && len(p.Dash) > 0 {
				dashed++
			}
		}
	}
	if dashed == 0 {
		t.Error("the given line is not on the film")
	}
}

// BenchmarkPapers makes thirty variants of a paper of two pages, with answers
// and films.
func BenchmarkPapers(b *testing.B) {
	for b.Loop() {
		if _, said, status := sheets(b, testSheet, "--variants", "30", "--film"); status != exitGood {
			b.Fatal(said)
		}
	}
}
