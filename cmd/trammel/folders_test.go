package main

import (
	"context"
	"testing"
	"testing/synctest"
	"time"

	"github.com/fsnotify/fsnotify"
)

// fed is a watch whose events the test makes up. It must be made within the
// bubble of the test, where time passes only when all wait.
func fed() *folders {
	return &folders{notifier: &fsnotify.Watcher{Events: make(chan fsnotify.Event), Errors: make(chan error)}}
}

func TestNext(t *testing.T) {
	const ms = time.Millisecond
	for _, test := range []struct {
		name   string
		op     fsnotify.Op
		file   string
		events int // 30 ms apart
		after  time.Duration
	}{
		{"one", fsnotify.Write, "a.trm", 1, 60 * ms},
		{"several", fsnotify.Write, "a.trm", 4, 150 * ms},
		{"renamed over", fsnotify.Create, "a.trm", 2, 90 * ms},
		{"without end", fsnotify.Write, "a.trm", 100, 1000 * ms},
		{"with a change of mode", fsnotify.Write | fsnotify.Chmod, "a.trm", 1, 60 * ms},
		{"modes only", fsnotify.Chmod, "a.trm", 3, 0},
		{"an editor's own", fsnotify.Write, ".a.trm.swp", 3, 0},
		{"a picture", fsnotify.Write, "a.svg", 3, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
				f, fed := fed(), make(chan bool)
				go func() {
					defer close(fed)
					for range test.events {
						select {
						case f.notifier.Events <- fsnotify.Event{Name: "/x/" + test.file, Op: test.op}:
						case <-ctx.Done():
						}
						time.Sleep(30 * ms)
					}
				}()
				start := time.Now()
				c, ok := f.next(ctx)
				took := time.Since(start)
				cancel()
				<-fed
				switch {
				case ok != (test.after > 0):
					t.Errorf("next gives %v, %v", c, ok)
				case ok && took != test.after:
					t.Errorf("next took %v, want %v", took, test.after)
				case ok && !c.touch([]string{"/x/" + test.file}) || c.touch([]string{"/y"}):
					t.Errorf("next gives %v", c)
				}
			})
		})
	}
}

// TestLostEvents has the system say that it lost count: all may have changed.
func TestLostEvents(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		f := fed()
		go func() { f.notifier.Errors <- fsnotify.ErrEventOverflow }()
		c, ok := f.next(t.Context())
		if !ok || !c.touch([]string{"/anything"}) {
			t.Errorf("after an overflow, next gives %v, %v", c, ok)
		}
	})
}

func TestTouch(t *testing.T) {
	c := changes{paths: map[string]bool{"/a/b": true}}
	for path, want := range map[string]bool{"/a/b": true, "/a/b/c/d.trm": true, "/a": false, "/a/bc": false, "/": false} {
		if got := c.touch([]string{"/z", path}); got != want {
			t.Errorf("%s touched: %v", path, got)
		}
	}
}
