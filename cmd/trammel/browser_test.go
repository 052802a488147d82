package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"trammel/lang"
	"trammel/svg/svgtest"
	"trammel/svg/svgtest/chromium"
)

// played are examples as pages: the README's first, and one that is in full.
var played = []string{"perpendicular-from-a-point", "exam-triangle-from-bars"}

// pageOf builds an example as a page, as a user does, and reads its captions.
func pageOf(t *testing.T, name string) (file string, captions []string) {
	t.Helper()
	file = filepath.Join(t.TempDir(), name+".html")
	var said bytes.Buffer
	e := &env{stdout: &said, stderr: &said, compile: lang.Compile}
	if run(e, []string{"build", "../../examples/" + name + ".trm", "-o", file}) != exitGood {
		t.Fatal(said.String())
	}
	for _, c := range regexp.MustCompile(`<figcaption><b>(\d+)</b> (.*?)</figcaption>`).FindAllStringSubmatch(readFile(t, file), -1) {
		captions = append(captions, c[1]+" "+strings.NewReplacer("&#39;", "'", "&#43;", "+", "&amp;", "&").Replace(c[2]))
	}
	if len(captions) < 6 {
		t.Fatalf("%s has the captions %q", name, captions)
	}
	return file, captions
}

// seen is the step that is seen: its frame, the scrubber and the caption.
func seen(p *chromium.Page) string {
	return p.Value(`[document.querySelectorAll(".step.seen").length, document.querySelector(".step.seen").id, scrub.value, caption.textContent].join("|")`)
}

// TestPlayedExamples goes through real figures by the keys and the scrubber, as
// one who wants no motion. Requests and complaints fail it too.
func TestPlayedExamples(t *testing.T) {
	for _, name := range played {
		file, captions := pageOf(t, name)
		p := chromium.Open(t, file, true)
		at := func(what string, n int) {
			t.Helper()
			if got, want := seen(p), fmt.Sprintf("1|frame%d|%d|%s", n, n, captions[n-1]); got != want {
				t.Errorf("%s after %s: %s\nwant %s", name, what, got, want)
			}
			if moving := p.Value(`document.querySelectorAll(".step [style], .step svg > g[aria-hidden]").length`); moving != "0" {
				t.Errorf("%s after %s: %s things move", name, what, moving)
			}
		}
		last := len(captions)
		at("opening", 1)
		for n := 2; n <= last; n++ {
			p.Do(chromedp.KeyEvent([]string{kb.ArrowRight, " ", kb.PageDown}[n%3]))
			at("a key on", n)
		}
		p.Do(chromedp.KeyEvent(kb.ArrowLeft))
		at("a key back", last-1)
		p.Do(chromedp.KeyEvent(kb.Home))
		at("home", 1)
		p.Do(chromedp.KeyEvent(kb.End))
		at("end", last)
		for _, n := range []int{2, last, 3} {
			p.Value(fmt.Sprintf(`(scrub.value = %d, scrub.dispatchEvent(new Event("input")))`, n))
			at("dragging", n)
		}
		p.Do(chromedp.Focus("#scrub"), chromedp.KeyEvent(kb.ArrowRight))
		at("the arrow on the scrubber", 4)
	}
}

// TestMarksAreDrawn: in the last step the ticks and the squares are drawn one
// after the other; then the picture is as it was written.
func TestMarksAreDrawn(t *testing.T) {
	file, captions := pageOf(t, played[0])
	p := chromium.Open(t, file, false)
	frame := fmt.Sprintf("#frame%d", len(captions))
	written := p.Value(fmt.Sprintf(`document.querySelector("%s svg").outerHTML`, frame))
	p.Value(fmt.Sprintf(`(scrub.value = %d, scrub.dispatchEvent(new Event("input")), pace.value = 2)`, len(captions)-1))
	p.Do(chromedp.KeyEvent(kb.ArrowRight))
	hidden := fmt.Sprintf(`[...document.querySelectorAll("%s .tick.new, %s .square.new")].filter(e => e.style.visibility === "hidden").length`, frame, frame)
	p.Wait(hidden+` <= 5`, "true")
	if n, _ := strconv.Atoi(p.Value(hidden)); n == 0 {
		t.Error("all marks are there at once")
	}
	p.Wait(hidden, "0")
	p.Wait(fmt.Sprintf(`document.querySelector("%s svg").outerHTML.replaceAll(' style=""', "") === %q`, frame, written), "true")
}

// TestPrintedExamples: on paper are all steps with their captions, and no buttons.
func TestPrintedExamples(t *testing.T) {
	for _, name := range played {
		file, captions := pageOf(t, name)
		p := chromium.Open(t, file, true)
		data, err := chromedp.Run(p.Context, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4), chromedp.PDFPreferCSSPageSize()))
		if err != nil {
			t.Fatal(err)
		}
		paper := svgtest.Save(t, "print.pdf", data)
		text := strings.Join(strings.Fields(svgtest.Run(t, "pdftotext", "-layout", paper, "-")), " ")
		for _, c := range captions {
			if !strings.Contains(text, strings.ReplaceAll(c, "\u00a0", " ")) {
				t.Errorf("%s: %q is not printed:\n%s", name, c, text)
			}
		}
		if strings.Contains(text, "Next") || strings.Contains(text, "slow") {
			t.Errorf("%s: buttons are printed:\n%s", name, text)
		}
	}
}
