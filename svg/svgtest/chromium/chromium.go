// Package chromium opens pages in headless Chromium, for tests.
package chromium

import (
	"context"
	"fmt"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"trammel/svg/svgtest"
)

// Page is a page in headless Chromium, with what it asked for and what it
// complained about.
type Page struct {
	testing.TB
	Context context.Context

	mutex      sync.Mutex
	requests   []string
	complaints []string
}

// Open opens a file. Nothing but the file may be asked for, and nothing be
// complained about: that is checked when the test ends.
func Open(t testing.TB, file string, reducedMotion bool) *Page {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(svgtest.Tool(t, "chromium")), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true))
	alloc, stop := chromedp.NewExecAllocator(t.Context(), options...)
	ctx, cancel := chromedp.NewContext(alloc)
	t.Cleanup(func() { cancel(); stop() })
	p := &Page{TB: t, Context: ctx}
	motion := "no-preference"
	if reducedMotion {
		motion = "reduce"
	}
	url := "file://" + file
	if err := chromedp.Listen(ctx, p.listen); err != nil {
		t.Fatal(err)
	}
	Call(p, network.Enable, network.EnableParams{})
	Call(p, log.Enable, cdp.Empty{})
	Call(p, runtime.Enable, cdp.Empty{})
	Call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: motion}}})
	p.Do(chromedp.EmulateViewport(1280, 900), chromedp.Navigate(url), chromedp.WaitReady("#count"))
	t.Cleanup(func() {
		p.mutex.Lock()
		defer p.mutex.Unlock()
		if others := slices.DeleteFunc(p.requests, func(s string) bool { return s == url }); len(others) > 0 {
			t.Errorf("the page asks for %q", others)
		}
		if len(p.complaints) > 0 {
			t.Errorf("the browser complains: %q", p.complaints)
		}
	})
	return p
}

func (p *Page) listen(event any) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	case *log.EventEntryAdded:
		p.complaints = append(p.complaints, e.Entry.Text)
	case *runtime.EventConsoleAPICalled:
		p.complaints = append(p.complaints, fmt.Sprint(e.Type, " ", e.Args))
	case *runtime.EventExceptionThrown:
		p.complaints = append(p.complaints, e.ExceptionDetails.Exception.Description)
	}
}

// Call sends a command.
func Call[P, R any](p *Page, command cdp.Command[P, R], params P) {
	p.Helper()
	if _, err := chromedp.Call(p.Context, command, params); err != nil {
		p.Fatal(err)
	}
}

// Do does what a hand would.
func (p *Page) Do(actions ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, late := context.WithTimeout(p.Context, 60*time.Second)
	defer late()
	if err := chromedp.Do(ctx, actions...); err != nil {
		p.Fatal(err)
	}
}

// Value is what an expression comes to in the page, as text.
func (p *Page) Value(expression string) string {
	p.Helper()
	text, err := chromedp.Run(p.Context, chromedp.Evaluate[string]("String("+expression+")"))
	if err != nil {
		p.Fatalf("%s: %v", expression, err)
	}
	return text
}

// Wait waits until an expression has a value.
func (p *Page) Wait(expression, want string) {
	p.Helper()
	got := ""
	for range 400 {
		if got = p.Value(expression); got == want {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Errorf("%s is %q, want %q", expression, got, want)
}

// Picture takes a picture of the window into the folder SCREENSHOTS, if there is one.
func (p *Page) Picture(name string, width, height int64) {
	p.Helper()
	folder := os.Getenv("SCREENSHOTS")
	if folder == "" {
		return
	}
	p.Do(chromedp.EmulateViewport(width, height))
	data, err := chromedp.Run(p.Context, chromedp.CaptureScreenshot())
	if err != nil {
		p.Fatal(err)
	}
	if err := os.WriteFile(folder+"/"+name+".png", data, 0o644); err != nil {
		p.Fatal(err)
	}
}
