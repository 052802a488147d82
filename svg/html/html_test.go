package html

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"trammel/svg"
	"trammel/svg/svgtest"
)

// fixture is five steps to a perpendicular bisector, each with the lines before it.
func fixture() []Step {
	thin := svg.Ink{Stroke: "#767676", Width: 250}
	heavy := svg.Ink{Stroke: "#000000", Width: 500}
	dot := svg.Ink{Fill: "#000000"}
	straight := func(ink svg.Ink, x0, y0, x1, y1 int) svg.Path {
		return svg.Path{Ink: ink, Start: svg.XY{X: x0, Y: y0}, Pieces: []svg.Piece{{To: svg.XY{X: x1, Y: y1}}}}
	}
	arc := func(x0, y0, x1, y1 int, clockwise bool) svg.Path {
		return svg.Path{Ink: thin, Start: svg.XY{X: x0, Y: y0}, Pieces: []svg.Piece{{To: svg.XY{X: x1, Y: y1}, Radius: 40_000, Clockwise: clockwise}}}
	}
	label := func(name string, x, y int) svg.Text {
		return svg.Text{At: svg.XY{X: x, Y: y}, Runs: svg.Label(name, true), Size: 3500, Fill: "#000000"}
	}
	dashed := svg.Ink{Stroke: "#000000", Width: 350, Dash: []int{1400, 700}}
	acts := [][]svg.Item{
		{straight(heavy, 20_000, 40_000, 80_000, 40_000), svg.Disc{Ink: dot, Centre: svg.XY{X: 20_000, Y: 40_000}, Radius: 600}, svg.Disc{Ink: dot, Centre: svg.XY{X: 80_000, Y: 40_000}, Radius: 600}, label("A", 15_000, 42_000), label("B", 82_000, 42_000)},
		{arc(46_000, 9500, 46_000, 70_500, true)},
		{arc(54_000, 9500, 54_000, 70_500, false)},
		{straight(dashed, 50_000, 8000, 50_000, 72_000)},
		{svg.Disc{Ink: dot, Centre: svg.XY{X: 50_000, Y: 40_000}, Radius: 600}, label("M", 51_000, 45_000)},
	}
	captions := []string{
		"Let AB be given.",
		"With centre A and any radius over half AB, draw an arc.",
		"With centre B and the same radius, draw an arc.",
		"Join the points where the arcs cross.",
		"This line cuts AB at its middle M.",
	}
	hands := [][]Act{{{Class: "given"}}, {{"given", &svg.XY{X: 20_120, Y: 40_000}}}, {{"given", &svg.XY{X: 79_880, Y: 40_000}}}, {{Class: "given"}}, nil}
	var steps []Step
	for i := range acts {
		var items []svg.Item
		for _, act := range acts[:i] {
			items = append(items, act...)
		}
		for _, item := range acts[i] {
			items = append(items, fresh(item))
		}
		steps = append(steps, Step{Caption: captions[i], Acts: hands[i], Drawing: &svg.Doc{
			Width: svg.PadToPixels(100_000), Height: svg.PadToPixels(80_000), Lang: "en", Title: "The perpendicular bisector", Desc: captions[i],
			Groups: []svg.Group{{Class: "figure", Items: items}},
		}})
	}
	return steps
}

// fresh is the item, marked as new.
func fresh(item svg.Item) svg.Item {
	switch v := item.(type) {
	case svg.Path:
		v.Class = "given new"
		return v
	case svg.Disc:
		v.Class = New
		return v
	case svg.Text:
		v.Class = New
		return v
	}
	return item
}

func written(t testing.TB, steps []Step) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, steps); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func fixtureFile(t testing.TB) string { return svgtest.Save(t, "steps.html", written(t, fixture())) }

const hostile = "</script></style></title></svg>-->\"'><script>broken=1</script><img src=x onerror=broken=1>\u2028\u2029{{.}}&amp;`${broken=1}"

// quoted is text as JavaScript reads it.
func quoted(text string) string {
	data, _ := json.Marshal(text) // of text it never fails
	return string(data)
}

func TestWrite(t *testing.T) {
	first := written(t, fixture())
	if !bytes.Equal(first, written(t, fixture())) {
		t.Error("two writings differ")
	}
	text := string(first)
	if got := strings.Count(text, "<svg "); got != 5 {
		t.Errorf("there are %d pictures", got)
	}
	for _, tools := range []string{`data-tools="ruler"`, `data-tools="20.120,40.000"`, `data-tools="79.880,40.000"`, `data-tools=""`} {
		if !strings.Contains(text, tools) {
			t.Errorf("there is no %s", tools)
		}
	}
	for _, never := range []string{"http://", "https://", "@import", "url(", " src=", "<link", "javascript:"} {
		plain := strings.ReplaceAll(text, "http://www.w3.org/2000/svg", "")
		if strings.Contains(plain, never) {
			t.Errorf("there is %s in it", never)
		}
	}
}

func TestGerman(t *testing.T) {
	steps := fixture()
	steps[0].Drawing.Lang = "de-AT"
	text := string(written(t, steps))
	for _, want := range []string{`lang="de-AT"`, ">Weiter<", "1 von 5", "Zirkel und Lineal"} {
		if !strings.Contains(text, want) {
			t.Errorf("there is no %s", want)
		}
	}
}

func TestRefused(t *testing.T) {
	broken := fixture()
	broken[3].Drawing.Width = -1
	for _, test := range []struct {
		steps []Step
		want  string
	}{
		{nil, "there are no steps"},
		{broken, "step 4: svg: the drawing is -1"},
	} {
		var b bytes.Buffer
		if err := Write(&b, test.steps); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("got %v, want %s", err, test.want)
		}
		if b.Len() > 0 {
			t.Error("something was written all the same")
		}
	}
}
