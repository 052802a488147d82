package main

import (
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"sync"
	"syscall"
)

// temporaries are the files that are being written and have no place yet.
var temporaries = halfWritten{names: map[string]bool{}}

type halfWritten struct {
	mu    sync.Mutex
	count int
	names map[string]bool
}

// create opens a new temporary in a folder.
func (h *halfWritten) create(folder string) (*os.File, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.count++
	name := filepath.Join(folder, fmt.Sprintf(".trammel-%d-%d.tmp", os.Getpid(), h.count))
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err == nil {
		h.names[name] = true
	}
	return f, err
}

// forget tells that a temporary has its place, or is gone.
func (h *halfWritten) forget(name string) {
	h.mu.Lock()
	defer h.mu.Unlock()
	delete(h.names, name)
}

// sweep removes the temporaries, for good: whoever wants to write another waits
// for the end of the process.
func (h *halfWritten) sweep() {
	h.mu.Lock()
	for name := range h.names {
		os.Remove(name)
	}
}

// tidy has the temporaries swept away when the process is interrupted; the
// interrupt then ends the process as it always does.
func tidy() (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	go func() {
		s, ok := <-signals
		if !ok {
			return
		}
		temporaries.sweep()
		signal.Reset(os.Interrupt, syscall.SIGTERM)
		end(s)
	}()
	return func() {
		signal.Stop(signals)
		close(signals)
	}
}

// end ends the process by a signal, so that whoever started it knows why. Where
// a process cannot send itself one, the exit code tells.
func end(s os.Signal) {
	if self, err := os.FindProcess(os.Getpid()); err == nil && self.Signal(s) == nil {
		select {}
	}
	os.Exit(exitFault)
}
