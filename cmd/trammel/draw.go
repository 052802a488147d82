package main

import (
	"fmt"
	"runtime"
	"strings"
	"time"
)

// drawing is what became of one source.
type drawing struct {
	job
	result   *result // nil if the source could not be read
	warnings []string
	changed  bool  // the picture on disk
	err      error // of the system, or a fault
	took     time.Duration
}

// failed tells that there is no new picture because something is wrong.
func (d *drawing) failed() bool {
	return d.err != nil || d.result.Problems.Failed()
}

// drawn tells that the source has a picture and that it is up to date.
func (d *drawing) drawn() bool { return !d.failed() && d.result.Figure != nil }

// draw makes the picture of a source and puts it in its place. A source with
// errors leaves the old picture alone. It never panics.
func (e *env) draw(j job, style style) *drawing {
	start := time.Now()
	d := e.compileInput(j.input)
	d.job = j
	if d.drawn() {
		d.err = guard(func() error { return e.finishDrawing(d, style) })
	}
	d.took = time.Since(start)
	return d
}

func (e *env) finishDrawing(d *drawing, s style) error {
	svg, warnings, err := drawFigure(d.result.Figure, s)
	d.warnings = warnings
	switch {
	case err != nil:
		return err
	case d.picture == stdio:
		_, err = e.stdout.Write(svg)
		return err
	}
	d.changed, err = save(d.picture, svg)
	return err
}

// compileInput reads a source and compiles it. It never panics.
func (e *env) compileInput(in input) *drawing {
	d := &drawing{job: job{input: in}}
	text, err := e.read(in)
	if err != nil {
		d.err = err
		return d
	}
	d.err = guard(func() error {
		d.result = e.compile(d.name(), text)
		return nil
	})
	return d
}

// guard runs f and turns a panic into an error.
func guard(f func() error) (err error) {
	defer func() {
		if v := recover(); v != nil {
			err = &fault{value: v, place: panicPlace()}
		}
	}()
	return f()
}

// fault is a panic: trammel is wrong, not the source.
type fault struct {
	value any
	place string // of the panic: "trammel/geom.Meet, meet.go:31"
}

func (f *fault) Error() string {
	return fmt.Sprintf("this is a fault in trammel, not in the source: %v (%s)", f.value, f.place)
}

// panicPlace is the innermost function of trammel that was running when the
// panic now being recovered began.
func panicPlace() string {
	var pcs [64]uintptr
	frames := runtime.CallersFrames(pcs[:runtime.Callers(1, pcs[:])])
	for panicked := false; ; {
		f, more := frames.Next()
		switch {
		case f.Function == "runtime.gopanic":
			panicked = true
		case panicked && !strings.HasPrefix(f.Function, "runtime."):
			return fmt.Sprintf("%s, %s:%d", f.Function, f.File[strings.LastIndexByte(f.File, '/')+1:], f.Line)
		case !more:
			return "place unknown"
		}
	}
}
