package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/lang/source"
	"trammel/svg"
	"trammel/svg/layout"
)

// drawing is what became of one source.
type drawing struct {
	job
	lang.Result          // zero if the source could not be read
	changed     bool     // the picture on disk
	written     []string // the files that it is in
	err         error    // of the system, or a fault, or unfit
	took        time.Duration
}

// failed tells that there is no new picture because something is wrong.
func (d *drawing) failed() bool { return d.err != nil || d.Problems.Failed() }

// drawn tells that the source has a picture, or papers, and that all is up to date.
func (d *drawing) drawn() bool {
	return !d.failed() && (d.Figure != nil || d.Worksheet != nil && len(d.written) > 0)
}

// where is the file that the picture is in, or the first and the last of many,
// or all papers of a worksheet.
func (d *drawing) where() string {
	n := len(d.written)
	switch {
	case d.Worksheet != nil:
		return strings.Join(d.written, ", ")
	case n > 1:
		return d.written[0] + " to " + d.written[n-1]
	}
	return d.picture
}

// draw makes the picture of a source and puts it in its place, or the papers of
// a worksheet where they are wanted. A source with errors leaves the old picture
// alone. It never panics.
func (e *env) draw(j job, s style, p *papers) *drawing {
	start := time.Now()
	d, text := e.compileInput(j.input)
	d.job = j
	switch {
	case d.failed():
	case d.Figure != nil:
		d.err = guard(func() error { return e.put(d, text, s) })
	case d.Worksheet != nil && p != nil:
		d.err = guard(func() error { return e.putPapers(d, *p, s) })
	}
	d.took = time.Since(start)
	return d
}

// compileInput reads a source and compiles it. It never panics.
func (e *env) compileInput(in input) (d *drawing, text []byte) {
	return e.resolve(in, func(text []byte) *lang.Result { return e.compile(in.name(), text) })
}

// resolve reads a source and has something made of it. It never panics.
func (e *env) resolve(in input, compile func(text []byte) *lang.Result) (d *drawing, text []byte) {
	d = &drawing{job: job{input: in}}
	text, d.err = e.read(in)
	if d.err != nil {
		return d, nil
	}
	d.err = guard(func() error {
		d.Result = *compile(text)
		return nil
	})
	return d, text
}

// put lays the figure out and writes the picture.
func (e *env) put(d *drawing, text []byte, s style) error {
	frames := d.layOut(text, s)
	if frames == nil {
		return nil
	}
	files, err := s.files(d.picture, frames, d.Figure.Theme)
	if letter := (*svg.Unlettered)(nil); errors.As(err, &letter) {
		p := d.Problems.Add(letterAt(source.NewFile(d.name(), string(text)), letter.Letter), letter.Error())
		p.Help = "write it in other letters, or draw SVG, which keeps it as text"
		return nil
	}
	if err != nil {
		return &unfit{err}
	}
	if err := e.deliver(d, files); err != nil || !s.Steps {
		return err
	}
	return e.clearSteps(d.picture, files)
}

// layOut draws the figure, or says what on the paper is wrong with it.
func (d *drawing) layOut(text []byte, s style) []layout.Frame {
	file := source.NewFile(d.name(), string(text))
	d.Figure = s.of(d.Figure)
	frames, warnings, err := s.lay(d.Figure, lang.Base(d.within))
	if err != nil {
		p := d.Problems.Add(blamed(file, d.refusing()), err.Error())
		if refusal := (*layout.Refusal)(nil); errors.As(err, &refusal) {
			p.Help = d.help(refusal, text, s)
		}
		return nil
	}
	for _, w := range warnings {
		at := line(file, w.Line)
		if w.Line == 0 {
			at = blamed(file, "unit")
		}
		d.Problems.Warn(at, w.Text, w.Help)
	}
	d.Problems.Sort()
	return frames
}

// deliver puts the files of a drawing in their places, all or none.
func (e *env) deliver(d *drawing, files []file) (err error) {
	if files[0].name == stdio {
		_, err := e.stdout.Write(files[0].data)
		return err
	}
	for _, f := range files {
		if real, err := filepath.EvalSymlinks(f.name); err == nil && isSource(real) {
			return &unfit{fmt.Errorf("%s is a link to a source, %s, which would be lost", f.name, real)}
		}
		d.written = append(d.written, f.name)
	}
	d.changed, err = saveAll(files)
	return err
}

// refusing names the statement for which the figure cannot be laid out: paper
// or the theme, if it can be without, or else the unit, which makes it large.
func (d *drawing) refusing() string {
	loose := *d.Figure
	loose.Paper = nil
	if _, _, err := layout.Draw(&loose, layout.Options{}); err == nil {
		return "paper"
	}
	if _, _, err := layout.Draw(loose.As(figure.Themes[0], ""), layout.Options{}); err == nil {
		return "theme"
	}
	return "unit"
}

// unfit is why a drawing cannot be written.
type unfit struct{ error }

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

// Error says where trammel failed.
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
		case panicked && (strings.HasPrefix(f.Function, "trammel/") || strings.HasPrefix(f.Function, "main.")):
			return fmt.Sprintf("%s, %s:%d", f.Function, f.File[strings.LastIndexByte(f.File, '/')+1:], f.Line)
		case !more:
			return "place unknown"
		}
	}
}
