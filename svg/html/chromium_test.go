package html

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"trammel/svg/svgtest"
	"trammel/svg/svgtest/chromium"
)

// browser is a page in headless Chromium that plays the fixture.
type browser struct{ *chromium.Page }

func open(t *testing.T, file string, reducedMotion bool) browser {
	return browser{chromium.Open(t, file, reducedMotion)}
}

// at checks which step is seen: the picture, the words, the scrubber.
func (b browser) at(what string, n int) {
	b.Helper()
	got := b.Value(`[document.querySelectorAll(".step.seen").length, document.querySelector(".step.seen").id, document.getElementById("scrub").value,
		document.getElementById("count").value, document.getElementById("caption").textContent, getComputedStyle(document.querySelector(".step.seen")).display].join("|")`)
	caption := fixture()[n-1].Caption
	if want := fmt.Sprintf("1|frame%d|%d|%d of 5|%d %s|block", n, n, n, n, caption); got != want {
		b.Errorf("after %s: %s\nwant %s", what, got, want)
	}
}

func TestKeysAndButtons(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	b.at("opening", 1)
	for _, step := range []struct {
		name, key string
		want      int
	}{
		{"right", kb.ArrowRight, 2}, {"space", " ", 3}, {"page down", kb.PageDown, 4}, {"left", kb.ArrowLeft, 3},
		{"end", kb.End, 5}, {"right at the end", kb.ArrowRight, 5}, {"page up", kb.PageUp, 4}, {"home", kb.Home, 1}, {"left at the start", kb.ArrowLeft, 1},
	} {
		b.Do(chromedp.KeyEvent(step.key))
		b.at(step.name, step.want)
	}
	for _, button := range []struct {
		id   string
		want int
	}{{"next", 2}, {"last", 5}, {"next", 5}, {"back", 4}, {"first", 1}, {"back", 1}} {
		b.Do(chromedp.Click("#" + button.id))
		b.at("the button "+button.id, button.want)
	}
	b.Do(chromedp.Focus("#next"), chromedp.KeyEvent(" "))
	b.at("space on the button next", 2)
	b.Do(chromedp.Focus("#tools"), chromedp.KeyEvent(" "))
	b.at("space on the tick box", 2)
	if got := b.Value(`document.getElementById("tools").checked`); got != "false" {
		t.Error("the tick box does not take the space bar")
	}
	b.Picture("desktop-2", 1280, 900)
}

func TestScrubber(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	b.Value(`(scrub.value = 4, scrub.dispatchEvent(new Event("input")))`)
	b.at("dragging", 4)
	if got := b.Value("scrub.getAttribute('aria-valuetext')"); got != "4 of 5" {
		t.Errorf("the scrubber is read as %q", got)
	}
	b.Do(chromedp.Focus("#scrub"), chromedp.KeyEvent(kb.ArrowRight))
	b.at("the arrow on the scrubber", 5)
	b.Do(chromedp.KeyEvent(kb.Home))
	b.at("home on the scrubber", 1)
}

// An act is drawn: its line grows, the tools are at it, and at the end all is
// as it was written.
func TestActIsDrawn(t *testing.T) {
	b := open(t, fixtureFile(t), false)
	written := b.Value(`document.querySelector("#frame2 svg").outerHTML`)
	b.Value(`pace.value = 3`)
	b.Do(chromedp.KeyEvent(kb.ArrowRight))
	const run = `parseFloat(document.querySelector("#frame2 .new").style.strokeDasharray)`
	first := b.Value(run)
	b.Wait(run+" > 5", "true")
	b.Wait(run+" > 12", "true")
	b.Picture("desktop-drawing", 1280, 900)
	if got := b.Value(`document.querySelectorAll("#frame2 svg > g[aria-hidden] > circle").length`); got != "2" {
		t.Errorf("the compasses have %s points; the line had run to %s", got, first)
	}
	b.Wait(run, "NaN")
	if got := b.Value(`document.querySelector("#frame2 svg").outerHTML.replaceAll(' style=""', "")`); got != written {
		t.Errorf("drawn, the picture is\n%s\nwritten\n%s", got, written)
	}
	// Gone on in the middle of an act, the act is whole.
	b.Do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowLeft))
	b.at("going to and fro", 3)
	if got := b.Value(`document.querySelector("#frame3 .new").style.strokeDasharray`); got != "" {
		t.Errorf("an act that was broken off is left at %s", got)
	}
}

func TestReducedMotion(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	b.Do(chromedp.KeyEvent(kb.ArrowRight))
	if got := b.Value(`document.querySelectorAll("#frame2 [style], #frame2 svg > g[aria-hidden]").length`); got != "0" {
		t.Errorf("%s elements move", got)
	}
	b.at("one on", 2)
}

// Played fast, it comes to the end by itself, stops, and can start again.
func TestPlay(t *testing.T) {
	b := open(t, fixtureFile(t), false)
	b.Value(`pace.value = 5`)
	b.Do(chromedp.Click("#play"))
	if got := b.Value("play.textContent"); got != "Pause" {
		t.Errorf("the button says %q", got)
	}
	b.Wait("scrub.value + play.textContent", "5Play")
	b.at("playing", 5)
	b.Do(chromedp.Click("#play"))
	b.at("playing again", 1)
	b.Do(chromedp.Click("#play"))
	if got := b.Value("play.textContent"); got != "Play" {
		t.Errorf("paused, the button says %q", got)
	}
}

func TestSwipe(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	b.Do(chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch))
	swipe := func(from, to float64) {
		touch := func(kind input.DispatchTouchEventType, at ...float64) {
			points := []*input.TouchPoint{}
			for _, x := range at {
				points = append(points, &input.TouchPoint{X: x, Y: 200})
			}
			chromium.Call(b.Page, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
		}
		touch("touchStart", from)
		touch("touchMove", (from+to)/2)
		touch("touchMove", to)
		touch("touchEnd")
	}
	swipe(300, 100)
	b.at("a swipe to the left", 2)
	swipe(300, 100)
	swipe(100, 300)
	b.at("to the left and back", 2)
	swipe(200, 210)
	b.at("a tap", 2)
	if got := b.Value("document.documentElement.scrollWidth <= 390"); got != "true" {
		t.Error("the page is wider than a phone")
	}
	b.Picture("phone", 390, 844)
}

// On paper there are all steps in their true size, each with its caption, and no buttons.
func TestPrint(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	b.Do(chromedp.KeyEvent(kb.ArrowRight))
	data, err := chromedp.Run(b.Context, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4), chromedp.PDFPreferCSSPageSize()))
	if err != nil {
		t.Fatal(err)
	}
	file := svgtest.Save(t, "print.pdf", data)
	text := strings.Join(strings.Fields(svgtest.Run(t, "pdftotext", "-layout", file, "-")), " ")
	for i, s := range fixture() {
		if want := fmt.Sprintf("%d %s", i+1, strings.Join(strings.Fields(s.Caption), " ")); !strings.Contains(text, want) {
			t.Errorf("%q is not printed:\n%s", want, text)
		}
	}
	if strings.Contains(text, "Next") || strings.Contains(text, "slow") {
		t.Errorf("buttons are printed:\n%s", text)
	}
	checkPrinted(t, file)
	if folder := os.Getenv("SCREENSHOTS"); folder != "" {
		svgtest.Run(t, "cp", "-t", folder, file)
	}
}

// checkPrinted measures AB, which is 60 mm long between dots of 1.2 mm, and counts
// on each page as many of it as there are captions: no figure is parted from its words.
func checkPrinted(t *testing.T, file string) {
	t.Helper()
	const dpi, ends = 200, 1.2
	pages := strings.Split(strings.TrimSuffix(svgtest.Run(t, "pdftotext", file, "-"), "\f"), "\f")
	if len(pages) < 2 {
		t.Errorf("there are %d pages", len(pages))
	}
	for i, words := range pages {
		svgtest.Run(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-f", fmt.Sprint(i+1), "-singlefile", "-png", file, file)
		bases := longRuns(svgtest.Pixels(t, file+".png"), 55*dpi/25.4)
		if captions := regexp.MustCompile(`(?m)^\d `).FindAllString(words, -1); len(bases) != len(captions) {
			t.Errorf("page %d has %d figures and %d captions", i+1, len(bases), len(captions))
		}
		for _, run := range bases {
			if mm := run * 25.4 / dpi; math.Abs(mm-ends-60) > 0.2 {
				t.Errorf("60 mm are printed as %.2f mm", mm-ends)
			}
		}
	}
}

// longRuns are runs of dark pixels over a length: the longest of rows that touch.
func longRuns(picture image.Image, over float64) (all []float64) {
	box := picture.Bounds()
	before := false
	for y := box.Min.Y; y < box.Max.Y; y++ {
		longest := longestRun(picture, y)
		switch {
		case longest > over && before:
			all[len(all)-1] = max(all[len(all)-1], longest)
		case longest > over:
			all = append(all, longest)
		}
		before = longest > over
	}
	return all
}

func longestRun(picture image.Image, y int) (longest float64) {
	run := 0.0
	for x := picture.Bounds().Min.X; x < picture.Bounds().Max.X; x++ {
		if run++; color.GrayModel.Convert(picture.At(x, y)).(color.Gray).Y > 128 {
			run = 0
		}
		longest = max(longest, run)
	}
	return longest
}

// The tree of what is read aloud has a figure with words, and buttons with names.
func TestAccessible(t *testing.T) {
	b := open(t, fixtureFile(t), true)
	for expression, want := range map[string]string{
		`document.querySelectorAll("button, input").length`:                                                                                   "8",
		`[...document.querySelectorAll("button, input")].every(e => e.tagName === "BUTTON" ? e.textContent.trim() : e.labels.length)`:         "true",
		`document.getElementById("caption").getAttribute("aria-live")`:                                                                        "polite",
		`document.querySelector(".seen svg").getAttribute("aria-labelledby").split(" ").every(id => document.getElementById(id).textContent)`: "true",
		`new Set([...document.querySelectorAll("[id]")].map(e => e.id)).size === document.querySelectorAll("[id]").length`:                    "true",
		`document.documentElement.lang`:                                  "en",
		`document.getElementById("first").getAttribute("aria-disabled")`: "true",
		`document.getElementById("next").getAttribute("aria-disabled")`:  "false",
	} {
		if got := b.Value(expression); got != want {
			t.Errorf("%s is %s, want %s", expression, got, want)
		}
	}
	b.Do(chromedp.KeyEvent(kb.Tab))
	if got := b.Value(`getComputedStyle(document.activeElement).outlineStyle`); got != "solid" {
		t.Errorf("what has the focus is outlined %s", got)
	}
}

// Titles and captions that would break out of their places are only words.
func TestHostileInBrowser(t *testing.T) {
	steps := fixture()
	steps[0].Drawing.Title, steps[0].Caption = hostile, hostile
	b := open(t, svgtest.Save(t, "hostile.html", written(t, steps)), true)
	if got := b.Value("document.title === " + quoted(hostile)); got != "true" {
		t.Errorf("the title is %q", b.Value("document.title"))
	}
	if got := b.Value("document.querySelector('#caption').textContent === '1 ' + " + quoted(hostile)); got != "true" {
		t.Errorf("the caption is %q", b.Value("document.querySelector('#caption').textContent"))
	}
	if got := b.Value("window.broken === undefined && document.querySelectorAll('script, img, iframe').length === 1"); got != "true" {
		t.Error("words of the source were run")
	}
}
